/** The limits of the model, each at its last good value and one beyond; and that all problems come at once. */
import { describe, expect, it } from 'vitest';
import {
  type Choices,
  checkActs,
  checkRounds,
  type EdgeInput,
  limits,
  type Mishap,
  type Problem,
  pair,
  planBack,
  type Result,
  readEdge,
  steps,
} from '../../../core/index.ts';
import { given, planOf, twoChains, workedOf } from './making.ts';

const sidesOf = (count: number, stitches: number): number[] => new Array(count).fill(stitches);

const edge = (given: Partial<EdgeInput>): Result<unknown> =>
  readEdge({ sides: sidesOf(4, 60), corner: twoChains, counted: 'stitches-only', ...given });

const plan = (choices: Choices, sides = sidesOf(4, 60)): Result<unknown> =>
  planBack(given(readEdge({ sides, corner: twoChains, counted: 'stitches-only' })), choices);

const edgings = (count: number): Choices => ({
  edgings: new Array(count).fill({ arm: 1, corner: twoChains }),
});

const mishaps = (...list: Mishap[]): Result<unknown> => {
  const problems = checkActs(list, planOf(sidesOf(4, 60)));
  return problems.length > 0 ? { ok: false, problems } : { ok: true, value: list };
};

const roundPanel = (stitches: number, increase: number): Result<unknown> =>
  planBack(given(readEdge({ sides: [stitches], corner: [], counted: 'stitches-only' })), {
    edgings: [{ arm: 1, corner: twoChains, increase }],
  });

/** The same mishap so many times, each adding 200,000 stitches. */
const adding = (times: number): Mishap[] =>
  new Array<Mishap>(times).fill({ kind: 'stitch-doubled', side: 1, place: 0, count: 200_000 });

const problemsOf = (result: Result<unknown>): Problem[] => (result.ok ? [] : result.problems);

