/** For a panel that is not made yet: the way to its counts from a size or a pad. */
import { html, type TemplateResult } from 'lit-html';
import { FROM_SIZE } from '../words/cloth/from-size.ts';

export const fromSize = (go: () => void): TemplateResult => html`<div class="from-size">
  <span>${FROM_SIZE.asks}</span>
  <button type="button" class="button" @click=${go}>${FROM_SIZE.opens}</button>
</div>`;
