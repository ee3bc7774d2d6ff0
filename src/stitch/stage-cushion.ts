/** Still pictures of the whole piece on its way: the cloth with its pins, front over back, the pad, the last side. */
import { Z } from './loops.ts';
import { at } from './point.ts';
import type { Item, Scene } from './scene.ts';
import { corners, ring, square, words } from './stage-whole.ts';

const MIDDLE = at(200, 150);
const HALF = 106;

const clothAndStrip = (): Item[] => [
  { what: 'area', key: 'cloth', points: corners(MIDDLE, HALF + 6), fill: 'cloth', z: 2 },
  { what: 'area', key: 'strip', points: corners(MIDDLE, HALF), fill: 'strip', z: 4 },
  { what: 'area', key: 'inside', points: corners(MIDDLE, HALF - 36), fill: 'cloth', z: 6 },
  ring('edging', square(MIDDLE[0], MIDDLE[1], HALF - 36, 0.92), 'edging', 8),
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
    words(back, 288, 251, 18),
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
