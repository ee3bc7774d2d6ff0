/**
 * Reading the front's last round from what the maker counted.
 *
 * Rule: a side is its ordinary stitches; what the count took in of the corners is taken out again.
 * A single number cannot tell which it was, so `counted` is always asked for.
 */
import { done, fail, fieldsOf, limits, numberProblem, ordinal, own, readCorners } from './problems.ts';
import type { Corner, Counted, Edge, Problem, Result } from './types.ts';
import { sum } from './whole.ts';

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
  if (!waysOfCounting.includes(counted))
    problems.push({ at: 'counted', code: 'counted', says: 'Choose what your count took in of the corners' });
  if (problems.length > 0 || !corners) return fail(problems);
  const stitches = sides.map((side, i) => side - cornersTakenIn(corners, i, counted as Counted));
  stitches.forEach((count, i) => {
    const taken = cornersTakenIn(corners, i, counted as Counted);
    const label = `Side ${ordinal(i)}`;
    if (count < 1)
      problems.push({
        at: `sides[${i}]`,
        code: 'corners-take-all',
        says: `${label} must be ${taken + 1} or more: its count takes in ${taken} from the corners`,
      });
    if (count > limits.stitches)
      problems.push(numberProblem(count, `sides[${i}]`, label, 1, limits.stitches, 58) as Problem);
  });
  return problems.length > 0 ? fail(problems) : done(edgeOf(stitches, corners));
}

function readSides(value: unknown, problems: Problem[]): number[] {
  if (!Array.isArray(value) || value.length < 1 || value.length > limits.sides) {
    problems.push({
      at: 'sides',
      code: 'side-count',
      says: `The number of sides must be between 1 and ${limits.sides}`,
    });
    return [];
  }
  const most = limits.stitches + 2 * limits.cornerSize;
  return Array.from(value as unknown[], (side, i) => {
    const problem = numberProblem(side, `sides[${i}]`, `Side ${ordinal(i)}`, 1, most, 58);
    if (!problem) return side as number;
    problems.push(problem.code === 'too-high' ? { ...problem, says: tooMany(i) } : problem);
    return 0;
  });
}

const tooMany = (sideIndex: number): string =>
  `Side ${ordinal(sideIndex)} must be ${limits.stitches.toLocaleString('en-GB')} or fewer`;

function readEdgeCorners(value: unknown, sideCount: number, problems: Problem[]): Corner[] | null {
  if (sideCount === 0) return [];
  if (!Array.isArray(value) || value.length > 0)
    return readCorners(value, sideCount, 'corner', 'Corner', problems);
  if (sideCount === 1) return [];
  problems.push({
    at: 'corner',
    code: 'no-corners',
    says: 'A panel without corners has 1 side: add the counts up, or say how its corners are made',
  });
  return null;
}

/** Checks an edge that comes from outside again, as `planBack` and `pair` must. */
export function checkEdge(value: unknown): Result<Edge> {
  const fields = fieldsOf(value) ?? {};
  return readEdge({ sides: own(fields, 'sides'), corner: own(fields, 'corners'), counted: 'stitches-only' });
}
