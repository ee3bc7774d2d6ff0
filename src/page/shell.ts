/** The page: head, the panel of the chosen tab, the drawing, and the step. */
import { html, nothing, type TemplateResult } from 'lit-html';
import { PANEL_ID } from '../controls/ids.ts';
import { edgePanel } from '../edge/panel.ts';
import type { Send, Snapshot } from '../state/snapshot.ts';
import { type TableControls, tableRegion } from './drawing/table-region.ts';
import { header, quickSettings, tabId } from './header.ts';
import type { Later } from './later.ts';
import type { Notices } from './notices/notices.ts';
import { noticeRow } from './notices/row.ts';
import { places } from './places.ts';

/** Parts of the page that are made elsewhere. */
export type Slots = {
  controls: () => TableControls | null;
  /** What the page tells by itself, under the head. */
  notices?: Notices;
  /** Opens the lessons. */
  openLessons?: () => void;
  /** Opens the list of all panels. */
  openPanels?: () => unknown;
  /** Fetched after the first look; null until then. */
  later: Later | null;
};

export function shell(snapshot: Snapshot, send: Send, slots: Slots): TemplateResult {
  const { tab } = snapshot;
  const { skip, says } = places[tab];
  return html`<a class="skip" href="#${skip.to}" @click=${(event: Event) => skipTo(event, skip.to)}>${skip.says}</a>
    ${header(snapshot, send)} ${slots.notices && noticesIn(slots.notices, snapshot, send, slots.later)}
    <main class="page tab-${tab}">
      <p class="unseen">${slots.later?.screenSummary(snapshot)}</p>
      <div class="side">
      ${tab === 'walk' ? slots.later?.stepPicture(snapshot) : nothing}
      <div class="panel" id=${PANEL_ID} role="tabpanel" aria-labelledby=${tabId(tab)} tabindex="-1">
        ${quickSettings(snapshot, send, 'in-panel')}
        <div class="panel-row">${slots.later?.panelRow(snapshot, slots)}</div> ${
          tab === 'edge'
            ? edgePanel(snapshot, send, slots.later)
            : (slots.later?.panels[tab](snapshot, send) ?? html`<h2>${says}</h2>`)
        }
      </div>
      </div>
      <div class="stage">${tableRegion(snapshot, send, slots.controls, slots.later)}
        ${tab === 'walk' ? (slots.later?.stepBar(snapshot, send) ?? html`<div class="bar"></div>`) : slots.later?.findingsBar(snapshot, send)}</div>
    </main>
    ${slots.later?.settingsDialog(snapshot, send, slots.controls)} ${slots.later?.keysDialog()}`;
}

/** Until the later part is here, only what is told of the page itself can be said. */
const noticesIn = (notices: Notices, snapshot: Snapshot, send: Send, later: Later | null): TemplateResult =>
  later?.notices(snapshot, send, notices) ?? noticeRow(notices.list()[0], notices.dismiss);

function skipTo(event: Event, id: string): void {
  event.preventDefault();
  document.getElementById(id)?.focus();
}
