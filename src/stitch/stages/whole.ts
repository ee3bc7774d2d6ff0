/** Still pictures of a whole piece: the ring before it is closed, and which way front and back run. */
import { Z } from '../loops.ts';
import { at, heading, type Point } from '../point.ts';
import type { Item, Scene, YarnName } from '../scene.ts';

export const words = (text: string, x: number, y: number, size = 20): Item => ({
  what: 'words',
  key: `words ${text} ${x} ${y}`,
  where: at(x, y),
  words: text,
  size,
  align: 'middle',
  z: Z.words,
});

/** A square with rounded corners as points, for a smooth closed line. */
export function square(x: number, y: number, half: number, round = 0.8): Point[] {
  const r = half * round;
  return [
    at(x - r, y - half),
    at(x, y - half),
    at(x + r, y - half),
    at(x + half, y - r),
    at(x + half, y),
    at(x + half, y + r),
    at(x + r, y + half),
    at(x, y + half),
    at(x - r, y + half),
    at(x - half, y + r),
    at(x - half, y),
    at(x - half, y - r),
  ];
}

/** A circle as points, for a smooth closed line or area. */
export const circle = ([x, y]: Point, half: number): Point[] =>
  Array.from({ length: 12 }, (_, i) => {
    const [dx, dy] = heading(i * 30);
    return at(x + dx * half, y + dy * half);
  });

export const ring = (key: string, points: readonly Point[], yarn: YarnName, z: number): Item => ({
  what: 'strand',
  key,
  points,
  yarn,
  z,
  closed: true,
});

/** A ring that lies flat: its middle, and how far its tops and its base are from there. */
type FlatRing = { x: number; y: number; outer: number; inner: number };

const posts = ({ x, y, outer, inner }: FlatRing, skipBottom: boolean): Item[] => {
  const places = [-0.84, -0.56, -0.28, 0, 0.28, 0.56, 0.84];
  return places.flatMap((p, i): Item[] => {
    const line = (key: string, a: Point, b: Point): Item => ({
      what: 'line',
      key: `${key}${i}${x}`,
      points: [a, b],
      broken: false,
      z: 8,
    });
    return [
      line('n', at(x + p * inner, y - outer), at(x + p * inner, y - inner)),
      ...(skipBottom ? [] : [line('s', at(x + p * inner, y + outer), at(x + p * inner, y + inner))]),
      line('e', at(x + outer, y + p * inner), at(x + inner, y + p * inner)),
      line('w', at(x - outer, y + p * inner), at(x - inner, y + p * inner)),
    ];
  });
};

/** The four corners of a square. */
export const corners = ([x, y]: Point, half: number): Point[] => [
  at(x - half, y - half),
  at(x + half, y - half),
  at(x + half, y + half),
  at(x - half, y + half),
];

/** The ring before it is closed: flat, and twisted once. Tops outside, base inside. */
export function rings(flat: string, twisted: string, isRound = false): Scene {
  const one: FlatRing = { x: 102, y: 122, outer: 78, inner: 50 };
  const other: FlatRing = { ...one, x: 298 };
  const lying = isRound
    ? [...spokes(one), ...closedRound('flat', one)]
    : [
        ...posts(one, false),
        ring('flat-tops', square(one.x, one.y, one.outer), 'foundation', 20),
        ring('flat-base', square(one.x, one.y, one.inner), 'foundation', 20),
      ];
  const turned = isRound
    ? [...spokes(other, 2), ...twistRound('tops', other), ...twistRound('base', other)]
    : [...posts(other, true), ...twist('tops', other), ...twist('base', other)];
  return [...lying, ...turned, words(flat, one.x, 248), words(twisted, other.x, 248)];
}

/** The ring as it should lie, or turned over once, alone and large. */
export function oneRing(isTwisted: boolean): Scene {
  const lying: FlatRing = { x: 200, y: 152, outer: 118, inner: 76 };
  const { x, y, outer, inner } = lying;
  return isTwisted
    ? [...posts(lying, true), ...twist('tops', lying), ...twist('base', lying)]
    : [
        ...posts(lying, false),
        ring('tops', square(x, y, outer), 'foundation', 20),
        ring('base', square(x, y, inner), 'foundation', 20),
      ];
}

const closedRound = (key: string, { x, y, outer, inner }: FlatRing): Item[] => [
  ring(`${key}-tops`, circle(at(x, y), outer), 'foundation', 20),
  ring(`${key}-base`, circle(at(x, y), inner), 'foundation', 20),
];

/** The posts of a round ring, `without` so many on each side of its lowest place. */
function spokes({ x, y, outer, inner }: FlatRing, without = -1): Item[] {
  return Array.from({ length: 24 }, (_, i) => i)
    .filter((i) => Math.abs(i - 6) > without)
    .map((i) => {
      const [dx, dy] = heading(i * 15);
      return {
        what: 'line' as const,
        key: `spoke${i} ${x}`,
        points: [at(x + dx * outer, y + dy * outer), at(x + dx * inner, y + dy * inner)],
        broken: false,
        z: 8,
      };
    });
}

