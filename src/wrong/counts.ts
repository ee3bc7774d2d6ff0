/** Entering what is seen on the back and the front. An empty field means that nobody counted there. */
import { html, nothing, type TemplateResult } from 'lit-html';
import type { Corner } from '../../core/index.ts';
import { boundsOf, countedNumbers, problemAt } from '../controls/fields.ts';
import { type NumberField, numberField } from '../controls/number-field.ts';
import { sideCounts } from '../controls/side-counts.ts';
import { numberIn } from '../input/typed.ts';
import { photoOffer } from '../photo/offer.ts';
import { type BackRound, cornersShort, fieldNames } from '../state/fields.ts';
import type { Field, Send, Snapshot } from '../state/snapshot.ts';
import { fieldName } from '../words/problems-view.ts';

type Piece = {
  title: string;
  tone: 'foundation' | 'edging' | 'front';
  /** The front is none. */
  round: BackRound | null;
  /** What the recipe or the first count has. */
  sides: readonly number[];
  corners: readonly Corner[];
  sideField: (index: number) => Field;
  open: boolean;
};

/** A fold a round: the last edging first, for that is where it shows, and the front last. */
export function countFolds(snapshot: Snapshot, send: Send): TemplateResult {
  return html`${piecesOf(snapshot).map((piece) => pieceFold(piece, snapshot, send))}`;
}

function piecesOf(snapshot: Snapshot): Piece[] {
  const { foundation, edgings, edge } = snapshot.making.plan;
  const rounds = edgings.map(
    ({ sides, corners }, n): Piece => ({
      title: edgings.length > 1 ? `Edging round ${n + 1}` : 'Edging',
      tone: 'edging',
      round: n,
      sides,
      corners,
      sideField: (index) => fieldNames.workedSide(n, index),
      open: n === edgings.length - 1,
    }),
  );
  return [
    ...rounds.reverse(),
    {
      title: 'Foundation',
      tone: 'foundation',
      round: 'foundation',
      sides: foundation.sides,
      corners: foundation.corners,
      sideField: (index) => fieldNames.workedSide('foundation', index),
      open: false,
    },
    {
      title: 'Front again',
      tone: 'front',
      round: null,
      sides: edge.corners.length === 0 ? edge.sides : countedNumbers(snapshot),
      corners: [],
      sideField: fieldNames.frontAgain,
      open: false,
    },
  ];
}

function pieceFold(piece: Piece, snapshot: Snapshot, send: Send): TemplateResult {
  const { settings, making } = snapshot;
  const isRound = making.edge.corners.length === 0;
  const short = shortOf(piece, snapshot);
  const count = piece.sides.length - short;
  const sides = piece.sides.slice(0, count);
  const fields = sides.map((planned, index) => countField(snapshot, piece, piece.sideField(index), planned));
  const caption =
    piece.round === null
      ? 'The front, right side facing'
      : `The ${piece.title.toLowerCase()} of the back, right side facing, in working order`;
  return html`<details class="fold seen-piece" ?open=${piece.open}>
    <summary>${piece.title}${tag(piece, snapshot)}</summary>
    ${sideCounts(
      {
        caption,
        middle: [piece.round === null ? 'front' : 'back'],
        fields,
        counts: sides,
        round: isRound,
        hand: settings.hand,
        tone: piece.tone,
      },
      send,
    )}
    ${photoOffer(
      fields.map(({ field, label, name }) => ({ field, name: name ?? label })),
      snapshot,
      send,
    )}
    ${isRound || piece.round === null ? nothing : cornerFields(piece, piece.corners.slice(0, count), snapshot, send)}
    ${piece.round !== null && piece.sides.length > 1 ? totalField(piece, piece.round, snapshot, send) : nothing}
    ${piece.round !== null && piece.sides.length > 1 ? cornerShort(piece.round, short, send) : nothing}
  </details>`;
}

/** Corners that the round was told to lack. */
const shortOf = ({ round }: Piece, { project }: Snapshot): number =>
  round === null ? 0 : cornersShort(project, round);

function cornerFields(
  piece: Piece,
  corners: readonly Corner[],
  snapshot: Snapshot,
  send: Send,
): TemplateResult {
  const { round } = piece;
  if (round === null) return html``;
  const name = snapshot.project.cornerMade === 'chain' ? 'Chains in the corners' : 'Stitches in the corners';
  return html`<details class="fold inner"><summary>${name}</summary>
    <ol class="listed-fields corner-list">
      ${corners.map(
        ({ size }, index) =>
          html`<li>${numberField(countField(snapshot, piece, fieldNames.workedCorner(round, index), size), send)}</li>`,
      )}
    </ol></details>`;
}

/** One number for the whole round is enough to begin. */
function totalField(piece: Piece, round: BackRound, snapshot: Snapshot, send: Send): TemplateResult {
  const { foundation, edgings } = snapshot.making.plan;
  const planned = (round === 'foundation' ? foundation : edgings[round])?.total ?? 0;
  return html`<div class="seen-total">${numberField(countField(snapshot, piece, fieldNames.workedTotal(round), planned), send)}</div>`;
}

function cornerShort(round: BackRound, short: number, send: Send): TemplateResult {
  const field = fieldNames.cornersShort(round);
  const change = (event: Event): void =>
    send({ type: 'TYPE', field, text: (event.target as HTMLInputElement).checked ? '1' : '' });
  const says = short > 1 ? `${short} corners too few` : 'a corner too few';
  return html`<label class="tick"><input type="checkbox" .checked=${short > 0} @change=${change} /> This round has ${says}</label>`;
}

function countField(snapshot: Snapshot, piece: Piece, field: Field, planned: number): NumberField {
  const text = snapshot.project.texts[field] ?? '';
  const label = fieldName(field, snapshot.project.sideCount);
  const name = piece.round === null ? 'before' : 'recipe';
  const noteId = `${field.replaceAll('.', '-')}-note`;
  return {
    field,
    label,
    name: `${piece.title.toLowerCase()} ${label}`,
    text,
    from: planned,
    ...boundsOf(snapshot, field),
    problem: problemAt(snapshot, field),
    noteId,
    // Where corners are missing the recipe's number does not belong to this field.
    note:
      shortOf(piece, snapshot) > 0
        ? undefined
        : noteOf(noteId, numberIn(snapshot.project, field), planned, name),
  };
}

/** Against the number it should be: a shape and words, never colour alone. `made`: null where none can be read. */
function noteOf(id: string, made: number | null, planned: number, name: string): TemplateResult {
  if (made === null || made === planned)
    return html`<p class="count-note" id=${id}>${made === null ? `${name} ${planned}` : html`<span aria-hidden="true">✓</span> as ${name}`}</p>`;
  const by = made - planned;
  return html`<p class="count-note differs ${by < 0 ? 'short' : 'surplus'}" id=${id}>${Math.abs(by)} ${by < 0 ? 'short' : 'more'}</p>`;
}

/** How many of a round's places have a count. */
function tag(piece: Piece, { project }: Snapshot): TemplateResult {
  const { round, sides, corners } = piece;
  const fields = [
    ...sides.map((_, i) => piece.sideField(i)),
    ...(round === null
      ? []
      : [...corners.map((_, i) => fieldNames.workedCorner(round, i)), fieldNames.workedTotal(round)]),
  ];
  const counted = fields.filter((field) => numberIn(project, field) !== null).length;
  return html`<span class="tag">${counted === 0 ? 'not counted' : `${counted} counted`}</span>`;
}
