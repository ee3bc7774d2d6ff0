/**
 * Reading the front's last round from what the maker counted.
 *
 * Rule: a side is its ordinary stitches; what the count took in of the corners is taken out again.
 * A single number cannot tell which it was, so `counted` is always asked for.
 */
import {
  done,
  fail,
  fieldsOf,
  limits,
  listOf,
  numberProblem,
  ordinal,
  own,
  readCorners,
} from '../problems.ts';
import type { Corner, Counted, Edge, Problem, Result } from '../types.ts';
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
  if (!waysOfCounting.includes(counted))
    problems.push({ at: 'counted', code: 'counted', says: 'Choose what your count took in of the corners' });
  else if (corners) checkTaken(sides, corners, counted as Counted, problems);
  if (problems.length > 0 || !corners) return fail(problems);
  const stitches = sides.map((side, i) => (side as number) - cornersTakenIn(corners, i, counted as Counted));
  return done(edgeOf(stitches, corners));
}

/** Whether something is left of each side that could be read, and not too much. */
function checkTaken(
  sides: readonly (number | null)[],
  corners: readonly Corner[],
  counted: Counted,
  problems: Problem[],
): void {
  sides.forEach((side, i) => {
    if (side === null) return;
    const taken = cornersTakenIn(corners, i, counted);
    const at = `sides[${i}]`;
    if (side - taken < 1)
      problems.push({
        at,
        code: 'corners-take-all',
        says: `Side ${ordinal(i)} must be ${taken + 1} or more: its count takes in ${taken} from the corners`,
      });
    if (side - taken > limits.stitches) problems.push({ at, code: 'too-high', says: tooMany(i, taken) });
  });
}

/** The counts, null for those that cannot be read. */
function readSides(value: unknown, problems: Problem[]): (number | null)[] {
  const list = listOf(value, limits.sides);
  if (!list || list.length < 1) {
    problems.push({
      at: 'sides',
      code: 'side-count',
      says: `The number of sides must be between 1 and ${limits.sides}`,
    });
    return [];
  }
  const most = limits.stitches + 2 * limits.cornerSize;
  return list.map((side, i) => {
    const problem = numberProblem(side, `sides[${i}]`, `Side ${ordinal(i)}`, 1, most, 58);
    if (!problem) return side as number;
    problems.push(problem.code === 'too-high' ? { ...problem, says: tooMany(i, 0) } : problem);
    return null;
  });
}

const tooMany = (sideIndex: number, taken: number): string =>
  `Side ${ordinal(sideIndex)} must be ${(limits.stitches + taken).toLocaleString('en-GB')} or fewer`;

function readEdgeCorners(value: unknown, sideCount: number, problems: Problem[]): Corner[] | null {
  if (sideCount === 0) return [];
  if (listOf(value, limits.sides)?.length !== 0)
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
