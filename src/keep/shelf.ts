/**
 * The panels in the browser's database, one record each.
 *
 * Invariant: what is there is written over only by who knows it. Whoever puts says what it believes to be there, in the
 * same transaction; so two tabs, or an earlier version of the page, never overwrite each other's work.
 */
import { type DBSchema, type IDBPDatabase, openDB } from 'idb';

/** A panel as its kept text (`input/kept.ts`). `changed`: when, in ms since 1970. */
export type Shelved = { id: string; text: string; changed: number };

/** `put`; or another text than the known one is there; or the browser did not take it. */
export type Put = 'put' | 'theirs' | 'refused';

export type Shelf = {
  /** The last changed first. A record that is not as it should be is given as a text that cannot be read. */
  list(): Promise<Shelved[]>;
  get(id: string): Promise<Shelved | null>;
  /** Promised to be on the disk once it is answered. @param known the text that is there; null where there is none yet */
  put(panel: Shelved, known: string | null): Promise<Put>;
  /** Answers whether it is gone. */
  remove(id: string): Promise<boolean>;
};

const store = 'panels';
interface Panels extends DBSchema {
  [store]: { key: string; value: Shelved };
}

/** The browser may never answer: then there is no shelf. */
const patienceMs = 4000;

/** A record as it should be, whatever is there. */
function sound(record: unknown, id: string): Shelved {
  const { text, changed } = (record ?? {}) as Partial<Shelved>;
  return {
    id,
    text: typeof text === 'string' ? text : (JSON.stringify(record) ?? ''),
    changed: typeof changed === 'number' && Number.isFinite(changed) ? changed : 0,
  };
}

/** Opens the database, and again where the browser has closed it. Rejects where there is none, or a later version's. */
export async function openShelf(): Promise<Shelf> {
  let opened: Promise<IDBPDatabase<Panels>> | null = null;
  const database = (): Promise<IDBPDatabase<Panels>> => {
    opened ??= openDB<Panels>('ringtrue', 1, {
      upgrade: (made) => {
        made.createObjectStore(store, { keyPath: 'id' });
      },
      // A later version asks for it: this page gives way, and finds it closed from then on.
      blocking: (_mine, _theirs, event) => {
        (event.target as IDBDatabase).close();
        opened = null;
      },
      terminated: () => {
        opened = null;
      },
    }).catch((error: unknown) => {
      opened = null;
      throw error;
    });
    return opened;
  };
  await inTime(database());
  const idOf = ({ id }: { id: unknown }): string => String(id);
  return {
    list: async () =>
      (await (await database()).getAll(store))
        .map((record) => sound(record, idOf(record)))
        .toSorted((one, other) => other.changed - one.changed),
    get: async (id) => {
      const record = await (await database()).get(store, id);
      return record === undefined ? null : sound(record, id);
    },
    put: async (panel, known) => {
      try {
        const all = (await database()).transaction(store, 'readwrite', { durability: 'strict' });
        const there = await all.store.get(panel.id);
        const isTheirs = there !== undefined && there.text !== known;
        if (!isTheirs) all.store.put(panel).catch(() => {});
        await all.done;
        return isTheirs ? 'theirs' : 'put';
      } catch {
        return 'refused';
      }
    },
    remove: async (id) => {
      try {
        const all = (await database()).transaction(store, 'readwrite', { durability: 'strict' });
        all.store.delete(id).catch(() => {});
        await all.done;
        return true;
      } catch {
        return false;
      }
    },
  };
}

function inTime<T>(work: Promise<T>): Promise<T> {
  return new Promise((done, fail) => {
    const patience = setTimeout(() => fail(new Error('The database does not open')), patienceMs);
    work.then(done, fail).finally(() => clearTimeout(patience));
  });
}
