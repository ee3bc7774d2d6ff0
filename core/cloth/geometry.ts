/**
 * Straight-sided pieces on a plane.
 *
 * Rule: growing moves every edge outwards by the same distance, so angles stay and corners move along their
 * bisectors. A side that this would turn round is gone, and the piece cannot be made so small.
 */
import type { Point } from './types.ts';

const minus = (a: Point, b: Point): Point => ({ x: a.x - b.x, y: a.y - b.y });
const cross = (a: Point, b: Point): number => a.x * b.y - a.y * b.x;
const dot = (a: Point, b: Point): number => a.x * b.x + a.y * b.y;
const around = <T>(list: readonly T[], index: number): T => list[(index + list.length) % list.length] as T;

const distance = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);

/** Length of side i, which ends in corner i. */
export const sidesOf = (corners: readonly Point[]): number[] =>
  corners.map((corner, i) => distance(around(corners, i - 1), corner));

/** The box around a piece. */
export function boxOf(corners: readonly Point[]): {
  width: number;
  height: number;
  left: number;
  top: number;
} {
  const xs = corners.map(({ x }) => x);
  const ys = corners.map(({ y }) => y);
  const left = Math.min(...xs);
  const top = Math.min(...ys);
  return { left, top, width: Math.max(...xs) - left, height: Math.max(...ys) - top };
}

/**
 * Corners of the polygon with these sides whose corners lie on a circle: there is exactly one. Null where the
 * longest side is as long as all the others together. Side 0 lies on top, the rest go round anticlockwise as the
 * maker sees it (y grows downwards).
 */
export function cornersOnCircle(sides: readonly number[]): Point[] | null {
  const longest = Math.max(...sides);
  const total = sides.reduce((sum, side) => sum + side, 0);
  if (longest >= total - longest) return null;
  const angle = (side: number, radius: number): number => 2 * Math.asin(Math.min(1, side / 2 / radius));
  const turn = (radius: number): number => sides.reduce((sum, side) => sum + angle(side, radius), 0);
  const smallest = longest / 2;
  // With the middle outside the piece, the longest side spans what the others leave of the circle.
  const isOutside = turn(smallest) < 2 * Math.PI;
  const over = (radius: number): number =>
    isOutside ? turn(radius) - 2 * angle(longest, radius) : turn(radius) - 2 * Math.PI;
  let low = smallest;
  let high = smallest;
  // Too small a circle: the sides go further round than once (or, outside, the others fall short of the longest).
  const isTooSmall = (radius: number): boolean => (isOutside ? over(radius) < 0 : over(radius) > 0);
  do high *= 2;
  while (isTooSmall(high) && high < smallest * 1e9);
  for (let step = 0; step < 200; step++) {
    const middle = (low + high) / 2;
    if (isTooSmall(middle)) low = middle;
    else high = middle;
  }
  const radius = (low + high) / 2;
  const long = sides.indexOf(longest);
  const spans = sides.map((side, i) =>
    isOutside && i === long ? 2 * Math.PI - angle(side, radius) : angle(side, radius),
  );
  let at = -Math.PI / 2 + (spans[0] as number) / 2;
  return spans.map((span) => {
    at -= span;
    return { x: radius * Math.cos(at), y: radius * Math.sin(at) };
  });
}

/** Corners from sides and the diagonals out of the first corner, one triangle after another; null where one cannot close. */
export function cornersByDiagonals(sides: readonly number[], diagonals: readonly number[]): Point[] | null {
  const k = sides.length;
  const reach = [sides[1] as number, ...diagonals, sides[0] as number];
  const first: Point = { x: 0, y: 0 };
  const corners: Point[] = [first, { x: 0, y: reach[0] as number }];
  let heading = Math.PI / 2;
  for (let i = 2; i < k; i++) {
    const near = reach[i - 2] as number;
    const far = reach[i - 1] as number;
    const side = sides[i] as number;
    const cosine = (near * near + far * far - side * side) / (2 * near * far);
    if (!(Math.abs(cosine) < 1)) return null;
    heading -= Math.acos(cosine);
    corners.push({ x: far * Math.cos(heading), y: far * Math.sin(heading) });
  }
  return sideOnTop(corners);
}

/** Turned so that side 0 lies level on top. */
function sideOnTop(corners: Point[]): Point[] {
  const from = around(corners, -1);
  const along = minus(corners[0] as Point, from);
  const turn = Math.PI - Math.atan2(along.y, along.x);
  return corners.map((corner) => {
    const { x, y } = minus(corner, from);
    return {
      x: x * Math.cos(turn) - y * Math.sin(turn),
      y: x * Math.sin(turn) + y * Math.cos(turn),
    };
  });
}

/** The corner at which the piece bends inwards, or null where it does at none. */
export function bendsInAt(corners: readonly Point[]): number | null {
  const bent = corners.findIndex((corner, i) => {
    const into = minus(corner, around(corners, i - 1));
    const outOf = minus(around(corners, i + 1), corner);
    return cross(into, outOf) >= 0;
  });
  return bent < 0 ? null : bent;
}

/** Every edge moved outwards by `by` (inwards where negative); null where that leaves a side without length. */
export function grow(corners: readonly Point[], by: number): Point[] | null {
  const grown = corners.map((corner, i) => {
    const into = unit(minus(corner, around(corners, i - 1)));
    const outOf = unit(minus(around(corners, i + 1), corner));
    // Going round anticlockwise with y downwards, outwards is a quarter turn from the way, like this.
    const [n, m] = [
      { x: -into.y, y: into.x },
      { x: -outOf.y, y: outOf.x },
    ];
    const scale = by / (1 + dot(n, m));
    return { x: corner.x + (n.x + m.x) * scale, y: corner.y + (n.y + m.y) * scale };
  });
  const isGone = grown.some(
    (corner, i) =>
      dot(minus(corner, around(grown, i - 1)), minus(corners[i] as Point, around(corners, i - 1))) <= 0,
  );
  return isGone ? null : grown;
}

function unit({ x, y }: Point): Point {
  const length = Math.hypot(x, y);
  return { x: x / length, y: y / length };
}
