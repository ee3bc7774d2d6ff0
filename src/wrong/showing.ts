/** A cause on the drawing: its mishaps go into the making, and come out again. What was typed stays. */
import { html, nothing, type TemplateResult } from 'lit-html';
import { type Explanation, stepOfAct } from '../../core/index.ts';
import type { Send, Snapshot } from '../state/snapshot.ts';
import { questionsBefore } from '../walk/mishaps/questions.ts';
import { causeTitle } from '../words/wrong/causes.ts';
import { sayPassed } from '../words/wrong/mishaps.ts';
import type { Choose, Chosen } from './chosen.ts';
import { indexInList } from './cured.ts';

export const isShown = ({ project }: Snapshot, { shown }: Chosen): boolean =>
  shown !== null && project.mishaps === shown.mishaps;

/** Where the front's own number is wrong, or the recipe was kept, the drawing has nothing else to show. */
export function showing(
  explanation: Explanation,
  snapshot: Snapshot,
  send: Send,
  chosen: Chosen,
  choose: Choose,
): TemplateResult | typeof nothing {
  const { mishaps, front } = explanation;
  if (mishaps.length === 0 || front) return nothing;
  if (!isShown(snapshot, chosen) || chosen.shown?.mishaps !== mishaps) {
    const show = (): void => {
      const before = isShown(snapshot, chosen) ? (chosen.shown?.before ?? []) : snapshot.project.mishaps;
      choose({ shown: { mishaps, before, from: chosen.shown?.from ?? snapshot.place } });
      send({ type: 'CHANGE', project: { mishaps } });
    };
    return html`<button type="button" class="button" @click=${show}>Show it on the drawing</button>`;
  }
  return html`<div class="cause-shown">
    <p><b>It is on the drawing now.</b></p>
    ${explanation.causes.map((cause) => goThere(explanation, cause, snapshot, send))}
    <button type="button" class="button" @click=${() => putBack(chosen, send, choose)}>Back to your counts</button>
  </div>`;
}

/** Takes the cause off the drawing again, and goes back to where the walk stood. */
export function putBack({ shown }: Chosen, send: Send, choose: Choose): void {
  if (!shown) return;
  choose({ shown: null });
  send({ type: 'CHANGE', project: { mishaps: shown.before } });
  send({ type: 'JUMP', to: shown.from });
}

function goThere(
  explanation: Explanation,
  cause: Explanation['causes'][number],
  snapshot: Snapshot,
  send: Send,
): TemplateResult | typeof nothing {
  const { making, place, settings } = snapshot;
  const [first] = cause.mishaps;
  const at = first ? stepOfAct(making, making.mishaps, indexInList(explanation, first)) : -1;
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
