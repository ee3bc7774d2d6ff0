/** Counts that stand at the sides of a picture of the piece: around it, or as a list where there are many. */
import { html, nothing, type SVGTemplateResult, svg, type TemplateResult } from 'lit-html';
import type { Hand, Send } from '../state/snapshot.ts';
import { cellsAround, MOST_AROUND, outline } from './around.ts';
import { type NumberField, numberField, problemLine } from './number-field.ts';
import { braidRing, roundBraid } from './stitch-pictures.ts';

/** Width of a stitch in the picture, and room about it. */
const STITCH = 9.5;
const MARGIN = 9;

export type SideCounts = {
  /** Names the picture in words. */
  caption: string;
  /** What is written in the middle of the picture, a line each. */
  middle: string[];
  /** One field a side, in working order; one field only on a round panel. */
  fields: NumberField[];
  /** Numbers that give the picture its proportions. */
  counts: readonly number[];
  round: boolean;
  hand: Hand;
  tone: 'front' | 'edging' | 'foundation';
};

export function sideCounts(spec: SideCounts, send: Send): TemplateResult {
  if (spec.round) return roundCount(spec, send);
  return spec.fields.length > MOST_AROUND ? listed(spec, send) : around(spec, send);
}

function around(spec: SideCounts, send: Send): TemplateResult {
  const { fields, hand } = spec;
  const few = fields.length <= 4;
  const cells = cellsAround(fields.length, hand).sort((a, b) => a.side - b.side);
  return html`<div class="around ${few ? 'few' : ''}">
    <div class="around-picture">${figurePicture(spec, few ? 150 : 112, few ? 104 : 112)}</div>
    ${cells.map(({ side, column, row }) => {
      const field = fields[side];
      if (!field) return nothing;
      const upright = few && column !== 'middle';
      return html`<div class="around-cell at-${column} at-row-${row}">
        ${numberField({ ...field, upright, problemElsewhere: true }, send)}
      </div>`;
    })}
  </div>
  ${problemList(fields)}`;
}

function listed(spec: SideCounts, send: Send): TemplateResult {
  return html`<div class="listed">
    <div class="listed-picture">${figurePicture(spec, 112, 112)}</div>
    <ol class="listed-fields">
      ${spec.fields.map((field) => html`<li>${numberField({ ...field, problemElsewhere: true }, send)}</li>`)}
    </ol>
  </div>
  ${problemList(spec.fields)}`;
}

function roundCount(spec: SideCounts, send: Send): TemplateResult {
  const [field] = spec.fields;
  const way = spec.hand === 'right' ? -1 : 1;
  return html`<div class="round-count">
    <svg class="piece-picture" viewBox="0 0 240 240" role="img" aria-label=${spec.caption}>
      ${roundBraid({ x: 120, y: 120, radius: 108 }, 54, `tone-${spec.tone}`, way)}
    </svg>
    <div class="round-middle">
      ${field ? numberField({ ...field, problemElsewhere: true, wide: true }, send) : nothing}
      ${spec.middle.map((line) => html`<p class="muted">${line}</p>`)}
    </div>
  </div>
  ${problemList(spec.fields)}`;
}

/** Messages do not fit at the sides of a picture: they stand below it, and the fields point to them. */
function problemList(fields: readonly NumberField[]): TemplateResult | typeof nothing {
  const wrong = fields.filter((field) => field.problem);
  if (wrong.length === 0) return nothing;
  return html`<div class="problem-lines">${wrong.map(({ field, problem }) => problemLine(field, problem ?? ''))}</div>`;
}

function figurePicture(spec: SideCounts, width: number, height: number): TemplateResult {
  return html`<svg class="piece-picture" viewBox="0 0 ${width} ${height}" role="img" aria-label=${spec.caption}>
    ${figureBraid(spec, width, height)}
    ${spec.middle.map(
      (line, index) =>
        svg`<text class="picture-words" x=${width / 2} y=${height / 2 + (index - (spec.middle.length - 1) / 2) * 13}>${line}</text>`,
    )}
  </svg>`;
}

/** One or two sides make no figure with straight sides: a ring stands for them. */
function figureBraid(spec: SideCounts, width: number, height: number): SVGTemplateResult[] {
  const tone = `tone-${spec.tone}`;
  const middle = { x: width / 2, y: height / 2 };
  const way = spec.hand === 'right' ? -1 : 1;
  if (spec.counts.length < 3) return roundBraid({ ...middle, radius: height / 2 - MARGIN }, 26, tone, way);
  const fitted = outline(spec.counts, spec.hand, width - 2 * MARGIN, height - 2 * MARGIN);
  const corners = fitted.map(({ x, y }) => ({ x: x + MARGIN, y: y + MARGIN }));
  return braidRing(corners, STITCH, (side) => `${tone} picture-side-${side}`);
}
