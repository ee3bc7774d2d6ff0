import { afterEach, describe, expect, test } from 'vitest';
import type { Cure, Mishap, Seen } from '../../core/index.ts';
import { fieldNames } from '../../src/state/fields.ts';
import { example, standardSettings } from '../../src/state/project.ts';
import type { Project } from '../../src/state/snapshot.ts';
import { openStore, type Store } from '../../src/state/store.ts';
import { curedProject, goesOnAt, indexInList, onlyOff } from '../../src/wrong/cured.ts';
import { fieldOfLook, personsFound } from '../../src/wrong/looks.ts';
import { fieldAskedFor, seenOfStory, storiesFor } from '../../src/wrong/stories.ts';
import { explanationOf, PANELS, planOf, seenOf } from './wrong-panels.ts';

const opened: Store[] = [];
function open(project: Partial<Project> = {}): Store {
  const store = openStore({
    project: { ...example, ...project },
    settings: standardSettings,
    tab: 'wrong',
    place: 0,
    answered: [],
  });
  opened.push(store);
  return store;
}
afterEach(() => {
  for (const store of opened.splice(0)) store.stop();
});

const typeIn = (store: Store, field: string, text: string): void => store.send({ type: 'TYPE', field, text });
const seen = (store: Store): Seen => store.snapshot().making.seen;
const madeNow = (store: Store) => {
  const { plan, acts } = store.snapshot().making;
  return seenOf(plan, acts);
};

describe('what is seen', () => {
  test('an empty field is not counted', () => {
    const store = open();
    typeIn(store, 'worked.edging.0.2', '61');
    typeIn(store, 'worked.edging.0.1', '');
    expect(seen(store)).toEqual({ edgings: [{ sides: [null, null, 61, null] }] });
  });

  test('a recount of the front is read as the first count was: less the corner it takes in', () => {
    const store = open();
    typeIn(store, 'seen.front.0', '65');
    expect(seen(store).front).toEqual({ sides: [63, null, null, null] });
    store.send({ type: 'CHANGE', project: { counted: 'both-corners' } });
    expect(seen(store).front).toEqual({ sides: [61, null, null, null] });
    store.send({ type: 'CHANGE', project: { counted: 'stitches-only' } });
    expect(seen(store).front).toEqual({ sides: [65, null, null, null] });
  });

  test('the join: early is minus, left over on the front is minus', () => {
    const store = open();
    typeIn(store, 'seen.drift.1', '-2');
    typeIn(store, 'seen.left-over', '-3');
    expect(seen(store).join).toEqual({ drift: [null, -2, null, null], leftOver: -3 });
  });

  test.each(['x', '1.5', '2 3'])(
    '%j in the join is told at its field, and the last good making stays',
    (text) => {
      const store = open();
      typeIn(store, 'seen.drift.1', text);
      expect(store.snapshot().problems.map(({ at }) => at)).toEqual(['seen.drift.1']);
      expect(seen(store)).toEqual({});
    },
  );

  test('a round with a corner too few has a side fewer', () => {
    const store = open();
    for (const [i, count] of ['62', '102', '38'].entries()) typeIn(store, `worked.edging.0.${i}`, count);
    typeIn(store, fieldNames.cornersShort(0), '1');
    expect(seen(store).edgings?.[0]?.sides).toEqual([62, 102, 38]);
    expect(store.snapshot().making.worked.edgings[0]?.turns).toHaveLength(3);
    typeIn(store, fieldNames.cornersShort(0), '');
    expect(store.snapshot().making.worked.edgings[0]?.turns).toHaveLength(4);
  });

  test('all of it is taken as it was given, and cleared with one press', () => {
    const store = open();
    const all: Seen = {
      foundation: { sides: [61, 36, null], corners: [2, null, 2] },
      edgings: [{ sides: [62, null, 62, 38] }],
      front: { sides: [63, null, null, null] },
      join: { drift: [1, null, -2, null], leftOver: 2 },
    };
    store.send({ type: 'TAKE_SEEN', seen: all });
    expect(seen(store)).toEqual(all);
    store.send({ type: 'CLEAR_COUNTS' });
    expect(seen(store)).toEqual({});
    store.send({ type: 'UNDO' });
    expect(seen(store)).toEqual(all);
  });

  test('a mishap known and the counts it gives are one thing, not two', () => {
    const mishap: Mishap = { kind: 'stitch-missed', round: 'edging', edging: 0, side: 2, place: 9, count: 1 };
    const store = open({ mishaps: [mishap] });
    typeIn(store, 'worked.edging.0.2', '61');
    expect(store.snapshot().making.acts).toEqual([mishap]);
    typeIn(store, 'worked.edging.0.2', '60');
    expect(madeNow(store).edgings[0]?.sides).toEqual([62, 38, 60, 38]);
    expect(store.snapshot().making.acts[0]).toBe(mishap);
  });

  test('a mishap without a place on the panel is told, also beside counts', () => {
    const store = open({ mishaps: [{ kind: 'corner-forgotten', round: 'edging', corner: 3 }] });
    typeIn(store, 'worked.edging.0.1', '37');
    store.send({ type: 'CHANGE', project: { sideCount: 3 } });
    expect(store.snapshot().unfit.map(({ at }) => at)).toEqual(['mishaps[0].corner']);
    expect(store.snapshot()).toMatchObject({ problems: [], isStale: false });
    expect(store.snapshot().making.edge.sides).toHaveLength(3);
  });
});

