/** A stitch is worked between two stitches below, where none belongs. */
import type { ActOf, Entry } from './entry.ts';

export type StitchBetween = ActOf<'stitch-between', 'edging', 'side' | 'place'>;

export const stitchBetween: Entry<StitchBetween> = {
  rounds: ['edging'],
  fields: { side: 'needed', place: 'needed' },
  works: ({ slips }, { side, place, index }) => {
    slips.push({ at: { side, place }, does: 'makes', times: 1, act: index });
  },
  shows: { at: 'mark' },
  changesStitches: true,
  prior: { rarity: 2.7, source: 'judgement' },
};
