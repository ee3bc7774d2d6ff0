/** Short ways to a plan and what is worked from it, for tests with numbers written out. */
import {
  type Choices,
  type Corner,
  type Counted,
  type Mishap,
  type Plan,
  planBack,
  type Result,
  readEdge,
  type Step,
  type Steps,
  steps,
  type Worked,
  work,
} from '../../../core/index.ts';

export const twoChains: Corner = { made: 'chain', size: 2 };

export function given<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
}

type Panel = { corner?: Corner | Corner[]; counted?: Counted; choices?: Choices };

export function planOf(
  sides: number[],
  { corner = twoChains, counted = 'stitches-only', choices }: Panel = {},
): Plan {
  return given(planBack(given(readEdge({ sides, corner, counted })), choices));
}

export const workedOf = (plan: Plan, mishaps: Mishap[] = []): Worked => work(plan, mishaps);

export const stepsOf = (plan: Plan, mishaps: Mishap[] = []): Steps => steps(plan, mishaps);

export const allSteps = (making: Steps): Step[] =>
  Array.from({ length: making.length }, (_, index) => making.at(index));
