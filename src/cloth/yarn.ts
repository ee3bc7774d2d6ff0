/** Yarn for each part: by the maker's swatch, or a rough band from print. */
import { html, nothing, type TemplateResult } from 'lit-html';
import { perimeter, type YarnNeed } from '../../core/index.ts';
import { pitchOf } from '../state/cloth.ts';
import { clothFields as f, type YarnField } from '../state/cloth-fields.ts';
import { ballFor, yarnLeft, yarnNeeds } from '../state/cloth-stock.ts';
import { opening } from '../words/cloth/fields.ts';
import { sayBalls, sayLeft, sayNeed, YARN_PARTS } from '../words/cloth/stock.ts';
import { pitchWeights } from '../words/cloth/weights.ts';
import { measureField } from './measure-field.ts';
import type { Place } from './place.ts';

/** The edge along which a round runs: the seam where it is known. */
export const needsOf = ({ cloth, snapshot }: Place): YarnNeed[] =>
  yarnNeeds(cloth, snapshot.making, cloth.plan && perimeter(cloth.plan.seam)).map((need) =>
    cloth.plan || need.from === 'measured' ? need : { ...need, from: 'nothing', metres: null, grams: null },
  );

export function yarnPart(place: Place): TemplateResult {
  const { cloth, snapshot } = place;
  const { units, yarns, dialect } = snapshot.settings;
  const needs = needsOf(place);
  const left = yarnLeft(cloth, needs);
  const weights = pitchWeights(pitchOf(cloth.measures, 'front'), dialect);
  return html`<details class="fold">
    <summary>Yarn</summary>
    <p>Work a few stitches of each, then unravel and measure them, or weigh them. 10 % is added for ends and a second try.</p>
    ${needs.map(
      (need) => html`<div class="yarn-part">
        <h4><svg class="yarn-dot" viewBox="0 0 16 16" aria-hidden="true"><circle cx="8" cy="8" r="7" fill=${yarns[need.part === 'foundation' ? 'foundation' : 'edging']}/></svg> ${opening(YARN_PARTS[need.part])}</h4>
        <p class="yarn-need">${sayNeed(need, units)}</p>
        <div class="measures three">
          ${measureField(place, f.yarnStitches(need.part))} ${measureField(place, f.yarnLength(need.part))} ${measureField(place, f.yarnGrams(need.part))}
        </div>
      </div>`,
    )}
    <h4>On the ball bands</h4>
    ${(['foundation', 'edging'] as const).map((part) => bandFields(place, part, needs))}
    <h4>Enough left?</h4>
    <div class="measures">${measureField(place, f.left)}</div>
    ${left ? html`<p class="consequence">${sayLeft(cloth.measures.value(f.left) ?? 0, left)}</p>` : html`<p class="muted">Of the edging's yarn, for edging and join.</p>`}
    <p>No swatch? Weigh the yarn before and after side 1 of the edging.</p>
    <div class="measures">${measureField(place, f.weighedBefore)} ${measureField(place, f.weighedAfter)}</div>
    ${weights ? html`<p class="muted">${weights}</p>` : nothing}
  </details>`;
}

function bandFields(
  place: Place,
  part: Exclude<YarnField, 'join'>,
  needs: readonly YarnNeed[],
): TemplateResult {
  const own = needs.filter((need) => (part === 'foundation') === (need.part === 'foundation'));
  const balls = sayBalls(own, ballFor(place.cloth.measures, part));
  return html`<p>${part === 'foundation' ? 'Foundation' : 'Edging and join'}${balls ? html`: <b>${balls}</b>` : nothing}</p>
    <div class="measures">${measureField(place, f.ballGrams(part))} ${measureField(place, f.ballLength(part))}</div>`;
}
