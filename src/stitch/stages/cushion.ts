/** Still pictures of the whole piece on its way: the cloth with its pins, front over back, the pad, the last side. */
import { Z } from '../loops.ts';
import { at, heading, type Point } from '../point.ts';
import type { Item, Scene, Strand, YarnName } from '../scene.ts';
import { circle, corners, ring, square, words } from './whole.ts';

const MIDDLE = at(200, 150);
const HALF = 106;

/** How the piece lies: a panel with corners, or a round one. */
export type Lying = 'square' | 'round';

/** A figure of the piece's shape about its middle: `half` is how far it reaches from there. */
type Figure = { lying: Lying; half: number; middle?: Point };

/** An area of the piece. */
function area(key: string, figure: Figure, fill: 'cloth' | 'strip' | 'paper', z: number): Item {
  const { lying, half, middle = MIDDLE } = figure;
  return lying === 'square'
    ? { what: 'area', key, points: corners(middle, half), fill, z }
    : { what: 'area', key, points: circle(middle, half), fill, smooth: true, z };
}

/** A closed line of yarn round the piece. */
function line(key: string, { lying, half, middle = MIDDLE }: Figure, yarn: YarnName, z: number): Item {
  const [x, y] = middle;
  return ring(key, lying === 'square' ? square(x, y, half, 0.92) : circle(middle, half), yarn, z);
}

const clothAndStrip = (lying: Lying): Item[] => [
  area('cloth', { lying, half: HALF + 6 }, 'cloth', 2),
  area('strip', { lying, half: HALF }, 'strip', 4),
  area('inside', { lying, half: HALF - 36 }, 'cloth', 6),
  line('edging', { lying, half: HALF - 36 }, 'edging', 8),
];

/** The strip face down on the cloth, before any pin. */
export const laid = (lying: Lying): Scene => clothAndStrip(lying);

