import { afterEach, describe, expect, test } from 'vitest';
import { writeKept } from '../../src/input/write-kept.ts';
import type { Around } from '../../src/keep/around.ts';
import { heldText, keep } from '../../src/keep/device.ts';
import { startKeeping, whose, workOf } from '../../src/keep/keeping.ts';
import { deviceOn, readKept } from '../../src/keep/storage.ts';
import { createNotices } from '../../src/page/notices/notices.ts';
import { example, standardSettings } from '../../src/state/project.ts';
import type { AppEvent } from '../../src/state/snapshot.ts';
import { openStore, type Store } from '../../src/state/store.ts';
import { changedElsewhere, type Notice, newerVersion, notKept } from '../../src/words/notices.ts';

/** A device shared by tabs: who writes is not told, the others are, as browsers do it. */
function sharedDevice() {
  const items = new Map<string, string>();
  const listeners = new Map<string, () => void>();
  const writes: string[] = [];
  const state = { full: false };
  const forTab = (tab: string) => ({
    getItem: (key: string) => items.get(key) ?? null,
    setItem: (key: string, text: string) => {
      if (state.full) throw new DOMException('full', 'QuotaExceededError');
      items.set(key, text);
      writes.push(tab);
      if (key === 'ringtrue.work') for (const [other, listen] of listeners) if (other !== tab) listen();
    },
  });
  return { items, listeners, writes, state, forTab };
}

type Device = ReturnType<typeof sharedDevice>;

const stops: (() => void)[] = [];
afterEach(() => {
  for (const stop of stops.splice(0)) stop();
});

/** A tab opened as the page opens: from what is kept. `deaf`: the browser does not tell it of others. */
function openTab(device: Device, tab: string, { deaf = false } = {}) {
  const own = device.forTab(tab);
  const start = readKept(own) ?? {
    project: example,
    settings: standardSettings,
    tab: 'edge' as const,
    place: 0,
    answered: [],
  };
  const store = openStore(start);
  const told: Notice[] = [];
  const calls = { persist: 0, guarded: false, hide: () => {} };
  const around: Around = {
    tab,
    whenHidden: (then) => {
      calls.hide = then;
      return () => {};
    },
    guard: (isOn) => {
      calls.guarded = isOn;
    },
    persist: () => {
      calls.persist += 1;
    },
  };
  const kept = {
    ...deviceOn(own),
    whenElsewhere: (then: () => void) => {
      if (!deaf) device.listeners.set(tab, then);
      return () => device.listeners.delete(tab);
    },
  };
  const handedOut: (string | undefined)[] = [];
  const stop = startKeeping(store, kept, {
    notify: (notice) => told.push(notice),
    around,
    handOut: (now) => handedOut.push(now.project.texts['side.0']),
  });
  stops.push(stop, store.stop);
  return { store, told, calls, own, handedOut };
}

const type = (text: string): AppEvent => ({ type: 'TYPE', field: 'side.0', text });
const keptSide = (device: Device): string | undefined =>
  readKept(device.forTab('reader'))?.project.texts['side.0'];
const side = ({ store }: { store: Store }): string | undefined => store.snapshot().project.texts['side.0'];
const press = (notice: Notice | undefined, says: string): void =>
  notice?.answers.find((answer) => answer.says === says)?.act?.();

