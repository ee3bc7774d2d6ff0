/**
 * Working an edging round into the round below, target by target.
 *
 * Rule: the hand follows what it finds. It attaches on side 0, works one double crochet into every stitch it meets,
 * and where it meets a corner works the arm into its first chain, the new corner, and the arm into its last chain.
 * It never looks at a total, so a round below that came out wrong is carried on faithfully.
 */

import { type Corner, NodeKind, type Plan, type Round } from '../types.ts';
import { sum } from '../whole.ts';
import { intentFor } from './acts/doing.ts';
import { asRecipe, type RoundIntent } from './acts/intent.ts';
import { attachPlace, type Below, cornersBelow, placesBetween, type RoundBelow } from './attach.ts';
import { type EdgingWork, prepare } from './edging-mishaps.ts';
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
import { cornerToMatch, type Task } from './orders.ts';

/** What the recipe asks of one edging round. */
export type AskedEdging = {
  arm: readonly [number, number];
  /** Stitches to be spread along a round panel. */
  increase: number;
  /** Stitches of each side once the round is worked. */
  sides: readonly number[];
  /** The corner to make at a corner of the round below. */
  cornerFor: (corner: number) => Corner;
  closingAdds: 0 | 1;
};

export function workEdging(task: Task, below: Round, edging: number): Round {
  const making = startMaking((task.plan.edgings[edging] as Plan['edgings'][number]).total + 16);
  const sizes = below.turns.map((_, corner) => cornerSize(below, corner));
  makeEdging(making, task, { length: below.length, turns: below.turns, sizes }, edging);
  return finishRound(making, { name: 'edging', edging, faces: below.faces, twisted: below.twisted });
}

/** The acts of the hand, into a making that is just begun. */
export function makeEdging(making: Making, task: Task, below: RoundBelow, edging: number): void {
  const { plan, acts } = task;
  const asked = plan.edgings[edging] as Plan['edgings'][number];
  const isLast = edging === plan.edgings.length - 1;
  const { arm, increase, sides } = asked;
  makeAsked(
    making,
    {
      arm,
      increase,
      sides,
      closingAdds: plan.choices.edgingClosing.adds,
      cornerFor: (corner) =>
        (isLast ? cornerToMatch(task, corner) : asked.corners[corner]) ?? { made: 'chain', size: 0 },
    },
    below,
    intentFor(acts, 'edging', edging),
  );
}

/** The same for a round that stands in no plan. */
export function makeAsked(
  making: Making,
  asked: AskedEdging,
  below: RoundBelow,
  intent: RoundIntent = asRecipe(),
): void {
  const { arm, sides, cornerFor } = asked;
  const corners = cornersBelow(below);
  const counted = sides.map((count) => count - sum(arm));
  const work: EdgingWork = {
    making,
    intent,
    below,
    corners,
    specials: [],
    moved: new Map(),
    arm,
    counted,
    cornerFor,
  };
  const attach = attachPlace(below, corners);
  prepare(work, asked.increase, attach);
  workRound(work, attach, asked.closingAdds);
}

function workRound(work: EdgingWork, attach: number, adds: 0 | 1): void {
  const { making, below } = work;
  const { startCounted, attachDoubled, loops } = work.intent;
  if (loops !== undefined) noteMishap(making, loops);
  const { from, to } = placesBetween(below, work.corners);
  if (adds === 0 && attach >= 0) intoAttach(work, attach);
  if (attachDoubled !== undefined) {
    noteMishap(making, attachDoubled);
    intoAttach(work, attach);
  }
  let next = from;
  if (startCounted !== undefined && next < Math.min(work.corners[0]?.from ?? to, to)) {
    noteMishap(making, startCounted);
    next++;
  }
  const upTo = (place: number): void => {
    if (place > next) along(work, next, Math.min(place, to));
    next = Math.max(next, place);
  };
  if (work.moved.size === 0)
    for (const corner of work.corners) {
      upTo(corner.from);
      next = workCorner(work, corner);
    }
  else
    for (const event of eventsAlong(work)) {
      upTo(event.at);
      next = event.moved ? workMovedCorner(work, event.below, event.at) : workCorner(work, event.below);
    }
  along(work, next, to);
  workClosing(work, attach, adds);
}

const intoAttach = (work: EdgingWork, attach: number): void =>
  makeStitch(work.making, NodeKind.stitch, attach >= 0 ? attach : work.below.length - 1);

