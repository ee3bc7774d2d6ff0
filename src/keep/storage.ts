/**
 * Keeping the work on this device: after every event, whole, so that never more than the last tap is lost.
 *
 * What is read back is not trusted: every field is read for itself, and what cannot be read at all is set aside
 * under another name, not thrown away.
 */
import { readProject, readSettings, standardSettings } from '../state/project.ts';
import type { Settings, Snapshot, Tab } from '../state/snapshot.ts';
import type { Start } from '../state/store.ts';

const key = 'ringtrue.work';
const asideKey = 'ringtrue.set-aside';
const version = 1;

export type Store = Pick<Storage, 'getItem' | 'setItem'>;

type Kept = Record<string, unknown>;

/** What was kept, or null on a first visit. */
export function readKept(store: Store | null, standard: Settings = standardSettings): Start | null {
  const text = heldText(store);
  if (text === null) return null;
  const read = readText(text, standard);
  if (read === null) setAside(store, text);
  return read;
}

const setAside = (store: Store | null, text: string): void => {
  attempt(() => store?.setItem(asideKey, text));
};

function readText(text: string, standard: Settings): Start | null {
  const kept = attempt(() => JSON.parse(text) as unknown);
  if (typeof kept !== 'object' || kept === null || (kept as Kept).version !== version) return null;
  const fields = kept as Kept;
  const place = fields.place;
  return {
    project: readProject(fields.project),
    settings: readSettings(fields.settings, standard),
    tab: readTab(fields.tab),
    place: typeof place === 'number' && Number.isInteger(place) && place >= 0 ? place : 0,
    answered: Array.isArray(fields.answered)
      ? fields.answered.filter((one) => one === 'twist' || one === 'pad')
      : [],
  };
}

const readTab = (value: unknown): Tab =>
  value === 'cloth' || value === 'walk' || value === 'wrong' ? value : 'edge';

/** Who kept it, and the how manieth time: two tabs never write the same. */
export type Stamp = { tab: string; count: number };

/** The work as it is kept. */
export function keptTextOf(snapshot: Snapshot, stamp?: Stamp): string {
  const { project, settings, tab, place, answered } = snapshot;
  return JSON.stringify({ version, stamp, project, settings, tab, place, answered });
}

/** What the device holds just now, unread; null where there is nothing or it is closed to us. */
export const heldText = (store: Store | null): string | null =>
  attempt(() => store?.getItem(key) ?? null) ?? null;

/** Puts the text on the device; answers whether the device took it. */
export function holdText(store: Store | null, text: string): boolean {
  const put = (): boolean => {
    store?.setItem(key, text);
    return store !== null;
  };
  return attempt(put) === true;
}

/** Keeps the work; answers whether the device took it. */
export const keep = (store: Store | null, snapshot: Snapshot): boolean =>
  holdText(store, keptTextOf(snapshot));

/** The device as those see it who keep work on it: texts, and what they mean. */
export type Device = {
  held(): string | null;
  hold(text: string): boolean;
  textOf(snapshot: Snapshot, stamp: Stamp): string;
  /** What a text means, or null where it is no work. */
  read(text: string): Start | null;
  /** Keeps a text under another name, out of the way. */
  setAside(text: string): void;
  whenElsewhere(then: () => void): () => void;
};

export const deviceOn = (store: Store | null): Device => ({
  held: () => heldText(store),
  hold: (text) => holdText(store, text),
  textOf: keptTextOf,
  read: (text) => readText(text, standardSettings),
  setAside: (text) => setAside(store, text),
  whenElsewhere: whenKeptElsewhere,
});

/** The browser's own store, or null where it is closed to us. */
export const deviceStore = (): Store | null => attempt(() => localStorage) ?? null;

/** Another tab kept newer work: calls back, so that neither is lost silently. Gives back how to stop. */
export function whenKeptElsewhere(then: () => void): () => void {
  const listen = (event: StorageEvent): void => {
    if (event.key === key) then();
  };
  addEventListener('storage', listen);
  return () => removeEventListener('storage', listen);
}

function attempt<T>(act: () => T): T | undefined {
  try {
    return act();
  } catch {
    return undefined;
  }
}
