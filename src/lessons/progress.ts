/**
 * How far the lessons have been taken, as a plain value to be kept. Days are given from outside
 * (`YYYY-MM-DD`, the person's own calendar); nothing here reads a clock.
 */
import {
  LESSON_IDS,
  LEVELS,
  type LessonId,
  type LessonProgress,
  type Level,
  type Progress,
} from '../state/lesson-progress.ts';

const DAY = /^\d{4}-\d{2}-\d{2}$/;

/** The progress with one level finished on a day. */
export function finish(progress: Progress, lesson: LessonId, level: Level, day: string): Progress {
  const levels = new Set([...(progress[lesson]?.levels ?? []), level]);
  return { ...progress, [lesson]: { levels: LEVELS.filter((one) => levels.has(one)), lastDay: day } };
}

/** What two tabs have learnt, together: every level of both, and the later day. */
export function together(one: Progress, other: Progress): Progress {
  const both: Partial<Record<LessonId, LessonProgress>> = { ...one };
  for (const id of LESSON_IDS) {
    const [here, there] = [one[id], other[id]];
    if (!there) continue;
    const days = [there.lastDay, here?.lastDay ?? there.lastDay].sort();
    both[id] = {
      levels: LEVELS.filter((level) => here?.levels.includes(level) || there.levels.includes(level)),
      lastDay: days[1] ?? there.lastDay,
    };
  }
  return both;
}

/** "From memory" is offered on a later day than the one a lesson was last finished on. */
export function mayRemember(progress: Progress, lesson: LessonId, today: string): boolean {
  const last = progress[lesson]?.lastDay;
  return last !== undefined && DAY.test(today) && last < today;
}
