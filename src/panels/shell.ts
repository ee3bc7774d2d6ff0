/** The page: head, the panel of the chosen tab, the drawing, and the step. */
import { html, type TemplateResult } from 'lit-html';
import type { Send, Snapshot } from '../state/snapshot.ts';
import { edgePanel } from './edge-panel.ts';
import { header, quickSettings, tabId } from './header.ts';
import { PANEL_ID } from './ids.ts';
import type { Later } from './later.ts';
import type { Notices } from './notices/notices.ts';
import { screenSummary } from './screen-summary.ts';
import { stepBar } from './step-bar.ts';
import { type TableControls, tableRegion } from './table-region.ts';

export type Panel = (snapshot: Snapshot, send: Send) => TemplateResult;

/** Parts of the page that are made elsewhere. */
export type Slots = {
  controls: () => TableControls | null;
  /** The panel of "What went wrong". */
  wrong?: Panel;
  /** What the page tells by itself, under the head. */
  notices?: Notices;
  /** Opens the lessons. */
  openLessons?: () => void;
  /** Fetched after the first look; null until then. */
  later: Later | null;
};

export function shell(snapshot: Snapshot, send: Send, slots: Slots): TemplateResult {
  const { tab } = snapshot;
  return html`<a class="skip" href="#${PANEL_ID}" @click=${skip}>Skip to your counts</a>
    ${header(snapshot, send)} ${slots.notices && slots.later?.notices(snapshot, send, slots.notices)}
    <main class="page tab-${tab}">
      <p class="unseen">${screenSummary(snapshot)}</p>
      <div class="panel" id=${PANEL_ID} role="tabpanel" aria-labelledby=${tabId(tab)} tabindex="-1">
        ${quickSettings(snapshot, send, 'in-panel')} ${panelOf(snapshot, send, slots)}
      </div>
      <div class="stage">${tableRegion(snapshot, send, slots.controls, slots.later)} ${stepBar(snapshot, send)}</div>
    </main>
    ${slots.later?.settingsDialog(snapshot, send, slots.controls)} ${slots.later?.keysDialog()}`;
}

function skip(event: Event): void {
  event.preventDefault();
  document.getElementById(PANEL_ID)?.focus();
}

function panelOf(snapshot: Snapshot, send: Send, slots: Slots): TemplateResult {
  switch (snapshot.tab) {
    case 'edge':
      return edgePanel(snapshot, send, slots.later);
    case 'walk':
      return html`${slots.later?.walkPanel(snapshot, send)} ${lessonsButton(slots)} ${slots.later?.mishaps(snapshot, send)}`;
    case 'wrong':
      return slots.wrong?.(snapshot, send) ?? html`<h2>What went wrong</h2>`;
  }
}

const lessonsButton = ({ openLessons }: Slots): TemplateResult =>
  html`<div class="lessons-offer">
    <h3>New to this?</h3>
    <p>Practise a part on a small piece. Your work stays where it is.</p>
    <button type="button" class="button" @click=${openLessons}>Open the lessons</button>
  </div>`;
