/** The public face of core: pure functions over plain values. */

export { explain } from './explain/explain.ts';
export type * from './explain/types.ts';
export type * from './finding.ts';
export { readEdge } from './front/edge.ts';
export { countRound } from './hand/graph.ts';
export { mishapKinds } from './hand/mishap.ts';
export { mishapsOf } from './hand/seen.ts';
export type { Tallies, Tally } from './hand/tally.ts';
export { work } from './hand/work.ts';
export { ease } from './join/ease.ts';
export { type PairOptions, pair } from './join/pair.ts';
export { limits } from './limits.ts';
export { planBack } from './planning/plan.ts';
export { checkRounds, type PrintedRounds, type RoundsGiven } from './planning/printed.ts';
export type { Problem, ProblemOf, ProblemParams, Result } from './problems.ts';
export * from './types.ts';
export { steps } from './walk/steps.ts';
