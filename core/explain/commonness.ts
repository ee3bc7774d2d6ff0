/**
 * How rare each cause is: the kind's own prior (in its entry), and what habits, sizes and company add to it.
 *
 * Lower is commoner; the scale is our own (a step of 1 reads "clearly rarer"). All distances are our own judgement.
 */
import { entryOf } from '../hand/acts/acts.ts';
import type { Commonness } from '../hand/acts/entry.ts';
import type { Cause, CauseKind } from './types.ts';

/** The front's own count wrong: published reports name it. */
const frontMiscounted: Commonness = { rarity: 1.8, source: 'reports' };

/** How rare a kind is, by itself. */
export const commonnessOf = (kind: CauseKind): Commonness =>
  kind === 'front-miscounted' ? frontMiscounted : entryOf(kind).prior;

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
  kind: CauseKind,
  of: { habit: boolean; count?: number | undefined; then?: string | undefined; rarer?: number | undefined },
): Commonness {
  const { rarity, source } = commonnessOf(kind);
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
