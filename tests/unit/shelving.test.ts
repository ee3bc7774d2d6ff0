/** Panels in the database: one tab, several tabs, a full one, and what was kept by earlier and later versions. */
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { readKeptText } from '../../src/input/kept.ts';
import { type Stamp, writeStart } from '../../src/input/write-kept.ts';
import type { Around } from '../../src/keep/around.ts';
import { startShelving } from '../../src/keep/shelving.ts';
import { deviceOn, readKept } from '../../src/keep/storage.ts';
import { example, standardSettings } from '../../src/state/project.ts';
import type { AppEvent, Project } from '../../src/state/snapshot.ts';
import { openStore, type Start } from '../../src/state/store.ts';
import type { Notice } from '../../src/words/notices.ts';
import { memoryShelf } from './memory-shelf.ts';

beforeEach(() => {
  vi.useFakeTimers({ now: Date.UTC(2026, 2, 1) });
});
const stops: (() => void)[] = [];
afterEach(() => {
  for (const stop of stops.splice(0)) stop();
  vi.useRealTimers();
});

const atFirst: Start = { project: example, settings: standardSettings, tab: 'edge', place: 0, answered: [] };

/** One browser: a simple store and a database for all its tabs. */
function browser() {
  const items = new Map<string, string>();
  const simple = { full: false };
  const listeners = new Map<string, () => void>();
  const forTab = (tab: string) => ({
    getItem: (key: string) => items.get(key) ?? null,
    setItem: (key: string, text: string) => {
      if (simple.full) throw new DOMException('full', 'QuotaExceededError');
      items.set(key, text);
      if (key === 'ringtrue.work') for (const [other, listen] of listeners) if (other !== tab) listen();
    },
    removeItem: (key: string) => void items.delete(key),
  });
  return { items, simple, listeners, forTab, ...memoryShelf() };
}
type Browser = ReturnType<typeof browser>;

type Opening = {
  /** What is done until the database is open. */
  before?: (send: (event: AppEvent) => void) => void;
  /** A panel that was sent, and is kept. */
  start?: Start;
  isNew?: true;
};

/** A tab opened as the page opens. */
async function openTab(on: Browser, tab: string, { before = () => {}, start, isNew }: Opening = {}) {
  const simple = on.forTab(tab);
  const held = simple.getItem('ringtrue.work');
  const store = openStore(start ?? readKept(simple) ?? atFirst);
  const told: Notice[] = [];
  const handedOut: (string | undefined)[] = [];
  const calls = { guarded: false, persist: 0, hide: () => {} };
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
  const device = {
    ...deviceOn(simple),
    whenElsewhere: (then: () => void) => {
      on.listeners.set(tab, then);
      return () => void on.listeners.delete(tab);
    },
  };
  const opened = { snapshot: store.snapshot(), held, ...(isNew && { isNew }) };
  before(store.send);
  const shelving = await startShelving(store, {
    device,
    shelf: on.shelf,
    notify: (notice) => told.push(notice),
    opened,
    around,
    handOut: ({ project }) => handedOut.push(project.texts['side.0']),
  });
  await vi.advanceTimersByTimeAsync(0);
  stops.push(shelving.stop, store.stop);
  const side = (): string | undefined => store.snapshot().project.texts['side.0'];
  const type = (text: string): void => store.send({ type: 'TYPE', field: 'side.0', text });
  return { store, shelving, told, calls, handedOut, side, type, keys: () => told.map(({ key }) => key) };
}

/** The tab is killed: nothing more is put. */
const kill = ({ shelving }: { shelving: { stop(): void } }): void => shelving.stop();
const soon = () => vi.advanceTimersByTimeAsync(1000);
const sides = ({ records }: Browser): (string | undefined)[] =>
  [...records.values()].map(({ text }) => readKeptText(text)?.project.texts['side.0']);
const press = async (notice: Notice | undefined, says: string): Promise<void> => {
  notice?.answers.find((answer) => answer.says === says)?.act?.();
  await soon();
};
const copied = ({ items }: Browser) => readKeptText(items.get('ringtrue.work') ?? '');
const textOf = (project: Partial<Project>, marks: { panel?: string; stamp?: Stamp } = {}): string =>
  writeStart({ ...atFirst, project: { ...example, ...project } }, marks);

