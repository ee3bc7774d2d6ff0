/** How often the arithmetic is done: once for each change that needs it, and not at all for the others. */
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test, vi } from 'vitest';
import { example, standardSettings } from '../../../src/state/project.ts';
import type { AppEvent } from '../../../src/state/snapshot.ts';
import type { Store } from '../../../src/state/store.ts';

const calls = new Map<string, number>();

/** Counts each call of a function by its name. */
const counted = <Given extends unknown[], Gives>(name: string, run: (...given: Given) => Gives) =>
  [
    name,
    (...given: Given): Gives => {
      calls.set(name, (calls.get(name) ?? 0) + 1);
      return run(...given);
    },
  ] as const;

const core = '../../../core/index.ts';
let openStore: typeof import('../../../src/state/store.ts').openStore;
beforeAll(async () => {
  vi.resetModules();
  vi.doMock(core, async () => {
    const real = await vi.importActual<typeof import('../../../core/index.ts')>(core);
    const wrapped = [
      counted('readEdge', real.readEdge),
      counted('planBack', real.planBack),
      counted('mishapsOf', real.mishapsOf),
      counted('work', real.work),
      counted('pair', real.pair),
      counted('steps', real.steps),
    ];
    return { ...real, ...Object.fromEntries(wrapped) };
  });
  ({ openStore } = await import('../../../src/state/store.ts'));
});
afterAll(() => {
  vi.doUnmock(core);
  vi.resetModules();
});

let store: Store;
beforeEach(() => {
  store = openStore({ project: example, settings: standardSettings, tab: 'edge', place: 0, answered: [] });
  calls.clear();
});
afterEach(() => store.stop());

const type = (field: string, text: string): AppEvent => ({ type: 'TYPE', field, text });
const called = () => Object.fromEntries(calls);

const whole = { readEdge: 1, planBack: 1, mishapsOf: 1, work: 1, pair: 1, steps: 1 };
const fromPlan = { planBack: 1, mishapsOf: 1, work: 1, pair: 1, steps: 1 };
const fromCounts = { mishapsOf: 1, work: 1, pair: 1, steps: 1 };

describe('calls', () => {
  test.each<[string, AppEvent, Record<string, number>]>([
    ['a side of the front', type('side.0', '70'), whole],
    ['a corner', type('corner', '3'), whole],
    ['a choice', type('lead', '12'), fromPlan],
    ['a count of the work', type('worked.edging.0.2', '61'), fromCounts],
    ['a recount', type('seen.front.1', '41'), fromCounts],
    [
      'how the rounds are joined',
      { type: 'SETTLE', settings: { manner: 'stitch-by-stitch' } },
      { pair: 1, steps: 1 },
    ],
    ['where a surplus goes', { type: 'SETTLE', settings: { easing: 'spread' } }, { pair: 1, steps: 1 }],
    ['the same number in other digits', type('side.0', '６４'), {}],
    ['a text that cannot be read', type('worked.edging.0.2', '62-63'), {}],
    ['the name', { type: 'CHANGE', project: { name: 'Stool' } }, {}],
    ['the pace', { type: 'SETTLE', settings: { pace: 600 } }, {}],
    ['a yarn', { type: 'SETTLE', settings: { yarns: { ...standardSettings.yarns, front: '#000000' } } }, {}],
    ['the theme', { type: 'SETTLE', settings: { theme: 'dark' } }, {}],
    ['the terms', { type: 'SETTLE', settings: { dialect: 'us' } }, {}],
    ['the hand', { type: 'SETTLE', settings: { hand: 'left' } }, {}],
    ['another place of the app', { type: 'SHOW', tab: 'walk' }, {}],
    ['a step', { type: 'NEXT' }, {}],
    ['a check', { type: 'CHECK' }, {}],
  ])('for %s', (_name, event, wanted) => {
    const before = store.snapshot().making;
    store.send(event);
    expect(called()).toEqual(wanted);
    if (Object.keys(wanted).length === 0) expect(store.snapshot().making).toBe(before);
  });

  test('for a front that cannot be read: none beyond it, and all that it had stays', () => {
    const before = store.snapshot().making;
    store.send(type('side.0', 'x'));
    expect(store.snapshot().making).toBe(before);
    store.send(type('side.0', '64'));
    expect(store.snapshot().making).toBe(before);
    // Once to judge what can be read of the others.
    expect(called()).toEqual({ readEdge: 1 });
  });

  test('for a mishap put in beside counts: one of each', () => {
    store.send(type('worked.edging.0.2', '61'));
    calls.clear();
    const mishaps = [{ kind: 'stitch-missed', round: 'foundation', side: 1, place: 4, count: 1 } as const];
    store.send({ type: 'CHANGE', project: { mishaps } });
    expect(called()).toEqual(fromCounts);
  });

  test('what a count does not change keeps its identity', () => {
    const before = store.snapshot().making;
    store.send(type('worked.edging.0.2', '61'));
    const now = store.snapshot().making;
    expect(now).not.toBe(before);
    expect(now.edge).toBe(before.edge);
    expect(now.plan).toBe(before.plan);
    expect(now.worked).not.toBe(before.worked);
  });
});
