/** What a wrong number keeps from following, what a choice settles, and what is only looked at. */
import { afterEach, describe, expect, test } from 'vitest';
import { lasting } from '../../../src/input/write-kept.ts';
import { example, standardSettings } from '../../../src/state/project.ts';
import type { AppEvent, Project } from '../../../src/state/snapshot.ts';
import { openStore, type Store } from '../../../src/state/store.ts';

const opened: Store[] = [];
function open(project: Project = example): Store {
  const store = openStore({ project, settings: standardSettings, tab: 'edge', place: 0, answered: [] });
  opened.push(store);
  return store;
}
afterEach(() => {
  for (const store of opened.splice(0)) store.stop();
});

const type = (field: string, text: string): AppEvent => ({ type: 'TYPE', field, text });
const round: AppEvent = { type: 'CHANGE', project: { sideCount: 0 } };
const triangle: AppEvent = { type: 'CHANGE', project: { sideCount: 3 } };

describe('a choice that hides a field, or takes its ground', () => {
  test.each<[string, AppEvent[], AppEvent]>([
    ['the start on side 4, then round', [type('start-side', '4')], round],
    ['the join on side 4, then round', [type('join-side', '4')], round],
    ['the start on side 4, then a triangle', [type('start-side', '4')], triangle],
    ['the join on side 4, then a triangle', [type('join-side', '4')], triangle],
    ['a corner of "two", then round', [type('corner', 'two')], round],
    ['a lead of "x", then round', [type('lead', 'x')], round],
    ['an arm of "one", then round', [type('arm.0', 'one')], round],
    ['a side of "many", then a triangle', [type('side.3', 'many')], triangle],
    [
      'a corner of "two", then corners that differ',
      [type('corner', 'two')],
      { type: 'CHANGE', project: { cornersDiffer: true } },
    ],
    [
      'an arm of "one" in the second round, then one round',
      [{ type: 'CHANGE', project: { edgingCount: 2 } }, type('arm.1', 'one')],
      { type: 'CHANGE', project: { edgingCount: 1 } },
    ],
  ])('%s: the making follows', (_name, before, event) => {
    const store = open();
    for (const one of before) store.send(one);
    store.send(event);
    const { problems, isStale, making, project } = store.snapshot();
    expect({ problems, isStale }).toEqual({ problems: [], isStale: false });
    expect(making.edge.sides).toHaveLength(Math.max(1, project.sideCount));
  });

  test('says which choice fell back, until the next change, and undo brings it again', () => {
    const store = open();
    store.send(type('start-side', '4'));
    store.send(type('join-side', '4'));
    store.send(triangle);
    expect(store.snapshot().settled).toEqual([
      { field: 'start-side', side: 4 },
      { field: 'join-side', side: 4 },
    ]);
    expect(store.snapshot().project.texts['start-side']).toBeUndefined();
    store.send(type('side.0', '50'));
    expect(store.snapshot().settled).toEqual([]);
    store.send({ type: 'UNDO' });
    store.send({ type: 'UNDO' });
    expect(store.snapshot().project.texts).toMatchObject({ 'start-side': '4', 'join-side': '4' });
    expect(store.snapshot().making.plan.choices.start.side).toBe(3);
  });

  test('what was typed in a field comes back with it', () => {
    const store = open();
    store.send(type('lead', 'x'));
    store.send(round);
    store.send({ type: 'CHANGE', project: { sideCount: 4 } });
    expect(store.snapshot().project.texts.lead).toBe('x');
    expect(store.snapshot().problems.map(({ at }) => at)).toEqual(['lead']);
  });
});

