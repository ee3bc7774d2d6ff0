/** Saving panels as a file, and opening one. What was there before stays. */
import { longestFile, type Panel, readFile, writeFile } from '../input/file.ts';
import { writeStart } from '../input/write-kept.ts';
import { newName } from '../keep/around.ts';
import type { Keeping } from '../keep/keep-types.ts';
import type { Shelf, Shelved } from '../keep/shelf.ts';
import type { Start, Store } from '../state/store.ts';
import { fileNameOf, saveFile } from '../take-along/save.ts';
import { panelsSay, sayOpened, sayOpenedAlone, sayRefused, saySaved } from '../words/panels.ts';

/** What was done, in a sentence. */
type Said = string;

const panelOf = ({ project, place, answered }: Panel): Panel => ({ project, place, answered });

const saveAs = (panels: readonly Panel[], name: string, day: string): void =>
  saveFile(writeFile(panels, day), 'application/json', name);

export function saveOne(panel: Panel, day: string): Said {
  const file = fileNameOf(panel.project.name || 'panel', 'json');
  saveAs([panelOf(panel)], file, day);
  return saySaved(1, file, 0);
}

/** @param unread how many there are besides that cannot be read */
export function saveAll(panels: readonly Panel[], unread: number, day: string): Said {
  const file = 'ringtrue-panels.json';
  saveAs(panels.map(panelOf), file, day);
  return saySaved(panels.length, file, unread);
}

/** Opens the panels of a file: each is kept, and one alone is taken in hand. */
export async function openFile(file: File, store: Store, keeping: Keeping): Promise<Said> {
  if (file.size > longestFile) return sayRefused('huge');
  const text = await file.text().catch(() => null);
  if (text === null) return panelsSay.notRead;
  const read = readFile(text);
  if (!read.ok) return sayRefused(read.why);
  const { shelf, shelving } = keeping;
  const settings = store.snapshot().settings;
  const starts = read.panels.map((panel): Start => ({ ...panel, settings, tab: 'edge' }));
  const [first] = starts;
  if (!shelf || !shelving) {
    if (first) openAlone(first, store, keeping);
    return sayOpenedAlone(starts.length, read.trust);
  }
  await shelving.flush();
  const before = await shelf.list();
  const works = before.map((one) => JSON.stringify(keeping.device.read(one.text)?.project));
  const placeBefore = ({ project }: Start): number => works.indexOf(JSON.stringify(project));
  const fresh = starts.filter((start) => placeBefore(start) < 0);
  const shelved = await shelveAll(fresh, shelf);
  if (shelved === null) return panelsSay.noRoom;
  if (first && starts.length === 1) {
    const one = shelved[0] ?? before[placeBefore(first)];
    const isInHand = one?.id === shelving.inHand();
    if (one && !isInHand && !(await shelving.take(first, one))) return panelsSay.notTaken;
  }
  return sayOpened({
    name: first?.project.name ?? '',
    opened: fresh.length,
    there: starts.length - fresh.length,
    unread: read.unread,
    trust: read.trust,
  });
}

/** All of them or none: null where the device has no room. */
async function shelveAll(starts: readonly Start[], shelf: Shelf): Promise<Shelved[] | null> {
  const shelved: Shelved[] = [];
  const now = Date.now();
  for (const [i, start] of starts.entries()) {
    const id = newName();
    // The first of the file comes first in the list.
    const changed = now - i;
    const text = writeStart(start, { stamp: { tab: id, count: 0, at: changed }, panel: id });
    const panel = { id, text, changed };
    if ((await shelf.put(panel, null)) !== 'put') {
      for (const one of shelved) await shelf.remove(one.id);
      return null;
    }
    shelved.push(panel);
  }
  return shelved;
}

/** Where one panel is kept, the own work is set aside, and undo brings it back. */
function openAlone({ project, place, answered }: Start, store: Store, { device }: Keeping): void {
  device.setAside(device.textOf(store.snapshot(), {}));
  store.send({ type: 'OPEN', project, place, answered });
}
