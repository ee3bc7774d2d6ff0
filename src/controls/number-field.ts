/** A count to type, with real buttons for one more and one fewer. Nothing is checked while typing. */
import { html, nothing, type TemplateResult } from 'lit-html';
import { live } from 'lit-html/directives/live.js';
import type { Field, Send } from '../state/snapshot.ts';
import { fieldId, nudge } from './fields.ts';

export type NumberField = {
  field: Field;
  /** Visible label. */
  label: string;
  /** What the buttons and the label say in full, where the label alone is not enough: "front side 2". */
  name?: string;
  text: string;
  least: number;
  /** Where one more and one fewer begin while nothing is typed. */
  from?: number;
  most: number;
  problem?: string | undefined;
  /** The message stands elsewhere: only point at it. */
  problemElsewhere?: boolean;
  /** Number above, buttons above and below: for the left and right side of a picture. */
  upright?: boolean;
  /** Words under the field, such as how it differs from the plan. */
  note?: TemplateResult | typeof nothing | undefined;
  noteId?: string;
  wide?: boolean;
};

export const problemId = (field: Field): string => `${fieldId(field)}-problem`;

export function numberField(spec: NumberField, send: Send): TemplateResult {
  const { field, label, text, problem, note } = spec;
  const id = fieldId(field);
  const type = (next: string): void => send({ type: 'TYPE', field, text: next });
  const described = [problem && problemId(field), note && spec.noteId].filter(Boolean).join(' ');
  return html`<div class="count ${spec.upright ? 'upright' : ''} ${spec.wide ? 'wide' : ''} ${problem ? 'wrong' : ''}">
    <label class="count-label" for=${id}>${label}${spec.name ? html`<span class="unseen"> (${spec.name})</span>` : nothing}</label>
    <div class="count-box">
      ${stepper(spec, -1, send)}
      <input
        id=${id}
        class="count-input ${text.length > 4 ? 'long' : ''}"
        type="text"
        inputmode="numeric"
        autocomplete="off"
        spellcheck="false"
        .value=${live(text)}
        aria-invalid=${problem ? 'true' : nothing}
        aria-describedby=${described || nothing}
        @input=${(event: Event) => type((event.target as HTMLInputElement).value)}
      />
      ${stepper(spec, 1, send)}
    </div>
    ${note ?? nothing}
    ${problem && !spec.problemElsewhere ? problemLine(field, problem) : nothing}
  </div>`;
}

export function problemLine(field: Field, says: string): TemplateResult {
  return html`<p class="problem-line" id=${problemId(field)}><span class="unseen">Error: </span>${says}</p>`;
}

function stepper(spec: NumberField, by: 1 | -1, send: Send): TemplateResult {
  const { field, least, most } = spec;
  const name = spec.name ?? spec.label;
  const says = by > 0 ? `Increase ${name} by 1` : `Decrease ${name} by 1`;
  const press = (): void => {
    // From what stands in the field: it may have been pressed or typed in since it was last rendered.
    const input = inputOf(field);
    const text = nudge(input.value || `${spec.from ?? ''}`, by, least, most);
    if (text === null) tellAt(input, send);
    else {
      input.value = text;
      send({ type: 'TYPE', field, text });
    }
  };
  return html`<button
    type="button"
    class=${by > 0 ? 'step step-more' : 'step step-fewer'}
    aria-label=${says}
    @click=${press}
  ><span aria-hidden="true">${by > 0 ? '+' : '−'}</span></button>`;
}

const inputOf = (field: Field) => document.getElementById(fieldId(field)) as HTMLInputElement;

/** What cannot be read is not typed over: it is told, and ready to be typed anew. */
function tellAt(input: HTMLInputElement, send: Send): void {
  send({ type: 'CHECK' });
  input.focus();
  input.select();
}
