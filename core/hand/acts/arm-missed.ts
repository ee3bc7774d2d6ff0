/** What goes into a corner beside the new corner is left out, before it or after: all of it, or `count`. */

import type { ActOf, Entry } from './entry.ts';
import { cornerOf } from './intent.ts';

export type ArmMissed = ActOf<'arm-missed', 'edging', 'corner' | 'end', 'count'>;

export const armMissed: Entry<ArmMissed> = {
  rounds: ['edging'],
  fields: { corner: 'needed', end: 'needed', count: 'optional' },
  least: 0,
  whyNot: ({ edgings }, { edging }) => {
    const [before, after] = edgings[edging]?.arm ?? [0, 0];
    return before + after === 0 ? 'nothing-in-corners' : null;
  },
  works: (intent, { corner, end, count = Number.POSITIVE_INFINITY, index }) => {
    cornerOf(intent, corner)[end] ??= { less: count, act: index };
  },
  shows: { at: 'mark' },
  prior: { rarity: 2.4, source: 'judgement' },
};
