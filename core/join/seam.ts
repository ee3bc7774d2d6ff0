/**
 * The seam as the join goes on: runs of pairs, and the places that find no partner.
 *
 * Rule: positions are consumed two by two; what lies alone is a run of its own, never left out. Runs, not pairs, are
 * kept: a million stitches are a few runs.
 */

import type { Gap, PairRun } from '../types.ts';
import { lastNotAbove, mod } from '../whole.ts';
import type { Stretch } from './corners.ts';
import { ease } from './ease.ts';
import { type Lane, nodeAt } from './lane.ts';
import { type Meeting, type Pinch, pinchesOf, skipPlaces } from './meeting.ts';

/** Collects runs, and the gaps among them. `front` and `back` count positions from the join's start. */
export type Seam = {
  runs: PairRun[];
  gaps: Gap[];
  at: number;
  front: number;
  back: number;
  meeting: Meeting;
  pinches: Pinch[];
};

type Alone = 'front-alone' | 'back-alone';

/** Which sides, and which corner if any, a gap is told as lying in. */
type Where = Pick<Gap, 'frontSide' | 'backSide' | 'frontCorner'>;

export const startSeam = (meeting: Meeting): Seam => ({
  runs: [],
  gaps: [],
  at: 0,
  front: 0,
  back: 0,
  meeting,
  pinches: pinchesOf(meeting),
});

/** Lane indices at which the join stands: the next position of each piece. */
const frontIndex = ({ meeting, front }: Seam): number => mod(meeting.frontFrom + front, meeting.front.total);
const backIndex = ({ meeting, back }: Seam): number => mod(meeting.backFrom - back, meeting.back.total);

function addRun(
  seam: Seam,
  kind: PairRun['kind'],
  count: number,
  more: Pick<PairRun, 'together'> = {},
): void {
  if (count <= 0) return;
  seam.runs.push({
    kind,
    at: seam.at,
    front: frontIndex(seam),
    back: nodeAt(seam.meeting.back, backIndex(seam)),
    count,
    ...more,
  });
  seam.at += count;
  if (kind !== 'back-alone') seam.front += count;
  if (kind !== 'front-alone') seam.back += count;
}

/** Pairs until either piece is used up, two of one taken with one of the other where that is asked for. */
function addJoined(seam: Seam, frontEnd: number, backEnd: number): void {
  const room = (): number => Math.min(frontEnd - seam.front, backEnd - seam.back);
  for (const { front, of, together } of seam.pinches) {
    const ahead = front - seam.front;
    if (ahead < 0 || ahead >= room()) continue;
    addRun(seam, 'joined', ahead + 1);
    const isMore = of === 'back' ? seam.back < backEnd : seam.front < frontEnd;
    if (isMore) addRun(seam, `${of}-alone`, 1, { together });
  }
  addRun(seam, 'joined', room());
}

function addGap(seam: Seam, kind: Alone, count: number, where: Where): void {
  if (count <= 0) return;
  const { front, back } = seam.meeting;
  const isBackShort = kind === 'front-alone';
  const after = isBackShort
    ? worked(back, where.backSide, backIndex(seam) + 1)
    : worked(front, where.frontSide, frontIndex(seam));
  const { at } = seam;
  addRun(seam, kind, count);
  const run = seam.runs.length - 1;
  seam.gaps.push({ short: isBackShort ? 'back' : 'front', ...where, at, after, count, run });
}

/** Stitches of a side that lie before a lane index, in the piece's own order: none or all of them from a corner beside it. */
function worked(lane: Lane, side: number, index: number): number {
  const length = lane.sides[side] ?? 0;
  const along = mod(index - (lane.sideFrom[side] ?? 0), lane.total);
  const cornerBefore = lane.sizes[mod(side - 1, lane.sizes.length || 1)] ?? 0;
  if (along <= length) return along;
  return lane.total - along <= cornerBefore ? 0 : length;
}

/** Where the join stands now, by the positions it has come to. */
function whereItStands(seam: Seam): Where {
  const { front, back } = seam.meeting;
  const here = frontIndex(seam);
  const frontSide = lastNotAbove(front.sideFrom, here);
  const corner = front.cornerFrom[frontSide];
  const isInCorner = corner !== undefined && here >= corner;
  return {
    frontSide,
    backSide: lastNotAbove(back.sideFrom, backIndex(seam)),
    ...(isInCorner ? { frontCorner: frontSide } : {}),
  };
}

