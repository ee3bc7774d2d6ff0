/** The ring is closed with a turn in it. No count shows that. */
import type { ActOf, Entry } from './entry.ts';

export type Twisted = ActOf<'twisted', 'foundation'>;

export const twisted: Entry<Twisted> = {
  rounds: ['foundation'],
  fields: {},
  works: (intent, act) => {
    intent.twisted ??= act.index;
  },
  shows: { at: 'check-twist' },
  seenAs: 'twist',
  prior: { rarity: 3, source: 'judgement' },
};
