/**
 * A file of panels as it must be: a published format, so nothing may be in it that it does not name.
 * `assets/schema/panels.schema.json` is made from these schemas (`npm run schema`).
 */
import * as v from 'valibot';
import { asked, limits } from '../../core/index.ts';
import { actEntries, asAct, entries, isComplete, standSchema, zeroOrOne } from './project.ts';
import { answeredSchema, placeSchema, wholeSchema } from './text.ts';
import { walkEdition } from './write-kept.ts';

export const fileFormat = 'Ringtrue panels';
export const fileVersion = 1;

const act = v.pipe(v.strictObject(actEntries), isComplete, asAct);
const acts = v.pipe(v.array(act), v.maxLength(limits.mishaps));
/** Everything among them is asked for, so they do not say it. */
const adjustments = v.pipe(v.array(v.pipe(act, v.transform(asked))), v.maxLength(limits.mishaps));

const choices = v.strictObject({
  foundationStart: v.exactOptional(v.strictObject({ counts: zeroOrOne })),
  foundationClosing: v.exactOptional(v.strictObject({ adds: zeroOrOne })),
  edgingClosing: v.exactOptional(v.strictObject({ adds: zeroOrOne })),
});

const [early, edging, join] = standSchema.options;
const stands = v.variant('at', [
  v.strictObject(early.entries),
  v.strictObject(edging.entries),
  v.strictObject(join.entries),
]);

/** Where the walk stands: the how manieth step of an edition of the walk, and which questions are answered. */
const walk = v.strictObject({
  edition: wholeSchema(1, walkEdition),
  place: placeSchema,
  answered: answeredSchema,
});

export const panelSchema = v.strictObject({
  ...entries,
  choices,
  mishaps: acts,
  adjustments,
  stands: v.exactOptional(stands),
  walk,
});

export const fileSchema = v.strictObject({
  format: v.literal(fileFormat),
  version: v.literal(fileVersion),
  /** The day it was saved. */
  saved: v.pipe(v.string(), v.isoDate()),
  /** Of all that follows, and of the day. */
  sum: v.pipe(v.string(), v.regex(/^[0-9a-z]{7}$/)),
  panels: v.pipe(v.array(panelSchema), v.minLength(1)),
});

/** The same with its panels unread, so that one that is damaged leaves the others. */
export const looseFileSchema = v.strictObject({
  ...fileSchema.entries,
  sum: v.string(),
  panels: v.pipe(v.array(v.unknown()), v.minLength(1)),
});
