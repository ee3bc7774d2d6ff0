/** Your edge: what the person counted on the front, and the recipe that follows from it. */
import { html, type TemplateResult } from 'lit-html';
import { limits } from '../../core/index.ts';
import { countedNumbers, problemAt, textOf } from '../controls/fields.ts';
import { RECIPE_ID } from '../controls/ids.ts';
import type { NumberField } from '../controls/number-field.ts';
import { check, problemSummary } from '../controls/problem-summary.ts';
import { sideCounts } from '../controls/side-counts.ts';
import { fieldNames } from '../state/fields.ts';
import { example } from '../state/project.ts';
import type { Send, Snapshot } from '../state/snapshot.ts';
import { fieldName } from '../words/problems-view.ts';
import { cornerChoice, countingChoice } from './counting-choice.ts';
import { sidesChooser } from './sides-chooser.ts';

type Part = (snapshot: Snapshot, send: Send) => TemplateResult;

/** What follows from the numbers: fetched after the first look. */
type Following = { recipePanel: Part; moreChoices: Part; workedPanel: Part; below: Part };

export function edgePanel(snapshot: Snapshot, send: Send, later: Following | null): TemplateResult {
  const { project } = snapshot;
  return html`${problemSummary(snapshot, send)}
    <p class="intro">Count the last round of your panel, and see whether its back will meet it, stitch by stitch.
      ${isExample(snapshot) ? html`<span class="muted">The numbers here are an example: type over them.</span>` : ''}</p>
    <form class="edge" novalidate @submit=${(event: Event) => submit(event, snapshot, send)}>
      <h2>What did you count on the front's last round?</h2>
      ${sidesChooser(snapshot, send)}
      ${frontCounts(snapshot, send)}
      ${project.sideCount === 0 ? '' : html`${countingChoice(snapshot, send)}${cornerChoice(snapshot, send)}`}
      ${later?.below(snapshot, send)}
      <button class="button action" type="submit">Check my numbers</button>
    </form>
    ${later?.recipePanel(snapshot, send)} ${later?.moreChoices(snapshot, send)} ${later?.workedPanel(snapshot, send)}`;
}

const isExample = ({ project }: Snapshot): boolean =>
  project.name === example.name && JSON.stringify(project.texts) === JSON.stringify(example.texts);

/** All is well: go on to what follows from the numbers. */
function submit(event: Event, snapshot: Snapshot, send: Send): void {
  event.preventDefault();
  if (!check(snapshot, send)) return;
  const heading = document.getElementById(RECIPE_ID);
  heading?.focus({ preventScroll: true });
  heading?.scrollIntoView({ block: 'start' });
}

function frontCounts(snapshot: Snapshot, send: Send): TemplateResult {
  const { project, settings } = snapshot;
  const round = project.sideCount === 0;
  const known = countedNumbers(snapshot);
  const count = round ? 1 : project.sideCount;
  const fields = Array.from({ length: count }, (_, side): NumberField => {
    const field = fieldNames.side(side);
    return {
      field,
      label: fieldName(field, project.sideCount),
      text: textOf(snapshot, field, known.length === count ? (known[side] ?? '') : ''),
      least: 1,
      most: limits.stitches,
      problem: problemAt(snapshot, field),
    };
  });
  const caption = round ? 'The front, a round panel' : `The front, ${count} sides, right side facing`;
  const middle = round ? ['front, right side'] : ['front'];
  const counts = fields.map((_, side) => known[side] ?? known[0] ?? 1);
  return sideCounts({ caption, middle, fields, counts, round, hand: settings.hand, tone: 'front' }, send);
}
