/**
 * Shows the snapshot on the table. Fetched with the library that draws once the page already works; then every
 * change of the state becomes a scene, and what a hand does on the table becomes an event.
 */
import { buildScene, positionToSpot, slotUnder, spotToPosition } from './drawing/scene.ts';
import type { Panels } from './page/page.ts';
import { darkWanted, themeName, wornYarns } from './page-theme.ts';
import type { Pointed } from './state/snapshot.ts';
import type { Store } from './state/store.ts';
import type { Scene, Spot } from './table/draw-list.ts';
import type { Table } from './table/table.ts';

export type Showing = { table: Table | null; scene: Scene | null };

/** Fetches the drawing and keeps it true from then on. */
export async function showOnTable(store: Store, panels: Panels, showing: Showing): Promise<void> {
  const { openTable } = await import('./table/table.ts');
  const { settings } = store.snapshot();
  let underHand: Pointed | null = null;
  // Where a hand moved the close-up to; forgotten with the next stitch, and the next finding.
  let looking: { place: number; finding: number; slot: number } | null = null;
  const table = await openTable(panels.table, {
    theme: themeName(settings.theme),
    yarns: wornYarns(themeName(settings.theme), settings.yarns),
    names: { whole: 'The whole panel', close: 'The close-up' },
    onPoint: (spot) => {
      underHand = spot && positionOf(showing, spot);
      store.send({ type: 'POINT', at: underHand });
    },
    onChoose: (spot) => choose(store, showing, spot),
    onMoved: (view, { x }) => {
      const slot = view === 'close' && showing.scene ? slotUnder(showing.scene, x) : null;
      if (slot === null) return;
      const { place, finding } = store.snapshot();
      looking = { place, finding, slot };
      draw();
    },
    flat: new URLSearchParams(location.search).has('flat'),
  });
  showing.table = table;
  let regions = panels.regions();
  const draw = (): void => {
    const snapshot = store.snapshot();
    // Outside the walk the question is what will meet: all is shown as made.
    const preview = snapshot.tab !== 'walk';
    if (looking?.place !== snapshot.place || looking.finding !== snapshot.finding) looking = null;
    const look = looking ? { look: looking.slot } : {};
    const hasClose = regions.close.width > 0;
    showing.scene = buildScene({ ...snapshot, preview, hasClose, ...look }, showing.scene ?? undefined);
    table.draw(showing.scene);
  };
  const dress = (): void => {
    const { theme, yarns } = store.snapshot().settings;
    table.setTheme(themeName(theme), wornYarns(themeName(theme), yarns));
  };
  let worn = store.snapshot().settings;
  let pointed = store.snapshot().pointed;
  table.setRegions(regions);
  draw();
  panels.onRegions(() => {
    const hadClose = regions.close.width > 0;
    regions = panels.regions();
    table.setRegions(regions);
    if (regions.close.width > 0 !== hadClose) draw();
  });
  panels.connect({
    ...table,
    fit: (view) => {
      // Back to the stitch: what a hand looked at is let go.
      if (view === 'close') looking = null;
      draw();
      table.fit(view);
    },
  });
  store.subscribe((snapshot) => {
    if (snapshot.settings.theme !== worn.theme || snapshot.settings.yarns !== worn.yarns) dress();
    worn = snapshot.settings;
    draw();
    // What is pointed at by keyboard, in the list of stitches, is brought into view; what the hand is on, is.
    if (snapshot.pointed !== pointed && snapshot.pointed !== underHand)
      look(table, showing, snapshot.pointed);
    pointed = snapshot.pointed;
  });
  darkWanted.addEventListener('change', dress);
}

const positionOf = (showing: Showing, spot: Spot) => showing.scene && spotToPosition(showing.scene, spot);

function look(table: Table, { scene }: Showing, at: Pointed | null): void {
  if (!scene || !at) return;
  for (const { id, parts } of scene.views) {
    const spot = positionToSpot(scene, at, id);
    const marks = parts.find(({ key }) => key === spot?.part)?.marks;
    const [x, y] = [marks?.x[spot?.index ?? -1], marks?.y[spot?.index ?? -1]];
    if (x !== undefined && y !== undefined) table.lookAt(id, x, y);
  }
}

/** A tap goes to the step that makes the stitch; a second look at the same place changes nothing. */
function choose(store: Store, showing: Showing, spot: Spot): void {
  const at = positionOf(showing, spot);
  if (!at) return;
  const { steps } = store.snapshot().making;
  const to = steps.stepOf(at.round, at.node, at.edging);
  if (to >= 0) store.send({ type: 'JUMP', to });
  store.send({ type: 'POINT', at });
}
