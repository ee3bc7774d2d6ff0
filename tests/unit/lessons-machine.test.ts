import { describe, expect, test } from 'vitest';
import { createActor, type SnapshotFrom } from 'xstate';
import { getShortestPaths } from 'xstate/graph';
import { readLessonPlace, readProgress, readProgressText } from '../../src/input/lesson-progress.ts';
import { sayScore } from '../../src/lessons/finished.ts';
import {
  type Item,
  LESSON_IDS,
  LEVELS,
  type LessonId,
  type Level,
  lessonOf,
} from '../../src/lessons/lesson.ts';
import { createLessons, stageOf } from '../../src/lessons/lessons.ts';
import { type LessonEvent, lessonMachine } from '../../src/lessons/machine.ts';
import { lessonsPanel } from '../../src/lessons/panel.ts';
import { finish, mayRemember, together } from '../../src/lessons/progress.ts';
import { isRight } from '../../src/lessons/questions.ts';
import type { Progress } from '../../src/state/lesson-progress.ts';
import type { Motion } from '../../src/stitch/stitch.ts';
import { wordsOnlyIn } from '../../src/words/terms.ts';
import { sayStep } from '../../src/words/walk/step.ts';
import type { Speech } from '../../src/words/words.ts';

type Shot = SnapshotFrom<typeof lessonMachine>;

const DAY = '2031-05-04';
const still: Motion = { frame: () => () => {}, reduced: () => true };
const uk: Speech = { dialect: 'uk', hand: 'right', units: 'cm' };

const input = (progress: Progress = {}) => ({ input: { progress } });

const key = (shot: Shot): string => {
  const { lesson, level, at, answers, progress } = shot.context;
  const answer = answers[at];
  const told = answer == null ? '-' : typeof answer === 'string' ? answer : 'option';
  return [stageOf(shot.value), lesson, level, at, told, Object.keys(progress).length].join(' ');
};

/** Every event that a lesson can be given, with both a known and an unknown option. */
const eventsFor = (lesson: LessonId, level: Level): LessonEvent[] => {
  const option = lessonOf(lesson).items.find(({ question }) => question !== null)?.question?.options[0] ?? '';
  return [
    { type: 'OPEN', lesson, level, day: DAY },
    { type: 'NEXT', day: DAY },
    { type: 'BACK' },
    { type: 'ANSWER', option },
    { type: 'ANSWER', option: 'nowhere' },
    { type: 'NUDGE' },
    { type: 'SHOW' },
    { type: 'SKIP', day: DAY },
    { type: 'AGAIN' },
    { type: 'LEAVE' },
  ];
};

/** What must hold in every state. */
function holds(shot: Shot): void {
  const { lesson, at, answers } = shot.context;
  const stage = stageOf(shot.value);
  if (stage === 'choosing') {
    expect([lesson, at, answers.length]).toEqual([null, 0, 0]);
    return;
  }
  const { items } = lessonOf(lesson as LessonId);
  expect(answers.length).toBe(items.length);
  if (stage === 'finished') expect(at).toBe(items.length);
  else expect(at).toBeLessThan(items.length);
  if (stage === 'asking') expect([answers[at], items[at]?.question === null]).toEqual([null, false]);
  if (stage === 'told') expect(answers[at]).not.toBeNull();
}

/** A lesson that was left is gone on with where it stood. */
function goesOn(shot: Shot): void {
  const { lesson, level, at, answers, progress } = shot.context;
  const kept = readLessonPlace(JSON.stringify({ lesson, level, at, answers }));
  const again = createActor(lessonMachine, { input: { progress, place: kept } }).start();
  expect(key(again.getSnapshot())).toBe(
    lesson === null ? key(createActor(lessonMachine, input(progress)).start().getSnapshot()) : key(shot),
  );
}

