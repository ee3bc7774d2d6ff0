/** What the cut comes to: both finished sizes, and the drawing to scale. */
import { html, nothing, type TemplateResult } from 'lit-html';
import { segmented } from '../controls/segmented.ts';
import { clothFields as f } from '../state/cloth-fields.ts';
import { CUT, EDGES_UNKNOWN, ROUNDED_UP, sayCut, sayPiece } from '../words/cloth/cut.ts';
import { LOOKS, SAVE_DRAWING, TRUE_SIZE } from '../words/cloth/figures.ts';
import { showFigure } from './figure.ts';
import type { Look, Place } from './place.ts';
import { figureOf } from './saving.ts';

export const DRAWN_ID = 'cloth-drawn';

export function resultPart(place: Place): TemplateResult | typeof nothing {
  const { snapshot, cloth } = place;
  const { plan, measures } = cloth;
  const { units } = snapshot.settings;
  if (!plan) return nothing;
  const hasEdges = (measures.value(f.edging) ?? measures.value(f.frontEdge)) !== undefined;
  return html`<section class="cloth-part" aria-labelledby=${DRAWN_ID}>
    <h3 id=${DRAWN_ID} tabindex="-1">${CUT.drawn}</h3>
    <dl class="sizes">
      <div><dt>${CUT.seam}</dt><dd>${sayPiece(plan.seam, units)}</dd></div>
      <div><dt>${CUT.back}</dt><dd>${sayPiece(plan.finishedBack, units)}</dd></div>
      <div><dt>${CUT.front}</dt><dd>${sayPiece(plan.finishedFront, units)}</dd></div>
    </dl>
    ${hasEdges ? nothing : html`<p class="muted">${EDGES_UNKNOWN}</p>`}
    ${sayCut(plan, units).isRounded ? html`<p class="muted">${ROUNDED_UP[units]}</p>` : nothing}
    ${drawing(place)}
  </section>`;
}

function drawing(place: Place): TemplateResult {
  const { look, lookAt, saved, saveFigure } = place;
  const figure = figureOf(place, look);
  return html`<figure class="cloth-figure">
    ${segmented<Look>(
      LOOKS.heading,
      look,
      (['laid', 'turned'] as const).map((value) => ({ value, says: LOOKS[value].says })),
      lookAt,
    )}
    ${figure ? showFigure(figure) : nothing}
    <figcaption>${LOOKS[look].caption}</figcaption>
    <button type="button" class="button" @click=${() => saveFigure(look)}>${SAVE_DRAWING}</button>
    <p class="muted" role="status">${saved && saved.what !== 'layout' ? `${saved.says} ${TRUE_SIZE}` : nothing}</p>
  </figure>`;
}
