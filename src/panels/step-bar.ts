/** Beside the work: what to do now, where that is, one big Next, and the smaller ways to move. */
import { html, nothing, type TemplateResult } from 'lit-html';
import { live } from 'lit-html/directives/live.js';
import type { Send, Snapshot, Unit } from '../state/snapshot.ts';
import { type Said, sayStep } from '../words/step.ts';
import { dialectName, otherDialect } from '../words/terms.ts';
import { openQuestion, QUESTION_ID, questionCard } from './question-card.ts';

export function stepBar(snapshot: Snapshot, send: Send): TemplateResult {
  const { step, making, settings } = snapshot;
  const said = sayStep(step, making, settings);
  return html`<section class="bar" data-keys="walk" aria-label="The step">
    ${scrubber(snapshot, said, send)}
    <div class="saying">
      ${said.count ? html`<p class="saying-count tone-${step.yarn}" aria-hidden="true">${said.count}</p>` : nothing}
      <div class="saying-words">
        <p class="saying-act">${said.act}</p>
        <p class="saying-where">${said.where}</p>
      </div>
      <button type="button" class="tag-button" aria-label="${dialectName(settings.dialect)}. Change to ${dialectName(otherDialect(settings.dialect))}"
        @click=${() => send({ type: 'SETTLE', settings: { dialect: otherDialect(settings.dialect) } })}>${dialectName(settings.dialect)}</button>
    </div>
    ${asides(snapshot, said, send)} ${moves(snapshot, send)}
  </section>`;
}

function asides(snapshot: Snapshot, said: Said, send: Send): TemplateResult | typeof nothing {
  const question = questionCard(snapshot, said, send);
  const check = question === nothing && said.check;
  if (question === nothing && !check && !said.caution) return nothing;
  return html`<div class="asides">
    ${said.caution ? html`<p class="boxed caution"><b>Take care</b> ${said.caution}</p>` : nothing}
    ${check ? html`<p class="boxed check"><b>Look</b> ${check}</p>` : nothing}
    ${question}
  </div>`;
}

function moves(snapshot: Snapshot, send: Send): TemplateResult {
  const { place, making } = snapshot;
  const atStart = place === 0;
  const atEnd = place >= making.steps.length - 1;
  const asked = openQuestion(snapshot) !== null;
  const small = (says: TemplateResult, name: string, off: boolean, act: () => void): TemplateResult =>
    html`<button type="button" class="button move" aria-label=${name} aria-disabled=${off ? 'true' : nothing} @click=${() => !off && act()}>${says}</button>`;
  const next = (): void => {
    if (asked) document.getElementById(QUESTION_ID)?.focus();
    else if (!atEnd) send({ type: 'NEXT', by: 'stitch' });
  };
  return html`<div class="moves">
    ${small(html`<span aria-hidden="true">‹</span> side`, 'Back by one side', atStart, () => send({ type: 'BACK', by: 'side' }))}
    ${small(html`<span aria-hidden="true">‹</span> stitch`, 'Back by one stitch', atStart, () => send({ type: 'BACK', by: 'stitch' }))}
    ${small(html`side <span aria-hidden="true">›</span>`, 'On to the next side', atEnd || asked, () => send({ type: 'NEXT', by: 'side' }))}
    <button type="button" class="button strong next" aria-disabled=${atEnd || asked ? 'true' : nothing} @click=${next}>
      ${asked ? 'Answer first' : html`Next stitch <span aria-hidden="true">›</span>`}
    </button>
  </div>`;
}

function scrubber({ place, making }: Snapshot, said: Said, send: Send): TemplateResult {
  const last = making.steps.length - 1;
  const jump = (event: Event): void => {
    const to = Number.parseInt((event.target as HTMLInputElement).value, 10);
    send({ type: 'JUMP', to });
  };
  return html`<div class="scrub">
    <label class="unseen" for="scrubber">Place in the making</label>
    <input id="scrubber" type="range" min="0" max=${last} step="1" .value=${live(`${place}`)} aria-valuetext=${said.where} @input=${jump} />
    <p class="scrub-count"><b>${place + 1}</b> of ${last + 1}</p>
  </div>`;
}

/** The jumps by larger units, both ways. */
export const JUMPS: { by: Unit; says: string }[] = [
  { by: 'marker', says: 'marker' },
  { by: 'corner', says: 'corner' },
  { by: 'side', says: 'side' },
  { by: 'round', says: 'round' },
];
