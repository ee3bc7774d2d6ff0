/**
 * The maker's own pace, from when each stitch was tapped. A pure function of the taps: no clock here.
 *
 * Rule: the median time from one stitch to the next, over the newest stitches; quick taps through and breaks
 * are left out. Nothing is said before there is enough to know. Trade-off: a median hides a slow corner.
 */
import type { Step } from '../../core/index.ts';
import { many } from '../words/numbers.ts';

/** A place reached by a tap, and when (milliseconds on any clock that only goes forward). */
export type Tap = { place: number; ms: number };

/** Quicker than any hand crochets: someone leafing through. */
const LEAFING_MS = 700;
/** Longer than this between two stitches is a break, however slow the hand. */
const BREAK_MS = 3 * 60_000;
/** And so is anything this many times the median. */
const BREAK_TIMES = 5;
/** Stitches to have seen before a pace is told, and how many of the newest are looked at. */
export const ENOUGH = 12;
const NEWEST = 60;

/** The taps with one more; only the newest are kept. A step back starts over, as does a jump. */
export function addTap(taps: readonly Tap[], tap: Tap): readonly Tap[] {
  const last = taps.at(-1);
  if (last !== undefined && (tap.place <= last.place || tap.ms < last.ms)) return [tap];
  return [...taps, tap].slice(-NEWEST - 1);
}

/** Milliseconds a stitch, or null while there is too little to know. */
export function paceOf(taps: readonly Tap[]): number | null {
  const times = stitchTimes(taps);
  const first = median(times);
  if (first === null) return null;
  const steady = times.filter((ms) => ms <= first * BREAK_TIMES);
  return steady.length < ENOUGH ? null : median(steady);
}

/** Times from one stitch to the very next; jumps are no stitches. */
function stitchTimes(taps: readonly Tap[]): number[] {
  return taps.slice(1).flatMap((tap, i) => {
    const before = taps[i];
    if (before === undefined || tap.place !== before.place + 1) return [];
    const ms = tap.ms - before.ms;
    return ms >= LEAFING_MS && ms <= BREAK_MS ? [ms] : [];
  });
}

function median(numbers: readonly number[]): number | null {
  if (numbers.length === 0) return null;
  const sorted = [...numbers].sort((a, b) => a - b);
  const half = sorted.length >> 1;
  const upper = sorted[half] ?? 0;
  return sorted.length % 2 === 1 ? upper : ((sorted[half - 1] ?? 0) + upper) / 2;
}

/** "about 40 minutes to the corner", or null while there is nothing honest to say. */
export function sayAhead(step: Pick<Step, 'toCorner'>, taps: readonly Tap[]): string | null {
  const pace = paceOf(taps);
  if (pace === null || step.toCorner < 1) return null;
  return `${sayDuration(pace * step.toCorner)} to the corner`;
}

/** A duration as people say it: to the minute below 10 minutes, to 5 below an hour, then to the half hour. */
export function sayDuration(ms: number): string {
  const minutes = ms / 60_000;
  if (minutes < 1) return 'less than a minute';
  if (minutes < 9.5) return `about ${many(Math.round(minutes), 'minute')}`;
  if (minutes < 57.5) return `about ${Math.round(minutes / 5) * 5} minutes`;
  const halves = Math.max(2, Math.round(minutes / 30));
  const hours = Math.floor(halves / 2);
  return halves % 2 === 0 ? `about ${many(hours, 'hour')}` : `about ${hours}½ hours`;
}
