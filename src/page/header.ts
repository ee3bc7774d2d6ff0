/** The head of the page: our mark and name, the tabs, and what is changed with one press. */
import { html, nothing, type TemplateResult } from 'lit-html';
import { icon } from '../controls/icons.ts';
import { PANEL_ID, SETTINGS_ID } from '../controls/ids.ts';
import { check } from '../controls/problem-summary.ts';
import { segmented } from '../controls/segmented.ts';
import { type Send, type Snapshot, type Tab, tabs } from '../state/snapshot.ts';
import { mark } from './mark.ts';
import { places } from './places.ts';

export const tabId = (tab: Tab): string => `tab-${tab}`;

/** Going on to the walk is an action: what cannot be read is told first. */
function showTab(snapshot: Snapshot, send: Send, tab: Tab): void {
  if (tab === 'walk' && snapshot.isStale) {
    check(snapshot, send);
    if (snapshot.tab !== 'edge') send({ type: 'SHOW', tab: 'edge' });
    return;
  }
  send({ type: 'SHOW', tab });
}

export function header(snapshot: Snapshot, send: Send): TemplateResult {
  return html`<header class="head">
    <h1 class="brand">${mark()}<span class="brand-name">Ringtrue</span></h1>
    ${tabList(snapshot, send)} ${quickSettings(snapshot, send)}
    <button type="button" class="icon-button more-settings" aria-label="More settings" @click=${openSettings}>${icon('more')}</button>
  </header>`;
}

const openSettings = (): void =>
  (document.getElementById(SETTINGS_ID) as HTMLDialogElement | null)?.showModal();

function tabList(snapshot: Snapshot, send: Send): TemplateResult {
  return html`<div class="tabs" role="tablist" aria-label="What to do" @keydown=${(event: KeyboardEvent) => moveTab(event, snapshot, send)}>
    ${tabs.map((tab) => {
      const { says, short } = places[tab];
      const chosen = snapshot.tab === tab;
      return html`<button
        type="button"
        role="tab"
        class="tab"
        id=${tabId(tab)}
        aria-label=${says}
        aria-selected=${chosen ? 'true' : 'false'}
        aria-controls=${PANEL_ID}
        tabindex=${chosen ? '0' : '-1'}
        @click=${() => showTab(snapshot, send, tab)}
      ><span class="in-full">${says}</span><span class="in-short">${short}</span></button>`;
    })}
  </div>`;
}

function moveTab(event: KeyboardEvent, snapshot: Snapshot, send: Send): void {
  const here = tabs.indexOf(snapshot.tab);
  const by: Record<string, number> = {
    ArrowRight: here + 1,
    ArrowLeft: here - 1,
    Home: 0,
    End: tabs.length - 1,
  };
  const next = by[event.key];
  if (next === undefined) return;
  event.preventDefault();
  const tab = tabs.at(next % tabs.length) as Tab;
  showTab(snapshot, send, tab);
  requestAnimationFrame(() => document.getElementById(tabId(tab))?.focus());
}

/** Terms, hand, theme, undo, redo. Once in the head; on a narrow page again above the form. */
export function quickSettings(snapshot: Snapshot, send: Send, place = 'in-head'): TemplateResult {
  const { settings, canUndo, canRedo } = snapshot;
  const dark = isDark(snapshot);
  return html`<div class="quick ${place}">
    ${segmented(
      'Terms',
      settings.dialect,
      [
        { value: 'uk', says: 'UK', name: 'UK terms' },
        { value: 'us', says: html`US<span class="tail"> terms</span>`, name: 'US terms' },
      ],
      (dialect) => send({ type: 'SETTLE', settings: { dialect } }),
    )}
    ${segmented(
      'Hand',
      settings.hand,
      [
        { value: 'left', says: 'left', name: 'left hand' },
        { value: 'right', says: html`right<span class="tail"> hand</span>`, name: 'right hand' },
      ],
      (hand) => send({ type: 'SETTLE', settings: { hand } }),
    )}
    <button type="button" class="icon-button theme-button" aria-label=${dark ? 'Light theme' : 'Dark theme'}
      @click=${() => send({ type: 'SETTLE', settings: { theme: dark ? 'light' : 'dark' } })}>${icon(dark ? 'sun' : 'moon')}</button>
    <span class="pair">
      <button type="button" class="icon-button" aria-label="Undo" aria-disabled=${canUndo ? nothing : 'true'}
        @click=${() => canUndo && send({ type: 'UNDO' })}>${icon('undo')}</button>
      <button type="button" class="icon-button" aria-label="Redo" aria-disabled=${canRedo ? nothing : 'true'}
        @click=${() => canRedo && send({ type: 'REDO' })}>${icon('redo')}</button>
    </span>
  </div>`;
}

function isDark({ settings }: Snapshot): boolean {
  if (settings.theme !== 'auto') return settings.theme === 'dark';
  return globalThis.matchMedia?.('(prefers-color-scheme: dark)').matches ?? false;
}
