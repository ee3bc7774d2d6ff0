/** Entering what the join shows: where corners missed each other, and what is left over. Ways are words, not signs. */
import { html, nothing, type TemplateResult } from 'lit-html';
import { limits } from '../../core/index.ts';
import { problemAt } from '../controls/fields.ts';
import { numberField } from '../controls/number-field.ts';
import { segmented } from '../controls/segmented.ts';
import { numberIn } from '../input/typed.ts';
import { readWhole, splitSign } from '../input/whole-number.ts';
import { fieldNames } from '../state/fields.ts';
import type { AppEvent, Field } from '../state/snapshot.ts';
import { fieldName } from '../words/problems-view.ts';
import type { View } from './view.ts';

type Ways = { minus: string; plus: string; none: string };

const CORNER: Ways = { minus: 'early', plus: 'late', none: 'on time' };
const LEFT: Ways = { minus: 'front', plus: 'back', none: 'nothing left' };

export function joinFold(view: View): TemplateResult {
  const { making, project } = view.snapshot;
  const { corners } = making.edge;
  const begin = making.plan.choices.joinStart.side;
  const fields = [...corners.map((_, i) => fieldNames.drift(i)), fieldNames.leftOver];
  const counted = fields.filter((field) => numberIn(project, field) !== null).length;
  const row = (field: Field, label: string, name: string, ways: Ways): TemplateResult =>
    signedField({ field, label, name, ways }, view);
  return html`<details class="fold seen-piece seen-join">
    <summary>The join<span class="tag">${counted === 0 ? 'not counted' : `${counted} counted`}</span></summary>
    ${
      corners.length === 0
        ? nothing
        : html`<p>How far is each corner of the back off, when you reach the front's?</p>
    <ol class="join-rows">
      ${corners.map((_, i) => {
        const field = fieldNames.drift(i);
        const label = fieldName(field, corners.length, begin);
        return html`<li>${row(field, label, `${label} in the join`, CORNER)}</li>`;
      })}
    </ol>`
    }
    <p>How many are left over at the end, and on which piece?</p>
    ${row(fieldNames.leftOver, 'left over', 'stitches left over', LEFT)}
  </details>`;
}

type Signed = { field: Field; label: string; name: string; ways: Ways };

/** A number above nothing: the others have no way. */
function isMore(text: string): boolean {
  const read = readWhole(text);
  return read.ok && read.value > 0;
}

/** A number with a way: typed without a sign, kept with one. */
function signedField(
  { field, label, name, ways }: Signed,
  { snapshot, send, chosen, choose }: View,
): TemplateResult {
  const { minus } = chosen;
  const { isMinus: signed, rest: number } = splitSign((snapshot.project.texts[field] ?? '').trim());
  const isMinus = signed || (minus[field] ?? !isMore(number));
  const write = (text: string, toMinus: boolean): void =>
    send({ type: 'TYPE', field, text: toMinus && isMore(text) ? `-${text.trim()}` : text });
  const take = (event: AppEvent): void => {
    if (event.type === 'TYPE') write(event.text, isMinus);
    else send(event);
  };
  const turn = (way: 'minus' | 'plus'): void => {
    choose({ minus: { ...minus, [field]: way === 'minus' } });
    if (number) write(number, way === 'minus');
  };
  const noteId = `${field.replaceAll('.', '-')}-note`;
  const says = numberIn(snapshot.project, field) === 0 ? ways.none : '';
  return html`<div class="join-row">
    ${numberField(
      {
        field,
        label,
        name,
        text: number,
        least: 0,
        most: limits.stitches,
        problem: problemAt(snapshot, field),
        noteId,
        note: says ? html`<p class="count-note" id=${noteId}>${says}</p>` : nothing,
      },
      take,
    )}
    ${segmented(
      name,
      isMinus ? 'minus' : 'plus',
      [
        { value: 'minus', says: ways.minus },
        { value: 'plus', says: ways.plus },
      ],
      turn,
    )}
  </div>`;
}
