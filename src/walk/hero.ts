/**
 * The picture of the step: where the hook goes now, or the whole stitch move by move. Where there is room for one
 * view only it is the largest thing on the page, and the drawing is one tap away.
 */
import { html, nothing, type TemplateResult } from 'lit-html';
import type { Snapshot } from '../state/snapshot.ts';
import { stepDrawing, stitchPanel, variantOf } from '../stitch/index.ts';
import type { Aids } from './aids.ts';

const VIEWS = [
  { id: 'view-stitch', says: 'Stitch' },
  { id: 'view-close', says: 'Close-up' },
  { id: 'view-whole', says: 'Whole' },
] as const;

export function stepPicture(snapshot: Snapshot, aids: Aids): TemplateResult {
  return html`<div class="hero" data-keys="walk">${views()}${inside(snapshot, aids)}</div>`;
}

/** Which view is shown is the control's own state: the style sheet reads it, and nothing else needs it. */
const views = (): TemplateResult =>
  html`<fieldset class="views">
    <legend class="unseen">What is shown</legend>
    ${VIEWS.map(
      ({ id, says }, i) =>
        html`<label class="view-choice"><input type="radio" name="view" id=${id} ?checked=${i === 0} /><span>${says}</span></label>`,
    )}
  </fieldset>`;

function inside({ step, making, settings }: Snapshot, { stitch }: Aids): TemplateResult {
  const view = stitch.view();
  if (view) return html`${stitchPanel(view, settings, stitch.send)}`;
  const opens = variantOf(step, making) !== null;
  return html`<section class="inside" aria-label="The stitch in a picture">
    <div class="inside-picture">${stepDrawing(step, making, settings)}</div>
    ${opens ? html`<button type="button" class="button inside-open" @click=${() => stitch.open(step, making)}>Move by move</button>` : nothing}
  </section>`;
}
