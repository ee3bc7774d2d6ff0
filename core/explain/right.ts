/**
 * Whether a cure is right for more causes than the one it was found for.
 *
 * Rule: a cure is right for a cause whose own cures hold the same one, and where it costs no more than a fifth above
 * the least. So nobody has to know the cause where one cure is right for all that are left.
 */
import type { Plan } from '../types.ts';
import { weightOfCost } from './stand.ts';
import type { Cure, Explanation } from './types.ts';

/** A fifth above the least; a few stitches are none. */
const dearer = 1.2;
const few = 12;

/** What is done, whatever it was that went wrong. */
export const nameOfCure = ({ kind, to, at, frontSides = [] }: Cure): string =>
  JSON.stringify([kind, to ? [to.round, to.edging, to.node, to.corner ?? -1] : null, at, frontSides]);

/** The names of all cures that are right for a cause. */
export function rightCures(plan: Plan, { cures }: Pick<Explanation, 'cures'>): Set<string> {
  const meeting = cures.filter(({ then }) => then !== 'does-not-meet');
  const weights = meeting.map(({ cost }) => weightOfCost(plan, cost));
  const most = Math.max(few, dearer * Math.min(...weights));
  return new Set(meeting.filter((_, i) => (weights[i] as number) <= most).map(nameOfCure));
}

/** Of some causes, each with its weight and its right cures: the largest share of weight that one cure puts right. */
export function shareCured(
  those: readonly number[],
  right: readonly Set<string>[],
  weights: readonly number[],
): number {
  const byCure = new Map<string, number>();
  let total = 0;
  for (const one of those) {
    const weight = weights[one] as number;
    total += weight;
    for (const name of right[one] as Set<string>) byCure.set(name, (byCure.get(name) ?? 0) + weight);
  }
  return total === 0 ? 1 : Math.max(0, ...byCure.values()) / total;
}

/** The cure that is right for all of them; undefined where there is none, or nothing to cure. */
export function cureForAll(plan: Plan, explanations: readonly Explanation[]): Cure | undefined {
  const [first, ...others] = explanations;
  const right = others.map((one) => rightCures(plan, one));
  const own = first && rightCures(plan, first);
  return first?.cures.find((cure) => {
    const name = nameOfCure(cure);
    return own?.has(name) && right.every((names) => names.has(name));
  });
}
