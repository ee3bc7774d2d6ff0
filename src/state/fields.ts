/**
 * Every field that text is typed into, once: its name, where it is shown and when, its bounds, and which of core's
 * problems it can mend. Nothing else takes a field's name apart.
 */
import { limits } from '../../core/index.ts';
import { readWhole } from '../input/whole-number.ts';
import type { Field, Project, Tab } from './snapshot.ts';

export type FieldKind =
  | 'side'
  | 'each-corner'
  | 'corner'
  | 'start-side'
  | 'lead'
  | 'join-side'
  | 'join-from-corner'
  | 'marker-every'
  | 'arm-before'
  | 'arm-after'
  | 'increase'
  | 'worked-side'
  | 'worked-corner'
  | 'worked-total'
  | 'corners-short'
  | 'front-again'
  | 'drift'
  | 'left-over';

/** A round of the back: the foundation, or an edging from 0. */
export type BackRound = 'foundation' | number;

export type FieldRow = {
  field: Field;
  kind: FieldKind;
  /** Which side or corner it is about, from 0. */
  index: number;
  /** Which round of the back it is about. */
  round: BackRound;
  /** The places of the app that show it. */
  tabs: readonly [Tab, ...Tab[]];
  /** What a number that cannot be read keeps from following. */
  bears: 'recipe' | 'counts';
  /** Emptied, it lacks a number; others fall back on the recipe's, or count as not counted. */
  isNeeded: boolean;
  bounds(project: Project): Bounds;
  isShown(project: Project): boolean;
  /** Core's path of the value. */
  path: string | undefined;
};

/** `like`: the number shown as an example. Bounds of either sign are those of a number whose way is chosen beside it. */
type Bounds = { least: number; most: number; like: number };

type Kind = Pick<FieldRow, 'kind' | 'tabs' | 'bears'> & {
  name(index: number, round: BackRound): Field;
  /** How many there are of it in a round, or in all. */
  count: number;
  rounds?: readonly BackRound[];
  bounds(project: Project): Bounds;
  isShown(project: Project, index: number, round: BackRound): boolean;
  /** Core's path of the value. */
  path?(index: number, round: BackRound): string;
};

const edgings = Array.from({ length: limits.edgings }, (_, n) => n);
const backRounds: readonly BackRound[] = ['foundation', ...edgings];

const sidesOf = ({ sideCount }: Project): number => Math.max(1, sideCount);
const isCornered = ({ sideCount }: Project): boolean => sideCount > 0;
const isThere = ({ edgingCount }: Project, round: BackRound): boolean =>
  round === 'foundation' || round < edgingCount;

const upTo =
  (most: number, like: number, least = 0) =>
  (): Bounds => ({ least, most, like });
const cornerSize = ({ cornerMade }: Project): Bounds => ({
  least: 0,
  most: limits.cornerSize,
  like: cornerMade === 'chain' ? 2 : 1,
});
/** A side as the maker counts it: with up to so many positions of its corners. */
const counted =
  (like: number) =>
  ({ counted, sideCount }: Project): Bounds => {
    const corners = sideCount === 0 || counted === 'stitches-only' ? 0 : counted === 'one-corner' ? 1 : 2;
    return { least: 1, most: limits.stitches + corners * limits.cornerSize, like };
  };
const frontSide = (project: Project): Bounds => ({ least: 1, most: sidesOf(project), like: 1 });

