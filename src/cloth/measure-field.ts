/** A length, a weight or a price to type, with its unit beside it. Nothing is checked while typing. */
import { html, nothing, type TemplateResult } from 'lit-html';
import { live } from 'lit-html/directives/live.js';
import { fieldId } from '../controls/fields.ts';
import { problemId, problemLine } from '../controls/number-field.ts';
import { readLength, withoutUnit, withUnit } from '../input/length.ts';
import { clothFields, clothRowOf } from '../state/cloth-fields.ts';
import type { Field, Units } from '../state/snapshot.ts';
import { clothFieldName } from '../words/cloth/fields.ts';
import { lengthText } from '../words/cloth/lengths.ts';
import { sayClothProblem } from '../words/cloth/problems.ts';
import type { Place } from './place.ts';

/** The text as typed; in the other unit, what it comes to there, and the text stays until it is typed over. */
function shownText(text: string, units: Units): string {
  const { typed, unit } = withoutUnit(text);
  if (unit === null || unit === units) return typed;
  const read = readLength(text, unit);
  return read.ok ? lengthText(read.value, units) : typed;
}

export function measureField(
  { snapshot, send, problems, told, pad }: Place,
  field: Field,
  unit = '',
): TemplateResult {
  const { units } = snapshot.settings;
  const reads = clothRowOf(field)?.reads;
  const kept = snapshot.project.texts[field] ?? '';
  const isLength = reads === 'length';
  const text = isLength ? shownText(kept, units) : kept.replace(/\u00a0(cm|in)$/, '');
  const found = told ? problems.find(({ at }) => at === field) : undefined;
  const problem = found && sayClothProblem(found, units, pad);
  const id = fieldId(field);
  const keep = (typed: string): string => (isLength || reads === 'long' ? withUnit(typed, units) : typed);
  return html`<div class="measure ${problem ? 'wrong' : ''}">
    <label for=${id}>${clothFieldName(field, pad)}</label>
    <span class="measure-box">
      <input id=${id} class="measure-input" type="text" autocomplete="off" spellcheck="false"
        inputmode=${reads === 'whole' ? 'numeric' : units === 'inch' && isLength ? 'text' : 'decimal'}
        .value=${live(text)} aria-invalid=${problem ? 'true' : nothing}
        aria-describedby=${problem ? problemId(field) : nothing}
        @input=${(event: Event) => send({ type: 'TYPE', field, text: keep((event.target as HTMLInputElement).value) })} />
      <span class="measure-unit">${unit || unitOf(reads, units, field)}</span>
    </span>
    ${problem ? problemLine(field, problem) : nothing}
  </div>`;
}

function unitOf(reads: string | undefined, units: Units, field: Field): string {
  if (reads === 'length') return units === 'cm' ? 'cm' : 'in';
  if (reads === 'long') return units === 'cm' ? 'm' : 'yd';
  const isWeight = field === clothFields.left || /weighed|grams/.test(field);
  return isWeight ? 'g' : '';
}
