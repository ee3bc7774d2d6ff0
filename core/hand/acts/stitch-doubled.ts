/** Two or more stitches stand where one belongs. */
import { stitchBounds } from './bounds.ts';
import type { ActOf, Entry } from './entry.ts';

export type StitchDoubled = ActOf<'stitch-doubled', 'foundation' | 'edging', 'side' | 'place', 'count'>;

export const stitchDoubled: Entry<StitchDoubled> = {
  rounds: ['foundation', 'edging'],
  fields: { side: 'needed', place: 'needed', count: 'optional' },
  canBeAsked: true,
  count: stitchBounds,
  least: 1,
  works: ({ slips }, { side, place, count = 1, index }) => {
    slips.push({ at: { side, place }, does: 'makes', times: count, act: index });
  },
  shows: { at: 'mark' },
  sized: true,
  changesStitches: true,
  prior: { rarity: 2.1, source: 'judgement' },
};
