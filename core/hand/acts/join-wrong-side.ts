/** The back is turned by so many sides from where it belongs. */
import type { ActOf, Entry } from './entry.ts';

export type JoinWrongSide = ActOf<'join-wrong-side', 'join', 'count'>;

export const joinWrongSide: Entry<JoinWrongSide> = {
  rounds: ['join'],
  fields: { count: 'needed' },
  count: ({ edge }) => ({ least: 1, most: Math.max(1, edge.sides.length - 1), usual: 1 }),
  whyNot: ({ edge }) => (edge.sides.length === 1 ? 'one-side' : null),
  joins: (made, { count }) => {
    made.turned += count;
  },
  shows: { at: 'join-attach' },
  prior: { rarity: 2.8, source: 'judgement' },
};
