/** What the page opens with: the copy that was shown at once, or what the database knows better. */
import { example } from '../state/project.ts';
import { newName } from './around.ts';
import type { Work } from './keep-types.ts';
import { sameProject } from './same-project.ts';
import type { Shelf, Shelved } from './shelf.ts';
import type { Device } from './storage.ts';

export type Opening = {
  /** The panel in hand, its text in the database, and when it was changed. */
  id: string | null;
  known: string | null;
  at: number;
  /** What was shown is later than what is in the database: it is put there. */
  isAhead?: boolean;
  /** A later version of the page has changed the panel. */
  isOfNewer?: boolean;
  /** The database has later work than what was shown. */
  open?: { work: Work; from: Shelved };
};

const nothing: Opening = { id: null, known: null, at: 0 };

/** What is shown becomes a panel that was not there before. */
export const newPanel = (): Opening => ({ ...nothing, at: Date.now(), isAhead: true });

/** @param held the text in the simple store; where there is none, or none that can be read, the example was shown */
export async function openingOf(device: Device, shelf: Shelf, held: string | null): Promise<Opening> {
  const shown = held === null ? null : device.read(held);
  if (shown === null) return lastChanged(device, shelf);
  const at = shown.stamp?.at ?? 0;
  // Kept by an earlier version, or sent. The example that nothing was done with is no panel.
  if (shown.panel === undefined) {
    const isExample = shown.place === 0 && JSON.stringify(shown.project) === JSON.stringify(example);
    return isExample ? nothing : newPanel();
  }
  const id = shown.panel;
  const there = await shelf.get(id).catch(() => null);
  if (there === null) return { id, known: null, at, isAhead: true };
  const theirs = device.read(there.text);
  if (theirs === null) return { ...nothing, at, isAhead: true, isOfNewer: true };
  const isSame =
    there.text === held ||
    JSON.stringify([theirs.project, theirs.place, theirs.answered]) ===
      JSON.stringify([shown.project, shown.place, shown.answered]);
  if (isSame) return { id, known: there.text, at: there.changed };
  return there.changed > at
    ? { ...nothing, open: { work: theirs, from: there } }
    : { id, known: there.text, at, isAhead: true };
}

/** Puts the copy in the simple store into the database, where it is later: while another panel is only looked at. */
export async function shelveCopy(device: Device, shelf: Shelf): Promise<void> {
  const text = device.held();
  const { id, known, at, isAhead } = await openingOf(device, shelf, text);
  if (text !== null && isAhead) await shelf.put({ id: id ?? newName(), text, changed: at }, known);
}

/** The simple store was emptied, damaged, or never written: the browser puts it on the disk late. */
async function lastChanged(device: Device, shelf: Shelf): Promise<Opening> {
  for (const from of await shelf.list().catch(() => [])) {
    const work = device.read(from.text);
    if (work) return { ...nothing, open: { work, from } };
  }
  return nothing;
}

/**
 * What lies in the simple store under other names becomes a panel each: the own work from before a link, and texts that
 * cannot be read, which are then listed as such. @param held the text of the page, set aside as well where it cannot be read
 */
export async function shelveAsides(device: Device, shelf: Shelf, held: string | null): Promise<void> {
  const asides = device.aside();
  // A long text finds no room beside itself.
  if (held !== null && device.read(held) === null && asides.every(({ text }) => text !== held))
    await shelveText(device, shelf, held);
  for (const { name, text } of asides) if (await shelveText(device, shelf, text)) device.dropAside(name);
}

/** Answers whether the work is in the database: beside another one, where they differ. */
async function shelveText(device: Device, shelf: Shelf, text: string): Promise<boolean> {
  const all = await shelf.list().catch(() => null);
  if (all === null) return false;
  const work = device.read(text);
  const isThere = (one: Shelved): boolean => {
    const other = one.text === text ? null : device.read(one.text);
    return one.text === text || (work !== null && other !== null && sameProject(work, other));
  };
  if (all.some(isThere)) return true;
  // Under a name of its own: the copy of the panel it is named after may come to lie there.
  const changed = work?.stamp?.at ?? 0;
  return (await shelf.put({ id: newName(), text, changed }, null)) === 'put';
}
