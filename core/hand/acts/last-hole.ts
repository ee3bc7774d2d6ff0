/** The pair where the yarn is attached is never joined. */
import type { ActOf, Entry } from './entry.ts';

export type LastHole = ActOf<'last-hole', 'join'>;

export const lastHole: Entry<LastHole> = {
  rounds: ['join'],
  fields: {},
  joins: (made) => {
    made.lastHoleOpen = true;
  },
  shows: { at: 'look-for-holes' },
  seenAs: 'hole',
  prior: { rarity: 3, source: 'judgement' },
};
