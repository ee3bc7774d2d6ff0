/**
 * Which spots a cause can change, and which causes meddle with one another.
 *
 * Rule: what a cause can touch is told too widely rather than too narrowly, and so is meddling: the search leans on
 * both to leave nothing out. Causes that do not meddle add up, spot by spot; those that do are tried together.
 */
import type { Settled } from '../mishap.ts';
import type { Plan } from '../types.ts';
import type { Candidate } from './candidate.ts';
import type { Magnitudes } from './magnitudes.ts';
import { stitchesBelow } from './places.ts';
import type { Spot, Wanted } from './wanted.ts';

/**
 * `alone`: what it changes by itself. `beside-moved`: with a corner of the same round worked elsewhere, stitches near
 * it fall to the next side, and the chains below are worked into. `uncornered`: with a corner forgotten every later
 * side and corner has another number.
 */
export type Company = 'alone' | 'beside-moved' | 'uncornered';

/** 0 is the foundation and the plan, n + 1 edging n, past the last the join. */
export function roundOf({ round, edging }: Settled, plan: Plan): number {
  if (round === 'edging') return edging + 1;
  return round === 'join' ? plan.edgings.length + 1 : 0;
}

const planKinds: readonly string[] = [
  'chains-as-stitches',
  'chains-left-out',
  'arms-forgotten',
  'order-not-mirrored',
];
const isPlanned = (one: Settled): boolean => planKinds.includes(one.kind);
const isMovedOnEdging = (one: Settled): boolean => one.kind === 'corner-moved' && one.round === 'edging';

/** Sides that a mishap can change by itself; null: all of them. */
function sidesOf(one: Settled, plan: Plan, hasTightStart: boolean): number[] | null {
  const k = plan.foundation.sides.length;
  if (isPlanned(one) || one.kind === 'corner-forgotten') return null;
  if (one.round === 'join' || one.kind === 'corner-chains' || one.kind === 'twisted') return [];
  if (one.corner === undefined) {
    // Counted from nothing on a lead without stitches, it is taken off the next side.
    if (one.kind === 'start-counted' && one.round === 'foundation' && hasTightStart) return null;
    return [one.side ?? 0];
  }
  const next = (one.corner + 1) % k;
  if (one.kind === 'arm-missed') return [one.end === 'before' ? one.corner : next];
  if (one.kind === 'hidden-missed') return [next];
  if (!isMovedOnEdging(one) || one.then === 'from-total') return [one.corner, next];
  return [...Array.from({ length: k - (one.corner as number) }, (_, i) => (one.corner as number) + i), 0];
}

export type Touching = {
  plan: Plan;
  wanted: Wanted;
  /** Sides so short, for what may be amiss on them, that a hand runs out of stitches. */
  tight: boolean[];
};

/** Stitches a side must have over its mishaps for these not to run into one another or into a corner. */
const elbowRoom = 12;

export function touchingOf(plan: Plan, wanted: Wanted, magnitudes: Magnitudes): Touching {
  const k = plan.foundation.sides.length;
  const chains = Math.max(0, ...plan.edge.corners.map(({ size }) => size));
  const tight = plan.foundation.sides.map((_, side) => {
    const most = Math.max(
      ...[side, side + 1, side + k - 1].flatMap((one) => magnitudes.ofSide[one % k] ?? []),
    );
    const least = Math.min(...plan.edgings.map((_, n) => stitchesBelow(plan, n + 1, side)));
    const run =
      side > 0 || plan.foundation.corners.length === 0
        ? least
        : Math.min(least, plan.foundation.lead, plan.foundation.tail);
    return run - chains < 4 * most + elbowRoom;
  });
  return { plan, wanted, tight };
}

/** Whether a candidate can change what is read at a spot. */
export function touches(touching: Touching, candidate: Candidate, spot: Spot, company: Company): boolean {
  if (candidate.front.length > 0 && touchesFront(candidate, spot)) return true;
  return candidate.settled.some((one) => mishapTouches(touching, one, spot, company));
}

