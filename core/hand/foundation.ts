/**
 * Working the chainless foundation treble ring, treble by treble.
 *
 * Rule: each treble is worked into the base chain of the treble before it, so the graph of the ring is a chain
 * of trebles; a corner is made of chains, and the next treble again goes into the base chain of the last treble.
 * Source: foundation ring, "work N - 1, bridge the last one between end and beginning" (published tutorial).
 */

import { type Corner, NodeKind, type Plan, type Round } from '../types.ts';
import { intentFor } from './acts/doing.ts';
import type { RoundIntent } from './acts/intent.ts';
import { finishRound, type Making, makeAlong, makeStitch, noteMishap, startMaking, turn } from './graph.ts';
import type { Orders, Task } from './orders.ts';

/** The ring as it is worked, and what it is worked from. */
type RingWork = {
  making: Making;
  intent: RoundIntent;
  plan: Plan;
  /** Node whose base chain the next treble uses; -1 for the first chain of all. */
  lastTreble: number;
};

export function workFoundation(task: Task): Round {
  const { plan } = task;
  const making = startMaking(plan.foundation.total + 16);
  const twisted = makeFoundation(making, task);
  return finishRound(making, {
    name: 'foundation',
    edging: 0,
    faces: plan.choices.start.side,
    twisted,
  });
}

/** The acts of the hand, into a making that is just begun; gives back whether the ring is closed twisted. */
export function makeFoundation(making: Making, { plan, orders, acts }: Task): boolean {
  const intent = intentFor(acts, 'foundation');
  const work: RingWork = { making, intent, plan, lastTreble: -1 };
  const legs = legsOf(plan, orders, intent);
  beginRing(work);
  let early = countsFirstFromNothing(work) ? 1 : 0;
  legs.forEach((leg, i) => {
    // The starting chains stand on side 0: with no treble before the first corner they are counted after the last.
    const isSide0 = i % plan.foundation.sides.length === 0;
    const left = workLeg(work, i, leg, isSide0 ? early : 0);
    if (isSide0) early = left;
    if (i < plan.foundation.corners.length) workCorner(work, i);
  });
  closeRing(work);
  return intent.twisted !== undefined;
}

/** Trebles the hand wants on each leg: lead, the whole sides, tail. A moved corner makes one leg longer. */
function legsOf(plan: Plan, orders: Orders, { closingForgotten, moves }: RoundIntent): number[] {
  const { foundationClosing, foundationStart } = plan.choices;
  const allowed = closingForgotten === undefined ? foundationClosing.adds : 0;
  const toWork = orders.sides.map((count, j) => (j === 0 ? count - allowed - foundationStart.counts : count));
  if (plan.foundation.corners.length === 0) return [Math.max(0, toWork[0] as number)];
  const lead = Math.min(orders.lead, Math.max(0, toWork[0] as number));
  const legs = [lead, ...toWork.slice(1), (toWork[0] as number) - lead];
  for (const { corner, by: wanted, then } of moves) {
    const by = Math.max(wanted, -(legs[corner] as number));
    legs[corner] = (legs[corner] as number) + by;
    if (then === 'from-total') legs[corner + 1] = (legs[corner + 1] as number) - by;
  }
  return legs.map((leg) => Math.max(0, leg));
}

function beginRing(work: RingWork): void {
  if (work.plan.choices.foundationStart.counts === 1) makeStitch(work.making, NodeKind.start, -1);
}

/** The starting chains taken for the first treble although no stitch stands there. */
function countsFirstFromNothing(work: RingWork): boolean {
  const { startCounted } = work.intent;
  if (startCounted === undefined || work.plan.choices.foundationStart.counts === 1) return false;
  noteMishap(work.making, startCounted);
  return true;
}

/** Works one leg, the hand counting aloud; gives back what was counted beyond the leg without being made. */
function workLeg(work: RingWork, leg: number, target: number, alreadyCounted: number): number {
  const side = leg % work.plan.foundation.sides.length;
  const from = placeOfLeg(work.plan, leg);
  const events = work.intent.slips
    .flatMap((slip) => {
      if (!('side' in slip.at) || slip.at.side !== side || !belongsToLeg(work.plan, leg, slip.at.place))
        return [];
      return [{ slip, at: Math.min(Math.max(0, slip.at.place - from), Math.max(0, target - 1)) }];
    })
    .sort((a, b) => a.at - b.at);
  let counted = Math.min(alreadyCounted, target);
  for (const { slip, at } of events) {
    if (target === 0) break;
    trebles(work, at - counted);
    counted = Math.max(counted, at);
    noteMishap(work.making, slip.act);
    if (slip.does === 'counts') counted = Math.min(target, counted + slip.times);
    else counted = doubleTreble(work, counted, target, slip.times);
  }
  trebles(work, target - counted);
  return alreadyCounted - Math.min(alreadyCounted, target);
}

/** One treble counted once, and `times` more into the same base chain, not counted. */
function doubleTreble(work: RingWork, counted: number, target: number, times: number): number {
  const base = work.lastTreble;
  const makes = times + (counted < target ? 1 : 0);
  for (let i = 0; i < makes; i++) makeStitch(work.making, NodeKind.stitch, base);
  work.lastTreble = work.making.length - 1;
  return Math.min(target, counted + 1);
}

function trebles(work: RingWork, count: number): void {
  if (count <= 0) return;
  makeStitch(work.making, NodeKind.stitch, work.lastTreble);
  makeAlong(work.making, count - 1, work.making.length - 1);
  work.lastTreble = work.making.length - 1;
}

/** Place within its side (after the corner before it) of a leg's first treble. */
function placeOfLeg(plan: Plan, leg: number): number {
  const { foundationClosing, foundationStart } = plan.choices;
  if (leg > 0) return 0;
  return plan.foundation.tail + foundationClosing.adds + foundationStart.counts;
}

/** Side 0 is worked as two legs; the closing's and the start's own places fall to the leg they stand beside. */
function belongsToLeg(plan: Plan, leg: number, place: number): boolean {
  const corners = plan.foundation.corners.length;
  if (corners === 0 || (leg > 0 && leg < corners)) return true;
  const { lead, tail } = plan.foundation;
  const inLead = place >= placeOfLeg(plan, 0) || tail === 0;
  return (inLead && lead > 0) === (leg === 0);
}

function workCorner(work: RingWork, corner: number): void {
  const { making, intent } = work;
  const asked = work.plan.foundation.corners[corner] as Corner;
  const { moved, forgotten, size } = intent.corners[corner] ?? {};
  if (moved !== undefined) noteMishap(making, moved);
  if (forgotten !== undefined) {
    noteMishap(making, forgotten);
    return;
  }
  if (size) noteMishap(making, size.act);
  turn(making, asked.made);
  const makes = size?.is ?? asked.size;
  for (let i = 0; i < makes; i++)
    if (asked.made === 'chain') makeStitch(making, NodeKind.cornerChain, -1);
    else makeStitch(making, NodeKind.cornerStitch, work.lastTreble);
}

/** The needle closes the tops: beside the first stitch it makes one more, over the first it makes none. */
function closeRing(work: RingWork): void {
  const { making, plan } = work;
  const { closedOver, closedBeside, closingForgotten } = work.intent;
  const planned = plan.choices.foundationClosing.adds === 1;
  const otherwise = planned ? closedOver : closedBeside;
  if (otherwise !== undefined) noteMishap(making, otherwise);
  if (closingForgotten !== undefined) noteMishap(making, closingForgotten);
  if (planned !== (otherwise !== undefined)) makeStitch(making, NodeKind.closing, 0);
}
