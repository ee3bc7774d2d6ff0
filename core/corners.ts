/**
 * Pinning corner to corner: cutting both lanes at their corners and matching stretch with stretch.
 *
 * Rule: as many corners as both have are matched, in order, so that the sides differ as little as possible; where
 * one piece has a corner too few, two sides and the corner between them lie against one long side.
 */
import type { Lane } from './lane.ts';
import type { Meeting } from './meeting.ts';
import { mod, sum } from './whole.ts';

/** A part of the join between two cuts: `front` and `back` positions to be paired within themselves. */
export type Stretch = {
  corner: boolean;
  frontSide: number;
  backSide: number;
  frontCorner: number;
  /** Lane index at which this stretch's side begins on the front. */
  frontStart: number;
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
  const matches = matchCorners(frontCut, backCut);
  return stretchesOf(meeting, frontCut, backCut, matches);
}

const whole = ({ front, back }: Meeting): Stretch => ({
  corner: false,
  frontSide: 0,
  backSide: 0,
  frontCorner: -1,
  frontStart: 0,
  front: front.total,
  back: back.total,
  skipped: 0,
});

function cutFront(meeting: Meeting): Cut {
  const { front, frontFrom, frontSide } = meeting;
  const k = front.sizes.length;
  const home = mod(frontSide - 1, k);
  const startOf = (corner: number): number =>
    mod((front.cornerFrom[corner] as number) - frontFrom, front.total);
  return cut(
    front,
    home,
    startOf,
    (corner) => corner,
    (corner) => mod(corner + 1, k),
  );
}

function cutBack(meeting: Meeting): Cut {
  const { back, backFrom, backSide } = meeting;
  const k = back.sizes.length;
  const startOf = (corner: number): number =>
    mod(backFrom - ((back.cornerFrom[corner] as number) + (back.sizes[corner] as number) - 1), back.total);
  return cut(
    back,
    backSide,
    startOf,
    (corner) => mod(corner + 1, k),
    (corner) => corner,
  );
}

/**
 * Cuts a lane at its corners in the order in which the join comes to them. `home` is the corner the start is
 * counted from: it comes last, also where it has no positions and the join begins right behind it.
 */
function cut(
  lane: Lane,
  home: number,
  startOf: (corner: number) => number,
  sideBefore: (corner: number) => number,
  sideAfter: (corner: number) => number,
): Cut {
  const met = lane.sizes
    .map((size, corner) => ({ corner, size, rank: corner === home ? 1 : 0, from: startOf(corner) }))
    .map((one) =>
      one.corner === home && one.size === 0 && one.from === 0 ? { ...one, from: lane.total } : one,
    )
    .sort((a, b) => a.from - b.from || a.rank - b.rank);
  const lengths: number[] = [];
  const sizes: number[] = [];
  let at = 0;
  for (const { from, size } of met) {
    lengths.push(Math.max(0, from - at));
    sizes.push(Math.max(0, Math.min(size, lane.total - from)));
    at = from + (sizes.at(-1) as number);
  }
  lengths.push(Math.max(0, lane.total - at));
  const corners = met.map(({ corner }) => corner);
  const sides = [sideBefore(corners[0] as number), ...corners.map(sideAfter)];
  return { sides, lengths, corners, sizes };
}

/** Matched corner indices [front, back], ascending, with the least difference between sides. */
function matchCorners(front: Cut, back: Cut): [number, number][] {
  const f = front.corners.length;
  const b = back.corners.length;
  if (f === b) return front.corners.map((_, n) => [n, n]);
  const fewer = Math.min(f, b);
  // best[m][i][j]: least difference with m matches, the last being front i with back j.
  const cost = (fromF: number, toF: number, fromB: number, toB: number): number =>
    Math.abs(between(front, fromF, toF) - between(back, fromB, toB));
  let best = new Map<string, { cost: number; path: [number, number][] }>([['-1,-1', { cost: 0, path: [] }]]);
  for (let m = 0; m < fewer; m++) {
    const next = new Map<string, { cost: number; path: [number, number][] }>();
    for (const { cost: soFar, path } of best.values()) {
      const [lastF, lastB] = path.at(-1) ?? [-1, -1];
      for (let i = lastF + 1; i < f; i++)
        for (let j = lastB + 1; j < b; j++) {
          const total = soFar + cost(lastF, i, lastB, j);
          const key = `${i},${j}`;
          if (total < (next.get(key)?.cost ?? Number.POSITIVE_INFINITY))
            next.set(key, { cost: total, path: [...path, [i, j]] });
        }
    }
    best = next;
  }
  let least = Number.POSITIVE_INFINITY;
  let chosen: [number, number][] = [];
  for (const { cost: soFar, path } of best.values()) {
    const [lastF, lastB] = path.at(-1) ?? [-1, -1];
    const total = soFar + cost(lastF, f, lastB, b);
    if (total < least) {
      least = total;
      chosen = path;
    }
  }
  return chosen;
}

/** Positions between two corners of a cut (-1: the start, length: the end), corners between taken in. */
function between(piece: Cut, from: number, to: number): number {
  return sum(piece.lengths.slice(from + 1, to + 1)) + sum(piece.sizes.slice(from + 1, to));
}

function stretchesOf(meeting: Meeting, front: Cut, back: Cut, matches: [number, number][]): Stretch[] {
  const stretches: Stretch[] = [];
  const skipped = meeting.start.skipped ?? [];
  let lastF = -1;
  let lastB = -1;
  const side = (toF: number, toB: number): void => {
    const frontSide = front.sides[lastF + 1] as number;
    stretches.push({
      corner: false,
      frontSide,
      backSide: back.sides[lastB + 1] as number,
      frontCorner: -1,
      frontStart: meeting.front.sideFrom[frontSide] as number,
      front: between(front, lastF, toF),
      back: between(back, lastB, toB),
      skipped: 0,
    });
  };
  for (const [f, b] of matches) {
    side(f, b);
    const corner = front.corners[f] as number;
    stretches.push({
      corner: true,
      frontSide: front.sides[f] as number,
      backSide: back.sides[b] as number,
      frontCorner: corner,
      frontStart: meeting.front.cornerFrom[corner] as number,
      front: front.sizes[f] as number,
      back: back.sizes[b] as number,
      skipped: skipped.includes(back.corners[b] as number) && (back.sizes[b] as number) > 0 ? 1 : 0,
    });
    lastF = f;
    lastB = b;
  }
  side(front.corners.length, back.corners.length);
  return stretches;
}