describe('one tab', () => {
  test('keeps every change before the next can come', () => {
    const device = sharedDevice();
    const tab = openTab(device, 'a');
    for (const text of ['7', '70', '701']) {
      tab.store.send(type(text));
      expect(keptSide(device)).toBe(text);
    }
    tab.store.send({ type: 'JUMP', to: 12 });
    expect(readKept(device.forTab('reader'))?.place).toBe(12);
    expect(tab.told).toEqual([]);
  });

  test('keeps nothing before anything was changed, and nothing for a look', () => {
    const device = sharedDevice();
    const tab = openTab(device, 'a');
    tab.store.send({ type: 'POINT', at: { round: 'front', edging: 0, node: 3 } });
    tab.calls.hide();
    expect(device.writes).toEqual([]);
  });

  test('asks the browser once not to clear it away, after the first change of the work', () => {
    const tab = openTab(sharedDevice(), 'a');
    tab.store.send({ type: 'SHOW', tab: 'walk' });
    tab.store.send({ type: 'JUMP', to: 4 });
    expect(tab.calls.persist).toBe(0);
    tab.store.send(type('70'));
    tab.store.send(type('71'));
    expect(tab.calls.persist).toBe(1);
  });

  test('a full device is told once, the work goes on, and is kept as soon as there is room', () => {
    const device = sharedDevice();
    const tab = openTab(device, 'a');
    device.state.full = true;
    tab.store.send(type('70'));
    tab.store.send(type('71'));
    expect(tab.told.map(({ key }) => key)).toEqual(['not-kept']);
    expect(side(tab)).toBe('71');
    device.state.full = false;
    tab.calls.hide();
    expect(keptSide(device)).toBe('71');
  });

  test('a closed device is told once', () => {
    const store = openStore({
      project: example,
      settings: standardSettings,
      tab: 'edge',
      place: 0,
      answered: [],
    });
    const told: Notice[] = [];
    const still = () => () => {};
    const around: Around = {
      tab: 'a',
      whenHidden: still,
      guard: () => {},
      persist: () => {},
    };
    stops.push(
      startKeeping(
        store,
        { ...deviceOn(null), whenElsewhere: still },
        { notify: (notice) => told.push(notice), around },
      ),
      store.stop,
    );
    store.send(type('70'));
    store.send(type('71'));
    expect(told.map(({ key }) => key)).toEqual(['not-kept']);
  });

  test('what was changed before keeping began is kept when it begins', () => {
    const device = sharedDevice();
    const store = openStore({
      project: example,
      settings: standardSettings,
      tab: 'edge',
      place: 0,
      answered: [],
    });
    const opened = { snapshot: store.snapshot(), held: null };
    store.send(type('70'));
    const still = () => () => {};
    const around: Around = {
      tab: 'a',
      whenHidden: still,
      guard: () => {},
      persist: () => {},
    };
    stops.push(
      startKeeping(
        store,
        { ...deviceOn(device.forTab('a')), whenElsewhere: still },
        { notify: () => {}, opened, around },
      ),
      store.stop,
    );
    expect(keptSide(device)).toBe('70');
  });

  test('once stopped keeps nothing more', () => {
    const device = sharedDevice();
    const tab = openTab(device, 'a');
    tab.store.send(type('70'));
    for (const stop of stops.splice(0, 1)) stop();
    tab.store.send(type('71'));
    expect(keptSide(device)).toBe('70');
  });
});

