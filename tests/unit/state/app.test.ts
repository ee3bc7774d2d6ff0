import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { readProject } from '../../../src/input/project.ts';
import { readSettings } from '../../../src/input/settings.ts';
import { type Store as Kept, keep } from '../../../src/keep/device.ts';
import { readKept } from '../../../src/keep/storage.ts';
import { derive } from '../../../src/state/derive.ts';
import { example, standardSettings } from '../../../src/state/project.ts';
import type { AppEvent, Project } from '../../../src/state/snapshot.ts';
import { openStore, type Store } from '../../../src/state/store.ts';
import { sayInApp } from '../../../src/words/problems-view.ts';

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

describe('the example', () => {
  test('meets, is a rectangle and no square', () => {
    const { making } = open().snapshot();
    expect(making.pairing.verdict.kind).toBe('meets');
    const [a, b, c, d] = making.edge.sides;
    expect([a, b]).toEqual([c, d]);
    expect(a).not.toBe(b);
  });
});

describe('typing', () => {
  test('a number changes everything that follows from it', () => {
    const store = open();
    store.send(type('side.0', '70'));
    expect(store.snapshot().making.edge.sides[0]).toBe(68);
    expect(store.snapshot().making.plan.foundation.sides[0]).toBe(66);
    expect(store.snapshot().problems).toEqual([]);
  });

  test('what cannot be read is kept as typed, silent, with the last good drawing, until asked', () => {
    const store = open();
    const before = store.snapshot().making;
    store.send(type('side.0', '12x'));
    store.send(type('side.1', ''));
    store.send(type('side.2', '0'));
    store.send(type('side.3', '1000000'));
    const now = store.snapshot();
    expect(now.making).toBe(before);
    expect(now.isChecked).toBe(false);
    expect(now.project.texts['side.0']).toBe('12x');
    store.send({ type: 'CHECK' });
    const told = store.snapshot();
    expect(told.isChecked).toBe(true);
    expect(told.problems.map((problem) => [problem.at, sayInApp(problem, told)])).toEqual([
      ['side.0', 'Side 1 must be a number, like 58'],
      ['side.1', 'Enter side 2'],
      ['side.2', 'Side 3 must be 1 or more'],
      ['side.3', 'Side 4 must be 100002 or fewer'],
    ]);
    for (let i = 0; i < 4; i++) store.send(type(`side.${i}`, '30'));
    expect(store.snapshot()).toMatchObject({ isChecked: false, problems: [] });
  });

  test('a number really worked shows as a gap at its side and nowhere else', () => {
    const store = open();
    store.send(type('worked.edging.0.2', `${(store.snapshot().making.plan.edgings[0]?.sides[2] ?? 0) - 1}`));
    const { making } = store.snapshot();
    expect(making.pairing.gaps).toHaveLength(1);
    expect(making.pairing.gaps[0]).toMatchObject({ short: 'back', backSide: 2, count: 1 });
    expect(making.pairing.sides.filter(({ surplus }) => surplus !== 0)).toHaveLength(1);
    store.send({ type: 'CLEAR_WORKED' });
    expect(store.snapshot().making.pairing.verdict.kind).toBe('meets');
  });

  test('a foundation side really worked is carried on by the edging', () => {
    const store = open();
    const { plan } = store.snapshot().making;
    store.send(type('worked.foundation.1', `${(plan.foundation.sides[1] ?? 0) + 2}`));
    const { making } = store.snapshot();
    expect(making.pairing.sides.find(({ backSide }) => backSide === 1)?.surplus).toBe(2);
  });
});

describe('more sides', () => {
  test('begin with the last number typed, keep what is typed later, and go with undo', () => {
    const store = open();
    store.send({ type: 'CHANGE', project: { sideCount: 6 } });
    expect(store.snapshot().making.edge.sides).toEqual([62, 38, 62, 38, 38, 38]);
    store.send(type('side.5', '20'));
    store.send({ type: 'CHANGE', project: { sideCount: 3 } });
    store.send({ type: 'CHANGE', project: { sideCount: 6 } });
    expect(store.snapshot().making.edge.sides[5]).toBe(18);
    for (let i = 0; i < 4; i++) store.send({ type: 'UNDO' });
    expect(store.snapshot().project).toEqual(example);
  });
});

