/** A project, read from anything: what was kept, a link, a file. */
import * as v from 'valibot';
import { type Act, actKinds, actOf, actRounds, asked, limits, needs } from '../../core/index.ts';
import { isAnswerField } from '../state/answer-fields.ts';
import { isClothField } from '../state/cloth-fields.ts';
import { rowOf } from '../state/fields.ts';
import { isPatternField } from '../state/pattern-fields.ts';
import { example } from '../state/project.ts';
import type { Project } from '../state/snapshot.ts';
import { cleanField } from './clean-text.ts';
import { textSchema, wholeSchema } from './text.ts';

const actFields = ['side', 'corner', 'place', 'count', 'end', 'then', 'of'] as const;

/** The fields of something a hand does, whatever its kind. */
export const actEntries = {
  kind: v.picklist(actKinds),
  round: v.exactOptional(v.picklist(actRounds)),
  edging: v.exactOptional(wholeSchema(0, limits.edgings - 1)),
  side: v.exactOptional(wholeSchema(0, limits.sides - 1)),
  corner: v.exactOptional(wholeSchema(0, limits.sides - 1)),
  place: v.exactOptional(wholeSchema(0, 2 * limits.stitches)),
  count: v.exactOptional(wholeSchema(-2 * limits.stitches, 2 * limits.stitches)),
  end: v.exactOptional(v.picklist(['before', 'after'])),
  then: v.exactOptional(v.picklist(['from-corner', 'from-total'])),
  of: v.exactOptional(v.picklist(['front', 'back'])),
};

type ActRead = v.InferOutput<v.ObjectSchema<typeof actEntries, undefined>>;

/** What an act's kind needs is there. */
export const isComplete = v.check(({ kind, ...parts }: ActRead) =>
  actFields.every((field) => !needs(kind, field) || parts[field] !== undefined),
);

/** By its kind: with the fields that the kind has, and no others. */
export const asAct = v.transform(({ kind, ...parts }: ActRead): Act => actOf(kind, parts));

const actSchema = v.pipe(v.object(actEntries), isComplete, asAct);

/** One that is asked for. */
const adjustmentSchema = v.pipe(actSchema, v.transform(asked));

export const zeroOrOne = v.picklist([0, 1]);
const choicesSchema = v.object({
  foundationStart: v.exactOptional(v.object({ counts: zeroOrOne })),
  foundationClosing: v.exactOptional(v.object({ adds: zeroOrOne })),
  edgingClosing: v.exactOptional(v.object({ adds: zeroOrOne })),
});

export const fieldSchema = v.pipe(
  v.string(),
  v.check(
    (name) =>
      [isClothField, isPatternField, isAnswerField].some((isOne) => isOne(name)) || rowOf(name) !== undefined,
  ),
);

const cleanTexts = (texts: Project['texts']): Project['texts'] =>
  Object.fromEntries(Object.entries(texts).map(([field, text]) => [field, cleanField(field, text)]));

export const standSchema = v.variant('at', [
  v.object({ at: v.picklist(['foundation', 'sewn', 'finished']) }),
  v.object({ at: v.literal('edging'), edging: wholeSchema(0, limits.edgings - 1) }),
  v.object({ at: v.literal('join'), side: wholeSchema(0, limits.sides - 1) }),
]);

/** Every part of a project, as it must be. */
export const entries = {
  name: textSchema,
  sideCount: wholeSchema(0, limits.sides),
  counted: v.picklist(['stitches-only', 'one-corner', 'both-corners']),
  cornerMade: v.picklist(['chain', 'stitch']),
  cornersDiffer: v.boolean(),
  edgingCount: wholeSchema(1, limits.edgings),
  choices: choicesSchema,
  texts: v.pipe(v.record(fieldSchema, v.string()), v.transform(cleanTexts)),
  mishaps: v.pipe(v.array(actSchema), v.maxLength(limits.mishaps)),
  adjustments: v.optional(v.pipe(v.array(adjustmentSchema), v.maxLength(limits.mishaps)), []),
  stands: v.exactOptional(standSchema),
};

/** A whole project: one odd part, and it is none. For what another hand may have changed. */
export const projectSchema = v.object(entries);

/** What can be read of a list. */
const sifted = <T extends v.GenericSchema>(all: readonly unknown[], item: T): v.InferOutput<T>[] =>
  all.flatMap((one) => {
    const read = v.safeParse(item, one);
    return read.success ? [read.output] : [];
  });

const named = v.record(v.string(), v.unknown());

/** A project part by part: what cannot be read is as in the example, or left out of its list. */
const readableSchema = v.fallback(
  v.object({
    name: v.fallback(entries.name, example.name),
    sideCount: v.fallback(entries.sideCount, example.sideCount),
    counted: v.fallback(entries.counted, example.counted),
    cornerMade: v.fallback(entries.cornerMade, example.cornerMade),
    cornersDiffer: v.fallback(entries.cornersDiffer, example.cornersDiffer),
    edgingCount: v.fallback(entries.edgingCount, example.edgingCount),
    choices: v.pipe(
      v.fallback(named, {}),
      v.transform((parts) => Object.entries(parts).map(([key, part]) => ({ [key]: part }))),
      v.transform((parts): Project['choices'] => Object.assign({}, ...sifted(parts, choicesSchema))),
    ),
    texts: v.pipe(
      v.optional(v.fallback(named, {}), () => ({ ...example.texts })),
      v.transform((texts) => sifted(Object.entries(texts), v.tuple([fieldSchema, v.string()]))),
      v.transform((texts): Project['texts'] => cleanTexts(Object.fromEntries(texts))),
    ),
    mishaps: v.pipe(
      v.fallback(v.array(v.unknown()), []),
      v.transform((all) => sifted(all, actSchema).slice(0, limits.mishaps)),
    ),
    adjustments: v.pipe(
      v.fallback(v.array(v.unknown()), []),
      v.transform((all) => sifted(all, adjustmentSchema).slice(0, limits.mishaps)),
    ),
  }),
  example,
);

/** A project from what this app kept: every part read for itself. */
export function readProject(value: unknown): Project {
  const project = v.parse(readableSchema, value);
  const told = v.safeParse(v.object({ stands: standSchema }), value);
  return told.success ? { ...project, stands: told.output.stands } : project;
}
