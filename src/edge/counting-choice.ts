/** What the maker's number took in, in three pictures, and what follows from the answer. */
import { html, type SVGTemplateResult, svg, type TemplateResult } from 'lit-html';
import { type CornerMade, type Counted, limits } from '../../core/index.ts';
import { countedNumbers, problemAt, textOf } from '../controls/fields.ts';
import { numberField } from '../controls/number-field.ts';
import { chain, vee } from '../controls/stitch-pictures.ts';
import { fieldNames } from '../state/fields.ts';
import type { Send, Snapshot } from '../state/snapshot.ts';

const WAYS: { counted: Counted; says: string }[] = [
  { counted: 'stitches-only', says: 'stitches only' },
  { counted: 'one-corner', says: 'one corner' },
  { counted: 'both-corners', says: 'both corners' },
];

export function countingChoice(snapshot: Snapshot, send: Send): TemplateResult {
  const { project } = snapshot;
  return html`<fieldset class="counting">
    <legend>What did your count take in?</legend>
    <div class="cards">
      ${WAYS.map(
        ({ counted, says }) => html`<label class="card">
          <input type="radio" name="counted" .checked=${project.counted === counted}
            @change=${() => send({ type: 'CHANGE', project: { counted } })} />
          <svg viewBox="0 0 104 22" aria-hidden="true">${countedPicture(counted, project.cornerMade)}</svg>
          <span>${says}</span>
        </label>`,
      )}
    </div>
    ${!snapshot.isStale ? html`<p class="consequence">${consequence(snapshot)}</p>` : ''}
  </fieldset>`;
}

/** Two corner positions, five stitches, two corner positions: what is counted has the yarn's colour. */
function countedPicture(counted: Counted, made: CornerMade): SVGTemplateResult[] {
  const tone = (isCounted: boolean): string => (isCounted ? 'tone-front' : 'tone-left-out');
  const corner = (x: number, isCounted: boolean): SVGTemplateResult[] =>
    made === 'chain'
      ? [
          chain({ x: x - 6.5, y: 11, angle: 0, size: 12 }, tone(isCounted)),
          chain({ x: x + 6.5, y: 11, angle: 0, size: 12 }, tone(isCounted)),
        ]
      : [
          svg`<path class="corner-stitch ${tone(isCounted)}" d="M${x - 8} 16 L${x} 5 L${x + 8} 16 M${x} 5 V17"/>`,
        ];
  const stitches = [0, 1, 2, 3, 4].map((index) =>
    vee({ x: 30 + index * 11, y: 11, angle: 0, size: 11 }, tone(true)),
  );
  return [...corner(13, counted === 'both-corners'), ...stitches, ...corner(91, counted !== 'stitches-only')];
}

/** "58 counted: 56 stitches and 2 of the corner." */
function consequence({ making, project }: Snapshot): string | TemplateResult {
  const stitches = making.edge.sides[0] ?? 0;
  const counted = countedNumbers({ making, project } as Snapshot)[0] ?? stitches;
  const corners = counted - stitches;
  if (corners === 0) return html`Side 1 has <b>${stitches}</b> stitches. Its corners come on top.`;
  return html`Side 1: <b>${counted}</b> counted = <b>${stitches}</b> stitches + <b>${corners}</b> of the corner${project.counted === 'both-corners' ? 's' : ''}.`;
}

export function cornerChoice(snapshot: Snapshot, send: Send): TemplateResult {
  const { project } = snapshot;
  const change = (cornerMade: CornerMade): void => send({ type: 'CHANGE', project: { cornerMade } });
  return html`<fieldset class="corners">
    <legend>How is a corner made?</legend>
    <div class="corner-row">
      <div class="cards two">
        <label class="card">
          <input type="radio" name="corner-made" .checked=${project.cornerMade === 'chain'} @change=${() => change('chain')} />
          <svg viewBox="0 0 44 34" aria-hidden="true">${cornerPicture('chain')}</svg><span>chains</span>
        </label>
        <label class="card">
          <input type="radio" name="corner-made" .checked=${project.cornerMade === 'stitch'} @change=${() => change('stitch')} />
          <svg viewBox="0 0 44 34" aria-hidden="true">${cornerPicture('stitch')}</svg><span>one stitch</span>
        </label>
      </div>
      ${project.cornersDiffer ? '' : sizeField(snapshot, send)}
    </div>
    <label class="tick">
      <input type="checkbox" .checked=${project.cornersDiffer}
        @change=${(event: Event) => send({ type: 'CHANGE', project: { cornersDiffer: (event.target as HTMLInputElement).checked } })} />
      <span>The corners differ</span>
    </label>
    ${project.cornersDiffer ? differing(snapshot, send) : ''}
  </fieldset>`;
}

const sizeLabel = (made: CornerMade): string => (made === 'chain' ? 'chains in a corner' : 'corner stitches');

function sizeField(snapshot: Snapshot, send: Send): TemplateResult {
  const planned = snapshot.making.edge.corners[0]?.size ?? '';
  return numberField(
    {
      field: fieldNames.eachCorner,
      label: sizeLabel(snapshot.project.cornerMade),
      text: textOf(snapshot, fieldNames.eachCorner, planned),
      least: 0,
      most: limits.cornerSize,
      problem: problemAt(snapshot, fieldNames.eachCorner),
    },
    send,
  );
}

function differing(snapshot: Snapshot, send: Send): TemplateResult {
  const { making, project } = snapshot;
  return html`<ol class="listed-fields corner-list">
    ${Array.from({ length: project.sideCount }, (_, corner) => {
      const field = fieldNames.corner(corner);
      const after = `after side ${corner + 1}`;
      return html`<li>${numberField(
        {
          field,
          label: after,
          name: `corner ${corner + 1}`,
          text: textOf(snapshot, field, making.edge.corners[corner]?.size ?? ''),
          least: 0,
          most: limits.cornerSize,
          problem: problemAt(snapshot, field),
        },
        send,
      )}</li>`;
    })}
  </ol>`;
}

function cornerPicture(made: CornerMade): SVGTemplateResult[] {
  const stitches = [
    vee({ x: 9, y: 28, angle: 0, size: 11 }, 'tone-front'),
    vee({ x: 20, y: 28, angle: 0, size: 11 }, 'tone-front'),
    vee({ x: 38, y: 6, angle: Math.PI / -2, size: 10 }, 'tone-front'),
  ];
  if (made === 'chain')
    return [
      ...stitches,
      chain({ x: 31, y: 25, angle: -0.6, size: 10 }, 'tone-front'),
      chain({ x: 37, y: 17, angle: -1.1, size: 10 }, 'tone-front'),
    ];
  return [...stitches, vee({ x: 33, y: 22, angle: Math.PI / -4, size: 14 }, 'tone-front')];
}
