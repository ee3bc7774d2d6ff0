/**
 * The place of the drawing: an empty host for the canvas, and over it the buttons that do by single taps what
 * gestures and keys do. They lie in one small cluster, on the view last touched, and fold out there.
 */
import { html, type TemplateResult } from 'lit-html';
import { type IconName, icon } from '../../controls/icons.ts';
import type { Send, Snapshot } from '../../state/snapshot.ts';
import type { Later } from '../later.ts';
import type { TableControls, ViewId } from './table-controls.ts';

export type { TableControls, ViewId } from './table-controls.ts';

export const TABLE_ID = 'table';
const ZOOM_STEP = 1.5;
const PAN_STEP = 96;

export function tableRegion(
  snapshot: Snapshot,
  send: Send,
  controls: () => TableControls | null,
  later: Later | null,
): TemplateResult {
  return html`<section class="board" aria-label="The drawing" @pointerdown=${touch} @focusin=${touch}>
    <div id=${TABLE_ID} class="board-canvas"></div>
    <div class="view view-whole">
      ${later?.verdictChip(snapshot) ?? html`<p class="verdict"><b class="verdict-head">&nbsp;</b></p>`}
      <div class="room" data-region="whole"></div>
      ${viewButtons('whole', controls)} ${later?.twinGrid(snapshot, send)}
    </div>
    <div class="view view-close">
      <div class="room" data-region="close"></div>
      ${viewButtons('close', controls)}
    </div>
  </section>`;
}

/** Marks the view that was touched last: the cluster goes there. */
function touch(event: Event): void {
  const target = event.target as HTMLElement;
  const isClose = target.closest('[data-view="close"], .view-close') !== null;
  const board = event.currentTarget as HTMLElement;
  if (isClose || target.closest('[data-view="whole"], .view-whole'))
    board.dataset.touched = isClose ? 'close' : 'whole';
}

type ViewButton = { icon: IconName; says: string; act: (controls: TableControls) => void; isFolded: boolean };

function buttonsOf(view: ViewId): ViewButton[] {
  const pan = (name: IconName, dx: number, dy: number): ViewButton => ({
    icon: name,
    says: `Move ${name}`,
    isFolded: true,
    act: (controls) => controls.pan(view, dx * PAN_STEP, dy * PAN_STEP),
  });
  const upAndDown = view === 'whole' ? [pan('up', 0, 1), pan('down', 0, -1)] : [];
  return [
    {
      icon: 'closer',
      says: 'Closer',
      isFolded: false,
      act: (controls) => controls.zoom(view, ZOOM_STEP),
    },
    {
      icon: 'farther',
      says: 'Farther',
      isFolded: true,
      act: (controls) => controls.zoom(view, 1 / ZOOM_STEP),
    },
    ...upAndDown,
    pan('left', 1, 0),
    pan('right', -1, 0),
    {
      icon: 'whole',
      says: view === 'whole' ? 'Show the whole' : 'Back to the stitch',
      isFolded: true,
      act: (controls) => controls.fit(view),
    },
  ];
}

function viewButtons(view: ViewId, controls: () => TableControls | null): TemplateResult {
  const name = view === 'whole' ? 'Move the whole panel' : 'Move the close-up';
  const fold = (event: Event, isOpen?: boolean): void => {
    const group = (event.currentTarget as Element).closest('.view-buttons');
    const open = group?.classList.toggle('open', isOpen) ?? false;
    group?.querySelector('[aria-expanded]')?.setAttribute('aria-expanded', `${open}`);
  };
  const press = (event: Event, { act }: ViewButton): void => {
    const table = controls();
    if (!table) return;
    act(table);
    fold(event, true);
  };
  return html`<div class="view-buttons" role="group" aria-label=${name}>
    ${buttonsOf(view).map(
      (button) => html`<button
        type="button"
        class="view-button ${button.isFolded ? 'folded' : ''}"
        aria-label=${button.says}
        title=${button.says}
        @click=${(event: Event) => press(event, button)}
      >${icon(button.icon)}</button>`,
    )}
    <button
      type="button"
      class="view-button"
      aria-label="All ways to move"
      title="All ways to move"
      aria-expanded="false"
      @click=${(event: Event) => fold(event)}
    >${icon('ways')}</button>
  </div>`;
}

export type Rect = { x: number; y: number; width: number; height: number };

/** Where the two views lie, in CSS px from the canvas host's corner; zero wide where a view is not shown. */
export function regionRects(root: ParentNode): Record<ViewId, Rect> {
  const host = root.querySelector(`#${TABLE_ID}`)?.getBoundingClientRect();
  const rectOf = (view: ViewId): Rect => {
    const rect = root.querySelector(`[data-region="${view}"]`)?.getBoundingClientRect();
    if (!rect || !host) return { x: 0, y: 0, width: 0, height: 0 };
    return { x: rect.x - host.x, y: rect.y - host.y, width: rect.width, height: rect.height };
  };
  return { whole: rectOf('whole'), close: rectOf('close') };
}
