/** Opens the page: what was kept, the state, the panels, and then the drawing. */

import { render } from 'lit-html';
import { missingPart, openAgain } from './controls/missing-part.ts';
import type { Showing } from './draw-on-table.ts';
import type { Kept } from './input/kept.ts';
import { deviceStore, heldText, keep } from './keep/device.ts';
import type { Sent } from './look-after.ts';
import { createNotices } from './page/notices/notices.ts';
import { mountPanels } from './page/page.ts';
import { example, standardSettings } from './state/project.ts';
import { openStore, type Start } from './state/store.ts';
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
function begin(own: Kept, aside: string | null = null): void {
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

function open(start: Kept, sent: Sent = {}): void {
  const store = openStore(start);
  const showing: Showing = { table: null, scene: null };

  const notices = createNotices();
  const tellMissing = (): void => notices.add(partMissing(openAgain));

  // Every tap is kept from the first one on; what another tab has put there is left to what watches over it.
  const early = {
    snapshot: store.snapshot(),
    held,
    stop: store.subscribe((snapshot) => {
      if (sent.offerWaysOn || sent.aside) return;
      if (heldText(device) === early.held && keep(device, snapshot, start)) early.held = heldText(device);
    }),
  };

  // The styles know both themes; what is worn of yarns comes with the drawing.
  const { theme } = start.settings;
  if (theme !== 'auto') document.documentElement.dataset.theme = theme;
  const themed = import('./page-theme.ts').then(({ wearTheme }) => wearTheme(store)).catch(tellMissing);
  const looking = import('./look-after.ts').then(({ lookAfter }) =>
    lookAfter(store, device, { notify: notices.add, onMissing: tellMissing, early, sent }),
  );
  const panels = mountPanels(document.getElementById('app') as HTMLElement, {
    subscribe: store.subscribe,
    snapshot: store.snapshot,
    send: store.send,
    notices,
    openLessons: () => looking.then((care) => care.openLessons()),
    openPanels: () => looking.then((care) => care.openPanels()),
    onMissing: tellMissing,
  });
  const drawing = import('./draw-on-table.ts')
    .then(({ showOnTable }) => showOnTable(store, panels, showing))
    .catch(tellMissing);
  const looked = looking.then(({ ready }) => ready).catch(tellMissing);
  const ready = Promise.all([panels.complete, drawing, looked, themed]);

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
