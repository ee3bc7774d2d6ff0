/** A calm strip under the head: one notice at a time, with its answers beside it. */
import { html, type TemplateResult } from 'lit-html';
import { PANEL_ID } from '../../controls/ids.ts';
import { mishapOf } from '../../state/derive.ts';
import type { Send, Snapshot } from '../../state/snapshot.ts';
import { mishapUnfit, type Notice } from '../../words/notices.ts';
import { sayInApp } from '../../words/problems-view.ts';
import { inOrder, type Notices } from './notices.ts';

/** The strip as a part of the page. What it says is a live region, there before anything is said. */
export function noticesStrip(snapshot: Snapshot, send: Send, notices: Notices): TemplateResult {
  const [notice] = inOrder([...notices.list(), ...unfit(snapshot, send)]);
  return html`<div class="notices">
      <p role="status">${notice?.says}</p>
      ${notice?.answers.map(
        ({ says, act }) =>
          html`<button type="button" class="button" @click=${() => {
            notices.dismiss(notice.key);
            act?.();
            // The pressed button goes away: the keyboard goes on from the panel.
            document.getElementById(PANEL_ID)?.focus({ preventScroll: true });
          }}>${says}</button>`,
      )}
    </div>`;
}

/** An act put in before the panel was changed has no place on it any more. */
function unfit(snapshot: Snapshot, send: Send): Notice[] {
  const [problem] = snapshot.unfit;
  if (!problem) return [];
  const index = mishapOf(problem);
  const list = problem.at.startsWith('adjustments') ? 'adjustments' : 'mishaps';
  const left = snapshot.project[list].filter((_, other) => index !== null && other !== index);
  return [
    mishapUnfit(sayInApp(problem, snapshot), () => send({ type: 'CHANGE', project: { [list]: left } })),
  ];
}
