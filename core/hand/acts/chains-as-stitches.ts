/** The front's corner positions are taken for stitches of its sides. */
import { noCornerPositions } from './bounds.ts';
import type { ActOf, Entry } from './entry.ts';

export type ChainsAsStitches = ActOf<'chains-as-stitches', 'plan'>;

export const chainsAsStitches: Entry<ChainsAsStitches> = {
  rounds: ['plan'],
  fields: {},
  whyNot: noCornerPositions,
  plans: (reading) => {
    reading.addsCorners = true;
  },
  shows: { at: 'count-corner' },
  prior: { rarity: 1.9, source: 'reports' },
};
