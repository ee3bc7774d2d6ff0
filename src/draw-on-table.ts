/**
 * Shows the snapshot on the table. Fetched with the library that draws once the page already works; then every
 * change of the state becomes a scene, and what a hand does on the table becomes an event.
 */
import { buildScene, positionToSpot, slotUnder, spotToPosition } from './drawing/scene.ts';
import { turnBack } from './drawing/whole/turning.ts';
import type { Panels } from './page/page.ts';
import { darkWanted, themeName, wornYarns } from './page-theme.ts';
import type { Pointed } from './state/snapshot.ts';
import type { Store } from './state/store.ts';
import type { Scene, SceneView, Spot } from './table/draw-list.ts';
import type { Table } from './table/table.ts';
import { wantsLessMotion } from './table/view/motion.ts';

const TURN_MS = 1400;

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
  /** The frame asked for while the back turns over; 0 where it lies. */
  let turning = 0;
  const draw = (): void => {
    const snapshot = store.snapshot();
    // Outside the walk the question is what will meet: all is shown as made.
    const preview = snapshot.tab !== 'walk';
    if (looking?.place !== snapshot.place || looking.finding !== snapshot.finding) looking = null;
    const look = looking ? { look: looking.slot } : {};
    const hasClose = regions.close.width > 0;
    showing.scene = buildScene({ ...snapshot, preview, hasClose, ...look }, showing.scene ?? undefined);
    if (turning === 0) table.draw(showing.scene);
  };
  /** The back turns over onto the front, or away from it, before one's eyes; then what is to be shown is drawn. */
  const turn = (isLaidOn: boolean): void => {
    const snapshot = store.snapshot();
    const settings = { ...snapshot.settings, arrangement: 'apart' as const };
    const apart = buildScene({ ...snapshot, settings, preview: snapshot.tab !== 'walk' });
    const start = performance.now();
    const frame = (now: number): void => {
      const passed = Math.min(1, (now - start) / TURN_MS);
      turning = passed < 1 ? requestAnimationFrame(frame) : 0;
      if (turning === 0) draw();
      else table.draw({ views: apart.views.map((view) => turnedView(view, isLaidOn ? passed : 1 - passed)) });
    };
    cancelAnimationFrame(turning);
    turning = requestAnimationFrame(frame);
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
    const { arrangement } = snapshot.settings;
    const isTurned = arrangement !== worn.arrangement && ![arrangement, worn.arrangement].includes('diagram');
    if (isTurned && !wantsLessMotion()) turn(arrangement === 'together');
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

/** Slow at both ends, as a hand lays a piece down. */
const turnedView = (view: SceneView, passed: number): SceneView =>
  view.id === 'whole' ? turnBack(view, (1 - Math.cos(Math.PI * passed)) / 2) : view;

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
