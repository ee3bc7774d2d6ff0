/** A stitch goes where the yarn is attached; the closing covers that place again. */
import type { ActOf, Entry } from './entry.ts';

export type AttachDoubled = ActOf<'attach-doubled', 'edging'>;

export const attachDoubled: Entry<AttachDoubled> = {
  rounds: ['edging'],
  fields: {},
  works: (intent, act) => {
    intent.attachDoubled ??= act.index;
  },
  shows: { at: 'mark' },
  prior: { rarity: 1.5, source: 'reports' },
};
