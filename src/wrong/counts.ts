/** Entering what is seen on the back and the front. An empty field means that nobody counted there. */
import { html, nothing, type TemplateResult } from 'lit-html';
import { type Corner, limits } from '../../core/index.ts';
import { countedNumbers, problemAt, readDigits } from '../controls/fields.ts';
import { type NumberField, numberField } from '../controls/number-field.ts';
import { sideCounts } from '../controls/side-counts.ts';
import { isShort, shortField } from '../state/counts.ts';
import type { Send, Snapshot } from '../state/snapshot.ts';
import { fieldName } from '../words/problems-view.ts';

type Piece = {
  title: string;
  tone: 'foundation' | 'edging' | 'front';
  /** Name of the round in fields: `foundation`, `edging.0`; the front has none. */
  round: string | null;
  /** What the recipe or the first count has. */
  sides: readonly number[];
  corners: readonly Corner[];
  sideField: (index: number) => string;
  cornerField: (index: number) => string;
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
      round: `edging.${n}`,
      sides,
      corners,
      sideField: (index) => `worked.edging.${n}.${index}`,
      cornerField: (index) => `worked.edging-corner.${n}.${index}`,
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
      sideField: (index) => `worked.foundation.${index}`,
      cornerField: (index) => `worked.foundation-corner.${index}`,
      open: false,
    },
    {
      title: 'Front again',
      tone: 'front',
      round: null,
      sides: edge.corners.length === 0 ? edge.sides : countedNumbers(snapshot),
      corners: [],
      sideField: (index) => `seen.front.${index}`,
      cornerField: () => '',
      open: false,
    },
  ];
}

function pieceFold(piece: Piece, snapshot: Snapshot, send: Send): TemplateResult {
  const { project, settings, making } = snapshot;
  const isRound = making.edge.corners.length === 0;
  const short = piece.round !== null && isShort(project, piece.round);
  const count = piece.sides.length - (short ? 1 : 0);
  const sides = piece.sides.slice(0, count);
  const fields = sides.map((planned, index) =>
    countField(snapshot, piece, piece.sideField(index), short ? null : planned, planned),
  );
  const corners = piece.corners.slice(0, isRound ? 0 : count);
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
    ${corners.length === 0 ? nothing : cornerFields(piece, corners, short, snapshot, send)}
    ${piece.round !== null && piece.sides.length > 1 ? cornerShort(piece.round, short, send) : nothing}
  </details>`;
}

function cornerFields(
  piece: Piece,
  corners: readonly Corner[],
  short: boolean,
  snapshot: Snapshot,
  send: Send,
): TemplateResult {
  const name = snapshot.project.cornerMade === 'chain' ? 'Chains in the corners' : 'Stitches in the corners';
  return html`<details class="fold inner"><summary>${name}</summary>
    <ol class="listed-fields corner-list">
      ${corners.map(
        ({ size }, index) =>
          html`<li>${numberField(countField(snapshot, piece, piece.cornerField(index), short ? null : size, size), send)}</li>`,
      )}
    </ol></details>`;
}

function cornerShort(round: string, short: boolean, send: Send): TemplateResult {
  const field = shortField(round);
  const change = (event: Event): void =>
    send({ type: 'TYPE', field, text: (event.target as HTMLInputElement).checked ? '1' : '' });
  return html`<label class="tick"><input type="checkbox" .checked=${short} @change=${change} /> This round has a corner too few</label>`;
}

/** @param planned null where the recipe's number does not belong to this field */
function countField(
  snapshot: Snapshot,
  piece: Piece,
  field: string,
  planned: number | null,
  from: number,
): NumberField {
  const text = snapshot.project.texts[field] ?? '';
  const label = fieldName(field, snapshot.project.sideCount);
  const noteId = `${field.replaceAll('.', '-')}-note`;
  return {
    field,
    label,
    name: `${piece.title.toLowerCase()} ${label}`,
    text,
    from,
    least: 0,
    most: limits.stitches,
    problem: problemAt(snapshot, field),
    noteId,
    note: noteOf(noteId, text, planned, piece.round === null ? 'before' : 'recipe'),
  };
}

/** Against the number it should be: a shape and words, never colour alone. */
function noteOf(id: string, text: string, planned: number | null, name: string): TemplateResult | undefined {
  if (planned === null) return undefined;
  const made = readDigits(text);
  if (made === null || made === planned)
    return html`<p class="count-note" id=${id}>${made === null ? `${name} ${planned}` : html`<span aria-hidden="true">✓</span> as ${name}`}</p>`;
  const by = made - planned;
  return html`<p class="count-note differs ${by < 0 ? 'short' : 'surplus'}" id=${id}>${Math.abs(by)} ${by < 0 ? 'short' : 'more'}</p>`;
}

/** How many of a round's places have a count. */
function tag(piece: Piece, { project }: Snapshot): TemplateResult {
  const fields = [
    ...piece.sides.map((_, i) => piece.sideField(i)),
    ...piece.corners.map((_, i) => piece.cornerField(i)),
  ];
  const counted = fields.filter((field) => project.texts[field]?.trim()).length;
  return html`<span class="tag">${counted === 0 ? 'not counted' : `${counted} counted`}</span>`;
}
