/** What was counted on the work: reading it from its fields, and writing it back into them. */
import { limits, type Seen, type Shape } from '../../core/index.ts';
import { type Bounds, type Reader, typedOver } from './reading.ts';
import type { Field, Project } from './snapshot.ts';

/**
 * What was counted on the work, as far as it was: the back's rounds, the front again, and the join. An emptied field
 * counts as not counted. The front's sides are as the person counts them; `derive` takes the corners off.
 */
export function readSeen(reader: Reader): Seen {
  const { project } = reader;
  const { sideCount } = project;
  const list = (piece: string, count: number, bounds?: Bounds): (number | null)[] =>
    Array.from({ length: count }, (_, i) => typedOver(reader, `${piece}.${i}`, 54, bounds) ?? null);
  const any = (values: (number | null)[]): boolean => values.some((value) => value !== null);
  const round = (piece: string): Counts | undefined => {
    const fewer = isShort(project, piece) ? 1 : 0;
    const sides = list(`worked.${piece}`, Math.max(1, sideCount - fewer));
    const corners = list(cornersOf(piece), Math.max(0, sideCount - fewer), { high: limits.cornerSize });
    if (!any(sides) && !any(corners)) return undefined;
    return any(corners) ? { sides, corners } : { sides };
  };
  const foundation = round('foundation');
  const edgings = Array.from({ length: project.edgingCount }, (_, n) => round(`edging.${n}`));
  const front = list('seen.front', Math.max(1, sideCount), { low: 1 });
  const eitherWay = { low: -limits.stitches, high: limits.stitches };
  const drift = list('seen.drift', sideCount, eitherWay);
  const leftOver = typedOver(reader, 'seen.left-over', 2, eitherWay);
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
export function ordinaryFront(seen: Seen, project: Project, edge: Shape): Seen {
  if (!seen.front) return seen;
  const sides = seen.front.sides.map((count, side) =>
    count === null ? null : count - takenIn(project, edge, side),
  );
  return { ...seen, front: { sides } };
}

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
