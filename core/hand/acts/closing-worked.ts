/** A stitch is worked into the closing of the round below. */
import type { ActOf, Entry } from './entry.ts';

export type ClosingWorked = ActOf<'closing-worked', 'edging'>;

export const closingWorked: Entry<ClosingWorked> = {
  rounds: ['edging'],
  fields: {},
  works: (intent, act) => {
    intent.closingWorked ??= act.index;
  },
  shows: { at: 'mark' },
  prior: { rarity: 1.6, source: 'reports' },
};
