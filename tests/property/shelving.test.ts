/**
 * Whatever lies in the simple store and in the database: the page opens, what is done is kept, and every text that was
 * there is there still, in one of the two.
 */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { writeStart } from '../../src/input/write-kept.ts';
import { sameProject } from '../../src/keep/same-project.ts';
import { startShelving } from '../../src/keep/shelving.ts';
import { deviceOn, readKept } from '../../src/keep/storage.ts';
import { example, standardSettings } from '../../src/state/project.ts';
import { openStore, type Start } from '../../src/state/store.ts';
import { memoryShelf } from '../unit/memory-shelf.ts';
import { anyPanel } from './any-project.ts';
import { drawFrom, mangled } from './mutants.ts';

const atFirst: Start = { project: example, settings: standardSettings, tab: 'edge', place: 0, answered: [] };

const id = fc.constantFrom('p', 'q', 'r');
const stamp = fc.record({ tab: fc.constantFrom('a', 'b'), count: fc.nat(9), at: fc.nat(1000) });
/** A kept text: whole, mangled on the way, or of a later version. */
const text = fc
  .tuple(anyPanel, fc.record({ panel: id, stamp }, { requiredKeys: [] }), fc.nat(), fc.nat(3))
  .map(([panel, marks, seed, way]) => {
    const whole = writeStart({ ...atFirst, ...panel }, marks);
    if (way === 0) return mangled(whole, drawFrom(seed));
    return way === 1 ? whole.replace('"version":1', '"version":2') : whole;
  });
const records = fc.uniqueArray(fc.record({ id, text, changed: fc.nat(1000) }), {
  selector: (one) => one.id,
  maxLength: 3,
});
const items = fc.dictionary(
  fc.constantFrom('ringtrue.work', 'ringtrue.before-link', 'ringtrue.set-aside', 'ringtrue.set-aside-2'),
  text,
);

const silent = {
  tab: 'this',
  whenHidden: () => () => {},
  guard: () => {},
  persist: () => {},
};

it('whatever is kept, nothing of it is lost, and what is done now is kept beside it', async () => {
  await fc.assert(
    fc.asyncProperty(items, records, async (simple, shelved) => {
      const { shelf, records: all } = memoryShelf();
      for (const one of shelved) all.set(one.id, one);
      const stored = new Map(Object.entries(simple));
      const store = {
        getItem: (key: string) => stored.get(key) ?? null,
        setItem: (key: string, value: string) => void stored.set(key, value),
        removeItem: (key: string) => void stored.delete(key),
      };
      const held = store.getItem('ringtrue.work');
      const app = openStore(readKept(store) ?? atFirst);
      const opened = { snapshot: app.snapshot(), held };
      const device = { ...deviceOn(store), whenElsewhere: () => () => {} };
      const shelving = await startShelving(app, {
        device,
        shelf,
        notify: () => {},
        opened,
        around: silent,
        handOut: () => {},
      });
      await shelving.flush();
      const texts = (): string[] => [...stored.values(), ...[...all.values()].map((one) => one.text)];
      const there = texts();
      // Of the panel in hand and its copy the later one is there; every other text is there.
      const inHand = shelving.inHand();
      const copied = held === null ? null : device.read(held);
      const others = shelved.filter((one) => one.id !== inHand && one.id !== copied?.panel);
      const asides = Object.entries(simple).filter(([key]) => key !== 'ringtrue.work');
      const before = [...asides.map(([, one]) => one), ...others.map((one) => one.text)];
      if (held !== null && copied === null) before.push(held);
      for (const one of before) {
        const read = device.read(one);
        const isThere = (other: string): boolean => {
          const work = other === one ? null : device.read(other);
          return other === one || (read !== null && work !== null && sameProject(read, work));
        };
        expect(there.some(isThere)).toBe(true);
      }
      app.send({ type: 'TYPE', field: 'lead', text: 'typed now' });
      expect(await shelving.flush()).toBe(true);
      shelving.stop();
      app.stop();
      expect([...all.values()].some((one) => one.text.includes('typed now'))).toBe(true);
    }),
    { numRuns: 300 },
  );
});