describe.each([
  ['mirrored', 'all-hidden'],
  ['closing', 'last-hidden'],
  ['foundation', 'show'],
] as [LessonId, Level][])('%s at level %s', (lesson, level) => {
  test('every state is reached, and every event in every state is answered', () => {
    const events = eventsFor(lesson, level);
    const paths = getShortestPaths(lessonMachine, { ...input(), events, serializeState: key, limit: 5000 });
    const taken = new Set<string>();
    for (const { steps } of paths) {
      const sent = steps
        .map(({ event }) => event as LessonEvent)
        .filter(({ type }) => !type.startsWith('xstate.'));
      for (const event of events) {
        const actor = createActor(lessonMachine, input()).start();
        for (const earlier of sent) actor.send(earlier);
        const here = stageOf(actor.getSnapshot().value);
        holds(actor.getSnapshot());
        actor.send(event);
        holds(actor.getSnapshot());
        goesOn(actor.getSnapshot());
        taken.add(`${here} ${event.type} ${stageOf(actor.getSnapshot().value)}`);
      }
    }
    const always = ['choosing OPEN', 'finished LEAVE choosing', 'finished BACK'];
    const asking = [
      'asking ANSWER told',
      'asking ANSWER asking',
      'asking NUDGE asking',
      'asking SHOW told',
      'asking SKIP',
      'told AGAIN asking',
      'told NEXT',
    ];
    for (const wanted of level === 'show'
      ? ['showing NEXT showing', 'showing NEXT finished', ...always]
      : [...asking, ...always])
      expect(
        [...taken].some((one) => one.startsWith(wanted)),
        wanted,
      ).toBe(true);
    if (level === 'show') expect([...taken].some((one) => one.startsWith('asking'))).toBe(false);
  }, 60_000);
});

test.each([
  null,
  '',
  '{',
  '{"lesson":"knitting","level":"show","at":0,"answers":[]}',
  '{"lesson":"closing","level":"show","at":0,"answers":[null]}',
  '{"lesson":"closing","level":"show","at":99,"answers":[]}',
  '{"lesson":"closing","level":"show","at":-1,"answers":[]}',
  '{"lesson":"closing","level":"show","at":0,"answers":"all"}',
])('a place kept as %j is no place to go on from', (text) => {
  const actor = createActor(lessonMachine, { input: { progress: {}, place: readLessonPlace(text) } }).start();
  expect(stageOf(actor.getSnapshot().value)).toBe('choosing');
});

describe('a lesson', () => {
  const open = (lesson: LessonId, level: Level, progress: Progress = {}) => {
    const lessons = createLessons({ today: () => DAY, onChange: () => {}, motion: still, progress });
    lessons.send({ type: 'OPEN', lesson, level });
    return lessons;
  };

  test.each(LESSON_IDS)('%s can be walked through by skipping, and is then finished on that day', (id) => {
    const lessons = open(id, 'all-hidden');
    for (let i = 0; i < lessonOf(id).items.length; i++) {
      const { stage } = lessons.view(uk);
      lessons.send({ type: stage === 'asking' ? 'SKIP' : 'NEXT' });
    }
    expect(lessons.view(uk).stage).toBe('finished');
    expect(lessons.progress()).toEqual({ [id]: { levels: ['all-hidden'], lastDay: DAY } });
  });

  test.each(LESSON_IDS)(
    '%s is watched to its end, and done whole with every answer right or put right',
    (id) => {
      const { items } = lessonOf(id);
      const asked = items.filter(({ question }) => question !== null).length;
      const watched = open(id, 'show');
      for (const _ of items) watched.send({ type: 'NEXT' });
      // What is asked about twice is looked at once: no page stands twice on end.
      const looked = new Set(items.map(({ step, pair }) => pair ?? step));
      expect(sayScore(watched.view(uk), id)).toBe(`${looked.size} steps seen.`);
      for (const first of [true, false]) {
        const lessons = open(id, 'all-hidden');
        for (const { question } of items) {
          if (question !== null) {
            const answer = (right: boolean): string =>
              (question.options as readonly string[]).find((option) => isRight(question, option) === right) ??
              '';
            lessons.send({ type: 'ANSWER', option: answer(first) });
            if (!first) {
              lessons.send({ type: 'AGAIN' });
              lessons.send({ type: 'ANSWER', option: answer(true) });
            }
          }
          lessons.send({ type: 'NEXT' });
        }
        expect(sayScore(lessons.view(uk), id)).toBe(`${asked} of ${asked} right.`);
      }
    },
  );

  test('going back undoes going on, and an answer given is kept', () => {
    const lessons = open('mirrored', 'all-hidden');
    lessons.send({ type: 'ANSWER', option: '3' });
    const told = lessons.view(uk);
    lessons.send({ type: 'NEXT' });
    lessons.send({ type: 'BACK' });
    expect(lessons.view(uk)).toEqual(told);
    lessons.send({ type: 'AGAIN' });
    expect(lessons.view(uk).stage).toBe('asking');
  });

  test('an answer that is no option is not taken', () => {
    const lessons = open('mirrored', 'all-hidden');
    lessons.send({ type: 'ANSWER', option: '99' });
    expect([lessons.view(uk).stage, lessons.view(uk).answer]).toEqual(['asking', null]);
  });

  test('from memory is only opened on a later day', () => {
    const done = (lastDay: string): Progress => ({ closing: { levels: ['show'], lastDay } });
    const stage = (progress: Progress): string => open('closing', 'memory', progress).view(uk).stage;
    expect([stage({}), stage(done(DAY)), stage(done('2031-05-03'))]).toEqual([
      'choosing',
      'choosing',
      'asking',
    ]);
  });

  test('a stitch that is shown moves once, is over in less than 5 s, and rests', () => {
    let due: ((nowMs: number) => void) | null = null;
    const motion: Motion = {
      frame: (run) => {
        due = run;
        return () => {
          due = null;
        };
      },
      reduced: () => false,
    };
    const lessons = createLessons({ today: () => DAY, onChange: () => {}, motion });
    const pass = (ms: number): void => {
      const run = due;
      due = null;
      run?.(ms);
    };
    lessons.send({ type: 'OPEN', lesson: 'foundation', level: 'show' });
    lessons.send({ type: 'NEXT' });
    lessons.send({ type: 'NEXT' });
    expect([lessons.view(uk).variant?.kind, lessons.view(uk).t]).toEqual(['foundation-start', 0]);
    pass(100);
    pass(2000);
    expect(lessons.view(uk).t).toBeGreaterThan(0);
    expect(lessons.view(uk).t).toBeLessThan(1);
    pass(5100);
    expect([lessons.view(uk).t, due]).toEqual([1, null]);
  });
});

