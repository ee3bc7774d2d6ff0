/** The first stitch after a corner lies tucked under it and is passed over. */
import type { ActOf, Entry } from './entry.ts';

export type HiddenMissed = ActOf<'hidden-missed', 'edging', 'corner'>;

export const hiddenMissed: Entry<HiddenMissed> = {
  rounds: ['edging'],
  fields: { corner: 'needed' },
  works: ({ slips }, { corner, index }) => {
    slips.push({ at: { afterCorner: corner }, does: 'counts', times: 1, act: index });
  },
  shows: { at: 'mark' },
  // The one most often missed: once a side in every round (two tutorials).
  prior: { rarity: 1, source: 'reports' },
};
