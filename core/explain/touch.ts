/**
 * Which numbers a cause can change beside others, and which causes meddle with one another.
 *
 * Rule: causes that do not meddle add up, number by number; those that do are tried together. Both are told too
 * widely rather than too narrowly.
 */
import type { Plan } from '../types.ts';
import type { Candidate } from './candidate.ts';
import type { Magnitudes } from './magnitudes.ts';
import { stitchesBelow } from './places.ts';
import { allBits, biggestCorner, type Reach, reachOf, widened } from './reach.ts';
import type { Spot, Wanted } from './wanted.ts';

export type Touching = {
  plan: Plan;
  wanted: Wanted;
  k: number;
  /** Sides so short, for what may be amiss on them, that a hand runs out of stitches there. */
  tight: number;
  reaches: Reach[];
};

/** What those already in a set do to the reach of one that joins it. */
export type Company = {
  /** Beside a corner worked elsewhere stitches fall to the next side, and the chains below are worked into. */
  besideMoved: boolean;
  /** Where later corners are counted on from there, what comes of anything is found on these sides and the last. */
  follows: number;
  /** Corners forgotten, in working order: every later side and corner has another number. */
  forgotten: { round: number; corner: number }[];
};

export const alone: Company = { besideMoved: false, follows: 0, forgotten: [] };

/** Stitches a side must have over its mishaps for these not to run into one another or into a corner. */
const elbowRoom = 12;

export function touchingOf(
  plan: Plan,
  wanted: Wanted,
  magnitudes: Magnitudes,
  candidates: readonly Candidate[],
): Touching {
  const k = plan.foundation.sides.length;
  const chains = Math.max(0, ...plan.edge.corners.map(({ size }) => size));
  let tight = 0;
  for (let side = 0; side < k; side++) {
    const most = Math.max(
      ...[side, side + 1, side + k - 1].flatMap((one) => magnitudes.ofSide[one % k] ?? []),
    );
    if (shortestRun(plan, side) - chains < 4 * most + elbowRoom) tight |= 1 << side;
  }
  const corner = biggestCorner(plan);
  return { plan, wanted, k, tight, reaches: candidates.map((candidate) => reachOf(plan, candidate, corner)) };
}

function shortestRun(plan: Plan, side: number): number {
  const least = Math.min(...plan.edgings.map((_, n) => stitchesBelow(plan, n + 1, side)));
  const isInLegs = side === 0 && plan.foundation.corners.length > 0;
  return isInLegs ? Math.min(least, plan.foundation.lead, plan.foundation.tail) : least;
}

export function companyOf(
  { reaches, k }: Touching,
  set: readonly number[],
  candidates: readonly Candidate[],
): Company {
  const those = set.map((one) => reaches[one] as Reach);
  if (!those.some(({ forgets, moves }) => forgets || moves.length > 0)) return alone;
  const forgotten = set
    .flatMap((one) => candidates[one]?.settled ?? [])
    .filter(({ kind }) => kind === 'corner-forgotten')
    .map(({ round, edging, corner }) => ({
      round: round === 'edging' ? edging + 1 : 0,
      corner: corner as number,
    }))
    .sort((a, b) => a.round - b.round || b.corner - a.corner);
  const isFollowed = those.some(({ moves }) => moves.some(({ follows }) => follows));
  const others = those.filter(({ moves }) => !moves.some(({ follows }) => follows));
  const sides = others.reduce((bits, reach) => bits | reach.sides, 0);
  return {
    besideMoved: those.some(({ moves }) => moves.length > 0),
    follows: isFollowed ? widened(sides, k) | 1 : 0,
    forgotten,
  };
}

/** Whether a candidate can change what is read at a spot, in the company given. */
export function touches(touching: Touching, one: number, spot: Spot, company: Company): boolean {
  const reach = touching.reaches[one] as Reach;
  if (spot.part === 'drift' || spot.part === 'left-over') return true;
  if (spot.part === 'front') return touching.wanted.usesFront && reach.front > 0;
  if (reach.forgets) return true;
  return spot.part === 'corner'
    ? touchesCorner(touching, reach, spot, company)
    : touchesSide(touching, reach, spot, company);
}

function touchesCorner({ tight }: Touching, reach: Reach, spot: Spot, company: Company): boolean {
  // On a short side two corners can pass one another.
  if (tight !== 0 && reach.moves.some(({ round }) => round <= spot.round)) return true;
  return reach.spans.some(
    ({ from, corners }) =>
      from === spot.round && corners !== 0 && (company.forgotten.length > 0 || hasBit(corners, spot.index)),
  );
}

const hasBit = (bits: number, index: number): boolean => ((bits >>> index) & 1) === 1;

function touchesSide({ k }: Touching, reach: Reach, spot: Spot, company: Company): boolean {
  for (const { from, sides, corners } of reach.spans) {
    if (spot.round < from) continue;
    if (company === alone) {
      if (hasBit(sides, spot.index)) return true;
      continue;
    }
    const near = widened(sides | corners, k) | company.follows;
    const there = company.forgotten.length > 0 ? renumbered(near, from, spot.round, company, k) : near;
    if (hasBit(there, spot.index)) return true;
  }
  return false;
}

/** The bits of sides as a later round numbers them, corners forgotten on the way; and those beside. */
function renumbered(bits: number, from: number, to: number, { forgotten }: Company, k: number): number {
  let count = k - forgotten.filter(({ round }) => round < from).length;
  let there = bits;
  for (const { round, corner } of forgotten) {
    if (round < from || round > to) continue;
    const low = there & allBits(corner + 1);
    const isLast = corner >= count - 1;
    there = low | ((there >>> (corner + 1)) << corner);
    if (isLast && hasBit(there, corner)) there |= 1;
    count--;
  }
  const last = Math.max(0, count - 1);
  if (there >>> count > 0) there |= 1 << last;
  return count > 0 ? widened(there & allBits(count), count) : 1;
}

/** Whether two candidates, done together, may give other counts than the sum of what each gives. */
export function meddle(touching: Touching, one: number, other: number): boolean {
  const a = touching.reaches[one] as Reach;
  const b = touching.reaches[other] as Reach;
  if ((a.sides & b.sides & touching.tight) !== 0) return true;
  if (a.isPlain && b.isPlain) return false;
  return meddlesWith(touching, a, b) || meddlesWith(touching, b, a);
}

function meddlesWith({ wanted, k }: Touching, a: Reach, b: Reach): boolean {
  if (a.forgets) return true;
  if (wanted.usesJoin) {
    if (a.turnsJoin) return true;
    if (a.skipsChain && (b.chains.length > 0 || b.planned || b.joins)) return true;
  }
  if (a.planned && (b.planned || b.chains.length > 0)) return true;
  if (a.chains.some((chain) => b.chains.some((other) => other.round === chain.round))) return true;
  return a.moves.some((move) => meddlesWithMove(move, b, k));
}

/** With its own round's stitches nearby, with the chains below it, and, where later corners follow, with all below. */
function meddlesWithMove(move: Reach['moves'][number], other: Reach, k: number): boolean {
  if (other.moves.some(({ round }) => round === move.round)) return true;
  const near = widened(move.sides, k);
  if (other.chains.some(({ round, corners }) => round === move.round - 1 && (corners & near) !== 0))
    return true;
  return other.spans.some(
    ({ from, sides }) => (from === move.round || (move.follows && from < move.round)) && (sides & near) !== 0,
  );
}
