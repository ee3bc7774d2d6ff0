/** A corner comes so many stitches late (+) or early (-); the next side is counted from there, or from the total. */
import { roomAtCorner } from './bounds.ts';
import type { ActOf, Entry } from './entry.ts';
import { cornerOf } from './intent.ts';

export type CornerMoved = ActOf<'corner-moved', 'foundation' | 'edging', 'corner' | 'count', 'then'>;

export const cornerMoved: Entry<CornerMoved> = {
  rounds: ['foundation', 'edging'],
  fields: { corner: 'needed', count: 'needed', then: 'optional' },
  canBeAsked: true,
  count: (plan, spot) => ({ least: 1, most: Math.max(1, roomAtCorner(plan, spot)), usual: 1 }),
  isSigned: true,
  works: (intent, { corner, count, then = 'from-corner', index }) => {
    intent.moves.push({ corner, by: count, then, act: index });
    cornerOf(intent, corner).moved ??= index;
  },
  shows: { at: 'mark' },
  sized: true,
  prior: { rarity: 2.2, source: 'reports' },
};
