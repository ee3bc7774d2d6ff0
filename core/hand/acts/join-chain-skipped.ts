/** The join goes past one position of a corner of the back. */
import { noCornerPositions } from './bounds.ts';
import type { ActOf, Entry } from './entry.ts';

export type JoinChainSkipped = ActOf<'join-chain-skipped', 'join', 'corner'>;

export const joinChainSkipped: Entry<JoinChainSkipped> = {
  rounds: ['join'],
  fields: { corner: 'needed' },
  whyNot: noCornerPositions,
  joins: (made, { corner }) => {
    made.skipped.push(corner);
  },
  shows: { at: 'corner-passed' },
  prior: { rarity: 2.5, source: 'judgement' },
};
