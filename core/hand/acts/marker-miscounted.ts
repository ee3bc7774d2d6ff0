/** Counting by markers, the hand takes one too many (the side comes out short) or one too few (too long). */
import type { ActOf, Entry } from './entry.ts';

export type MarkerMiscounted = ActOf<'marker-miscounted', 'foundation', 'side' | 'place' | 'count'>;

export const markerMiscounted: Entry<MarkerMiscounted> = {
  rounds: ['foundation'],
  fields: { side: 'needed', place: 'needed', count: 'needed' },
  count: ({ choices: { markerEvery } }) => ({
    least: markerEvery,
    most: 3 * markerEvery,
    usual: markerEvery,
  }),
  isSigned: true,
  works: ({ slips }, { side, place, count, index }) => {
    slips.push({
      at: { side, place },
      does: count < 0 ? 'counts' : 'makes',
      times: Math.abs(count),
      act: index,
    });
  },
  shows: { at: 'mark' },
  changesStitches: true,
  prior: { rarity: 2.2, source: 'judgement' },
};
