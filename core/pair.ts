/**
 * Laying two rounds against each other, as the join does.
 *
 * Rule: the front runs forward, the back runs backward, from places the same number of positions in from a corner.
 * Stitch by stitch, position n meets position n and whatever drifts carries on; corner to corner, the corners are
 * pinned first and every side is paired within itself. Runs, not pairs, are kept: a million stitches are a few runs.
 */
import { alignCorners, type Stretch } from './corners.ts';
import { ease } from './ease.ts';
import { checkEdge } from './edge.ts';
import { looksLikeRound } from './graph.ts';
import { type Lane, nodeAt } from './lane.ts';
import { driftsOf, type Meeting, meet, skipPlaces } from './meeting.ts';
import { done, fail, fieldsOf, limits, own } from './problems.ts';
import type {
  Clash,
  Edge,
  Gap,
  JoinMade,
  Manner,
  Pairing,
  PairRun,
  Problem,
  Result,
  Round,
  SideMeeting,
} from './types.ts';
import { betterTurnOf, judge } from './verdict.ts';
import { isWhole, mod, sum } from './whole.ts';

export type PairOptions = { start: JoinMade; manner: Manner; easing?: 'end' | 'spread' };

/**
 * Pairs a front (an edge, or a worked round) with a worked back round.
 * `start`: the front side and position where the join begins (`work(…).join` has it, with what the hand did);
 * `manner`: `'stitch-by-stitch'` or `'corner-to-corner'`; `easing`: where a surplus shows, `'end'` of the side
 * (default) or `'spread'`. Problems are at `front…`, `back`, `start…`, `manner`.
 */
export function pair(front: unknown, back: unknown, options: unknown): Result<Pairing> {
  const problems: Problem[] = [];
  const frontRound = looksLikeRound(front) ? front : readFront(front, problems);
  if (!looksLikeRound(back)) problems.push({ at: 'back', code: 'back', says: 'Work the back first' });
  const read = readOptions(options, problems);
  if (problems.length > 0 || !frontRound || !read) return fail(problems);
  const met = meet(frontRound, back as Round, read.start, problems);
  return met ? done(pairMeeting(met, read)) : fail(problems);
}

function readFront(front: unknown, problems: Problem[]): Edge | null {
  const read = checkEdge(front);
  if (read.ok) return read.value;
  problems.push(...read.problems.map((problem) => ({ ...problem, at: `front.${problem.at}` })));
  return null;
}

function readOptions(options: unknown, problems: Problem[]): PairOptions | null {
  const fields = fieldsOf(options) ?? {};
  const manner = own(fields, 'manner') ?? 'corner-to-corner';
  const easing = own(fields, 'easing') ?? 'end';
  const start = fieldsOf(own(fields, 'start')) ?? {};
  if (manner !== 'stitch-by-stitch' && manner !== 'corner-to-corner')
    problems.push({ at: 'manner', code: 'manner', says: 'Choose stitch by stitch, or corner to corner' });
  if (easing !== 'end' && easing !== 'spread')
    problems.push({ at: 'easing', code: 'easing', says: 'Choose the end of the side, or spread along it' });
  const most = limits.stitches * limits.sides * 2;
  const whole = (key: string, standard: number, low: number): number => {
    const given = own(start, key) ?? standard;
    if (isWhole(given, low, most)) return given;
    problems.push({
      at: `start.${key}`,
      code: 'join-start',
      says: 'The place where the join begins must be whole numbers',
    });
    return standard;
  };
  const skipped = own(start, 'skipped');
  return {
    manner: manner as Manner,
    easing: easing as 'end' | 'spread',
    start: {
      side: whole('side', 0, 0),
      fromCorner: whole('fromCorner', 4, 1),
      offset: whole('offset', 0, -most),
      turned: whole('turned', 0, -most),
      skipped: Array.isArray(skipped) ? skipped.filter((one) => isWhole(one, 0, limits.sides)) : [],
      lastHoleOpen: own(start, 'lastHoleOpen') === true,
    },
  };
}

