/** How the crochet will lie, side by side; what was counted on a stretch tells. */
import { html, nothing, type TemplateResult } from 'lit-html';
import type { ClothPlan, SideLies } from '../../core/index.ts';
import { clothFields as f, type Stretch } from '../state/cloth-fields.ts';
import { BAND_SAID, sayFitting, sayLie } from '../words/cloth/cut.ts';
import { opening } from '../words/cloth/fields.ts';
import { measureField } from './measure-field.ts';
import type { Place } from './place.ts';

export function liesPart(place: Place, plan: ClothPlan): TemplateResult {
  const { units } = place.snapshot.settings;
  const { faces } = place.snapshot.making.plan;
  const sides = alike(plan.lies, faces);
  const isKnown = plan.lies.some(({ comparisons }) => comparisons.length > 0);
  return html`<details class="fold" open>
    <summary>How it will lie</summary>
    <p>Count stitches along a ruler, in the middle of a side.</p>
    ${stretchFields(place, 'top')} ${stretchFields(place, 'base')} ${stretchFields(place, 'front')}
    <p class="muted">Where the base is not measured, it is taken to be as the tops.</p>
    ${
      isKnown
        ? html`<dl class="lies">
          ${sides.map(
            ({ name, lies }) => html`<div>
              ${name ? html`<dt>${name}</dt>` : nothing}
              ${lies.comparisons.map((one) => {
                const said = sayLie(one, units);
                return html`<dd class=${said.isWarned ? 'lie warned' : 'lie'}>${opening(said.lead)}: <b>${said.numbers}</b> <span class="muted">(${said.lengths})</span>. ${said.then}</dd>`;
              })}
            </div>`,
          )}
        </dl>
        ${plan.fittingAllowance === null ? nothing : html`<p>${sayFitting(plan.fittingAllowance, units)}</p>`}
        <p class="muted">${BAND_SAID}</p>`
        : nothing
    }
  </details>`;
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
  return [...groups.values()].map((group) => ({
    name: group.sides.length === 1 ? `side ${group.sides[0]}` : `sides ${joined(group.sides)}`,
    lies: group.lies,
  }));
}

export const joined = (sides: readonly number[]): string =>
  sides.length < 2 ? `${sides[0]}` : `${sides.slice(0, -1).join(', ')} and ${sides.at(-1)}`;
