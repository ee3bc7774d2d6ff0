/** What every part of the place is a function of. */
import type { Note } from '../../core/index.ts';
import type { Cloth } from '../state/cloth-types.ts';
import type { Field, Send, Snapshot } from '../state/snapshot.ts';

export type Place = {
  snapshot: Snapshot;
  send: Send;
  cloth: Cloth;
  problems: readonly Note[];
  /** The person asked to have the measures checked. */
  told: boolean;
  /** "cushion pad" or "pillow form". */
  pad: string;
  /** Milliseconds a stitch by the maker's taps in the walk, once there is enough to know. */
  pace: number | null;
};

export const choose = ({ send }: Place, field: Field, text: string): void =>
  send({ type: 'TYPE', field, text });
