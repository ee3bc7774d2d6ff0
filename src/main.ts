/** Opens the page: what was kept, the state, the panels, and then the drawing. */

import { render } from 'lit-html';
import { missingPart, openAgain } from './controls/missing-part.ts';
import type { Showing } from './draw-on-table.ts';
import { deviceStore, heldText, keep } from './keep/device.ts';
import { createNotices } from './page/notices/notices.ts';
import { mountPanels } from './page/page.ts';
import { example, standardSettings } from './state/project.ts';
import type { Snapshot } from './state/snapshot.ts';
import { openStore, type Start } from './state/store.ts';
import type { Notice } from './words/notices.ts';
import { partMissing } from './words/part-missing.ts';

const device = deviceStore();
const held = heldText(device);

const atFirst: Start = { project: example, settings: standardSettings, tab: 'edge', place: 0, answered: [] };

// What reads it is fetched only where there is something to read.
if (held === null) begin(atFirst);
else
  import('./keep/storage.ts').then(({ readKept }) => {
    const own = readKept(device);
    begin(own ?? atFirst, own === null ? held : null);
  }, cannotOpen);

// An address that is pasted over this one is another opening.
addEventListener('hashchange', () => location.hash !== '' && openAgain());

/** @param aside what was kept and cannot be read */
function begin(own: Start, aside: string | null = null): void {
  if (location.hash === '') open(own, { aside });
  else
    import('./keep/sent.ts').then(async ({ openSent, offerWaysOn }) => {
      const sent = await openSent(location.hash, own);
      if (sent && 'start' in sent) open(sent.start, { offerWaysOn, aside });
      else open(own, { ...sent, aside });
    }, cannotOpen);
}

/** What is kept cannot be read without its reader: nothing is opened in its place. */
function cannotOpen(): void {
  render(missingPart(), document.querySelector('main') as HTMLElement);
}

/** What came with the address: a panel that is not kept yet, or why there is none. */
type Sent = {
  offerWaysOn?: typeof import('./keep/sent.ts').offerWaysOn;
  notice?: Notice;
  aside?: string | null;
};

function open(start: Start, { offerWaysOn, notice, aside }: Sent = {}): void {
  const store = openStore(start);
  const showing: Showing = { table: null, scene: null };

  const notices = createNotices();
  const tellMissing = (): void => notices.add(partMissing(openAgain));
  let offered: Promise<() => Promise<void>> | null = null;
  const lessons = (): Promise<() => Promise<void>> => {
    offered ??= import('./lessons/open-lessons.ts').then(({ offerLessons }) => offerLessons(store, device));
    return offered;
  };

  const opened = { snapshot: store.snapshot() };

  // The styles know both themes; what is worn of yarns comes with the drawing.
  const { theme } = start.settings;
  if (theme !== 'auto') document.documentElement.dataset.theme = theme;
  const wearing = import('./page-theme.ts').then(({ wearTheme }) => wearTheme(store)).catch(tellMissing);
  const panels = mountPanels(document.getElementById('app') as HTMLElement, {
    subscribe: store.subscribe,
    snapshot: store.snapshot,
    send: store.send,
    notices,
    openLessons: () =>
      lessons()
        .then((open) => open())
        .catch(tellMissing),
    onMissing: tellMissing,
  });
  // Every tap is kept from the first one on; what another tab has put there is left to what watches over it.
  let known = held;
  const stopKeeping = store.subscribe((snapshot) => {
    if (offerWaysOn) return;
    if (heldText(device) === known && keep(device, snapshot)) known = heldText(device);
  });
  const watching = import('./keep/watch.ts')
    .then(({ watchOver }) => {
      stopKeeping();
      const watch = (snapshot: Snapshot, text: string | null): void =>
        watchOver(store, device, notices.add, { snapshot, held: text });
      if (offerWaysOn)
        offerWaysOn(store, device, notices.add, () => watch(store.snapshot(), heldText(device)));
      else watch(opened.snapshot, known);
    })
    .catch(tellMissing);
  if (notice) notices.add(notice);
  if (aside) {
    const saveIt = (): void => {
      import('./take-along/save.ts')
        .then(({ saveFile }) => saveFile(aside, 'application/json', 'ringtrue-set-aside.json'))
        .catch(tellMissing);
    };
    import('./words/notices.ts').then(({ setAside }) => notices.add(setAside(saveIt))).catch(tellMissing);
  }
  const cloth = import('./state/cloth.ts')
    .then(({ clothOfSnapshot }) => store.learnCloth(clothOfSnapshot))
    .catch(tellMissing);
  const drawing = import('./draw-on-table.ts')
    .then(({ showOnTable }) => showOnTable(store, panels, showing))
    .catch(tellMissing);
  const ready = Promise.all([panels.complete, drawing, watching, cloth, wearing]);

  // For tests: the state and the draw list as data, and a way in for events.
  if (new URLSearchParams(location.search).has('probe'))
    Object.assign(window, {
      ringtrue: {
        send: store.send,
        snapshot: store.snapshot,
        scene: () => showing.scene,
        table: () => showing.table,
        ready,
      },
    });
}
