/** Where on a side a missed or doubled stitch is taken to be, where all places give the same counts. */
import type { Plan } from '../types.ts';

/** Stitches of a side that a round is worked into (an edging), or is to have (the foundation). */
export const stitchesBelow = (plan: Plan, round: number, side: number): number =>
  ((round <= 1 ? plan.foundation.sides[side] : plan.edgings[round - 2]?.sides[side]) as number) ?? 0;

/** Arm stitches that stand on a side before its first ordinary one. */
const armBefore = (plan: Plan, round: number): number =>
  round === 0 || plan.foundation.corners.length === 0 ? 0 : (plan.edgings[round - 1]?.arm[1] ?? 0);

/** The foundation's start side is worked as two legs: places of the lead come after the tail's and the closing's own. */
function legs(plan: Plan): { from: number; count: number }[] {
  const { foundation, choices } = plan;
  if (foundation.corners.length === 0) return [{ from: 0, count: foundation.lead }];
  const leadFrom = foundation.tail + choices.foundationClosing.adds + choices.foundationStart.counts;
  return [
    { from: leadFrom, count: foundation.lead },
    { from: 0, count: foundation.tail },
  ].sort((a, b) => b.count - a.count);
}

/** A place on the side, at the share given of it, clear of corners and of where the yarn is attached. */
export function placeOnSide(plan: Plan, round: number, side: number, share = 0.5): number {
  if (round === 0 && side === 0) {
    const { from, count } = legs(plan)[0] as { from: number; count: number };
    return from + Math.floor(count * share);
  }
  const count = stitchesBelow(plan, round, side);
  if (side > 0) return armBefore(plan, round) + Math.floor(count * share);
  const [longest] = legs(plan) as [{ from: number; count: number }];
  return armBefore(plan, round) + longest.from + Math.floor(longest.count * share);
}

/** A place on the foundation's side from which so many stitches can be counted and not made. */
export function placeForRun(plan: Plan, side: number, run: number): number {
  const { from, count } =
    side === 0
      ? (legs(plan)[0] as { from: number; count: number })
      : { from: 0, count: plan.foundation.sides[side] ?? 0 };
  return from + Math.max(0, Math.min(Math.floor(count / 2), count - run));
}

/** A side so small that any two mishaps on it can run into one another: every place on it is tried. */
const tiny = 10;

/** Places that give other counts than that one if something else is amiss close by. */
export function elsewhereOnSide(plan: Plan, round: number, side: number): number[] {
  const count = stitchesBelow(plan, round, side);
  const arm = armBefore(plan, round);
  if (count <= tiny) return Array.from({ length: count }, (_, place) => arm + place);
  if (round === 0) {
    const other = side === 0 ? legs(plan)[1] : undefined;
    return other && other.count > 0 ? [other.from + Math.floor(other.count / 2)] : [];
  }
  return [arm, arm + count - 1];
}
