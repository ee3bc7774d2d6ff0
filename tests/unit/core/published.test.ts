/**
 * Counts that are in print, read from `tests/reference/published-counts.json`, each with its source. Every column of
 * every case is read: what no check here knows by name fails the first test.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
  type Arm,
  type Corner,
  checkRounds,
  countRound,
  type Mishap,
  NodeKind,
  type Plan,
  type PrintedRounds,
  pair,
  planBack,
  type Result,
  type Round,
  readEdge,
  type Worked,
  work,
} from '../../../core/index.ts';

type Case = {
  id: string;
  source: string;
  terms: 'UK' | 'US';
  kind: string;
  recipe?: string;
  note?: string;
  countsCorner?: string;
  corner?: Corner;
  arm?: number | Arm;
  sides?: number[];
  totals?: number[];
  total?: number;
  printed?: number;
  later?: { round: number; total: number };
  examples?: [number, number][];
  growthPerRound?: number[];
  mishap?: string;
  closing?: { adds: 0 | 1 };
  worked?: number;
  startingChainCounts?: 0 | 1;
  wanted?: number;
  got?: number;
};

const file = 'tests/reference/published-counts.json';
const { cases, note } = JSON.parse(readFileSync(file, 'utf8')) as { note: string; cases: Case[] };

/** Columns that say where a case is from or put its recipe into words. */
const words = ['id', 'source', 'terms', 'kind', 'recipe', 'note'];
/** Numbers that a case's check reads, beside its words. */
const read = new Map<string, Set<string>>();

/** One case whose columns are noted as they are read. */
function caseOf(id: string): Case {
  const found = cases.find((one) => one.id === id) as Case;
  const columns = read.get(id) ?? new Set<string>();
  read.set(id, columns);
  return new Proxy(found, {
    get(target, key) {
      columns.add(String(key));
      return Reflect.get(target, key);
    },
  });
}

function given<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
}

/** The case's rounds as printed, for the check; which column says what the totals take in is read too. */
function printed(one: Case, changed: Partial<PrintedRounds> = {}): PrintedRounds {
  return {
    corner: one.corner as Corner,
    arm: one.arm as Arm,
    ...(one.sides ? { sides: one.sides } : {}),
    ...(one.totals ? { totals: one.totals } : {}),
    totalsTakeCorners: one.countsCorner === 'the corner stitch is in the total',
    ...changed,
  };
}

describe('rounds whose printed counts the recipe gives', () => {
  it.each([
    ['solid-square-needleworkers', 'Solid granny square, The Needleworkers Room, September 2016'],
    ['dc-square-day320', '366 Days of Granny Squares, day 320, rounds 1 and 2'],
    ['solid-square-dc-border', 'Crochet bouquet blanket, Solid Square, dc border'],
    ['cushion-flower-square', 'Crochet Now (UK), March 2020, cushion cover, flower square rounds 4 to 5'],
    ['square-d2-round-1', 'Square D-2, reworked border, round 1'],
    ['joined-squares-3', 'Border for joined squares of 59 stitches, three squares along a side'],
  ])('%s (%s)', (id, source) => {
    const one = caseOf(id);
    expect(one.source).toBe(source);
    const made = given(checkRounds(printed(one)));
    if (one.sides) expect(made.sides).toEqual(one.sides);
    if (one.totals) expect(made.totals).toEqual(one.totals);
    if (one.countsCorner) expect(one.countsCorner).toMatch(/^chains outside the count/);
  });

  it('joined-squares-3: 3 x 59 and a stitch over each of 2 joins', () => {
    const [first] = caseOf('joined-squares-3').sides as number[];
    expect(3 * 59 + 2).toBe(first);
  });

  it('back-loop-square-vol64 (Pattern Square No. 14, Volume 64): round 1 is corners alone; round 19 has 148', () => {
    const one = caseOf('back-loop-square-vol64');
    const { round, total } = one.later as { round: number; total: number };
    const totals = [...(one.totals as number[]), ...new Array(round - 7).fill(null), total];
    expect(totals).toHaveLength(round);
    const made = given(checkRounds(printed(one, { totals })));
    expect(made.totals.slice(0, 6)).toEqual(one.totals);
    expect(made.totals.at(-1)).toBe(total);
    expect(made.sides[0]).toBe(0);
  });

  it('block-adjust-plus2 (Block count adjustment): 8 to 10, 80 to 82', () => {
    const one = caseOf('block-adjust-plus2');
    expect(one.examples).toHaveLength(2);
    for (const sides of one.examples ?? [])
      expect(given(checkRounds(printed(one, { sides }))).sides).toEqual(sides);
  });

  it('washcloth-25 (Basic washcloth, 25 x 25): 23 a side and 3 in each corner make 104', () => {
    const one = caseOf('washcloth-25');
    const totals = [null, one.total as number];
    const three = { arm: 1, sides: [23], totals, totalsTakeCorners: true };
    const made = given(checkRounds(printed(one, three)));
    expect(made.totals).toEqual([4 * 23 + 4, 104]);
    expect(made.sides).toEqual([23, 25]);
  });

  it('border-21 (Every Which Way Crochet Borders): grows by 8, 8 and then, slip stitches, by 0', () => {
    const one = caseOf('border-21');
    const [first, second, third] = one.growthPerRound as [number, number, number];
    const from = 100;
    const totals = [from, from + first, from + first + second];
    const grown = given(checkRounds(printed(one, { arm: 1, totals, totalsTakeCorners: true })));
    expect(grown.totals).toEqual(totals);
    const last = totals[2] as number;
    const slipped = printed(one, { arm: 0, totals: [last, last + third], totalsTakeCorners: true });
    expect(given(checkRounds(slipped)).totals).toEqual([last, last]);
  });
});

