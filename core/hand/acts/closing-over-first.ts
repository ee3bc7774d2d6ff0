/** The closing is laid over the first stitch, where it was to lie beside it. */
import { closingAt } from './bounds.ts';
import type { ActOf, Entry } from './entry.ts';

export type ClosingOverFirst = ActOf<'closing-over-first', 'foundation' | 'edging'>;

export const closingOverFirst: Entry<ClosingOverFirst> = {
  rounds: ['foundation', 'edging'],
  fields: {},
  whyNot: (plan, when) => (closingAt(plan, when).adds === 0 ? 'closing-adds-none' : null),
  works: (intent, act) => {
    intent.closedOver ??= act.index;
  },
  shows: { at: 'mark' },
  atClosing: true,
  prior: { rarity: 2.3, source: 'judgement' },
};
