/** The causes found, best first; the one that is open with how it comes to the numbers and how to be sure. */
import { html, nothing, type TemplateResult } from 'lit-html';
import type { Explanation, Tell } from '../../core/index.ts';
import type { Send, Snapshot } from '../state/snapshot.ts';
import { causePlace, causeReason, explanationTitle, saySure } from '../words/wrong/causes.ts';
import { sayGives } from '../words/wrong/gives.ts';
import { sayTell } from '../words/wrong/looks.ts';
import { type Choose, type Chosen, keyOf } from './chosen.ts';
import { curesOf } from './cures.ts';
import { inPersonsNumbers } from './looks.ts';
import { showing } from './showing.ts';

/** So many are listed at first. */
const FEW = 5;
const MOST_TELLS = 3;

export function causesList(
  explanations: readonly Explanation[],
  snapshot: Snapshot,
  send: Send,
  chosen: Chosen,
  choose: Choose,
): TemplateResult {
  const listed = chosen.all ? explanations : explanations.slice(0, FEW);
  const rest = explanations.length - listed.length;
  const open = openKey(explanations, chosen);
  return html`<ol class="causes">
      ${listed.map((one, index) => html`<li>${causeEntry(one, index, keyOf(one) === open, snapshot, send, choose)}</li>`)}
    </ol>
    ${
      rest > 0
        ? html`<button type="button" class="button" @click=${() => choose({ all: true })}>${rest} more, less likely</button>`
        : nothing
    }`;
}

/** The one that was pressed, as long as it is there; else the best. */
export function openKey(explanations: readonly Explanation[], { open }: Chosen): string | null {
  if (open === null) return null;
  const keys = explanations.map(keyOf);
  return open !== undefined && keys.includes(open) ? open : (keys[0] ?? null);
}

function causeEntry(
  explanation: Explanation,
  index: number,
  open: boolean,
  snapshot: Snapshot,
  send: Send,
  choose: Choose,
): TemplateResult {
  const { making, settings } = snapshot;
  const { causes, sure } = explanation;
  const id = `cause-${index}`;
  const press = (): void => choose({ open: open ? null : keyOf(explanation) });
  const places = causes.map((cause) => causePlace(cause, making.plan, settings));
  return html`<button type="button" class="cause" aria-expanded=${open ? 'true' : 'false'} aria-controls=${open ? id : nothing} @click=${press}>
      <span class="cause-title">${explanationTitle(causes, making.plan, settings)}</span>
      <span class="cause-sure sure-${sure.replace(' ', '-')}">${saySure(sure)}</span>
      ${places.map((place) => html`<span class="cause-place">${place}</span>`)}
    </button>
    ${open ? html`<div class="cause-body" id=${id}>${body(explanation, snapshot, send, choose)}</div>` : nothing}`;
}

function body(explanation: Explanation, snapshot: Snapshot, send: Send, choose: Choose): TemplateResult {
  const { making, settings } = snapshot;
  const { causes, tell } = explanation;
  const gives = sayGives(explanation, making.plan, making.seen);
  return html`<div class="cause-why">
      ${causes.map((cause) => html`<p>${causeReason(cause, making.plan, settings)}</p>`)}
      ${gives ? html`<p><b>${gives}</b></p>` : nothing}
    </div>
    ${tell.length > 0 ? tells(tell, snapshot) : nothing}
    ${showing(explanation, snapshot, send)} ${curesOf(explanation, snapshot, send, choose)}`;
}

function tells(tell: readonly Tell[], snapshot: Snapshot): TemplateResult {
  const { making, settings } = snapshot;
  return html`<div class="tells">
    <h4>How to be sure</h4>
    <ul>
      ${tell.slice(0, MOST_TELLS).map((one) => html`<li>${sayTell(inPersonsNumbers(one, snapshot), making.plan, settings)}</li>`)}
    </ul>
  </div>`;
}