/** The corners in the order in which the hand comes to them: at their own place, and where one is moved to. */
function eventsAlong(work: EdgingWork): { at: number; below: Below; moved: boolean }[] {
  const events = work.corners.map((below) => ({ at: below.from, below, moved: false }));
  for (const [corner, at] of work.moved)
    events.push({ at, below: work.corners[corner] as Below, moved: true });
  return events.sort((a, b) => a.at - b.at);
}

/** Ordinary stitches into the targets from…to-1, but for those at which the hand does otherwise. */
function along(work: EdgingWork, from: number, to: number): void {
  let next = from;
  for (const special of work.specials) {
    if (special.target < next) continue;
    if (special.target >= to) break;
    makeAlong(work.making, special.target - next, next);
    if (special.act >= 0) noteMishap(work.making, special.act);
    for (let i = 0; i < special.makes; i++) makeStitch(work.making, NodeKind.stitch, special.target);
    next = special.target + 1;
  }
  if (to > next) makeAlong(work.making, to - next, next);
}

/** Works a corner where it belongs; gives the next target. */
function workCorner(work: EdgingWork, below: Below): number {
  const { making, intent } = work;
  const { corner, from, size } = below;
  const after = from + size;
  const forgotten = intent.corners[corner]?.forgotten;
  if (forgotten !== undefined || work.moved.has(corner)) {
    if (forgotten !== undefined) noteMishap(making, forgotten);
    makeAlong(making, size, from);
    return after;
  }
  const space = from > 0 ? from - 1 : work.below.length - 1;
  cornerInto(work, corner, size > 0 ? from : space, size > 0 ? after - 1 : space);
  return after;
}

function workMovedCorner(work: EdgingWork, below: Below, target: number): number {
  const { moved, forgotten } = work.intent.corners[below.corner] ?? {};
  if (moved !== undefined) noteMishap(work.making, moved);
  if (forgotten !== undefined) return target;
  cornerInto(work, below.corner, target, target);
  return target + 1;
}

/** Arm, corner, arm: the first arm into one place, the second into another (often the same). */
function cornerInto(work: EdgingWork, corner: number, firstPlace: number, lastPlace: number): void {
  const { making, intent } = work;
  const asked = work.cornerFor(corner);
  const { size } = intent.corners[corner] ?? {};
  workArm(work, corner, 'before', firstPlace);
  if (size) noteMishap(making, size.act);
  turn(making, asked.made);
  const makes = size?.is ?? asked.size;
  for (let i = 0; i < makes; i++)
    if (asked.made === 'chain') makeStitch(making, NodeKind.cornerChain, -1);
    else makeStitch(making, NodeKind.cornerStitch, firstPlace);
  workArm(work, corner, 'after', lastPlace);
}

function workArm(work: EdgingWork, corner: number, end: 'before' | 'after', target: number): void {
  const asked = work.arm[end === 'before' ? 0 : 1];
  const missed = work.intent.corners[corner]?.[end];
  if (missed) noteMishap(work.making, missed.act);
  const makes = Math.max(0, asked - (missed?.less ?? 0));
  for (let i = 0; i < makes; i++) makeStitch(work.making, NodeKind.arm, target);
}

/**
 * Back at the attach place: the closing covers it with a stitch of its own, or is laid over the first stitch.
 * With no ordinary stitch on side 0 the yarn is attached in the corner, all of whose stitches are worked: the closing
 * then has no place to cover.
 */
function workClosing(work: EdgingWork, attach: number, asked: 0 | 1): void {
  const { making, below } = work;
  const { closingWorked, closingForgotten, closedOver, closedBeside } = work.intent;
  const adds = attach >= 0 ? asked : 0;
  if (closingWorked !== undefined) {
    noteMishap(making, closingWorked);
    makeStitch(making, NodeKind.stitch, below.length - 1);
  }
  if (closingForgotten !== undefined && adds === 1) {
    noteMishap(making, closingForgotten);
    intoAttach(work, attach);
  }
  const otherwise = adds === 1 ? closedOver : closedBeside;
  if (otherwise !== undefined) noteMishap(making, otherwise);
  if ((adds === 1) !== (otherwise !== undefined))
    makeStitch(making, NodeKind.closing, attach >= 0 ? attach : below.length - 1);
}
