/** Measuring the panel inside its last round, and the rounds that lie around it. */
import { html, nothing, type TemplateResult } from 'lit-html';
import { fieldId } from '../controls/fields.ts';
import { segmented } from '../controls/segmented.ts';
import { clothFields as f } from '../state/cloth-fields.ts';
import type { Field } from '../state/snapshot.ts';
import { sayClothNote, sayClothProblem } from '../words/cloth/problems.ts';
import { PROBLEM_HEADING } from '../words/problems-view.ts';
import { measureField } from './measure-field.ts';
import { choose, type Place } from './place.ts';

const SUMMARY_ID = 'cloth-problems';
export const RESULT_ID = 'cloth-result';

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

/** Brings into view what the check came to. */
export function checkMeasures(isWell: boolean): void {
  requestAnimationFrame(() =>
    requestAnimationFrame(() => {
      const aim = document.getElementById(isWell ? RESULT_ID : SUMMARY_ID);
      aim?.focus({ preventScroll: true });
      aim?.scrollIntoView({ block: 'start' });
    }),
  );
}

export function measurePart(place: Place, check: () => void): TemplateResult {
  const { cloth, snapshot } = place;
  const submit = (event: Event): void => {
    event.preventDefault();
    check();
  };
  return html`<form class="cloth-part" novalidate aria-labelledby="measure-heading" @submit=${submit}>
    <h3 id="measure-heading">Measure the panel</h3>
    <p>Lay it flat. Measure inside its last round, each way at 2 places.</p>
    ${shapeChoice(place)} ${lengths(place)}
    ${cloth.notes.map((note) => html`<p class="consequence">${sayClothNote(note, snapshot.settings.units)}</p>`)}
    <h3>Measure the rounds</h3>
    <p>How deep each lies, from its base to its top.</p>
    <div class="measures">
      ${measureField(place, f.depth)} ${measureField(place, f.frontEdge)} ${measureField(place, f.edging)}
    </div>
    <p class="muted">The last 2 may stay empty. If 1 is there, the other is taken to be as deep.</p>
    ${ruleChoice(place)}
    <button class="button action" type="submit">Show me the cut</button>
  </form>`;
}

/** Four sides may be no rectangle. */
function shapeChoice(place: Place): TemplateResult | typeof nothing {
  if (place.snapshot.making.edge.corners.length !== 4) return nothing;
  return segmented(
    'Outline',
    place.cloth.shape === 'rectangle' ? 'rectangle' : 'sides',
    [
      { value: 'rectangle', says: 'rectangle' },
      { value: 'sides', says: '4 sides of their own' },
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
      <p class="muted">Width is along side 1. Both diagonals show whether it is square: leave them empty if you know it is.</p>
      <div class="measures">${measureField(place, f.diagonal(0))} ${measureField(place, f.diagonal(1))}</div>`;
  const k = place.snapshot.making.edge.sides.length;
  if (k < 3)
    return html`<p class="consequence">A panel with ${k === 1 ? '1 corner' : '2 corners'} has no straight sides. Draw round it on paper, add the depth of the foundation less half of it, and cut the cloth by that.</p>`;
  return html`<div class="measures">${Array.from({ length: k }, (_, side) => measureField(place, f.side(side)))}</div>
    <p class="muted">A side left empty is as long as the one before it.</p>
    ${
      k > 3
        ? html`<details class="fold"><summary>Diagonals from corner 1</summary>
          <p>Corner 1 ends side 1. Measure from there to each corner but its 2 neighbours, in order.</p>
          <div class="measures">${Array.from({ length: k - 3 }, (_, n) => measureField(place, f.diagonal(n)))}</div>
        </details>`
        : nothing
    }`;
}

function ruleChoice(place: Place): TemplateResult {
  const rule = place.cloth.measures.chosen<'snug' | 'exact' | 'own'>(f.rule, 'snug');
  return html`<fieldset>
    <legend>How large is the back to be?</legend>
    ${segmented(
      'How large is the back to be?',
      rule,
      [
        { value: 'snug', says: 'snug' },
        { value: 'exact', says: 'exact' },
        { value: 'own', says: 'my own' },
      ],
      (value) => choose(place, f.rule, value),
    )}
    <p class="muted">${RULES[rule]}</p>
    ${rule === 'own' ? html`<div class="measures">${measureField(place, f.allowance)}</div>` : nothing}
  </fieldset>`;
}

/** Common practice, no source. */
const RULES = {
  snug: 'A little smaller than the front: the strip lies slack along the seam and is patted flat.',
  exact: 'As large as the front.',
  own: 'You say how far the cut edge lies outside the panel.',
} as const;
