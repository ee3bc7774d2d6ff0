/** The list of what cannot be read, shown only after the person asked to have the numbers checked. */
import { html, nothing, type TemplateResult } from 'lit-html';
import type { Send, Snapshot } from '../state/snapshot.ts';
import { firstOfEach, PROBLEM_HEADING, sayInApp } from '../words/problems-view.ts';
import { fieldId } from './fields.ts';

export const SUMMARY_ID = 'problem-summary';

export function problemSummary(snapshot: Snapshot): TemplateResult | typeof nothing {
  const { problems, told } = snapshot;
  if (!told || problems.length === 0) return nothing;
  return html`<section class="summary" id=${SUMMARY_ID} role="alert" tabindex="-1" aria-labelledby="summary-heading">
    <h2 id="summary-heading">${PROBLEM_HEADING}</h2>
    <ul>
      ${firstOfEach(problems).map(
        (problem) =>
          html`<li><a href="#${fieldId(problem.at)}" @click=${(event: Event) => goTo(event, fieldId(problem.at))}>${sayInApp(problem, snapshot)}</a></li>`,
      )}
    </ul>
  </section>`;
}

/** Follows a link without touching the address, which may hold a shared panel. */
function goTo(event: Event, id: string): void {
  event.preventDefault();
  const field = document.getElementById(id);
  if (!field) return;
  field.closest('details')?.setAttribute('open', '');
  field.focus();
  field.scrollIntoView({ block: 'center' });
}

/** Asks for a check and brings the list into focus if there is one. Answers whether all is well. */
export function check(snapshot: Snapshot, send: Send): boolean {
  send({ type: 'CHECK' });
  if (snapshot.problems.length === 0) return true;
  requestAnimationFrame(() => requestAnimationFrame(() => document.getElementById(SUMMARY_ID)?.focus()));
  return false;
}
