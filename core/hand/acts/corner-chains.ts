/** A corner gets another number of chains (or stitches) than the recipe has: `count` of them. */
import { limits } from '../../limits.ts';
import { sizeAsked } from './bounds.ts';
import type { ActOf, Entry } from './entry.ts';
import { cornerOf } from './intent.ts';

export type CornerChains = ActOf<'corner-chains', 'foundation' | 'edging', 'corner' | 'count'>;

export const cornerChains: Entry<CornerChains> = {
  rounds: ['foundation', 'edging'],
  fields: { corner: 'needed', count: 'needed' },
  canBeAsked: true,
  count: (plan, spot) => {
    const size = sizeAsked(plan, spot);
    return { least: 0, most: limits.cornerSize, usual: size < limits.cornerSize ? size + 1 : size - 1 };
  },
  least: 0,
  asked: sizeAsked,
  works: (intent, { corner, count, index }) => {
    cornerOf(intent, corner).size ??= { is: count, act: index };
  },
  shows: { at: 'mark' },
  prior: { rarity: 2.2, source: 'judgement' },
};
