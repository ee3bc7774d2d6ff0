/** On an edging a stitch below is passed over; on the foundation a treble is counted that is not made. */
import { stitchBounds } from './bounds.ts';
import type { ActOf, Entry } from './entry.ts';

export type StitchMissed = ActOf<'stitch-missed', 'foundation' | 'edging', 'side' | 'place', 'count'>;

export const stitchMissed: Entry<StitchMissed> = {
  rounds: ['foundation', 'edging'],
  fields: { side: 'needed', place: 'needed', count: 'optional' },
  canBeAsked: true,
  count: stitchBounds,
  least: 1,
  works: ({ slips }, { side, place, count = 1, index }) => {
    slips.push({ at: { side, place }, does: 'counts', times: count, act: index });
  },
  shows: { at: 'mark' },
  sized: true,
  changesStitches: true,
  prior: { rarity: 2, source: 'judgement' },
};
