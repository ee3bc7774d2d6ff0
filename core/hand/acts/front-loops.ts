/** A round of the edging is worked in the front loops. No count shows that: the free loops lie on the wrong side. */
import type { ActOf, Entry } from './entry.ts';

export type FrontLoops = ActOf<'front-loops', 'edging'>;

export const frontLoops: Entry<FrontLoops> = {
  rounds: ['edging'],
  fields: {},
  works: (intent, { index }) => {
    intent.loops ??= index;
  },
  shows: { at: 'mark' },
  seenAs: 'loops',
  wholeRound: true,
  prior: { rarity: 2.4, source: 'judgement' },
};