describe.each<[name: string, good: Result<unknown>, beyond: Result<unknown>, at: string, problem: object]>([
  [
    '1 stitch a side',
    edge({ sides: [1, 60, 60, 60] }),
    edge({ sides: [0, 60, 60, 60] }),
    'sides[0]',
    { code: 'too-low', params: { min: 1 } },
  ],
  [
    '100,000 stitches a side',
    edge({ sides: [60, 100_000, 60, 60] }),
    edge({ sides: [60, 100_001, 60, 60] }),
    'sides[1]',
    { code: 'too-high', params: { max: 100_000 } },
  ],
  [
    '100,004 counted with both corners',
    edge({ sides: [60, 100_004, 60, 60], counted: 'both-corners' }),
    edge({ sides: [60, 100_005, 60, 60], counted: 'both-corners' }),
    'sides[1]',
    { code: 'too-high', params: { max: 100_004 } },
  ],
  [
    '1 side',
    edge({ sides: [60] }),
    edge({ sides: [] }),
    'sides',
    { code: 'between', params: { min: 1, max: 24 } },
  ],
  [
    '24 sides',
    edge({ sides: sidesOf(24, 60) }),
    edge({ sides: sidesOf(25, 60) }),
    'sides',
    { code: 'between', params: { min: 1, max: 24 } },
  ],
  [
    'corners of 0',
    edge({ corner: { made: 'chain', size: 0 } }),
    edge({ corner: { made: 'chain', size: -1 } }),
    'corner.size',
    { code: 'too-low', params: { min: 0 } },
  ],
  [
    'corners of 9',
    edge({ corner: { made: 'stitch', size: 9 } }),
    edge({ corner: { made: 'stitch', size: 10 } }),
    'corner.size',
    { code: 'too-high', params: { max: 9 } },
  ],
  [
    'no corners with 1 side',
    edge({ sides: [60], corner: [] }),
    edge({ sides: [60, 60], corner: [] }),
    'corner',
    { code: 'no-corners', params: {} },
  ],
  [
    'one corner a side',
    edge({ corner: new Array(4).fill(twoChains) }),
    edge({ corner: new Array(3).fill(twoChains) }),
    'corner',
    { code: 'corner-count', params: { corners: 4 } },
  ],
  [
    '1 edging round',
    plan(edgings(1)),
    plan(edgings(0)),
    'choices.edgings',
    { code: 'between', params: { min: 1, max: 12 } },
  ],
  [
    '12 edging rounds',
    plan(edgings(12)),
    plan(edgings(13)),
    'choices.edgings',
    { code: 'between', params: { min: 1, max: 12 } },
  ],
  [
    'an arm of 9',
    plan({ edgings: [{ arm: 9, corner: twoChains }] }),
    plan({ edgings: [{ arm: [0, 10], corner: twoChains }] }),
    'choices.edgings[0].arm',
    { code: 'too-high', params: { max: 9 } },
  ],
  [
    'room for the foundation',
    plan(edgings(1), [3, 60, 60, 60]),
    plan(edgings(1), [2, 60, 60, 60]),
    'edge.sides[0]',
    {
      code: 'no-foundation-stitch',
      params: { stitches: 2, growth: 2, rounds: 1, fitting: 0, cornered: true },
    },
  ],
  [
    'a lead as long as the side to be worked',
    plan({ start: { side: 0, lead: 57 } }),
    plan({ start: { side: 0, lead: 58 } }),
    'choices.start.lead',
    { code: 'lead-too-long', params: { max: 57 } },
  ],
  [
    'the last front side to start at',
    plan({ start: { side: 3 } }),
    plan({ start: { side: 4 } }),
    'choices.start.side',
    { code: 'between', params: { min: 1, max: 4 } },
  ],
  [
    'the last place to begin the join',
    plan({ joinStart: { side: 0, fromCorner: 61 } }),
    plan({ joinStart: { side: 0, fromCorner: 62 } }),
    'choices.joinStart.fromCorner',
    { code: 'too-high', params: { max: 61 } },
  ],
  [
    'an increase in every stitch but the first',
    roundPanel(9, 4),
    roundPanel(10, 5),
    'choices.edgings[0].increase',
    { code: 'increase-too-big', params: { adds: 5, to: 5, max: 4 } },
  ],
  [
    'a marker at every stitch',
    plan({ markerEvery: 1 }),
    plan({ markerEvery: 0 }),
    'choices.markerEvery',
    { code: 'too-low', params: { min: 1 } },
  ],
  [
    '1,000 mishaps',
    mishaps(...new Array<Mishap>(1000).fill({ kind: 'last-hole' })),
    mishaps(...new Array<Mishap>(1001).fill({ kind: 'last-hole' })),
    'mishaps',
    { code: 'mishaps', params: { max: 1000 } },
  ],
  [
    'as many stitches added as the biggest panel has',
    mishaps(...adding(12)),
    mishaps(...adding(13)),
    'mishaps',
    { code: 'mishap-sum', params: { max: 2_400_000 } },
  ],
  [
    'the last corner in a mishap',
    mishaps({ kind: 'corner-forgotten', corner: 3 }),
    mishaps({ kind: 'corner-forgotten', corner: 4 }),
    'mishaps[0].corner',
    { code: 'mishap-corner', params: { mishap: 0, corners: 4 } },
  ],
  [
    'the last edging in a mishap',
    mishaps({ kind: 'attach-doubled', edging: 0 }),
    mishaps({ kind: 'attach-doubled', edging: 1 }),
    'mishaps[0].edging',
    { code: 'mishap-edging', params: { mishap: 0 } },
  ],
])('%s', (_, good, beyond, at, problem) => {
  it('is the last that is taken', () => {
    expect(problemsOf(good)).toEqual([]);
    expect(problemsOf(beyond)).toEqual([{ at, ...problem }]);
  });
});

describe('the biggest panel there is', () => {
  const biggest = planOf(sidesOf(24, 100_000), { corner: { made: 'chain', size: 9 } });

  it('is planned, worked and paired', () => {
    const { edgings, join } = workedOf(biggest);
    const met = pair(biggest.edge, edgings[0]!, { start: join, manner: 'corner-to-corner' });
    expect(met.pairs).toBe(24 * 100_009);
    expect(met.verdict.kind).toBe('meets');
  });

  it('can be walked at once', () => {
    const making = steps(biggest);
    expect(making.at(making.length - 1).kind).toBe('finished');
    expect(making.length).toBeGreaterThan(3 * 2_400_000);
  });
});

