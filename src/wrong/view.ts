/** What every part of the answer is drawn from. */
import type { Explained } from '../../core/index.ts';
import type { Send, Snapshot } from '../state/snapshot.ts';
import type { Choose, Chosen } from './chosen.ts';

export type View = {
  snapshot: Snapshot;
  send: Send;
  chosen: Chosen;
  choose: Choose;
  explained: Explained;
};
