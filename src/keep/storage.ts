/** The work as it is kept on this device. What cannot be read at all is set aside under another name, not thrown away. */
import { isNewerText, type Kept, readKeptText } from '../input/kept.ts';
import { type Marks, writeKept } from '../input/write-kept.ts';
import type { Snapshot } from '../state/snapshot.ts';
import { attempt, heldText, holdText, key, type Store } from './device.ts';

const asideKey = 'ringtrue.set-aside';

/** What was kept, or null on a first visit. */
export function readKept(store: Store | null): Kept | null {
  const text = heldText(store);
  if (text === null) return null;
  const read = readKeptText(text);
  if (read === null) setAside(store, text);
  return read;
}

/** Each under a name of its own: what was set aside before stays. */
function setAside(store: Store | null, text: string): void {
  attempt(() => {
    for (let count = 1; store !== null; count++) {
      const name = count === 1 ? asideKey : `${asideKey}-${count}`;
      const there = store.getItem(name);
      if (there === null) store.setItem(name, text);
      if (there === null || there === text) return;
    }
  });
}

/** The own work from before a sent panel was kept in its place. */
export const beforeKey = 'ringtrue.before-link';

const asideNames = [beforeKey, asideKey, ...Array.from({ length: 48 }, (_, n) => `${asideKey}-${n + 2}`)];

/** The device as those see it who keep work on it: texts, and what they mean. */
export type Device = {
  held(): string | null;
  hold(text: string): boolean;
  textOf(snapshot: Snapshot, marks: Marks): string;
  /** What a text means, or null where it is no work. */
  read(text: string): Kept | null;
  /** It is of a later version, and not ours to write over. */
  isNewer(text: string): boolean;
  /** Keeps a text under another name, out of the way. */
  setAside(text: string): void;
  /** What was put out of the way so far, by name: texts that could not be read, and the own work from before a link. */
  aside(): { name: string; text: string }[];
  /** It is kept elsewhere now. */
  dropAside(name: string): void;
  whenElsewhere(then: () => void): () => void;
};

export const deviceOn = (store: Store | null): Device => ({
  held: () => heldText(store),
  hold: (text) => holdText(store, text),
  textOf: writeKept,
  read: readKeptText,
  isNewer: isNewerText,
  setAside: (text) => setAside(store, text),
  aside: () =>
    asideNames.flatMap((name) => {
      const text = attempt(() => store?.getItem(name));
      return text ? [{ name, text }] : [];
    }),
  dropAside: (name) => attempt(() => store?.removeItem?.(name)),
  whenElsewhere: whenKeptElsewhere,
});

/** Another tab kept newer work: calls back, so that neither is lost silently. Gives back how to stop. */
function whenKeptElsewhere(then: () => void): () => void {
  const listen = (event: StorageEvent): void => {
    if (event.key === key) then();
  };
  addEventListener('storage', listen);
  return () => removeEventListener('storage', listen);
}
