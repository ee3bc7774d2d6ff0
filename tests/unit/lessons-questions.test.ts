import { describe, expect, test } from 'vitest';
import { countRound, type Step, work } from '../../core/index.ts';
import { CHOICE_IDS, CHOICES, type ChoiceId, type Option } from '../../src/lessons/choices.ts';
import { sayNudge } from '../../src/lessons/leads.ts';
import {
  type Item,
  isAsked,
  LESSON_IDS,
  type LEVELS,
  type LessonId,
  lessonOf,
} from '../../src/lessons/lesson.ts';
import { TAP_SHARE } from '../../src/lessons/picture.ts';
import { isRight, type Question } from '../../src/lessons/questions.ts';
import { sayFeedback, sayLesson, sayMishap, sayOption, sayQuestion, sayWhy } from '../../src/lessons/say.ts';
import { askedScene } from '../../src/lessons/scenes.ts';
import { type TermForm, type TermId, term, wordsOnlyIn } from '../../src/words/terms.ts';
import type { Speech } from '../../src/words/words.ts';

const uk: Speech = { dialect: 'uk', hand: 'right', units: 'cm' };
const us: Speech = { dialect: 'us', hand: 'left', units: 'inch' };

const asked = (id: LessonId): (Item & { question: Question })[] =>
  lessonOf(id).items.filter((item): item is Item & { question: Question } => item.question !== null);

const all = LESSON_IDS.flatMap((id) =>
  asked(id).map((item): [string, Item & { question: Question }] => [
    `${id}, step ${item.step.index}, ${item.question.kind}`,
    item,
  ]),
);

/** What the hook takes, as the step's own target says it; an oracle beside the questions' own reading. */
const LOOPS: Partial<Record<string, Step['target']['loop']>> = {
  'first-chain': 'first-chain',
  'base-chain': 'base-chain',
  'back-loop': 'back-loop',
  'hidden-stitch': 'back-loop',
  'first-corner-chain': 'corner-chain',
  'second-corner-chain': 'corner-chain',
  'inner-loops': 'inner-loops',
  loop: 'none',
};

describe('each lesson', () => {
  test.each<[LessonId, number]>([
    ['whole', 5],
    ['counting', 3],
    ['foundation', 5],
    ['closing', 5],
    ['edging', 6],
    ['mirrored', 4],
    ['cloth', 4],
    ['joining', 8],
    ['miscounts', 5],
  ])('%s asks at least %i things, and its steps follow the making', (id, least) => {
    expect(asked(id).length).toBeGreaterThanOrEqual(least);
    expect(lessonOf(id)).toBe(lessonOf(id));
    for (const { step, making } of lessonOf(id).items) expect(making.steps.at(step.index)).toEqual(step);
  });

  test.each(LESSON_IDS)('%s: nothing is asked at first, then the last half, then all', (id) => {
    const lesson = lessonOf(id);
    const count = (level: (typeof LEVELS)[number]): number =>
      lesson.items.filter((_, i) => isAsked(lesson, i, level)).length;
    const total = asked(id).length;
    expect([count('show'), count('last-hidden'), count('all-hidden'), count('memory')]).toEqual([
      0,
      Math.ceil(total / 2),
      total,
      total,
    ]);
    const hidden = lesson.items.map((_, i) => isAsked(lesson, i, 'last-hidden'));
    const askable = lesson.items.map((_, i) => isAsked(lesson, i, 'all-hidden'));
    const last = askable.lastIndexOf(true);
    expect(hidden[last]).toBe(true);
  });
});

