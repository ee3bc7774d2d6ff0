/** Measuring the panel inside its last round, and the rounds that lie around it. */
import { html, nothing, type TemplateResult } from 'lit-html';
import { fieldId } from '../controls/fields.ts';
import { segmented } from '../controls/segmented.ts';
import { clothFields as f } from '../state/cloth-fields.ts';
import type { Field, Units } from '../state/snapshot.ts';
import { MEASURE, RULES, sayPaperPattern } from '../words/cloth/measuring.ts';
import { sayClothNote, sayClothProblem } from '../words/cloth/problems.ts';
import { UNIT_NAMES, UNITS_HEADING } from '../words/cloth/what.ts';
import { PROBLEM_HEADING } from '../words/problems-view.ts';
import { measureField } from './measure-field.ts';
import { choose, type Place } from './place.ts';

const SUMMARY_ID = 'cloth-problems';
export const RESULT_ID = 'cloth-result';
export const MEASURE_ID = 'measure-heading';

/** All that is in the way of a cut, each leading to its field. */
export function measureSummary({ told, problems, snapshot, pad }: Place): TemplateResult | typeof nothing {
  if (!told || problems.length === 0) return nothing;
  return html`<section class="summary cloth-summary" id=${SUMMARY_ID} role="alert" tabindex="-1" aria-labelledby="cloth-problems-heading">
    <h2 id="cloth-problems-heading">${PROBLEM_HEADING}</h2>
    <ul>
      ${problems.map((problem) => html`<li><a href="#${fieldId(problem.at)}" @click=${(event: Event) => goTo(event, problem.at)}>${sayClothProblem(problem, snapshot.settings.units, pad)}</a></li>`)}
    </ul>
  </section>`;
}

function goTo(event: Event, field: Field): void {
  event.preventDefault();
  const input = document.getElementById(fieldId(field));
  input?.closest('details')?.setAttribute('open', '');
  input?.focus();
  input?.scrollIntoView({ block: 'center' });
}

/** After the page is drawn anew. */
export const onceDrawn = (act: () => void): void => {
  requestAnimationFrame(() => requestAnimationFrame(act));
};

/** Brings into view what the check came to. */
export function checkMeasures(isWell: boolean): void {
  onceDrawn(() => {
    const aim = document.getElementById(isWell ? RESULT_ID : SUMMARY_ID);
    aim?.focus({ preventScroll: true });
    aim?.scrollIntoView({ block: 'start' });
  });
}

export function measurePart(place: Place, check: () => void): TemplateResult {
  const { cloth, snapshot } = place;
  const { units } = snapshot.settings;
  const submit = (event: Event): void => {
    event.preventDefault();
    check();
  };
  return html`<form class="cloth-part" novalidate aria-labelledby=${MEASURE_ID} @submit=${submit}>
    <div class="cloth-row">
      <h3 id=${MEASURE_ID} tabindex="-1">${MEASURE.heading}</h3>
      ${segmented<Units>(
        UNITS_HEADING,
        units,
        (['cm', 'inch'] as const).map((value) => ({ value, says: UNIT_NAMES[value] })),
        (value) => place.send({ type: 'SETTLE', settings: { units: value } }),
      )}
    </div>
    <p>${MEASURE.how}</p>
    ${shapeChoice(place)} ${lengths(place)}
    ${cloth.notes.map((note) => html`<p class="consequence">${sayClothNote(note, units)}</p>`)}
    <h3>${MEASURE.rounds}</h3>
    <p>${MEASURE.roundsHow}</p>
    <div class="measures">
      ${measureField(place, f.depth)} ${measureField(place, f.frontEdge)} ${measureField(place, f.edging)}
    </div>
    <p class="muted">${MEASURE.roundsEmpty}</p>
    ${ruleChoice(place)}
    <button class="button action" type="submit">${MEASURE.show}</button>
  </form>`;
}

/** Four sides may be no rectangle. */
function shapeChoice(place: Place): TemplateResult | typeof nothing {
  if (place.snapshot.making.edge.corners.length !== 4) return nothing;
  return segmented(
    MEASURE.outline,
    place.cloth.shape === 'rectangle' ? 'rectangle' : 'sides',
    [
      { value: 'rectangle', says: MEASURE.rectangle },
      { value: 'sides', says: MEASURE.ownSides },
    ],
    (outline) => choose(place, f.outline, outline),
  );
}

function lengths(place: Place): TemplateResult {
  const { shape } = place.cloth;
  if (shape === 'round')
    return html`<div class="measures">${measureField(place, f.diameter(0))} ${measureField(place, f.diameter(1))}</div>`;
  if (shape === 'rectangle')
    return html`<div class="measures">
        ${measureField(place, f.width(0))} ${measureField(place, f.width(1))}
        ${measureField(place, f.height(0))} ${measureField(place, f.height(1))}
      </div>
      <p class="muted">${MEASURE.width}</p>
      ${diagonals(place, 2, MEASURE.square, MEASURE.squareHow)}`;
  const k = place.snapshot.making.edge.sides.length;
  if (k < 3) return html`<p class="consequence">${sayPaperPattern(k)}</p>`;
  return html`<div class="measures">${Array.from({ length: k }, (_, side) => measureField(place, f.side(side)))}</div>
    <p class="muted">${MEASURE.sideLikeBefore}</p>
    ${k > 3 ? diagonals(place, k - 3, MEASURE.diagonals, MEASURE.diagonalsHow) : nothing}`;
}

const diagonals = (place: Place, count: number, heading: string, how: string): TemplateResult =>
  html`<details class="fold"><summary>${heading}</summary>
    <p>${how}</p>
    <div class="measures">${Array.from({ length: count }, (_, n) => measureField(place, f.diagonal(n)))}</div>
  </details>`;

function ruleChoice(place: Place): TemplateResult {
  const rule = place.cloth.measures.chosen<keyof typeof RULES>(f.rule, 'snug');
  return html`<fieldset>
    <legend>${MEASURE.rule}</legend>
    ${segmented(
      MEASURE.rule,
      rule,
      (['snug', 'exact', 'own'] as const).map((value) => ({ value, says: RULES[value].says })),
      (value) => choose(place, f.rule, value),
    )}
    <p class="muted">${RULES[rule].does}</p>
    ${rule === 'own' ? html`<div class="measures">${measureField(place, f.allowance)}</div>` : nothing}
  </fieldset>`;
}
