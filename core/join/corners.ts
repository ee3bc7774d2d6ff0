/**
 * Pinning corner to corner: cutting both lanes at their corners and matching stretch with stretch.
 *
 * Rule: as many corners as both have are matched, in order; where one piece has a corner too few, two sides and the
 * corner between them lie against one long side. Which, the counts may tell: where all other sides are as they should
 * be with one corner left out, that is what a person calls it, though another laying may differ less. Where they do
 * not tell, the sides differ as little as possible.
 */

import { mod, sum } from '../whole.ts';
import { begunWithout, cornersLeftOut, facedBy } from './left-out.ts';
import {
  around,
  backCorners,
  begunAt,
  type CornerAhead,
  frontCorners,
  type Meeting,
  skipPlaces,
} from './meeting.ts';

/** A part of the join between two cuts: `front` and `back` positions to be paired within themselves. */
export type Stretch = {
  corner: boolean;
  frontSide: number;
  backSide: number;
  /** -1 on a side. */
  frontCorner: number;
  backCorner: number;
  front: number;
  back: number;
  /** Positions of the back passed over here. */
  skipped: number;
};

/** One piece cut in join order: what lies before each corner, the corners, and what is left after the last. */
type Cut = { sides: number[]; lengths: number[]; corners: number[]; sizes: number[] };

/** Both lanes cut and matched in join order; null where one of them has no corners and the other has. */
export function alignCorners(meeting: Meeting): Stretch[] | null {
  const { front, back } = meeting;
  if (front.sizes.length === 0 && back.sizes.length === 0) return [whole(meeting)];
  if (front.sizes.length === 0 || back.sizes.length === 0) return null;
  const frontCut = cutFront(meeting);
  const backCut = cutBack(meeting);
  return stretchesOf(meeting, frontCut, backCut, pinsOf(meeting, frontCut, backCut));
}

/** Where the counts tell which corner was left out every other is pinned to its own; else they are with the least misfit. */
function pinsOf(meeting: Meeting, front: Cut, back: Cut): Matched['pins'] {
  const leftOut = knownLeftOut(meeting);
  if (leftOut === null) return matchCorners(front, back).pins;
  const known = back.corners.map((corner, b): [number, number] => {
    const due = corner < leftOut ? corner : corner + 1;
    return [front.corners.indexOf(facedBy(meeting, due)), b];
  });
  // Begun elsewhere by the hand, the corners do not come in the order of their own.
  const isInOrder = known.every(([f], b) => b === 0 || f > (known[b - 1]?.[0] ?? 0));
  return isInOrder ? known : matchCorners(front, back).pins;
}

/** The one corner that the counts tell was left out; null where they tell none. */
function knownLeftOut(meeting: Meeting): number | null {
  const [only, ...others] = cornersLeftOut(meeting);
  return only === undefined || others.length > 0 ? null : only;
}

/**
 * Where the back has lost or gained a corner, its sides can no longer be counted off: the hand begins where it would
 * with the corner that is known to be left out; else it lays the back so that the corners it has fit as well as they can.
 */
export function begunWhereItFits(meeting: Meeting): Meeting {
  const { front, back, start } = meeting;
  const k = back.sizes.length;
  if (front.sizes.length === k || front.sizes.length === 0 || k === 0) return meeting;
  const leftOut = knownLeftOut(meeting);
  const side = leftOut === null ? bestFittingSide(meeting) : begunWithout(meeting, leftOut);
  return begunAt(meeting, mod(side - (start.turned ?? 0), k));
}

/** The side of the back from which its corners fit with the least misfit. */
function bestFittingSide(meeting: Meeting): number {
  const frontCut = cutFront(meeting);
  const asIs = { ...meeting, start: { ...meeting.start, offset: 0 } };
  const misfits = meeting.back.sizes.map(
    (_, side) => matchCorners(frontCut, cutBack(begunAt(asIs, side))).misfit,
  );
  return misfits.indexOf(Math.min(...misfits));
}

const whole = ({ front, back }: Meeting): Stretch => ({
  corner: false,
  frontSide: 0,
  backSide: 0,
  frontCorner: -1,
  backCorner: -1,
  front: front.total,
  back: back.total,
  skipped: 0,
});

function cutFront(meeting: Meeting): Cut {
  const { front } = meeting;
  const k = front.sizes.length;
  const met = around(frontCorners(meeting), 0, front.total);
  return cut(
    met,
    front.total,
    ({ corner }) => corner,
    ({ corner }) => mod(corner + 1, k),
  );
}

