/**
 * The buttons that do by single taps what gestures and keys do. They lie in one small cluster, on the view last
 * touched, and fold out there.
 */
import { html, nothing, type TemplateResult } from 'lit-html';
import { type IconName, icon } from '../../controls/more-icons.ts';
import type { Send, Settings, Snapshot } from '../../state/snapshot.ts';
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

/** To the pieces apart, with the back turning over before one's eyes, and to the ring diagram; and back. */
function looks({ settings: { arrangement } }: Snapshot, send: Send): TemplateResult {
  const look = (to: Settings['arrangement'], name: IconName, says: string): TemplateResult =>
    html`<button type="button" class="view-button" aria-label=${says} title=${says}
      @click=${() => send({ type: 'SETTLE', settings: { arrangement: to } })}>${icon(name)}</button>`;
  if (arrangement === 'diagram') return look('together', 'yarn', 'Draw the yarn');
  return html`${
    arrangement === 'together'
      ? look('apart', 'apart', 'Lay the pieces apart')
      : look('together', 'together', 'Lay the back on the front')
  }${look('diagram', 'diagram', 'Draw the foundation as a diagram')}`;
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
    ${view === 'whole' ? looks(snapshot, send) : nothing}
  </div>`;
}
