import { describe, expect, test } from 'vitest';
import {
  type ActKind,
  actKinds,
  actOf,
  actRounds,
  type Choices,
  checkActs,
  countRound,
  type EdgeInput,
  kindsIn,
  type Mishap,
  type Plan,
  pair,
  planBack,
  type Result,
  type Round,
  readEdge,
  roundsOf,
  stepOfAct,
  steps,
  type When,
  type Worked,
  whyNot,
  work,
} from '../../core/index.ts';
import {
  countFor,
  type Draft,
  emptyDraft,
  fitted,
  placesFor,
  readDraft,
} from '../../src/walk/mishaps/draft.ts';
import { questionsBefore } from '../../src/walk/mishaps/questions.ts';
import { sayProblem } from '../../src/words/catalogue.ts';
import { speakerOf } from '../../src/words/speaker.ts';
import { wordsOnlyIn } from '../../src/words/terms.ts';
import type { Speech } from '../../src/words/words.ts';
import { mishapStory, sayMishapPlace, sayWhyNot } from '../../src/words/wrong/mishaps.ts';

const given = <T>(result: Result<T>): T => {
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
};

const chains = { made: 'chain', size: 2 } as const;

function planOf(sides: number[], choices: Choices = {}, corner: EdgeInput['corner'] = chains): Plan {
  return given(planBack(given(readEdge({ sides, corner, counted: 'stitches-only' })), choices));
}

const round = (stitches: number, increase = 6): Plan =>
  planOf(
    [stitches],
    { edgings: [{ arm: 0, corner: [], increase }] as unknown as NonNullable<Choices['edgings']> },
    [],
  );

/** Each panel has something that another lacks. */
const PANELS: [name: string, plan: Plan][] = [
  ['a rectangle with chain corners', planOf([62, 38, 62, 38])],
  ['four sides that all differ', planOf([48, 31, 45, 34])],
  ['one stitch in each corner', planOf([30, 30, 30, 30], {}, { made: 'stitch', size: 1 })],
  ['corners of nothing', planOf([21, 22, 23], {}, { made: 'chain', size: 0 })],
  [
    'two edging rounds',
    planOf([40, 30, 40, 30], {
      edgings: [
        { arm: 1, corner: chains },
        { arm: [2, 1], corner: chains },
      ],
    }),
  ],
  ['an edging that does not grow', planOf([40, 30, 40, 30], { edgings: [{ arm: 0, corner: chains }] })],
  [
    'closings that add nothing',
    planOf([40, 30, 40, 30], { foundationClosing: { adds: 0 }, edgingClosing: { adds: 0 } }),
  ],
  ['starting chains that count', planOf([40, 30, 40, 30], { foundationStart: { counts: 1 } })],
  ['two sides', planOf([30, 20])],
  ['one side with a corner', planOf([30])],
  ['a round panel', round(60)],
  ['a round panel that does not grow', round(60, 0)],
];

const whensOf = (plan: Plan): When[] =>
  actRounds.flatMap((name): When[] =>
    name === 'edging'
      ? plan.edgings.map((_, edging) => ({ round: name, edging }))
      : [{ round: name, edging: 0 }],
  );

const usual = (kind: ActKind, when: When, plan: Plan): Mishap => {
  const read = readDraft(fitted({ ...emptyDraft, kind, when }, plan), plan);
  if (!read.ok) throw new Error(`${kind}: ${JSON.stringify(read.problems)}`);
  return read.mishap;
};

/** All that a hand leaves behind: counts, corners, the twist, and what the join makes of it. */
const traces = (plan: Plan, worked: Worked, acts: readonly Mishap[] = []): unknown => {
  const { foundation, edgings, join } = worked;
  const joined = pair(plan.edge, edgings.at(-1)!, { start: join, manner: 'stitch-by-stitch' });
  return [
    [foundation, ...edgings].map((one) => [countRound(one), one.twisted, looksOtherwise(one.marks, acts)]),
    [joined.runs, joined.verdict],
  ];
};

