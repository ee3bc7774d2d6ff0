/**
 * Yarn weights and the hooks that go with them.
 *
 * Craft Yarn Council's standard yarn weights, read in reprints: a magazine of 2018 and three pages that reprint the
 * table. Counts are US single crochet (UK double crochet) in 10 cm; for lace US double crochet (UK treble). The lace row
 * of the 2018 reprint says 1.5–2.25 mm, which is its needle row; the three others say steel 1.6–1.4 mm or regular 2.25 mm.
 * Reprints differ on weights 6 and 7 (7–9 or 6–9 stitches, hooks from 9 to 15 or 16 mm): the wider band is told.
 */
export type YarnWeight = {
  /** The council's number, 0 to 7. */
  number: number;
  name: string;
  /** Stitches in 10 cm; null where the table names no least or most. */
  stitches: [least: number | null, most: number];
  /** US stitch counted. */
  counted: 'single-crochet' | 'double-crochet';
  hook: [least: number, most: number | null];
};

export const yarnWeights: readonly YarnWeight[] = [
  { number: 0, name: 'lace', stitches: [32, 42], counted: 'double-crochet', hook: [1.4, 2.25] },
  { number: 1, name: 'super-fine', stitches: [21, 32], counted: 'single-crochet', hook: [2.25, 3.5] },
  { number: 2, name: 'fine', stitches: [16, 20], counted: 'single-crochet', hook: [3.5, 4.5] },
  { number: 3, name: 'light', stitches: [12, 17], counted: 'single-crochet', hook: [4.5, 5.5] },
  { number: 4, name: 'medium', stitches: [11, 14], counted: 'single-crochet', hook: [5.5, 6.5] },
  { number: 5, name: 'bulky', stitches: [8, 11], counted: 'single-crochet', hook: [6.5, 9] },
  { number: 6, name: 'super-bulky', stitches: [6, 9], counted: 'single-crochet', hook: [9, 16] },
  { number: 7, name: 'jumbo', stitches: [null, 6], counted: 'single-crochet', hook: [15, null] },
];

/** US letter sizes (read). 4.5 mm has a number and no letter. */
export const hookNames: ReadonlyMap<number, string> = new Map([
  [2.25, 'B-1'],
  [2.75, 'C-2'],
  [3.25, 'D-3'],
  [3.5, 'E-4'],
  [3.75, 'F-5'],
  [4, 'G-6'],
  [4.5, '7'],
  [5, 'H-8'],
  [5.5, 'I-9'],
  [6, 'J-10'],
  [6.5, 'K-10½'],
  [8, 'L-11'],
  [9, 'M/N-13'],
]);

/** The weights whose band holds a pitch measured on double crochet (US single crochet), in mm a stitch. */
export function weightsFor(pitch: number): YarnWeight[] {
  const inTenCm = Math.round(100 / pitch);
  return yarnWeights.filter(
    ({ stitches: [least, most], counted }) =>
      counted === 'single-crochet' && (least === null || inTenCm >= least) && inTenCm <= most,
  );
}
