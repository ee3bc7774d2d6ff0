/** The causes found, best first; the one that is open with how it comes to the numbers and how to be sure. */
import { html, nothing, type TemplateResult } from 'lit-html';
import type { Explanation, Tell } from '../../core/index.ts';
import { sumOf } from '../input/sum.ts';
import type { Snapshot } from '../state/snapshot.ts';
import { pairOf, rightAndWrong } from '../stitch/pairs.ts';
import type { Speech } from '../words/words.ts';
import {
  causePlace,
  causeReason,
  explanationTitle,
  sayElsewhere,
  sayLess,
  sayMore,
  sayOthers,
  saySure,
} from '../words/wrong/causes.ts';
import { sayGives } from '../words/wrong/gives.ts';
import { sayTell } from '../words/wrong/looks.ts';
import { type Chosen, keyOf } from './chosen.ts';
import { curesOf } from './cures.ts';
import { type Group, groupsOf } from './groups.ts';
import { inPersonsNumbers } from './looks.ts';
import { showing } from './showing.ts';
import type { Answered } from './view.ts';

/** So many are listed at first. */
const few = 3;
const mostTells = 3;

export function causesList(
  view: Answered,
  explanations: readonly Explanation[],
  opensFirst = true,
): TemplateResult {
  const { chosen, choose } = view;
  const groups = groupsOf(explanations);
  const listed = chosen.all ? groups : groups.slice(0, few);
  const rest = groups.length - listed.length;
  const open = opensFirst || chosen.open !== undefined ? openKey(explanations, chosen) : null;
  return html`<ol class="causes">
      ${listed.map((group) => html`<li>${groupEntry(view, group, open)}</li>`)}
    </ol>
    ${
      rest > 0
        ? html`<button type="button" class="button" @click=${() => choose({ all: true })}>${sayMore(rest)}</button>`
        : chosen.all && groups.length > few
          ? html`<button type="button" class="button" @click=${() => choose({ all: false })}>${sayLess}</button>`
          : nothing
    }`;
}

/** The one that was pressed, as long as it is there; else the best. */
export function openKey(explanations: readonly Explanation[], { open }: Chosen): string | null {
  if (open === null) return null;
  const keys = explanations.map(keyOf);
  return open !== undefined && keys.includes(open) ? open : (keys[0] ?? null);
}

/** The best of a group, or the one of it that is open; the others in a line below. */
function groupEntry(
  view: Answered,
  { best, others, isElsewhere }: Group,
  open: string | null,
): TemplateResult {
  const all = [best, ...others];
  const shown = all.find((one) => keyOf(one) === open) ?? best;
  const rest = all.filter((one) => one !== shown);
  return html`${causeEntry(view, shown, keyOf(shown) === open)}
    ${
      rest.length === 0
        ? nothing
        : html`<details class="cause-others"><summary>${isElsewhere ? sayElsewhere(rest.length) : sayOthers(rest.length)}</summary>
      <ul>${rest.map((one) => html`<li>${otherEntry(view, one)}</li>`)}</ul></details>`
    }`;
}

function otherEntry({ snapshot, choose }: Answered, one: Explanation): TemplateResult {
  const { making, settings } = snapshot;
  const places = one.causes.map((cause) => causePlace(cause, making.plan, settings)).join('; ');
  return html`<button type="button" class="button" @click=${() => choose({ open: keyOf(one) })}>${explanationTitle(one.causes, making.plan, settings)} · ${places}</button>`;
}

function causeEntry(view: Answered, explanation: Explanation, open: boolean): TemplateResult {
  const { snapshot, choose } = view;
  const { making, settings } = snapshot;
  const { causes, sure } = explanation;
  const id = `cause-${sumOf(keyOf(explanation))}`;
  const press = (): void => choose({ open: open ? null : keyOf(explanation) });
  const places = causes.map((cause) => causePlace(cause, making.plan, settings));
  return html`<button type="button" class="cause" aria-expanded=${open ? 'true' : 'false'} aria-controls=${open ? id : nothing} @click=${press}>
      <span class="cause-title">${explanationTitle(causes, making.plan, settings)}</span>
      <span class="cause-sure sure-${sure.replace(' ', '-')}">${saySure(sure)}</span>
      ${places.map((place) => html`<span class="cause-place">${place}</span>`)}
    </button>
    ${open ? html`<div class="cause-body" id=${id}>${body(view, explanation)}</div>` : nothing}`;
}

/** Right and wrong side by side, for what can be seen on a stitch. */
function pictures({ causes }: Explanation, speech: Speech): TemplateResult[] {
  const pairs = causes.flatMap(({ mishaps }) => mishaps.flatMap(({ kind }) => pairOf(kind) ?? []));
  return [...new Set(pairs)].map((pair) => rightAndWrong(pair, speech));
}

function body(view: Answered, explanation: Explanation): TemplateResult {
  const { making, settings } = view.snapshot;
  const { causes, tell } = explanation;
  const gives = sayGives(explanation, making.plan, making.seen);
  return html`<div class="cause-why">
      ${causes.map((cause) => html`<p>${causeReason(cause, making.plan, settings)}</p>`)}
      ${gives ? html`<p><b>${gives}</b></p>` : nothing}
      ${pictures(explanation, settings)}
    </div>
    ${tell.length > 0 ? tells(tell, view.snapshot) : nothing}
    ${showing(view, explanation)} ${curesOf({ ...view, cause: keyOf(explanation) }, explanation.cures)}`;
}

function tells(tell: readonly Tell[], snapshot: Snapshot): TemplateResult {
  const { making, settings } = snapshot;
  return html`<div class="tells">
    <h4>How to be sure</h4>
    <ul>
      ${tell.slice(0, mostTells).map((one) => html`<li>${sayTell(inPersonsNumbers(one, snapshot), making.plan, settings)}</li>`)}
    </ul>
  </div>`;
}