/** Calls that go wrong in as many ways as they can. */
const wrong: [name: string, count: number, problems: Problem[]][] = [
  [
    'an edge',
    7,
    problemsOf(
      readEdge({
        sides: [0, Number.NaN, -3, 1.5, 200_000, Number.POSITIVE_INFINITY],
        corner: { made: 'chain', size: 12 },
        counted: 'stitches-only',
      }),
    ),
  ],
  [
    'corners one by one',
    2,
    problemsOf(
      edge({ corner: [twoChains, { made: 'chain', size: 10 }, twoChains, { made: 'stitch', size: -1 }] }),
    ),
  ],
  ['a side that is all corners', 2, problemsOf(edge({ sides: [4, 60, 4, 60], counted: 'both-corners' }))],
  [
    'choices',
    10,
    problemsOf(
      plan({
        edgings: [
          { arm: 10, corner: { made: 'chain', size: 10 }, increase: 2 },
          { arm: [1, 0.5], increase: -1 },
        ],
        foundationCorner: { made: 'stitch', size: 99 },
        start: { side: 9, lead: -1 },
        joinStart: { side: 7 },
        markerEvery: 0,
      }),
    ),
  ],
  [
    'choices that do not fit',
    3,
    problemsOf(plan({ markerEvery: 0.5, edgings: edgings(12).edgings ?? [] }, [20, 60, 21, 60])),
  ],
  [
    'mishaps',
    6,
    checkActs(
      [
        { kind: 'stitch-missed', side: 9, place: -1, count: 0 },
        { kind: 'corner-moved', corner: 7, count: 0.5 },
        { kind: 'arm-missed', edging: 3, corner: 0, end: 'before' },
      ],
      planOf([60, 60, 60]),
    ),
  ],
  ['a printed total', 1, problemsOf(checkRounds({ totals: [13], corner: twoChains, arm: 1 }))],
  [
    'printed rounds',
    4,
    problemsOf(
      checkRounds({ sides: [1.5, null, -1], corner: { made: 'chain', size: 10 }, arm: [1, Number.NaN] }),
    ),
  ],
  ['printed rounds of nothing', 1, problemsOf(checkRounds({ corner: twoChains, arm: 1 }))],
];

describe('problems', () => {
  it.each(wrong)('of %s come all at once, each at its own place: %i', (_, count, problems) => {
    expect(problems.map(({ at, code }) => `${at} ${code}`)).toHaveLength(count);
    expect(new Set(problems.map((problem) => JSON.stringify(problem))).size).toBe(count);
  });

  it.each<[at: string, problem: object]>([
    ['sides[3]', { code: 'not-whole', params: { like: 58 } }],
    ['sides[1]', { code: 'not-a-number', params: { like: 58 } }],
    ['sides[2]', { code: 'too-low', params: { min: 1 } }],
    ['sides[5]', { code: 'too-high', params: { max: 100_000 } }],
    ['sides[4]', { code: 'too-high', params: { max: 100_000 } }],
    ['corner.size', { code: 'too-high', params: { max: 9 } }],
  ])('name what is wrong at %s', (at, problem) => {
    expect(wrong[0]?.[2]).toContainEqual({ at, ...problem });
  });

  it('say what to change where the edging rounds leave no foundation', () => {
    expect(problemsOf(plan(edgings(12), [20, 60, 60, 60]))).toEqual([
      {
        at: 'edge.sides[0]',
        code: 'no-foundation-stitch',
        params: { stitches: 20, growth: 24, rounds: 12, fitting: 9, cornered: true },
      },
    ]);
    expect(plan(edgings(9), [20, 60, 60, 60]).ok).toBe(true);
    expect(plan(edgings(10), [20, 60, 60, 60]).ok).toBe(false);
  });

  it('are stated where the limits are', () => {
    expect(limits).toMatchObject({ sides: 24, stitches: 100_000, cornerSize: 9, arm: 9, edgings: 12 });
  });
});