describe('the usual stories', () => {
  test.each(PANELS)('on %s can all be told, and each is or asks for something else', (_name, plan) => {
    const stories = storiesFor(plan);
    expect(stories.length).toBeGreaterThan(1);
    const all = stories.map((id) => JSON.stringify([seenOfStory(id, plan), fieldAskedFor(id, plan)]));
    expect(new Set(all).size).toBe(all.length);
    const recipe = seenOf(plan, []);
    for (const id of stories) {
      const told = seenOfStory(id, plan);
      if (told?.join || fieldAskedFor(id, plan) !== null) continue;
      const last = told?.edgings?.at(-1)?.sides;
      expect(last, id).not.toEqual(recipe.edgings.at(-1)?.sides);
    }
  });

  test('what a story does not tell is left open', () => {
    const plan = planOf([30, 20, 30, 20]);
    const open = [null, null, null, null];
    const total = plan.edgings[0]?.total ?? 0;
    expect(seenOfStory('one-side-short', plan)).toEqual({ edgings: [{ sides: open, total: total - 1 }] });
    expect(seenOfStory('one-too-many-in-all', plan)).toEqual({
      edgings: [{ sides: open, total: total + 1 }],
    });
    expect(seenOfStory('corner-missing', plan)).toEqual({ edgings: [{ sides: [null, null, null] }] });
    expect(seenOfStory('long-and-short', plan)).toEqual({});
    for (const id of ['corner-missing', 'long-and-short'] as const)
      expect(fieldAskedFor(id, plan)).toBe('worked.edging.0.0');
  });

  test('a round panel has no corner to come early', () => {
    const round = PANELS.find(([name]) => name === 'a round panel')?.[1];
    expect(round && storiesFor(round)).toEqual(['one-too-many-in-all', 'left-over']);
  });

  test('no story counts fewer than 0', () => {
    const tiny = planOf([3, 3, 3, 3]);
    for (const id of storiesFor(tiny))
      for (const { sides } of seenOfStory(id, tiny)?.edgings ?? [])
        for (const count of sides) expect(count ?? 0).toBeGreaterThanOrEqual(0);
  });
});

const cureOf = (cure: Partial<Cure>): Cure => ({
  kind: 'leave',
  recommended: true,
  looks: 'hidden',
  cost: { stitches: 0, slips: 0, rounds: 0, sewing: false, again: 0 },
  at: [],
  mishaps: [],
  adjustments: [],
  seenAfter: {},
  then: 'meets',
  ...cure,
});

