/** What it becomes, and what the front is. */
import { html, nothing, type SVGTemplateResult, svg, type TemplateResult } from 'lit-html';
import { fieldId } from '../controls/fields.ts';
import { segmented } from '../controls/segmented.ts';
import { clothFields as f } from '../state/cloth-fields.ts';
import type { Becomes } from '../state/cloth-types.ts';
import type { Units } from '../state/snapshot.ts';
import { term } from '../words/terms.ts';
import { choose, type Place } from './place.ts';

const PICTURES: Record<Becomes, SVGTemplateResult> = {
  cushion: svg`<path class="cloth-outline" d="M12 10Q40 3 68 10Q75 24 68 38Q40 45 12 38Q5 24 12 10Z"/>`,
  bag: svg`<path class="cloth-outline" d="M16 14H64V42H16Z"/><path class="cloth-open" d="M16 14H64"/><path class="cloth-outline" d="M28 14C28 2 52 2 52 14"/>`,
  cover: svg`<path class="cloth-outline" d="M10 24Q40 8 70 24V31Q40 43 10 31Z"/><path class="cloth-outline" d="M20 34V44M60 34V44"/>`,
};

export function whatPart(place: Place): TemplateResult {
  const { snapshot, cloth } = place;
  const says: Record<Becomes, string> = {
    cushion: `a ${term('cushion', snapshot.settings.dialect)}`,
    bag: 'a bag or pocket',
    cover: 'a cover over a form',
  };
  return html`<section class="cloth-part" aria-labelledby="becomes-heading">
    <fieldset>
      <legend id="becomes-heading">What is it to be?</legend>
      <div class="cards">
        ${(['cushion', 'bag', 'cover'] as const).map(
          (becomes) => html`<label class="card">
            <input type="radio" name="becomes" .checked=${cloth.becomes === becomes} @change=${() => choose(place, f.becomes, becomes)} />
            <svg viewBox="0 0 80 48" aria-hidden="true">${PICTURES[becomes]}</svg><span>${says[becomes]}</span>
          </label>`,
        )}
      </div>
    </fieldset>
    ${cloth.becomes === 'bag' ? openSide(place) : nothing}
    ${cloth.becomes === 'cover' ? html`<p class="muted">The form takes the place of the ${place.pad}: it goes in before the last side is joined.</p>` : nothing}
    <label class="tick">
      <input type="checkbox" .checked=${cloth.isMirrored}
        @change=${(event: Event) => choose(place, f.front, (event.target as HTMLInputElement).checked ? 'cloth' : 'panel')} />
      <span>The front is cloth too, with a strip of its own</span>
    </label>
    ${cloth.isMirrored ? html`<p class="consequence">Cut 2 pieces and work 2 strips to the same counts, the second with its sides in the other order. Measure the front's cloth between its seams, where it says panel.</p>` : nothing}
    <div class="cloth-row"><span>Lengths in</span>${segmented<Units>(
      'Lengths in',
      snapshot.settings.units,
      [
        { value: 'cm', says: 'cm' },
        { value: 'inch', says: 'inches' },
      ],
      (units) => place.send({ type: 'SETTLE', settings: { units } }),
    )}</div>
  </section>`;
}

function openSide(place: Place): TemplateResult {
  const { snapshot } = place;
  const sides = snapshot.making.edge.corners.length;
  if (sides < 2)
    return html`<p class="consequence">A piece without corners has no side to leave open: join it as far as you like, and finish both edges off.</p>`;
  const chosen = snapshot.project.texts[f.openSide] ?? '1';
  return html`<div class="cloth-row">
    <label for=${fieldId(f.openSide)}>Front side that stays open</label>
    <select id=${fieldId(f.openSide)} @change=${(event: Event) => choose(place, f.openSide, (event.target as HTMLSelectElement).value)}>
      ${Array.from({ length: sides }, (_, side) => `${side + 1}`).map(
        (text) => html`<option value=${text} ?selected=${text === chosen}>side ${text}</option>`,
      )}
    </select>
  </div>
  <p class="muted">Its stitches are not joined. Fasten off at both its corners.</p>`;
}