describe('one tab', () => {
  test('puts a change in the copy at once, and in the database within a second', async () => {
    const on = browser();
    const tab = await openTab(on, 'a');
    tab.type('70');
    expect(copied(on)?.project.texts['side.0']).toBe('70');
    expect(sides(on)).toEqual([]);
    await soon();
    expect(sides(on)).toEqual(['70']);
    expect(copied(on)?.panel).toBe([...on.records.keys()][0]);
  });

  test('puts a stretch of typing together, and never waits for its end', async () => {
    const on = browser();
    const tab = await openTab(on, 'a');
    for (let count = 0; count < 40; count++) {
      tab.type(`${count}`);
      await vi.advanceTimersByTimeAsync(100);
    }
    expect(on.state.puts).toBeGreaterThan(15);
    expect(on.state.puts).toBeLessThan(30);
  });

  test('that is hidden puts what is left at once', async () => {
    const on = browser();
    const tab = await openTab(on, 'a');
    tab.type('70');
    tab.calls.hide();
    await vi.advanceTimersByTimeAsync(0);
    expect(sides(on)).toEqual(['70']);
  });

  test('keeps nothing before anything was changed, and no panel for a look at the example', async () => {
    const on = browser();
    const tab = await openTab(on, 'a');
    tab.store.send({ type: 'SHOW', tab: 'cloth' });
    tab.calls.hide();
    await soon();
    kill(tab);
    expect(on.records.size).toBe(0);
    const again = await openTab(on, 'b');
    await soon();
    expect(again.store.snapshot().tab).toBe('cloth');
    expect(on.records.size).toBe(0);
  });

  test('killed before the simple store was written opens with what the database has', async () => {
    const on = browser();
    const tab = await openTab(on, 'a');
    tab.type('70');
    await soon();
    const early = on.items.get('ringtrue.work') as string;
    tab.type('71');
    tab.store.send({ type: 'JUMP', to: 9 });
    await soon();
    kill(tab);
    for (const left of [early, null]) {
      if (left === null) on.items.delete('ringtrue.work');
      else on.items.set('ringtrue.work', left);
      const again = await openTab(on, 'b');
      expect([again.side(), again.store.snapshot().place, again.keys()]).toEqual(['71', 9, []]);
      expect(again.store.snapshot().canUndo).toBe(false);
      expect(sides(on)).toEqual(['71']);
      kill(again);
    }
  });

  test('closed before the database was written opens with the copy, and puts that there', async () => {
    const on = browser();
    const tab = await openTab(on, 'a');
    tab.type('70');
    await soon();
    tab.type('71');
    kill(tab);
    expect(sides(on)).toEqual(['70']);
    const again = await openTab(on, 'b');
    expect(again.side()).toBe('71');
    await soon();
    expect(sides(on)).toEqual(['71']);
    expect(again.told).toEqual([]);
  });

  test('keeps what was changed before the database was open', async () => {
    const on = browser();
    const tab = await openTab(on, 'a', {
      before: (send) => send({ type: 'TYPE', field: 'side.0', text: '70' }),
    });
    await soon();
    expect(sides(on)).toEqual(['70']);
    expect(tab.told).toEqual([]);
  });

  test('asks the browser once not to clear it away', async () => {
    const tab = await openTab(browser(), 'a');
    tab.store.send({ type: 'JUMP', to: 4 });
    expect(tab.calls.persist).toBe(0);
    tab.type('70');
    tab.type('71');
    expect(tab.calls.persist).toBe(1);
  });
});

describe('another panel', () => {
  test('is taken in hand once the present one is kept, and no undo leads back into it', async () => {
    const on = browser();
    const tab = await openTab(on, 'a');
    tab.type('70');
    expect(await tab.shelving.take({ ...atFirst, project: { ...example, name: 'Other' } }, null)).toBe(true);
    expect(sides(on)).toEqual(['70', '64']);
    expect(tab.store.snapshot().canUndo).toBe(false);
    tab.store.send({ type: 'UNDO' });
    expect(tab.store.snapshot().project.name).toBe('Other');
    tab.type('80');
    await soon();
    expect(sides(on)).toEqual(['70', '80']);
    const [first] = await on.shelf.list().then((all) => all.filter(({ id }) => id !== tab.shelving.inHand()));
    expect(await tab.shelving.take(readKeptText(first?.text ?? '') as Start, first ?? null)).toBe(true);
    expect(tab.side()).toBe('70');
    tab.type('72');
    await soon();
    expect(sides(on)).toEqual(['72', '80']);
  });

  test('is not taken where the present one cannot be kept, and that is told with a way out', async () => {
    const on = browser();
    const tab = await openTab(on, 'a');
    tab.type('70');
    on.state.full = true;
    expect(await tab.shelving.take(atFirst, null)).toBe(false);
    expect(tab.side()).toBe('70');
    expect(tab.keys()).toContain('not-kept');
    await press(tab.told.at(-1), 'Save it as a file');
    expect(tab.handedOut).toEqual(['70']);
  });
});

