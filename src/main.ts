/** Opens the page: what was kept, the state, the panels, and then the drawing. */
import { registerOffline } from './keep/offline.ts';
import { deviceStore, keep, readKept } from './keep/storage.ts';
import { offerLessons } from './learning.ts';
import { mountPanels } from './panels/app.ts';
import type { Showing } from './showing.ts';
import { example, standardSettings } from './state/project.ts';
import { openStore } from './state/store.ts';
import { wearTheme } from './wearing.ts';

const device = deviceStore();
const store = openStore(
  readKept(device) ?? { project: example, settings: standardSettings, tab: 'edge', place: 0, answered: [] },
);
const showing: Showing = { table: null, scene: null };

wearTheme(store);
const panels = mountPanels(document.getElementById('app') as HTMLElement, {
  subscribe: store.subscribe,
  snapshot: store.snapshot,
  send: store.send,
  openLessons: offerLessons(store, device),
});
store.subscribe((snapshot) => keep(device, snapshot));
registerOffline(() => {});
const ready = import('./showing.ts').then(({ showOnTable }) => showOnTable(store, panels, showing));

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