describe('a cure taken', () => {
  const hidden: Mishap = { kind: 'hidden-missed', round: 'edging', edging: 0, corner: 1 };
  const forgotten: Mishap = { kind: 'corner-forgotten', round: 'foundation', corner: 2 };
  const late: Mishap = { kind: 'corner-moved', round: 'foundation', corner: 1, count: 2, then: 'from-total' };

  test.each<[string, Mishap[]]>([
    ['nothing is left', []],
    ['a missed stitch is left', [hidden]],
    ['a corner stays forgotten', [forgotten]],
    ['two are left', [late, hidden]],
  ])(
    'where %s, the making has just the counts the cure says, and typing one more counts on from there',
    (_name, left) => {
      const store = open({ mishaps: [] });
      typeIn(store, 'worked.edging.0.2', '57');
      typeIn(store, 'seen.left-over', '-5');
      const { plan } = store.snapshot().making;
      const seenAfter = seenOf(plan, left);
      const project = curedProject(store.snapshot(), cureOf({ mishaps: left, seenAfter }));
      store.send({ type: 'OPEN', project, place: 5, answered: [] });
      expect(madeNow(store)).toEqual(seenAfter);
      expect(store.snapshot().making.acts).toEqual(left);
      expect(store.snapshot().place).toBe(5);
      expect(store.snapshot().making.seen.join).toBeUndefined();
      store.send({ type: 'UNDO' });
      expect(seen(store).edgings?.[0]?.sides[2]).toBe(57);
    },
  );

  test('where nothing is left, no count stays typed', () => {
    const store = open();
    typeIn(store, 'worked.edging.0.2', '57');
    const { plan } = store.snapshot().making;
    const project = curedProject(store.snapshot(), cureOf({ seenAfter: seenOf(plan, []) }));
    expect(project).toEqual({ ...example, mishaps: [] });
  });

  test("where the front's number was wrong, the recipe follows it and the back meets", () => {
    const store = open();
    const { plan } = store.snapshot().making;
    // The back was made for a front side 2 of one more.
    const more = {
      kind: 'stitch-doubled',
      round: 'foundation',
      side: plan.faces.indexOf(1),
      place: 9,
    } as const;
    const seenAfter = seenOf(plan, [more]);
    const cure = cureOf({ kind: 'correct-the-number', frontSides: [{ side: 1, by: 1 }], seenAfter });
    store.send({ type: 'OPEN', project: curedProject(store.snapshot(), cure), place: 0, answered: [] });
    expect(store.snapshot().project.texts['side.1']).toBe('41');
    expect(madeNow(store)).toEqual(seenAfter);
    expect(store.snapshot().making.pairing.verdict.kind).toBe('meets');
    expect(store.snapshot().making.acts).toEqual([]);
  });

  test('where the back was made for the wrong number, it stays as it was made, and the gap shows', () => {
    const store = open();
    const before = madeNow(store);
    // Only what differs from the recipe is given, and nothing does.
    const seenAfter: Seen = {
      foundation: { sides: [null, null, null, null], corners: [null, null, null, null] },
      edgings: [{ sides: [null, null, null, null], corners: [null, null, null, null] }],
    };
    const cure = cureOf({ kind: 'correct-the-number', frontSides: [{ side: 1, by: 1 }], seenAfter });
    store.send({ type: 'OPEN', project: curedProject(store.snapshot(), cure), place: 0, answered: [] });
    expect(store.snapshot().making.edge.sides).toEqual([62, 39, 62, 38]);
    expect(madeNow(store)).toEqual(before);
    expect(store.snapshot().making.pairing.verdict.kind).not.toBe('meets');
  });

  test('the work goes on where the cure says', () => {
    const { making } = open().snapshot();
    const node = making.worked.foundation.turns[1] ?? 0;
    const to = { round: 'foundation', edging: 0, side: 2, place: 0, node } as const;
    const stageAt = (cure: Partial<Cure>) => {
      const step = making.steps.at(goesOnAt(making, cureOf(cure), 7));
      return [step.stage, step.node, step.kind];
    };
    expect(stageAt({ kind: 'rip-back', to }).slice(0, 2)).toEqual(['foundation', node]);
    const at = [{ round: 'edging', edging: 0, side: 1, act: 'miss-one', places: [4] }] satisfies Cure['at'];
    expect(stageAt({ kind: 'make-up', at })[0]).toBe('edging');
    expect(stageAt({ kind: 'ease-in' })[0]).toBe('join');
    expect(stageAt({ kind: 'redo-join' })[0]).toBe('join');
    expect(stageAt({ kind: 'make-up', at, to }).slice(0, 2)).toEqual(['foundation', node]);
    const inJoin = { round: 'join', edging: 0, side: -1, corner: 2, place: 0, node: -1 } as const;
    const again = making.steps.at(goesOnAt(making, cureOf({ kind: 'redo-join', to: inJoin }), 7));
    expect([again.stage, again.corner]).toEqual(['join', making.plan.cornerFaces[2]]);
    expect(stageAt({ kind: 'close-hole' })[2]).toBe('last-hole');
    expect(goesOnAt(making, cureOf({ kind: 'leave' }), 7)).toBe(7);
  });

  test('only what differs is written down; another number of sides is written down whole', () => {
    const plan = planOf([62, 38, 62, 38]);
    const after = seenOf(plan, [hidden]);
    const off = onlyOff(after, plan);
    expect(off.foundation?.sides.every((count) => count === null)).toBe(true);
    expect(off.edgings?.[0]?.sides.filter((count) => count !== null)).toHaveLength(1);
    const short = seenOf(plan, [forgotten]);
    expect(onlyOff(short, plan).foundation).toEqual(short.foundation);
  });
});

test('a mishap is found again in the list it stands in', () => {
  const plan = planOf([62, 38, 62, 38]);
  const first: Mishap = { kind: 'stitch-missed', round: 'edging', side: 1, place: 3 };
  const second: Mishap = { ...first, side: 2 };
  const explanation = explanationOf(plan, [
    { ...first, edging: 0 },
    { ...second, edging: 0 },
  ]);
  expect(indexInList(explanation, second)).toBe(1);
  expect(indexInList(explanation, { ...second, place: 4 })).toBe(-1);
});

describe('where to look', () => {
  test.each([
    [{ look: 'side', round: 'foundation', side: 2 }, 'worked.foundation.2'],
    [{ look: 'side', round: 'edging', edging: 1, side: 2 }, 'worked.edging.1.2'],
    [{ look: 'corner', round: 'foundation', corner: 3 }, 'worked.foundation-corner.3'],
    [{ look: 'corner', round: 'edging', edging: 0, corner: 3 }, 'worked.edging-corner.0.3'],
    [{ look: 'front', side: 1 }, 'seen.front.1'],
    [{ look: 'closing', round: 'edging' }, null],
  ] as const)('%j has the field %s', (look, field) => {
    expect(fieldOfLook({ key: '', ...look })).toBe(field);
  });

  test("the front's numbers are told as the person counts them", () => {
    const snapshot = open().snapshot();
    expect(personsFound({ key: '', look: 'front', side: 0 }, 62, snapshot)).toBe(64);
    expect(personsFound({ key: '', look: 'side', round: 'edging', side: 0 }, 62, snapshot)).toBe(62);
    expect(personsFound({ key: '', look: 'closing' }, 'over', snapshot)).toBe('over');
  });
});