describe('a full device', () => {
  test('is told once, is asked about before the page is left, and is forgotten when there is room', async () => {
    const on = browser();
    const tab = await openTab(on, 'a');
    on.state.full = true;
    on.simple.full = true;
    tab.type('70');
    await soon();
    tab.type('71');
    await soon();
    expect(tab.keys()).toEqual(['not-kept']);
    expect(tab.calls.guarded).toBe(true);
    on.state.full = false;
    tab.calls.hide();
    await soon();
    expect(sides(on)).toEqual(['71']);
    expect(tab.calls.guarded).toBe(false);
  });
});

describe('two tabs', () => {
  const both = async () => {
    const on = browser();
    const first = await openTab(on, 'x');
    first.type('60');
    await soon();
    kill(first);
    return { on, a: await openTab(on, 'a'), b: await openTab(on, 'b') };
  };

  test('with two panels leave each other alone', async () => {
    const { on, a, b } = await both();
    await b.shelving.take({ ...atFirst, project: { ...example, name: 'Other' } }, null);
    a.type('70');
    b.type('80');
    await soon();
    a.type('71');
    await soon();
    expect(sides(on)).toEqual(['71', '80']);
    expect([a.told, b.told]).toEqual([[], []]);
  });

  test('with the same panel: the second to change it is told, and its work is a panel of its own', async () => {
    const { on, a, b } = await both();
    a.type('70');
    await soon();
    expect(b.keys()).toEqual(['kept-elsewhere']);
    b.type('80');
    b.type('81');
    await soon();
    expect(sides(on)).toEqual(['70', '81']);
    expect(a.told).toEqual([]);
    a.type('71');
    await soon();
    expect(sides(on)).toEqual(['71', '81']);
    expect(b.calls.guarded).toBe(false);
  });

  test('told, one takes the other by a press, and keeps its own among the panels', async () => {
    const { on, a, b } = await both();
    a.type('70');
    b.type('80');
    await soon();
    const [loser, winner] = a.told.length > 0 ? [a, b] : [b, a];
    await press(loser.told.at(-1), 'Take that one');
    expect(loser.side()).toBe(winner.side());
    expect(loser.shelving.inHand()).toBe(winner.shelving.inHand());
    expect(sides(on).sort()).toEqual(['70', '80']);
  });

  test('told, one puts its work in the place of the other, whose work becomes a panel of its own', async () => {
    const { on, a, b } = await both();
    const [panel] = [...on.records.keys()];
    a.type('70');
    await soon();
    b.type('80');
    await soon();
    await press(b.told.at(-1), 'Put this one in its place');
    expect(readKeptText(on.records.get(panel ?? '')?.text ?? '')?.project.texts['side.0']).toBe('80');
    expect(sides(on).sort()).toEqual(['70', '80']);
    a.type('71');
    await soon();
    expect(a.keys()).toContain('kept-elsewhere');
    expect(sides(on).sort()).toEqual(['70', '71', '80']);
  });

  test('of which one only walks never ask', async () => {
    const { on, a, b } = await both();
    a.store.send({ type: 'JUMP', to: 7 });
    await soon();
    b.store.send({ type: 'JUMP', to: 3 });
    await soon();
    a.store.send({ type: 'JUMP', to: 8 });
    await soon();
    expect([a.told, b.told, on.records.size]).toEqual([[], [], 1]);
    expect(readKeptText([...on.records.values()][0]?.text ?? '')?.place).toBe(8);
    b.store.send({ type: 'JUMP', to: 4 });
    await soon();
    a.type('70');
    await soon();
    expect([a.told, sides(on)]).toEqual([[], ['70']]);
  });

  test('of which one walks while the other types leaves one panel, whoever is first on the disk', async () => {
    const { on, a, b } = await both();
    a.type('70');
    b.store.send({ type: 'JUMP', to: 9 });
    await a.shelving.flush();
    await soon();
    expect(sides(on)).toEqual(['70']);
    expect([a.told, b.keys()]).toEqual([[], ['kept-elsewhere']]);
    b.type('80');
    await soon();
    expect(sides(on).sort()).toEqual(['70', '80']);
  });

  test('of which one deletes what the other has in hand: it is kept again with the next change', async () => {
    const { on, a } = await both();
    await on.shelf.remove(a.shelving.inHand() ?? '');
    a.type('70');
    await soon();
    expect([sides(on), a.told]).toEqual([['70'], []]);
  });

  test('any order of changes loses no work', async () => {
    for (let seed = 1; seed <= 6; seed++) {
      let drawn = seed;
      const draw = (below: number): number => {
        drawn = (drawn * 48271) % 2147483647;
        return drawn % below;
      };
      const { on, a, b } = await both();
      const tabs = [a, b, await openTab(on, 'c')];
      for (let act = 0; act < 20; act++) {
        const tab = tabs[draw(3)] as typeof a;
        tab.type(`${100 * seed + act}`);
        if (draw(2) === 0) await soon();
      }
      await soon();
      // What each tab shows is on the disk.
      for (const tab of tabs) expect(sides(on), `seed ${seed}`).toContain(tab.side());
    }
  });
});

