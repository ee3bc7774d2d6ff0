/**
 * Making the back, as a hand would, with whatever mishaps it has; the counts are read off what it made.
 */

import type { Plan, Round, Worked } from '../types.ts';
import type { Act } from './acts/acts.ts';
import { joinMade, type Settled, settle } from './acts/doing.ts';
import { workEdging } from './edging.ts';
import { workFoundation } from './foundation.ts';
import { taskOf } from './orders.ts';

/** Works a plan, carrying out the acts given; `checkActs` tells beforehand of those that have no place on it. */
export const work = (plan: Plan, acts: readonly Act[] = []): Worked => workWith(plan, settle(acts));

export function workWith(plan: Plan, mishaps: readonly Settled[]): Worked {
  const task = taskOf(plan, mishaps);
  const foundation = workFoundation(task);
  const edgings: Round[] = [];
  plan.edgings.forEach((_, n) => {
    edgings.push(workEdging(task, edgings[n - 1] ?? foundation, n));
  });
  for (const { marks } of [foundation, ...edgings])
    for (const mark of marks) if (mishaps[mark.mishap]?.asked) mark.asked = true;
  return { foundation, edgings, join: joinMade(plan, mishaps) };
}