/** A round worked in other loops has every count it should: it is seen, from its first stitch on. */
const looksOtherwise = (marks: Round['marks'], acts: readonly Mishap[]): number[] =>
  marks.flatMap(({ node, mishap }) => (/-loops$/.test(acts[mishap]?.kind ?? '') ? [node] : []));

function makingOf(plan: Plan, mishaps: Mishap[]) {
  const worked = work(plan, mishaps);
  const pairing = pair(plan.edge, worked.edgings.at(-1)!, { start: worked.join, manner: 'corner-to-corner' });
  return { plan, acts: mishaps, worked, pairing, steps: steps(plan, mishaps) };
}

describe('the kinds', () => {
  test('are those of core, each at every time at which it can happen', () => {
    const offered = actRounds.flatMap((name) => kindsIn(name).map((kind) => `${kind} ${name}`));
    const known = actKinds.flatMap((kind) => roundsOf(kind).map((name) => `${kind} ${name}`));
    expect(offered.sort()).toEqual(known.sort());
    expect(new Set(actRounds.flatMap(kindsIn)).size).toBe(28);
  });

  test.each(PANELS)('on %s: what is offered leaves a trace, what is not could leave none', (_name, plan) => {
    const planned = traces(plan, work(plan));
    const symmetric = plan.faces.every((front, j) => {
      const other = (2 * (plan.faces[0] ?? 0) - front + plan.faces.length) % plan.faces.length;
      return plan.edge.sides[front] === plan.edge.sides[other] && j >= 0;
    });
    for (const when of whensOf(plan))
      for (const kind of kindsIn(when.round)) {
        const why = whyNot(kind, when, plan);
        const mishap: Mishap = why === null ? usual(kind, when, plan) : forced(kind, when);
        const isTaken = checkActs([mishap], plan).length === 0;
        const worked = work(plan, [mishap]);
        const about = `${kind} ${when.round} ${when.edging} ${why}`;
        if (why !== null) {
          expect(sayWhyNot(why), about).toMatch(/^Your|^Two/);
          if (isTaken) expect(traces(plan, worked, [mishap]), about).toEqual(planned);
          continue;
        }
        expect(isTaken, about).toBe(true);
        // Where both orders have the same sides nobody can tell which was worked.
        if (kind === 'order-not-mirrored' && symmetric) continue;
        expect(traces(plan, worked, [mishap]), about).not.toEqual(planned);
      }
  });
});

/** A mishap that is not offered, as a hand might try it all the same. */
const forced = (kind: ActKind, { round: name, edging }: When): Mishap => {
  const parts = { side: 0, place: 3, corner: 0, count: 1, end: 'before', then: 'from-corner' } as const;
  return actOf(kind, { round: name, edging, ...parts });
};

