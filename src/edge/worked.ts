/** What I really worked: the counts of the back, in the back's own order, prefilled with the recipe. */
import { html, nothing, type TemplateResult } from 'lit-html';
import { type Corner, limits } from '../../core/index.ts';
import { problemAt, readDigits, textOf } from '../controls/fields.ts';
import { type NumberField, numberField } from '../controls/number-field.ts';
import { sideCounts } from '../controls/side-counts.ts';
import type { Send, Snapshot } from '../state/snapshot.ts';
import { fieldName } from '../words/problems-view.ts';

type Piece = {
  title: string;
  tone: 'foundation' | 'edging';
  sides: readonly number[];
  corners: readonly Corner[];
  sideField: (index: number) => string;
  cornerField: (index: number) => string;
};

export function workedPanel(snapshot: Snapshot, send: Send): TemplateResult {
  const pieces = piecesOf(snapshot);
  const touched = Object.keys(snapshot.project.texts).some((field) => field.startsWith('worked.'));
  return html`<details class="fold worked">
    <summary>What I really worked</summary>
    <p>Count your back, right side facing. Change only the numbers that differ.</p>
    ${pieces.map((piece) => workedPiece(piece, snapshot, send))}
    <button type="button" class="button" aria-disabled=${touched ? nothing : 'true'}
      @click=${() => touched && send({ type: 'CLEAR_WORKED' })}>Back to the recipe's numbers</button>
  </details>`;
}

function piecesOf({ making }: Snapshot): Piece[] {
  const { foundation, edgings } = making.plan;
  return [
    {
      title: 'Foundation',
      tone: 'foundation',
      sides: foundation.sides,
      corners: foundation.corners,
      sideField: (index) => `worked.foundation.${index}`,
      cornerField: (index) => `worked.foundation-corner.${index}`,
    },
    ...edgings.map(
      ({ sides, corners }, round): Piece => ({
        title: edgings.length > 1 ? `Edging round ${round + 1}` : 'Edging',
        tone: 'edging',
        sides,
        corners,
        sideField: (index) => `worked.edging.${round}.${index}`,
        cornerField: (index) => `worked.edging-corner.${round}.${index}`,
      }),
    ),
  ];
}

function workedPiece(piece: Piece, snapshot: Snapshot, send: Send): TemplateResult {
  const { making, project, settings } = snapshot;
  const round = piece.corners.length === 0;
  const fields = piece.sides.map((planned, index): NumberField => {
    const faces = making.plan.faces[index] ?? 0;
    const facing = round ? '' : `faces front ${faces + 1}`;
    return countField(snapshot, piece, piece.sideField(index), planned, facing);
  });
  const caption = `The ${piece.title.toLowerCase()} of the back, right side facing, in working order`;
  return html`<section class="worked-piece">
    <h3>${piece.title}</h3>
    ${sideCounts(
      {
        caption,
        middle: ['back'],
        fields,
        counts: piece.sides,
        round,
        hand: settings.hand,
        tone: piece.tone,
      },
      send,
    )}
    ${
      round
        ? nothing
        : html`<details class="fold inner"><summary>${project.cornerMade === 'chain' ? 'Chains in the corners' : 'The corners'}</summary>
      <ol class="listed-fields corner-list">
        ${piece.corners.map(
          ({ size }, index) =>
            html`<li>${numberField(countField(snapshot, piece, piece.cornerField(index), size, ''), send)}</li>`,
        )}
      </ol></details>`
    }
  </section>`;
}

function countField(
  snapshot: Snapshot,
  piece: Piece,
  field: string,
  planned: number,
  facing: string,
): NumberField {
  const text = textOf(snapshot, field, planned);
  const label = fieldName(field, snapshot.project.sideCount);
  const made = readDigits(text);
  return {
    field,
    label,
    name: `${piece.title.toLowerCase()} ${label}`,
    text,
    least: 0,
    most: limits.stitches,
    problem: problemAt(snapshot, field),
    noteId: `${field.replaceAll('.', '-')}-note`,
    note: noteOf(`${field.replaceAll('.', '-')}-note`, made === null ? 0 : made - planned, facing),
  };
}

/** The difference from the recipe: a shape and words, never colour alone. */
function noteOf(id: string, by: number, facing: string): TemplateResult {
  if (by === 0) return html`<p class="count-note" id=${id}>${facing}</p>`;
  const says = by < 0 ? `${-by} short` : `${by} more`;
  return html`<p class="count-note differs ${by < 0 ? 'short' : 'surplus'}" id=${id}>${says}</p>`;
}
