/** The corner's chains are worked and nothing is put into the corner below, on neither side of them. */
import { armMissed } from './arm-missed.ts';
import type { ActOf, Entry } from './entry.ts';
import { cornerOf } from './intent.ts';

export type CornerWorkedOver = ActOf<'corner-worked-over', 'edging', 'corner'>;

export const cornerWorkedOver: Entry<CornerWorkedOver> = {
  rounds: ['edging'],
  fields: { corner: 'needed' },
  ...(armMissed.whyNot && { whyNot: armMissed.whyNot }),
  works: (intent, { corner, index }) => {
    const there = cornerOf(intent, corner);
    there.before ??= { less: Number.POSITIVE_INFINITY, act: index };
    there.after ??= { less: Number.POSITIVE_INFINITY, act: index };
  },
  shows: { at: 'mark' },
  prior: { rarity: 2.3, source: 'judgement' },
};
