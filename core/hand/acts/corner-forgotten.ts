/** The hand works straight on where a corner belongs. */

import type { ActOf, Entry } from './entry.ts';
import { cornerOf } from './intent.ts';

export type CornerForgotten = ActOf<'corner-forgotten', 'foundation' | 'edging', 'corner'>;

export const cornerForgotten: Entry<CornerForgotten> = {
  rounds: ['foundation', 'edging'],
  fields: { corner: 'needed' },
  works: (intent, { corner, index }) => {
    cornerOf(intent, corner).forgotten ??= index;
  },
  shows: { at: 'mark' },
  prior: { rarity: 2.5, source: 'judgement' },
};
