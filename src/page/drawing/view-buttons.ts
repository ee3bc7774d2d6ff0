/**
 * The buttons that do by single taps what gestures and keys do. They lie in one small cluster, on the view last
 * touched, and fold out there.
 */
import { html, nothing, type TemplateResult } from 'lit-html';
import { type IconName, icon } from '../../controls/icons.ts';
import type { Send, Snapshot } from '../../state/snapshot.ts';
import type { TableControls, ViewId } from './table-controls.ts';

const ZOOM_STEP = 1.5;
const PAN_STEP = 96;

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

/** From the yarn to the ring diagram and back. */
function lookButton({ settings: { arrangement } }: Snapshot, send: Send): TemplateResult {
  const isDiagram = arrangement === 'diagram';
  const says = isDiagram ? 'Draw the yarn' : 'Draw the foundation as a diagram';
  return html`<button type="button" class="view-button" aria-label=${says} title=${says}
    @click=${() => send({ type: 'SETTLE', settings: { arrangement: isDiagram ? 'together' : 'diagram' } })}
  >${icon(isDiagram ? 'yarn' : 'diagram')}</button>`;
}

export function viewButtons(
  view: ViewId,
  snapshot: Snapshot,
  send: Send,
  controls: () => TableControls | null,
): TemplateResult {
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
    ${view === 'whole' ? lookButton(snapshot, send) : nothing}
  </div>`;
}
