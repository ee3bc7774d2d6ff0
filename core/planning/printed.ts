/**
 * Checking the counts a pattern prints against the pattern's own recipe.
 *
 * Rule: no formula. The first round is laid down as printed, each later one is worked on it stitch by stitch, and what
 * was made is counted; so a pattern that contradicts itself is found where it does.
 */

import { checkCorner, checkNumber } from '../checks.ts';
import { makeAsked } from '../hand/edging.ts';
import { isCornerKind, type Making, makeAlong, makeStitch, startMaking, turn } from '../hand/graph.ts';
import { limits } from '../limits.ts';
import { done, fail, type Problem, type Result } from '../problems.ts';
import { type Arm, type Corner, NodeKind } from '../types.ts';
import { readArm } from './choices.ts';

/** A pattern's rounds, all sides alike, and what it prints about them; null where a number is not printed. */
export type PrintedRounds = {
  corner: Corner;
  /** Stitches worked into a corner on each side of the new corner. */
  arm: number | Arm;
  /** Default 4. */
  sideCount?: number;
  /** Stitches of one side, round by round, corner positions left out. */
  sides?: (number | null)[];
  totals?: (number | null)[];
  /** Whether the totals take in the corner positions; default no. */
  totalsTakeCorners?: boolean;
  /** How many rounds the pattern names after the first. */
  roundsNamed?: number;
};

/** What the recipe gives, round by round, in the printed manner of counting. */
export type RoundsGiven = { sides: number[]; totals: number[] };

type Read = Required<Omit<PrintedRounds, 'roundsNamed' | 'arm'>> & { arm: Arm };

/**
 * Works a pattern's rounds and compares. Where it contradicts itself the problems are at `sides[i]` or `totals[i]`
 * (codes `printed-side`, `printed-total`, `rounds-named`); what is beyond the limits is at the value's own name.
 */
export function checkRounds(printed: PrintedRounds): Result<RoundsGiven> {
  const problems: Problem[] = [];
  const read = readPrinted(printed, problems);
  if (!read) return fail(problems);
  const given = workRounds(read, Math.max(read.sides.length, read.totals.length), problems);
  compare(read.sides, given.sides, 'sides', problems);
  compare(read.totals, given.totals, 'totals', problems);
  return problems.length > 0 ? fail(problems) : done(given);
}

function readPrinted(printed: PrintedRounds, problems: Problem[]): Read | null {
  const { corner, sideCount = 4, sides = [], totals = [], totalsTakeCorners = false } = printed;
  checkCorner(corner, 'corner', problems);
  const arm = readArm(printed.arm, 'arm', problems);
  checkNumber(sideCount, 'sideCount', { min: 1, max: limits.sides, like: 4 }, problems);
  checkColumn(sides, 'sides', problems);
  checkColumn(totals, 'totals', problems);
  if (problems.length > 0) return null;
  if (typeof sides[0] !== 'number' && typeof totals[0] !== 'number')
    return refuse(problems, { at: 'sides[0]', code: 'empty', params: {} });
  checkNamed(printed, problems);
  return { corner, arm, sideCount, sides, totals, totalsTakeCorners };
}

function refuse(problems: Problem[], problem: Problem): null {
  problems.push(problem);
  return null;
}

/** Printed numbers: whole, or null where nothing is printed. */
function checkColumn(column: readonly (number | null)[], of: 'sides' | 'totals', problems: Problem[]): void {
  const most = limits.printedRounds;
  if (column.length > most) problems.push({ at: of, code: 'printed-rounds', params: { of, max: most } });
  const bounds = { min: 0, max: limits.sides * (limits.stitches + limits.cornerSize), like: 60 };
  column.slice(0, most).forEach((count, i) => {
    if (count !== null) checkNumber(count, `${of}[${i}]`, bounds, problems);
  });
}

/** A pattern that names more or fewer rounds than it prints counts for. */
function checkNamed(
  { roundsNamed: named, sides = [], totals = [] }: PrintedRounds,
  problems: Problem[],
): void {
  if (named === undefined) return;
  const of = totals.length > 0 ? 'totals' : 'sides';
  const printed = Math.max(sides.length, totals.length) - 1;
  const isGood = checkNumber(named, 'roundsNamed', { min: 0, max: limits.printedRounds, like: 5 }, problems);
  if (!isGood || named === printed) return;
  const at = printed > named ? `${of}[${named + 1}]` : of;
  problems.push({ at, code: 'rounds-named', params: { named, printed, of } });
}

function workRounds(read: Read, rounds: number, problems: Problem[]): RoundsGiven {
  const { corner, arm, sideCount } = read;
  const given: RoundsGiven = { sides: [], totals: [] };
  const firstSide = sideOfFirst(read, problems);
  if (firstSide === null) return given;
  let below = firstRound(firstSide, sideCount, corner);
  for (let round = 0; round < rounds; round++) {
    if (round > 0) below = nextRound(below, arm, corner);
    const { side, total } = countRing(below, sideCount);
    if (side > limits.stitches) break;
    given.sides.push(side);
    given.totals.push(read.totalsTakeCorners ? below.length : total);
  }
  return given;
}

/** Stitches of one side of the first round, as printed or as its total says; null where that cannot be. */
function sideOfFirst(read: Read, problems: Problem[]): number | null {
  const [side] = read.sides;
  if (typeof side === 'number') return side;
  const total = read.totals[0] as number;
  const stitches = total - (read.totalsTakeCorners ? read.sideCount * read.corner.size : 0);
  if (stitches >= 0 && stitches % read.sideCount === 0) return stitches / read.sideCount;
  problems.push({
    at: 'totals[0]',
    code: 'first-uneven',
    params: { total, sides: read.sideCount },
  });
  return null;
}

/** The first round, begun after its last corner. */
function firstRound(side: number, sideCount: number, corner: Corner): Making {
  const making = startMaking(sideCount * (side + corner.size));
  for (let i = 0; i < sideCount; i++) {
    makeAlong(making, side, 0);
    makeCorner(making, corner);
  }
  return making;
}

function makeCorner(making: Making, { made, size }: Corner): void {
  turn(making, made);
  const kind = made === 'chain' ? NodeKind.cornerChain : NodeKind.cornerStitch;
  for (let i = 0; i < size; i++) makeStitch(making, kind, -1);
}

function nextRound(below: Making, arm: Arm, corner: Corner): Making {
  const making = startMaking(below.length + 64);
  makeAsked(making, { arm, increase: 0, sides: [], cornerFor: () => corner, closingAdds: 1 }, below);
  return making;
}

/** Counted off the graph; sides stay equal, for every corner is worked alike. */
function countRing(making: Making, sideCount: number): { side: number; total: number } {
  let total = 0;
  for (let node = 0; node < making.length; node++) if (!isCornerKind(making.kinds[node])) total++;
  return { side: total / sideCount, total };
}

function compare(
  printed: readonly (number | null)[],
  given: readonly number[],
  at: 'sides' | 'totals',
  problems: Problem[],
): void {
  printed.forEach((count, i) => {
    const made = given[i];
    if (count === null || made === undefined || made === count) return;
    problems.push({
      at: `${at}[${i}]`,
      code: at === 'sides' ? 'printed-side' : 'printed-total',
      params: { round: i, given: made, printed: count },
    });
  });
}