describe('undo', () => {
  test('takes back one field of typing at a time, and redo brings it again', () => {
    const store = open();
    for (const text of ['7', '70']) store.send(type('side.0', text));
    store.send(type('side.1', '44'));
    store.send({ type: 'UNDO' });
    expect(store.snapshot().project.texts).toMatchObject({ 'side.0': '70', 'side.1': '40' });
    store.send({ type: 'UNDO' });
    expect(store.snapshot().project).toEqual(example);
    expect(store.snapshot().canUndo).toBe(false);
    store.send({ type: 'REDO' });
    store.send({ type: 'REDO' });
    expect(store.snapshot().project.texts).toMatchObject({ 'side.0': '70', 'side.1': '44' });
  });
});

describe('listeners', () => {
  test('never see a place that is not in the steps shown, and hear once an event', () => {
    const store = open();
    let heard = 0;
    store.subscribe((snapshot) => {
      heard++;
      expect(snapshot.step).toEqual(snapshot.making.steps.at(snapshot.place));
    });
    store.send({ type: 'JUMP', to: 150 });
    expect(heard).toBe(1);
    store.send({ type: 'CHANGE', project: { sideCount: 3 } });
    expect(heard).toBeLessThanOrEqual(3);
    expect(store.snapshot().making.edge.sides).toHaveLength(3);
  });
});

describe('playing', () => {
  beforeEach(() => void vi.useFakeTimers());
  afterEach(() => void vi.useRealTimers());

  test('goes on by itself at the chosen pace, and stops at stop', () => {
    const store = open();
    store.send({ type: 'PLAY' });
    expect(store.snapshot().playing).toBe(true);
    vi.advanceTimersByTime(standardSettings.pace * 3 + 1);
    expect(store.snapshot().place).toBe(3);
    store.send({ type: 'STOP' });
    vi.advanceTimersByTime(60_000);
    expect(store.snapshot()).toMatchObject({ place: 3, playing: false });
  });

  test('never plays faster than three steps a second, whatever was kept', () => {
    const aSecond = (pace: number) =>
      1000 / readSettings({ ...standardSettings, pace }, standardSettings).pace;
    for (const pace of [0, 1, 100, 333, 350, 600, -5]) expect(aSecond(pace)).toBeLessThan(3);
    expect(aSecond(600)).toBeCloseTo(1000 / 600);
  });

  test('rests at a question', () => {
    const store = open();
    store.send({ type: 'JUMP', to: Number.MAX_SAFE_INTEGER });
    const { place } = store.snapshot();
    expect(store.snapshot().step.asks).toBe('twist');
    store.send({ type: 'JUMP', to: place - 2 });
    store.send({ type: 'PLAY' });
    vi.advanceTimersByTime(standardSettings.pace * 10);
    expect(store.snapshot()).toMatchObject({ place, playing: false });
  });
});

describe('what is kept', () => {
  const memory = (): Kept & { texts: Map<string, string> } => {
    const texts = new Map<string, string>();
    return {
      texts,
      getItem: (key) => texts.get(key) ?? null,
      setItem: (key, text) => void texts.set(key, text),
    };
  };

  test('comes back to the same panel at the same stitch', () => {
    const device = memory();
    const store = open();
    store.subscribe((snapshot) => keep(device, snapshot));
    store.send(type('side.1', '33'));
    store.send({ type: 'SETTLE', settings: { dialect: 'us', hand: 'left' } });
    store.send({ type: 'JUMP', to: 217 });
    const kept = readKept(device);
    expect(kept).toMatchObject({
      place: 217,
      project: store.snapshot().project,
      settings: store.snapshot().settings,
    });
    const again = openStore(kept as NonNullable<typeof kept>);
    opened.push(again);
    expect(again.snapshot().step).toEqual(store.snapshot().step);
    expect(again.snapshot().stage).toBe(store.snapshot().stage);
  });

  test.each(['', '{', '[]', '42', 'null', '{"version":2}', '{"version":1,"project":'])(
    '%j is set aside, not thrown away',
    (text) => {
      const device = memory();
      device.texts.set('ringtrue.work', text);
      expect(readKept(device)).toBeNull();
      expect(device.texts.get('ringtrue.set-aside')).toBe(text);
    },
  );

  test('odd fields fall back one by one, and nothing reaches a prototype', () => {
    const odd = JSON.parse(
      '{"__proto__":{"polluted":1},"sideCount":99,"counted":"all","texts":{"__proto__":{"polluted":1},"side.0":"12","<b>":"x","side.1":7},"mishaps":"many","name":"a\\u202eb"}',
    );
    const project = readProject(odd);
    expect(project).toMatchObject({
      sideCount: example.sideCount,
      counted: example.counted,
      name: 'ab',
      mishaps: [],
    });
    expect(project.texts).toEqual({ 'side.0': '12' });
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
    expect(derive(project, standardSettings).making).toBeNull();
  });
});
