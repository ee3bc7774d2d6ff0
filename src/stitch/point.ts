/** Points and smooth lines. Everything drawn is a list of points, so that it can be mirrored and tweened as data. */
export type Point = readonly [x: number, y: number];

export const at = (x: number, y: number): Point => [x, y];

export const add = (a: Point, b: Point): Point => [a[0] + b[0], a[1] + b[1]];

export const times = (a: Point, by: number): Point => [a[0] * by, a[1] * by];

/** A turned frame: where it begins, and its two directions. */
export type Axes = { origin: Point; along: Point; across: Point };

/** origin + u·along + v·across: a point given in a turned frame. */
export const from = ({ origin, along, across }: Axes, u: number, v: number): Point =>
  add(origin, add(times(along, u), times(across, v)));

export const between = (a: Point, b: Point, t: number): Point => [
  a[0] + (b[0] - a[0]) * t,
  a[1] + (b[1] - a[1]) * t,
];

/** Unit vector at an angle in degrees, clockwise from +x as y points down. */
export const heading = (degrees: number): Point => {
  const radians = (degrees * Math.PI) / 180;
  return [Math.cos(radians), Math.sin(radians)];
};

const number = (n: number): string => `${Math.round(n * 10) / 10}`;

const say = ([x, y]: Point): string => `${number(x)} ${number(y)}`;

/** Path data of a smooth line through all points (Catmull-Rom, tension 1/6). */
export function smooth(points: readonly Point[], closed = false): string {
  const first = points[0];
  if (first === undefined) return '';
  const n = points.length;
  const get = (i: number): Point =>
    (closed ? points[(i + n) % n] : points[Math.max(0, Math.min(n - 1, i))]) ?? first;
  let path = `M${say(first)}`;
  for (let i = 0; i < (closed ? n : n - 1); i++) {
    const [before, a, b, after] = [get(i - 1), get(i), get(i + 1), get(i + 2)];
    const c1 = add(a, times(add(b, times(before, -1)), 1 / 6));
    const c2 = add(b, times(add(after, times(a, -1)), -1 / 6));
    path += `C${say(c1)} ${say(c2)} ${say(b)}`;
  }
  return closed ? `${path}Z` : path;
}

/** Path data of straight lines through all points. */
export const straight = (points: readonly Point[], closed = false): string =>
  `M${points.map(say).join('L')}${closed ? 'Z' : ''}`;