describe.each(all)('%s', (_, item) => {
  const { question, step, making } = item;

  test('has a right answer among its options, and a wrong one', () => {
    const right = question.options.filter((option) => isRight(question, option));
    expect([...right].sort()).toEqual([...question.right].sort());
    expect(right.length).toBeGreaterThan(0);
    expect(right.length).toBeLessThan(question.options.length);
    expect(new Set(question.options).size).toBe(question.options.length);
  });

  test('is right about the piece', () => {
    const worked = work(making.plan, making.acts);
    const { foundation, edgings } = worked;
    const back = edgings.at(-1);
    if (back === undefined) throw new Error('edging');
    if (question.kind === 'count') expect(question.right).toEqual([`${countOf(foundation)[0]}`]);
    if (question.kind === 'faces') {
      const k = making.plan.faces.length;
      expect(question.right).toEqual([`${((making.plan.choices.start.side - question.side + k) % k) + 1}`]);
    }
    if (question.kind === 'gap') {
      const { faces, edge } = making.plan;
      const differing = countOf(back).flatMap((count, j) =>
        count === edge.sides[faces[j] ?? 0] ? [] : [`${j + 1}`],
      );
      expect(question.right).toEqual(differing.length === 0 ? ['none'] : differing);
    }
    if (question.kind === 'place' && question.about !== 'needle' && question.about !== 'corner-pair')
      expect(LOOPS[question.right[0] ?? '']).toBe(step.target.loop);
    if (question.kind === 'place' && question.about === 'needle')
      expect(question.right).toEqual([
        making.plan.choices.foundationClosing.adds === 1 ? 'first-stitch' : 'second-stitch',
      ]);
    // With two chains in every corner and equal sides, chain 1 meets chain 1 and chain 2 meets chain 2.
    if (question.kind === 'place' && question.about === 'corner-pair')
      expect(question.right).toEqual([['first-place', 'second-place'][step.place]]);
  });

  test('is told at once: the place expected, the one chosen, and why', () => {
    for (const option of question.options) {
      const told = sayFeedback(item, option, uk);
      expect(told?.right).toBe(isRight(question, option));
      expect(told?.why).toMatch(/^[A-Z0-9].*\.$/);
      const expected = sayOption(question, question.right[0] ?? '', uk);
      expect(told?.body.toLowerCase()).toContain(expected.toLowerCase());
      if (told?.right === false)
        expect(told.body.toLowerCase()).toContain(sayOption(question, option, uk).toLowerCase());
    }
  });

  test('in US terms there is no UK word, and the other way round', () => {
    for (const [speech, other] of [
      [uk, 'us'],
      [us, 'uk'],
    ] as const) {
      const said = [
        sayQuestion(item, speech),
        sayWhy(item, speech),
        ...question.options.flatMap((option) => [
          sayOption(question, option, speech),
          sayFeedback(item, option, speech)?.body ?? '',
        ]),
        question.kind === 'gap' ? sayMishap(question.mishap, making.plan, speech) : '',
      ].join(' ');
      for (const word of wordsOnlyIn(other)) expect(said).not.toMatch(new RegExp(`\\b${word}\\b`, 'i'));
    }
  });

  test('places to tap lie in the picture, apart from each other, and mirrored for the left hand', () => {
    const { spots, frame, scene } = askedScene(item, uk);
    const radius = frame.width / TAP_SHARE;
    for (const {
      option,
      centre: [x, y],
    } of spots) {
      expect(question.options).toContain(option);
      expect(x).toBeGreaterThan(frame.x);
      expect(x).toBeLessThan(frame.x + frame.width);
      expect(y).toBeGreaterThan(frame.y);
      expect(y).toBeLessThan(frame.y + frame.height);
    }
    spots.forEach((one, i) => {
      for (const other of spots.slice(i + 1)) {
        const apart = Math.hypot(one.centre[0] - other.centre[0], one.centre[1] - other.centre[1]);
        expect(apart, `${one.option} and ${other.option}`).toBeGreaterThanOrEqual(2 * radius);
      }
    });
    const left = askedScene(item, { ...uk, hand: 'left' });
    expect(left.spots.map(({ centre }) => centre)).toEqual(spots.map(({ centre: [x, y] }) => [400 - x, y]));
    if (scene.length > 0) expect(left.scene).not.toEqual(scene);
  });

  test('the question never shows the place it asks for', () => {
    const { scene } = askedScene(item, uk);
    if (question.kind !== 'place') return;
    expect(
      scene.filter((one) => (one.what === 'strand' && one.marked === true) || one.what === 'place'),
    ).toEqual([]);
  });
});

