/** What was counted on the work: reading it from its fields, and writing it back into them. */
import type { Seen, Shape } from '../../core/index.ts';
import { type BackRound, cornersShort, fieldNames, rowOf } from '../state/fields.ts';
import type { Field, Project } from '../state/snapshot.ts';
import { numberFrom, type Reader } from './typed.ts';

type Counts = NonNullable<Seen['foundation']>;

/**
 * What was counted, as far as it was: the back's rounds, the front again, and the join. A field that is empty, or
 * cannot be read, counts as not counted. The front's sides are as the person counts them.
 */
export function readCounts(reader: Reader): Seen {
  const { sideCount, edgingCount } = reader.project;
  const sides = Math.max(1, sideCount);
  const foundation = readRound(reader, 'foundation');
  const edgings = Array.from({ length: edgingCount }, (_, n) => readRound(reader, n));
  const front = list(reader, sides, fieldNames.frontAgain);
  const drift = list(reader, sideCount, fieldNames.drift);
  const leftOver = numberFrom(reader, fieldNames.leftOver);
  const join = { ...(isAny(drift) ? { drift } : {}), ...(leftOver === undefined ? {} : { leftOver }) };
  const blank: Counts = { sides: new Array<null>(sides).fill(null) };
  return {
    ...(foundation ? { foundation } : {}),
    ...(edgings.some((one) => one !== undefined) ? { edgings: edgings.map((one) => one ?? blank) } : {}),
    ...(isAny(front) ? { front: { sides: front } } : {}),
    ...(Object.keys(join).length > 0 ? { join } : {}),
  };
}

function list(reader: Reader, count: number, name: (index: number) => Field): (number | null)[] {
  return Array.from({ length: count }, (_, index) => numberFrom(reader, name(index)) ?? null);
}

const isAny = (values: readonly (number | null)[]): boolean => values.some((value) => value !== null);

function readRound(reader: Reader, round: BackRound): Counts | undefined {
  const { project } = reader;
  const short = cornersShort(project, round);
  const sides = list(reader, Math.max(1, project.sideCount - short), (i) => fieldNames.workedSide(round, i));
  const corners = list(reader, Math.max(0, project.sideCount - short), (i) =>
    fieldNames.workedCorner(round, i),
  );
  const total = numberFrom(reader, fieldNames.workedTotal(round));
  if (!isAny(sides) && !isAny(corners) && total === undefined) return undefined;
  return {
    sides,
    ...(isAny(corners) ? { corners } : {}),
    ...(total === undefined ? {} : { total }),
  };
}

/** Corner positions that a person's number for a front side takes in. */
function takenIn({ counted, sideCount }: Project, { corners }: Shape, side: number): number {
  if (sideCount === 0 || counted === 'stitches-only') return 0;
  const sizeAt = (corner: number): number => corners.at(corner)?.size ?? 0;
  return sizeAt(side) + (counted === 'both-corners' ? sizeAt(side - 1) : 0);
}

/** The recount of the front as ordinary stitches, like the edge. */
export function ordinaryFront(seen: Seen, project: Project, edge: Shape): Seen {
  if (!seen.front) return seen;
  const sides = seen.front.sides.map((count, side) =>
    count === null ? null : count - takenIn(project, edge, side),
  );
  return { ...seen, front: { sides } };
}

/** The texts that stand for what was counted on a panel; `edge` is its front. */
export function writeCounts(seen: Seen, project: Project, edge: Shape): Record<Field, string> {
  const texts: Record<Field, string> = {};
  const put = (values: readonly (number | null)[] | undefined, name: (index: number) => Field): void =>
    values?.forEach((value, i) => {
      if (value !== null) texts[name(i)] = `${value}`;
    });
  const putRound = (round: BackRound, counts: Counts | undefined): void => {
    put(counts?.sides, (i) => fieldNames.workedSide(round, i));
    put(counts?.corners, (i) => fieldNames.workedCorner(round, i));
    if (counts?.total !== undefined) texts[fieldNames.workedTotal(round)] = `${counts.total}`;
    const short = counts ? project.sideCount - counts.sides.length : 0;
    if (short > 0) texts[fieldNames.cornersShort(round)] = `${short}`;
  };
  putRound('foundation', seen.foundation);
  seen.edgings?.forEach((counts, n) => {
    putRound(n, counts);
  });
  const front = seen.front?.sides.map((count, side) => count && count + takenIn(project, edge, side));
  put(front, fieldNames.frontAgain);
  put(seen.join?.drift, fieldNames.drift);
  if (seen.join?.leftOver !== undefined) texts[fieldNames.leftOver] = `${seen.join.leftOver}`;
  return texts;
}

/** Fields with something in them that was counted on the work; `worked`: on the back only. */
export const countedFields = (texts: Project['texts'], which: 'all' | 'worked' = 'all'): Field[] =>
  Object.keys(texts).filter((field) => {
    const row = rowOf(field);
    return row?.bears === 'counts' && (which === 'all' || row.tabs.includes('edge'));
  });

/** The texts but for those. */
export function withoutCounts(texts: Project['texts'], which?: 'all' | 'worked'): Project['texts'] {
  const counted = countedFields(texts, which);
  return Object.fromEntries(Object.entries(texts).filter(([field]) => !counted.includes(field)));
}