/** How far an edge of a ring lies from its middle, and how far the other edge. */
const reachOf = (key: 'tops' | 'base', { outer, inner }: FlatRing): [own: number, other: number] =>
  key === 'tops' ? [outer, inner] : [inner, outer];

/** One edge of a round ring that is turned over once at its lowest place. */
function twistRound(key: 'tops' | 'base', lying: FlatRing): Item[] {
  const { x, y } = lying;
  const [own, other] = reachOf(key, lying);
  const spot = (angle: number, half: number): Point => {
    const [dx, dy] = heading(angle);
    return at(x + dx * half, y + dy * half);
  };
  const around = Array.from({ length: 11 }, (_, i) => spot(125 + i * 29, own));
  const end = (way: 1 | -1): Point[] => [
    spot(90 + way * 35, own),
    spot(90 + way * 22, own),
    spot(90 + way * 7, other),
    spot(90, other),
  ];
  const tops = key === 'tops';
  const strand = (name: string, points: readonly Point[], z: number): Item => ({
    what: 'strand',
    key: `${key}-${name}`,
    points,
    yarn: 'foundation',
    z,
  });
  return [
    strand('around', around, 20),
    strand('left', end(1), tops ? 24 : 22),
    strand('right', end(-1), tops ? 22 : 24),
  ];
}

/** One edge of a ring whose lower side is turned over once: it runs to the other edge's place and back. */
function twist(key: 'tops' | 'base', lying: FlatRing): Item[] {
  const { x, y } = lying;
  const [own, other] = reachOf(key, lying);
  const r = own * 0.8;
  const around: Point[] = [
    at(x - own * 0.62, y + own),
    at(x - r, y + own),
    at(x - own, y + r),
    at(x - own, y),
    at(x - own, y - r),
    at(x - r, y - own),
    at(x, y - own),
    at(x + r, y - own),
    at(x + own, y - r),
    at(x + own, y),
    at(x + own, y + r),
    at(x + r, y + own),
    at(x + own * 0.62, y + own),
  ];
  const left: Point[] = [
    at(x - own * 0.62, y + own),
    at(x - 24, y + own),
    at(x - 8, y + other),
    at(x, y + other),
  ];
  const right: Point[] = [
    at(x + own * 0.62, y + own),
    at(x + 24, y + own),
    at(x + 8, y + other),
    at(x, y + other),
  ];
  const tops = key === 'tops';
  const strand = (name: string, points: readonly Point[], z: number): Item => ({
    what: 'strand',
    key: `${key}-${name}`,
    points,
    yarn: 'foundation',
    z,
  });
  return [
    strand('around', around, 20),
    strand('left', left, tops ? 24 : 22),
    strand('right', right, tops ? 22 : 24),
  ];
}

/** Which way the two pieces run: each its own right side facing, then the back seen through the front. */
export function mirrored(front: string, back: string, behind: string): Scene {
  type Panel = { key: string; x: number; yarn: YarnName; title: string; way: 1 | -1 };
  const panel = ({ key, x, yarn, title, way }: Panel): Item[] => {
    const half = 40;
    const y = 120;
    // Side 1 on top, as in every drawing; the others follow the way the round runs.
    const numbers: [number, number][] = [
      [0, -half - 14],
      [-way * (half + 16), 4],
      [0, half + 24],
      [way * (half + 16), 4],
    ];
    return [
      { what: 'area', key: `${key}-area`, points: corners(at(x, y), half), fill: 'paper', z: 2 },
      ring(`${key}-edge`, square(x, y, half, 0.9), yarn, 6),
      {
        what: 'arrow',
        key: `${key}-way`,
        points: [
          at(x + way * 16, y - 17),
          at(x - way * 12, y - 18),
          at(x - way * 18, y - 6),
          at(x - way * 18, y + 14),
        ],
        z: Z.mark,
      },
      ...numbers.map(([dx, dy], i) => words(`${i + 1}`, x + dx, y + dy + 4, 17)),
      ...title.split(' / ').map((line, i) => words(line, x, 228 + i * 20, 16)),
    ];
  };
  return [
    ...panel({ key: 'front', x: 66, yarn: 'front', title: front, way: 1 }),
    ...panel({ key: 'back', x: 200, yarn: 'edging', title: back, way: 1 }),
    ...panel({ key: 'behind', x: 334, yarn: 'edging', title: behind, way: -1 }),
  ];
}

/** Front and back side by side, each seen from its own right side, with the way each runs; no words. */
export function twoWays(): Scene {
  const panel = (key: string, x: number, yarn: YarnName, way: 1 | -1): Item[] => {
    const [half, y] = [76, 150];
    return [
      { what: 'area', key: `${key}-area`, points: corners(at(x, y), half), fill: 'paper', z: 2 },
      ring(`${key}-edge`, square(x, y, half, 0.9), yarn, 6),
      {
        what: 'arrow',
        key: `${key}-way`,
        points: [
          at(x - way * 34, y + 34),
          at(x + way * 22, y + 36),
          at(x + way * 36, y + 18),
          at(x + way * 36, y - 32),
        ],
        z: Z.mark,
      },
    ];
  };
  return [...panel('front', 106, 'front', 1), ...panel('back', 294, 'edging', -1)];
}
