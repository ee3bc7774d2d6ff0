/** A calm strip under the head: one notice, with its answers beside it. */
import { html, type TemplateResult } from 'lit-html';
import type { Notice } from '../../words/notices.ts';

/** What it says is a live region, there before anything is said. */
export const noticeRow = (
  notice: Notice | undefined,
  dismiss: (key: Notice['key']) => void,
): TemplateResult => html`<div class="notices">
      <p role="status">${notice?.says}</p>
      ${notice?.answers.map(
        ({ says, act }) =>
          html`<button type="button" class="button" @click=${() => {
            dismiss(notice.key);
            act?.();
          }}>${says}</button>`,
      )}
    </div>`;