describe('patterns that contradict themselves', () => {
  it('square-d2-round-2 (Square D-2, reworked border, round 2): 64 is printed, the recipe gives 68', () => {
    const one = caseOf('square-d2-round-2');
    const [first, second] = one.totals as [number, number];
    expect(checkRounds(printed(one, { totals: [first, one.printed as number] }))).toEqual({
      ok: false,
      problems: [{ at: 'totals[1]', code: 'printed-total', params: { round: 1, given: 68, printed: 64 } }],
    });
    // The sides printed agree with the recipe, so it is the total that is wrong.
    expect(given(checkRounds(printed(one))).totals).toEqual([first, second]);
  });

  it('solid-square-printed-rounds (Crochet bouquet blanket, treble rounds): 5 named, 6 printed', () => {
    const one = caseOf('solid-square-printed-rounds');
    expect(one.kind).toBe('inconsistent: five rounds named, six totals printed');
    const answer = checkRounds(printed(one, { roundsNamed: 5 }));
    expect(answer).toEqual({
      ok: false,
      problems: [{ at: 'totals[6]', code: 'rounds-named', params: { named: 5, printed: 6, of: 'totals' } }],
    });
    // Every total follows from the one before: it is the number of rounds that is wrong.
    expect(given(checkRounds(printed(one, { roundsNamed: 6 }))).totals).toEqual(one.totals);
  });

  it('are told every contradiction at once, each where it is', () => {
    const answer = checkRounds({
      corner: { made: 'chain', size: 2 },
      arm: [2, 1],
      sides: [5, 9, 11],
      totals: [20, 32, 45],
      roundsNamed: 4,
    });
    expect(answer.ok).toBe(false);
    if (!answer.ok) expect(answer.problems.map(({ at }) => at)).toEqual(['totals', 'sides[1]', 'totals[2]']);
  });
});

/** A square worked on a foundation of `count` stitches a side. */
function square(count: number, corner: Corner, arms: Arm[], lead?: number): Plan {
  const grown = count + arms.reduce((all, [before, after]) => all + before + after, 0);
  const edge = given(readEdge({ sides: [grown, grown, grown, grown], corner, counted: 'stitches-only' }));
  const start = lead === undefined ? {} : { start: { side: 0, lead } };
  return given(
    planBack(edge, { edgings: arms.map((arm) => ({ arm, corner })), foundationCorner: corner, ...start }),
  );
}

const rounds = ({ foundation, edgings }: Worked): Round[] => [foundation, ...edgings];

