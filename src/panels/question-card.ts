/** A question that must be answered before the work goes on, with how to look. */
import { html, nothing, type TemplateResult } from 'lit-html';
import type { Send, Snapshot } from '../state/snapshot.ts';
import type { Said } from '../words/step.ts';
import { NEXT_ID, QUESTION_ID } from './ids.ts';

type Asked = NonNullable<Snapshot['step']['asks']>;

const QUESTIONS: Record<Asked, { asks: string; yes: string; look: string }> = {
  twist: {
    asks: 'Is the ring untwisted?',
    yes: 'Yes, it lies flat',
    look: 'Lay it flat. All base chains look the same way, from start to end.',
  },
  pad: {
    asks: 'Is the pad in?',
    yes: 'Yes, it is in',
    look: 'Push it into every corner. The last side is still open.',
  },
};

/** The question this step asks and nobody has answered yet. */
export function openQuestion({ step, answered }: Snapshot): Asked | null {
  return step.asks && !answered.includes(step.asks) ? step.asks : null;
}

export function questionCard(snapshot: Snapshot, said: Said, send: Send): TemplateResult | typeof nothing {
  const asks = openQuestion(snapshot);
  if (!asks) return nothing;
  const question = QUESTIONS[asks];
  const answer = (): void => {
    send({ type: 'ANSWER', asks });
    // The card goes away: the next thing to press is Next.
    requestAnimationFrame(() => requestAnimationFrame(() => document.getElementById(NEXT_ID)?.focus()));
  };
  return html`<div class="question" id=${QUESTION_ID} role="group" tabindex="-1" aria-labelledby="question-asks">
    <div class="question-words">
      <p class="question-asks" id="question-asks">${said.ask ?? question.asks}</p>
      <p>${said.check ?? question.look}</p>
    </div>
    <button type="button" class="button strong" @click=${answer}>${question.yes}</button>
  </div>`;
}
