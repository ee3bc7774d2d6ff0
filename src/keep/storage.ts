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
  const text = attempt(() => store?.getItem(key) ?? null);
  if (typeof text !== 'string') return null;
  const kept = attempt(() => JSON.parse(text) as unknown);
  if (typeof kept !== 'object' || kept === null || (kept as Kept).version !== version) {
    attempt(() => store?.setItem(asideKey, text));
    return null;
  }
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

const readTab = (value: unknown): Tab => (value === 'walk' || value === 'wrong' ? value : 'edge');

/** Keeps the work; answers whether the device took it. */
export function keep(store: Store | null, snapshot: Snapshot): boolean {
  const { project, settings, tab, place, answered } = snapshot;
  const text = JSON.stringify({ version, project, settings, tab, place, answered });
  return attempt(() => (store ? (store.setItem(key, text), true) : false)) === true;
}

/** The browser's own store, or null where it is closed to us. */
export const deviceStore = (): Store | null => attempt(() => localStorage) ?? null;

/** Another tab kept newer work: calls back, so that neither is lost silently. */
export function whenKeptElsewhere(then: () => void): void {
  addEventListener('storage', (event) => {
    if (event.key === key) then();
  });
}

function attempt<T>(act: () => T): T | undefined {
  try {
    return act();
  } catch {
    return undefined;
  }
}
