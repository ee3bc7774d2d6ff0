/**
 * In the place of a part that could not be fetched. The browser remembers that it failed for as long as the page
 * lives, so the page is opened again, at the place and with the work that are kept.
 */
import { html, type TemplateResult } from 'lit-html';

export const openAgain = (): void => location.reload();

export const missingPart = (): TemplateResult =>
  html`<p>This part could not be fetched.</p>
    <button type="button" class="button" @click=${openAgain}>Open the page again</button>`;
