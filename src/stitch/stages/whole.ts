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

const posts = (x: number, y: number, outer: number, inner: number, skipBottom: boolean): Item[] => {
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
  const [outer, inner] = [78, 50];
  const [x1, x2, y] = [102, 298, 122];
  const lying = isRound
    ? [...spokes(x1, y, outer, inner), ...closedRound('flat', x1, y, outer, inner)]
    : [
        ...posts(x1, y, outer, inner, false),
        ring('flat-tops', square(x1, y, outer), 'foundation', 20),
        ring('flat-base', square(x1, y, inner), 'foundation', 20),
      ];
  const turned = isRound
    ? [
        ...spokes(x2, y, outer, inner, 2),
        ...twistRound('tops', x2, y, outer, inner),
        ...twistRound('base', x2, y, inner, outer),
      ]
    : [
        ...posts(x2, y, outer, inner, true),
        ...twist('tops', x2, y, outer, inner),
        ...twist('base', x2, y, inner, outer),
      ];
  return [...lying, ...turned, words(flat, x1, 248), words(twisted, x2, 248)];
}

/** The ring as it should lie, or turned over once, alone and large. */
export function oneRing(isTwisted: boolean): Scene {
  const [outer, inner, x, y] = [118, 76, 200, 152];
  return isTwisted
    ? [
        ...posts(x, y, outer, inner, true),
        ...twist('tops', x, y, outer, inner),
        ...twist('base', x, y, inner, outer),
      ]
    : [
        ...posts(x, y, outer, inner, false),
        ring('tops', square(x, y, outer), 'foundation', 20),
        ring('base', square(x, y, inner), 'foundation', 20),
      ];
}

const closedRound = (key: string, x: number, y: number, outer: number, inner: number): Item[] => [
  ring(`${key}-tops`, circle(at(x, y), outer), 'foundation', 20),
  ring(`${key}-base`, circle(at(x, y), inner), 'foundation', 20),
];

/** The posts of a round ring, `without` so many on each side of its lowest place. */
function spokes(x: number, y: number, outer: number, inner: number, without = -1): Item[] {
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

/** One edge of a round ring that is turned over once at its lowest place. */
function twistRound(key: 'tops' | 'base', x: number, y: number, own: number, other: number): Item[] {
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
function twist(key: 'tops' | 'base', x: number, y: number, own: number, other: number): Item[] {
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
  const panel = (key: string, x: number, yarn: YarnName, clockwise: boolean, title: string): Item[] => {
    const half = 40;
    const y = 120;
    const way = clockwise ? -1 : 1;
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
    ...panel('front', 66, 'front', false, front),
    ...panel('back', 200, 'edging', false, back),
    ...panel('behind', 334, 'edging', true, behind),
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
