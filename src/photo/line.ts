/**
 * The line that lies on the edge: a smooth curve through the two ends and the points that bend it, walked in steps of
 * one pixel. Places along it are told in pixels from the first end. Plain geometry.
 */

/** Pixels of the photo, x to the right and y down. */
export type Point = { x: number; y: number };

/** `points`: one for each pixel along the line, the last one at its end. */
export type Line = { points: readonly Point[]; length: number };

/** Steps of the curve between two of the maker's points, before it is walked evenly. */
const fine = 48;

/** @param through at least two points, from end to end */
export function lineThrough(through: readonly Point[]): Line {
  const curve: Point[] = [];
  for (let i = 0; i + 1 < through.length; i++) curve.push(...piece(through, i));
  const last = through.at(-1);
  if (last) curve.push(last);
  return walked(curve);
}

/** From point i to the next. Centripetal Catmull–Rom: no loops, whatever the distances (Yuksel and others, 2011). */
function piece(through: readonly Point[], i: number): Point[] {
  const b = through[i] as Point;
  const c = through[i + 1] as Point;
  const a = through[i - 1] ?? mirrored(c, b);
  const d = through[i + 2] ?? mirrored(b, c);
  const knot = (p: Point, q: Point): number => Math.max(1e-6, Math.sqrt(Math.hypot(q.x - p.x, q.y - p.y)));
  const [ab, bc, cd] = [knot(a, b), knot(b, c), knot(c, d)];
  return Array.from({ length: fine }, (_, k) => {
    const t = (k / fine) * bc;
    const along = (name: 'x' | 'y'): number => {
      const one = mix(a[name], b[name], (t + ab) / ab);
      const two = mix(b[name], c[name], t / bc);
      const three = mix(c[name], d[name], (t - bc) / cd);
      const left = mix(one, two, (t + ab) / (ab + bc));
      const right = mix(two, three, t / (bc + cd));
      return mix(left, right, t / bc);
    };
    return { x: along('x'), y: along('y') };
  });
}

const mix = (from: number, to: number, t: number): number => from + (to - from) * t;
const mirrored = (from: Point, at: Point): Point => ({ x: 2 * at.x - from.x, y: 2 * at.y - from.y });

/** The same way in even steps of a pixel. */
function walked(curve: readonly Point[]): Line {
  const points: Point[] = [];
  let length = 0;
  for (let i = 0; i + 1 < curve.length; i++) {
    const from = curve[i] as Point;
    const to = curve[i + 1] as Point;
    const step = Math.hypot(to.x - from.x, to.y - from.y);
    for (let next = points.length; next <= length + step && step > 0; next++) {
      const t = (next - length) / step;
      points.push({ x: mix(from.x, to.x, t), y: mix(from.y, to.y, t) });
    }
    length += step;
  }
  const last = curve.at(-1);
  if (last && (points.length < 2 || length > points.length - 1)) points.push(last);
  return { points, length };
}

/** The place `along` pixels from the first end; before it and beyond the last one the line goes straight on. */
export function pointAt(line: Line, along: number): Point {
  const { points } = line;
  const i = Math.min(Math.max(0, Math.floor(along)), Math.max(0, points.length - 2));
  const from = points[i] as Point;
  const to = points[i + 1] ?? from;
  return { x: mix(from.x, to.x, along - i), y: mix(from.y, to.y, along - i) };
}

/** The direction across the line, to the right of the way along it; one pixel long. */
export function acrossAt(line: Line, along: number): Point {
  const reach = 6;
  const before = pointAt(line, Math.max(0, along - reach));
  const after = pointAt(line, Math.min(line.length, along + reach));
  const long = Math.hypot(after.x - before.x, after.y - before.y) || 1;
  return { x: -(after.y - before.y) / long, y: (after.x - before.x) / long };
}

/** The place on the line that is nearest to a point, and how far off it is. */
export function nearestOn(line: Line, { x, y }: Point): { along: number; off: number } {
  let best = { along: 0, off: Number.POSITIVE_INFINITY };
  for (const [along, point] of line.points.entries()) {
    const off = Math.hypot(point.x - x, point.y - y);
    if (off < best.off) best = { along: Math.min(along, line.length), off };
  }
  return best;
}
