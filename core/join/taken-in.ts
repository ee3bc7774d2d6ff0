/**
 * Taking a difference in while joining: two of the longer piece with one of the other, spread along the side.
 *
 * Rule: on the side where the join begins the difference lies behind its start, for both pieces are begun as many
 * positions in from the corner.
 */
import { type Adjustment, asked } from '../hand/acts/acts.ts';
import type { Plan } from '../types.ts';
import { mod } from '../whole.ts';
import { ease } from './ease.ts';

/** `by`: how many more the back has than front side `side`. Null where more than every third stitch would be taken. */
export function takenInJoin(plan: Plan, side: number, by: number): Adjustment[] | null {
  const from = side === plan.choices.joinStart.side ? firstBehindStart(plan) : 0;
  // Two of the front take the stitch after the place as well.
  const to = (plan.edge.sides[side] ?? 0) - (by < 0 ? 1 : 0);
  const count = Math.abs(by);
  if (count * 3 > to - from) return null;
  const of = by > 0 ? 'back' : 'front';
  return ease(to - from, count).map((place) =>
    asked({ kind: 'two-with-one', side, place: from + place, of }),
  );
}

/** Stitches of the side up to the pair where the yarn is attached, that one with them. */
export function firstBehindStart({ edge, choices }: Plan): number {
  const { side, fromCorner } = choices.joinStart;
  const corner = edge.corners[mod(side - 1, edge.corners.length || 1)];
  return fromCorner - ((corner?.size ?? 0) > 0 ? 1 : 0);
}
