/** The back is begun so many positions further along in join order (+) or too soon (-). */
import type { ActOf, Entry } from './entry.ts';

export type JoinOffset = ActOf<'join-offset', 'join', 'count'>;

export const joinOffset: Entry<JoinOffset> = {
  rounds: ['join'],
  fields: { count: 'needed' },
  count: ({ pairs }) => ({ least: 1, most: Math.max(1, pairs - 1), usual: 1 }),
  isSigned: true,
  joins: (made, { count }) => {
    made.offset += count;
  },
  shows: { at: 'join-attach' },
  sized: true,
  prior: { rarity: 2.4, source: 'judgement' },
};
