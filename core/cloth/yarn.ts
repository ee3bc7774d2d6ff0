/**
 * Yarn for each part of the back.
 *
 * Rule: what a stitch takes is measured by the maker, unravelled or weighed. Without a measure there is only what is
 * in print, which differs widely from hand to hand: it is told as a band, and for slip stitches not at all.
 */

export type YarnPart = 'foundation' | 'edging' | 'join';

/** So many stitches, unravelled to so many mm, or weighed. */
export type Swatch = { stitches: number; unravelled: number } | { stitches: number; grams: number };

/** From the ball band. */
export type Ball = { grams: number; metres: number };

export type Band = [least: number, most: number];

export type YarnNeed = {
  part: YarnPart;
  from: 'measured' | 'published' | 'nothing';
  /** Spare taken in. Null where neither a measure nor the ball band tells. */
  metres: Band | null;
  grams: Band | null;
};

/**
 * Yarn in lengths of the edge worked, one round. Foundation treble: one maker measured 16 (read; worsted yarn, 5 mm
 * hook), told here as 13 to 19. Double crochet: 9 to 11, makers differ (read). Slip stitches: nothing was found.
 */
const timesTheEdge: Record<YarnPart, Band | null> = { foundation: [13, 19], edging: [9, 11], join: null };

/** For ends and for a second try: 10 %, our own choice. */
const spare = 1.1;

export type YarnAsked = {
  part: YarnPart;
  stitches: number;
  edge: number;
  rounds: number;
  swatch?: Swatch;
  ball?: Ball;
};

export function yarnFor({ part, stitches, edge, rounds, swatch, ball }: YarnAsked): YarnNeed {
  const metresPerGram = ball ? ball.metres / ball.grams : null;
  const scaled = (band: Band, by: number | null): Band | null =>
    by === null ? null : [band[0] * by, band[1] * by];
  if (swatch && 'grams' in swatch) {
    const grams = (swatch.grams / swatch.stitches) * stitches * spare;
    return { part, from: 'measured', grams: [grams, grams], metres: scaled([grams, grams], metresPerGram) };
  }
  const published = timesTheEdge[part];
  const mm = swatch ? (swatch.unravelled / swatch.stitches) * stitches : null;
  const band: Band | null = mm !== null ? [mm, mm] : published && scaled(published, edge * rounds);
  if (!band) return { part, from: 'nothing', metres: null, grams: null };
  const metres = scaled(band, spare / 1000) as Band;
  return {
    part,
    from: swatch ? 'measured' : 'published',
    metres,
    grams: scaled(metres, metresPerGram && 1 / metresPerGram),
  };
}

/** What several parts of one colour take; null where one of them is not known. */
export function together(needs: readonly YarnNeed[], of: 'metres' | 'grams'): Band | null {
  let total: Band = [0, 0];
  for (const need of needs) {
    const band = need[of];
    if (!band) return null;
    total = [total[0] + band[0], total[1] + band[1]];
  }
  return total;
}

/** Whole balls; a band where the need is one. */
export const ballsFor = (metres: Band, ball: Ball): Band => [
  Math.ceil(metres[0] / ball.metres - 1e-9),
  Math.ceil(metres[1] / ball.metres - 1e-9),
];

export type Enough = { part: YarnPart; is: 'enough' | 'not-enough' | 'uncertain' | 'unknown' };

/** "23 g left: enough for the edging, not for the join": the parts in the order in which they are worked. */
export function enoughFor(gramsLeft: number, needs: readonly YarnNeed[]): Enough[] {
  let used: Band | null = [0, 0];
  return needs.map(({ part, grams }) => {
    used = used && grams ? [used[0] + grams[0], used[1] + grams[1]] : null;
    if (!used) return { part, is: 'unknown' };
    if (gramsLeft >= used[1]) return { part, is: 'enough' };
    return { part, is: gramsLeft < used[0] ? 'not-enough' : 'uncertain' };
  });
}

/** Weighed before and after so many stitches: the swatch that the work itself is. */
export const swatchByWeighing = (before: number, after: number, stitches: number): Swatch => ({
  stitches,
  grams: before - after,
});
