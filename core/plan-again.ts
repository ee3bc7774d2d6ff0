/**
 * Taking a plan that comes back from outside: from a file, a link, another thread.
 *
 * Rule: a plan is its edge and its choices; everything else follows. It is planned once more from those two, and what
 * does not come out the same is no plan. So nothing further in need ever doubt a number.
 */

import { fieldsOf, listOf, own } from './checks.ts';
import { limits } from './limits.ts';
import { planBack } from './planning/plan.ts';
import type { Problem } from './problems.ts';
import type { Plan } from './types.ts';

export const noPlan: Problem = { at: 'plan', code: 'unreadable', params: {} };

/** The same plan made anew, or null for anything that is none. */
export function readPlan(value: unknown): Plan | null {
  const fields = fieldsOf(value);
  if (!fields) return null;
  const edge = own(fields, 'edge');
  const again = planBack(edge, choicesAgain(own(fields, 'choices'), own(fields, 'edgings'), edge));
  return again.ok && isSame(again.value, value) ? again.value : null;
}

export const looksLikePlan = (value: unknown): value is Plan => readPlan(value) !== null;

/** The settled choices as choices: corners of the edgings stand in the plan's rounds. */
function choicesAgain(settled: unknown, rounds: unknown, edge: unknown): Record<string, unknown> {
  const fields = fieldsOf(settled) ?? {};
  const hasCorners = listOf(own(fieldsOf(edge) ?? {}, 'corners'), limits.sides)?.length !== 0;
  const keys = [
    'foundationCorner',
    'foundationStart',
    'foundationClosing',
    'edgingClosing',
    'joinStart',
    'markerEvery',
  ];
  const kept = Object.fromEntries(keys.map((key) => [key, own(fields, key)]));
  const start = fieldsOf(own(fields, 'start')) ?? {};
  const worked = listOf(rounds, limits.edgings) ?? [];
  const asked = listOf(own(fields, 'edgings'), limits.edgings) ?? [];
  return {
    ...kept,
    start: { side: own(start, 'side'), lead: hasCorners ? own(start, 'lead') : undefined },
    edgings: asked.map((one, n) => ({
      arm: own(fieldsOf(one) ?? {}, 'arm'),
      increase: own(fieldsOf(one) ?? {}, 'increase'),
      corner: hasCorners ? own(fieldsOf(worked[n]) ?? {}, 'corners') : undefined,
    })),
  };
}

/** Whether everything in `planned` stands in `given` as well. */
function isSame(planned: unknown, given: unknown): boolean {
  if (typeof planned !== 'object' || planned === null) return planned === given;
  if (Array.isArray(planned)) {
    const list = listOf(given, planned.length);
    return list?.length === planned.length && planned.every((one, i) => isSame(one, list[i]));
  }
  const fields = fieldsOf(given);
  return fields !== null && Object.entries(planned).every(([key, one]) => isSame(one, own(fields, key)));
}