describe('two tabs', () => {
  test('of which one only looks never ask', () => {
    const device = sharedDevice();
    const a = openTab(device, 'a');
    a.store.send(type('70'));
    const b = openTab(device, 'b');
    b.store.send({ type: 'SHOW', tab: 'walk' });
    b.store.send({ type: 'SETTLE', settings: { dialect: 'us' } });
    a.store.send({ type: 'SETTLE', settings: { hand: 'left' } });
    a.store.send(type('71'));
    expect(a.told).toEqual([]);
    expect(keptSide(device)).toBe('71');
  });

  test.each([
    ['told by the browser', false],
    ['not told by the browser', true],
  ])('both changing the same work: the second to come, %s, keeps nothing and asks', (_name, deaf) => {
    const device = sharedDevice();
    const a = openTab(device, 'a', { deaf });
    const b = openTab(device, 'b', { deaf });
    a.store.send(type('70'));
    b.store.send(type('99'));
    expect(b.told.map(({ key }) => key)).toEqual(['kept-elsewhere']);
    b.store.send(type('98'));
    b.calls.hide();
    expect(keptSide(device)).toBe('70');
    expect(side(b)).toBe('98');
    expect(b.told).toHaveLength(1);
    expect(b.calls.guarded).toBe(true);
    expect(a.told).toEqual([]);
  });

  test('a tab that has nothing of its own to lose lets itself be closed without a question', () => {
    const device = sharedDevice();
    const a = openTab(device, 'a');
    const b = openTab(device, 'b');
    a.store.send(type('70'));
    expect(b.told.map(({ key }) => key)).toEqual(['kept-elsewhere']);
    expect(b.calls.guarded).toBe(false);
  });

  test('taking that one brings it here, and undo brings this one back', () => {
    const device = sharedDevice();
    const a = openTab(device, 'a');
    const b = openTab(device, 'b');
    a.store.send({ type: 'JUMP', to: 20 });
    b.store.send(type('99'));
    a.store.send(type('70'));
    press(b.told[0], 'Take that one');
    expect(side(b)).toBe('70');
    expect(b.store.snapshot().place).toBe(20);
    expect(b.calls.guarded).toBe(false);
    expect(a.told).toEqual([]);
    b.store.send({ type: 'UNDO' });
    expect(side(b)).toBe('99');
    expect(keptSide(device)).toBe('99');
    // Now it is the other tab that has to be asked.
    expect(a.told.map(({ key }) => key)).toEqual(['kept-elsewhere']);
  });

  test('taking that one takes its answered questions along, so that the walk goes on', () => {
    const device = sharedDevice();
    const a = openTab(device, 'a');
    const b = openTab(device, 'b');
    const { steps } = a.store.snapshot().making;
    const asked =
      Array.from({ length: steps.length }, (_, i) => i).find((i) => steps.at(i).asks === 'twist') ?? 0;
    a.store.send({ type: 'JUMP', to: asked });
    a.store.send({ type: 'ANSWER', asks: 'twist' });
    a.store.send({ type: 'JUMP', to: asked + 9 });
    press(b.told[0], 'Take that one');
    expect(b.store.snapshot().place).toBe(asked + 9);
    b.store.send({ type: 'NEXT' });
    expect(b.store.snapshot().place).toBe(asked + 10);
  });

  test('keeping this one keeps it, and from then on the other is asked', () => {
    const device = sharedDevice();
    const a = openTab(device, 'a');
    const b = openTab(device, 'b');
    a.store.send(type('70'));
    b.store.send(type('99'));
    press(b.told[0], 'Keep this one');
    expect(keptSide(device)).toBe('99');
    expect(b.calls.guarded).toBe(false);
    expect(a.told.map(({ key }) => key)).toEqual(['kept-elsewhere']);
    b.store.send(type('98'));
    expect(keptSide(device)).toBe('98');
    expect(b.told).toHaveLength(1);
  });

  test('any order of changes and answers loses no work that nobody gave up', () => {
    // Every text typed must stay: on the device, in a tab that still asks, or given up by an answer.
    for (let seed = 1; seed <= 8; seed++) {
      let drawn = seed;
      const draw = (below: number): number => {
        drawn = (drawn * 48271) % 2147483647;
        return drawn % below;
      };
      const device = sharedDevice();
      const tabs = ['a', 'b', 'c'].map((name) => openTab(device, name, { deaf: draw(2) === 0 }));
      for (let act = 0; act < 20; act++) {
        const tab = tabs[draw(3)] as (typeof tabs)[number];
        const held = keptSide(device);
        const isAsked = tab.told.length > 0;
        if (isAsked && draw(3) === 0) {
          press(tab.told.pop(), draw(2) === 0 ? 'Take that one' : 'Keep this one');
          expect(keptSide(device)).toBe(side(tab));
          continue;
        }
        tab.store.send(type(`${20 + act}`));
        if (tab.told.length > 0) expect(keptSide(device), `seed ${seed}`).toBe(held);
        else expect(keptSide(device), `seed ${seed}`).toBe(side(tab));
      }
    }
  });
});