/** Names of fields; texts are kept under them, so they stay as they are. */
export const fieldNames = {
  side: (side: number): Field => `side.${side}`,
  eachCorner: 'corner',
  corner: (corner: number): Field => `corner.${corner}`,
  startSide: 'start-side',
  lead: 'lead',
  joinSide: 'join-side',
  joinFromCorner: 'join-from-corner',
  markerEvery: 'marker-every',
  armBefore: (edging: number): Field => `arm.${edging}`,
  armAfter: (edging: number): Field => `arm.${edging}.after`,
  increase: (edging: number): Field => `increase.${edging}`,
  workedSide: (round: BackRound, side: number): Field =>
    round === 'foundation' ? `worked.foundation.${side}` : `worked.edging.${round}.${side}`,
  workedCorner: (round: BackRound, corner: number): Field =>
    round === 'foundation' ? `worked.foundation-corner.${corner}` : `worked.edging-corner.${round}.${corner}`,
  workedTotal: (round: BackRound): Field =>
    round === 'foundation' ? 'worked.total.foundation' : `worked.total.edging.${round}`,
  /** How many corners fewer than in the recipe a round has. */
  cornersShort: (round: BackRound): Field =>
    round === 'foundation' ? 'worked.a-corner-short.foundation' : `worked.a-corner-short.edging.${round}`,
  frontAgain: (side: number): Field => `seen.front.${side}`,
  drift: (n: number): Field => `seen.drift.${n}`,
  leftOver: 'seen.left-over',
} as const;

/** How many corners a round was told to lack. */
export function cornersShort(
  { texts, sideCount }: Pick<Project, 'texts' | 'sideCount'>,
  round: BackRound,
): number {
  const told = readWhole(texts[fieldNames.cornersShort(round)] ?? '');
  return sideCount > 1 && told.ok ? Math.max(0, Math.min(told.value, sideCount - 1)) : 0;
}

const edge: readonly [Tab] = ['edge'];
const wrong: readonly [Tab] = ['wrong'];
const both: readonly [Tab, Tab] = ['edge', 'wrong'];
const recipe = { tabs: edge, bears: 'recipe', count: 1 } as const;
const counts = { tabs: wrong, bears: 'counts', count: 1 } as const;

