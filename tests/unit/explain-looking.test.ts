/** What no count shows, or shows in two ways: it is found by looking. */
import { describe, expect, test } from 'vitest';
import { setsFor } from '../../core/explain/explain.ts';
import { explain, type Plan, type Seen } from '../../core/index.ts';
import { chainCorner, planOf } from '../property/explain-panels.ts';

const square = planOf([30, 30, 30, 30], chainCorner(2));
const twoRounds = planOf([40, 30, 40, 30], chainCorner(2), {
  edgings: [
    { arm: 1, corner: chainCorner(2) },
    { arm: 1, corner: chainCorner(2) },
  ],
});

const titles = (plan: Plan, seen: Seen, key: string, found: string) =>
  explain(plan, seen, { looked: [{ key, found }] }).explanations.map(({ causes }) =>
    causes.map(({ kind }) => kind).join(' + '),
  );

describe('a round in other loops', () => {
  test.each(['both-loops', 'front-loops'] as const)('%s is the one cause where it was seen', (kind) => {
    const { explanations, stands } = explain(
      twoRounds,
      {},
      { looked: [{ key: 'loops.edging.1', found: kind }] },
    );
    expect(explanations.map(({ mishaps }) => mishaps)).toEqual([[{ kind, round: 'edging', edging: 1 }]]);
    expect(stands).toEqual({ at: 'edging', edging: 1 });
    const [only] = explanations;
    const cures = only?.cures.map(({ kind: cure, looks, then, to, cost }) => ({
      cure,
      looks,
      then,
      from: to?.node,
      off: cost.stitches,
    }));
    const { total } = twoRounds.edgings[1] as Plan['edgings'][number];
    expect(cures).toEqual([
      { cure: 'leave', looks: 'shows', then: 'meets', from: undefined, off: 0 },
      { cure: 'rip-back', looks: 'as-planned', then: 'meets', from: 0, off: total },
    ]);
  });

  test('stands beside what the counts tell, and the recipe alone tells nothing of it', () => {
    const seen: Seen = { edgings: [{ sides: [29, 29, 29, 29] }] };
    expect(titles(square, seen, 'loops.edging.0', 'both-loops')[0]).toBe('hidden-missed + both-loops');
    expect(titles(square, seen, 'loops.edging.0', 'as asked')[0]).toBe('hidden-missed');
    expect(titles(square, {}, 'loops.edging.0', 'as asked')).toEqual(['']);
  });
});

test('a hole that is left is closed, and a ring that turns over is opened where it was closed', () => {
  const hole = explain(square, {}, { looked: [{ key: 'hole.join', found: 'last-hole' }] });
  expect(hole.stands).toEqual({ at: 'finished' });
  expect(hole.explanations[0]?.cures[0]).toMatchObject({ kind: 'close-hole', then: 'meets' });
  const turned = explain(square, {}, { looked: [{ key: 'twist.foundation', found: 'twisted' }] });
  expect(turned.explanations[0]?.cures[0]).toMatchObject({ kind: 'rip-back', then: 'meets' });
  expect(turned.explanations[0]?.cures[0]?.cost.stitches).toBeLessThanOrEqual(2);
});

test('whether the first corner is missing or the last is told by where the first one comes', () => {
  const total = square.foundation.sides;
  const seen: Seen = { foundation: { sides: [(total[0] ?? 0) + (total[1] ?? 0), 28, 28] } };
  const { explanations, nextCount } = explain(square, seen, { stands: { at: 'foundation' } });
  const forgotten = explanations.filter(({ causes }) => causes.length === 1);
  expect(forgotten.map(({ mishaps: [one] }) => one?.corner).sort()).toEqual([0, 3]);
  expect(nextCount?.key).toBe('first-corner.foundation');
  const far = explain(square, seen, { looked: [{ key: 'first-corner.foundation', found: 'a side on' }] });
  expect(far.explanations[0]?.mishaps).toMatchObject([{ kind: 'corner-forgotten', corner: 0 }]);
});

test('two taken with one in the join are looked for along it, and come out only as far as they lie', () => {
  const seen: Seen = { edgings: [{ sides: [30, 30, 30, 30] }], join: { leftOver: 1 } };
  const looked = [{ key: 'join-along', found: 'two-with-one front 2' }];
  const [only, more] = explain(square, seen, { looked }).explanations;
  expect(more).toBeUndefined();
  expect(only?.mishaps).toMatchObject([{ kind: 'two-with-one', of: 'front', side: 2 }]);
  const [cure] = only?.cures ?? [];
  expect(cure).toMatchObject({ kind: 'redo-join', then: 'meets', to: { round: 'join' } });
  expect(cure?.cost.slips).toBeLessThan(square.pairs - 30);
});

test('sides that run on as one carry what a habit did on each of them', () => {
  const empty = chainCorner(0);
  const plan = planOf([33, 34, 38], empty, {
    edgings: [
      { arm: [0, 1], corner: empty },
      { arm: [1, 1], corner: empty },
    ],
    foundationCorner: empty,
    start: { side: 0, lead: 27 },
    foundationStart: { counts: 1 },
  });
  const seen: Seen = {
    foundation: { sides: [30, 35, 31], corners: [0, 0, 0] },
    edgings: [
      { sides: [66, 32], corners: [0, 0] },
      { sides: [71, 40], corners: [0, 0] },
    ],
  };
  const kinds = setsFor(plan, seen, 2).map((set) => set.map(({ cause }) => `${cause.kind} ${cause.habit}`));
  expect(kinds).toContainEqual(['corner-forgotten false', 'stitch-doubled true']);
});
