/**
 * Short motions: a value from 0 to 1 over some milliseconds, then rest. The state is final before one
 * starts; with reduced motion there is none.
 */

/** Milliseconds a step takes to settle. */
export const STEP_MS = 190;

let lessMotion: MediaQueryList | undefined;

/** Whether the person asked their system for less motion. */
export function wantsLessMotion(): boolean {
  lessMotion ??= matchMedia('(prefers-reduced-motion: reduce)');
  return lessMotion.matches;
}

export type Motion = { start: number; length: number };

/** Share 0–1 of a motion at `now`, fast at first and slow at the end. */
export function shareOf(motion: Motion, now: number): number {
  const passed = Math.min(1, Math.max(0, (now - motion.start) / motion.length));
  return 1 - (1 - passed) ** 3;
}

export const isOver = (motion: Motion, now: number): boolean => now >= motion.start + motion.length;
