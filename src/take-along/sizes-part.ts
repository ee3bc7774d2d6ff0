/** Entering several sizes, and what comes of each. */
import { html, nothing, type TemplateResult } from 'lit-html';
import { countedNumbers } from '../controls/fields.ts';
import { readWhole } from '../input/whole-number.ts';
import { patternFields as f } from '../state/pattern-fields.ts';
import type { Field } from '../state/snapshot.ts';
import { sayProblem } from '../words/catalogue.ts';
import { fieldText, type Place } from './place.ts';
import { mostSizes, type SizeRead, sizesByRule } from './sizes.ts';

export function sizesPart(place: Place): TemplateResult {
  const { snapshot, send, say, sizes, speaker } = place;
  const type = (text: string): void => send({ type: 'TYPE', field: f.sizes, text });
  return html`<details class="fold" ?open=${sizes.length > 0}>
    <summary>${say.sizes}</summary>
    <label class="take-field"><span>${say.sizesIntro}</span>
      <textarea id="field-pattern-sizes" rows=${mostSizes} spellcheck="false" .value=${fieldText(snapshot, f.sizes)}
        @input=${(event: Event) => type((event.target as HTMLTextAreaElement).value)}></textarea>
    </label>
    <ul class="take-sizes">${sizes.map((size) => html`<li>${says(size, place)}</li>`)}</ul>
    ${linesIn(fieldText(snapshot, f.sizes)) > mostSizes ? html`<p>${say.sizesMost({ most: mostSizes }, speaker)}</p>` : nothing}
    ${rule(place)}
  </details>`;
}

const linesIn = (text: string): number => text.split('\n').filter((line) => line.trim() !== '').length;

/** Fills the sizes in; a number that cannot be read is named, and nothing is filled in by a guess. */
function rule({ snapshot, send, say, speaker }: Place): TemplateResult {
  const read = (field: Field, usual: number): number | null => {
    const typed = readWhole(fieldText(snapshot, field) || `${usual}`);
    return typed.ok ? typed.value : null;
  };
  const more = read(f.ruleMore, 8);
  const count = read(f.ruleCount, 3);
  const isGood = more !== null && count !== null && count >= 2 && count <= mostSizes;
  const fill = (): void => {
    if (isGood)
      send({ type: 'TYPE', field: f.sizes, text: sizesByRule(countedNumbers(snapshot), more, count) });
  };
  const number = (field: Field, label: string, usual: number): TemplateResult =>
    html`<label class="take-field"><span>${label}</span>
      <input type="text" inputmode="numeric" class="count-input" id="field-${field.replace('.', '-')}" autocomplete="off" spellcheck="false"
        .value=${fieldText(snapshot, field) || `${usual}`}
        @input=${(event: Event) => send({ type: 'TYPE', field, text: (event.target as HTMLInputElement).value })} /></label>`;
  return html`<p>${say.rule}</p>
    <div class="take-rule">
      ${number(f.ruleMore, say.ruleField, 8)} ${number(f.ruleCount, say.ruleCount, 3)}
      <button type="button" class="button" aria-disabled=${isGood ? nothing : 'true'} @click=${fill}>${say.ruleApply}</button>
    </div>
    ${isGood ? nothing : html`<p role="status">${say.ruleUnread({ most: mostSizes }, speaker)}</p>`}`;
}

function says(size: SizeRead, { snapshot, say, speaker }: Place): string {
  const sides = snapshot.making.edge.sides.length;
  if ('line' in size) return say.sizeUnread({ line: size.line, sides }, speaker);
  if ('plan' in size) return say.sizeWorks({ name: size.name, total: size.plan.pairs }, speaker);
  const side = Number(/sides\[(\d+)\]/.exec(size.problem.at)?.[1] ?? 0);
  const isRound = snapshot.making.edge.corners.length === 0;
  const label = isRound
    ? say.ringOf({ name: size.name }, speaker)
    : say.sideOf({ side, name: size.name }, speaker);
  return say.sizeFails({ name: size.name, why: sayProblem(size.problem, speaker, label) }, speaker);
}
