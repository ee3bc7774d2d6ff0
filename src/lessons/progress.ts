/**
 * How far the lessons have been taken, as a plain value to be kept. Days are given from outside
 * (`YYYY-MM-DD`, the person's own calendar); nothing here reads a clock.
 */
import { LESSON_IDS, LEVELS, type LessonId, type Level } from './lesson.ts';

export type LessonProgress = { levels: readonly Level[]; lastDay: string };

export type Progress = Readonly<Partial<Record<LessonId, LessonProgress>>>;

const DAY = /^\d{4}-\d{2}-\d{2}$/;

/** The progress with one level finished on a day. */
export function finish(progress: Progress, lesson: LessonId, level: Level, day: string): Progress {
  const levels = new Set([...(progress[lesson]?.levels ?? []), level]);
  return { ...progress, [lesson]: { levels: LEVELS.filter((one) => levels.has(one)), lastDay: day } };
}

/** "From memory" is offered on a later day than the one a lesson was last finished on. */
export function mayRemember(progress: Progress, lesson: LessonId, today: string): boolean {
  const last = progress[lesson]?.lastDay;
  return last !== undefined && DAY.test(today) && last < today;
}

/** Reads what was kept without trusting it: unknown lessons, levels and days are left out. */
export function readProgress(kept: unknown): Progress {
  if (typeof kept !== 'object' || kept === null) return {};
  const read: Partial<Record<LessonId, LessonProgress>> = {};
  for (const id of LESSON_IDS) {
    if (!Object.hasOwn(kept, id)) continue;
    const one = readOne((kept as Record<string, unknown>)[id]);
    if (one !== null) read[id] = one;
  }
  return read;
}

function readOne(kept: unknown): LessonProgress | null {
  if (typeof kept !== 'object' || kept === null) return null;
  const { levels, lastDay } = kept as { levels?: unknown; lastDay?: unknown };
  if (typeof lastDay !== 'string' || !DAY.test(lastDay) || !Array.isArray(levels)) return null;
  const known = LEVELS.filter((level) => levels.includes(level));
  return known.length === 0 ? null : { levels: known, lastDay };
}