const kinds: readonly Kind[] = [
  {
    ...recipe,
    kind: 'side',
    name: fieldNames.side,
    count: limits.sides,
    bounds: counted(58),
    isShown: (project, side) => side < sidesOf(project),
    path: (side) => `sides[${side}]`,
  },
  {
    ...recipe,
    kind: 'each-corner',
    name: () => fieldNames.eachCorner,
    bounds: cornerSize,
    isShown: (project) => isCornered(project) && !project.cornersDiffer,
    path: () => 'corner',
  },
  {
    ...recipe,
    kind: 'corner',
    name: fieldNames.corner,
    count: limits.sides,
    bounds: cornerSize,
    isShown: (project, corner) => project.cornersDiffer && corner < project.sideCount,
    path: (corner) => `corner[${corner}]`,
  },
  {
    ...recipe,
    kind: 'start-side',
    name: () => fieldNames.startSide,
    bounds: frontSide,
    isShown: isCornered,
    path: () => 'choices.start.side',
  },
  {
    ...recipe,
    kind: 'lead',
    name: () => fieldNames.lead,
    bounds: upTo(limits.stitches, 20),
    isShown: isCornered,
    path: () => 'choices.start.lead',
  },
  {
    ...recipe,
    kind: 'join-side',
    name: () => fieldNames.joinSide,
    bounds: frontSide,
    isShown: isCornered,
    path: () => 'choices.joinStart.side',
  },
  {
    ...recipe,
    kind: 'join-from-corner',
    name: () => fieldNames.joinFromCorner,
    bounds: upTo(limits.stitches, 4, 1),
    isShown: () => true,
    path: () => 'choices.joinStart.fromCorner',
  },
  {
    ...recipe,
    kind: 'marker-every',
    name: () => fieldNames.markerEvery,
    bounds: upTo(limits.markerEvery, 10, 1),
    isShown: () => true,
    path: () => 'choices.markerEvery',
  },
  {
    ...recipe,
    kind: 'arm-before',
    name: (_, round) => fieldNames.armBefore(round as number),
    rounds: edgings,
    bounds: upTo(limits.arm, 1),
    isShown: (project, _, round) => isCornered(project) && isThere(project, round),
    path: (_, round) => `choices.edgings[${round}].arm`,
  },
  {
    ...recipe,
    kind: 'arm-after',
    name: (_, round) => fieldNames.armAfter(round as number),
    rounds: edgings,
    bounds: upTo(limits.arm, 1),
    isShown: (project, _, round) => isCornered(project) && isThere(project, round),
  },
  {
    ...recipe,
    kind: 'increase',
    name: (_, round) => fieldNames.increase(round as number),
    rounds: edgings,
    bounds: upTo(limits.stitches, 6),
    isShown: (project, _, round) => !isCornered(project) && isThere(project, round),
    path: (_, round) => `choices.edgings[${round}].increase`,
  },
  {
    ...counts,
    kind: 'worked-side',
    name: (side, round) => fieldNames.workedSide(round, side),
    tabs: both,
    count: limits.sides,
    rounds: backRounds,
    bounds: upTo(limits.stitches, 54),
    isShown: (project, side, round) =>
      isThere(project, round) && side < sidesOf(project) - cornersShort(project, round),
  },
  {
    ...counts,
    kind: 'worked-corner',
    name: (corner, round) => fieldNames.workedCorner(round, corner),
    tabs: both,
    count: limits.sides,
    rounds: backRounds,
    bounds: upTo(limits.cornerSize, 2),
    isShown: (project, corner, round) =>
      isThere(project, round) && corner < project.sideCount - cornersShort(project, round),
  },
  {
    ...counts,
    kind: 'worked-total',
    name: (_, round) => fieldNames.workedTotal(round),
    rounds: backRounds,
    bounds: upTo(limits.stitches * limits.sides, 252),
    isShown: (project, _, round) => isCornered(project) && isThere(project, round),
  },
  {
    ...counts,
    kind: 'corners-short',
    name: (_, round) => fieldNames.cornersShort(round),
    rounds: backRounds,
    bounds: ({ sideCount }) => ({ least: 0, most: Math.max(0, sideCount - 1), like: 1 }),
    isShown: (project, _, round) => project.sideCount > 1 && isThere(project, round),
  },
  {
    ...counts,
    kind: 'front-again',
    name: fieldNames.frontAgain,
    count: limits.sides,
    bounds: counted(54),
    isShown: (project, side) => side < sidesOf(project),
  },
  {
    ...counts,
    kind: 'drift',
    name: fieldNames.drift,
    count: limits.sides,
    bounds: upTo(limits.stitches, 2, -limits.stitches),
    isShown: (project, n) => n < project.sideCount,
  },
  {
    ...counts,
    kind: 'left-over',
    name: () => fieldNames.leftOver,
    bounds: upTo(limits.stitches, 2, -limits.stitches),
    isShown: () => true,
  },
];

const needed: readonly FieldKind[] = ['side', 'each-corner', 'corner'];
const none: readonly BackRound[] = ['foundation'];

/** Every row, whatever the project. */
export const fieldRows: readonly FieldRow[] = kinds.flatMap(
  ({ name, count, rounds = none, isShown, path, ...kind }) =>
    rounds.flatMap((round) =>
      Array.from({ length: count }, (_, index) => ({
        ...kind,
        field: name(index, round),
        index,
        round,
        isNeeded: needed.includes(kind.kind),
        isShown: (project: Project) => isShown(project, index, round),
        path: path?.(index, round),
      })),
    ),
);

const byName = new Map(fieldRows.map((row) => [row.field, row]));

/** The row of a field, or undefined for a name that is none. */
export const rowOf = (field: Field): FieldRow | undefined => byName.get(field);

const byPath = new Map(fieldRows.flatMap((row): [string, FieldRow][] => (row.path ? [[row.path, row]] : [])));

/** The field on the page in which a problem of core's can be mended: of the value itself, or of what it is part of. */
export function fieldAt(path: string, project: Project): Field {
  for (let at = path.replace(/^edge\./, ''); at; at = at.replace(/(^|\.|\[)[^.[]*$/, '')) {
    const row = byPath.get(at);
    if (row?.isShown(project)) return row.field;
  }
  return path;
}
