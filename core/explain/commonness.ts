/**
 * How rare each kind of mishap is: the one place where likelihood comes from.
 *
 * Lower is commoner; the scale is our own (a step of 1 reads "clearly rarer"). Kinds marked `reports` stand in the
 * order in which published reports of wrong counts name them (24 public reports: the hidden stitch after the corner;
 * the starting chain counted; a closing not allowed for; filling the gap at the start of a round; a corner
 * misplaced; the count itself wrong). All others, and all the distances, are our own judgement.
 */
import type { MishapKind } from '../types.ts';
import type { Cause, Commonness } from './types.ts';

const reported = (rarity: number): Commonness => ({ rarity, source: 'reports' });
const judged = (rarity: number): Commonness => ({ rarity, source: 'judgement' });

export const commonness: Readonly<Record<MishapKind | 'front-miscounted', Commonness>> = {
  'hidden-missed': reported(1),
  'start-counted': reported(1.2),
  'closing-forgotten': reported(1.3),
  'attach-doubled': reported(1.5),
  'closing-worked': reported(1.6),
  'front-miscounted': reported(1.8),
  'chains-as-stitches': reported(1.9),
  'stitch-missed': judged(2),
  'stitch-doubled': judged(2.1),
  'corner-moved': reported(2.2),
  'corner-chains': judged(2.2),
  'closing-over-first': judged(2.3),
  'closing-beside-first': judged(2.3),
  'arm-missed': judged(2.4),
  'arms-forgotten': judged(2.4),
  'join-offset': judged(2.4),
  'corner-forgotten': judged(2.5),
  'join-chain-skipped': judged(2.5),
  'order-not-mirrored': judged(2.6),
  'join-wrong-side': judged(2.8),
  'chains-left-out': judged(3),
  'last-hole': judged(3),
  twisted: judged(3),
};

/** A habit takes one slip of the mind, not one at every corner: hardly rarer than the single mishap. */
const habitCosts = 0.3;
/** Every stitch further off than one in the same place, up to a handful: then it is one lump, like a marker lost. */
const eachFurther = 0.35;
const lump = 5;
/** Leaving a corner's whole count to be found again from the total is less usual than counting on from it. */
const thenFromTotal = 0.2;
/** Each cause more: two slips in one making are far rarer than one, whatever they are. */
export const eachCause = 3;
/** The same slip again, by the same hand: less of a surprise. */
const sameAgain = 0.6;

export function rarityOf(
  kind: MishapKind | 'front-miscounted',
  of: { habit: boolean; count?: number | undefined; then?: string | undefined; rarer?: number | undefined },
): Commonness {
  const { rarity, source } = commonness[kind];
  const { habit, count, then, rarer = 0 } = of;
  const further = Math.min(Math.max(0, Math.abs(count ?? 1) - 1), lump) * eachFurther;
  const total =
    rarity + rarer + further + (habit ? habitCosts : 0) + (then === 'from-total' ? thenFromTotal : 0);
  return { rarity: Math.round(total * 100) / 100, source };
}

/** Rank of a set of causes: lower is likelier. */
export function rankOf(causes: readonly Cause[]): { causes: number; rarity: number; rank: number } {
  const met = new Set<string>();
  let rarity = 0;
  for (const cause of causes) {
    const again = met.has(cause.kind) && !cause.habit;
    rarity += again ? cause.rarity * sameAgain : cause.rarity;
    met.add(cause.kind);
  }
  rarity = Math.round(rarity * 100) / 100;
  return {
    causes: causes.length,
    rarity,
    rank: Math.round((rarity + eachCause * causes.length) * 100) / 100,
  };
}
