/**
 * The place of the drawing: an empty host for the canvas, and over it the verdict and the ways to move.
 */
import { html, type TemplateResult } from 'lit-html';
import type { Send, Snapshot } from '../../state/snapshot.ts';
import type { Later } from '../later.ts';
import type { TableControls, ViewId } from './table-controls.ts';

export type { TableControls, ViewId } from './table-controls.ts';

export const TABLE_ID = 'table';

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
      ${later?.viewButtons('whole', snapshot, send, controls)} ${later?.twinGrid(snapshot, send)}
    </div>
    <div class="view view-close">
      <div class="room" data-region="close"></div>
      ${later?.viewButtons('close', snapshot, send, controls)}
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
