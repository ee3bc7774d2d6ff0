/**
 * Shows the snapshot on the table: the library that draws is fetched once the page already works, then every
 * change of the state becomes a scene, and what a hand does on the table becomes an event.
 */
import { buildScene, spotToPosition } from './drawing/scene.ts';
import type { Panels } from './panels/app.ts';
import type { Snapshot } from './state/snapshot.ts';
import type { Store } from './state/store.ts';
import type { Scene, Spot } from './table/draw-list.ts';
import type { Table } from './table/table.ts';
import { applyTheme, THEMES, type ThemeName } from './theme/theme.ts';

export type Showing = { table: Table | null; scene: Scene | null };

const darkWanted = matchMedia('(prefers-color-scheme: dark)');

/** The theme that a choice means just now. */
export const themeName = (choice: Snapshot['settings']['theme']): ThemeName =>
  choice === 'auto' ? (darkWanted.matches ? 'dark' : 'light') : choice;

/** Puts the theme on the page, now and whenever the choice or the device's own changes. */
export function wearTheme(store: Store): void {
  let worn = '';
  const wear = (): void => {
    const { theme, yarns } = store.snapshot().settings;
    const name = themeName(theme);
    const wanted = JSON.stringify([name, yarns]);
    if (wanted === worn) return;
    worn = wanted;
    document.documentElement.dataset.theme = name;
    applyTheme(document.documentElement, THEMES[name], yarns);
  };
  wear();
  store.subscribe(wear);
  darkWanted.addEventListener('change', wear);
}

/** Fetches the drawing and keeps it true from then on. */
export async function showOnTable(store: Store, panels: Panels, showing: Showing): Promise<void> {
  const { openTable } = await import('./table/table.ts');
  const { settings } = store.snapshot();
  const table = await openTable(panels.table, {
    theme: themeName(settings.theme),
    yarns: settings.yarns,
    names: { whole: 'The whole panel', close: 'The close-up' },
    onPoint: (spot) => store.send({ type: 'POINT', at: spot && positionOf(showing, spot) }),
    onChoose: (spot) => choose(store, showing, spot),
    flat: new URLSearchParams(location.search).has('flat'),
  });
  showing.table = table;
  const draw = (): void => {
    showing.scene = buildScene(store.snapshot(), showing.scene ?? undefined);
    table.draw(showing.scene);
  };
  const dress = (): void => {
    const { theme, yarns } = store.snapshot().settings;
    table.setTheme(themeName(theme), yarns);
  };
  let worn = store.snapshot().settings;
  table.setRegions(panels.regions());
  draw();
  panels.onRegions(() => table.setRegions(panels.regions()));
  panels.connect(table);
  store.subscribe((snapshot) => {
    if (snapshot.settings.theme !== worn.theme || snapshot.settings.yarns !== worn.yarns) dress();
    worn = snapshot.settings;
    draw();
  });
  darkWanted.addEventListener('change', dress);
}

const positionOf = (showing: Showing, spot: Spot) => showing.scene && spotToPosition(showing.scene, spot);

/** A tap goes to the step that makes the stitch; a second look at the same place changes nothing. */
function choose(store: Store, showing: Showing, spot: Spot): void {
  const at = positionOf(showing, spot);
  if (!at) return;
  const { steps } = store.snapshot().making;
  const to = steps.stepOf(at.round, at.node, at.edging);
  if (to >= 0) store.send({ type: 'JUMP', to });
  store.send({ type: 'POINT', at });
}
