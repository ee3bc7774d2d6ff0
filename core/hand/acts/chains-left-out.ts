/** The front's corner positions are taken off numbers that they were not in. */
import { noCornerPositions } from './bounds.ts';
import type { ActOf, Entry } from './entry.ts';

export type ChainsLeftOut = ActOf<'chains-left-out', 'plan'>;

export const chainsLeftOut: Entry<ChainsLeftOut> = {
  rounds: ['plan'],
  fields: {},
  whyNot: noCornerPositions,
  plans: (reading) => {
    reading.dropsCorners = true;
  },
  shows: { at: 'count-corner' },
  prior: { rarity: 3, source: 'judgement' },
};
