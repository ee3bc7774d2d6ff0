/**
 * A lesson under way. It rests at every step; a hidden step asks before it shows, and an answer is told at
 * once. Skipping and asking for the worked step are always possible. The day comes with the event.
 */
import { assign, setup } from 'xstate';
import type { Answer, LessonPlace, Progress } from '../state/lesson-progress.ts';
import { type Item, isAsked, itemsAt, type LessonId, type Level, lessonOf } from './lesson.ts';
import { finish, mayRemember } from './progress.ts';

export type LessonEvent =
  | { type: 'OPEN'; lesson: LessonId; level: Level; day?: string }
  | { type: 'NEXT'; day?: string }
  | { type: 'BACK' }
  | { type: 'ANSWER'; option: string }
  /** A first help, before the worked step. */
  | { type: 'NUDGE' }
  /** The worked step, please. */
  | { type: 'SHOW' }
  | { type: 'SKIP'; day?: string }
  /** Answer this step once more. */
  | { type: 'AGAIN' }
  | { type: 'LEAVE' };

export type LessonContext = {
  lesson: LessonId | null;
  level: Level;
  at: number;
  /** The step at which a first help was asked for, or null. */
  nudgedAt: number | null;
  /** One for each item, null until it is answered. */
  answers: readonly (Answer | null)[];
  progress: Progress;
};

const items = ({ lesson, level }: Pick<LessonContext, 'lesson' | 'level'>): readonly Item[] =>
  lesson === null ? [] : itemsAt(lessonOf(lesson), level);

function answered({ answers, at }: LessonContext, answer: Answer | null): Pick<LessonContext, 'answers'> {
  return { answers: answers.map((one, i) => (i === at ? answer : one)) };
}

/** Only options that the question has are answers. */
function isOption(context: LessonContext, option: string): boolean {
  const options: readonly string[] = items(context)[context.at]?.question?.options ?? [];
  return options.includes(option);
}

function mayOpen(context: LessonContext, event: LessonEvent): boolean {
  if (event.type !== 'OPEN') return false;
  return event.level !== 'memory' || mayRemember(context.progress, event.lesson, event.day ?? '');
}

/** A place of another version's lesson is no place of this one's. */
const isOf = (place: LessonPlace): boolean =>
  place.answers.length === items(place).length && place.at <= place.answers.length;

const dayOf = (event: LessonEvent): string => ('day' in event && event.day) || '';

export const lessonMachine = setup({
  types: {
    context: {} as LessonContext,
    events: {} as LessonEvent,
    input: {} as { progress: Progress; place?: LessonPlace | null },
  },
  guards: {
    mayOpen: ({ context, event }) => mayOpen(context, event),
    isOption: ({ context, event }) => event.type === 'ANSWER' && isOption(context, event.option),
    isUnderWay: ({ context }) => context.lesson !== null,
    isPast: ({ context }) => context.at >= items(context).length,
    isUnanswered: ({ context }) =>
      context.lesson !== null &&
      isAsked(lessonOf(context.lesson), context.at, context.level) &&
      context.answers[context.at] == null,
    isAnswered: ({ context }) => context.answers[context.at] != null,
  },
  actions: {
    open: assign(({ context, event }) =>
      event.type === 'OPEN'
        ? {
            lesson: event.lesson,
            level: event.level,
            at: 0,
            nudgedAt: null,
            answers: items(event).map(() => null),
          }
        : context,
    ),
    advance: assign({ at: ({ context }) => context.at + 1 }),
    retreat: assign({ at: ({ context }) => Math.max(0, context.at - 1) }),
    nudge: assign({ nudgedAt: ({ context }) => context.at }),
    answer: assign(({ context, event }) =>
      event.type === 'ANSWER' ? answered(context, { option: event.option }) : {},
    ),
    show: assign(({ context }) => answered(context, 'shown')),
    skip: assign(({ context }) => answered(context, 'skipped')),
    forget: assign(({ context }) => ({ ...answered(context, null), nudgedAt: null })),
    record: assign(({ context, event }) =>
      context.lesson === null || dayOf(event) === ''
        ? {}
        : { progress: finish(context.progress, context.lesson, context.level, dayOf(event)) },
    ),
    leave: assign({ lesson: null, at: 0, nudgedAt: null, answers: [] }),
  },
}).createMachine({
  id: 'lessons',
  context: ({ input: { progress, place } }) => ({
    lesson: null,
    level: 'show',
    at: 0,
    nudgedAt: null,
    answers: [],
    ...(place && isOf(place) ? place : {}),
    progress,
  }),
  initial: 'opening',
  on: {
    OPEN: { guard: 'mayOpen', target: '.doing', actions: 'open' },
    LEAVE: { target: '.choosing', actions: 'leave' },
  },
  states: {
    opening: { always: [{ guard: 'isUnderWay', target: 'doing' }, { target: 'choosing' }] },
    choosing: {},
    doing: {
      initial: 'placing',
      states: {
        placing: {
          always: [
            { guard: 'isPast', target: '#lessons.finished', actions: 'record' },
            { guard: 'isUnanswered', target: 'asking' },
            { guard: 'isAnswered', target: 'told' },
            { target: 'showing' },
          ],
        },
        showing: {
          on: {
            NEXT: { target: 'placing', actions: 'advance' },
            BACK: { target: 'placing', actions: 'retreat' },
          },
        },
        asking: {
          on: {
            ANSWER: { guard: 'isOption', target: 'told', actions: 'answer' },
            NUDGE: { actions: 'nudge' },
            SHOW: { target: 'told', actions: 'show' },
            SKIP: { target: 'placing', actions: ['skip', 'advance'] },
            BACK: { target: 'placing', actions: 'retreat' },
          },
        },
        told: {
          on: {
            NEXT: { target: 'placing', actions: 'advance' },
            BACK: { target: 'placing', actions: 'retreat' },
            AGAIN: { target: 'placing', actions: 'forget' },
          },
        },
      },
    },
    finished: {
      on: { BACK: { target: 'doing', actions: 'retreat' } },
    },
  },
});