/** The strip sewn down, no pin left. */
export const sewn = (lying: Lying): Scene => [
  ...clothAndStrip(lying),
  line('seam', { lying, half: HALF - 28 }, 'thread', 10),
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

/** Pins evenly round a round piece. */
const pinsAround = (count: number): Item[] =>
  Array.from({ length: count }, (_, i) => {
    const angle = (360 / count) * i - 90;
    const [dx, dy] = heading(angle);
    const tip = at(MIDDLE[0] + dx * (HALF - 46), MIDDLE[1] + dy * (HALF - 46));
    return { what: 'pin' as const, key: `pin${i}`, tip, angle, z: 20 };
  });

/** Pins in the order they go in: middles, then corners, then between; on a round piece by halves. */
export function pinned(upTo: 'middles' | 'corners' | 'all', lying: Lying): Scene {
  const around = { middles: 4, corners: 8, all: 16 }[upTo];
  const across = (): Item[] => pins(upTo === 'all' ? [-0.5, 0, 0.5] : [0], upTo !== 'middles');
  return [...clothAndStrip(lying), ...(lying === 'round' ? pinsAround(around) : across())];
}

/** The strip turned outwards over the seam. */
export function turning(lying: Lying): Scene {
  const [x, y] = MIDDLE;
  const out = (key: string, dx: number, dy: number): Item => ({
    what: 'arrow',
    key,
    points: [at(x + dx * 58, y + dy * 58), at(x + dx * 84, y + dy * 84), at(x + dx * 112, y + dy * 112)],
    z: Z.mark,
  });
  return [
    area('strip', { lying, half: HALF }, 'strip', 4),
    line('edging', { lying, half: HALF - 4 }, 'edging', 8),
    area('cloth', { lying, half: HALF - 44 }, 'cloth', 10),
    out('n', 0, -1),
    out('e', 1, 0),
    out('s', 0, 1),
    out('w', -1, 0),
  ];
}

/** Front over back, wrong sides together: what is seen is the front's right side. */
export function together(front: string, back: string, lying: Lying): Scene {
  const [behind, before] = [at(226, 166), at(174, 126)];
  return [
    area('back', { lying, half: 104, middle: behind }, 'cloth', 2),
    line('back-edge', { lying, half: 100, middle: behind }, 'edging', 4),
    area('front', { lying, half: 104, middle: before }, 'paper', 6),
    line('front-edge', { lying, half: 100, middle: before }, 'front', 8),
    words(front, 174, 132, 22),
    lying === 'square' ? words(back, 288, 251, 18) : words(back, 262, 240, 18),
  ];
}

/** The join so far, open towards +x: three sides, or three quarters of a round. */
function joinedSoFar(lying: Lying, [x, y]: Point, half: number, bulge = 0): Strand {
  const points =
    lying === 'square'
      ? [
          at(x + half, y - half),
          at(x, y - half - bulge),
          at(x - half + 8, y - half),
          at(x - half, y - half + 8),
          at(x - half - bulge, y),
          at(x - half, y + half - 8),
          at(x - half + 8, y + half),
          at(x, y + half + bulge),
          at(x + half, y + half),
        ]
      : [-45, -80, -115, -150, 180, 150, 115, 80, 45].map((angle) => {
          const [dx, dy] = heading(angle);
          return at(x + dx * half, y + dy * half);
        });
  return { what: 'strand', key: 'seam', yarn: 'join', z: 8, points };
}

/** All but the last side joined, the pad going in by it. */
export function padding(pad: string, lying: Lying): Scene {
  const middle = at(142, 150);
  const goesIn: Point[] = [
    at(196, 60),
    at(290, 54),
    at(382, 62),
    at(388, 150),
    at(380, 240),
    at(290, 246),
    at(196, 240),
    at(190, 150),
  ];
  return [
    area('cover', { lying, half: 108, middle }, 'cloth', 2),
    joinedSoFar(lying, middle, 106),
    {
      what: 'area',
      key: 'pad',
      points: lying === 'square' ? goesIn : circle(at(292, 150), 96),
      fill: 'pad',
      smooth: true,
      z: 12,
    },
    { what: 'arrow', key: 'arrow', points: [at(250, 196), at(190, 196), at(112, 196)], z: Z.mark },
    words(pad, 290, 148, 20),
  ];
}

/** The last side pinned shut over the pad. */
export function lastSide(lying: Lying): Scene {
  const [x, y] = MIDDLE;
  const pin = (p: number, i: number): Item => {
    const angle = lying === 'square' ? 0 : p * 40;
    const [dx, dy] = heading(angle);
    const tip =
      lying === 'square' ? at(x + HALF - 40, y + p * 84) : at(x + dx * (HALF - 40), y + dy * (HALF - 40));
    return { what: 'pin', key: `pin${i}`, tip, angle, z: 20 };
  };
  const cover: Item =
    lying === 'square'
      ? { what: 'area', key: 'cover', points: square(x, y, HALF, 0.86), fill: 'cloth', smooth: true, z: 2 }
      : area('cover', { lying, half: HALF }, 'cloth', 2);
  return [cover, joinedSoFar(lying, MIDDLE, HALF - 6, 5), ...[-1, 0, 1, -0.5, 0.5].map(pin)];
}

/** What the finished piece holds, as it is said: its sides, all pairs, and the side that stays open. */
type Counts = { sides?: readonly string[]; all?: string; open?: number | undefined };

/** The middle of each side among the points of `square`: on top, left, below, right. */
const MIDDLES = [1, 10, 7, 4];

/** Front and back as one piece, in its yarns; what each side holds stands inside it, the whole in the middle. */
export function whole(lying: Lying, { sides = [], all = '', open }: Counts = {}): Scene {
  const [x, y] = MIDDLE;
  const outline = (half: number, round: number): Point[] =>
    lying === 'square' ? square(x, y, half, round) : circle(MIDDLE, half);
  const said = (text: string, dx: number, dy: number, size = 20): Item => ({
    ...words(text, x + dx, y + dy + 7, size),
  });
  // Side 1 on top, then on as the front runs: to the left for a right-handed maker.
  const places: readonly [number, number][] = [
    [0, -68],
    [-68, 0],
    [0, 68],
    [68, 0],
  ];
  const isSquare = lying === 'square' && sides.length === 4;
  const around = outline(HALF + 1, 0.87);
  const middle = isSquare && open !== undefined ? (MIDDLES[open] ?? 0) : -1;
  const seam: Item =
    middle < 0
      ? ring('seam', around, 'join', 8)
      : {
          what: 'strand',
          key: 'seam',
          points: [...around.slice(middle + 1), ...around.slice(0, middle)],
          yarn: 'join',
          z: 8,
        };
  return [
    { what: 'area', key: 'cover', points: outline(HALF + 6, 0.86), fill: 'front', smooth: true, z: 2 },
    ring('edging', outline(HALF + 12, 0.86), 'edging', 4),
    ring('front', outline(HALF - 10, 0.88), 'front', 6),
    seam,
    ...(isSquare ? sides.map((text, i) => said(text, ...(places[i] as [number, number]))) : []),
    ...(all === '' ? [] : [said(all, 0, 0, 26)]),
  ];
}
