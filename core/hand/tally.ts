/**
 * The counts of a making without its graph.
 *
 * Rule: the very same acts as `work`, but each round only tallies; thousands of makings can be tried in the time
 * one graph takes. A property test holds it equal to reading `work` with `countRound`.
 */

import type { Plan } from '../types.ts';
import { sum } from '../whole.ts';
import type { Settled } from './acts/doing.ts';
import { makeEdging } from './edging.ts';
import { makeFoundation } from './foundation.ts';
import { type Making, startTally } from './graph.ts';
import { type Task, taskOf } from './orders.ts';

/** Ordinary stitches of every side and positions of every corner, in working order. */
export type Tally = { sides: number[]; corners: number[] };
export type Tallies = { foundation: Tally; edgings: Tally[] };

export function tallyWith(plan: Plan, mishaps: readonly Settled[]): Tallies {
  const task = taskOf(plan, mishaps);
  return tallyOn(task, foundationOf(task));
}

/** The foundation by itself, for makings that share it. */
export function foundationOf(task: Task): Making {
  const foundation = startTally();
  makeFoundation(foundation, task);
  return foundation;
}

/** The edgings worked on a foundation that is there. */
export function tallyOn(task: Task, foundation: Making): Tallies {
  let below = foundation;
  const edgings = task.plan.edgings.map((_, n) => {
    const making = startTally();
    makeEdging(making, task, below, n);
    below = making;
    return tallyOf(making);
  });
  return { foundation: tallyOf(foundation), edgings };
}

/** The rounds as tallied, with their turns and marks. */
export function makingsWith(plan: Plan, mishaps: readonly Settled[]): Making[] {
  const task = taskOf(plan, mishaps);
  const makings = [foundationOf(task)];
  plan.edgings.forEach((_, n) => {
    const making = startTally();
    makeEdging(making, task, makings[n] as Making, n);
    makings.push(making);
  });
  return makings;
}

/** Side 0 lies at both ends of a round: before the first turn and after the last corner. */
export function tallyOf({ length, turns, sizes }: Making): Tally {
  if (turns.length === 0) return { sides: [length], corners: [] };
  const sides = turns.map((turn, corner) => {
    const before = corner === 0 ? 0 : (turns[corner - 1] as number) + (sizes[corner - 1] as number);
    return turn - before;
  });
  sides[0] = length - sum(sides.slice(1)) - sum(sizes);
  return { sides, corners: sizes };
}
