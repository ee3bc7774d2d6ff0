/**
 * Laying two rounds against each other, as the join does.
 *
 * Rule: the front runs forward, the back runs backward, from places the same number of positions in from a corner.
 * Stitch by stitch, position n meets position n and whatever drifts carries on; corner to corner, the corners are
 * pinned first and every side is paired within itself. Runs, not pairs, are kept: a million stitches are a few runs.
 */

import type { CornerCount } from '../finding.ts';
import type { JoinMade, Manner, Pairing, Round, Shape } from '../types.ts';
import { sum } from '../whole.ts';
import { alignCorners, begunWhereItFits, type Stretch } from './corners.ts';
import { findingsOf } from './findings.ts';
import { laneOfEither, laneOfRound } from './lane.ts';
import { cornersLeftOut, facedBy } from './left-out.ts';
import { type Meeting, meet, takenUp } from './meeting.ts';
import { cornerToCorner, leaveFirstOpen, leaveSideOpen, startSeam, stitchByStitch } from './seam.ts';
import { clashesOf, sidesMet } from './side-meetings.ts';
import { betterTurnOf, judge } from './verdict.ts';

export type PairOptions = { start: JoinMade; manner: Manner; easing?: 'end' | 'spread' };

/**
 * Pairs a front (an edge, or a worked round) with a worked back round.
 * `start`: the front side and position where the join begins (`work(…).join` has it, with what the hand did);
 * `easing`: where a surplus shows, `'end'` of the side (default) or `'spread'`.
 */
export function pair(front: Shape | Round, back: Round, options: PairOptions): Pairing {
  const frontLane = laneOfEither(front);
  const backLane = laneOfRound(back);
  const met = meet(frontLane, backLane, back, options.start);
  return met ? pairMeeting(met, options) : nothingJoined(frontLane.total, backLane.total, options.manner);
}

/** Where one of the rounds has no stitches. */
function nothingJoined(front: number, back: number, manner: Manner): Pairing {
  const leftOver = back - front;
  return {
    manner,
    front,
    back,
    pairs: 0,
    toJoin: Math.max(front, back),
    runs: [],
    sides: [],
    gaps: [],
    clashes: [],
    leftOver,
    betterTurn: 0,
    verdict: { kind: 'does-not-meet', reasons: [{ code: 'left-over', by: leftOver }] },
    findings: [],
  };
}

function pairMeeting(asBegun: Meeting, options: PairOptions): Pairing {
  const meeting = begunWhereItFits(asBegun);
  const seam = startSeam(meeting);
  const aligned = alignCorners(meeting);
  if (options.manner === 'stitch-by-stitch' || aligned === null) stitchByStitch(seam);
  else cornerToCorner(seam, aligned, options.easing ?? 'end');
  if (meeting.start.lastHoleOpen) leaveFirstOpen(seam);
  leaveSideOpen(seam);
  const { front, back } = meeting;
  const sameCorners = front.sizes.length === back.sizes.length;
  const { open } = meeting.start;
  const met = sidesMet(meeting, aligned);
  // A side that stays open meets nothing: nothing of it is over.
  const sides = met.map((side) => (side.frontSide === open ? { ...side, surplus: 0 } : side));
  const openPair = met.find(({ frontSide }) => frontSide === open);
  const betterTurn = betterTurnOf(meeting);
  const clashes =
    options.manner === 'stitch-by-stitch' ? clashesOf(meeting, sameCorners ? null : aligned) : [];
  const { manner } = options;
  const verdict = judge(meeting, { sides, clashes, betterTurn, gaps: seam.gaps, manner });
  return {
    manner,
    front: front.total,
    back: back.total,
    pairs: sum(seam.runs.map((run) => (run.kind === 'joined' ? run.count : 0))),
    toJoin: Math.max(front.total - (openPair?.front ?? 0), back.total - (openPair?.back ?? 0)),
    runs: seam.runs,
    sides,
    gaps: seam.gaps,
    clashes,
    leftOver: back.total - front.total - takenUp(meeting.start.together ?? []),
    betterTurn,
    verdict,
    findings: findingsOf(verdict.reasons, verdict.kind, {
      sides,
      gaps: seam.gaps,
      manner,
      leftOut: leftOutOf(meeting, aligned),
    }),
  };
}

function leftOutOf(
  meeting: Meeting,
  aligned: Stretch[] | null,
): Pick<CornerCount, 'leftOut' | 'frontCorner'> {
  const leftOut = cornersLeftOut(meeting);
  const [only] = leftOut;
  if (only === undefined || leftOut.length > 1) return { leftOut };
  const frontCorner = facedBy(meeting, only);
  const isPinned = aligned?.some((stretch) => stretch.frontCorner === frontCorner) ?? true;
  return isPinned ? { leftOut } : { leftOut, frontCorner };
}