describe('whose a text on the device is', () => {
  const { read } = deviceOn(null);
  const snapshot = () => {
    const store = openStore({
      project: example,
      settings: standardSettings,
      tab: 'edge',
      place: 3,
      answered: [],
    });
    stops.push(store.stop);
    return store.snapshot();
  };
  test('ours, where it is what we know or nothing at all', () => {
    expect(whose(null, 'x', [], read)).toBe('ours');
    expect(whose('x', 'x', [], read)).toBe('ours');
  });
  test('odd, where it is no work', () => {
    for (const text of ['', '{', '[]', '{"version":99}']) expect(whose(text, null, [], read)).toBe('odd');
  });
  test('alike, where only the way it is shown differs', () => {
    const now = snapshot();
    const shown = { ...now, tab: 'walk' as const, settings: { ...now.settings, hand: 'left' as const } };
    const text = writeKept(shown, { stamp: { tab: 'b', count: 1 } });
    expect(whose(text, null, [workOf(now)], read)).toBe('alike');
    expect(whose(text, null, [], read)).toBe('theirs');
    expect(whose(writeKept({ ...now, place: 4 }), null, [workOf(now)], read)).toBe('theirs');
  });
  test('two tabs never write the same text, even of the same work', () => {
    const now = snapshot();
    expect(writeKept(now, { stamp: { tab: 'a', count: 1 } })).not.toBe(
      writeKept(now, { stamp: { tab: 'b', count: 1 } }),
    );
    expect(writeKept(now, { stamp: { tab: 'a', count: 1 } })).not.toBe(
      writeKept(now, { stamp: { tab: 'a', count: 2 } }),
    );
  });
  test('what a later version has kept is not written over, and this tab says that it keeps nothing', () => {
    const device = sharedDevice();
    const tab = openTab(device, 'a');
    const newer = '{"version":99,"more":"work"}';
    device.items.set('ringtrue.work', newer);
    tab.store.send(type('70'));
    tab.store.send(type('71'));
    expect(device.items.get('ringtrue.work')).toBe(newer);
    expect(tab.told.map(({ key, answers }) => [key, answers[0]?.says])).toEqual([
      ['kept-elsewhere', 'Save this as a file'],
    ]);
    expect(tab.calls.guarded).toBe(true);
    press(tab.told[0], 'Save this as a file');
    expect(tab.handedOut).toEqual(['71']);
  });
  test('what is damaged is set aside, not thrown away', () => {
    const device = sharedDevice();
    const tab = openTab(device, 'a');
    device.items.set('ringtrue.work', '{"version":1,"proj');
    tab.store.send(type('70'));
    expect(keptSide(device)).toBe('70');
    expect(device.items.get('ringtrue.set-aside')).toBe('{"version":1,"proj');
  });
  test('what is set aside later leaves what was set aside before, and is set aside once', () => {
    const device = sharedDevice();
    const texts = ['{"version":98}', '{"version":99}', '{'];
    for (const text of [...texts, ...texts]) {
      device.items.set('ringtrue.work', text);
      expect(readKept(device.forTab('a'))).toBeNull();
    }
    device.items.delete('ringtrue.work');
    expect([...device.items.values()]).toEqual(texts);
  });
  test('work kept without a stamp is read as well', () => {
    const device = sharedDevice();
    keep(device.forTab('a'), snapshot());
    expect(readKept(device.forTab('b'))?.place).toBe(3);
    expect(heldText(device.forTab('b'))).toContain('"place":3');
  });
});

describe('notices', () => {
  test('come most pressing first, one of a key, and listeners hear of each change', () => {
    const notices = createNotices();
    let heard = 0;
    const stop = notices.subscribe(() => {
      heard += 1;
    });
    notices.add(newerVersion(() => {}));
    notices.add(notKept(() => {}));
    notices.add(
      changedElsewhere(
        () => {},
        () => {},
      ),
    );
    notices.add(notKept(() => {}));
    expect(notices.list().map(({ key }) => key)).toEqual(['kept-elsewhere', 'not-kept', 'newer-version']);
    expect(heard).toBe(4);
    notices.dismiss('kept-elsewhere');
    notices.dismiss('kept-elsewhere');
    expect(heard).toBe(5);
    stop();
    notices.dismiss('not-kept');
    expect(heard).toBe(5);
    expect(notices.list().map(({ key }) => key)).toEqual(['newer-version']);
  });
});
