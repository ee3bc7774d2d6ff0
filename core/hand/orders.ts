/**
 * What the hand sets out to do: the counts it carries in its head while it works the foundation.
 *
 * Rule: a mistake made while planning is made here, by reading the front wrongly and then doing the same
 * arithmetic; never by changing a total afterwards.
 */

import { facesOf, growthOf } from '../planning/plan.ts';
import type { Corner, Plan } from '../types.ts';
import { mod } from '../whole.ts';
import type { Settled } from './acts/doing.ts';
import { readingWith } from './acts/doing.ts';

export type Orders = {
  /** Positions of each foundation side, as the hand believes them. */
  sides: number[];
  /** Front corner that each back corner is made to match. */
  cornerFaces: number[];
  lead: number;
};

/** A making of the back: the plan, what the hand sets out to do, and its acts that the plan does not ask for. */
export type Task = { plan: Plan; orders: Orders; acts: readonly Settled[] };

export const taskOf = (plan: Plan, acts: readonly Settled[]): Task => ({
  plan,
  orders: ordersOf(plan, acts),
  acts,
});

function ordersOf(plan: Plan, acts: readonly Settled[]): Orders {
  const { edge, choices } = plan;
  const { addsCorners, dropsCorners, allowsForArms, mirrors } = readingWith(acts);
  const believed = edge.sides.map((stitches, i) => {
    const size = edge.corners[i]?.size ?? 0;
    return stitches + (addsCorners ? size : 0) - (dropsCorners ? size : 0);
  });
  const growth = allowsForArms ? growthOf(choices.edgings, edge.corners.length > 0) : 0;
  const sideCount = edge.sides.length;
  const order = mirrors
    ? facesOf(sideCount, choices.start.side)
    : edge.sides.map((_, j) => mod(choices.start.side + j, sideCount));
  return {
    sides: order.map((side) => Math.max(0, (believed[side] as number) - growth)),
    cornerFaces: mirrors
      ? plan.cornerFaces
      : edge.corners.map((_, j) => mod(choices.start.side + j, sideCount)),
    lead: choices.start.lead,
  };
}

/** The corner that the hand makes at back corner j of the last edging: the one planned for the front corner it has in mind. */
export function cornerToMatch({ plan, orders }: Task, j: number): Corner | undefined {
  const planned = plan.cornerFaces.indexOf(orders.cornerFaces[j] as number);
  return plan.edgings.at(-1)?.corners[planned];
}