/** Collects runs as the join goes on, and the gaps among them. */
export type Seam = {
  runs: PairRun[];
  gaps: Gap[];
  at: number;
  front: number;
  back: number;
  meeting: Meeting;
};

function pairMeeting(meeting: Meeting, options: PairOptions): Pairing {
  const seam: Seam = { runs: [], gaps: [], at: 0, front: 0, back: 0, meeting };
  const aligned = alignCorners(meeting);
  if (options.manner === 'stitch-by-stitch' || aligned === null) stitchByStitch(seam);
  else cornerToCorner(seam, aligned, options.easing ?? 'end');
  const sameCorners = meeting.front.sizes.length === meeting.back.sizes.length;
  const sides = sameCorners || !aligned ? sideMeetings(meeting) : stretchMeetings(aligned);
  if (meeting.start.lastHoleOpen) openFirst(seam);
  const betterTurn = betterTurnOf(meeting);
  const clashes = options.manner === 'stitch-by-stitch' ? clashesOf(meeting) : [];
  const { front, back } = meeting;
  return {
    manner: options.manner,
    front: front.total,
    back: back.total,
    pairs: sum(seam.runs.map((run) => (run.kind === 'joined' ? run.count : 0))),
    runs: seam.runs,
    sides,
    gaps: seam.gaps,
    clashes,
    leftOver: back.total - front.total,
    betterTurn,
    verdict: judge(meeting, { sides, clashes, betterTurn, gaps: seam.gaps, manner: options.manner }),
  };
}

/** Adds a run; `front` and `back` of the seam count positions from the join's start. */
function addRun(seam: Seam, kind: PairRun['kind'], count: number): void {
  if (count <= 0) return;
  const { meeting } = seam;
  seam.runs.push({
    kind,
    at: seam.at,
    front: mod(meeting.frontFrom + seam.front, meeting.front.total),
    back: nodeAt(meeting.back, meeting.backFrom - seam.back),
    count,
  });
  seam.at += count;
  if (kind !== 'back-alone') seam.front += count;
  if (kind !== 'front-alone') seam.back += count;
}

function addGap(seam: Seam, kind: 'front-alone' | 'back-alone', count: number, stretch: Stretch): void {
  if (count <= 0) return;
  const short = kind === 'front-alone' ? 'back' : 'front';
  const { meeting } = seam;
  const at = seam.at;
  const after =
    short === 'back'
      ? placeOnBack(meeting.back, meeting.backFrom - seam.back, stretch)
      : Math.max(0, mod(meeting.frontFrom + seam.front, meeting.front.total) - stretch.frontStart);
  addRun(seam, kind, count);
  seam.gaps.push({
    short,
    frontSide: stretch.frontSide,
    backSide: stretch.backSide,
    ...(stretch.corner ? { frontCorner: stretch.frontCorner } : {}),
    at,
    after,
    count,
    run: seam.runs.length - 1,
  });
}

/** Stitches of a back side before the place at which the join stands, in the back's own order. */
function placeOnBack(back: Lane, index: number, stretch: Stretch): number {
  const from = back.sideFrom[stretch.backSide] ?? 0;
  const length = back.sides[stretch.backSide] ?? 0;
  return stretch.corner ? 0 : Math.min(length, mod(index - from + 1, back.total));
}

function stitchByStitch(seam: Seam): void {
  const { meeting } = seam;
  const skips = skipPlaces(meeting);
  const last = lastStretch(meeting);
  let joined = 0;
  const pairs = Math.min(meeting.front.total, meeting.back.total - skips.length);
  for (const skip of skips) {
    const before = Math.min(skip - seam.back, pairs - joined);
    if (before < 0) continue;
    addRun(seam, 'joined', before);
    joined += before;
    if (seam.back === skip) addGap(seam, 'back-alone', 1, last);
  }
  addRun(seam, 'joined', pairs - joined);
  addGap(seam, 'front-alone', meeting.front.total - seam.front, last);
  addGap(seam, 'back-alone', meeting.back.total - seam.back, last);
}

