/** The public face of core: pure functions over plain values. */
export { ease } from './ease.ts';
export { readEdge } from './edge.ts';
export { explain } from './explain/explain.ts';
export type * from './explain/types.ts';
export { countRound } from './graph.ts';
export { mishapKinds } from './mishap.ts';
export { type PairOptions, pair } from './pair.ts';
export { planBack } from './plan.ts';
export { checkRounds, type PrintedRounds, type RoundsGiven } from './printed.ts';
export { limits } from './problems.ts';
export { mishapsOf } from './seen.ts';
export { steps } from './steps.ts';
export type { Tallies, Tally } from './tally.ts';
export * from './types.ts';
export { work } from './work.ts';
