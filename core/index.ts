/** The public face of core: pure functions over plain values. */

export * from './cloth/index.ts';
export { explain } from './explain/explain.ts';
export type * from './explain/types.ts';
export type * from './finding.ts';
export { readEdge } from './front/edge.ts';
export { type Evening, evenOut } from './front/uneven.ts';
export {
  type Act,
  type ActKind,
  type Adjustment,
  actKinds,
  actOf,
  actRounds,
  asked,
  entryOf,
  has,
  kindsIn,
  type Mishap,
  needs,
  roundsOf,
  whyNot,
} from './hand/acts/acts.ts';

export { placeBounds } from './hand/acts/bounds.ts';
export { checkActs } from './hand/acts/check.ts';
export type { ActParts, Bounds, Field, Spot, When, WhyNot } from './hand/acts/entry.ts';
export { countRound } from './hand/graph.ts';
export { mishapsOf } from './hand/seen.ts';
export type { Tallies, Tally } from './hand/tally.ts';
export { work } from './hand/work.ts';
export { ease } from './join/ease.ts';
export { type PairOptions, pair } from './join/pair.ts';
export { takenInJoin } from './join/taken-in.ts';
export { limits } from './limits.ts';
export { planFrontStrip } from './planning/front-strip.ts';
export { planBack } from './planning/plan.ts';
export { checkRounds, type PrintedRounds, type RoundsGiven } from './planning/printed.ts';
export type { Problem, ProblemOf, ProblemParams, Result } from './problems.ts';
export * from './types.ts';
export { stepOfAct, stepOfKind } from './walk/act-steps.ts';
export { steps } from './walk/steps.ts';
export { lastNotAbove } from './whole.ts';
