/** Measuring the panel and its rounds, and the rule by which the cloth is cut. */
import { many } from '../numbers.ts';

export const MEASURE = {
  heading: 'Measure the panel',
  how: 'Lay it flat. Measure inside its last round, each way at 2 places.',
  outline: 'Outline',
  rectangle: 'rectangle',
  ownSides: '4 sides of their own',
  width: 'Width is along side 1.',
  square: 'Is it square?',
  squareHow: 'Measure both diagonals. Leave them empty if you know that it is square.',
  sideLikeBefore: 'A side left empty is as long as the one before it.',
  diagonals: 'Diagonals from corner 1',
  diagonalsHow: 'Corner 1 ends side 1. Measure from there to each corner but its 2 neighbours, in order.',
  rounds: 'Measure the rounds',
  roundsHow: 'How deep each lies, from its base to its top.',
  roundsEmpty: 'The last 2 may stay empty. If 1 is there, the other is taken to be as deep.',
  rule: 'How large is the back to be?',
  show: 'Show me the cut',
} as const;

export const sayPaperPattern = (corners: number): string =>
  `A panel with ${many(corners, 'corner')} has no straight sides. Draw round it on paper, add the depth of the foundation less half of it, and cut the cloth by that.`;

/** Common practice, no source. */
export const RULES = {
  snug: {
    says: 'snug',
    does: 'A little smaller than the front: the strip lies slack along the seam and is patted flat.',
  },
  exact: { says: 'exact', does: 'As large as the front.' },
  own: { says: 'my own', does: 'You say how far the cut edge lies outside the panel.' },
} as const;
