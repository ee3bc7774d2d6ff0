/** How far the lessons were taken, as kept: what cannot be read of a lesson is as if it was never opened. */
import * as v from 'valibot';
import {
  LESSON_IDS,
  LEVELS,
  type LessonPlace,
  type LessonProgress,
  type Progress,
} from '../state/lesson-progress.ts';

const one = v.object({
  levels: v.pipe(
    v.array(v.unknown()),
    v.transform((kept) => LEVELS.filter((level) => kept.includes(level))),
    v.minLength(1),
  ),
  lastDay: v.pipe(v.string(), v.isoDate()),
});

const lessons = v.fallback(v.record(v.string(), v.unknown()), {});

export function readProgress(kept: unknown): Progress {
  const all = v.parse(lessons, kept);
  const read: Partial<Record<string, LessonProgress>> = {};
  for (const id of LESSON_IDS) {
    const lesson = v.safeParse(one, all[id]);
    if (lesson.success) read[id] = lesson.output;
  }
  return read;
}

/** From the text on the device. */
export function readProgressText(text: string | null): Progress {
  const parsed = v.safeParse(v.pipe(v.string(), v.parseJson()), text);
  return parsed.success ? readProgress(parsed.output) : {};
}

const place = v.object({
  lesson: v.picklist(LESSON_IDS),
  level: v.picklist(LEVELS),
  at: v.pipe(v.number(), v.integer(), v.minValue(0)),
  answers: v.array(
    v.union([v.null(), v.literal('shown'), v.literal('skipped'), v.object({ option: v.string() })]),
  ),
});

/** Where a lesson stood when the page was left, from the text of the tab; null where there is none to go on with. */
export function readLessonPlace(text: string | null): LessonPlace | null {
  const read = v.safeParse(v.pipe(v.string(), v.parseJson(), place), text);
  return read.success ? read.output : null;
}
