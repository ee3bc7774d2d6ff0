/**
 * The drawing as a list for keyboard and voice: a grid of rows (sides and corners) and cells (stitches), of
 * which only those near the one in focus are in the page. It comes into sight when it has the focus.
 *
 * The cell in focus is the place pointed at, or else the place of the step: the state is the snapshot's.
 */
import { html, type TemplateResult } from 'lit-html';
import type { Step } from '../../../core/index.ts';
import { type Twin, type TwinCell, twinOf } from '../../drawing/twin.ts';
import type { Pointed, Send, Snapshot } from '../../state/snapshot.ts';
import { sayState } from '../../words/position.ts';

/** Rows and cells kept on each side of the one in focus. */
const ROWS_AROUND = 1;
const CELLS_AROUND = 6;
const PAGE_OF_CELLS = 10;

const TWIN_ID = 'twin';
const CELL_ID = 'twin-cell';

type Focus = { row: number; cell: number };

/** The list, the cell of it in focus, and the steps its cells lead to. */
type Grid = { twin: Twin; focus: Focus; steps: Snapshot['making']['steps'] };

export function twinGrid(snapshot: Snapshot, send: Send): TemplateResult {
  const twin = twinOf(snapshot, snapshot.settings);
  const focus = focusIn(twin, snapshot);
  const { from, to } = windowAround(focus.row, ROWS_AROUND, twin.rows.length);
  const here = twin.rows[focus.row]?.cell(focus.cell);
  return html`<div class="twin">
    <div
      role="grid"
      id=${TWIN_ID}
      class="twin-grid"
      aria-label="Every stitch"
      aria-rowcount=${twin.rows.length}
      aria-colcount=${Math.max(...twin.rows.map(({ length }) => length)) + 1}
      @keydown=${(event: KeyboardEvent) => press(event, { twin, focus, steps: snapshot.making.steps }, send)}
    >
      ${twin.rows.slice(from, to).map((_, index) => gridRow(twin, from + index, focus, send))}
    </div>
    <p class="twin-words" aria-hidden="true">${here ? sayCell(here) : ''}</p>
  </div>`;
}

function gridRow(twin: Twin, index: number, focus: Focus, send: Send): TemplateResult {
  const row = twin.rows[index] as Twin['rows'][number];
  const near = Math.min(focus.cell, row.length - 1);
  const { from, to } = windowAround(near, CELLS_AROUND, row.length);
  return html`<div role="row" class="twin-row" aria-rowindex=${index + 1}>
    <span role="rowheader" class="twin-name" aria-colindex="1">${row.name}</span>
    ${Array.from({ length: to - from }, (_, offset) => {
      const cell = row.cell(from + offset);
      const here = index === focus.row && from + offset === focus.cell;
      return html`<span
        role="gridcell"
        class="twin-cell twin-${cell.state}"
        id=${here ? CELL_ID : `${CELL_ID}-${index}-${from + offset}`}
        aria-colindex=${from + offset + 2}
        aria-label=${sayCell(cell)}
        tabindex=${here ? '0' : '-1'}
        @click=${() => send({ type: 'POINT', at: cell.at })}
      >${from + offset + 1}</span>`;
    })}
  </div>`;
}

/** "Edging, side 3, stitch 31. Double crochet, 31 of 58. Made. Meets the front, side 2, stitch 28." */
export function sayCell({ title, lines, state }: TwinCell): string {
  const [kind, ...rest] = lines;
  const standing = state === 'alone' ? [] : [capital(`${sayState(state)}.`)];
  return [`${title}.`, kind ?? '', ...standing, ...rest].filter(Boolean).join(' ');
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

export function windowAround(middle: number, reach: number, length: number): { from: number; to: number } {
  return { from: Math.max(0, middle - reach), to: Math.min(length, middle + reach + 1) };
}

function focusIn(twin: Twin, { pointed, step }: Snapshot): Focus {
  const places = [pointed, placeOfStep(step)];
  for (const at of places) {
    const found = at && twin.find(at);
    if (found) return found;
  }
  return { row: 0, cell: 0 };
}

/** Where a step works; steps that make no stitch have no place of their own. */
export function placeOfStep({ stage, node, edging }: Step): Pointed | null {
  if (node < 0) return null;
  if (stage.startsWith('foundation')) return { round: 'foundation', edging: 0, node };
  if (stage.startsWith('edging')) return { round: 'edging', edging, node };
  return { round: 'front', edging: 0, node };
}

/** The cell that a key leads to from another; null for keys that are not the grid's. */
export function movedFocus(
  { row, cell }: Focus,
  lengths: readonly number[],
  { key, ctrlKey }: Pick<KeyboardEvent, 'key' | 'ctrlKey'>,
): Focus | null {
  const lastRow = lengths.length - 1;
  const within = (nextRow: number, nextCell: number): Focus => {
    const found = Math.min(lastRow, Math.max(0, nextRow));
    return { row: found, cell: Math.min((lengths[found] ?? 1) - 1, Math.max(0, nextCell)) };
  };
  switch (key) {
    case 'ArrowRight':
      return within(row, cell + 1);
    case 'ArrowLeft':
      return within(row, cell - 1);
    case 'ArrowDown':
      return within(row + 1, cell);
    case 'ArrowUp':
      return within(row - 1, cell);
    case 'PageDown':
      return within(row, cell + PAGE_OF_CELLS);
    case 'PageUp':
      return within(row, cell - PAGE_OF_CELLS);
    case 'Home':
      return ctrlKey ? within(0, 0) : within(row, 0);
    case 'End':
      return ctrlKey ? within(lastRow, Number.MAX_SAFE_INTEGER) : within(row, Number.MAX_SAFE_INTEGER);
    default:
      return null;
  }
}

function press(event: KeyboardEvent, { twin, focus, steps }: Grid, send: Send): void {
  const here = twin.rows[focus.row]?.cell(focus.cell);
  if (event.key === 'Enter' && here) {
    event.preventDefault();
    const to = steps.stepOf(here.at.round, here.at.node, here.at.edging);
    if (to >= 0) send({ type: 'JUMP', to });
    return;
  }
  const next = movedFocus(
    focus,
    twin.rows.map(({ length }) => length),
    event,
  );
  if (!next) return;
  event.preventDefault();
  const cell = twin.rows[next.row]?.cell(next.cell);
  if (!cell) return;
  send({ type: 'POINT', at: cell.at });
  // The cell is in the page once this change is drawn.
  requestAnimationFrame(() => requestAnimationFrame(() => document.getElementById(CELL_ID)?.focus()));
}
