/**
 * Where the join begins on each piece, and how far their corners drift from there if nothing is pinned.
 *
 * Rule: the nearest corner position counts as the first; the front runs forward from there, the back backward.
 * A corner is met where the lane turns, also if it has no positions; one that lies right behind the start is met last.
 */

import type { JoinMade, PairRun, Round } from '../types.ts';
import { mod, sum } from '../whole.ts';
import type { Lane } from './lane.ts';

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

/** A corner as the join comes to it: `at` positions are joined before its turn. */
export type CornerAhead = { corner: number; size: number; at: number };

/** Two lanes as the join begins on them; null where one has no stitches, and there is nothing to join. */
export function meet(
  front: Lane,
  back: Lane,
  { faces, twisted }: Pick<Round, 'faces' | 'twisted'>,
  start: JoinMade,
): Meeting | null {
  if (back.total === 0 || front.total === 0) return null;
  const sideCount = front.sides.length;
  const frontSide = start.side;
  const frontFrom = mod(
    (front.sideFrom[frontSide] as number) + placeOn(front, frontSide, frontSide - 1, start),
    front.total,
  );
  const facing = mod(mod(faces - frontSide - (start.turned ?? 0), sideCount), back.sides.length);
  const meeting = { front, back, faces, start, frontFrom, backFrom: 0, frontSide, backSide: facing, twisted };
  return begunAt(meeting, facing);
}

/** The same meeting with the back begun on another of its sides. */
export function begunAt(meeting: Meeting, backSide: number): Meeting {
  const { back, start } = meeting;
  const end = (back.sideFrom[backSide] as number) + (back.sides[backSide] as number) - 1;
  const backFrom = mod(end - placeOn(back, backSide, backSide, start) - (start.offset ?? 0), back.total);
  return { ...meeting, backSide, backFrom };
}

/**
 * Stitches of the side before the start; -1 where it begins in the corner beside it. On a side too short for that the
 * join begins in its last stitch: no hand begins beyond the next corner.
 */
function placeOn(lane: Lane, side: number, cornerBeside: number, start: JoinMade): number {
  const size = lane.sizes[mod(cornerBeside, lane.sizes.length || 1)] ?? 0;
  const nearest = size > 0 ? -1 : 0;
  return Math.max(nearest, Math.min(nearest + start.fromCorner - 1, (lane.sides[side] as number) - 1));
}

/** The front's corners in join order, the one beside the start last. */
export function frontCorners({ front, frontSide, start }: Meeting): CornerAhead[] {
  const order = front.sizes.map((_, n) => mod(frontSide + n, front.sizes.length));
  return ahead(front, order, (corner) => corner, placeOn(front, frontSide, frontSide - 1, start));
}

/** The back's corners in join order, as if it had been begun where it belongs. */
export function backCorners({ back, backSide, start }: Meeting): CornerAhead[] {
  const k = back.sizes.length;
  const order = back.sizes.map((_, n) => mod(backSide - n - 1, k));
  return ahead(back, order, (corner) => mod(corner + 1, k), placeOn(back, backSide, backSide, start));
}

function ahead(
  lane: Lane,
  order: number[],
  sideBefore: (corner: number) => number,
  begun: number,
): CornerAhead[] {
  let at = -begun;
  return order.map((corner) => {
    const size = lane.sizes[corner] as number;
    at += lane.sides[sideBefore(corner)] as number;
    const met = { corner, size, at };
    at += size;
    return met;
  });
}

/** Corners as a join begun `offset` positions further along really meets them: all `at` from 1 to the whole round. */
export function around(corners: CornerAhead[], offset: number, total: number): CornerAhead[] {
  return corners
    .map((one) => ({ ...one, at: mod(one.at - offset - 1, total) + 1 }))
    .sort((a, b) => a.at - b.at);
}

/**
 * Where in join order a position of the back is passed over, ascending: the first of its corner that the join
 * comes to. The one in which the yarn is attached cannot be.
 */
export function skipPlaces(meeting: Meeting): { corner: number; place: number }[] {
  const { back, start } = meeting;
  return around(backCorners(meeting), start.offset ?? 0, back.total)
    .filter(({ corner, size, at }) => start.skipped?.includes(corner) && size > 0 && at < back.total)
    .map(({ corner, at }) => ({ corner, place: at }));
}

/** A pair that takes two of a piece: `front` counts the front's positions from the join's start. */
export type Pinch = { front: number; of: 'front' | 'back'; together: NonNullable<PairRun['together']> };

/** Where in join order two are taken with one, ascending. */
export function pinchesOf({ front, frontFrom, start }: Meeting): Pinch[] {
  return (start.together ?? [])
    .map(({ side, place, of, ...together }) => ({
      front: mod((front.sideFrom[side] ?? 0) + place - frontFrom, front.total),
      of,
      together,
    }))
    .sort((a, b) => a.front - b.front);
}

/** How many more of the back than of the front pinches take. */
export const takenUp = (pinches: readonly Pick<Pinch, 'of'>[]): number =>
  sum(pinches.map(({ of }) => (of === 'back' ? 1 : -1)));

/**
 * By how many positions each corner of the back comes late (+) or early (-), in join order, nothing pinned.
 * At the corner beside the start that is what the whole round has too much (+) or too little (-).
 */
export function driftsOf(meeting: Meeting): number[] {
  const { back, start } = meeting;
  const offset = start.offset ?? 0;
  const skips = skipPlaces(meeting);
  const pinches = pinchesOf(meeting);
  const backs = backCorners(meeting);
  return frontCorners(meeting).map((front, n) => {
    const met = backs[n];
    if (!met) return 0;
    const reached = mod(met.at - offset - 1, back.total) + 1;
    const skipped = skips.filter(({ place }) => place < reached).length;
    const taken = takenUp(pinches.filter((pinch) => pinch.front < front.at));
    return met.at - offset - skipped - taken - front.at;
  });
}
