/** The page: head, the panel of the chosen tab, the drawing, and the step. */
import { html, nothing, type TemplateResult } from 'lit-html';
import { NEXT_ID, PANEL_ID } from '../controls/ids.ts';
import { edgePanel } from '../edge/panel.ts';
import type { Send, Snapshot, Tab } from '../state/snapshot.ts';
import { type TableControls, tableRegion } from './drawing/table-region.ts';
import { header, quickSettings, tabId } from './header.ts';
import type { Later } from './later.ts';
import type { Notices } from './notices/notices.ts';

/** Parts of the page that are made elsewhere. */
export type Slots = {
  controls: () => TableControls | null;
  /** What the page tells by itself, under the head. */
  notices?: Notices;
  /** Opens the lessons. */
  openLessons?: () => void;
  /** Fetched after the first look; null until then. */
  later: Later | null;
};

export function shell(snapshot: Snapshot, send: Send, slots: Slots): TemplateResult {
  const { tab } = snapshot;
  const aim = SKIPS[tab];
  return html`<a class="skip" href="#${aim.id}" @click=${(event: Event) => skip(event, aim.id)}>${aim.says}</a>
    ${header(snapshot, send)} ${slots.notices && slots.later?.notices(snapshot, send, slots.notices)}
    <main class="page tab-${tab}">
      <p class="unseen">${slots.later?.screenSummary(snapshot)}</p>
      <div class="side">
      ${tab === 'walk' ? slots.later?.stepPicture(snapshot) : nothing}
      <div class="panel" id=${PANEL_ID} role="tabpanel" aria-labelledby=${tabId(tab)} tabindex="-1">
        ${quickSettings(snapshot, send, 'in-panel')} ${panelOf(snapshot, send, slots)}
      </div>
      </div>
      <div class="stage">${tableRegion(snapshot, send, slots.controls, slots.later)}
        ${tab === 'walk' ? (slots.later?.stepBar(snapshot, send) ?? html`<div class="bar"></div>`) : slots.later?.findingsBar(snapshot, send)}</div>
    </main>
    ${slots.later?.settingsDialog(snapshot, send, slots.controls)} ${slots.later?.keysDialog()}`;
}

/** What most presses are for, past all that comes before it. */
const SKIPS: Record<Tab, { id: string; says: string }> = {
  edge: { id: PANEL_ID, says: 'Skip to your counts' },
  cloth: { id: PANEL_ID, says: 'Skip to your measures' },
  walk: { id: NEXT_ID, says: 'Skip to the step' },
  wrong: { id: PANEL_ID, says: 'Skip to what you counted' },
  'take-along': { id: PANEL_ID, says: 'Skip to your pattern' },
};

function skip(event: Event, id: string): void {
  event.preventDefault();
  document.getElementById(id)?.focus();
}

function panelOf(snapshot: Snapshot, send: Send, slots: Slots): TemplateResult {
  switch (snapshot.tab) {
    case 'edge':
      return edgePanel(snapshot, send, slots.later);
    case 'walk':
      return html`${slots.later?.walkPanel(snapshot, send)} ${lessonsButton(slots)} ${slots.later?.mishaps(snapshot, send)}`;
    case 'cloth':
      return slots.later?.cloth(snapshot, send) ?? html`<h2>Cloth</h2>`;
    case 'take-along':
      return slots.later?.takeAlong(snapshot, send) ?? html`<h2>Take along</h2>`;
    case 'wrong':
      return slots.later?.wrong(snapshot, send) ?? html`<h2>What went wrong</h2>`;
  }
}

const lessonsButton = ({ openLessons }: Slots): TemplateResult =>
  html`<div class="lessons-offer">
    <h3>New to this?</h3>
    <p>Practise a part on a small piece. Your work stays where it is.</p>
    <button type="button" class="button" @click=${openLessons}>Open the lessons</button>
  </div>`;
