/** The closing is laid beside the first stitch, where it was to lie over it. */
import { closingAt } from './bounds.ts';
import type { ActOf, Entry } from './entry.ts';

export type ClosingBesideFirst = ActOf<'closing-beside-first', 'foundation' | 'edging'>;

export const closingBesideFirst: Entry<ClosingBesideFirst> = {
  rounds: ['foundation', 'edging'],
  fields: {},
  whyNot: (plan, when) => (closingAt(plan, when).adds === 1 ? 'closing-adds-one' : null),
  works: (intent, act) => {
    intent.closedBeside ??= act.index;
  },
  shows: { at: 'mark' },
  atClosing: true,
  prior: { rarity: 2.3, source: 'judgement' },
};
