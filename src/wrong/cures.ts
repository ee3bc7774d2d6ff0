/** The ways to put a cause right, recommended first, and what comes after one was taken. */
import { html, nothing, type TemplateResult } from 'lit-html';
import type { Cure } from '../../core/index.ts';
import { segmented } from '../controls/segmented.ts';
import { withoutAnswer } from '../state/answer-fields.ts';
import type { Send, Snapshot } from '../state/snapshot.ts';
import { sayWhere } from '../words/walk/where.ts';
import { sayAnswer } from '../words/wrong/answer.ts';
import {
  cureAfter,
  cureCost,
  cureTitle,
  cureWhere,
  sayAfter,
  sayBefore,
  sayChosen,
  sayDrawing,
  sayForAll,
} from '../words/wrong/cures.ts';
import { answerOf, isNamed } from './answer.ts';
import type { Choose, Chosen } from './chosen.ts';
import { curedProject, goesOnAt, nameOf } from './cured.ts';
import { focusSoon } from './focus.ts';
import { walkTo } from './showing.ts';
import type { Answered } from './view.ts';

const DONE_ID = 'wrong-done';

export function curesOf(view: Answered, cures: readonly Cure[]): TemplateResult | typeof nothing {
  if (cures.length === 0) return nothing;
  const sorted = [...cures].sort((a, b) => Number(b.recommended) - Number(a.recommended));
  return html`<div class="cures">
    <h4>Put it right</h4>
    ${sorted.map((cure) => cureEntry(view, cure))}
  </div>`;
}

/** One cure is right whatever it was: no more needs to be known. */
export function cureForAll(view: Answered): TemplateResult | typeof nothing {
  const { explained } = view;
  if (!explained.cureForAll) return nothing;
  return html`<section class="cure-for-all" aria-labelledby="cure-for-all">
    <h4 id="cure-for-all">${sayForAll}</h4>
    ${cureEntry(view, { ...explained.cureForAll, recommended: true })}
  </section>`;
}

function cureEntry(view: Answered, cure: Cure): TemplateResult {
  const { snapshot, send, choose, explained } = view;
  const { making, settings } = snapshot;
  const title = cureTitle(cure, settings);
  const take = (): void => {
    const project = curedProject(snapshot, cure);
    choose({
      done: {
        project,
        cured: { title, cure },
        looked: view.chosen.looked,
        before: withoutAnswer(snapshot.project),
        answer: answerOf(view, cure),
      },
      looked: [],
      previewed: null,
    });
    const { place, answered } = snapshot.preview ?? snapshot;
    send({ type: 'OPEN', project, place, answered });
    focusSoon(DONE_ID);
  };
  return html`<details class="cure" ?open=${cure.recommended || isNamed(view, cure)}>
    <summary><span><b>${title}</b>${cure.recommended ? html`<span class="tag">best</span>` : nothing}${isNamed(view, cure) ? html`<span class="tag">${sayAnswer.named}</span>` : nothing}<span class="cure-cost">${cureCost(cure, explained.stands)}</span></span></summary>
    ${cureWhere(cure, making.plan, settings).map((says) => html`<p>${says}</p>`)}
    <p>${cureAfter(cure)}</p>
    ${beforeAndAfter(view, cure)}
    <button type="button" class="button ${cure.recommended ? 'action' : ''}" aria-label="Do it this way: ${title}" @click=${take}>Do it this way</button>
  </details>`;
}

/** The drawing as the work is, or as it will be: nothing is changed by looking. */
function beforeAndAfter({ snapshot, send, chosen, choose }: Answered, cure: Cure) {
  // Another number for the front makes another recipe: there is no piece to lay beside it.
  if (cure.kind === 'correct-the-number') return nothing;
  const isShown = snapshot.preview !== null && chosen.previewed === nameOf(cure);
  const look = (way: 'before' | 'after'): void => {
    if (way === 'before') {
      choose({ previewed: null });
      send({ type: 'PREVIEW', mishaps: null });
      return;
    }
    const project = curedProject(snapshot, cure);
    choose({ previewed: nameOf(cure) });
    send({ type: 'PREVIEW', mishaps: project.mishaps, project });
  };
  return segmented(
    sayDrawing,
    isShown ? 'after' : 'before',
    [
      { value: 'before', says: sayBefore },
      { value: 'after', says: sayAfter },
    ],
    look,
  );
}

/** What was taken, and the two ways on. Gone as soon as anything else is changed. */
export function doneStrip(
  snapshot: Snapshot,
  send: Send,
  chosen: Chosen,
  choose: Choose,
): TemplateResult | typeof nothing {
  const { done } = chosen;
  if (!done || done.project !== snapshot.project) return nothing;
  const { making, place } = snapshot;
  const to = goesOnAt(making, done.cured.cure, place);
  const walkOn = (): void => {
    walkTo(snapshot, to, send);
    send({ type: 'SHOW', tab: 'walk' });
  };
  const undo = (): void => {
    choose({ done: null, looked: done.looked });
    send({ type: 'UNDO' });
  };
  return html`<section class="wrong-done" id=${DONE_ID} tabindex="-1" aria-labelledby="wrong-done-head">
    <h3 id="wrong-done-head">${sayChosen(done.cured.title)}</h3>
    <p>Recipe, walk and drawing go on with your real counts.</p>
    <p>The work goes on here: <b>${sayWhere(making.steps.at(to), making)}</b></p>
    <div class="wrong-done-ways">
      <button type="button" class="button strong" @click=${walkOn}>Walk on <span aria-hidden="true">›</span></button>
      <button type="button" class="button" @click=${undo}>Undo</button>
    </div>
  </section>`;
}
