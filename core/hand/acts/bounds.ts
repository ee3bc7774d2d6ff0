/** What the numbers of an act can be on a panel. */
import type { Plan } from '../../types.ts';
import type { Bounds, Spot, WhyNot } from './entry.ts';

type Shape = Pick<Plan['foundation'], 'sides' | 'corners'>;

/** The round of the plan in which an act happens: its sides and corners. */
const shapeAt = (plan: Plan, { round, edging }: Pick<Spot, 'round' | 'edging'>): Shape =>
  round === 'edging' ? (plan.edgings[edging] ?? plan.foundation) : plan.foundation;

/** Which stitch of the side, from 1. The stitches worked into corners are another kind's. */
export function placeBounds(plan: Plan, spot: Spot): Bounds {
  if (spot.round === 'join') return boundsOf(1, plan.edge.sides[spot.side] ?? 1);
  const count = shapeAt(plan, spot).sides[spot.side] ?? 1;
  const hasCorners = plan.edge.corners.length > 0;
  const [before, after] =
    spot.round === 'edging' && hasCorners ? (plan.edgings[spot.edging]?.arm ?? [0, 0]) : [0, 0];
  const least = after + 1;
  return boundsOf(least, count - before);
}

function boundsOf(least: number, highest: number): Bounds {
  const most = Math.max(least, highest);
  return { least, most, usual: Math.round((least + most) / 2) };
}

/** So many stitches of a side at one go. */
export function stitchBounds(plan: Plan, spot: Spot): Bounds {
  const { least, most } = placeBounds(plan, spot);
  return { least: 1, most: most - least + 1, usual: 1 };
}

/** What the recipe has in a corner. */
export const sizeAsked = (plan: Plan, spot: Spot): number =>
  shapeAt(plan, spot).corners[spot.corner]?.size ?? 0;

/** Stitches beside a corner on the side towards which it moves: a start side is worked in two parts. */
export function roomAtCorner({ foundation }: Plan, { corner, late }: Spot): number {
  const last = foundation.corners.length - 1;
  if (late) return corner === last ? foundation.tail : (foundation.sides[corner + 1] ?? 0);
  return corner === 0 ? foundation.lead : (foundation.sides[corner] ?? 0);
}

/** What the closing of a round is planned to make. */
export const closingAt = ({ choices }: Plan, { round }: Pick<Spot, 'round'>): { adds: 0 | 1 } =>
  round === 'foundation' ? choices.foundationClosing : choices.edgingClosing;

/** Why nothing can happen to the positions of the front's corners; null where it can. */
export function noCornerPositions({ edge }: Plan): WhyNot | null {
  if (edge.corners.length === 0) return 'no-corners';
  return edge.corners.every(({ size }) => size === 0) ? 'corners-empty' : null;
}
