/** Entering several sizes, and what comes of each. */
import { html, type TemplateResult } from 'lit-html';
import { countedNumbers } from '../controls/fields.ts';
import { patternFields as f } from '../state/pattern-fields.ts';
import { sayProblem } from '../words/catalogue.ts';
import { fieldText, type Place } from './place.ts';
import { mostSizes, type SizeRead, sizesByRule } from './sizes.ts';

export function sizesPart(place: Place): TemplateResult {
  const { snapshot, send, say, sizes } = place;
  const type = (text: string): void => send({ type: 'TYPE', field: f.sizes, text });
  return html`<details class="fold" ?open=${sizes.length > 0}>
    <summary>${say.sizes}</summary>
    <label class="take-field"><span>${say.sizesIntro}</span>
      <textarea id="field-pattern-sizes" rows=${mostSizes} spellcheck="false" .value=${fieldText(snapshot, f.sizes)}
        @input=${(event: Event) => type((event.target as HTMLTextAreaElement).value)}></textarea>
    </label>
    <ul class="take-sizes">${sizes.map((size) => html`<li>${says(size, place)}</li>`)}</ul>
    <p>${say.rule}</p>
    <div class="take-rule">
      ${number('take-more', say.ruleField, 8)} ${number('take-count', say.ruleCount, 3)}
      <button type="button" class="button" @click=${() => type(byRule(place))}>${say.ruleApply}</button>
    </div>
  </details>`;
}

const number = (id: string, label: string, usual: number): TemplateResult =>
  html`<label class="take-field"><span>${label}</span>
    <input type="text" inputmode="numeric" class="count-input" id=${id} value=${usual} autocomplete="off" spellcheck="false" /></label>`;

function byRule({ snapshot }: Place): string {
  const read = (id: string): number => {
    const text = (document.getElementById(id) as HTMLInputElement | null)?.value ?? '';
    return /^-?\d{1,6}$/.test(text.trim()) ? Number(text) : 0;
  };
  const count = Math.min(mostSizes, Math.max(2, read('take-count')));
  return sizesByRule(countedNumbers(snapshot), read('take-more'), count);
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
