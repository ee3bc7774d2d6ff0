/**
 * The join takes two of one piece with one of the other, in one pair. Its side and place are the front's, as the join
 * counts them: the stitch at which it happens, the first of the two if they are the front's.
 */
import type { ActOf, Entry } from './entry.ts';

export type TwoWithOne = ActOf<'two-with-one', 'join', 'side' | 'place' | 'of'>;

export const twoWithOne: Entry<TwoWithOne> = {
  rounds: ['join'],
  fields: { side: 'needed', place: 'needed', of: 'needed' },
  canBeAsked: true,
  onFront: true,
  joins: (made, { side, place, of, index, asked }) => {
    made.together.push({ side, place, of, act: index, ...(asked && { asked }) });
  },
  shows: { at: 'pair' },
  prior: { rarity: 2.6, source: 'judgement' },
};
