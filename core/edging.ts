/**
 * Working an edging round into the round below, target by target.
 *
 * Rule: the hand follows what it finds. It attaches on side 0, works one double crochet into every stitch it meets,
 * and where it meets a corner works the arm into its first chain, the new corner, and the arm into its last chain.
 * It never looks at a total, so a round below that came out wrong is carried on faithfully.
 */
import { ease } from './ease.ts';
import {
  cornerSize,
  finishRound,
  type Making,
  makeAlong,
  makeStitch,
  noteMishap,
  startMaking,
  turn,
} from './graph.ts';
import { atCorner, first, inRound, type Settled } from './mishap.ts';
import { cornerToMatch, type Orders } from './orders.ts';
import { type Corner, NodeKind, type Plan, type Round } from './types.ts';
import { sum } from './whole.ts';

/** As much of the round below as the hand feels: where its corners lie and how big they are. */
export type RoundBelow = Pick<Making, 'length' | 'turns' | 'sizes'>;

/** A corner of the round below, as the hand meets it. */
type Below = { corner: number; from: number; size: number };

/** Something done at one ordinary target that is not one stitch: `makes` stitches there. */
type Special = { target: number; makes: number; mishap: number };

type Hand = {
  making: Making;
  mishaps: Settled[];
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

export function workEdging(
  plan: Plan,
  orders: Orders,
  below: Round,
  edging: number,
  all: readonly Settled[],
): Round {
  const making = startMaking((plan.edgings[edging] as Plan['edgings'][number]).total + 16);
  const sizes = below.turns.map((_, corner) => cornerSize(below, corner));
  makeEdging(making, plan, orders, { length: below.length, turns: below.turns, sizes }, edging, all);
  return finishRound(making, { name: 'edging', edging, faces: below.faces, twisted: below.twisted });
}

/** The acts of the hand, into a making that is just begun. */
export function makeEdging(
  making: Making,
  plan: Plan,
  orders: Orders,
  below: RoundBelow,
  edging: number,
  all: readonly Settled[],
): void {
  const asked = plan.edgings[edging] as Plan['edgings'][number];
  const mishaps = inRound(all, 'edging', edging);
  const isLast = edging === plan.edgings.length - 1;
  const corners = below.turns.map((from, corner) => ({ corner, from, size: below.sizes[corner] as number }));
  const hand: Hand = {
    making,
    mishaps,
    below,
    corners,
    specials: [],
    moved: new Map(),
    arm: asked.arm,
    counted: asked.sides.map((count) => count - sum(asked.arm)),
    cornerFor: (corner) =>
      (isLast ? cornerToMatch(plan, orders, corner) : asked.corners[corner]) ?? { made: 'chain', size: 0 },
  };
  const attach = attachPlace(below, corners);
  prepare(hand, asked.increase, attach);
  workRound(hand, attach, plan.choices.edgingClosing.adds);
}

/**
 * Where the yarn is attached: an ordinary stitch of side 0, the first of the ring if that is one, else the last of it;
 * -1 if side 0 has none.
 */
export function attachPlace(below: Pick<RoundBelow, 'length'>, corners: readonly Below[]): number {
  if (beginsWithStitch(below, corners)) return 0;
  const last = below.length - 1;
  const lastCorner = corners.at(-1);
  return lastCorner && last >= lastCorner.from + lastCorner.size ? last : -1;
}

/** The places worked between attaching and closing, `to` not among them: all but the attach place. */
export function placesBetween(
  below: Pick<RoundBelow, 'length'>,
  corners: readonly Below[],
): { from: number; to: number } {
  if (beginsWithStitch(below, corners)) return { from: 1, to: below.length };
  return { from: 0, to: attachPlace(below, corners) < 0 ? below.length : below.length - 1 };
}

const beginsWithStitch = ({ length }: Pick<RoundBelow, 'length'>, corners: readonly Below[]): boolean =>
  (corners[0]?.from ?? length) > 0;

function prepare(hand: Hand, increase: number, attach: number): void {
  const { below, corners, mishaps, specials } = hand;
  // The attach place is left alone: its stitch is the closing's.
  for (const place of ease(below.length - 1, increase))
    addSpecial(specials, { target: place + 1, makes: 2, mishap: -1 });
  for (const mishap of mishaps) {
    if (mishap.kind === 'stitch-missed' || mishap.kind === 'stitch-doubled')
      placeSpecial(hand, mishap, attach);
    if (mishap.kind === 'hidden-missed') {
      const corner = corners[mishap.corner as number];
      const hidden = corner ? (corner.from + corner.size) % below.length : -1;
      if (corner && isOrdinary(hand, hidden) && hidden !== attach)
        addSpecial(specials, { target: hidden, makes: 0, mishap: mishap.index });
    }
    if (mishap.kind === 'corner-moved') moveCorners(hand, mishap);
  }
  specials.sort((a, b) => a.target - b.target);
}

function addSpecial(specials: Special[], special: Special): void {
  const there = specials.find((one) => one.target === special.target);
  if (!there) specials.push(special);
  else Object.assign(there, { makes: Math.max(0, there.makes + special.makes - 1), mishap: special.mishap });
}

/** An ordinary target: no corner position, and not the turn of a corner without any. */
const isOrdinary = (hand: Hand, node: number): boolean =>
  node >= 0 &&
  node < hand.below.length &&
  !hand.corners.some(({ from, size }) => node >= from && node < from + size);

/** Ordinary targets of a side of the round below, in its own order after the corner before it. */
function targetsOfSide(
  hand: Hand,
  side: number,
): { from: number; count: number; again: number; more: number } {
  const { corners, below } = hand;
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
function placeSpecial(hand: Hand, mishap: Settled, attach: number): void {
  const [, after] = hand.arm;
  const armAfter = hand.corners.length > 0 ? after : 0;
  const { from, count, again, more } = targetsOfSide(
    hand,
    Math.min(mishap.side as number, Math.max(0, hand.corners.length - 1)),
  );
  const all = count + more;
  const times = mishap.count ?? 1;
  const node = (place: number): number => (place < count ? from + place : again + place - count);
  let place = Math.min(Math.max(0, (mishap.place as number) - armAfter), Math.max(0, all - 1));
  if (mishap.kind === 'stitch-doubled') {
    if (node(place) === attach) place = place + 1 < all ? place + 1 : place - 1;
    if (place >= 0 && all > 0)
      addSpecial(hand.specials, { target: node(place), makes: 1 + times, mishap: mishap.index });
    return;
  }
  place = Math.min(place, Math.max(0, all - times));
  for (let missed = 0; missed < times && place < all; place++) {
    if (node(place) === attach) continue;
    addSpecial(hand.specials, { target: node(place), makes: 0, mishap: mishap.index });
    missed++;
  }
}

/**
 * The corner is made into an ordinary stitch n early or late. Counted from the total, the later corners are where they
 * belong; counted from the corner, the hand counts out the recipe's number for each side and makes the next corner
 * where that ends, in its own place if the number ends there.
 */
function moveCorners(hand: Hand, mishap: Settled): void {
  const corner = hand.corners[mishap.corner as number];
  const by = mishap.count as number;
  if (!corner || by === 0) return;
  const end = (below: Below): number => below.from + below.size - 1;
  let made = moveCorner(hand, corner, by < 0 ? corner.from + by : end(corner) + by);
  if (mishap.then !== 'from-corner') return;
  for (const next of hand.corners.slice(corner.corner + 1)) {
    const wanted = made + (hand.counted[next.corner] ?? 0) + 1;
    const isOwnPlace = wanted >= next.from && wanted <= Math.max(next.from, end(next));
    made = isOwnPlace ? end(next) : moveCorner(hand, next, wanted);
  }
}

/** Sets where a corner is made, between its neighbours; gives the last place it takes up. */
function moveCorner(hand: Hand, own: Below, wanted: number): number {
  const { below, corners, moved } = hand;
  const { from, to } = placesBetween(below, corners);
  const before = corners[own.corner - 1];
  const after = corners[own.corner + 1];
  const low = Math.max(
    from,
    before ? Math.max(before.from + before.size, (moved.get(before.corner) ?? -1) + 1) : 0,
  );
  const high = Math.min(to, after?.from ?? to, moved.get(own.corner + 1) ?? to) - 1;
  const target = Math.min(Math.max(wanted, low), high);
  if (target < low || !isOrdinary(hand, target)) return own.from + own.size - 1;
  moved.set(own.corner, target);
  return target;
}

function workRound(hand: Hand, attach: number, adds: 0 | 1): void {
  const { making, mishaps, below } = hand;
  const counted = first(mishaps, 'start-counted');
  const { from, to } = placesBetween(below, hand.corners);
  if (adds === 0 && attach >= 0) intoAttach(hand, attach);
  const doubled = first(mishaps, 'attach-doubled');
  if (doubled) {
    noteMishap(making, doubled.index);
    intoAttach(hand, attach);
  }
  let next = from;
  if (counted && next < Math.min(hand.corners[0]?.from ?? to, to)) {
    noteMishap(making, counted.index);
    next++;
  }
  for (const event of eventsAlong(hand)) {
    if (event.at > next) along(hand, next, Math.min(event.at, to));
    next = Math.max(next, event.at);
    next = event.moved ? workMovedCorner(hand, event.below, event.at) : workCorner(hand, event.below);
  }
  along(hand, next, to);
  workClosing(hand, attach, adds);
}

const intoAttach = (hand: Hand, attach: number): void =>
  makeStitch(hand.making, NodeKind.stitch, attach >= 0 ? attach : hand.below.length - 1);

/** The corners in the order in which the hand comes to them: at their own place, and where one is moved to. */
function eventsAlong(hand: Hand): { at: number; below: Below; moved: boolean }[] {
  const events = hand.corners.map((below) => ({ at: below.from, below, moved: false }));
  for (const [corner, at] of hand.moved)
    events.push({ at, below: hand.corners[corner] as Below, moved: true });
  return events.sort((a, b) => a.at - b.at);
}

/** Ordinary stitches into the targets from…to-1, but for those at which the hand does otherwise. */
function along(hand: Hand, from: number, to: number): void {
  let next = from;
  for (const special of hand.specials) {
    if (special.target < next) continue;
    if (special.target >= to) break;
    makeAlong(hand.making, special.target - next, next);
    if (special.mishap >= 0) noteMishap(hand.making, special.mishap);
    for (let i = 0; i < special.makes; i++) makeStitch(hand.making, NodeKind.stitch, special.target);
    next = special.target + 1;
  }
  if (to > next) makeAlong(hand.making, to - next, next);
}

/** Works a corner where it belongs; gives the next target. */
function workCorner(hand: Hand, below: Below): number {
  const { making, mishaps } = hand;
  const { corner, from, size } = below;
  const after = from + size;
  const forgotten = atCorner(mishaps, 'corner-forgotten', corner);
  if (forgotten || hand.moved.has(corner)) {
    if (forgotten) noteMishap(making, forgotten.index);
    makeAlong(making, size, from);
    return after;
  }
  const space = from > 0 ? from - 1 : hand.below.length - 1;
  cornerInto(hand, corner, size > 0 ? from : space, size > 0 ? after - 1 : space);
  return after;
}

function workMovedCorner(hand: Hand, below: Below, target: number): number {
  const moved = atCorner(hand.mishaps, 'corner-moved', below.corner);
  if (moved) noteMishap(hand.making, moved.index);
  if (atCorner(hand.mishaps, 'corner-forgotten', below.corner)) return target;
  cornerInto(hand, below.corner, target, target);
  return target + 1;
}

/** Arm, corner, arm: the first arm into one place, the second into another (often the same). */
function cornerInto(hand: Hand, corner: number, firstPlace: number, lastPlace: number): void {
  const { making } = hand;
  const asked = hand.cornerFor(corner);
  const chains = atCorner(hand.mishaps, 'corner-chains', corner);
  workArm(hand, corner, 'before', firstPlace);
  if (chains) noteMishap(making, chains.index);
  turn(making, asked.made);
  const size = chains?.count ?? asked.size;
  for (let i = 0; i < size; i++)
    if (asked.made === 'chain') makeStitch(making, NodeKind.cornerChain, -1);
    else makeStitch(making, NodeKind.cornerStitch, firstPlace);
  workArm(hand, corner, 'after', lastPlace);
}

function workArm(hand: Hand, corner: number, end: 'before' | 'after', target: number): void {
  const asked = hand.arm[end === 'before' ? 0 : 1];
  const missed = hand.mishaps.find(
    (mishap) => mishap.kind === 'arm-missed' && mishap.corner === corner && mishap.end === end,
  );
  if (missed) noteMishap(hand.making, missed.index);
  const makes = missed ? Math.max(0, asked - (missed.count ?? asked)) : asked;
  for (let i = 0; i < makes; i++) makeStitch(hand.making, NodeKind.arm, target);
}

/**
 * Back at the attach place: the closing covers it with a stitch of its own, or is laid over the first stitch.
 * With no ordinary stitch on side 0 the yarn is attached in the corner, all of whose stitches are worked: the closing
 * then has no place to cover.
 */
function workClosing(hand: Hand, attach: number, asked: 0 | 1): void {
  const { making, mishaps, below } = hand;
  const adds = attach >= 0 ? asked : 0;
  const worked = first(mishaps, 'closing-worked');
  if (worked) {
    noteMishap(making, worked.index);
    makeStitch(making, NodeKind.stitch, below.length - 1);
  }
  const forgotten = first(mishaps, 'closing-forgotten');
  if (forgotten && adds === 1) {
    noteMishap(making, forgotten.index);
    intoAttach(hand, attach);
  }
  const otherwise = first(mishaps, adds === 1 ? 'closing-over-first' : 'closing-beside-first');
  if (otherwise) noteMishap(making, otherwise.index);
  if ((adds === 1) !== (otherwise !== undefined))
    makeStitch(making, NodeKind.closing, attach >= 0 ? attach : below.length - 1);
}
