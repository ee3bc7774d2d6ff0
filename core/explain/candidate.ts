/** One candidate cause, as the search handles it. */

import { type ActKind, actRounds, entryOf, type Mishap } from '../hand/acts/acts.ts';
import { type Settled, settle } from '../hand/acts/doing.ts';
import type { Plan } from '../types.ts';
import { rarityOf } from './commonness.ts';
import type { BackMadeFor, Cause, FrontMiscount } from './types.ts';

export type Candidate = {
  cause: Cause;
  /** Names what happened and where, but not at which of several like places. */
  key: string;
  /** Ready for the tally, in working order. */
  settled: Ordered[];
  /** By how much the front's sides really differ from what was given. */
  front: FrontMiscount[];
  /** Two candidates with a slot in common are one mishap told twice, and never stand in one set. */
  slots: string[];
  /** A corner of an edging worked elsewhere. */
  moves?: Moves;
  /** Another place for the same mishap: it matters only where something else is amiss close by. */
  elsewhere: boolean;
};

/** `isFollowed`: the later corners are counted on from there. */
export type Moves = { edging: number; isFollowed: boolean };

/** `order`: where it comes in the working order. */
type Ordered = Settled & { order: number };

export type Telling = {
  habit?: boolean;
  anywhere?: boolean;
  elsewhere?: boolean;
  front?: FrontMiscount[];
  backMadeFor?: BackMadeFor;
  kind?: Cause['kind'];
  /** How big the mishap is, where that is not its `count`. */
  size?: number;
  /** By how much it is rarer than its kind is. */
  rarer?: number;
};

export function candidateOf(mishaps: Mishap[], telling: Telling = {}): Candidate {
  const { habit = false, anywhere = false, elsewhere = false, front = [] } = telling;
  const first = mishaps[0];
  const kind = telling.kind ?? (first?.kind as ActKind);
  const size = telling.size ?? (countMeansSize(kind) ? first?.count : undefined);
  const cause: Cause = {
    kind,
    habit,
    anywhere,
    mishaps,
    front,
    ...(telling.backMadeFor ? { backMadeFor: telling.backMadeFor } : {}),
    ...rarityOf(kind, { habit, count: size, then: first?.then, rarer: telling.rarer }),
  };
  const settled = inOrder(settle(mishaps).map((one) => ({ ...one, order: orderOf(one) })));
  return {
    cause,
    // Asked for only of what is found.
    get key() {
      return keyOf(cause);
    },
    settled,
    front: telling.backMadeFor === 'neither' ? [] : front,
    slots: slotsOf(cause, settled),
    ...(kind === 'corner-moved' && first?.round === 'edging'
      ? { moves: { edging: first.edging ?? 0, isFollowed: first.then === 'from-corner' } }
      : {}),
    elsewhere,
  };
}

const countMeansSize = (kind: Cause['kind']): boolean =>
  kind === 'front-miscounted' || entryOf(kind).sized === true;

const placeNames = (mishap: Mishap): string =>
  [
    mishap.round,
    mishap.edging,
    mishap.side !== undefined && `side ${mishap.side}`,
    mishap.corner !== undefined && `corner ${mishap.corner}`,
    mishap.end,
    mishap.of,
    mishap.then,
    mishap.count !== undefined && `by ${mishap.count}`,
  ]
    .filter((part) => part !== undefined && part !== false)
    .join(' ');

function keyOf({ kind, habit, mishaps, front, backMadeFor }: Cause): string {
  const places =
    kind === 'front-miscounted' ? '' : mishaps.map((one) => `${one.kind} ${placeNames(one)}`).join(', ');
  const sides = front.map(({ side, by }) => `front ${side} by ${by}`).join(', ');
  return [kind, habit ? 'habit' : '', backMadeFor ?? '', places, sides]
    .filter((part) => part !== '')
    .join(': ');
}

function slotsOf({ kind, habit, front }: Cause, settled: readonly Settled[]): string[] {
  const at = (one: Settled): string => `${one.round} ${one.edging}`;
  if (kind === 'front-miscounted') {
    const sides = front.map(({ side }) => `front ${side}`);
    const counted = settled.map((one) => `stitches ${at(one)} ${one.side}`);
    return habit ? ['front all', 'stitches foundation 0 all'] : [...sides, ...counted];
  }
  return settled.flatMap((one) => {
    const where = `${at(one)} ${one.side ?? one.corner ?? ''} ${one.end ?? ''}`;
    if (entryOf(kind).changesStitches) return [`stitches ${at(one)} ${habit ? 'all' : one.side}`];
    if (kind === 'corner-chains' && habit) return [`chains ${at(one)} all`];
    return [`${kind} ${where}`];
  });
}

/** Working order, single mishaps before habits: what is done at one corner stands, whatever is done at all. */
function orderOf(one: Settled): number {
  const place = one.side ?? one.corner ?? 0;
  return (actRounds.indexOf(one.round) * 16 + one.edging) * 64 + place;
}

const inOrder = (settled: Ordered[]): Ordered[] => settled.sort((a, b) => a.order - b.order);

/** All mishaps of a set, in the order in which `work` is given them. */
export function mishapsIn(set: readonly Candidate[]): readonly Settled[] {
  if (set.length === 1) return (set[0] as Candidate).settled;
  const singles: Ordered[] = [];
  const habits: Ordered[] = [];
  for (const { cause, settled } of set) (cause.habit ? habits : singles).push(...settled);
  return habits.length === 0 ? inOrder(singles) : [...inOrder(singles), ...inOrder(habits)];
}

/** The mishaps as they are given to `work`. */
export const plainMishaps = (set: readonly Candidate[]): Mishap[] =>
  mishapsIn(set).map((one) => {
    const { index: _index, order: _order, edging, ...mishap } = one as Ordered;
    return mishap.round === 'edging' ? { ...mishap, edging } : mishap;
  });

/** The front's sides with what a set says of them. */
export function frontWith(plan: Plan, set: readonly Candidate[]): number[] {
  const sides = [...plan.edge.sides];
  for (const { front } of set) for (const { side, by } of front) sides[side] = (sides[side] as number) + by;
  return sides;
}

/** Whether two candidates can stand in one set. */
export const fitsWith = (a: Candidate, b: Candidate): boolean =>
  !a.slots.some((slot) => b.slots.includes(slot)) && !movesTwice(a.moves, b.moves);

/** A hand that counts on from one corner worked elsewhere has no second one of its own on that edging. */
export const movesTwice = (a: Moves | undefined, b: Moves | undefined): boolean =>
  a !== undefined && b !== undefined && a.edging === b.edging && (a.isFollowed || b.isFollowed);
