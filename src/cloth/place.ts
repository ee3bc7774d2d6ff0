/** What every part of the place is a function of. */
import type { Note } from '../../core/index.ts';
import type { Cloth } from '../state/cloth-types.ts';
import type { Field, Send, Snapshot } from '../state/snapshot.ts';

/** Which of the two drawings stands in the page. */
export type Look = 'laid' | 'turned';

export type Place = {
  snapshot: Snapshot;
  send: Send;
  cloth: Cloth;
  problems: readonly Note[];
  /** The person asked to have the measures checked. */
  told: boolean;
  /** "cushion pad" or "pillow form". */
  pad: string;
  /** What goes in: the pad, or the form under a cover. */
  inside: string;
  /** Milliseconds a stitch by the maker's taps in the walk, once there is enough to know. */
  pace: number | null;
  look: Look;
  lookAt(look: Look): void;
  /** What became of the last file saved. */
  saved: { what: string; says: string } | null;
  saveFigure(what: 'laid' | 'turned' | 'layout'): void;
};

export const choose = ({ send }: Place, field: Field, text: string): void =>
  send({ type: 'TYPE', field, text });
