/**
 * Ripping back: to which stitch, and what is lost.
 *
 * Rule: to the first place where it went wrong; but a count that may be put right anywhere on a side, or at the end
 * of a ring whose trebles all look alike, is put right at the end, where least comes off.
 */

import { entryOf } from '../hand/acts/acts.ts';
import { intentFor, type Settled } from '../hand/acts/doing.ts';
import type { Making } from '../hand/graph.ts';
import type { ActRound, Plan } from '../types.ts';
import { lastNotAbove, mod } from '../whole.ts';
import { roundOf } from './reach.ts';
import type { Cure } from './types.ts';

export const startOfSide = ({ turns, sizes }: Making, side: number): number => {
  const corner = side === 0 ? turns.length - 1 : side - 1;
  return corner < 0 ? 0 : (turns[corner] as number) + (sizes[corner] as number);
};

/** One past the last stitch of a side; of side 0, of the round. */
export const endOfSide = ({ turns, length }: Making, side: number): number =>
  side === 0 ? length : (turns[side] ?? length);

/** Stitches of an edging that are worked anew to make up for so many: every other one. */
export const roomFor = (count: number): number => 2 * count - 1;

/**
 * Where the work is right up to: on a foundation a count is put right at the end of its side; on an edging what may
 * lie anywhere on a side is found only from the side's beginning.
 */
export function placeOfMishap(
  plan: Plan,
  makings: readonly Making[],
  one: Settled,
): { round: number; node: number } {
  if (one.round === 'plan') return { round: 0, node: 0 };
  const round = roundOf(one);
  const making = makings[round] as Making;
  const { changesStitches, atClosing, wholeRound } = entryOf(one.kind);
  const last = Math.max(0, making.length - 1);
  if (wholeRound) return { round, node: 0 };
  if (changesStitches && round === 0) {
    // The start side ends in the closing.
    const off = tooMany(one) + (one.side === 0 ? 2 : 0);
    const side = one.side ?? 0;
    return { round, node: Math.max(startOfSide(making, side), endOfSide(making, side) - off) };
  }
  const mark = markOf(making, one) ?? last;
  if (changesStitches && one.side !== 0)
    return { round, node: Math.min(mark, startOfSide(making, one.side ?? 0)) };
  // The closing's own stitch, and the one before it.
  if (atClosing && round === 0) return { round, node: Math.max(0, last - 1) };
  // A corner that comes late was due before, with what is worked into it.
  const isLate = one.kind === 'corner-moved' && one.count > 0;
  const late = isLate ? (one.count ?? 0) + (plan.edgings[round - 1]?.arm[0] ?? 0) : 0;
  return { round, node: Math.max(0, mark - late) };
}

/** Stitches that a slip on the foundation makes too many of; where it makes too few, none has to come off for it. */
const tooMany = (one: Settled): number =>
  intentFor([one], 'foundation').slips.reduce(
    (all, { does, times }) => all + (does === 'makes' ? times : 0),
    0,
  );

/** Where an act left its mark, if it did. */
export const markOf = ({ marks }: Making, { index }: Settled): number | undefined =>
  marks.find(({ mishap }) => mishap === index)?.node;

/** The stitch named as the first to go, as a person finds it. */
export function placeOf({ turns, sizes }: Making, round: number, node: number): NonNullable<Cure['to']> {
  const corner = lastNotAbove(turns, node);
  const after = corner < 0 ? 0 : (turns[corner] as number) + (sizes[corner] as number);
  const at: { round: ActRound; edging: number } =
    round === 0 ? { round: 'foundation', edging: 0 } : { round: 'edging', edging: round - 1 };
  if (node < after) return { ...at, side: -1, corner, place: node - (turns[corner] as number), node };
  return { ...at, side: turns.length > 0 ? mod(corner + 1, turns.length) : 0, place: node - after, node };
}
