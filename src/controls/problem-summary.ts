/** The list of what cannot be read, shown only after the person asked to have the numbers checked. */
import { html, nothing, type TemplateResult } from 'lit-html';
import type { Field, Send, Snapshot } from '../state/snapshot.ts';
import { firstOfEach, PROBLEM_HEADING, sayInApp } from '../words/problems-view.ts';
import { fieldId } from './fields.ts';
import { goToField } from './go-to.ts';

const SUMMARY_ID = 'problem-summary';

export function problemSummary(snapshot: Snapshot, send: Send): TemplateResult | typeof nothing {
  const { problems, isChecked } = snapshot;
  if (!isChecked || problems.length === 0) return nothing;
  // A link is followed without touching the address, which may hold a shared panel.
  const follow = (event: Event, field: Field): void => {
    event.preventDefault();
    goToField(field, snapshot, send);
  };
  return html`<section class="summary" id=${SUMMARY_ID} role="alert" tabindex="-1" aria-labelledby="summary-heading">
    <h2 id="summary-heading">${PROBLEM_HEADING}</h2>
    <ul>
      ${firstOfEach(problems).map(
        (problem) =>
          html`<li><a href="#${fieldId(problem.at)}" @click=${(event: Event) => follow(event, problem.at)}>${sayInApp(problem, snapshot)}</a></li>`,
      )}
    </ul>
  </section>`;
}

/** Asks for a check and brings the list into focus if there is one. Answers whether the recipe can be made. */
export function check({ isStale }: Snapshot, send: Send): boolean {
  send({ type: 'CHECK' });
  if (!isStale) return true;
  requestAnimationFrame(() => requestAnimationFrame(() => document.getElementById(SUMMARY_ID)?.focus()));
  return false;
}
