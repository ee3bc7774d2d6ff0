/** The cut in large numbers, both finished sizes, and the pictures to scale. */
import { html, nothing, type TemplateResult } from 'lit-html';
import { clothFields as f } from '../state/cloth-fields.ts';
import { EDGES_UNKNOWN, ROUNDED_UP, sayAllowance, sayCut, sayPiece } from '../words/cloth/cut.ts';
import { RESULT_ID } from './measure.ts';
import { laidPicture, turnedPicture } from './picture.ts';
import type { Place } from './place.ts';

export function resultPart({ snapshot, cloth }: Place): TemplateResult {
  const { plan, measures } = cloth;
  const { units } = snapshot.settings;
  if (!plan)
    return html`<section class="cloth-part" aria-labelledby=${RESULT_ID}>
      <h3 id=${RESULT_ID} tabindex="-1">The cut</h3>
      <p class="waits">It stands here once the panel and the depth of the foundation are measured.</p>
    </section>`;
  const { size, isRounded } = sayCut(plan, units);
  const depth = measures.value(f.depth) ?? 0;
  const edging = measures.value(f.edging) ?? measures.value(f.frontEdge);
  const { faces } = snapshot.making.plan;
  const shown = edging ?? depth / 2;
  return html`<section class="cloth-part" aria-labelledby=${RESULT_ID}>
    <h3 id=${RESULT_ID} tabindex="-1">Cut the cloth</h3>
    <p class="cut-size">${size}</p>
    <p>${sayAllowance(plan, units)} ${isRounded ? ROUNDED_UP[units] : nothing}</p>
    <dl class="sizes">
      <div><dt>seam</dt><dd>${sayPiece(plan.seam, units)}</dd></div>
      <div><dt>finished back</dt><dd>${sayPiece(plan.finishedBack, units)}</dd></div>
      <div><dt>finished front</dt><dd>${sayPiece(plan.finishedFront, units)}</dd></div>
    </dl>
    ${edging === undefined ? html`<p class="muted">${EDGES_UNKNOWN}</p>` : nothing}
    <figure class="cloth-figure">
      ${laidPicture({ plan, depth, edging: shown, faces, pins: cloth.pins ?? [], units })}
      <figcaption>Laid on: base chains on the raw edge, seam just below the edging.</figcaption>
    </figure>
    <figure class="cloth-figure">
      ${turnedPicture({ plan, faces, units })}
      <figcaption>Turned outwards.</figcaption>
    </figure>
  </section>`;
}
