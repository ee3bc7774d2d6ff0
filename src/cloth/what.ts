/** What it becomes, and what the front is. */
import { html, nothing, type SVGTemplateResult, svg, type TemplateResult } from 'lit-html';
import { planFrontStrip } from '../../core/index.ts';
import { fieldId } from '../controls/fields.ts';
import { clothFields as f } from '../state/cloth-fields.ts';
import type { Becomes } from '../state/cloth-types.ts';
import {
  FRONT_OF_CLOTH,
  NO_SIDE_TO_OPEN,
  OPEN_SIDE,
  OPEN_SIDE_DONE,
  optionSide,
  sayBecomes,
  sayForm,
  sayFrontOfCloth,
  WHAT_HEADING,
} from '../words/cloth/what.ts';
import { isSameStrip } from '../words/recipe.ts';
import { choose, type Place } from './place.ts';

const PICTURES: Record<Becomes, SVGTemplateResult> = {
  cushion: svg`<path class="cloth-outline" d="M12 10Q40 3 68 10Q75 24 68 38Q40 45 12 38Q5 24 12 10Z"/>`,
  bag: svg`<path class="cloth-outline" d="M16 14H64V42H16Z"/><path class="cloth-open" d="M16 14H64"/><path class="cloth-outline" d="M28 14C28 2 52 2 52 14"/>`,
  cover: svg`<path class="cloth-outline" d="M10 24Q40 8 70 24V31Q40 43 10 31Z"/><path class="cloth-outline" d="M20 34V44M60 34V44"/>`,
};

export function whatPart(place: Place): TemplateResult {
  const { snapshot, cloth } = place;
  return html`<section class="cloth-part" aria-labelledby="becomes-heading">
    <fieldset>
      <legend id="becomes-heading">${WHAT_HEADING}</legend>
      <div class="cards">
        ${(['cushion', 'bag', 'cover'] as const).map(
          (becomes) => html`<label class="card">
            <input type="radio" name="becomes" .checked=${cloth.becomes === becomes} @change=${() => choose(place, f.becomes, becomes)} />
            <svg viewBox="0 0 80 48" aria-hidden="true">${PICTURES[becomes]}</svg><span>${sayBecomes(becomes, snapshot.settings.dialect)}</span>
          </label>`,
        )}
      </div>
    </fieldset>
    ${cloth.becomes === 'bag' ? openSide(place) : nothing}
    ${cloth.becomes === 'cover' ? html`<p class="muted">${sayForm(place.pad, snapshot.making.plan.edge.corners.length > 0)}</p>` : nothing}
    <label class="tick">
      <input type="checkbox" .checked=${cloth.isMirrored}
        @change=${(event: Event) => choose(place, f.front, (event.target as HTMLInputElement).checked ? 'cloth' : 'panel')} />
      <span>${FRONT_OF_CLOTH}</span>
    </label>
    ${cloth.isMirrored ? html`<p class="consequence">${sayFrontOfCloth(sidesToTurn(place))}</p>` : nothing}
  </section>`;
}

/** How many sides the front's lists have in another order; 0 where it makes no difference. */
function sidesToTurn({ cloth, snapshot }: Place): number {
  const { plan } = snapshot.making;
  const front = planFrontStrip(plan);
  const isAlike = cloth.shape !== 'polygon' && front.ok && isSameStrip(front.value, plan);
  return isAlike ? 0 : plan.edge.corners.length;
}

function openSide(place: Place): TemplateResult {
  const { snapshot } = place;
  const sides = snapshot.making.edge.corners.length;
  if (sides < 2) return html`<p class="consequence">${NO_SIDE_TO_OPEN}</p>`;
  const chosen = snapshot.project.texts[f.openSide] ?? '1';
  return html`<div class="cloth-row">
    <label for=${fieldId(f.openSide)}>${OPEN_SIDE}</label>
    <select id=${fieldId(f.openSide)} @change=${(event: Event) => choose(place, f.openSide, (event.target as HTMLSelectElement).value)}>
      ${Array.from({ length: sides }, (_, side) => `${side + 1}`).map(
        (text) => html`<option value=${text} ?selected=${text === chosen}>${optionSide(text)}</option>`,
      )}
    </select>
  </div>
  <p class="muted">${OPEN_SIDE_DONE}</p>`;
}
