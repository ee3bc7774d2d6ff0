/** What I really worked: the counts of the back, in the back's own order, prefilled with the recipe. */
import { html, nothing, type TemplateResult } from 'lit-html';
import type { Corner } from '../../core/index.ts';
import { boundsOf, problemAt, textOf } from '../controls/fields.ts';
import { type NumberField, numberField } from '../controls/number-field.ts';
import { sideCounts } from '../controls/side-counts.ts';
import { countedFields } from '../input/counts.ts';
import { numberIn } from '../input/typed.ts';
import { type BackRound, cornersShort, fieldNames } from '../state/fields.ts';
import type { Field, Send, Snapshot } from '../state/snapshot.ts';
import { fieldName } from '../words/problems-view.ts';

type Piece = {
  title: string;
  tone: 'foundation' | 'edging';
  sides: readonly number[];
  corners: readonly Corner[];
  round: BackRound;
};

export function workedPanel(snapshot: Snapshot, send: Send): TemplateResult {
  const pieces = piecesOf(snapshot);
  const { texts } = snapshot.project;
  const touched = countedFields(texts, 'worked').length > 0;
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
      round: 'foundation',
    },
    ...edgings.map(
      ({ sides, corners }, round): Piece => ({
        title: edgings.length > 1 ? `Edging round ${round + 1}` : 'Edging',
        tone: 'edging',
        sides,
        corners,
        round,
      }),
    ),
  ];
}

function workedPiece(piece: Piece, snapshot: Snapshot, send: Send): TemplateResult {
  const { making, project, settings } = snapshot;
  const round = piece.corners.length === 0;
  const lacks = cornersShort(project, piece.round);
  const made = piece.sides.slice(0, piece.sides.length - lacks);
  const fields = made.map((planned, index): NumberField => {
    const faces = making.plan.faces[index] ?? 0;
    // Which side is which is not certain where corners are missing.
    const facing = round || lacks > 0 ? '' : `faces front ${faces + 1}`;
    return countField(snapshot, piece, fieldNames.workedSide(piece.round, index), { planned, facing });
  });
  const caption = `The ${piece.title.toLowerCase()} of the back, right side facing, in working order`;
  return html`<section class="worked-piece">
    <h3>${piece.title}</h3>
    ${sideCounts(
      {
        caption,
        middle: ['back'],
        fields,
        counts: made,
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
        ${piece.corners
          .slice(0, piece.corners.length - lacks)
          .map(
            ({ size }, index) =>
              html`<li>${numberField(countField(snapshot, piece, fieldNames.workedCorner(piece.round, index), { planned: size, facing: '' }), send)}</li>`,
          )}
      </ol></details>`
    }
  </section>`;
}

type Beside = { planned: number; facing: string };

function countField(
  snapshot: Snapshot,
  piece: Piece,
  field: Field,
  { planned, facing }: Beside,
): NumberField {
  const text = textOf(snapshot, field, planned);
  const label = fieldName(field, snapshot.project.sideCount);
  const made = numberIn(snapshot.project, field) ?? planned;
  const by = cornersShort(snapshot.project, piece.round) > 0 ? 0 : made - planned;
  return {
    field,
    label,
    name: `${piece.title.toLowerCase()} ${label}`,
    text,
    ...boundsOf(snapshot, field),
    problem: problemAt(snapshot, field),
    noteId: `${field.replaceAll('.', '-')}-note`,
    note: noteOf(`${field.replaceAll('.', '-')}-note`, by, facing),
  };
}

/** The difference from the recipe: a shape and words, never colour alone. */
function noteOf(id: string, by: number, facing: string): TemplateResult {
  if (by === 0) return html`<p class="count-note" id=${id}>${facing}</p>`;
  const says = by < 0 ? `${-by} short` : `${by} more`;
  return html`<p class="count-note differs ${by < 0 ? 'short' : 'surplus'}" id=${id}>${says}</p>`;
}
