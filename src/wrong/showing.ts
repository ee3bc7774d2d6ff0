/** A cause on the drawing: its mishaps are looked at in place of those that are in, and leave no trace. */
import { html, nothing, type TemplateResult } from 'lit-html';
import { type Explanation, stepOfAct } from '../../core/index.ts';
import type { Send, Snapshot } from '../state/snapshot.ts';
import { questionsBefore } from '../walk/mishaps/questions.ts';
import { causeTitle } from '../words/wrong/causes.ts';
import { sayPassed } from '../words/wrong/mishaps.ts';
import { indexInList } from './cured.ts';
import type { Answered } from './view.ts';

/** Where the front's own number is wrong, or the recipe was kept, the drawing has nothing else to show. */
export function showing(
  { snapshot, send }: Answered,
  explanation: Explanation,
): TemplateResult | typeof nothing {
  const { mishaps, front } = explanation;
  if (mishaps.length === 0 || front) return nothing;
  if (snapshot.preview?.mishaps !== mishaps)
    return html`<button type="button" class="button" @click=${() => send({ type: 'PREVIEW', mishaps })}>Show it on the drawing</button>`;
  return html`<div class="cause-shown">
    <p><b>It is on the drawing now.</b></p>
    ${explanation.causes.map((cause) => goThere(explanation, cause, snapshot, send))}
    ${backToCounts(send)}
  </div>`;
}

/** Takes the cause off the drawing again, and goes back to where the walk stood. */
export const backToCounts = (send: Send): TemplateResult =>
  html`<button type="button" class="button" @click=${() => send({ type: 'PREVIEW', mishaps: null })}>Back to your counts</button>`;

function goThere(
  explanation: Explanation,
  cause: Explanation['causes'][number],
  snapshot: Snapshot,
  send: Send,
): TemplateResult | typeof nothing {
  const { making, place, settings } = snapshot;
  const [first] = cause.mishaps;
  const at = first ? stepOfAct(making, making.acts, indexInList(explanation, first)) : -1;
  if (at < 0) return nothing;
  if (at === place) return html`<p class="here-it-is">The walk stands here.</p>`;
  const passed = questionsBefore(snapshot, at);
  const title = causeTitle(cause, making.plan, settings);
  return html`<button type="button" class="button" aria-label="Go to where it happens: ${title}" @click=${() => walkTo(snapshot, at, send)}>
      Go to where it happens <span aria-hidden="true">›</span></button>
    ${passed.length > 0 ? html`<p class="muted">${sayPassed(passed.map(({ asks }) => asks))}</p>` : nothing}`;
}

/** Jumps to a step, taking open questions on the way as answered. */
export function walkTo(snapshot: Snapshot, to: number, send: Send): void {
  for (const { at, asks } of questionsBefore(snapshot, to)) {
    send({ type: 'JUMP', to: at });
    send({ type: 'ANSWER', asks });
  }
  send({ type: 'JUMP', to });
}
