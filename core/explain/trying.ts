/** Trying a set of causes: the making it gives, told at the spots that were seen. Every trial is counted. */
import { tallyWith } from '../tally.ts';
import type { Plan } from '../types.ts';
import { type Candidate, frontWith, mishapsIn } from './candidate.ts';
import { joinOf } from './join.ts';
import { misshapen, type Outcome, readAt, roundsOf, type Wanted } from './wanted.ts';

export type Trying = { plan: Plan; wanted: Wanted; tried: number };

/** What is still unexplained: seen less made, at every spot; or how the shape is off. */
export type Rest = { over: { round: number; over: number } | null; by: Int32Array };

export function outcomeOf(trying: Trying, set: readonly Candidate[]): Outcome {
  const { plan, wanted } = trying;
  trying.tried++;
  const mishaps = mishapsIn(set);
  const rounds = roundsOf(tallyWith(plan, mishaps));
  const front = wanted.usesJoin || wanted.usesFront ? frontWith(plan, set) : plan.edge.sides;
  return { rounds, front, join: wanted.usesJoin ? joinOf(plan, mishaps, front) : null };
}

export function restOf(trying: Trying, set: readonly Candidate[]): Rest {
  const outcome = outcomeOf(trying, set);
  const over = misshapen(trying.wanted, outcome.rounds);
  const by = readAt(trying.wanted, outcome);
  const { values } = trying.wanted;
  for (let i = 0; i < by.length; i++) by[i] = (values[i] as number) - (by[i] as number);
  return { over, by };
}

export const isExplained = ({ over, by }: Rest): boolean => over === null && by.every((one) => one === 0);
