/**
 * Which numbers a cause can change beside others, and which causes interact with one another.
 *
 * Rule: causes that do not interact add up, number by number; those that do are tried together. Both are told too
 * widely rather than too narrowly.
 */
import type { Plan } from '../types.ts';
import type { Candidate } from './candidate.ts';
import { stitchesBelow } from './places.ts';
import { allBits, biggestCorner, type Reach, reachOf, widened } from './reach.ts';
import type { Spot, Wanted } from './wanted.ts';

export type Touching = {
  plan: Plan;
  wanted: Wanted;
  k: number;
  /** The fewest stitches that any round has on each side, in one run. */
  runs: number[];
  /** Sides so short that they may run out altogether, and what is amiss there shows on the next. */
  tiny: number;
  reaches: Reach[];
  /** Those beside which stitches may fall to the next side. */
  crowds: Uint8Array;
};

/** How those already in a set interact with one that joins it. */
export type Interaction = {
  /**
   * Beside a corner worked elsewhere stitches fall to the next side, and the chains below are worked into; on a side
   * that has run out of stitches, too.
   */
  crowded: boolean;
  /** Later corners are counted on from one worked elsewhere: what anything changes may show on any side after it. */
  follows: boolean;
  /** Corners forgotten, in working order: every later side and corner has another number. */
  forgotten: { round: number; corner: number }[];
};

export const alone: Interaction = { crowded: false, follows: false, forgotten: [] };

/** Stitches a side must have over its mishaps for these not to run into one another or into a corner. */
const elbowRoom = 12;

export function touchingOf(plan: Plan, wanted: Wanted, candidates: readonly Candidate[]): Touching {
  const k = plan.foundation.sides.length;
  const corner = biggestCorner(plan);
  const runs = Array.from({ length: k }, (_, side) => shortestRun(plan, side) - corner);
  const tiny = runs.reduce((bits, run, side) => (run <= elbowRoom ? bits | (1 << side) : bits), 0);
  const reaches = candidates.map((candidate) => reachOf(plan, candidate, corner));
  const touching = { plan, wanted, k, runs, tiny, reaches, crowds: new Uint8Array(0) };
  const crowds = Uint8Array.from(reaches, (reach) =>
    reach.moves.length > 0 || isTight(touching, reach.sides, 2 * takes(reach)) ? 1 : 0,
  );
  return { ...touching, crowds };
}

function shortestRun(plan: Plan, side: number): number {
  const least = Math.min(...plan.edgings.map((_, n) => stitchesBelow(plan, n + 1, side)));
  const isInLegs = side === 0 && plan.foundation.corners.length > 0;
  return isInLegs ? Math.min(least, plan.foundation.lead, plan.foundation.tail) : least;
}

/** Whether causes of such sizes may run a hand out of stitches on one of the sides; a third may come on top. */
export function isTight({ runs }: Touching, sides: number, stitches: number): boolean {
  for (let side = 0; side < runs.length; side++)
    if (hasBit(sides, side) && (runs[side] as number) < 1.5 * stitches + elbowRoom) return true;
  return false;
}

/** Stitches that a cause may take from a run: sides in another order are as long as they were. */
const takes = ({ most, planned, unbounded }: Reach): number => (planned && unbounded ? 0 : most);

export function interactionOf(
  touching: Touching,
  set: readonly number[],
  candidates: readonly Candidate[],
): Interaction {
  const { reaches } = touching;
  const those = set.map((one) => reaches[one] as Reach);
  const crowded = set.some((one) => touching.crowds[one] === 1);
  if (!crowded && !those.some(({ forgets }) => forgets)) return alone;
  const forgotten = set
    .flatMap((one) => candidates[one]?.settled ?? [])
    .filter(({ kind }) => kind === 'corner-forgotten')
    .map(({ round, edging, corner }) => ({
      round: round === 'edging' ? edging + 1 : 0,
      corner: corner as number,
    }))
    .sort((a, b) => a.round - b.round || b.corner - a.corner);
  return {
    crowded,
    follows: those.some(({ moves }) => moves.some(({ follows }) => follows)),
    forgotten,
  };
}

/** Whether a candidate can change what is read at a spot, beside what interacts with it. */
export function touches(touching: Touching, one: number, spot: Spot, interaction: Interaction): boolean {
  const reach = touching.reaches[one] as Reach;
  if (spot.part === 'drift' || spot.part === 'left-over') return true;
  if (spot.part === 'front') return touching.wanted.usesFront && reach.front > 0;
  if (reach.forgets) return true;
  if (spot.part === 'total') return reach.first <= spot.round;
  return spot.part === 'corner'
    ? touchesCorner(touching, reach, spot, interaction)
    : touchesSide(touching, reach, spot, interaction);
}

