/** Yarn of each colour: by the maker's swatch, or a rough band from print. */
import { html, nothing, type TemplateResult } from 'lit-html';
import { perimeter, type YarnNeed } from '../../core/index.ts';
import { pitchOf } from '../state/cloth.ts';
import { clothFields as f } from '../state/cloth-fields.ts';
import { ballFor, ballOf, yarnLeft, yarnNeeds } from '../state/cloth-stock.ts';
import { opening } from '../words/cloth/fields.ts';
import { SHOPPING, sayNeeds } from '../words/cloth/shopping.ts';
import { sayBalls, sayLeft, sayNeed, YARN_PARTS } from '../words/cloth/stock.ts';
import { pitchWeights } from '../words/cloth/weights.ts';
import { measureField } from './measure-field.ts';
import type { Place } from './place.ts';

/** A colour is bought for the foundation, and one for the edging with the join. */
export type Colour = 'foundation' | 'edging';

/** The edge along which a round runs: the seam where it is known. */
export const needsOf = ({ cloth, snapshot }: Place, colour: Colour): YarnNeed[] =>
  yarnNeeds(cloth, snapshot.making, cloth.plan && perimeter(cloth.plan.seam))
    .filter(({ part }) => ballOf(part) === colour)
    .map((need) =>
      cloth.plan || need.from === 'measured' ? need : { ...need, from: 'nothing', metres: null, grams: null },
    );

/** "2 balls", or metres and grams where no ball band is known: of each part that takes the colour. */
export function yarnAmounts(place: Place, colour: Colour): string[] {
  const needs = needsOf(place, colour);
  const balls = sayBalls(needs, ballFor(place.cloth.measures, colour));
  return balls ? [balls] : sayNeeds(needs, place.snapshot.settings.units);
}

export function yarnDetails(place: Place, colour: Colour): TemplateResult {
  const { cloth, snapshot } = place;
  const { units, yarns } = snapshot.settings;
  const needs = needsOf(place, colour);
  const balls = sayBalls(needs, ballFor(cloth.measures, colour));
  return html`<p>${SHOPPING.swatchHow}</p>
    ${needs.map(
      (need) => html`<div class="yarn-part">
        <h4><svg class="yarn-dot" viewBox="0 0 16 16" aria-hidden="true"><circle cx="8" cy="8" r="7" fill=${yarns[colour]}/></svg> ${opening(YARN_PARTS[need.part])}</h4>
        <p class="yarn-need">${opening(sayNeed(need, units))}</p>
        <div class="measures three">
          ${measureField(place, f.yarnStitches(need.part))} ${measureField(place, f.yarnLength(need.part))} ${measureField(place, f.yarnGrams(need.part))}
        </div>
      </div>`,
    )}
    <h4>${SHOPPING.ballBand}${balls ? html`: <b>${balls}</b>` : nothing}</h4>
    <div class="measures">${measureField(place, f.ballGrams(colour))} ${measureField(place, f.ballLength(colour))}</div>
    ${colour === 'edging' ? leftOver(place, needs) : nothing}`;
}

function leftOver(place: Place, needs: readonly YarnNeed[]): TemplateResult {
  const { cloth, snapshot } = place;
  const left = yarnLeft(cloth, needs);
  const weights = pitchWeights(pitchOf(cloth.measures, 'front'), snapshot.settings.dialect);
  return html`<h4>${SHOPPING.left}</h4>
    <div class="measures">${measureField(place, f.left)}</div>
    ${left ? html`<p class="consequence">${sayLeft(cloth.measures.value(f.left) ?? 0, left)}</p>` : html`<p class="muted">${SHOPPING.leftOf}</p>`}
    <p>${SHOPPING.weigh}</p>
    <div class="measures">${measureField(place, f.weighedBefore)} ${measureField(place, f.weighedAfter)}</div>
    ${weights ? html`<p class="muted">${weights}</p>` : nothing}`;
}
