/**
 * From what was typed to what follows: edge, plan, worked back, pairing, steps.
 *
 * Rule: texts are read anew each time and never changed. Where they cannot be read just now, the last good making
 * stays and the problems are kept, silent until the person asks to be told.
 */
import {
  type Choices,
  type Corner,
  type EdgeInput,
  limits,
  type Mishap,
  mishapsOf,
  type Plan,
  type Problem,
  pair,
  planBack,
  type Result,
  readEdge,
  type Seen,
  type Shape,
  steps,
  work,
} from '../../core/index.ts';
import type { Field, Making, Project, Settings } from './snapshot.ts';
import { readWhole } from './whole-number.ts';

export type PairingSettings = Pick<Settings, 'manner' | 'easing'>;

type Reader = { project: Project; problems: Problem[] };

/** A typed number with its label, or undefined where the field was never touched. */
function typed(
  reader: Reader,
  field: Field,
  label: string,
  like: number,
  low = 0,
  high: number = limits.stitches,
): number | undefined {
  const text = reader.project.texts[field];
  if (text === undefined) return undefined;
  const read = readWhole(text);
  const say = (code: string, says: string): undefined => {
    reader.problems.push({ at: field, code, says });
    return undefined;
  };
  const lower = label.charAt(0).toLowerCase() + label.slice(1);
  if (!read.ok) {
    if (read.code === 'empty') return say('empty', `Enter ${lower}`);
    if (read.code === 'not-whole') return say('not-whole', `${label} must be a whole number, like ${like}`);
    if (read.code === 'several') return say('several', `${label} must be one number, like ${like}`);
    return say('not-a-number', `${label} must be a number, like ${like}`);
  }
  if (read.value < low) return say('too-low', `${label} must be ${low} or more`);
  if (read.value > high) return say('too-high', `${label} must be ${high.toLocaleString('en-GB')} or fewer`);
  return read.value;
}

/** Like `typed`, but emptied fields count as untouched: these have a number of the plan's to fall back on. */
function typedOver(
  reader: Reader,
  field: Field,
  label: string,
  like: number,
  high?: number,
  low: number = 0,
): number | undefined {
  const text = reader.project.texts[field];
  return text === undefined || text.trim() === '' ? undefined : typed(reader, field, label, like, low, high);
}

function readEdgeInput(reader: Reader): EdgeInput {
  const { project } = reader;
  const round = project.sideCount === 0;
  const count = Math.max(1, project.sideCount);
  const most = limits.stitches + 2 * limits.cornerSize;
  const sides = Array.from({ length: count }, (_, i) => {
    const field = `side.${i}`;
    const label = round ? 'The stitches in the round' : `Side ${i + 1}`;
    if (project.texts[field] === undefined) {
      reader.problems.push({
        at: field,
        code: 'empty',
        says: round ? 'Enter the stitches in the round' : `Enter side ${i + 1}`,
      });
      return Number.NaN;
    }
    return typed(reader, field, label, 58, 1, most) ?? Number.NaN;
  });
  return {
    sides,
    corner: round ? [] : readCorners(reader, count),
    counted: round ? 'stitches-only' : project.counted,
  };
}

function readCorners(reader: Reader, count: number): Corner | Corner[] {
  const { project } = reader;
  const made = project.cornerMade;
  const standard = made === 'chain' ? 2 : 1;
  const one = typed(reader, 'corner', 'The size of each corner', standard, 0, limits.cornerSize) ?? standard;
  if (!project.cornersDiffer) return { made, size: one };
  return Array.from({ length: count }, (_, i) => ({
    made,
    size: typed(reader, `corner.${i}`, `The size of corner ${i + 1}`, standard, 0, limits.cornerSize) ?? one,
  }));
}

function readChoices(reader: Reader): Choices {
  const { project } = reader;
  const round = project.sideCount === 0;
  const startSide = typedOver(
    reader,
    'start-side',
    'The front side to start against',
    1,
    Math.max(1, project.sideCount),
  );
  const lead = typedOver(reader, 'lead', 'The stitches before the first corner', 20);
  const marker = typedOver(reader, 'marker-every', 'The stitches from marker to marker', 10);
  const joinSide = typedOver(
    reader,
    'join-side',
    'The side where the join begins',
    1,
    Math.max(1, project.sideCount),
  );
  const fromCorner = typedOver(reader, 'join-from-corner', 'The stitches in from the corner', 4);
  return {
    ...project.choices,
    edgings: Array.from({ length: project.edgingCount }, (_, n) =>
      readEdging(reader, n, round),
    ) as NonNullable<Choices['edgings']>,
    start: { side: Math.max(1, startSide ?? 1) - 1, ...(lead !== undefined && !round ? { lead } : {}) },
    ...(joinSide !== undefined || fromCorner !== undefined
      ? {
          joinStart: {
            side: Math.max(1, joinSide ?? 1) - 1,
            ...(fromCorner === undefined ? {} : { fromCorner }),
          } as { side: number; fromCorner: number },
        }
      : {}),
    ...(marker === undefined ? {} : { markerEvery: marker }),
  };
}

