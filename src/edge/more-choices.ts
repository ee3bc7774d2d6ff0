/** The choices behind the recipe. Each has a usual answer that is already taken. */

import { html, type SVGTemplateResult, svg, type TemplateResult } from 'lit-html';
import { limits } from '../../core/index.ts';
import { boundsOf, fieldId, problemAt, textOf } from '../controls/fields.ts';
import { numberField } from '../controls/number-field.ts';
import { fieldNames } from '../state/fields.ts';
import type { Field, Project, Send, Snapshot } from '../state/snapshot.ts';
import { fieldName } from '../words/problems-view.ts';
import { term } from '../words/terms.ts';

export function moreChoices(snapshot: Snapshot, send: Send): TemplateResult {
  return html`<details class="fold choices">
    <summary>More choices for the back</summary>
    ${startChoices(snapshot, send)} ${startingChains(snapshot, send)} ${closings(snapshot, send)}
    ${edgingRounds(snapshot, send)} ${joinAndMarkers(snapshot, send)}
  </details>`;
}

function plain(snapshot: Snapshot, send: Send, field: Field, planned: number): TemplateResult {
  const label = fieldName(field, snapshot.project.sideCount);
  const text = textOf(snapshot, field, planned);
  return numberField(
    { field, label, text, ...boundsOf(snapshot, field), wide: true, problem: problemAt(snapshot, field) },
    send,
  );
}

function startChoices(snapshot: Snapshot, send: Send): TemplateResult {
  if (snapshot.project.sideCount === 0) return html``;
  const { side, lead } = snapshot.making.plan.choices.start;
  return html`<div class="choice">
    ${sideSelect(snapshot, send, fieldNames.startSide, side + 1)}
    ${plain(snapshot, send, fieldNames.lead, lead)}
  </div>`;
}

function sideSelect(snapshot: Snapshot, send: Send, field: Field, planned: number): TemplateResult {
  const { sideCount } = snapshot.project;
  const chosen = textOf(snapshot, field, planned);
  const choose = (event: Event): void =>
    send({ type: 'TYPE', field, text: (event.target as HTMLSelectElement).value });
  return html`<div class="count wide">
    <label class="count-label" for=${fieldId(field)}>${fieldName(field, sideCount)}</label>
    <select id=${fieldId(field)} @change=${choose}>
      ${Array.from({ length: sideCount }, (_, index) => `${index + 1}`).map(
        (text) => html`<option value=${text} ?selected=${text === chosen}>side ${text}</option>`,
      )}
    </select>
  </div>`;
}

type PressedChoice = keyof Project['choices'];

type Pair = {
  name: string;
  legend: string;
  options: [value: 0 | 1, says: string, picture: SVGTemplateResult][];
};

/** Two pictures to choose between: what a closing or a starting chain does to the count. */
function pair(
  { name, legend, options }: Pair,
  chosen: 0 | 1,
  choose: (value: 0 | 1) => void,
): TemplateResult {
  return html`<fieldset class="choice">
    <legend>${legend}</legend>
    <div class="cards two">
      ${options.map(
        ([value, says, picture]) => html`<label class="card">
          <input type="radio" name=${name} .checked=${chosen === value} @change=${() => choose(value)} />
          <svg viewBox="0 0 96 40" aria-hidden="true">${picture}</svg><span>${says}</span>
        </label>`,
      )}
    </div>
  </fieldset>`;
}

const take = (snapshot: Snapshot, send: Send, key: PressedChoice, value: object): void =>
  send({ type: 'CHANGE', project: { choices: { ...snapshot.project.choices, [key]: value } } });

const post = (x: number, tone: string): SVGTemplateResult =>
  svg`<path class="post ${tone}" d="M${x} 8V34M${x - 5} 8h10"/>`;