describe('what was learnt is kept', () => {
  test('finishing adds the level and the day', () => {
    const once = finish({}, 'edging', 'all-hidden', '2031-05-04');
    const twice = finish(once, 'edging', 'show', '2031-05-06');
    expect(twice).toEqual({ edging: { levels: ['show', 'all-hidden'], lastDay: '2031-05-06' } });
    expect(readProgress(JSON.parse(JSON.stringify(twice)))).toEqual(twice);
  });

  test('of two tabs is every level of both, and the later day', () => {
    const here = finish(finish({}, 'edging', 'show', '2031-05-04'), 'joining', 'show', '2031-05-04');
    const there = finish(finish({}, 'edging', 'last-hidden', '2031-05-06'), 'cloth', 'show', '2031-05-05');
    const both = {
      edging: { levels: ['show', 'last-hidden'], lastDay: '2031-05-06' },
      joining: { levels: ['show'], lastDay: '2031-05-04' },
      cloth: { levels: ['show'], lastDay: '2031-05-05' },
    };
    expect(together(here, there)).toEqual(both);
    expect(together(there, here)).toEqual(both);
    expect(together({}, here)).toEqual(here);
    expect(together(here, {})).toEqual(here);
  });

  test.each<[string, unknown, Progress]>([
    ['nothing', undefined, {}],
    ['a list', [1], {}],
    ['a text', 'edging', {}],
    ['an unknown lesson', { weaving: { levels: ['show'], lastDay: '2031-05-04' } }, {}],
    [
      'an unknown level',
      { edging: { levels: ['fly', 'show'], lastDay: '2031-05-04' } },
      { edging: { levels: ['show'], lastDay: '2031-05-04' } },
    ],
    ['no level', { edging: { levels: [], lastDay: '2031-05-04' } }, {}],
    ['a day that is none', { edging: { levels: ['show'], lastDay: 'yesterday' } }, {}],
    ['a hostile key', JSON.parse('{"__proto__":{"levels":["show"],"lastDay":"2031-05-04"}}'), {}],
  ])('%s is read without trust', (_, kept, expected) => {
    expect(readProgress(kept)).toEqual(expected);
  });

  test.each<[string | null, Progress]>([
    [null, {}],
    ['', {}],
    ['{"edging":', {}],
    [
      '{"edging":{"levels":["show"],"lastDay":"2031-05-04"}}',
      { edging: { levels: ['show'], lastDay: '2031-05-04' } },
    ],
  ])('the text %j on the device is read without trust', (text, expected) => {
    expect(readProgressText(text)).toEqual(expected);
  });

  test.each([
    ['the same day', '2031-05-04', false],
    ['the next day', '2031-05-05', true],
    ['the next year', '2032-01-01', true],
    ['an earlier day', '2031-04-30', false],
    ['no day', '', false],
  ])('%s: from memory is offered: %s %s', (_, today, offered) => {
    expect(mayRemember({ edging: { levels: ['show'], lastDay: '2031-05-04' } }, 'edging', today)).toBe(
      offered,
    );
  });
});