/** An edging without a corner of its own takes the front's: core settles that. */
function readEdging(reader: Reader, n: number, round: boolean): object {
  const before =
    typedOver(reader, `arm.${n}`, `The stitches before the corner in round ${n + 1}`, 1, limits.arm) ?? 1;
  const after =
    typedOver(reader, `arm.${n}.after`, `The stitches after the corner in round ${n + 1}`, 1, limits.arm) ??
    before;
  const increase = typedOver(reader, `increase.${n}`, `The stitches added in round ${n + 1}`, 6) ?? 0;
  return round ? { arm: 0, increase } : { arm: [before, after] };
}

/**
 * What was counted on the work, as far as it was: the back's rounds, the front again, and the join. An emptied field
 * counts as not counted. The front's sides are as the person counts them; `derive` takes the corners off.
 */
export function readSeen(reader: Reader): Seen {
  const { project } = reader;
  const { sideCount } = project;
  const list = (
    piece: string,
    count: number,
    label: (i: number) => string,
    low: number = 0,
    high?: number,
  ): (number | null)[] =>
    Array.from(
      { length: count },
      (_, i) => typedOver(reader, `${piece}.${i}`, label(i), 54, high, low) ?? null,
    );
  const any = (values: (number | null)[]): boolean => values.some((value) => value !== null);
  const round = (piece: string, name: string): Counts | undefined => {
    const fewer = isShort(project, piece) ? 1 : 0;
    const sides = list(
      `worked.${piece}`,
      Math.max(1, sideCount - fewer),
      (i) => `Side ${i + 1} of the ${name}`,
    );
    const corners = list(
      cornersOf(piece),
      Math.max(0, sideCount - fewer),
      (i) => `Corner ${i + 1} of the ${name}`,
      0,
      limits.cornerSize,
    );
    if (!any(sides) && !any(corners)) return undefined;
    return any(corners) ? { sides, corners } : { sides };
  };
  const foundation = round('foundation', 'foundation');
  const edgings = Array.from({ length: project.edgingCount }, (_, n) =>
    round(`edging.${n}`, project.edgingCount > 1 ? `edging round ${n + 1}` : 'edging'),
  );
  const front = list('seen.front', Math.max(1, sideCount), (i) => `Front side ${i + 1}, counted again,`, 1);
  const drift = list('seen.drift', sideCount, (i) => `How far corner ${i + 1} is off`, -limits.stitches);
  const leftOver = typedOver(reader, 'seen.left-over', 'What is left over', 2, undefined, -limits.stitches);
  const blank = { sides: new Array<null>(Math.max(1, sideCount)).fill(null) };
  const join = {
    ...(any(drift) ? { drift } : {}),
    ...(leftOver === undefined ? {} : { leftOver }),
  };
  return {
    ...(foundation ? { foundation } : {}),
    ...(edgings.some((one) => one !== undefined) ? { edgings: edgings.map((one) => one ?? blank) } : {}),
    ...(any(front) ? { front: { sides: front } } : {}),
    ...(Object.keys(join).length > 0 ? { join } : {}),
  };
}

type Counts = { sides: (number | null)[]; corners?: (number | null)[] };

/** `edging.0` → `worked.edging-corner.0`: the fields of a round's corners. */
const cornersOf = (piece: string): string => `worked.${piece.replace(/^[a-z]+/, '$&-corner')}`;

/** The field that says that a round (`foundation`, `edging.0`) has a corner fewer than the recipe. */
export const shortField = (piece: string): Field => `worked.a-corner-short.${piece}`;

export const isShort = ({ texts, sideCount }: Pick<Project, 'texts' | 'sideCount'>, piece: string): boolean =>
  sideCount > 1 && texts[shortField(piece)] === '1';

/** Corner positions that a person's number for a front side takes in. */
function takenIn({ counted, sideCount }: Project, { corners }: Shape, side: number): number {
  if (sideCount === 0 || counted === 'stitches-only') return 0;
  const sizeAt = (corner: number): number => corners.at(corner)?.size ?? 0;
  return sizeAt(side) + (counted === 'both-corners' ? sizeAt(side - 1) : 0);
}

