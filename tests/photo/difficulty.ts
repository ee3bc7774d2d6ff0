/**
 * How hard a rendered edge is to count: the ranges from which each picture is drawn. They were set before anything
 * was written that proposes marks, by looking at the pictures; no photograph of a real edge was at hand.
 */
type Range = readonly [number, number];

export type Ranges = {
  /** Stitches of the side. */
  count: Range;
  /** Pixels from one V to the next, at the near end. */
  pitch: Range;
  /** Spread of the distance from V to V, as a part of it: uneven tension. */
  tension: Range;
  /** How much larger the near end is than the far end. */
  perspective: Range;
  /** Height of the bow of the edge, as a part of its length. */
  bend: Range;
  /** Spread of the blur, in pixels. */
  blur: Range;
  /** Spread of the noise, of 255. */
  noise: Range;
  /** JPEG quality, of 100. */
  jpeg: Range;
  /** Light between the top of a strand and its flank, as a part of the yarn's own. */
  relief: Range;
  /** The yarn's own light, of 1: dark yarn shows little. */
  yarn: Range;
  /** Stray hairs a stitch. */
  fuzz: Range;
  /** How far the yarn's colour wanders along it, of 1. */
  dye: Range;
  /** Chance that a place was missed before a V: a wider step. */
  missed: Range;
  /** Chance that a V is split: its strand opened in two. */
  split: Range;
  /** How far light falls off over the picture, of 1. */
  shade: Range;
  /** Strength of the pattern behind the work, of 1. */
  ground: Range;
};

export const difficulties = {
  easy: {
    count: [30, 90],
    pitch: [26, 36],
    tension: [0.03, 0.06],
    perspective: [1, 1.12],
    bend: [0, 0.03],
    blur: [0.4, 0.9],
    noise: [2, 5],
    jpeg: [85, 95],
    relief: [0.6, 0.8],
    yarn: [0.5, 0.85],
    fuzz: [1, 4],
    dye: [0, 0.05],
    missed: [0, 0],
    split: [0, 0],
    shade: [0, 0.2],
    ground: [0, 0.15],
  },
  fair: {
    count: [30, 110],
    pitch: [18, 30],
    tension: [0.05, 0.1],
    perspective: [1, 1.3],
    bend: [0, 0.1],
    blur: [0.8, 1.6],
    noise: [4, 9],
    jpeg: [65, 88],
    relief: [0.4, 0.65],
    yarn: [0.3, 0.9],
    fuzz: [4, 12],
    dye: [0, 0.15],
    missed: [0, 0.01],
    split: [0, 0.02],
    shade: [0.1, 0.4],
    ground: [0.1, 0.4],
  },
  hard: {
    count: [30, 110],
    pitch: [11, 20],
    tension: [0.08, 0.15],
    perspective: [1.1, 1.7],
    bend: [0.03, 0.16],
    blur: [1.3, 2.6],
    noise: [8, 18],
    jpeg: [40, 70],
    relief: [0.25, 0.45],
    yarn: [0.12, 0.95],
    fuzz: [8, 24],
    dye: [0.05, 0.35],
    missed: [0.01, 0.03],
    split: [0.02, 0.06],
    shade: [0.2, 0.6],
    ground: [0.2, 0.7],
  },
} as const satisfies Record<string, Ranges>;

export type Difficulty = keyof typeof difficulties;
export const everyDifficulty = Object.keys(difficulties) as Difficulty[];
