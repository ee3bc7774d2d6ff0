/** The one count that narrows the list best: its question, the answers, and what each would mean. */
import { html, nothing, type TemplateResult } from 'lit-html';
import type { Explained, Found, NextCount } from '../../core/index.ts';
import { goToField } from '../controls/go-to.ts';
import type { Snapshot } from '../state/snapshot.ts';
import { many } from '../words/numbers.ts';
import { explanationTitle } from '../words/wrong/causes.ts';
import { sayFound, sayLook } from '../words/wrong/looks.ts';
import type { Choose, Chosen } from './chosen.ts';
import { fieldOfLook, personsFound } from './looks.ts';
import type { Answered } from './view.ts';

/** Answers with a button each; where there are more, the field above takes the others. */
const MOST_BUTTONS = 5;

export function nextCountCard(view: Answered): TemplateResult | typeof nothing {
  const { snapshot } = view;
  const { nextCount, explanations } = view.explained;
  if (!nextCount) return nothing;
  const { making, settings } = snapshot;
  const give = (found: Found): void => answer(view, nextCount, found);
  const field = fieldOfLook(nextCount);
  // A whole round has no one number to press: its fields take them.
  const answers = nextCount.look === 'round' ? [] : nextCount.answers.slice(0, MOST_BUTTONS);
  return html`<section class="next-count" aria-labelledby="next-count-asks">
    <p class="muted">1 look tells most</p>
    <h4 id="next-count-asks">${sayLook(nextCount, making.plan, settings)}</h4>
    ${
      answers.length === 0
        ? nothing
        : html`<ul class=${answers.every(({ found }) => typeof found === 'number' && field) ? 'in-numbers' : 'in-words'}>
      ${answers.map(
        ({ found, leaves }) => html`<li>
          <button type="button" class="button" @click=${() => give(found)}>${sayFound(nextCount, personsFound(nextCount, found, snapshot), settings)}</button>
          <span>${meaning(leaves, explanations, snapshot)}</span>
        </li>`,
      )}
    </ul>`
    }
    ${field ? html`<button type="button" class="button another" @click=${() => goToField(field, snapshot, view.send)}>${answers.length === 0 ? 'Type them in' : 'Another number'}</button>` : nothing}
  </section>`;
}

/** An answer that has a field is typed there; the others are kept beside. */
function answer(
  { snapshot, send, chosen: { looked }, choose }: Answered,
  look: NextCount,
  found: Found,
): void {
  const field = fieldOfLook(look);
  if (field && typeof found === 'number')
    send({ type: 'TYPE', field, text: `${personsFound(look, found, snapshot)}` });
  else {
    const { answers: _answers, cured: _cured, ...place } = look;
    choose({ looked: [...looked.filter(({ key }) => key !== look.key), { ...place, found }] });
  }
}

function meaning(
  leaves: readonly number[],
  explanations: Explained['explanations'],
  snapshot: Snapshot,
): string {
  const { making, settings } = snapshot;
  const [first] = leaves;
  const best = first === undefined ? undefined : explanations[first];
  if (!best) return 'Then it is something else.';
  const title = explanationTitle(best.causes, making.plan, settings);
  return leaves.length === 1 ? title : `${title}, or ${many(leaves.length - 1, 'other')}`;
}

/** What was answered by looking, each to be taken back. */
export function lookedList(
  { making, settings }: Snapshot,
  { looked }: Chosen,
  choose: Choose,
): TemplateResult | typeof nothing {
  if (looked.length === 0) return nothing;
  return html`<ul class="looked">
    ${looked.map((one) => {
      const says = sayLook(one, making.plan, settings);
      const takeBack = (): void => choose({ looked: looked.filter(({ key }) => key !== one.key) });
      return html`<li><span>${says} <b>${sayFound(one, one.found, settings)}</b></span>
        <button type="button" class="button" aria-label="Take back: ${says}" @click=${takeBack}>Take back</button></li>`;
    })}
  </ul>`;
}