function lastStretch(meeting: Meeting): Stretch {
  const { frontSide, backSide, front } = meeting;
  return {
    corner: false,
    frontSide,
    backSide,
    frontCorner: -1,
    frontStart: front.sideFrom[frontSide] as number,
    front: 0,
    back: 0,
    skipped: 0,
  };
}

function cornerToCorner(seam: Seam, stretches: Stretch[], easing: 'end' | 'spread'): void {
  for (const stretch of stretches) {
    const able = stretch.back - stretch.skipped;
    addGap(seam, 'back-alone', stretch.skipped, stretch);
    const pairs = Math.min(stretch.front, able);
    const surplus = able - stretch.front;
    const kind = surplus > 0 ? 'back-alone' : 'front-alone';
    const extra = Math.abs(surplus);
    if (easing === 'spread' && !stretch.corner && extra > 0 && pairs > 0)
      spread(seam, kind, pairs, extra, stretch);
    else {
      addRun(seam, 'joined', pairs);
      addGap(seam, kind, extra, stretch);
    }
  }
}

/** Where a corner is lacking: what lies between the corners that have a partner, the start side's two parts as one. */
function stretchMeetings(stretches: Stretch[]): SideMeeting[] {
  const parts = stretches.filter((stretch) => !stretch.corner);
  const rest = parts.length > 1 ? parts.pop() : undefined;
  let drift = 0;
  return parts.map((part, n) => {
    const front = part.front + (n === 0 && rest ? rest.front : 0);
    const back = part.back + (n === 0 && rest ? rest.back : 0);
    drift += part.back - part.front;
    return { frontSide: part.frontSide, backSide: part.backSide, front, back, surplus: back - front, drift };
  });
}

function spread(
  seam: Seam,
  kind: 'front-alone' | 'back-alone',
  pairs: number,
  extra: number,
  stretch: Stretch,
): void {
  const places = ease(pairs + extra, extra);
  let passed = 0;
  for (const place of places) {
    addRun(seam, 'joined', place - passed);
    addGap(seam, kind, 1, stretch);
    passed = place + 1;
  }
  addRun(seam, 'joined', pairs + extra - passed);
}

/** The pair in which the yarn was attached is passed over at the end: both are there, nothing holds them. */
function openFirst(seam: Seam): void {
  const firstRun = seam.runs[0];
  if (firstRun?.kind !== 'joined') return;
  const rest = { ...firstRun, at: firstRun.at + 1, count: firstRun.count - 1 };
  rest.front = mod(firstRun.front + 1, seam.meeting.front.total);
  rest.back = mod(firstRun.back - 1, seam.meeting.back.total);
  seam.runs.splice(0, 1, { ...firstRun, kind: 'open', count: 1 }, ...(rest.count > 0 ? [rest] : []));
  for (const gap of seam.gaps) gap.run += rest.count > 0 ? 1 : 0;
}

/** Every front side with the back side that meets it, in join order, whatever the manner. */
function sideMeetings(meeting: Meeting): SideMeeting[] {
  const { front, back } = meeting;
  const drifts = driftsOf(meeting);
  return front.sides.map((_, n) => {
    const frontSide = mod(meeting.frontSide + n, front.sides.length);
    const backSide = mod(meeting.backSide - n, back.sides.length);
    const frontCount = front.sides[frontSide] as number;
    const backCount = back.sides[backSide] as number;
    return {
      frontSide,
      backSide,
      front: frontCount,
      back: backCount,
      surplus: backCount - frontCount,
      drift: drifts[n] ?? 0,
    };
  });
}

function clashesOf(meeting: Meeting): Clash[] {
  return driftsOf(meeting).flatMap((late, n) =>
    late === 0
      ? []
      : [
          {
            frontCorner: mod(meeting.frontSide + n, meeting.front.sizes.length),
            backCorner: mod(meeting.backSide - n - 1, meeting.back.sizes.length),
            late,
          },
        ],
  );
}
