/** The chains at a round's beginning are counted as its first stitch, although none stands there. */
import type { ActOf, Entry } from './entry.ts';

export type StartCounted = ActOf<'start-counted', 'foundation' | 'edging'>;

export const startCounted: Entry<StartCounted> = {
  rounds: ['foundation', 'edging'],
  fields: {},
  whyNot: ({ choices }, { round }) =>
    round === 'foundation' && choices.foundationStart.counts === 1 ? 'start-counts' : null,
  works: (intent, act) => {
    intent.startCounted ??= act.index;
  },
  shows: { at: 'mark' },
  atClosing: true,
  prior: { rarity: 1.2, source: 'reports' },
};
