/** Trying a set of causes: the making it gives, told at the spots that were seen. Every trial is counted. */

import type { Settled } from '../hand/acts/doing.ts';
import type { Making } from '../hand/graph.ts';
import { type Task, taskOf } from '../hand/orders.ts';
import { foundationOf, type Tallies, type Tally, tallyOn } from '../hand/tally.ts';
import type { Plan } from '../types.ts';
import { type Candidate, frontWith, mishapsIn } from './candidate.ts';
import { joinOf } from './join.ts';
import { misshapen, type Outcome, readAt, roundsOf, type Wanted } from './wanted.ts';

export type Trying = {
  plan: Plan;
  wanted: Wanted;
  tried: number;
  /** Makings after which the search gives up, so that nobody waits. */
  limit: number;
  /** What the hand sets out to do, and the foundation it makes, where nothing is amiss so far. */
  asRecipe: { task: Task; foundation: Making };
};

/** Some tenths of a second. */
const usualLimit = 20_000;

export function startTrying(plan: Plan, wanted: Wanted, limit = usualLimit): Trying {
  const task = taskOf(plan, []);
  return { plan, wanted, tried: 0, limit, asRecipe: { task, foundation: foundationOf(task) } };
}

/** What is still unexplained: seen less made, at every spot; or how the shape is off. */
export type Rest = { over: { round: number; over: number } | null; by: Int32Array };

export function outcomeOf(trying: Trying, set: readonly Candidate[]): Outcome {
  const { plan, wanted } = trying;
  trying.tried++;
  const mishaps = mishapsIn(set);
  const rounds = roundsOf(tallyFor(trying, mishaps));
  const front = wanted.usesJoin || wanted.usesFront ? frontWith(plan, set) : plan.edge.sides;
  return {
    rounds,
    front,
    join: wanted.usesJoin ? joinOf(plan, rounds.at(-1) as Tally, mishaps, front) : null,
  };
}

function tallyFor({ plan, asRecipe }: Trying, mishaps: readonly Settled[]): Tallies {
  const isMisread = mishaps.some(({ round }) => round === 'plan');
  const task = isMisread ? taskOf(plan, mishaps) : { ...asRecipe.task, acts: mishaps };
  const isAsRecipe = !isMisread && !mishaps.some(({ round }) => round === 'foundation');
  return tallyOn(task, isAsRecipe ? asRecipe.foundation : foundationOf(task));
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