function cutBack(meeting: Meeting): Cut {
  const { back, start } = meeting;
  const k = back.sizes.length;
  const met = around(backCorners(meeting), start.offset ?? 0, back.total);
  return cut(
    met,
    back.total,
    ({ corner }) => mod(corner + 1, k),
    ({ corner }) => corner,
  );
}

/** Cuts a lane at its corners; of a corner in which the join begins, what lies behind the start belongs to the corner. */
function cut(
  met: CornerAhead[],
  total: number,
  sideBefore: (met: CornerAhead) => number,
  sideAfter: (met: CornerAhead) => number,
): Cut {
  const lengths: number[] = [];
  const sizes: number[] = [];
  let end = 0;
  for (const { at, size } of met) {
    const positions = Math.min(size, total - at);
    lengths.push(at - end);
    sizes.push(positions);
    end = at + positions;
  }
  lengths.push(total - end);
  const sides = [sideBefore(met[0] as CornerAhead), ...met.map(sideAfter)];
  return { sides, lengths, corners: met.map(({ corner }) => corner), sizes };
}

type Matched = {
  /** Pinned corners as indices into both cuts, [front, back], ascending. */
  pins: [number, number][];
  /** Sum of the differences between pinned stretches. */
  misfit: number;
};

/** Every corner of the piece with fewer is pinned to one of the other's, in order, with the least misfit. */
function matchCorners(front: Cut, back: Cut): Matched {
  const isFrontFewer = front.corners.length <= back.corners.length;
  const [fewer, more] = isFrontFewer ? [front, back] : [back, front];
  const spare = more.corners.length - fewer.corners.length;
  const misfit = (i: number, toI: number, j: number, toJ: number): number =>
    Math.abs(between(fewer, i, toI) - between(more, j, toJ));
  /** Ways that pin corners 0…i of the fewer, the last one to corner j of the other: best[j - i] for each j. */
  type Way = { misfit: number; pins: number[] };
  let ways: Way[] = [{ misfit: 0, pins: [] }];
  for (let i = 0; i < fewer.corners.length; i++) {
    const next: Way[] = [];
    for (let left = 0; left <= spare; left++) {
      const j = i + left;
      const options = ways.slice(0, left + 1).map((way): Way => {
        const last = way.pins.at(-1) ?? -1;
        return { misfit: way.misfit + misfit(i - 1, i, last, j), pins: [...way.pins, j] };
      });
      next.push(leastOf(options));
    }
    ways = next;
  }
  const ends = ways.map((way): Way => {
    const last = way.pins.at(-1) ?? -1;
    const rest = misfit(fewer.corners.length - 1, fewer.corners.length, last, more.corners.length);
    return { misfit: way.misfit + rest, pins: way.pins };
  });
  const chosen = leastOf(ends);
  const pins = chosen.pins.map((j, i): [number, number] => (isFrontFewer ? [i, j] : [j, i]));
  return { pins, misfit: chosen.misfit };
}

const leastOf = <W extends { misfit: number }>(ways: W[]): W =>
  ways.reduce((best, way) => (way.misfit < best.misfit ? way : best));

/** Positions between two corners of a cut (-1: the start, length: the end), corners between taken in. */
function between(piece: Cut, from: number, to: number): number {
  return sum(piece.lengths.slice(from + 1, to + 1)) + sum(piece.sizes.slice(from + 1, to));
}

function stretchesOf(meeting: Meeting, front: Cut, back: Cut, pins: [number, number][]): Stretch[] {
  const stretches: Stretch[] = [];
  const skipped = new Set(skipPlaces(meeting).map(({ corner }) => corner));
  let lastF = -1;
  let lastB = -1;
  const side = (toF: number, toB: number): void => {
    stretches.push({
      corner: false,
      frontSide: front.sides[lastF + 1] as number,
      backSide: back.sides[lastB + 1] as number,
      frontCorner: -1,
      backCorner: -1,
      front: between(front, lastF, toF),
      back: between(back, lastB, toB),
      skipped: skippedBetween(lastB, toB),
    });
  };
  // Corners of the back that are pinned to nothing lie within a side, and so does what is passed over in them.
  const skippedBetween = (from: number, to: number): number =>
    back.corners.slice(from + 1, to).filter((corner) => skipped.has(corner)).length;
  for (const [f, b] of pins) {
    side(f, b);
    const backCorner = back.corners[b] as number;
    stretches.push({
      corner: true,
      frontSide: front.sides[f] as number,
      backSide: back.sides[b] as number,
      frontCorner: front.corners[f] as number,
      backCorner,
      front: front.sizes[f] as number,
      back: back.sizes[b] as number,
      skipped: skipped.has(backCorner) ? 1 : 0,
    });
    lastF = f;
    lastB = b;
  }
  side(front.corners.length, back.corners.length);
  return stretches;
}