describe('what hands do', () => {
  it('skipped-hidden-stitch (Bedspread square, rounds 3 to 5): 7, 10, 13 a side where 7, 11, 15 are meant', () => {
    const one = caseOf('skipped-hidden-stitch');
    expect(one.mishap).toBe('the hidden first stitch after every corner missed');
    const [first] = one.sides as [number];
    const arm = one.arm as number;
    const plan = square(first, one.corner as Corner, [
      [arm, arm],
      [arm, arm],
    ]);
    const missed = [0, 1].flatMap((edging) =>
      [0, 1, 2, 3].map((corner): Mishap => ({ kind: 'hidden-missed', round: 'edging', edging, corner })),
    );
    const made = rounds(work(plan, missed)).map((round) => countRound(round).sides);
    expect(made).toEqual((one.sides as number[]).map((count) => [count, count, count, count]));
    const meant = rounds(work(plan)).map((round) => countRound(round).sides[0]);
    expect(meant).toEqual([7, 11, 15]);
  });

  it.each([
    ['needle-join-adds', 'Tutorial: fastening off invisibly, needle through the FIRST stitch'],
    ['needle-join-second', 'Tutorial: needle join through the SECOND stitch'],
    ['foundation-ring-bridge', 'Tutorial: foundation stitches joined in the round'],
  ])('%s (%s): the closing makes as many stitches as it is taught to', (id, source) => {
    const one = caseOf(id);
    expect(one.source).toBe(source);
    const { adds } = one.closing as { adds: 0 | 1 };
    const count = 60;
    const edge = given(readEdge({ sides: [count], corner: [], counted: 'stitches-only' }));
    const plan = given(planBack(edge, { foundationClosing: { adds }, edgingClosing: { adds } }));
    for (const round of rounds(work(plan))) {
      const byHook = round.kinds.filter((kind) => kind === NodeKind.stitch).length;
      expect(countRound(round).sides).toEqual([count]);
      expect(count - byHook).toBe(adds);
    }
    // Work N without allowing for the closing, and there is what it adds too much.
    const forgotten = work(plan, [{ kind: 'closing-forgotten', round: 'foundation' }]);
    expect(countRound(forgotten.foundation).sides).toEqual([count + adds]);
  });

  it('start-chain-84 (Round whose starting ch 2 acts as the first hdc): 83 worked, and the chain', () => {
    const one = caseOf('start-chain-84');
    const total = one.total as number;
    const edge = given(readEdge({ sides: [total], corner: [], counted: 'stitches-only' }));
    const plan = given(
      planBack(edge, {
        foundationStart: { counts: one.startingChainCounts as 1 },
        foundationClosing: { adds: 0 },
      }),
    );
    expect(plan.foundation.lead).toBe(one.worked);
    const { foundation } = work(plan);
    expect(foundation.kinds.filter((kind) => kind === NodeKind.stitch)).toHaveLength(one.worked as number);
    expect(countRound(foundation).sides).toEqual([total]);
  });

  it('one-too-many-313 (Afghan lace border set-up, 2010 report): 313 for 312 can be eased, not paired off', () => {
    const one = caseOf('one-too-many-313');
    const [wanted, got] = [one.wanted as number, one.got as number];
    const side = wanted / 4;
    const plan = square(side - 2, { made: 'chain', size: 2 }, [[1, 1]]);
    const worked = work(plan, [{ kind: 'attach-doubled', round: 'edging' }]);
    const back = worked.edgings[0] as Round;
    const stitches = countRound(back).sides.reduce((all, count) => all + count, 0);
    expect([plan.edge.sides.reduce((all, count) => all + count, 0), stitches]).toEqual([wanted, got]);
    const start = worked.join;
    const each = pair(plan.edge, back, { start, manner: 'stitch-by-stitch' });
    expect(each.leftOver).toBe(got - wanted);
    expect(each.verdict.kind).toBe('does-not-meet');
    // What the report did: the last few are stretched over the difference, at the end of one side.
    const pinned = pair(plan.edge, back, { start, manner: 'corner-to-corner' });
    expect(pinned.verdict).toEqual({
      kind: 'meets-with-easing',
      reasons: [{ code: 'side-long', frontSide: 0, backSide: 0, by: 1 }],
    });
    expect(pinned.gaps.map(({ short, count }) => [short, count])).toEqual([['front', 1]]);
  });
});

describe('the file', () => {
  it('is read to its last column', () => {
    const unread = cases.flatMap((one) =>
      Object.keys(one)
        .filter((column) => !words.includes(column) && !read.get(one.id)?.has(column))
        .map((column) => `${one.id}.${column}`),
    );
    expect(unread).toEqual([]);
    expect(cases).toHaveLength(18);
    expect(note).toContain('Numbers taken from published patterns');
  });

  it('says of every case where it is from and in which terms', () => {
    for (const { source, terms, kind } of cases) {
      expect(source.length).toBeGreaterThan(10);
      expect(['UK', 'US']).toContain(terms);
      expect(kind).toMatch(/stated|derived|mixed|inconsistent|convention/);
    }
  });
});