function startingChains(snapshot: Snapshot, send: Send): TemplateResult {
  const { counts } = snapshot.making.plan.choices.foundationStart;
  const chains = (tone: string) =>
    svg`${[31, 23, 15].map((y) => svg`<ellipse class="chain ${tone}" cx="20" cy=${y} rx="3.6" ry="4.6"/>`)}`;
  const posts = [40, 58, 76].map((x) => post(x, 'tone-foundation'));
  return pair(
    {
      name: 'foundation-start',
      legend: 'Do the starting chains count as a stitch?',
      options: [
        [0, 'no: 3 stitches here', svg`${chains('tone-left-out')}${posts}`],
        [1, 'yes: 4 stitches here', svg`${chains('tone-foundation')}${posts}`],
      ],
    },
    counts,
    (value) => take(snapshot, send, 'foundationStart', { counts: value }),
  );
}

function closings(snapshot: Snapshot, send: Send): TemplateResult {
  const { foundationClosing, edgingClosing } = snapshot.making.plan.choices;
  const beside = svg`${vees([18, 34, 66, 82])}<path class="needle" d="M42 20C44 10 56 10 58 20C56 30 44 30 42 20"/>`;
  const over = svg`${vees([18, 34, 50, 66, 82])}<path class="needle" d="M41 13C50 7 52 33 60 27"/>`;
  const options: Pair['options'] = [
    [1, 'beside the first stitch: adds 1', beside],
    [0, 'over the first stitch: adds 0', over],
  ];
  return html`${pair(
    { name: 'foundation-closing', legend: 'How does the foundation close?', options },
    foundationClosing.adds,
    (adds) => take(snapshot, send, 'foundationClosing', { adds }),
  )}
  ${pair(
    { name: 'edging-closing', legend: 'How does the edging close?', options },
    edgingClosing.adds,
    (adds) => take(snapshot, send, 'edgingClosing', { adds }),
  )}`;
}

const vees = (places: number[]): SVGTemplateResult[] =>
  places.map((x) => svg`<path class="stitch-line" d="M${x - 7} 13L${x + 6} 20L${x - 7} 27"/>`);

function edgingRounds(snapshot: Snapshot, send: Send): TemplateResult {
  const { project, making, settings } = snapshot;
  const set = (edgingCount: number): void => send({ type: 'CHANGE', project: { edgingCount } });
  const step = (by: 1 | -1): void => set(Math.min(limits.edgings, Math.max(1, project.edgingCount + by)));
  const dc = term('double-crochet', settings.dialect, 'short');
  return html`<fieldset class="choice">
    <legend>Edging rounds</legend>
    <div class="count wide" role="group" aria-label="Number of edging rounds">
      <span class="count-label">rounds of ${dc}</span>
      <div class="count-box">
        <button type="button" class="step" aria-label="One edging round fewer" @click=${() => step(-1)}><span aria-hidden="true">−</span></button>
        <output class="count-input">${project.edgingCount}</output>
        <button type="button" class="step" aria-label="One edging round more" @click=${() => step(1)}><span aria-hidden="true">+</span></button>
      </div>
    </div>
    ${making.plan.edgings.map(({ arm, increase }, round) =>
      project.sideCount === 0
        ? plain(snapshot, send, fieldNames.increase(round), increase)
        : html`${plain(snapshot, send, fieldNames.armBefore(round), arm[0])}
            ${plain(snapshot, send, fieldNames.armAfter(round), arm[1])}`,
    )}
  </fieldset>`;
}

function joinAndMarkers(snapshot: Snapshot, send: Send): TemplateResult {
  const { joinStart, markerEvery } = snapshot.making.plan.choices;
  return html`<fieldset class="choice">
    <legend>The join and the markers</legend>
    ${snapshot.project.sideCount > 0 ? sideSelect(snapshot, send, fieldNames.joinSide, joinStart.side + 1) : ''}
    ${plain(snapshot, send, fieldNames.joinFromCorner, joinStart.fromCorner)}
    ${plain(snapshot, send, fieldNames.markerEvery, markerEvery)}
  </fieldset>`;
}
