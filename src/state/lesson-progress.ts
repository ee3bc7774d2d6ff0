/** How far the lessons have been taken: kept on the device beside the work, and no part of it. */

/** In the order of the making; the last is about all of it. */
export const LESSON_IDS = [
  'whole',
  'counting',
  'foundation',
  'closing',
  'edging',
  'mirrored',
  'cloth',
  'joining',
  'miscounts',
] as const;
export type LessonId = (typeof LESSON_IDS)[number];

/** `show`: nothing is asked. Then the last steps are hidden, then all. `memory`: all, on a later day. */
export const LEVELS = ['show', 'last-hidden', 'all-hidden', 'memory'] as const;
export type Level = (typeof LEVELS)[number];

/** `lastDay`: `YYYY-MM-DD`, by the person's own calendar. */
export type LessonProgress = { levels: readonly Level[]; lastDay: string };

export type Progress = Readonly<Partial<Record<LessonId, LessonProgress>>>;

/** What became of an asked step: an option chosen, or the worked step asked for, or left out. */
export type Answer = { option: string } | 'shown' | 'skipped';

/** Where a lesson stands. `answers`: one for each item, null until it is answered. */
export type LessonPlace = {
  lesson: LessonId;
  level: Level;
  at: number;
  answers: readonly (Answer | null)[];
};
