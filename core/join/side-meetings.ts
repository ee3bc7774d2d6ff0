/**
 * What meets what, side by side, whatever the manner of joining: counts, surplus, and how far the corners drift.
 *
 * Rule: with as many corners on either piece, side follows side; where one lacks a corner, the stretches between
 * pinned corners take the sides' place.
 */

import type { Clash, SideMeeting } from '../types.ts';
import { mod } from '../whole.ts';
import type { Stretch } from './corners.ts';
import { driftsOf, type Meeting, takenUp } from './meeting.ts';

/** Side by side, what meets what: of a meeting begun where it fits, its corners aligned. */
export const sidesMet = (meeting: Meeting, aligned: Stretch[] | null): SideMeeting[] =>
  meeting.front.sizes.length === meeting.back.sizes.length ? sidesOf(meeting) : pinnedSides(meeting, aligned);

/** Every front side with the back side that meets it, in join order. */
function sidesOf(meeting: Meeting): SideMeeting[] {
  const { front, back } = meeting;
  const drifts = driftsOf(meeting);
  return front.sides.map((_, n) => {
    const frontSide = mod(meeting.frontSide + n, front.sides.length);
    const backSide = mod(meeting.backSide - n, back.sides.length);
    const frontCount = front.sides[frontSide] as number;
    const backCount = back.sides[backSide] as number;
    const taken = (meeting.start.together ?? []).filter(({ side }) => side === frontSide);
    const surplus = backCount - frontCount - takenUp(taken);
    return { frontSide, backSide, front: frontCount, back: backCount, surplus, drift: drifts[n] ?? surplus };
  });
}

/** Where a corner is lacking: what lies between the pinned corners, the start side's two parts as one. */
function pinnedSides(meeting: Meeting, stretches: Stretch[] | null): SideMeeting[] {
  const { front, back, frontSide, backSide } = meeting;
  const surplus = back.total - front.total;
  if (stretches === null)
    return [{ frontSide, backSide, front: front.total, back: back.total, surplus, drift: surplus }];
  const rest = stretches.at(-1) as Stretch;
  const meetings: SideMeeting[] = [];
  let drift = 0;
  for (const stretch of stretches) {
    if (stretch.corner)
      meetings.push(sideBefore(stretches, stretch, meetings.length === 0 ? rest : null, drift));
    drift += stretch.back - stretch.skipped - stretch.front;
  }
  return meetings;
}

function sideBefore(stretches: Stretch[], corner: Stretch, rest: Stretch | null, drift: number): SideMeeting {
  const side = stretches[stretches.indexOf(corner) - 1] as Stretch;
  const front = side.front + (rest?.front ?? 0);
  const back = side.back + (rest?.back ?? 0);
  // Told by the first of its sides: where a corner is lacking the rest may begin a side or more before the start's.
  const { frontSide, backSide } = rest ?? side;
  return { frontSide, backSide, front, back, surplus: back - front, drift };
}

/** Corners that fall on something else when nothing is pinned; `pinned` where one piece lacks a corner. */
export function clashesOf(meeting: Meeting, pinned: Stretch[] | null): Clash[] {
  const { front, back, frontSide, backSide } = meeting;
  const falling = pinned
    ? pinnedSides(meeting, pinned).map(({ drift }, n) => ({ drift, ...cornerOf(pinned, n) }))
    : driftsOf(meeting).map((drift, n) => ({
        drift,
        frontCorner: mod(frontSide + n, front.sizes.length),
        backCorner: mod(backSide - n - 1, back.sizes.length),
      }));
  return falling
    .filter(({ drift }) => drift !== 0)
    .map(({ drift, frontCorner, backCorner }) => ({ frontCorner, backCorner, late: drift }));
}

const cornerOf = (stretches: Stretch[], n: number): { frontCorner: number; backCorner: number } =>
  stretches.filter(({ corner }) => corner)[n] as Stretch;
