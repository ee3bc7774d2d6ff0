/** The browser's simple store: one text, put there after every event, whole. Needed at once, so it knows no schema. */
import { type Marks, writeKept } from '../input/write-kept.ts';
import type { Snapshot } from '../state/snapshot.ts';

export const key = 'ringtrue.work';

export type Store = Pick<Storage, 'getItem' | 'setItem'> & Partial<Pick<Storage, 'removeItem'>>;

/** The browser's own store, or null where it is closed to us. */
export const deviceStore = (): Store | null => attempt(() => localStorage) ?? null;

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

/** Keeps the work, marked as it was; answers whether the device took it. */
export const keep = (store: Store | null, snapshot: Snapshot, marks?: Marks): boolean =>
  holdText(store, writeKept(snapshot, marks));

/** What an act gives, or undefined where the browser will not. */
export function attempt<T>(act: () => T): T | undefined {
  try {
    return act();
  } catch {
    return undefined;
  }
}
