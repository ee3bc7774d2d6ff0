/** The limits of the model, stated once. */
export const limits = {
  sides: 24,
  stitches: 100_000,
  cornerSize: 9,
  arm: 9,
  edgings: 12,
  markerEvery: 100_000,
  mishaps: 1_000,
  /** Stitches that mishaps may add in all: as many as the biggest panel has. */
  stitchesAdded: 24 * 100_000,
  /** Rounds of a printed pattern. */
  printedRounds: 200,
} as const;
