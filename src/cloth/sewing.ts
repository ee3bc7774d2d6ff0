/** Sewing the strip on, by hand or by machine. The thread for it stands on the shopping list. */
import { html, nothing, type TemplateResult } from 'lit-html';
import type { SewingPlan } from '../../core/index.ts';
import { segmented } from '../controls/segmented.ts';
import { clothFields as f } from '../state/cloth-fields.ts';
import { MACHINE, SEWING, sayChanges, saySide } from '../words/cloth/making.ts';
import { choose, type Place } from './place.ts';

export function sewingPart(place: Place): TemplateResult {
  const { cloth } = place;
  return html`<details class="fold">
    <summary>${SEWING.heading}</summary>
    ${segmented(
      SEWING.heading,
      cloth.isByMachine ? 'machine' : 'hand',
      (['hand', 'machine'] as const).map((value) => ({ value, says: SEWING[value] })),
      (value) => choose(place, f.sewing, value),
    )}
    ${cloth.isByMachine || !cloth.sewing ? html`<p>${MACHINE}</p>` : byHand(cloth.sewing, cloth.shape === 'round')}
  </details>`;
}

const byHand = (sewing: SewingPlan, isRound: boolean): TemplateResult => html`<p>${SEWING.how}</p>
  <p>${isRound ? SEWING.beginRound : SEWING.beginSide}</p>
  <ol class="cloth-list">
    ${sewing.over.out.map((_, side) => html`<li>${saySide(sewing, side, isRound)}</li>`)}
  </ol>
  ${sewing.changes.length > 0 ? html`<p class="muted">${sayChanges(sewing.changes, isRound)}</p>` : nothing}`;
