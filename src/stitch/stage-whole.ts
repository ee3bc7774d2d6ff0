/** Still pictures of the whole piece: the ring, the cloth with its pins, the pad, the two sides of the work. */
import { Z } from './loops.ts';
import { at, type Point } from './point.ts';
import type { Item, Scene, YarnName } from './scene.ts';

const words = (text: string, x: number, y: number, size = 20): Item => ({
  what: 'words',
  key: `words ${text} ${x} ${y}`,
  where: at(x, y),
  words: text,
  size,
  align: 'middle',
  z: Z.words,
});

/** A square with rounded corners as points, for a smooth closed line. */
function square(x: number, y: number, half: number, round = 0.8): Point[] {
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

const ring = (key: string, points: readonly Point[], yarn: YarnName, z: number): Item => ({
  what: 'strand',
  key,
  points,
  yarn,
  z,
  closed: true,
});

const posts = (x: number, y: number, outer: number, inner: number, skipBottom: boolean): Item[] => {
  const places = [-0.6, -0.3, 0, 0.3, 0.6];
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

/** The ring before it is closed: flat, and twisted once. */
export function rings(flat: string, twisted: string): Scene {
  const [outer, inner] = [78, 50];
  const [x1, x2, y] = [102, 298, 122];
  return [
    ...posts(x1, y, outer, inner, false),
    ring('flat-tops', square(x1, y, outer), 'foundation', 20),
    ring('flat-base', square(x1, y, inner), 'edging', 20),
    ...posts(x2, y, outer, inner, true),
    ...twist('tops', x2, y, outer, inner, 'foundation'),
    ...twist('base', x2, y, inner, outer, 'edging'),
    words(flat, x1, 248),
    words(twisted, x2, 248),
  ];
}

/** One edge of a ring whose lower side is turned over once: it runs to the other edge's place and back. */
function twist(key: string, x: number, y: number, own: number, other: number, yarn: YarnName): Item[] {
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
  const tops = own > other;
  const strand = (name: string, points: readonly Point[], z: number): Item => ({
    what: 'strand',
    key: `${key}-${name}`,
    points,
    yarn,
    z,
  });
  return [
    strand('around', around, 20),
    strand('left', left, tops ? 24 : 22),
    strand('right', right, tops ? 22 : 24),
  ];
}

// --- cloth ---

const MIDDLE = at(200, 150);
const HALF = 106;

const clothAndStrip = (): Item[] => [
  { what: 'area', key: 'cloth', points: corners(MIDDLE, HALF + 6), fill: 'cloth', z: 2 },
  { what: 'area', key: 'strip', points: corners(MIDDLE, HALF), fill: 'strip', z: 4 },
  { what: 'area', key: 'inside', points: corners(MIDDLE, HALF - 36), fill: 'cloth', z: 6 },
  ring('edging', square(MIDDLE[0], MIDDLE[1], HALF - 36, 0.92), 'edging', 8),
];

const corners = ([x, y]: Point, half: number): Point[] => [
  at(x - half, y - half),
  at(x + half, y - half),
  at(x + half, y + half),
  at(x - half, y + half),
];

/** A pin across the strip, its head outwards. */
function pins(places: readonly number[], diagonal: boolean): Item[] {
  const [x, y] = MIDDLE;
  const inner = HALF - 46;
  const sides = places.flatMap((p, i): Item[] => [
    { what: 'pin', key: `n${i}`, tip: at(x + p * inner, y - inner), angle: -90, z: 20 },
    { what: 'pin', key: `e${i}`, tip: at(x + inner, y + p * inner), angle: 0, z: 20 },
    { what: 'pin', key: `s${i}`, tip: at(x + p * inner, y + inner), angle: 90, z: 20 },
    { what: 'pin', key: `w${i}`, tip: at(x - inner, y + p * inner), angle: 180, z: 20 },
  ]);
  const at45: Item[] = diagonal
    ? [-135, -45, 45, 135].map((angle) => ({
        what: 'pin' as const,
        key: `corner${angle}`,
        tip: at(x + (Math.abs(angle) < 90 ? inner : -inner), y + (angle > 0 ? inner : -inner)),
        angle,
        z: 20,
      }))
    : [];
  return [...sides, ...at45];
}

/** Pins in the order they go in: middles, then corners, then between. */
export const pinned = (upTo: 'middles' | 'corners' | 'all'): Scene => [
  ...clothAndStrip(),
  ...pins(upTo === 'all' ? [-0.66, -0.33, 0, 0.33, 0.66] : [0], upTo !== 'middles'),
];

/** The strip turned outwards over the seam. */
export function turning(): Scene {
  const [x, y] = MIDDLE;
  const out = (key: string, dx: number, dy: number): Item => ({
    what: 'arrow',
    key,
    points: [at(x + dx * 58, y + dy * 58), at(x + dx * 84, y + dy * 84), at(x + dx * 112, y + dy * 112)],
    z: Z.mark,
  });
  return [
    { what: 'area', key: 'strip', points: corners(MIDDLE, HALF), fill: 'strip', z: 4 },
    ring('edging', square(x, y, HALF - 4, 0.92), 'edging', 8),
    { what: 'area', key: 'cloth', points: corners(MIDDLE, HALF - 44), fill: 'cloth', z: 10 },
    out('n', 0, -1),
    out('e', 1, 0),
    out('s', 0, 1),
    out('w', -1, 0),
  ];
}

/** Front over back, wrong sides together: what is seen is the front's right side. */
export function together(front: string, back: string): Scene {
  return [
    { what: 'area', key: 'back', points: corners(at(226, 166), 104), fill: 'cloth', z: 2 },
    ring('back-edge', square(226, 166, 100, 0.92), 'edging', 4),
    { what: 'area', key: 'front', points: corners(at(174, 126), 104), fill: 'paper', z: 6 },
    ring('front-edge', square(174, 126, 100, 0.92), 'front', 8),
    words(front, 174, 132, 22),
    words(back, 300, 256, 18),
  ];
}

/** Three sides joined, the pad going in by the fourth. */
export function padding(pad: string): Scene {
  const x = 142;
  const y = 150;
  return [
    { what: 'area', key: 'cover', points: corners(at(x, y), 108), fill: 'cloth', z: 2 },
    {
      what: 'strand',
      key: 'seam',
      yarn: 'join',
      z: 8,
      points: [
        at(x + 106, y - 106),
        at(x, y - 106),
        at(x - 98, y - 106),
        at(x - 106, y - 98),
        at(x - 106, y),
        at(x - 106, y + 98),
        at(x - 98, y + 106),
        at(x, y + 106),
        at(x + 106, y + 106),
      ],
    },
    {
      what: 'area',
      key: 'pad',
      points: [
        at(196, 60),
        at(290, 54),
        at(382, 62),
        at(388, 150),
        at(380, 240),
        at(290, 246),
        at(196, 240),
        at(190, 150),
      ],
      fill: 'pad',
      smooth: true,
      z: 12,
    },
    { what: 'arrow', key: 'arrow', points: [at(250, 196), at(190, 196), at(112, 196)], z: Z.mark },
    words(pad, 290, 148, 20),
  ];
}

/** The last side pinned shut over the pad. */
export function lastSide(): Scene {
  const [x, y] = MIDDLE;
  const r = HALF - 6;
  const pin = (p: number, i: number): Item => ({
    what: 'pin',
    key: `pin${i}`,
    tip: at(x + HALF - 40, y + p * 84),
    angle: 0,
    z: 20,
  });
  const seam = [at(r, -r), at(0, -r - 5), at(-r, -r), at(-r - 5, 0), at(-r, r), at(0, r + 5), at(r, r)];
  return [
    { what: 'area', key: 'cover', points: square(x, y, HALF, 0.86), fill: 'cloth', smooth: true, z: 2 },
    { what: 'strand', key: 'seam', yarn: 'join', z: 8, points: seam.map(([dx, dy]) => at(x + dx, y + dy)) },
    ...[-1, 0, 1, -0.5, 0.5].map(pin),
  ];
}

/** Front and back as one piece. */
export const whole = (): Scene => [
  {
    what: 'area',
    key: 'cover',
    points: square(MIDDLE[0], MIDDLE[1], HALF, 0.86),
    fill: 'paper',
    smooth: true,
    z: 2,
  },
  ring('front', square(MIDDLE[0], MIDDLE[1], HALF - 22, 0.9), 'front', 6),
  ring('seam', square(MIDDLE[0], MIDDLE[1], HALF - 4, 0.88), 'join', 8),
];

/** Which way the two pieces run: each its own right side facing, then the back seen through the front. */
export function mirrored(front: string, back: string, behind: string): Scene {
  const panel = (key: string, x: number, yarn: YarnName, clockwise: boolean, title: string): Item[] => {
    const half = 40;
    const y = 120;
    const way = clockwise ? -1 : 1;
    const numbers: [number, number][] = [
      [0, half + 24],
      [way * (half + 16), 4],
      [0, -half - 14],
      [-way * (half + 16), 4],
    ];
    return [
      { what: 'area', key: `${key}-area`, points: corners(at(x, y), half), fill: 'paper', z: 2 },
      ring(`${key}-edge`, square(x, y, half, 0.9), yarn, 6),
      {
        what: 'arrow',
        key: `${key}-way`,
        points: [
          at(x - way * 16, y + 17),
          at(x + way * 12, y + 18),
          at(x + way * 18, y + 6),
          at(x + way * 18, y - 14),
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
