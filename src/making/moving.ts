/** Where a move along the making leads. Pure: the machine only calls it. */
import type { Step, Steps } from '../../core/index.ts';
import type { Unit } from '../state/snapshot.ts';

export type Question = { asks: NonNullable<Step['asks']>; at: number };

/** Steps that the first edition of the walk did not tell. */
const TOLD_LATER: ReadonlySet<Step['kind']> = new Set([
  'fasten-off',
  'tape-ends',
  'lay-strip',
  'sew-fast',
  'pins-out',
  'take-loop',
]);

/** Where a place lies now that was counted without those steps. */
export function placeToldLater(steps: Steps, place: number): number {
  let now = place;
  for (const at of singleActs(steps)) if (at <= now && TOLD_LATER.has(steps.at(at).kind)) now += 1;
  return Math.min(now, steps.length - 1);
}

/** The places of all acts that are no stitch of a side or corner, ascending. */
function* singleActs(steps: Steps): Generator<number> {
  for (const [i, { from, side, corner }] of steps.stretches.entries()) {
    if (side >= 0 || corner >= 0) continue;
    const to = steps.stretches[i + 1]?.from ?? steps.length;
    for (let at = from; at < to; at++) yield at;
  }
}

/** The questions of a making, ascending. They stand among the single acts, never among stitches. */
export function questionsOf(steps: Steps): Question[] {
  const questions: Question[] = [];
  for (const at of singleActs(steps)) {
    const { asks } = steps.at(at);
    if (asks) questions.push({ asks, at });
  }
  return questions;
}

/** The furthest place that may be reached: the first question without an answer bars the way. */
export function furthest(steps: Steps, questions: readonly Question[], answered: readonly string[]): number {
  const open = questions.find(({ asks }) => !answered.includes(asks));
  return open ? open.at : steps.length - 1;
}

const stretchAt = (steps: Steps, place: number): number => {
  let low = 0;
  let high = steps.stretches.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((steps.stretches[middle] as { from: number }).from <= place) low = middle + 1;
    else high = middle;
  }
  return low - 1;
};

/** The step that a move forward by a unit leads to, nothing barring the way. */
export function forward(steps: Steps, place: number, by: Unit): number {
  if (by === 'stitch') return place + 1;
  if (by === 'marker') {
    const next = steps.at(place + 1);
    if (next.toMarker >= 0) return next.index + next.toMarker;
  }
  const found = findStretch(steps, stretchAt(steps, place), 1, by);
  return found >= 0 ? (steps.stretches[found] as { from: number }).from : steps.length - 1;
}

/** The step that a move back by a unit leads to: the beginning of this stretch, or of the one before. */
export function backward(steps: Steps, place: number, by: Unit): number {
  if (by === 'stitch') return place - 1;
  const here = stretchAt(steps, place);
  if (by === 'marker') return Math.max(lastMarkerBefore(steps, place), stretchStart(steps, here, place));
  const own = steps.stretches[here];
  if (own && own.from < place && begins(steps, here, by)) return own.from;
  const found = findStretch(steps, here, -1, by);
  return found >= 0 ? (steps.stretches[found] as { from: number }).from : 0;
}

const stretchStart = (steps: Steps, here: number, place: number): number => {
  const own = steps.stretches[here]?.from ?? 0;
  return own < place ? own : (steps.stretches[here - 1]?.from ?? 0);
};

/** Markers lie `every` stitches apart on a leg; the one before is found by looking back along it. */
function lastMarkerBefore(steps: Steps, place: number): number {
  const from = steps.stretches[stretchAt(steps, place)]?.from ?? 0;
  const first = steps.at(from);
  if (first.toMarker < 0) return -1;
  const firstMarker = from + first.toMarker;
  if (firstMarker >= place) return -1;
  const next = steps.at(firstMarker + 1);
  const every = next.toMarker >= 0 ? next.toMarker + 1 : place;
  return firstMarker + Math.floor((place - 1 - firstMarker) / every) * every;
}

function findStretch(steps: Steps, from: number, direction: 1 | -1, by: Unit): number {
  for (let i = from + direction; i >= 0 && i < steps.stretches.length; i += direction)
    if (begins(steps, i, by)) return i;
  return -1;
}

/** Whether a stretch is one that a jump by this unit stops at. Questions are stopped at by every jump. */
function begins(steps: Steps, which: number, by: Unit): boolean {
  const stretch = steps.stretches[which];
  const before = steps.stretches[which - 1];
  if (!stretch) return false;
  const newRound = !before || before.stage !== stretch.stage || before.edging !== stretch.edging;
  if (by === 'round') return newRound;
  if (stretch.side < 0 && stretch.corner < 0) return true;
  if (by === 'corner') return stretch.corner >= 0;
  return by === 'side' ? stretch.corner < 0 : true;
}
