/**
 * The verdict on two rounds: meets, meets with easing, does not meet; first cause first.
 *
 * Easing one stitch in twenty along a side is our own band: half of the textbook upper example for easing cloth
 * (11 in into 10 in; no published limit for a crochet edge was found). It warns, it does not forbid.
 */

import type { Clash, Gap, Manner, Reason, SideMeeting, Verdict } from '../types.ts';
import { mod, sum } from '../whole.ts';
import { type Meeting, skipPlaces } from './meeting.ts';

const oneIn = 20;

type Findings = { sides: SideMeeting[]; clashes: Clash[]; betterTurn: number; gaps: Gap[]; manner: Manner };

export function judge(meeting: Meeting, findings: Findings): Verdict {
  const reasons = [
    ...wholeReasons(meeting, findings),
    ...sideReasons(findings.sides),
    ...placeReasons(meeting),
  ];
  if (reasons.length === 0) return { kind: 'meets', reasons };
  const easable = reasons.every(({ code }) => code === 'side-short' || code === 'side-long');
  const slight = findings.sides.every(({ front, surplus }) => Math.abs(surplus) * oneIn <= front);
  const pinned = findings.manner === 'corner-to-corner';
  return { kind: easable && slight && pinned ? 'meets-with-easing' : 'does-not-meet', reasons };
}

function wholeReasons(meeting: Meeting, { betterTurn, sides }: Findings): Reason[] {
  const reasons: Reason[] = [];
  const { front, back, start } = meeting;
  if (meeting.twisted) reasons.push({ code: 'twisted' });
  if (front.sizes.length !== back.sizes.length)
    reasons.push({ code: 'corner-count', by: back.sizes.length - front.sizes.length });
  // Where every side meets, as among equal ones or where all is taken in, nobody notices and nothing is wrong.
  const isOff = sides.some(({ surplus }) => surplus !== 0);
  if (isOff && isFrontsOrder(meeting)) reasons.push({ code: 'wrong-order' });
  if (isOff && betterTurn !== 0) reasons.push({ code: 'turned', by: betterTurn });
  // On a round there is no corner to be off.
  if ((start.offset ?? 0) !== 0 && front.sizes.length > 0)
    reasons.push({ code: 'offset', by: start.offset as number });
  return reasons;
}

function sideReasons(sides: SideMeeting[]): Reason[] {
  return sides
    .filter((side) => side.surplus !== 0)
    .map(({ frontSide, backSide, surplus }) => ({
      code: surplus < 0 ? 'side-short' : 'side-long',
      frontSide,
      backSide,
      by: surplus,
    }));
}

function placeReasons(meeting: Meeting): Reason[] {
  const { front, back, start } = meeting;
  const reasons: Reason[] = [];
  if (front.sizes.length === back.sizes.length)
    front.sizes.forEach((_, n) => {
      const frontCorner = mod(meeting.frontSide + n, front.sizes.length);
      const backCorner = mod(meeting.backSide - n - 1, back.sizes.length);
      const by = (back.sizes[backCorner] as number) - (front.sizes[frontCorner] as number);
      if (by !== 0) reasons.push({ code: 'corner-size', frontCorner, backCorner, by });
    });
  for (const { corner } of skipPlaces(meeting)) reasons.push({ code: 'chain-skipped', backCorner: corner });
  if (start.lastHoleOpen) reasons.push({ code: 'last-hole' });
  return reasons;
}

/** Difference between the sides if the back were turned by `turn` sides, or worked in another order. */
function difference(meeting: Meeting, backSideFor: (frontSide: number) => number): number {
  const { front, back } = meeting;
  return sum(front.sides.map((count, i) => Math.abs(count - (back.sides[backSideFor(i)] as number))));
}

const facing = (meeting: Meeting, turn: number) => (frontSide: number) =>
  mod(meeting.faces - frontSide - (meeting.start.turned ?? 0) - turn, meeting.back.sides.length);

/** The turn of the back, in sides, at which the sides differ least; 0 where as it is is as good as any. */
export function betterTurnOf(meeting: Meeting): number {
  const count = meeting.front.sides.length;
  if (meeting.back.sides.length !== count || count < 2) return 0;
  let best = 0;
  let least = difference(meeting, facing(meeting, 0));
  for (let turn = 1; turn < count; turn++) {
    const total = difference(meeting, facing(meeting, turn));
    if (total < least) {
      best = turn;
      least = total;
    }
  }
  return best;
}

/** Worked in the front's own order: read that way it fits exactly, mirrored it does not. */
function isFrontsOrder(meeting: Meeting): boolean {
  const count = meeting.front.sides.length;
  if (meeting.back.sides.length !== count) return false;
  const mirrored = Array.from({ length: count }, (_, turn) => difference(meeting, facing(meeting, turn)));
  if (mirrored.includes(0)) return false;
  return mirrored.some((_, turn) => difference(meeting, (i) => mod(i + turn, count)) === 0);
}