/** All words of a template, without its markup. */
function wordsOf(value: unknown): string {
  if (Array.isArray(value)) return value.map(wordsOf).join(' ');
  if (typeof value === 'string' || typeof value === 'number') return `${value}`;
  if (typeof value !== 'object' || value === null || !('strings' in value)) return '';
  const { strings, values } = value as { strings: string[]; values: unknown[] };
  const whole = strings.map((text, i) => `${text} ${i < values.length ? wordsOf(values[i]) : ''}`).join('');
  return whole.replace(/<[^>]*>/g, ' ').replace(/\s+/g, ' ');
}

describe('being asked', () => {
  test('is chosen: what is offered first only shows, and every question can be left out', () => {
    expect(LEVELS[0]).toBe('show');
    for (const lesson of LESSON_IDS)
      for (const level of LEVELS.slice(0, 3)) {
        const lessons = createLessons({ today: () => DAY, onChange: () => {}, motion: still });
        lessons.send({ type: 'OPEN', lesson, level });
        const asked: number[] = [];
        for (let i = 0; lessons.view(uk).stage !== 'finished' && i < 60; i++) {
          const { stage, at } = lessons.view(uk);
          if (stage === 'asking') asked.push(at);
          lessons.send({ type: stage === 'asking' ? 'SKIP' : 'NEXT' });
          // Left out is left out: nothing of it is told, and the lesson goes on.
          if (stage === 'asking' && lessons.view(uk).stage !== 'finished')
            expect(lessons.view(uk).at).toBe(at + 1);
        }
        expect(lessons.view(uk).stage).toBe('finished');
        expect(asked.length > 0, `${lesson} at ${level}`).toBe(level !== 'show');
      }
  });

  test('is no part of the walk: it asks whether the ring is flat and the pad in, and nothing else', () => {
    const { making } = lessonOf('joining').items[0] as Item;
    const asks = Array.from({ length: making.steps.length }, (_, i) => making.steps.at(i)).filter(
      (step) => sayStep(step, making, uk).ask !== undefined,
    );
    expect(asks.map(({ kind }) => kind)).toEqual(['check-twist', 'pad-in']);
  });
});

describe.each(['uk', 'us'] as const)('the panel in %s terms', (dialect) => {
  const speech: Speech = { ...uk, dialect };
  const foreign = wordsOnlyIn(dialect === 'uk' ? 'us' : 'uk');

  test('says no word of the other terms, and always offers a way on', () => {
    for (const lesson of LESSON_IDS) {
      for (const level of LEVELS.slice(0, 3)) {
        const lessons = createLessons({ today: () => DAY, onChange: () => {}, motion: still });
        const look = (): string => {
          const said = wordsOf(lessonsPanel(lessons.view(speech), lessons.send, () => {}));
          for (const word of foreign) expect(said, said).not.toMatch(new RegExp(`\\b${word}\\b`, 'i'));
          expect(said).not.toMatch(/undefined|NaN|\[object/);
          return said;
        };
        expect(look()).toContain('Practise a part');
        lessons.send({ type: 'OPEN', lesson, level });
        for (let i = 0; lessons.view(speech).stage !== 'finished' && i < 60; i++) {
          const { stage, item } = lessons.view(speech);
          const said = look();
          if (stage === 'asking') {
            expect(said).toContain('Leave it out');
            expect(said).toContain('Hint');
            lessons.send({ type: 'ANSWER', option: item?.question?.options.at(-1) ?? '' });
          } else {
            expect(said).toContain('Next');
            lessons.send({ type: 'NEXT' });
          }
        }
        expect(look()).toContain('All lessons');
      }
    }
  });
});
