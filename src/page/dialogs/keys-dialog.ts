/** Which keys do what, made from the same table as the listener. */
import { html, type TemplateResult } from 'lit-html';
import { KEYS_ID } from '../../controls/ids.ts';
import { icon } from '../../controls/more-icons.ts';
import { KEYS, type KeyScope } from '../keys.ts';

const SCOPES: { scope: KeyScope; says: string }[] = [
  { scope: 'anywhere', says: 'Anywhere' },
  { scope: 'walk', says: 'While a button of the walk has the focus' },
];

const NAMES: Record<string, string> = {
  ArrowRight: '→',
  ArrowLeft: '←',
  Control: 'Ctrl',
  PageDown: 'Page down',
  PageUp: 'Page up',
};

export const keyParts = (key: string): string[] =>
  key.split('+').map((part) => NAMES[part] ?? part.toUpperCase().replace('SHIFT', 'Shift'));

/** Keys of the list of stitches: the list's own, which every grid has. */
const LIST_KEYS: [string, string][] = [
  ['↑ ↓', 'One round or line up or down'],
  ['← →', 'One stitch'],
  ['Home, End', 'First and last of the line'],
  ['Ctrl + Home, Ctrl + End', 'First and last of all'],
  ['Enter', 'Go to this stitch in the walk'],
];

export function keysDialog(): TemplateResult {
  return html`<dialog class="sheet" id=${KEYS_ID} aria-labelledby="keys-heading">
    <div class="sheet-head">
      <h2 id="keys-heading">Keys to press</h2>
      <button type="button" class="icon-button" aria-label="Close keys" @click=${(event: Event) => (event.target as Element).closest('dialog')?.close()}>${icon('close')}</button>
    </div>
    ${SCOPES.map(
      ({ scope, says }) => html`<h3>${says}</h3>
        <dl class="keys">
          ${KEYS.filter((row) => row.scope === scope).map((row) => html`<div><dt>${row.keys.map(keyCaps)}</dt><dd>${row.says}</dd></div>`)}
        </dl>`,
    )}
    <h3>In the list of stitches</h3>
    <dl class="keys">${LIST_KEYS.map(([key, says]) => html`<div><dt><kbd>${key}</kbd></dt><dd>${says}</dd></div>`)}</dl>
  </dialog>`;
}

const keyCaps = (key: string): TemplateResult =>
  html`<span class="key-caps">${keyParts(key).map((part) => html`<kbd>${part}</kbd>`)}</span>`;
