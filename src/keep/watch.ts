/** What looks after the work once the page stands: fetched after the first look, so that it costs that nothing. */
import { writeFile } from '../input/file.ts';
import { registerOffline } from '../offline/register.ts';
import type { Snapshot } from '../state/snapshot.ts';
import type { Store } from '../state/store.ts';
import {
  type Notice,
  newerVersion,
  onePanelOnly,
  panelsLost,
  panelsOfNewer,
  setAside,
} from '../words/notices.ts';
import { thisPage } from './around.ts';
import { today } from './day.ts';
import { attempt, heldText, type Store as Simple } from './device.ts';
import type { Keeping, Opened } from './keep-types.ts';
import { startKeeping } from './keeping.ts';
import type { offerWaysOn } from './sent.ts';
import { openShelf, type Shelf } from './shelf.ts';
import { shelveCopy } from './shelf-opening.ts';
import { startShelving } from './shelving.ts';
import { deviceOn } from './storage.ts';

export type Watching = {
  notify: (notice: Notice) => void;
  /** What kept the work so far, and how things stood when the page opened. */
  early: Opened & { stop(): void };
  /** A panel that came with the address; what was kept and cannot be read. */
  sent: { offerWaysOn?: typeof offerWaysOn; aside?: string | null };
  /** Hands a text over as a file. */
  saveText(text: string, name: string): unknown;
  /** Opens the list of panels, with a file that was dropped on the page. */
  openPanels(file: File): unknown;
};

/** Says that there are panels in the database: where they are gone then, the browser has lost them. */
const markKey = 'ringtrue.panels';

/** Keeps the work and the pages on the device. */
export async function watchOver(
  store: Store,
  simple: Simple | null,
  { notify, early, sent, saveText, openPanels }: Watching,
): Promise<Keeping> {
  registerOffline((useIt) => notify(newerVersion(useIt)));
  const { aside } = sent;
  takeDropped(openPanels);
  const handOut = ({ project, place, answered }: Snapshot): void => {
    saveText(writeFile([{ project, place, answered }], today()), 'ringtrue-panel.json');
  };
  const shelf = await shelfOf(simple, notify);
  const keeping: Keeping = { device: deviceOn(simple), shelf, shelving: null };
  const watch = async (opened: Opened): Promise<Keeping> => {
    const { device } = keeping;
    const around = thisPage();
    early.stop();
    if (shelf)
      keeping.shelving = await startShelving(store, { device, shelf, notify, opened, around, handOut });
    else {
      startKeeping(store, device, { notify, opened, around, handOut });
      tellOnce(store, () => notify(onePanelOnly(() => handOut(store.snapshot()))));
    }
    if (aside) {
      const saveIt = (): void => void saveText(aside, 'ringtrue-set-aside.json');
      notify(setAside(saveIt, (keeping.shelving?.inHand() ?? null) === null));
    }
    return keeping;
  };
  if (!sent.offerWaysOn) return watch(early);
  if (shelf) await shelveCopy(keeping.device, shelf).catch(() => {});
  sent.offerWaysOn(store, simple, notify, () =>
    watch({ snapshot: store.snapshot(), held: heldText(simple), isNew: true }),
  );
  return keeping;
}

/** A file held over the page is shown to be welcome, and opened where it is let go. */
function takeDropped(open: (file: File) => unknown): void {
  const show = (isOver: boolean): unknown =>
    document.documentElement.toggleAttribute('data-dropping', isOver);
  const holdsFile = ({ dataTransfer }: DragEvent): boolean => dataTransfer?.types.includes('Files') ?? false;
  addEventListener('dragover', (event) => {
    if (!holdsFile(event)) return;
    event.preventDefault();
    show(true);
  });
  addEventListener('dragleave', (event) => event.relatedTarget ?? show(false));
  addEventListener('drop', (event) => {
    if (!holdsFile(event)) return;
    event.preventDefault();
    show(false);
    const [file] = event.dataTransfer?.files ?? [];
    if (file) open(file);
  });
}

/** Told with the first change of the work. */
function tellOnce(store: Store, tell: () => void): void {
  const { project } = store.snapshot();
  const stop = store.subscribe((now) => {
    if (now.project === project) return;
    stop();
    tell();
  });
}

async function shelfOf(simple: Simple | null, notify: (notice: Notice) => void): Promise<Shelf | null> {
  const shelf = await openShelf().catch((error: unknown) => {
    if (error instanceof DOMException && error.name === 'VersionError') notify(panelsOfNewer());
    return null;
  });
  if (shelf === null) return null;
  const all = await shelf.list().catch(() => null);
  if (all === null) return null;
  const isMarked = attempt(() => simple?.getItem(markKey) ?? null) !== null;
  if (isMarked && all.length === 0) notify(panelsLost());
  const mark = (isAny: boolean): unknown =>
    attempt(() => (isAny ? simple?.setItem(markKey, 'kept') : simple?.removeItem?.(markKey)));
  if (all.length === 0) mark(false);
  return {
    ...shelf,
    put: async (panel, known) => {
      const answer = await shelf.put(panel, known);
      if (answer === 'put') mark(true);
      return answer;
    },
    remove: async (id) => {
      const isGone = await shelf.remove(id);
      if (isGone && (await shelf.list()).length === 0) mark(false);
      return isGone;
    },
  };
}