function touchesCorner({ runs }: Touching, reach: Reach, spot: Spot, interaction: Interaction): boolean {
  // On a short side two corners can pass one another.
  const passes = runs.some((run) => run < 2 * reach.most + elbowRoom);
  if (passes && reach.moves.some(({ round }) => round <= spot.round)) return true;
  return reach.spans.some(
    ({ from, corners }) =>
      from === spot.round &&
      corners !== 0 &&
      (interaction.forgotten.length > 0 || hasBit(corners, spot.index)),
  );
}

const hasBit = (bits: number, index: number): boolean => ((bits >>> index) & 1) === 1;

function touchesSide({ k, tiny }: Touching, reach: Reach, spot: Spot, interaction: Interaction): boolean {
  for (const { from, sides, corners } of reach.spans) {
    if (spot.round < from) continue;
    if (interaction === alone) {
      const own = (sides & tiny) === 0 ? sides : widened(sides, k);
      if (hasBit(own, spot.index)) return true;
      continue;
    }
    const beside = widened(sides | corners, k);
    const near = interaction.follows ? onwards(sides | corners, k) : beside;
    const there =
      interaction.forgotten.length > 0 ? renumbered(near, { from, to: spot.round }, interaction, k) : near;
    if (hasBit(there, spot.index)) return true;
  }
  return false;
}

/** The sides, the one before, and all that come after in the working order: side 0 is worked last, but for its lead. */
export function onwards(sides: number, k: number): number {
  const others = sides & ~1;
  if (others === 0) return sides === 0 ? 0 : 1 | (1 << (k - 1));
  const first = others & -others;
  return (allBits(k) & ~((first >>> 1) - 1)) | 1;
}

/** The bits of sides as a later round numbers them, corners forgotten on the way; and those beside. */
function renumbered(
  bits: number,
  { from, to }: { from: number; to: number },
  { forgotten }: Interaction,
  k: number,
): number {
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

/** They never interact. */
export const never = 100;

/**
 * The first round in which two candidates, done together, may give other counts than the sum of what each gives: 0
 * the foundation, n + 1 edging n, one more the join; `never` where they just add up.
 */
export function interactsFrom(touching: Touching, one: number, other: number): number {
  const a = touching.reaches[one] as Reach;
  const b = touching.reaches[other] as Reach;
  const sides = a.sides & b.sides;
  // In another order any side may be where the shortest was.
  const those = sides !== 0 && (takes(a) < a.most || takes(b) < b.most) ? allBits(touching.k) : sides;
  // A corner is worked elsewhere within half a side of its place, so that slips in the middle stay on it.
  const share = a.moves.length + b.moves.length > 0 ? 4 / 3 : 1;
  if (isTight(touching, those, share * (takes(a) + takes(b)))) return Math.max(a.first, b.first);
  if (a.isPlain && b.isPlain) return never;
  return Math.min(interactsWith(touching, a, b), interactsWith(touching, b, a));
}

function interactsWith({ wanted, plan }: Touching, a: Reach, b: Reach): number {
  if (a.forgets || (a.planned && (b.planned || b.chains.length > 0))) return 0;
  let first = never;
  for (const move of a.moves) if (move.round < first && meddlesWithMove(move, b)) first = move.round;
  for (const { round } of a.chains)
    for (const other of b.chains) if (other.round === round && round < first) first = round;
  if (first < never || !wanted.usesJoin) return first;
  const skips = a.skipsChain && (b.chains.length > 0 || b.planned || b.joins);
  return a.turnsJoin || skips ? plan.edgings.length + 1 : never;
}

/**
 * Where there is room, a corner worked elsewhere interacts with what is done right beside it and with the chains it
 * leaves behind; where later corners follow it, with all that lies on those sides, in its own round and below.
 */
function meddlesWithMove({ round, corner, sides, follows }: Reach['moves'][number], other: Reach): boolean {
  for (const move of other.moves)
    if (move.round === round && (move.sides & sides) !== 0 && (follows || move.follows)) return true;
  for (const chain of other.chains)
    if (chain.round === round - 1 && (chain.corners & sides) !== 0) return true;
  const isClose = follows || other.elsewhere || hasBit(other.besides, corner);
  for (const span of other.spans)
    if (isClose && (span.from === round || (follows && span.from < round)) && (span.sides & sides) !== 0)
      return true;
  return false;
}