function countOf(round: Parameters<typeof countRound>[0]): number[] {
  const counted: unknown = countRound(round);
  const value = (counted as { value?: { sides: number[] } }).value ?? (counted as { sides: number[] });
  return value.sides;
}

/** What is right, from the trade: published where marked, else common practice, no source. */
const TRADE: Record<ChoiceId, RegExp> = {
  'before-all': /counts of the front/,
  'first-on-back': /ring of foundation trebles/,
  'edging-is-for': /meet the front/,
  'joined-by': /slip stitches/,
  'pad-when': /before the last side/i,
  // The first stitch of a side, tucked under the corner, is the one most often missed (read, two tutorials).
  'side-begins': /tucked under the corner/,
  // Counted with one corner of two chains: 14 less 2 (read: patterns that print counts leave the chains out).
  'chains-apart': /^12 stitches/,
  markers: /^12 stitches/,
  // First row flat, check, then close (read, public reports).
  twist: /turn 1 end over/i,
  'edging-covers': /place where the yarn was attached/,
  'raw-edge': /base chains/,
  // Ends first, then the exact middle, then halves (read, five sources).
  'pin-first': /middle of each side/,
  'way-back': /fills the gaps/,
  // Count pins in and out: usual for the trade (read).
  'before-turning': /pins out, and counted/,
  'loop-rests': /a hand long/,
  'open-pair': /where the yarn was attached/,
  // Through the second stitch a needle-made join makes none of its own (read, three tutorials).
  'join-ends': /second/,
};

test.each(CHOICE_IDS)(
  '%s: what is right comes from the trade, and every wrong answer says where it leads',
  (id) => {
    const { options, right } = CHOICES[id];
    const t = (name: TermId, form?: TermForm) => term(name, 'uk', form);
    expect(options[right as keyof typeof options]).toBeDefined();
    for (const [option, { says, leads }] of Object.entries(options) as [string, Option][]) {
      expect(TRADE[id].test(says(t)), option).toBe(option === right);
      expect(leads !== undefined, `${option} leads somewhere`).toBe(option !== right);
    }
  },
);

test('every question in words is asked in some lesson', () => {
  const met = new Set(
    all.flatMap(([, { question }]) => (question.kind === 'choice' ? [question.about] : [])),
  );
  expect([...met].sort()).toEqual([...CHOICE_IDS].sort());
});

test('a first help never says the answer', () => {
  for (const [name, item] of all) {
    const nudge = sayNudge(item, uk);
    expect(nudge, name).toMatch(/^[A-Z0-9].*[.?]$/);
    for (const option of item.question.right)
      expect(nudge.toLowerCase(), name).not.toContain(sayOption(item.question, option, uk).toLowerCase());
  }
});

test('a wrong place says what it would have led to', () => {
  for (const [name, item] of all) {
    if (item.question.kind !== 'place') continue;
    for (const option of item.question.options)
      expect(sayFeedback(item, option, uk)?.leads !== '', `${name}: ${option}`).toBe(
        !isRight(item.question, option),
      );
  }
});

test('the right answer has no place of its own in the list', () => {
  for (const id of ['foundation', 'joining', 'edging'] as const) {
    const places = asked(id).map(({ question }) =>
      (question.options as readonly string[]).indexOf(question.right[0] ?? ''),
    );
    expect(new Set(places).size, id).toBeGreaterThan(1);
  }
});

test.each(LESSON_IDS)('%s has a title and one sentence in both terms', (id) => {
  for (const speech of [uk, us]) {
    const { title, about } = sayLesson(id, speech);
    expect(title).toMatch(/^[A-Z].*[a-z]$/);
    expect(about).toMatch(/^[A-Z0-9].*[.?]$/);
  }
});
