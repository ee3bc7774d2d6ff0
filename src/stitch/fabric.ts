/**
 * What the hook works into, as strands: Vs, chains, posts. Work runs from right to left; a V has its point
 * to the right, where it comes out of the stitch before, and its open end to the left. `facing: 'away'`
 * turns it round: the other piece of a join, seen from its wrong side.
 */
import { type Axes, at, from, heading, type Point } from './point.ts';
import type { Strand, YarnName } from './scene.ts';

type Facing = 'along' | 'away';

export type Veed = {
  key: string;
  x: number;
  y: number;
  yarn: YarnName;
  z?: number;
  marked?: 'both' | 'back' | 'front';
  facing?: Facing;
  faint?: boolean;
  /** Height of the front loop where it lies higher than the back loop: a stitch stands between them. */
  frontOver?: number;
};

/** The two loops on top of a stitch, seen a little from above: the back loop higher on the page. */
export function vee({
  key,
  x,
  y,
  yarn,
  z = 24,
  marked,
  facing = 'along',
  faint = false,
  frontOver,
}: Veed): Strand[] {
  const turn = facing === 'along' ? 1 : -1;
  const leg = (side: 1 | -1): Point[] => [
    at(x + turn * 36, y + side * 2 + 1),
    at(x + turn * 26, y + side * 5 + 1),
    at(x + turn * 8, y + side * 10.5),
    at(x - turn * 14, y + side * 12),
    at(x - turn * 27, y + side * 8),
    at(x - turn * 30.5, y + side * 2),
    at(x - turn * 30, y - side * 4),
  ];
  const strand = (end: 'back' | 'front'): Strand => ({
    what: 'strand',
    key: `${key}-${end}`,
    points: leg(end === 'back' ? -1 : 1),
    yarn,
    z: end === 'front' && frontOver !== undefined ? frontOver : z,
    ...((marked === 'both' || marked === end) && { marked: true }),
    ...(faint && { faint }),
  });
  return [strand('back'), strand('front')];
}

/** Where the next loop comes out of a V. */
export const head = (x: number, y: number): Point => at(x - 26, y);

/** One chain of a row; `angle` is the way the row runs, in degrees from +x. */
export type Linked = Pick<Veed, 'key' | 'x' | 'y' | 'yarn' | 'z'> & { angle: number };

/** The same two loops turned. */
export function link({ key, x, y, angle, yarn, z = 24 }: Linked): Strand[] {
  const along = heading(angle);
  const axes: Axes = { origin: at(x, y), along, across: [-along[1], along[0]] };
  // A V runs from its point on the right to its head on the left.
  return vee({ key, x: 0, y: 0, yarn, z }).map((strand) => ({
    ...strand,
    points: strand.points.map(([u, v]) => from(axes, -u * 0.72, -v * 0.9)),
  }));
}

/** What stands between the foot of a stitch and its top. */
export type Post = { key: string; yarn: YarnName; top: Point; foot: Point; z?: number };

/** A treble's post: two strands that stand on the base chain before it, with the bar across. */
export function treblePost({ key, yarn, top, foot, z = 16 }: Post): Strand[] {
  const [xt, yt] = top;
  const [xf, yf] = foot;
  const y = (share: number): number => yf + (yt - yf) * share;
  const x = (share: number): number => xf + (xt - xf) * share;
  const side = (way: 1 | -1): Point[] => [
    at(xf + way * 6, yf),
    at(x(0.25) + way * 9, y(0.25)),
    at(x(0.46) + way * 7, y(0.46)),
    at(x(0.72) + way * 10, y(0.72)),
    at(xt + way * 13, yt),
  ];
  return [
    { what: 'strand', key: `${key}-left`, points: side(-1), yarn, z },
    { what: 'strand', key: `${key}-right`, points: side(1), yarn, z },
    {
      what: 'strand',
      key: `${key}-bar`,
      points: [
        at(x(0.5) - 19, y(0.43)),
        at(x(0.5) - 6, y(0.5)),
        at(x(0.5) + 7, y(0.53)),
        at(x(0.5) + 19, y(0.62)),
      ],
      yarn,
      z: z + 1,
      round: true,
    },
  ];
}

/** A post whose upper half is still loops on the hook. */
export const halfPost = (strands: readonly Strand[]): Strand[] =>
  strands.map((strand) =>
    strand.points.length > 4 ? { ...strand, points: strand.points.slice(0, 3) } : strand,
  );

/** A double crochet's body: two strands that part from its foot. */
export function shortPost({ key, yarn, top, foot, z = 26 }: Post): Strand[] {
  const [xt, yt] = top;
  const [xf, yf] = foot;
  const side = (way: 1 | -1): Point[] => [
    at(xf + way * 4, yf),
    at(xf + (xt - xf) * 0.5 + way * 9, yf + (yt - yf) * 0.5),
    at(xt + way * 15, yt),
  ];
  return [
    { what: 'strand', key: `${key}-left`, points: side(-1), yarn, z },
    { what: 'strand', key: `${key}-right`, points: side(1), yarn, z },
  ];
}
