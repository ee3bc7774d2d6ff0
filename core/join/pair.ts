/**
 * Laying two rounds against each other, as the join does.
 *
 * Rule: the front runs forward, the back runs backward, from places the same number of positions in from a corner.
 * Stitch by stitch, position n meets position n and whatever drifts carries on; corner to corner, the corners are
 * pinned first and every side is paired within itself. Runs, not pairs, are kept: a million stitches are a few runs.
 */

import { fieldsOf, listOf, own } from '../checks.ts';
import { checkEdge } from '../front/edge.ts';
import { readRound } from '../hand/graph.ts';
import { limits } from '../limits.ts';
import { done, fail, type Problem, type Result } from '../problems.ts';
import type { Edge, JoinMade, Manner, Pairing } from '../types.ts';
import { isWhole, sum } from '../whole.ts';
import { alignCorners, begunWhereItFits } from './corners.ts';
import { findingsOf } from './findings.ts';
import { type Meeting, meet } from './meeting.ts';
import { cornerToCorner, leaveFirstOpen, startSeam, stitchByStitch } from './seam.ts';
import { clashesOf, sidesMet } from './side-meetings.ts';
import { betterTurnOf, judge } from './verdict.ts';

export type PairOptions = { start: JoinMade; manner: Manner; easing?: 'end' | 'spread' };

/**
 * Pairs a front (an edge, or a worked round) with a worked back round.
 * `start`: the front side and position where the join begins (`work(…).join` has it, with what the hand did);
 * `manner`: `'stitch-by-stitch'` or `'corner-to-corner'`; `easing`: where a surplus shows, `'end'` of the side
 * (default) or `'spread'`. Problems are at `front…`, `back`, `start…`, `manner`.
 */
export function pair(front: unknown, back: unknown, options: unknown): Result<Pairing> {
  const problems: Problem[] = [];
  const frontRound = readRound(front) ?? readFront(front, problems);
  const backRound = readRound(back);
  if (!backRound) problems.push({ at: 'back', code: 'unreadable', params: {} });
  const read = readOptions(options, problems);
  if (problems.length > 0 || !frontRound || !backRound) return fail(problems);
  const met = meet(frontRound, backRound, read.start, problems);
  return met ? done(pairMeeting(met, read)) : fail(problems);
}

function readFront(front: unknown, problems: Problem[]): Edge | null {
  const read = checkEdge(front);
  if (read.ok) return read.value;
  problems.push(...read.problems.map((problem) => ({ ...problem, at: `front.${problem.at}` })));
  return null;
}

function readOptions(options: unknown, problems: Problem[]): PairOptions {
  const fields = fieldsOf(options) ?? {};
  const manner = readManner(own(fields, 'manner'), problems);
  const easing = own(fields, 'easing') ?? 'end';
  const start = fieldsOf(own(fields, 'start')) ?? {};
  if (easing !== 'end' && easing !== 'spread')
    problems.push({ at: 'easing', code: 'unreadable', params: {} });
  const most = limits.stitches * limits.sides * 2;
  const whole = (key: string, standard: number, low: number): number => {
    const given = own(start, key) ?? standard;
    if (isWhole(given, low, most)) return given;
    problems.push({
      at: `start.${key}`,
      code: 'unreadable',
      params: {},
    });
    return standard;
  };
  return {
    manner,
    easing: easing as 'end' | 'spread',
    start: {
      side: whole('side', 0, 0),
      fromCorner: whole('fromCorner', 4, 1),
      offset: whole('offset', 0, -most),
      turned: whole('turned', 0, -most),
      skipped: readSkipped(own(start, 'skipped'), problems),
      lastHoleOpen: own(start, 'lastHoleOpen') === true,
    },
  };
}

/** How the two rounds are laid together; corner to corner where nothing is said. */
export function readManner(value: unknown, problems: Problem[]): Manner {
  if (value === 'stitch-by-stitch' || value === 'corner-to-corner') return value;
  if (value !== undefined) problems.push({ at: 'manner', code: 'unreadable', params: {} });
  return 'corner-to-corner';
}

/** Back corners of which a position is passed over; each counts once. */
function readSkipped(value: unknown, problems: Problem[]): number[] {
  const list = value === undefined ? [] : listOf(value, limits.mishaps);
  if (list?.every((one) => isWhole(one, 0, limits.sides - 1))) return [...new Set(list as number[])];
  problems.push({
    at: 'start.skipped',
    code: 'unreadable',
    params: {},
  });
  return [];
}

function pairMeeting(asBegun: Meeting, options: PairOptions): Pairing {
  const meeting = begunWhereItFits(asBegun);
  const seam = startSeam(meeting);
  const aligned = alignCorners(meeting);
  if (options.manner === 'stitch-by-stitch' || aligned === null) stitchByStitch(seam);
  else cornerToCorner(seam, aligned, options.easing ?? 'end');
  if (meeting.start.lastHoleOpen) leaveFirstOpen(seam);
  const { front, back } = meeting;
  const sameCorners = front.sizes.length === back.sizes.length;
  const sides = sidesMet(meeting, aligned);
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
    runs: seam.runs,
    sides,
    gaps: seam.gaps,
    clashes,
    leftOver: back.total - front.total,
    betterTurn,
    verdict,
    findings: findingsOf(verdict.reasons, verdict.kind, { sides, gaps: seam.gaps, manner }),
  };
}
