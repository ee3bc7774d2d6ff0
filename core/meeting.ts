/**
 * Where the join begins on each piece, and how far their corners drift from there if nothing is pinned.
 *
 * Rule: the nearest corner position counts as the first; the front runs forward from there, the back backward.
 */
import { type Lane, laneOfEither, laneOfRound } from './lane.ts';
import type { Edge, JoinMade, Problem, Round } from './types.ts';
import { mod } from './whole.ts';

/** Both lanes and where on them the join begins. The back's own index falls as the join goes on. */
export type Meeting = {
  front: Lane;
  back: Lane;
  /** Front side the back's side 0 faces. */
  faces: number;
  start: JoinMade;
  frontFrom: number;
  backFrom: number;
  /** First side of each piece. */
  frontSide: number;
  backSide: number;
  twisted: boolean;
};

export function meet(
  frontValue: Edge | Round,
  backValue: Round,
  start: JoinMade,
  problems: Problem[],
): Meeting | null {
  const front = laneOfEither(frontValue);
  const back = laneOfRound(backValue);
  if (back.total === 0 || front.total === 0) {
    problems.push({
      at: 'back',
      code: 'back-empty',
      says: 'There is nothing to join: one of the rounds has no stitches',
    });
    return null;
  }
  const sideCount = front.sides.length;
  if (start.side >= sideCount) {
    problems.push({
      at: 'start.side',
      code: 'join-side',
      says: `The side where the join begins must be between 1 and ${sideCount}`,
    });
    return null;
  }
  const backSide = mod(mod(backValue.faces - start.side - (start.turned ?? 0), sideCount), back.sides.length);
  return {
    front,
    back,
    faces: backValue.faces,
    start,
    frontSide: start.side,
    backSide,
    frontFrom: mod(frontPlace(front, start.side, start.fromCorner), front.total),
    backFrom: mod(backPlace(back, backSide, start.fromCorner) - (start.offset ?? 0), back.total),
    twisted: backValue.twisted,
  };
}

/** The nearest corner position counts as the first; where a corner has none, the first stitch does. */
function frontPlace(front: Lane, side: number, fromCorner: number): number {
  const before = front.sizes[mod(side - 1, front.sizes.length || 1)] ?? 0;
  return (front.sideFrom[side] as number) + fromCorner - (before > 0 ? 2 : 1);
}

/** The same on the back, which is joined from the end of its side towards the beginning. */
function backPlace(back: Lane, side: number, fromCorner: number): number {
  const after = back.sizes[side] ?? 0;
  const end = (back.sideFrom[side] as number) + (back.sides[side] as number) - 1;
  return end - fromCorner + (after > 0 ? 2 : 1);
}

/** Where in join order the back's skipped corner positions lie, ascending. */
export function skipPlaces(meeting: Meeting): number[] {
  const { back, backFrom, start } = meeting;
  return (start.skipped ?? [])
    .filter((corner) => (back.sizes[corner] ?? 0) > 0)
    .map((corner) =>
      mod(backFrom - ((back.cornerFrom[corner] as number) + (back.sizes[corner] as number) - 1), back.total),
    )
    .sort((a, b) => a - b);
}

/** By how many positions each corner of the back comes late (+) or early (-), in join order, nothing pinned. */
export function driftsOf(meeting: Meeting): number[] {
  const { front, back, frontFrom, backFrom } = meeting;
  const skips = skipPlaces(meeting);
  return front.sizes.map((_, n) => {
    const frontCorner = mod(meeting.frontSide + n, front.sizes.length);
    if (back.sizes.length === 0) return 0;
    const backCorner = mod(meeting.backSide - n - 1, back.sizes.length);
    const size = back.sizes[backCorner] as number;
    const frontAt = mod((front.cornerFrom[frontCorner] as number) - frontFrom, front.total);
    const last = (back.cornerFrom[backCorner] as number) + size - 1;
    const backAt = mod(backFrom - last, back.total);
    const skipped = skips.filter((place) => place < backAt).length;
    const drift = backAt - skipped - frontAt;
    return nearest(drift, n, front, back);
  });
}

/** The last corner may be wrapped around by either lane; the shorter way is meant. */
function nearest(drift: number, n: number, front: Lane, back: Lane): number {
  if (n < front.sizes.length - 1) return drift;
  const around = Math.max(front.total, back.total);
  if (drift > around / 2) return drift - back.total;
  return drift < -around / 2 ? drift + back.total : drift;
}
