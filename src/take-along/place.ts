/** What the parts of "Take along" share. */
import type { Field, Send, Snapshot } from '../state/snapshot.ts';
import type { LineWords } from '../words/pattern/line-words.ts';
import type { TakeAlongMessages } from '../words/pattern/messages.ts';
import type { SheetMessages } from '../words/pattern/sheet-messages.ts';
import type { Speaker } from '../words/speaker.ts';
import type { SizeRead } from './sizes.ts';

export type Place = {
  snapshot: Snapshot;
  send: Send;
  speaker: Speaker;
  say: TakeAlongMessages;
  sheets: SheetMessages;
  lines: LineWords;
  sizes: readonly SizeRead[];
};

export const fieldText = ({ project }: Snapshot, field: Field): string => project.texts[field] ?? '';
