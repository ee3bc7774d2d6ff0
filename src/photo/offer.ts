/** Beside counts: a button a side that opens counting on a photo, which is fetched then. */
import './offer.css';
import { html, type TemplateResult } from 'lit-html';
import { missingPart } from '../controls/missing-part.ts';
import type { Field, Send, Snapshot } from '../state/snapshot.ts';
import { photoWords } from '../words/photo-offer.ts';

export type Offered = { field: Field; name: string };

let isMissing = false;
let isComing = false;

export function photoOffer(fields: readonly Offered[], snapshot: Snapshot, send: Send): TemplateResult {
  const open = async (of: Offered): Promise<void> => {
    if (isComing) return;
    isComing = true;
    try {
      const { openPhoto } = await import('./photo-sheet.ts');
      openPhoto({ ...of, snapshot, send });
    } catch {
      isMissing = true;
      // Draws the page anew: nothing else is changed.
      send({ type: 'POINT', at: snapshot.pointed });
    } finally {
      isComing = false;
    }
  };
  return html`<details class="fold photo-offer"><summary>${photoWords.offer}</summary>
    ${
      isMissing
        ? missingPart()
        : html`<p class="muted">${photoWords.offerHint}</p>
    <div class="photo-sides">
      ${fields.map((of) => html`<button type="button" class="button" @click=${() => open(of)}>${of.name}</button>`)}
    </div>`
    }
  </details>`;
}
