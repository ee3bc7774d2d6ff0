/** The sides are worked in the front's order, and not in the back's. */
import type { ActOf, Entry } from './entry.ts';

export type OrderNotMirrored = ActOf<'order-not-mirrored', 'plan'>;

export const orderNotMirrored: Entry<OrderNotMirrored> = {
  rounds: ['plan'],
  fields: {},
  whyNot: ({ edge }) => {
    if (edge.sides.length === 1) return 'one-side';
    return edge.sides.length === 2 ? 'one-order' : null;
  },
  plans: (reading) => {
    reading.mirrors = false;
  },
  shows: { at: 'second-side' },
  prior: { rarity: 2.6, source: 'judgement' },
};
