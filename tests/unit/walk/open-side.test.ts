/** A bag or pocket: one side is not joined, and nothing goes in. Common practice, no source. */
import { describe, expect, test } from 'vitest';
import { pair, planBack, type Result, readEdge, type Step, steps, work } from '../../../core/index.ts';
import { derive } from '../../../src/state/derive.ts';
import { example, standardSettings } from '../../../src/state/project.ts';
import { sayRecipe } from '../../../src/words/recipe.ts';
import { sayVerdict } from '../../../src/words/verdict.ts';

const given = <T>(result: Result<T>): T => {
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
};

const sides = [9, 7, 8, 6];
const edge = given(readEdge({ sides, corner: { made: 'chain', size: 2 }, counted: 'stitches-only' }));

const walkOf = (open?: number): Step[] => {
  const made = steps(given(planBack(edge, open === undefined ? {} : { open })));
  return Array.from({ length: made.length }, (_, i) => made.at(i));
};

describe.each([0, 1, 2, 3])('side %i open', (open) => {
  const walk = walkOf(open);
  const joined = walk.filter(({ kind }) => kind === 'slip-stitch' || kind === 'last-hole');

  test('every place but those of the open side is joined, once', () => {
    expect(joined).toHaveLength(edge.total - (sides[open] ?? 0));
    expect(new Set(joined.map(({ node }) => node)).size).toBe(joined.length);
    expect(new Set(joined.map(({ backNode }) => backNode)).size).toBe(joined.length);
    expect(joined.filter(({ side, corner }) => side === open && corner < 0)).toEqual([]);
  });

  test('it begins with the corner after the open side and ends with the one before', () => {
    expect(joined[0]).toMatchObject({ corner: open, place: 0 });
    expect(joined.at(-1)).toMatchObject({ corner: (open + 3) % 4, place: 1 });
    expect(walk.find(({ kind }) => kind === 'join-attach')).toMatchObject({ side: open, corner: -1 });
  });

  test('there is no pad, no last hole and no closing over the first stitch', () => {
    const kinds = new Set(walk.map(({ kind }) => kind));
    for (const kind of ['long-loop', 'pad-in', 'pin-last', 'take-loop', 'last-hole', 'join-close'] as const)
      expect(kinds.has(kind), kind).toBe(false);
    expect(walk.filter(({ asks }) => asks !== undefined).map(({ asks }) => asks)).toEqual(['twist']);
    expect(walk.at(-1)).toMatchObject({ kind: 'finished', done: joined.length });
  });
});

test('all else is made as for a cushion', () => {
  const before = (walk: Step[]): Step[] => walk.filter(({ stage }) => !/^(?:join|finished)/.test(stage));
  expect(before(walkOf(2))).toEqual(before(walkOf()));
});

test('the choice of what it becomes reaches the walk', () => {
  const texts = { ...example.texts, 'cloth.becomes': 'bag', 'cloth.open-side': '2' };
  const { making } = derive({ ...example, texts }, standardSettings);
  expect(making?.plan.choices.open).toBe(1);
  expect(making?.becomes).toBe('bag');
  const cover = derive(
    { ...example, texts: { ...example.texts, 'cloth.becomes': 'cover' } },
    standardSettings,
  );
  expect([cover.making?.plan.choices.open, cover.making?.becomes]).toEqual([undefined, 'cover']);
});

describe.each(['stitch-by-stitch', 'corner-to-corner'] as const)('laid together %s', (manner) => {
  // 9 + 7 + 8 + 6 stitches and 4 corners of 2 are 38 places.
  test.each([
    [0, 29],
    [1, 31],
    [2, 30],
    [3, 32],
  ])('with side %i open, %i places are joined and all of them meet', (open, joined) => {
    const plan = given(planBack(edge, { open }));
    const worked = work(plan);
    const pairing = pair(edge, worked.edgings[0]!, { start: worked.join, manner });
    expect(plan.pairs).toBe(joined);
    expect(pairing).toMatchObject({ pairs: joined, toJoin: joined, gaps: [], verdict: { kind: 'meets' } });
    expect(sayVerdict({ pairing, plan }, standardSettings)).toMatchObject({
      head: `All ${joined} meet.`,
      count: `${joined} meet`,
    });
    const left = pairing.runs.filter(({ kind }) => kind === 'open');
    expect(left.reduce((all, { count }) => all + count, 0)).toBe(sides[open]);
  });

  test('a stitch missing on the open side is no gap; one missing beside it is', () => {
    const plan = given(planBack(edge, { open: 1 }));
    const lacking = (front: number) => {
      const side = plan.faces.indexOf(front);
      const worked = work(plan, [{ kind: 'stitch-missed', round: 'foundation', side, place: 2 }]);
      return pair(edge, worked.edgings[0]!, { start: worked.join, manner });
    };
    expect(lacking(1)).toMatchObject({ pairs: 31, toJoin: 31, gaps: [], findings: [] });
    expect(lacking(2).verdict.kind).toBe('does-not-meet');
  });
});

test('the recipe names what goes in, and counts only what is joined', () => {
  const join = (texts: Record<string, string>): string => {
    const { making } = derive({ ...example, texts: { ...example.texts, ...texts } }, standardSettings);
    return sayRecipe(making!, standardSettings).join.join(' ');
  };
  expect(join({})).toContain('put the cushion pad in');
  expect(join({ 'cloth.becomes': 'cover' })).toContain('put the form in');
  expect(join({ 'cloth.becomes': 'cover' })).not.toContain('pad');
  expect(join({ 'cloth.becomes': 'bag' })).not.toMatch(/pad|form/);
});
