/**
 * Where on an edging the hand does otherwise than one stitch in each place: increases, stitches missed or doubled,
 * corners made in another place.
 *
 * Rule: all of it is found out before the round is worked, as places of the round below.
 */

import { ease } from '../join/ease.ts';
import type { Corner } from '../types.ts';
import type { Move, RoundIntent, Slip } from './acts/intent.ts';
import { type Below, placesBetween, type RoundBelow } from './attach.ts';
import type { Making } from './graph.ts';

/** Something done at one ordinary target that is not one stitch: `makes` stitches there. */
type Special = { target: number; makes: number; act: number };

/** A round of edging as it is worked, and what it is worked from. */
export type EdgingWork = {
  making: Making;
  intent: RoundIntent;
  below: RoundBelow;
  corners: Below[];
  specials: Special[];
  /** Corners to be worked at another target than their own, by target. */
  moved: Map<number, number>;
  arm: readonly [number, number];
  /** Ordinary stitches of each side, by the recipe. */
  counted: readonly number[];
  cornerFor: (corner: number) => Corner;
};

/** Settles beforehand where the hand will do other than one stitch in each place. */
export function prepare(work: EdgingWork, increase: number, attach: number): void {
  const { below, corners, intent } = work;
  const specials: Specials = new Map();
  // The attach place is left alone: its stitch is the closing's.
  for (const place of ease(below.length - 1, increase))
    addSpecial(specials, { target: place + 1, makes: 2, act: -1 });
  for (const slip of intent.slips) {
    if ('side' in slip.at) {
      placeSpecial(work, specials, { ...slip, ...slip.at }, attach);
      continue;
    }
    const corner = corners[slip.at.afterCorner];
    const hidden = corner ? (corner.from + corner.size) % below.length : -1;
    if (corner && isOrdinary(work, hidden)) addSpecial(specials, { target: hidden, makes: 0, act: slip.act });
  }
  for (const move of intent.moves) moveCorners(work, move);
  work.specials = [...specials.values()].sort((a, b) => a.target - b.target);
}

type SideSlip = Slip & { side: number; place: number };

/** By target, so that a stitch can be missed where an increase was due. */
type Specials = Map<number, Special>;

function addSpecial(specials: Specials, special: Special): void {
  const there = specials.get(special.target);
  const makes = there ? Math.max(0, there.makes + special.makes - 1) : special.makes;
  specials.set(special.target, { ...special, makes });
}

/** An ordinary target: no corner position, and not the turn of a corner without any. */
const isOrdinary = (work: EdgingWork, node: number): boolean =>
  node >= 0 &&
  node < work.below.length &&
  !work.corners.some(({ from, size }) => node >= from && node < from + size);

/** Ordinary targets of a side of the round below, in its own order after the corner before it. */
function targetsOfSide(
  work: EdgingWork,
  side: number,
): { from: number; count: number; again: number; more: number } {
  const { corners, below } = work;
  if (corners.length === 0) return { from: 0, count: below.length, again: 0, more: 0 };
  const end = (corner: Below): number => corner.from + corner.size;
  if (side > 0) {
    const from = end(corners[side - 1] as Below);
    return { from, count: (corners[side]?.from ?? below.length) - from, again: 0, more: 0 };
  }
  const from = end(corners.at(-1) as Below);
  return { from, count: below.length - from, again: 0, more: (corners[0] as Below).from };
}

/** Turns a planned place of the side into the target that the hand misses or uses again. */
function placeSpecial(work: EdgingWork, specials: Specials, slip: SideSlip, attach: number): void {
  const [, after] = work.arm;
  const armAfter = work.corners.length > 0 ? after : 0;
  const { from, count, again, more } = targetsOfSide(
    work,
    Math.min(slip.side, Math.max(0, work.corners.length - 1)),
  );
  const all = count + more;
  const { times, act } = slip;
  const node = (place: number): number => (place < count ? from + place : again + place - count);
  let place = Math.min(Math.max(0, slip.place - armAfter), Math.max(0, all - 1));
  if (slip.does === 'makes') {
    if (node(place) === attach) place = place + 1 < all ? place + 1 : place - 1;
    if (place >= 0 && all > 0) addSpecial(specials, { target: node(place), makes: 1 + times, act });
    return;
  }
  place = Math.min(place, Math.max(0, all - times));
  for (let missed = 0; missed < times && place < all; place++) {
    if (node(place) === attach) continue;
    addSpecial(specials, { target: node(place), makes: 0, act });
    missed++;
  }
}

/**
 * The corner is made into an ordinary stitch n early or late. Counted from the total, the later corners are where they
 * belong; counted from the corner, the hand counts out the recipe's number for each side and makes the next corner
 * where that ends, in its own place if the number ends there.
 */
function moveCorners(work: EdgingWork, { corner: which, by, then }: Move): void {
  const corner = work.corners[which];
  if (!corner || by === 0) return;
  const end = (below: Below): number => below.from + below.size - 1;
  let made = moveCorner(work, corner, by < 0 ? corner.from + by : end(corner) + by);
  if (then !== 'from-corner') return;
  for (const next of work.corners.slice(corner.corner + 1)) {
    const wanted = made + (work.counted[next.corner] ?? 0) + 1;
    const isOwnPlace = wanted >= next.from && wanted <= Math.max(next.from, end(next));
    made = isOwnPlace ? end(next) : moveCorner(work, next, wanted);
  }
}

/** Sets where a corner is made, between its neighbours; gives the last place it takes up. */
function moveCorner(work: EdgingWork, own: Below, wanted: number): number {
  const { below, corners, moved } = work;
  const { from, to } = placesBetween(below, corners);
  const before = corners[own.corner - 1];
  const after = corners[own.corner + 1];
  const low = Math.max(
    from,
    before ? Math.max(before.from + before.size, (moved.get(before.corner) ?? -1) + 1) : 0,
  );
  const high = Math.min(to, after?.from ?? to, moved.get(own.corner + 1) ?? to) - 1;
  const target = Math.min(Math.max(wanted, low), high);
  if (target < low || !isOrdinary(work, target)) return own.from + own.size - 1;
  moved.set(own.corner, target);
  return target;
}
