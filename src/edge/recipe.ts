/** What to work: the legs of the foundation in large numbers, then the edging and the join. */
import { html, nothing, type TemplateResult } from 'lit-html';
import { countedNumbers } from '../controls/fields.ts';
import { RECIPE_ID } from '../controls/ids.ts';
import { clothFields } from '../state/cloth-fields.ts';
import type { Send, Snapshot } from '../state/snapshot.ts';
import { sayAdjusted } from '../words/adjustments.ts';
import { type SaidEdging, type SaidLeg, sayFrontStrip, sayRecipe, saySums } from '../words/recipe.ts';
import { dialectName } from '../words/terms.ts';

export function recipePanel(snapshot: Snapshot, send: Send): TemplateResult {
  const { making, settings } = snapshot;
  const said = sayRecipe(making, settings);
  return html`<section class="recipe" aria-labelledby=${RECIPE_ID}>
    <h2 id=${RECIPE_ID} tabindex="-1">The recipe for the back <span class="tag">${dialectName(settings.dialect)}</span></h2>
    ${snapshot.isStale ? html`<p class="waits">These are from your last numbers.</p>` : nothing}
    ${adjusted(snapshot, send)}
    <p>${said.start}</p>
    ${said.begin.map((says) => html`<p>${says}</p>`)}
    <p class="legs">${said.legs.map(leg)}</p>
    ${said.corner ? html`<p class="muted">${said.corner}</p>` : nothing}
    ${said.parts ? html`<p>${said.parts}</p>` : nothing}
    <p class="closing">${said.closing}</p>
    <p>${said.twist}</p>
    ${said.why ? html`<p class="muted">${said.why}</p>` : nothing}
    ${said.asked.map(line)}
    ${said.edgings.map(edging)}
    ${snapshot.project.texts[clothFields.front] === 'cloth' ? frontStrip(snapshot) : nothing}
    <div class="recipe-part"><h3>The join</h3>${said.join.map((says) => html`<p>${says}</p>`)}${said.joinAsked.map(line)}</div>
    ${sums(snapshot)}
  </section>`;
}

function leg({ count, unit, corner, times }: SaidLeg): TemplateResult {
  const number = html`<b class="leg-count">${count}</b>`;
  const after = html`${unit ? html` <span class="leg-unit">${unit}</span>` : nothing}${corner ? html`<span class="leg-corner">, ${corner.says}</span>` : nothing}`;
  if (times === 1) return html`<span class="leg">${number}${after}</span> `;
  return html`<span class="leg repeated"><span class="leg-times">${times} times</span> ${number}${after}</span> `;
}

/** What is worked otherwise than first planned. */
const line = (says: string): TemplateResult => html`<p class="asked">${says}</p>`;

/** How many adjustments the recipe has, and the way back to the first one. */
function adjusted({ project }: Snapshot, send: Send): TemplateResult | typeof nothing {
  const count = project.adjustments.length;
  if (count === 0) return nothing;
  const back = (): void => send({ type: 'CHANGE', project: { adjustments: [] } });
  return html`<div class="recipe-adjusted">
    <p>${sayAdjusted(count)}</p>
    <button type="button" class="button" @click=${back}>Back to the first recipe</button>
  </div>`;
}

function edging({ title, lines, asked, legs }: SaidEdging): TemplateResult {
  return html`<div class="recipe-part">
    <h3>${title}</h3>
    <p class="legs edging-legs">${legs.map(leg)}</p>
    ${asked.map(line)}
    <ol class="acts">${lines.map((line) => html`<li>${line}</li>`)}</ol>
  </div>`;
}

function frontStrip({ making, settings }: Snapshot): TemplateResult {
  const { heading, how, legs, edgings } = sayFrontStrip(making, settings);
  return html`<div class="recipe-part">
    <h3>${heading}</h3>
    ${how.map((says) => html`<p>${says}</p>`)}
    ${legs.length > 0 ? html`<p class="legs">${legs.map(leg)}</p>` : nothing}
    ${edgings.map(({ title, legs: own }) => html`<p>${title}:</p><p class="legs edging-legs">${own.map(leg)}</p>`)}
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
