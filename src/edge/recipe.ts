/** What to work: the legs of the foundation in large numbers, then the edging and the join. */
import { html, nothing, type TemplateResult } from 'lit-html';
import { countedNumbers } from '../controls/fields.ts';
import { RECIPE_ID } from '../controls/ids.ts';
import type { Snapshot } from '../state/snapshot.ts';
import { type SaidEdging, type SaidLeg, sayRecipe, saySums } from '../words/recipe.ts';
import { dialectName } from '../words/terms.ts';

export function recipePanel(snapshot: Snapshot): TemplateResult {
  const { making, settings } = snapshot;
  const said = sayRecipe(making, settings);
  return html`<section class="recipe" aria-labelledby=${RECIPE_ID}>
    <h2 id=${RECIPE_ID} tabindex="-1">The recipe for the back <span class="tag">${dialectName(settings.dialect)}</span></h2>
    ${snapshot.isStale ? html`<p class="waits">These are from your last numbers.</p>` : nothing}
    <p>${said.start}</p>
    ${said.begin.map((line) => html`<p>${line}</p>`)}
    <p class="legs">${said.legs.map(leg)}</p>
    ${said.corner ? html`<p class="muted">${said.corner}</p>` : nothing}
    ${said.parts ? html`<p>${said.parts}</p>` : nothing}
    <p class="closing">${said.closing}</p>
    <p>${said.twist}</p>
    ${said.why ? html`<p class="muted">${said.why}</p>` : nothing}
    ${said.edgings.map(edging)}
    <div class="recipe-part"><h3>The join</h3>${said.join.map((line) => html`<p>${line}</p>`)}</div>
    ${sums(snapshot)}
  </section>`;
}

function leg({ count, unit, corner, times }: SaidLeg): TemplateResult {
  const number = html`<b class="leg-count">${count}</b>`;
  const after = html`${unit ? html` <span class="leg-unit">${unit}</span>` : nothing}${corner ? html`<span class="leg-corner">, ${corner.says}</span>` : nothing}`;
  if (times === 1) return html`<span class="leg">${number}${after}</span> `;
  return html`<span class="leg repeated"><span class="leg-times">${times} times</span> ${number}${after}</span> `;
}

function edging({ title, lines, legs }: SaidEdging): TemplateResult {
  return html`<div class="recipe-part">
    <h3>${title}</h3>
    <p class="legs edging-legs">${legs.map(leg)}</p>
    <ol class="acts">${lines.map((line) => html`<li>${line}</li>`)}</ol>
  </div>`;
}

function sums(snapshot: Snapshot): TemplateResult {
  const said = saySums(snapshot.making, countedNumbers(snapshot));
  return html`<details class="fold">
    <summary>Show the sums</summary>
    <dl class="sums">
      ${said.map(({ whose, steps }) => html`<div><dt>${whose}</dt>${steps.map((step) => html`<dd>${step}</dd>`)}</div>`)}
    </dl>
  </details>`;
}
