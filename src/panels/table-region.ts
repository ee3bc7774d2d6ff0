/** The place of the drawing: an empty host for the canvas, and over it the buttons that move the views. */
import { html, nothing, type TemplateResult } from 'lit-html';
import type { Snapshot } from '../state/snapshot.ts';
import { type IconName, icon } from './icons.ts';
import { verdictChip } from './verdict-chip.ts';

export type ViewId = 'whole' | 'close';

/** What the buttons over the drawing ask of it. */
export type TableControls = {
  /** Factor above 1 is closer. */
  zoom(view: ViewId, factor: number): void;
  /** Moves the view by CSS px. */
  pan(view: ViewId, dx: number, dy: number): void;
  fit(view: ViewId): void;
};

export const TABLE_ID = 'table';
const ZOOM_STEP = 1.5;
const PAN_STEP = 96;

export function tableRegion(snapshot: Snapshot, controls: () => TableControls | null): TemplateResult {
  return html`<section class="board" aria-label="The drawing">
    <div id=${TABLE_ID} class="board-canvas"></div>
    <div class="region region-whole" data-region="whole">
      ${verdictChip(snapshot)} ${viewButtons('whole', controls)}
    </div>
    <div class="region region-close" data-region="close">${viewButtons('close', controls)}</div>
  </section>`;
}

type ViewButton = { icon: IconName; says: string; act: (controls: TableControls) => void };

function buttonsOf(view: ViewId): ViewButton[] {
  const pan = (name: IconName, dx: number, dy: number): ViewButton => ({
    icon: name,
    says: `Move ${name}`,
    act: (controls) => controls.pan(view, dx * PAN_STEP, dy * PAN_STEP),
  });
  const zooms: ViewButton[] = [
    { icon: 'farther', says: 'Farther', act: (controls) => controls.zoom(view, 1 / ZOOM_STEP) },
    { icon: 'closer', says: 'Closer', act: (controls) => controls.zoom(view, ZOOM_STEP) },
    {
      icon: 'whole',
      says: view === 'whole' ? 'Show the whole' : 'Back to the stitch',
      act: (controls) => controls.fit(view),
    },
  ];
  const sideways = [pan('left', 1, 0), pan('right', -1, 0)];
  return view === 'whole'
    ? [...sideways, pan('up', 0, 1), pan('down', 0, -1), ...zooms]
    : [...sideways, ...zooms];
}

function viewButtons(view: ViewId, controls: () => TableControls | null): TemplateResult {
  const name = view === 'whole' ? 'Move the whole panel' : 'Move the close-up';
  return html`<div class="view-buttons" role="group" aria-label=${name}>
    ${buttonsOf(view).map(
      ({
        icon: name,
        says,
        act,
      }) => html`<button type="button" class="view-button" aria-label=${says} title=${says || nothing}
        @click=${() => {
          const table = controls();
          if (table) act(table);
        }}>${icon(name)}</button>`,
    )}
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
