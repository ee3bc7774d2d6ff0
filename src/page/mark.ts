/** Our mark: two rings of as many stitches, one inside the other. */
import { html, type TemplateResult } from 'lit-html';

export const mark =
  (): TemplateResult => html`<svg class="mark" viewBox="0 0 36 36" aria-hidden="true" focusable="false">
  <rect class="mark-front" x="3" y="3" width="30" height="30" rx="9" fill="none" stroke-width="4.4" pathLength="200"/>
  <rect class="mark-edging" x="10.6" y="10.6" width="14.8" height="14.8" rx="4.6" fill="none" stroke-width="3.8" pathLength="200"/>
</svg>`;
