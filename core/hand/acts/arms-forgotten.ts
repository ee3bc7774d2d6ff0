/** The foundation leaves no room for what the edging adds. */
import { growthOf } from '../../planning/plan.ts';
import type { ActOf, Entry } from './entry.ts';

export type ArmsForgotten = ActOf<'arms-forgotten', 'plan'>;

export const armsForgotten: Entry<ArmsForgotten> = {
  rounds: ['plan'],
  fields: {},
  whyNot: ({ edgings, edge }) =>
    growthOf(edgings, edge.corners.length > 0) === 0 ? 'edging-adds-none' : null,
  plans: (reading) => {
    reading.allowsForArms = false;
  },
  shows: { at: 'slip-knot' },
  prior: { rarity: 2.4, source: 'judgement' },
};
