/** Holds the lessons for the page: the machine, the day, and the movement between two rests. */
import { createActor } from 'xstate';
import type { Answer, LessonPlace, Progress } from '../state/lesson-progress.ts';
import { movesOf } from '../stitch/moves.ts';
import { browserMotion, MOVE_MS, type Motion } from '../stitch/stitch.ts';
import { type Variant, variantOf } from '../stitch/variant.ts';
import type { Speech } from '../words/words.ts';
import { type Item, itemsAt, type LessonId, type Level, lessonOf } from './lesson.ts';
import { type LessonContext, type LessonEvent, lessonMachine } from './machine.ts';

export type LessonStage = 'choosing' | 'showing' | 'asking' | 'told' | 'finished';

/** All that the panel shows. */
export type LessonsView = {
  speech: Speech;
  stage: LessonStage;
  lesson: LessonId | null;
  level: Level;
  at: number;
  of: number;
  item: Item | null;
  /** The step before, where there is one. */
  before: Item | null;
  /** A first help was asked for at this step. */
  nudged: boolean;
  answer: Answer | null;
  answers: readonly (Answer | null)[];
  /** The stitch that is being shown, and how far its movement has got (1 = at rest). */
  variant: Variant | null;
  t: number;
  /** The person wants movement; else the stills stand side by side. */
  moves: boolean;
  progress: Progress;
  today: string;
};

export type Lessons = {
  view(speech: Speech): LessonsView;
  send(event: LessonEvent): void;
  /** To be kept; changes when a lesson is finished. */
  progress(): Progress;
  /** Where the lesson under way stands; null while one is chosen. */
  place(): LessonPlace | null;
  stop(): void;
};

export type LessonsOptions = {
  progress?: Progress;
  /** Where to go on. */
  place?: LessonPlace | null;
  /** The person's day, `YYYY-MM-DD`; asked for whenever something is sent. */
  today: () => string;
  /** Called whenever the view is another. */
  onChange: () => void;
  motion?: Motion;
};

/** Nothing moves by itself: a movement follows NEXT and OPEN where a stitch is shown, and is over in seconds. */
export function createLessons({
  progress = {},
  place = null,
  today,
  onChange,
  motion = browserMotion(),
}: LessonsOptions): Lessons {
  const actor = createActor(lessonMachine, { input: { progress, place } });
  let t = 1;
  let callOff = (): void => {};
  actor.start();

  const context = (): LessonContext => actor.getSnapshot().context;
  const shown = (): Variant | null => {
    const item = itemOf(context());
    if (item === null || stageOf(actor.getSnapshot().value) !== 'showing') return null;
    // Where the whole piece is looked at there is no stitch to be moved.
    const isWhole =
      item.question?.kind === 'gap' || item.question?.kind === 'faces' || item.pair !== undefined;
    return isWhole ? null : variantOf(item.step, item.making);
  };
  const rest = (): void => {
    callOff();
    t = 1;
  };
  const run = (variant: Variant): void => {
    const wholeMs = MOVE_MS * movesOf(variant.kind).length;
    let startMs: number | null = null;
    t = 0;
    const tick = (nowMs: number): void => {
      startMs ??= nowMs;
      t = Math.min(1, (nowMs - startMs) / wholeMs);
      if (t < 1) callOff = motion.frame(tick);
      onChange();
    };
    callOff = motion.frame(tick);
  };
  return {
    view: (speech) => {
      const { lesson, level, at, nudgedAt, answers, progress: done } = context();
      return {
        speech,
        stage: stageOf(actor.getSnapshot().value),
        lesson,
        level,
        at,
        of: answers.length,
        item: itemOf(context()),
        before: itemOf({ lesson, level, at: at - 1 }),
        nudged: nudgedAt === at,
        answer: answers[at] ?? null,
        answers,
        variant: shown(),
        t,
        moves: !motion.reduced(),
        progress: done,
        today: today(),
      };
    },
    send: (event) => {
      rest();
      actor.send({ ...event, day: today() } as LessonEvent);
      const variant = shown();
      const moves =
        event.type === 'NEXT' || event.type === 'OPEN' || event.type === 'SKIP' || event.type === 'AGAIN';
      if (moves && variant !== null && !motion.reduced()) run(variant);
      onChange();
    },
    progress: () => context().progress,
    place: () => {
      const { lesson, level, at, answers } = context();
      return lesson && { lesson, level, at, answers };
    },
    stop: () => {
      rest();
      actor.stop();
    },
  };
}

const itemOf = ({ lesson, level, at }: Pick<LessonContext, 'lesson' | 'level' | 'at'>): Item | null =>
  lesson === null ? null : (itemsAt(lessonOf(lesson), level)[at] ?? null);

/** The machine's state as one word. */
export function stageOf(value: unknown): LessonStage {
  if (typeof value === 'string') return value as LessonStage;
  return (value as { doing: LessonStage }).doing;
}