describe('the words', () => {
  const uk: Speech = { dialect: 'uk', hand: 'right', units: 'cm' };
  const us: Speech = { ...uk, dialect: 'us' };
  const said = (speech: Speech): string[] =>
    PANELS.flatMap(([, plan]) =>
      whensOf(plan).flatMap((when) =>
        kindsIn(when.round).flatMap((kind) => {
          const { title, story } = mishapStory(kind, when.round, plan, speech);
          const place =
            whyNot(kind, when, plan) === null ? [sayMishapPlace(usual(kind, when, plan), plan, speech)] : [];
          return [title, story, ...place];
        }),
      ),
    );

  test.each([
    ['uk', uk],
    ['us', us],
  ] as const)('in %s terms have no word of the other', (dialect, speech) => {
    const foreign = wordsOnlyIn(dialect === 'uk' ? 'us' : 'uk');
    for (const sentence of new Set(said(speech)))
      for (const word of foreign)
        expect(sentence.toLowerCase(), `${word} in: ${sentence}`).not.toMatch(
          new RegExp(`\\b${word.toLowerCase()}\\b`),
        );
  });

  test('are short and calm, with something in each', () => {
    for (const sentence of new Set(said(uk))) {
      expect(sentence).toMatch(/\S/);
      expect(sentence).not.toMatch(/!|undefined|NaN|please|sorry|invalid|error/i);
      expect(sentence.split(' ').length, sentence).toBeLessThanOrEqual(18);
    }
    for (const [, plan] of PANELS)
      for (const name of actRounds)
        for (const kind of kindsIn(name)) expect(mishapStory(kind, name, plan, uk).story).toMatch(/\.$/);
  });

  test('tell the place from 1, with what was chosen', () => {
    const plan = planOf([48, 31, 45, 34]);
    expect(sayMishapPlace({ kind: 'stitch-missed', round: 'edging', side: 2, place: 11 }, plan, uk)).toBe(
      'Edging · back side 3 · stitch 12',
    );
    expect(
      sayMishapPlace({ kind: 'stitch-missed', round: 'edging', side: 2, place: 11, count: 2 }, plan, us),
    ).toBe('Edging · back side 3 · stitch 12 · 2 skipped');
    expect(
      sayMishapPlace(
        { kind: 'corner-moved', round: 'foundation', corner: 1, count: -2, then: 'from-total' },
        plan,
        uk,
      ),
    ).toBe('Foundation · corner 2 · 2 stitches early · the total kept');
    expect(sayMishapPlace({ kind: 'join-wrong-side', round: 'join', count: 1 }, plan, uk)).toBe(
      'Join · 1 side on',
    );
    expect(sayMishapPlace({ kind: 'arms-forgotten', round: 'plan' }, plan, uk)).toBe('While planning');
  });
});

describe('a draft', () => {
  const plan = planOf([48, 31, 45, 34]);
  const draft = (part: Partial<Draft>): Draft => fitted({ ...emptyDraft, ...part }, plan);

  test('keeps to what is there when the panel has become smaller', () => {
    const small = planOf([30, 20]);
    expect(
      fitted({ ...emptyDraft, side: 3, corner: 3, when: { round: 'edging', edging: 5 } }, small),
    ).toMatchObject({
      side: 1,
      corner: 1,
      when: { edging: 0 },
    });
  });

  test('on an edging leaves the stitches in the corners to their own mishap', () => {
    // 31 stitches face back side 3; the edging works one into the corner at either end.
    expect(plan.edgings[0]?.sides[3]).toBe(31);
    expect(placesFor(draft({ kind: 'stitch-missed', side: 3 }), plan)).toEqual({
      least: 2,
      most: 30,
      usual: 16,
    });
    expect(
      placesFor(draft({ kind: 'stitch-missed', side: 3, when: { round: 'foundation', edging: 0 } }), plan),
    ).toEqual({
      least: 1,
      most: 29,
      usual: 15,
    });
  });

  test.each([
    ['2', null],
    ['30', null],
    [' 12 ', null],
    ['1', 'Stitch of the side must be between 2 and 30'],
    ['31', 'Stitch of the side must be between 2 and 30'],
    ['', 'Enter stitch of the side'],
    ['abc', 'Stitch of the side must be a number, like 16'],
    ['4.5', 'Stitch of the side must be a whole number, like 16'],
  ])('of the stitch %j is told %j', (place, says) => {
    const read = readDraft(draft({ kind: 'stitch-missed', side: 3, place }), plan);
    const [problem] = read.ok ? [] : read.problems;
    expect(problem ? sayProblem(problem, speakerOf({ dialect: 'uk' }), 'stitch of the side') : null).toBe(
      says,
    );
    if (read.ok) expect(read.mishap.place).toBe(Number(place) - 1);
  });

  test('early is below zero, late above', () => {
    const moved = (late: boolean) => readDraft(draft({ kind: 'corner-moved', count: '3', late }), plan);
    expect(moved(true)).toMatchObject({ ok: true, mishap: { count: 3 } });
    expect(moved(false)).toMatchObject({ ok: true, mishap: { count: -3 } });
  });

  test('a corner moves no further than the next one', () => {
    const { foundation } = plan;
    const most = (corner: number, late: boolean) =>
      countFor(draft({ kind: 'corner-moved', corner, late }), plan)?.most;
    expect(most(0, false)).toBe(foundation.lead);
    expect(most(3, true)).toBe(foundation.tail);
    expect(most(0, true)).toBe(foundation.sides[1]);
    expect(most(2, false)).toBe(foundation.sides[2]);
  });

  test('what the recipe asks for is no mishap', () => {
    const read = readDraft(draft({ kind: 'corner-chains', count: '2' }), plan);
    expect(read).toMatchObject({ ok: false, problems: [{ at: 'mishap.count', code: 'as-planned' }] });
    expect(readDraft(draft({ kind: 'corner-chains', count: '3' }), plan)).toMatchObject({ ok: true });
  });

  test('knows no arm that the edging does not work', () => {
    const uneven = planOf([40, 30, 40, 30], { edgings: [{ arm: [0, 1], corner: chains }] });
    expect(fitted({ ...emptyDraft, kind: 'arm-missed', end: 'before' }, uneven).end).toBe('after');
  });
});

