/**
 * Reading the front's last round from what the maker counted.
 *
 * Rule: a side is its ordinary stitches; what the count took in of the corners is taken out again.
 * A single number cannot tell which it was, so `counted` is always asked for.
 */
import { fieldsOf, listOf, numberProblem, own, readCorners } from '../checks.ts';
import { limits } from '../limits.ts';
import { done, fail, type Problem, type Result } from '../problems.ts';
import type { Corner, Counted, Edge } from '../types.ts';
import { sum } from '../whole.ts';

const waysOfCounting: readonly unknown[] = ['stitches-only', 'one-corner', 'both-corners'];

/** How many positions of its two corners a side's count took in. */
export function cornersTakenIn(corners: readonly Corner[], sideIndex: number, counted: Counted): number {
  const after = corners[sideIndex]?.size ?? 0;
  const before = corners[(sideIndex + corners.length - 1) % corners.length]?.size ?? 0;
  if (counted === 'stitches-only') return 0;
  return counted === 'one-corner' ? after : before + after;
}

/** The whole edge from sides and corners. */
export function edgeOf(sides: number[], corners: Corner[]): Edge {
  return { sides, corners, total: sum(sides) + sum(corners.map((corner) => corner.size)) };
}

/**
 * The front's last round, read from an `EdgeInput`: 1–24 sides of 1–100,000 ordinary stitches, with one corner
 * after every side (size 0–9), or one side and no corners (`corner: []`, a round panel).
 * Problems are at `sides`, `sides[i]`, `corner`, `corner[i].size`, `counted`.
 */
export function readEdge(input: unknown): Result<Edge> {
  const problems: Problem[] = [];
  const fields = fieldsOf(input) ?? {};
  const sides = readSides(own(fields, 'sides'), problems);
  const corners = readEdgeCorners(own(fields, 'corner'), sides.length, problems);
  const counted = own(fields, 'counted');
  const isKnown = waysOfCounting.includes(counted);
  if (!isKnown) problems.push({ at: 'counted', code: 'counted', params: {} });
  const taken = sides.map((_, i) =>
    isKnown && corners ? cornersTakenIn(corners, i, counted as Counted) : 0,
  );
  sides.forEach((side, i) => {
    if (side !== null) checkTaken(side, taken[i] as number, `sides[${i}]`, problems);
  });
  if (problems.length > 0 || !corners) return fail(problems);
  return done(
    edgeOf(
      sides.map((side, i) => (side as number) - (taken[i] as number)),
      corners,
    ),
  );
}

/** Whether something is left of a side without what its count takes in of the corners, and not too much. */
function checkTaken(side: number, taken: number, at: string, problems: Problem[]): void {
  if (side - taken < 1) problems.push({ at, code: 'corners-take-all', params: { min: taken + 1, taken } });
  if (side - taken > limits.stitches)
    problems.push({ at, code: 'too-high', params: { max: limits.stitches + taken } });
}

/** The counts, null for those that cannot be read. */
function readSides(value: unknown, problems: Problem[]): (number | null)[] {
  const list = listOf(value, limits.sides);
  if (!list || list.length < 1) {
    problems.push({ at: 'sides', code: 'between', params: { min: 1, max: limits.sides } });
    return [];
  }
  return list.map((side, i) => {
    const problem = numberProblem(side, `sides[${i}]`, { min: 1, max: Number.POSITIVE_INFINITY, like: 58 });
    if (problem) problems.push(problem);
    return problem ? null : (side as number);
  });
}

function readEdgeCorners(value: unknown, sideCount: number, problems: Problem[]): Corner[] | null {
  if (sideCount === 0) return [];
  if (listOf(value, limits.sides)?.length !== 0) return readCorners(value, sideCount, 'corner', problems);
  if (sideCount === 1) return [];
  problems.push({ at: 'corner', code: 'no-corners', params: {} });
  return null;
}

/** Checks an edge that comes from outside again, as `planBack` and `pair` must. */
export function checkEdge(value: unknown): Result<Edge> {
  const fields = fieldsOf(value) ?? {};
  return readEdge({ sides: own(fields, 'sides'), corner: own(fields, 'corners'), counted: 'stitches-only' });
}
