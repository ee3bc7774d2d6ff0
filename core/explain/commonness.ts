/**
 * How rare each cause is: the kind's own prior (in its entry), and what habits, sizes and neighbours add to it.
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

/**
 * What a size adds to its kind: the entry at the size, `more` beyond them, `tens` for whole tens. Our own judgement:
 * one or two off is how a count goes wrong, ten is a marker lost, and what lies between is hardly ever one slip.
 */
type Sizes = { byOne: readonly number[]; more: number; tens: number };
const sizes = {
  /** Counting the front: a stitch or two slip by, and markers are left out. */
  front: { byOne: [0, 0.3, 0.9, 1.4], more: 3.5, tens: 1 },
  /** Stitches missed or doubled in one place. */
  stitches: { byOne: [0, 0.5, 0.9, 1.4], more: 2.4, tens: 1 },
  /** A corner, or the beginning of the join, so far from its place. */
  place: { byOne: [0, 0.2, 0.5, 0.8], more: 1.6, tens: 0.9 },
} as const satisfies Record<string, Sizes>;

function sizesOf(kind: CauseKind): Sizes {
  if (kind === 'front-miscounted') return sizes.front;
  return entryOf(kind).changesStitches ? sizes.stitches : sizes.place;
}

function rarityOfSize(kind: CauseKind, count: number): number {
  const { byOne, more, tens } = sizesOf(kind);
  const size = Math.abs(count);
  return byOne[size - 1] ?? (size % 10 === 0 && size <= 30 ? tens : more);
}

/** A habit takes one slip of the mind, not one at every corner: hardly rarer than the single mishap. */
const habitCosts = 0.3;
/** Leaving a corner's whole count to be found again from the total is less usual than counting on from it. */
const thenFromTotal = 0.2;
/** Each cause more: two slips in one making are far rarer than one, whatever they are. */
const eachCause = 4;
/** The same slip again, by the same hand: less of a surprise. */
const sameAgain = 0.6;

export function rarityOf(
  kind: CauseKind,
  of: { habit: boolean; count?: number | undefined; then?: string | undefined; rarer?: number | undefined },
): Commonness {
  const { rarity, source } = commonnessOf(kind);
  const { habit, count, then, rarer = 0 } = of;
  const total =
    rarity +
    rarer +
    rarityOfSize(kind, count ?? 1) +
    (habit ? habitCosts : 0) +
    (then === 'from-total' ? thenFromTotal : 0);
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
