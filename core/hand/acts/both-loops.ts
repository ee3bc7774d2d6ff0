/** A round of the edging is worked under both loops. No count shows that: no line of loops stays free. */
import type { ActOf, Entry } from './entry.ts';

export type BothLoops = ActOf<'both-loops', 'edging'>;

export const bothLoops: Entry<BothLoops> = {
  rounds: ['edging'],
  fields: {},
  works: (intent, { index }) => {
    intent.loops ??= index;
  },
  shows: { at: 'mark' },
  seenAs: 'loops',
  wholeRound: true,
  prior: { rarity: 2, source: 'judgement' },
};