describe('a wrong number', () => {
  test.each([
    'worked.edging.0.1',
    'worked.foundation-corner.1',
    'seen.front.2',
    'seen.drift.0',
    'seen.left-over',
  ])('in %s bars neither recipe nor walk', (field) => {
    const store = open();
    store.send(type(field, '62-63'));
    store.send(type('side.0', '70'));
    const { problems, isStale, making } = store.snapshot();
    expect(problems.map(({ at }) => at)).toEqual([field]);
    expect(isStale).toBe(false);
    expect(making.edge.sides[0]).toBe(68);
  });

  test('beside good counts leaves them counted', () => {
    const store = open();
    store.send(type('worked.edging.0.1', '37'));
    store.send(type('worked.edging.0.2', '62.7'));
    expect(store.snapshot().making.seen.edgings?.[0]?.sides).toEqual([null, 37, null, null]);
  });
});

describe('what is looked at', () => {
  const mishaps = [
    { kind: 'stitch-missed', round: 'edging', edging: 0, side: 2, place: 9, count: 1 } as const,
  ];

  test('shows what it does, is kept nowhere, and is no part of undo', () => {
    const store = open();
    store.send({ type: 'JUMP', to: 120 });
    const before = store.snapshot();
    store.send({ type: 'PREVIEW', mishaps });
    store.send({ type: 'JUMP', to: 200 });
    const shown = store.snapshot();
    expect(shown.making.acts).toEqual(mishaps);
    expect(shown.preview?.mishaps).toBe(mishaps);
    expect(shown.project).toBe(before.project);
    expect(shown.canUndo).toBe(before.canUndo);
    expect(lasting(shown)).toEqual(lasting(before));
    store.send({ type: 'PREVIEW', mishaps: null });
    expect(store.snapshot()).toMatchObject({ place: 120, preview: null, project: before.project });
    expect(store.snapshot().making.acts).toEqual([]);
  });

  test.each<[string, AppEvent]>([
    ['typing', type('worked.edging.0.1', '37')],
    ['another choice', { type: 'CHANGE', project: { edgingCount: 2 } }],
    ['undo', { type: 'UNDO' }],
  ])('ends with %s, and the walk stands where it stood', (_name, event) => {
    const store = open();
    store.send(type('side.0', '70'));
    store.send({ type: 'JUMP', to: 30 });
    store.send({ type: 'PREVIEW', mishaps });
    store.send({ type: 'JUMP', to: 200 });
    store.send(event);
    expect(store.snapshot()).toMatchObject({ preview: null, place: 30 });
    expect(store.snapshot().making.acts).not.toEqual(mishaps);
  });

  test('stays while only how it is shown changes', () => {
    const store = open();
    store.send({ type: 'PREVIEW', mishaps });
    store.send({ type: 'SETTLE', settings: { manner: 'stitch-by-stitch', theme: 'dark' } });
    store.send({ type: 'SHOW', tab: 'walk' });
    expect(store.snapshot().making.acts).toEqual(mishaps);
  });
});

describe("back to the recipe's numbers", () => {
  test('takes the counts of the back, and leaves recounts, join readings and mishaps', () => {
    const mishaps = [{ kind: 'twisted', round: 'foundation' } as const];
    const store = open({ ...example, mishaps });
    for (const [field, text] of [
      ['worked.foundation.0', '59'],
      ['worked.edging-corner.0.1', '3'],
      ['seen.front.0', '65'],
      ['seen.drift.1', '-2'],
    ] as const)
      store.send(type(field, text));
    store.send({ type: 'CLEAR_WORKED' });
    const { project } = store.snapshot();
    expect(project.mishaps).toBe(mishaps);
    expect(Object.keys(project.texts)).toEqual([
      ...Object.keys(example.texts),
      'seen.front.0',
      'seen.drift.1',
    ]);
    store.send({ type: 'CLEAR_COUNTS' });
    expect(store.snapshot().project.texts).toEqual(example.texts);
  });
});

test('rounds that lack two corners are read as such', () => {
  const store = open();
  const edgings = [{ sides: [62, 140] }];
  store.send({ type: 'TAKE_SEEN', seen: { edgings } });
  expect(store.snapshot().making.seen).toEqual({ edgings });
  expect(store.snapshot().making.worked.edgings[0]?.turns).toHaveLength(2);
});
