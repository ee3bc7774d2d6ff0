/** Beside the work: what to do now, where that is, one big Next, and the smaller ways to move. */
import { html, nothing, type TemplateResult } from 'lit-html';
import { live } from 'lit-html/directives/live.js';
import { NEXT_ID, QUESTION_ID } from '../controls/ids.ts';
import type { Send, Snapshot, Unit } from '../state/snapshot.ts';
import { sayOtherTerms } from '../words/other-terms.ts';
import { dialectName, otherDialect } from '../words/terms.ts';
import { type Said, sayNext, sayStep } from '../words/walk/step.ts';
import { openQuestion } from './open-question.ts';
import { questionCard } from './question-card.ts';

export function stepBar(snapshot: Snapshot, send: Send): TemplateResult {
  const { step, making, settings } = snapshot;
  const said = sayStep(step, making, settings, snapshot.cloth);
  return html`<section class="bar ${openQuestion(snapshot) ? 'asking' : ''}" data-keys="walk" aria-label="The step">
    <div class="top-row">${scrubber(snapshot, said, send)} ${asides(snapshot, said, send)}</div>
    <div class="saying">
      ${said.count ? html`<p class="saying-count tone-${step.yarn}" aria-hidden="true">${said.count}</p>` : nothing}
      <div class="saying-words">
        <p class="saying-act">${said.act}</p>
        <p class="saying-where">${said.where}</p>
      </div>
    </div>
    ${moves(snapshot, send)}
  </section>`;
}

function asides(snapshot: Snapshot, said: Said, send: Send): TemplateResult {
  const question = questionCard(snapshot, said, send);
  const check = question === nothing && said.check;
  const { bothTerms, dialect } = snapshot.settings;
  return html`<div class="asides">
    ${said.caution ? html`<p class="boxed caution"><b>Take care</b> ${said.caution}</p>` : nothing}
    ${check ? html`<p class="boxed check"><b>Look</b> ${check}</p>` : nothing}
    ${bothTerms ? html`<p class="other-terms">${sayOtherTerms(`${said.act} ${said.check ?? ''}`, dialect)}</p>` : nothing}
    ${question}
  </div>`;
}

function moves(snapshot: Snapshot, send: Send): TemplateResult {
  const { place, making, step } = snapshot;
  const atStart = place === 0;
  const atEnd = place >= making.steps.length - 1;
  const asked = openQuestion(snapshot) !== null;
  const next = (): void => {
    if (asked) document.getElementById(QUESTION_ID)?.focus();
    else if (!atEnd) send({ type: 'NEXT', by: 'stitch' });
  };
  return html`<div class="moves">
    ${MOVES.map(({ by, back, says, name, place: at }) => {
      const off = back ? atStart : atEnd || asked;
      return html`<button
        type="button"
        class="button move ${at}"
        aria-label=${name}
        aria-disabled=${off ? 'true' : nothing}
        @click=${() => !off && send({ type: back ? 'BACK' : 'NEXT', by })}
      >${says}</button>`;
    })}
    <button type="button" class="button strong next" id=${NEXT_ID} aria-disabled=${atEnd || asked ? 'true' : nothing} @click=${next}>
      ${asked ? 'Answer first' : html`${sayNext(step, making)} <span aria-hidden="true">›</span>`}
    </button>
  </div>`;
}

type Move = { by: Unit; back: boolean; says: string; name: string; place: string };

const MOVES: readonly Move[] = [
  { by: 'side', back: true, says: '‹ side', name: 'Back by one side', place: 'move-back-side' },
  { by: 'stitch', back: true, says: '‹ stitch', name: 'Back by one stitch', place: 'move-back-stitch' },
  { by: 'side', back: false, says: 'side ›', name: 'On to the next side', place: 'move-on-side' },
];

/** On a narrow page the terms are changed here, beside the words they change. */
function termsTag({ dialect }: Snapshot['settings'], send: Send): TemplateResult {
  const other = otherDialect(dialect);
  return html`<button
    type="button"
    class="tag-button"
    aria-label="${dialectName(dialect)}. Change to ${dialectName(other)}"
    @click=${() => send({ type: 'SETTLE', settings: { dialect: other } })}
  >${dialectName(dialect)}</button>`;
}

function scrubber({ place, making, settings }: Snapshot, said: Said, send: Send): TemplateResult {
  const last = making.steps.length - 1;
  const jump = (event: Event): void => {
    const to = Number.parseInt((event.target as HTMLInputElement).value, 10);
    send({ type: 'JUMP', to });
  };
  return html`<div class="scrub">
    <label class="unseen" for="scrubber">Place in the making</label>
    <input id="scrubber" type="range" min="0" max=${last} step="1" .value=${live(`${place}`)} aria-valuetext=${said.where} @input=${jump} />
    <p class="scrub-count"><b>${place + 1}</b> of ${last + 1}</p>
    ${termsTag(settings, send)}
  </div>`;
}

/** The jumps by larger units, both ways. */
export const JUMPS: { by: Unit; says: string }[] = [
  { by: 'marker', says: 'marker' },
  { by: 'corner', says: 'corner' },
  { by: 'side', says: 'side' },
  { by: 'round', says: 'round' },
];