/** Position n meets position n; what one piece has too much shows at the end. */
export function stitchByStitch(seam: Seam): void {
  const { front, back } = seam.meeting;
  for (const { place } of skipPlaces(seam.meeting)) {
    addJoined(seam, front.total, place);
    if (seam.front < front.total) addGap(seam, 'back-alone', 1, whereItStands(seam));
  }
  addJoined(seam, front.total, back.total);
  addGap(seam, 'front-alone', front.total - seam.front, whereItStands(seam));
  addGap(seam, 'back-alone', back.total - seam.back, whereItStands(seam));
}

/** Each stretch between pinned corners is paired within itself. */
export function cornerToCorner(seam: Seam, stretches: Stretch[], easing: 'end' | 'spread'): void {
  for (const stretch of stretches) {
    const where = {
      frontSide: stretch.frontSide,
      backSide: stretch.backSide,
      ...(stretch.corner ? { frontCorner: stretch.frontCorner } : {}),
    };
    addGap(seam, 'back-alone', stretch.skipped, where);
    const frontEnd = seam.front + stretch.front;
    const backEnd = seam.back + stretch.back - stretch.skipped;
    const isPinched = seam.pinches.some(({ front }) => front >= seam.front && front < frontEnd);
    if (easing === 'spread' && !stretch.corner && !isPinched) spread(seam, frontEnd, backEnd, where);
    else {
      addJoined(seam, frontEnd, backEnd);
      addGap(seam, 'front-alone', frontEnd - seam.front, where);
      addGap(seam, 'back-alone', backEnd - seam.back, where);
    }
  }
}

/** Pairs with what is alone spread evenly among them. */
function spread(seam: Seam, frontEnd: number, backEnd: number, where: Where): void {
  const [front, back] = [frontEnd - seam.front, backEnd - seam.back];
  const kind = back > front ? 'back-alone' : 'front-alone';
  const pairs = Math.min(front, back);
  const extra = Math.abs(back - front);
  if (pairs === 0) {
    addGap(seam, kind, extra, where);
    return;
  }
  let passed = 0;
  for (const place of ease(pairs + extra, extra)) {
    addRun(seam, 'joined', place - passed);
    addGap(seam, kind, 1, where);
    passed = place + 1;
  }
  addRun(seam, 'joined', pairs + extra - passed);
}

/** The pair in which the yarn was attached is passed over at the end: both are there, nothing holds them. */
export function leaveFirstOpen(seam: Seam): void {
  const first = seam.runs[0];
  if (first?.kind !== 'joined') return;
  const { front, back } = seam.meeting;
  const rest: PairRun = {
    ...first,
    at: first.at + 1,
    front: mod(first.front + 1, front.total),
    back: mod(first.back - 1, back.total),
    count: first.count - 1,
  };
  const isMore = rest.count > 0;
  seam.runs.splice(0, 1, { ...first, kind: 'open', count: 1 }, ...(isMore ? [rest] : []));
  for (const gap of seam.gaps) gap.run += isMore ? 1 : 0;
}

/** The stitches of the side that stays open lie beside each other: nothing holds them, and what is over is no gap. */
export function leaveSideOpen(seam: Seam): void {
  const { front, start } = seam.meeting;
  const { open } = start;
  if (open === undefined) return;
  const from = front.sideFrom[open] ?? 0;
  const to = from + (front.sides[open] ?? 0);
  const moved = new Map<number, number>();
  const runs: PairRun[] = [];
  seam.runs.forEach((run, index) => {
    moved.set(index, runs.length);
    runs.push(
      ...(run.kind === 'joined'
        ? cutAt(run, { from, to, front: front.total, back: seam.meeting.back.total })
        : [run]),
    );
  });
  seam.runs = runs;
  seam.gaps = seam.gaps
    .filter(({ frontSide, frontCorner }) => frontSide !== open || frontCorner !== undefined)
    .map((gap) => ({ ...gap, run: moved.get(gap.run) ?? gap.run }));
}

/** A run cut where the open side begins and ends; it may pass the front's last position. */
function cutAt(run: PairRun, side: { from: number; to: number; front: number; back: number }): PairRun[] {
  const marks = [side.from, side.to].map((at) => mod(at - run.front, side.front));
  const cuts = [...new Set([0, ...marks.filter((at) => at < run.count), run.count])].sort((a, b) => a - b);
  return cuts.slice(0, -1).map((at, i) => {
    const place = mod(run.front + at, side.front);
    const isOpen = place >= side.from && place < side.to;
    return {
      ...run,
      kind: isOpen ? 'open' : 'joined',
      at: run.at + at,
      front: place,
      back: mod(run.back - at, side.back),
      count: (cuts[i + 1] ?? run.count) - at,
    };
  });
}