/** The recount of the front as ordinary stitches, like the edge. */
function ordinaryFront(seen: Seen, project: Project, edge: Shape): Seen {
  if (!seen.front) return seen;
  const sides = seen.front.sides.map((count, side) =>
    count === null ? null : count - takenIn(project, edge, side),
  );
  return { ...seen, front: { sides } };
}

/** Path of a problem in core's input → the field in which the person can mend it. */
export function fieldOf(at: string): Field {
  const path = at.replace(/^edge\./, '');
  const side = /^sides\[(\d+)\]/.exec(path);
  if (side) return `side.${side[1]}`;
  const corner = /^corner(?:\[(\d+)\])?/.exec(path);
  if (corner) return corner[1] === undefined ? 'corner' : `corner.${corner[1]}`;
  const edging = /^choices\.edgings\[(\d+)\]\.(arm|increase)/.exec(path);
  if (edging) return `${edging[2]}.${edging[1]}`;
  const known: Record<string, Field> = {
    'choices.start.lead': 'lead',
    'choices.start.side': 'start-side',
    'choices.markerEvery': 'marker-every',
    'choices.joinStart.fromCorner': 'join-from-corner',
    'choices.joinStart.side': 'join-side',
    'choices.foundationStart.counts': 'start-side',
  };
  return known[path] ?? path;
}

/** Everything that follows from a project, or every problem that keeps it from following. */
export function derive(project: Project, settings: PairingSettings): Result<Making> {
  const reader: Reader = { project, problems: [] };
  const input = readEdgeInput(reader);
  const choices = readChoices(reader);
  const counts = readSeen(reader);
  const problems = reader.problems;
  const edge = readEdge(input);
  const told = new Set(problems.map((problem) => problem.at));
  if (!edge.ok) problems.push(...inFields(edge.problems).filter((problem) => !told.has(problem.at)));
  if (problems.length > 0 || !edge.ok) return { ok: false, problems };
  const plan = planBack(edge.value, choices);
  if (!plan.ok) return { ok: false, problems: inFields(plan.problems) };
  const seen = ordinaryFront(counts, project, edge.value);
  const mishaps = mishapsIn(plan.value, project.mishaps, seen);
  const worked = work(plan.value, mishaps);
  if (!worked.ok) return { ok: false, problems: worked.problems };
  const pairing = pair(edge.value, worked.value.edgings.at(-1), { start: worked.value.join, ...settings });
  if (!pairing.ok) return { ok: false, problems: inFields(pairing.problems) };
  const whole = steps(plan.value, mishaps, { manner: settings.manner });
  if (!whole.ok) return { ok: false, problems: whole.problems };
  return {
    ok: true,
    value: {
      edge: edge.value,
      plan: plan.value,
      mishaps,
      worked: worked.value,
      pairing: pairing.value,
      steps: whole.value,
      seen,
    },
  };
}

/** What is known to have happened comes first; only what that leaves of the counts is explained anew. */
function mishapsIn(plan: Plan, known: readonly Mishap[], seen: Seen): readonly Mishap[] {
  const made = mishapsOf(plan, seen, known);
  // A mishap that has no place on this panel is left for `work` to tell.
  return known.length === 0 || made[0] === known[0] ? made : known;
}

const inFields = (problems: readonly Problem[]): Problem[] =>
  problems.map((problem) => ({ ...problem, at: fieldOf(problem.at) }));

/** The texts that stand for what was counted on a panel; `edge` is its front. */
export function textsOfSeen(seen: Seen, project: Project, edge: Shape): Record<Field, string> {
  const texts: Record<Field, string> = {};
  const put = (prefix: string, values: readonly (number | null)[] | undefined): void =>
    values?.forEach((value, i) => {
      if (value !== null) texts[`${prefix}.${i}`] = `${value}`;
    });
  const putRound = (piece: string, counts: Counts | undefined): void => {
    put(`worked.${piece}`, counts?.sides);
    put(cornersOf(piece), counts?.corners);
    if (counts && counts.sides.length < project.sideCount) texts[shortField(piece)] = '1';
  };
  putRound('foundation', seen.foundation);
  seen.edgings?.forEach((edging, n) => {
    putRound(`edging.${n}`, edging);
  });
  put(
    'seen.front',
    seen.front?.sides.map((count, side) => (count === null ? null : count + takenIn(project, edge, side))),
  );
  put('seen.drift', seen.join?.drift);
  if (seen.join?.leftOver !== undefined) texts['seen.left-over'] = `${seen.join.leftOver}`;
  return texts;
}

/** The texts but for what was counted on the work. */
export function withoutWorked(texts: Project['texts']): Project['texts'] {
  return Object.fromEntries(
    Object.entries(texts).filter(([field]) => !field.startsWith('worked.') && !field.startsWith('seen.')),
  );
}
