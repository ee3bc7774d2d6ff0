/**
 * Ripping back: to which stitch, and what is lost.
 *
 * Rule: to the first place where it went wrong; but a count that may be put right anywhere on a side, or at the end
 * of a ring whose trebles all look alike, is put right at the end, where least comes off.
 */

import { entryOf, type Mishap } from '../hand/acts/acts.ts';
import type { Settled } from '../hand/acts/doing.ts';
import type { Making } from '../hand/graph.ts';
import type { ActRound } from '../types.ts';
import { lastNotAbove, mod } from '../whole.ts';
import type { Done } from './outcome.ts';
import { roundOf } from './reach.ts';
import type { Cure } from './types.ts';

export type Ripped = { to: NonNullable<Cure['to']>; lost: number; takesOff: number };

/** Back to where the first of the mishaps can be undone; null where none of them left a stitch. `made` rounds. */
export function ripToMishaps(done: Done, mishaps: readonly Mishap[], made: number): Ripped | null {
  let first: { round: number; node: number } | null = null;
  done.mishaps.forEach((one) => {
    if (one.round === 'join' || !mishaps[one.index]) return;
    const round = one.round === 'plan' ? 0 : roundOf(one);
    const node = nodeOf(done.makings[round] as Making, one);
    if (!first || round < first.round || (round === first.round && node < first.node))
      first = { round, node };
  });
  return first ? ripTo(done, made, first) : null;
}

/** Back to the beginning of a side of a round; of side 0, what lies after the last corner. */
export function ripToSide(done: Done, round: number, side: number, made: number): Ripped {
  return ripTo(done, made, { round, node: startOfSide(done.makings[round] as Making, side) });
}

function ripTo(done: Done, made: number, { round, node }: { round: number; node: number }): Ripped {
  const making = done.makings[round] as Making;
  const later = done.makings.slice(round + 1, made).reduce((total, { length }) => total + length, 0);
  return {
    to: placeOf(making, round, Math.min(node, Math.max(0, making.length - 1))),
    lost: Math.max(1, making.length - node) + later,
    takesOff: Math.max(0, made - 1 - round),
  };
}

export const startOfSide = ({ turns, sizes }: Making, side: number): number => {
  const corner = side === 0 ? turns.length - 1 : side - 1;
  return corner < 0 ? 0 : (turns[corner] as number) + (sizes[corner] as number);
};

/** The last stitch of a side. */
function endOfSide({ turns, length }: Making, side: number): number {
  return Math.max(0, (side === 0 ? length : (turns[side] ?? length)) - 1);
}

/** Where a mishap is undone with least loss. */
function nodeOf(making: Making, one: Settled): number {
  if (one.round === 'plan') return 0;
  const { changesStitches, atClosing } = entryOf(one.kind);
  if (changesStitches) return endOfSide(making, one.side as number);
  if (atClosing && one.round === 'foundation') return Math.max(0, making.length - 1);
  return making.marks.find(({ mishap }) => mishap === one.index)?.node ?? Math.max(0, making.length - 1);
}

function placeOf({ turns, sizes }: Making, round: number, node: number): Ripped['to'] {
  const corner = lastNotAbove(turns, node);
  const after = corner < 0 ? 0 : (turns[corner] as number) + (sizes[corner] as number);
  const at: { round: ActRound; edging: number } =
    round === 0 ? { round: 'foundation', edging: 0 } : { round: 'edging', edging: round - 1 };
  if (node < after) return { ...at, side: -1, corner, place: node - (turns[corner] as number), node };
  return { ...at, side: turns.length > 0 ? mod(corner + 1, turns.length) : 0, place: node - after, node };
}