const touchesFront = ({ front }: Candidate, spot: Spot): boolean =>
  spot.part === 'drift' ||
  spot.part === 'left-over' ||
  (spot.part === 'front' && front.some(({ side }) => side === spot.index));

function mishapTouches({ plan, tight }: Touching, one: Settled, spot: Spot, company: Company): boolean {
  if (spot.part === 'front') return false;
  if (spot.part === 'drift' || spot.part === 'left-over') return true;
  const from = roundOf(one, plan);
  if (spot.round < from) return false;
  if (company === 'uncornered' || one.kind === 'corner-forgotten') return true;
  if (spot.part === 'corner') {
    if (one.kind === 'order-not-mirrored') return spot.round === plan.edgings.length;
    // On a short side two corners can pass one another.
    if (isMovedOnEdging(one) && tight.includes(true)) return true;
    return one.kind === 'corner-chains' && spot.round === from && spot.index === one.corner;
  }
  const k = plan.foundation.sides.length;
  if (company === 'beside-moved') {
    if (one.kind === 'corner-chains')
      return spot.index === one.corner || spot.index === ((one.corner as number) + 1) % k;
    const near = sidesOf(one, plan, tight[0] === true);
    return near === null || near.some((side) => [0, 1, k - 1].includes((spot.index - side + k) % k));
  }
  return sidesOf(one, plan, tight[0] === true)?.includes(spot.index) ?? true;
}

/** Whether two candidates, done together, may give other counts than the sum of what each gives. */
export const meddle = (touching: Touching, a: Candidate, b: Candidate): boolean =>
  frontMeddles(touching, a, b) ||
  a.settled.some((one) => b.settled.some((other) => mishapsMeddle(touching, one, other)));

/** The front's own sides bear on the join only, and there on whatever turns it. */
const frontMeddles = ({ wanted }: Touching, a: Candidate, b: Candidate): boolean =>
  wanted.usesJoin &&
  ((a.front.length > 0 && b.settled.some(turnsJoin)) || (b.front.length > 0 && a.settled.some(turnsJoin)));

const turnsJoin = (one: Settled): boolean =>
  one.kind === 'join-wrong-side' || one.kind === 'corner-forgotten';

function mishapsMeddle(touching: Touching, a: Settled, b: Settled): boolean {
  return meddlesWith(touching, a, b) || meddlesWith(touching, b, a) || sharesTightSide(touching, a, b);
}

function meddlesWith({ plan, wanted }: Touching, a: Settled, b: Settled): boolean {
  if (a.kind === 'corner-forgotten') return true;
  if (wanted.usesJoin && a.round === 'join') {
    if (a.kind === 'join-wrong-side' || a.kind === 'join-offset') return true;
    return (
      a.kind === 'join-chain-skipped' && (b.kind === 'corner-chains' || isPlanned(b) || b.round === 'join')
    );
  }
  if (isPlanned(a)) return isPlanned(b) || b.kind === 'corner-chains';
  if (a.kind === 'corner-chains') return b.kind === a.kind && roundOf(a, plan) === roundOf(b, plan);
  return isMovedOnEdging(a) && meddlesWithMoved(plan, a, b);
}

/** A corner worked elsewhere on an edging: with its own round's stitches nearby, and with the chains below it. */
function meddlesWithMoved(plan: Plan, moved: Settled, other: Settled): boolean {
  const round = roundOf(moved, plan);
  const otherRound = roundOf(other, plan);
  if (other.kind === 'corner-chains') return otherRound === round - 1 && moved.edging + 1 === round;
  if (otherRound !== round) return false;
  if (other.kind === 'corner-moved') return true;
  const near = sidesOf(moved, plan, true);
  const its = sidesOf(other, plan, true);
  return near === null || its === null || near.some((side) => its.includes(side));
}

function sharesTightSide({ plan, tight }: Touching, a: Settled, b: Settled): boolean {
  if (!tight.includes(true)) return false;
  const near = sidesOf(a, plan, tight[0] === true);
  const its = sidesOf(b, plan, tight[0] === true);
  return tight.some(
    (isTight, side) => isTight && (near?.includes(side) ?? true) && (its?.includes(side) ?? true),
  );
}
