/**
 * Reading the front's last round from what the maker counted.
 *
 * Rule: a side is its ordinary stitches; what the count took in of the corners is taken out again.
 * A single number cannot tell which it was, so `counted` is always asked for.
 */
import { checkCorners, checkNumber } from '../checks.ts';
import { limits } from '../limits.ts';
import { done, fail, type Problem, type Result } from '../problems.ts';
import type { Corner, Counted, Edge, EdgeInput } from '../types.ts';
import { sum } from '../whole.ts';

/** How many positions of its two corners a side's count took in. */
function cornersTakenIn(corners: readonly Corner[], sideIndex: number, counted: Counted): number {
  const after = corners[sideIndex]?.size ?? 0;
  const before = corners[(sideIndex + corners.length - 1) % corners.length]?.size ?? 0;
  if (counted === 'stitches-only') return 0;
  return counted === 'one-corner' ? after : before + after;
}

/** The only place where an edge is made. */
const edgeOf = (sides: number[], corners: Corner[]): Edge =>
  ({ sides, corners, total: sum(sides) + sum(corners.map((corner) => corner.size)) }) as Edge;

/**
 * The front's last round: 1–24 sides of 1–100,000 ordinary stitches, with one corner after every side (size 0–9), or
 * one side and no corners (`corner: []`, a round panel).
 * Problems are at `sides`, `sides[i]`, `corner`, `corner.size`, `corner[i].size`.
 */
export function readEdge({ sides, corner, counted }: EdgeInput): Result<Edge> {
  const problems: Problem[] = [];
  if (sides.length < 1 || sides.length > limits.sides)
    return fail([{ at: 'sides', code: 'between', params: { min: 1, max: limits.sides } }]);
  const readable = sides.map((side, i) =>
    checkNumber(side, `sides[${i}]`, { min: 1, max: Number.POSITIVE_INFINITY, like: 58 }, problems),
  );
  const corners = readCorners(corner, sides.length, problems);
  const taken = sides.map((_, i) => (corners ? cornersTakenIn(corners, i, counted) : 0));
  const stitches = sides.map((side, i) => side - (taken[i] as number));
  stitches.forEach((count, i) => {
    if (readable[i]) checkStitches(count, taken[i] as number, `sides[${i}]`, problems);
  });
  return problems.length > 0 || !corners ? fail(problems) : done(edgeOf(stitches, corners));
}

/** Whether something is left of a side without what its count takes in of the corners, and not too much. */
function checkStitches(stitches: number, taken: number, at: string, problems: Problem[]): void {
  if (stitches < 1) problems.push({ at, code: 'corners-take-all', params: { min: taken + 1, taken } });
  if (stitches > limits.stitches)
    problems.push({ at, code: 'too-high', params: { max: limits.stitches + taken } });
}

function readCorners(corner: EdgeInput['corner'], sideCount: number, problems: Problem[]): Corner[] | null {
  const isRound = Array.isArray(corner) && corner.length === 0;
  if (!isRound) return checkCorners(corner, sideCount, 'corner', problems);
  if (sideCount === 1) return [];
  problems.push({ at: 'corner', code: 'no-corners', params: {} });
  return null;
}
