/**
 * Shows the snapshot on the table. Fetched with the library that draws once the page already works; then every
 * change of the state becomes a scene, and what a hand does on the table becomes an event.
 */
import { buildScene, spotToPosition } from './drawing/scene.ts';
import type { Panels } from './panels/app.ts';
import type { Store } from './state/store.ts';
import type { Scene, Spot } from './table/draw-list.ts';
import type { Table } from './table/table.ts';
import { darkWanted, themeName } from './wearing.ts';

export type Showing = { table: Table | null; scene: Scene | null };

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
    const snapshot = store.snapshot();
    // Outside the walk the question is what will meet: all is shown as made.
    const preview = snapshot.tab !== 'walk';
    showing.scene = buildScene({ ...snapshot, preview }, showing.scene ?? undefined);
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
