/** The stitch that the closing makes is worked as well. */
import { closingAt } from './bounds.ts';
import type { ActOf, Entry } from './entry.ts';

export type ClosingForgotten = ActOf<'closing-forgotten', 'foundation' | 'edging'>;

export const closingForgotten: Entry<ClosingForgotten> = {
  rounds: ['foundation', 'edging'],
  fields: {},
  whyNot: (plan, when) => (closingAt(plan, when).adds === 0 ? 'closing-adds-none' : null),
  works: (intent, act) => {
    intent.closingForgotten ??= act.index;
  },
  shows: { at: 'mark' },
  atClosing: true,
  prior: { rarity: 1.3, source: 'reports' },
};
