/** A question that must be answered before the work goes on, with how to look. */
import { html, nothing, type TemplateResult } from 'lit-html';
import { NEXT_ID, QUESTION_ID } from '../controls/ids.ts';
import type { Send, Snapshot } from '../state/snapshot.ts';
import { type Said, sayHeldBack } from '../words/walk/step.ts';
import { openQuestion } from './open-question.ts';

export function questionCard(snapshot: Snapshot, said: Said, send: Send): TemplateResult | typeof nothing {
  const asks = openQuestion(snapshot);
  if (!asks) return nothing;
  const answer = (): void => {
    send({ type: 'ANSWER', asks });
    // The card goes away: the next thing to press is Next.
    requestAnimationFrame(() => requestAnimationFrame(() => document.getElementById(NEXT_ID)?.focus()));
  };
  return html`<div class="question" id=${QUESTION_ID} role="group" tabindex="-1" aria-labelledby="question-asks">
    <div class="question-words">
      <p class="question-asks" id="question-asks">${said.ask}</p>
      <p>${said.check} <span class="muted">${sayHeldBack()}</span></p>
    </div>
    <button type="button" class="button strong" @click=${answer}>${said.answers?.yes}</button>
    <details class="question-no">
      <summary class="button">${said.answers?.no}</summary>
      <p>${said.answers?.how}</p>
    </details>
  </div>`;
}
