/** How the crochet will lie, side by side; what was counted on a stretch tells. */
import { html, nothing, type TemplateResult } from 'lit-html';
import type { ClothPlan, SideLies } from '../../core/index.ts';
import { clothFields as f, type Stretch } from '../state/cloth-fields.ts';
import { BAND_SAID, LIES, sayFitting, sayLie, sayLieTag, saySides } from '../words/cloth/cut.ts';
import { opening } from '../words/cloth/fields.ts';
import { measureField } from './measure-field.ts';
import type { Place } from './place.ts';

export function liesPart(place: Place, plan: ClothPlan): TemplateResult {
  const isKnown = plan.lies.some(({ comparisons }) => comparisons.length > 0);
  return html`<details class="fold">
    <summary>${LIES.heading} ${isKnown ? html`<span class="tag">${sayLieTag(plan)}</span>` : nothing}</summary>
    <p>${LIES.how}</p>
    ${stretchFields(place, 'top')} ${stretchFields(place, 'base')} ${stretchFields(place, 'front')}
    <p class="muted">${LIES.baseAsTops}</p>
    ${isKnown ? comparisons(place, plan) : nothing}
  </details>`;
}

function comparisons({ snapshot }: Place, plan: ClothPlan): TemplateResult {
  const { units } = snapshot.settings;
  return html`<dl class="lies">
      ${alike(plan.lies, snapshot.making.plan.faces).map(
        ({ name, lies }) => html`<div>
          ${name ? html`<dt>${name}</dt>` : nothing}
          ${lies.comparisons.map((one) => {
            const said = sayLie(one, { units, corners: plan.cut.shape !== 'round', seam: lies.seam });
            return html`<dd class=${said.isWarned ? 'lie warned' : 'lie'}>${opening(said.lead)}: <b>${said.numbers}</b> <span class="muted">(${said.lengths})</span>. ${said.then}</dd>`;
          })}
        </div>`,
      )}
    </dl>
    ${plan.fittingAllowance === null ? nothing : html`<p>${sayFitting(plan.fittingAllowance, units)}</p>`}
    <p class="muted">${BAND_SAID}</p>`;
}

const stretchFields = (place: Place, of: Stretch): TemplateResult =>
  html`<div class="measures pair-fields">${measureField(place, f.stretchStitches(of))} ${measureField(place, f.stretchLength(of))}</div>`;

/** Sides that lie alike are told once, by the back's own numbers. */
function alike(lies: readonly SideLies[], faces: readonly number[]): { name: string; lies: SideLies }[] {
  if (lies.length === 1) return lies.map((one) => ({ name: '', lies: one }));
  const groups = new Map<string, { sides: number[]; lies: SideLies }>();
  faces.forEach((frontSide, side) => {
    const one = lies[frontSide] as SideLies;
    const key = one.comparisons
      .map(({ length, along }) => `${length.toFixed(2)}/${along.toFixed(2)}`)
      .join(' ');
    const group = groups.get(key) ?? { sides: [], lies: one };
    group.sides.push(side + 1);
    groups.set(key, group);
  });
  return [...groups.values()].map((group) => ({ name: saySides(group.sides), lies: group.lies }));
}