describe('where it happens', () => {
  test.each(PANELS)('on %s every mishap that is offered has a step', (_name, plan) => {
    for (const when of whensOf(plan))
      for (const kind of kindsIn(when.round)) {
        if (whyNot(kind, when, plan) !== null) continue;
        const making = makingOf(plan, [usual(kind, when, plan)]);
        const at = stepOfAct(making, making.acts, 0);
        expect(at, `${kind} ${when.round} ${when.edging}`).toBeGreaterThanOrEqual(0);
        const step = making.steps.at(at);
        // A stitch done otherwise carries the mark; an act that is no stitch stands in its own stage.
        if (step.mishap === undefined && when.round !== 'plan')
          expect(step.stage, kind).toContain(when.round);
        if (when.round === 'edging') expect(step.edging, kind).toBe(when.edging);
      }
  });

  test('a stitch missed on the edging is shown at the stitch after it, on that side', () => {
    const plan = planOf([62, 38, 62, 38]);
    const making = makingOf(plan, [
      { kind: 'stitch-missed', round: 'edging', edging: 0, side: 1, place: 19 },
    ]);
    const step = making.steps.at(stepOfAct(making, making.acts, 0));
    expect(step).toMatchObject({ stage: 'edging', side: 1, place: 19, mishap: 0 });
  });

  test('of two mishaps each has its own step', () => {
    const plan = planOf([62, 38, 62, 38]);
    const making = makingOf(plan, [
      { kind: 'stitch-missed', round: 'edging', edging: 0, side: 1, place: 19 },
      { kind: 'stitch-doubled', round: 'foundation', side: 2, place: 5 },
    ]);
    expect(making.steps.at(stepOfAct(making, making.acts, 1))).toMatchObject({
      stage: 'foundation',
      side: 2,
      mishap: 1,
    });
    expect(making.steps.at(stepOfAct(making, making.acts, 0))).toMatchObject({
      stage: 'edging',
      side: 1,
      mishap: 0,
    });
    expect(stepOfAct(making, making.acts, 2)).toBe(-1);
  });

  test('the open questions on the way are named, and no others', () => {
    const plan = planOf([62, 38, 62, 38]);
    const making = { ...makingOf(plan, []), seen: {}, edge: plan.edge };
    const asked = (place: number, to: number, answered: ('twist' | 'pad')[] = []) =>
      questionsBefore({ making, place, answered }, to).map(({ asks }) => asks);
    const last = making.steps.length - 1;
    expect(asked(0, last)).toEqual(['twist', 'pad']);
    expect(asked(0, last, ['twist'])).toEqual(['pad']);
    expect(asked(0, 3)).toEqual([]);
    expect(asked(last, 0)).toEqual([]);
    for (const { at, asks } of questionsBefore({ making, place: 0, answered: [] }, last))
      expect(making.steps.at(at).asks).toBe(asks);
  });
});