describe('what was kept', () => {
  test('by a version without a database becomes a panel', async () => {
    const on = browser();
    on.items.set('ringtrue.work', textOf({ name: 'Old' }));
    const tab = await openTab(on, 'a');
    await soon();
    expect(on.records.size).toBe(1);
    expect(copied(on)?.project.name).toBe('Old');
    tab.type('70');
    await soon();
    expect(sides(on)).toEqual(['70']);
    expect(copied(on)?.panel).toBe(tab.shelving.inHand());
  });

  test('before a link was kept becomes a panel under its name', async () => {
    const on = browser();
    on.items.set('ringtrue.work', textOf({ name: 'Sent' }));
    on.items.set('ringtrue.before-link', textOf({ name: 'Mine' }));
    await openTab(on, 'a');
    await soon();
    const names = [...on.records.values()].map(({ text }) => readKeptText(text)?.project.name);
    expect(names.sort()).toEqual(['Mine', 'Sent']);
    expect(on.items.has('ringtrue.before-link')).toBe(false);
  });

  test('of this device stays where a sent panel is kept and the copy finds no room', async () => {
    const on = browser();
    const own = textOf({ name: 'Mine' }, { panel: 'p', stamp: { tab: 't', count: 1, at: 5 } });
    on.records.set('p', { id: 'p', text: own, changed: 5 });
    on.items.set('ringtrue.work', own);
    on.simple.full = true;
    const sent = { ...atFirst, project: { ...example, name: 'Sent' } };
    const tab = await openTab(on, 'a', { start: sent, isNew: true });
    tab.type('70');
    await soon();
    expect(on.records.get('p')?.text).toBe(own);
    expect(sides(on)).toEqual(['64', '70']);
  });

  test('before a link and is a panel already does not become two', async () => {
    const on = browser();
    const text = textOf({ name: 'Mine' }, { panel: 'p', stamp: { tab: 't', count: 1, at: 5 } });
    on.records.set('p', { id: 'p', text, changed: 5 });
    on.items.set('ringtrue.work', textOf({ name: 'Sent' }));
    on.items.set('ringtrue.before-link', text);
    await openTab(on, 'a');
    await soon();
    expect(on.records.size).toBe(2);
    expect(on.items.has('ringtrue.before-link')).toBe(false);
  });

  test.each(['{"version":1,"proj', 'x'.repeat(3000)])(
    'and is damaged, %.20s, is in the list as it was, once',
    async (text) => {
      const on = browser();
      on.items.set('ringtrue.work', text);
      const tab = await openTab(on, 'a');
      tab.type('70');
      await soon();
      kill(tab);
      await openTab(on, 'b');
      await soon();
      expect([...on.records.values()].filter((one) => one.text === text)).toHaveLength(1);
      expect(sides(on).filter(Boolean)).toEqual(['70']);
    },
  );

  test('and finds no room beside itself when it is damaged is in the list all the same', async () => {
    const on = browser();
    const text = `{"version":1,${'x'.repeat(3000)}`;
    on.items.set('ringtrue.work', text);
    on.simple.full = true;
    await openTab(on, 'a');
    on.simple.full = false;
    await soon();
    expect([...on.records.values()].map((one) => one.text)).toEqual([text]);
  });

  test('by a later version is written over nowhere, and this work is a panel of its own', async () => {
    const on = browser();
    const newer = '{"version":99,"panel":"p","more":"work"}';
    on.items.set('ringtrue.work', newer);
    on.records.set('p', { id: 'p', text: newer, changed: 7 });
    const tab = await openTab(on, 'a');
    tab.type('70');
    await soon();
    expect(on.items.get('ringtrue.work')).toBe(newer);
    expect(on.records.get('p')?.text).toBe(newer);
    expect(sides(on).filter(Boolean)).toEqual(['70']);
    expect(tab.calls.guarded).toBe(false);
  });

  test('by a later version while this tab is open is left, and that is told', async () => {
    const on = browser();
    const tab = await openTab(on, 'a');
    tab.type('70');
    await soon();
    const [id] = [...on.records.keys()];
    const newer = '{"version":99,"more":"work"}';
    on.records.set(id ?? '', { id: id ?? '', text: newer, changed: Date.now() });
    tab.type('71');
    await soon();
    expect(on.records.get(id ?? '')?.text).toBe(newer);
    expect(sides(on).filter(Boolean)).toEqual(['71']);
    expect(tab.told.at(-1)?.says).toMatch(/newer version of this page has changed this panel/);
  });
});
