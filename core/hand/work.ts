/**
 * Making the back, as a hand would, with whatever mishaps it has; the counts are read off what it made.
 */

import { noPlan, readPlan } from '../plan-again.ts';
import { done, fail, type Result } from '../problems.ts';
import type { Plan, Round, Worked } from '../types.ts';
import { joinMade, type Settled } from './acts/doing.ts';
import { workEdging } from './edging.ts';
import { workFoundation } from './foundation.ts';
import { readMishaps } from './mishap.ts';
import { ordersOf } from './orders.ts';

/**
 * Works a plan (from `planBack`), carrying out the mishaps given. Problems are at `plan` and `mishaps[i]…`.
 */
export function work(plan: unknown, mishaps?: unknown): Result<Worked> {
  const planned = readPlan(plan);
  if (!planned) return fail([noPlan]);
  const read = readMishaps(mishaps, planned);
  if (!read.ok) return read;
  return done(workWith(planned, read.value));
}

export function workWith(plan: Plan, mishaps: readonly Settled[]): Worked {
  const orders = ordersOf(plan, mishaps);
  const foundation = workFoundation(plan, orders, mishaps);
  const edgings: Round[] = [];
  plan.edgings.forEach((_, n) => {
    edgings.push(workEdging(plan, orders, edgings[n - 1] ?? foundation, n, mishaps));
  });
  return { foundation, edgings, join: joinMade(plan, mishaps) };
}
