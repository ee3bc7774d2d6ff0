/** Our mark: two rings, and the bars of the seam between them. */
import { html, type TemplateResult } from 'lit-html';

export const mark =
  (): TemplateResult => html`<svg class="mark" viewBox="0 0 36 36" aria-hidden="true" focusable="false">
  <rect class="mark-front" x="3" y="3" width="30" height="30" rx="8.5" fill="none" stroke-width="4.2"/>
  <rect class="mark-edging" x="11.2" y="11.2" width="13.6" height="13.6" rx="4" fill="none" stroke-width="3.6"/>
  <path class="mark-seam" d="M15 6.2v3.6M21 6.2v3.6M15 26.2v3.6M21 26.2v3.6M6.2 15h3.6M6.2 21h3.6M26.2 15h3.6M26.2 21h3.6" stroke-width="1.7" stroke-linecap="round"/>
</svg>`;
