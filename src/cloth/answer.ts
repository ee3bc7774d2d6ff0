/** The answer: how large to cut, how many pieces, and what to buy. */
import { html, nothing, type TemplateResult } from 'lit-html';
import { piecesOf } from '../state/cloth-stock.ts';
import { CUT, sayAllowance, sayCut, sayPieces } from '../words/cloth/cut.ts';
import { RESULT_ID } from './measure.ts';
import type { Place } from './place.ts';
import { shoppingPart } from './shopping.ts';

export const answerPart = (place: Place): TemplateResult => html`<div class="cloth-answer">
  <section class="cloth-part" aria-labelledby=${RESULT_ID}>
    <h3 id=${RESULT_ID} tabindex="-1">${place.cloth.plan ? CUT.heading : CUT.waiting}</h3>
    ${cutSaid(place)}
  </section>
  ${shoppingPart(place)}
</div>`;

function cutSaid({ snapshot, cloth }: Place): TemplateResult {
  const { plan, isMirrored } = cloth;
  const { units } = snapshot.settings;
  if (!plan) return html`<p class="waits">${CUT.waits}</p>`;
  const pieces = piecesOf(cloth);
  return html`<p class="cut-size">${sayCut(plan, units).size}</p>
    <p>${pieces > 1 ? sayPieces(pieces, isMirrored) : nothing} ${sayAllowance(plan, units)}</p>`;
}
