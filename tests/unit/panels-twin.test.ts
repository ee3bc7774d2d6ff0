import { describe, expect, test } from 'vitest';
import { type Plan, pair, planBack, readEdge, steps, work } from '../../core/index.ts';
import { twinOf } from '../../src/drawing/twin.ts';
import { movedFocus, placeOfStep, sayCell, windowAround } from '../../src/page/drawing/twin-grid.ts';

const LENGTHS = [62, 2, 38];

const press = (key: string, ctrlKey = false) => ({ key, ctrlKey });

describe('keys of the list', () => {
  test.each([
    [{ row: 0, cell: 5 }, press('ArrowRight'), { row: 0, cell: 6 }],
    [{ row: 0, cell: 61 }, press('ArrowRight'), { row: 0, cell: 61 }],
    [{ row: 0, cell: 0 }, press('ArrowLeft'), { row: 0, cell: 0 }],
    [{ row: 0, cell: 40 }, press('ArrowDown'), { row: 1, cell: 1 }],
    [{ row: 2, cell: 3 }, press('ArrowDown'), { row: 2, cell: 3 }],
    [{ row: 2, cell: 30 }, press('PageDown'), { row: 2, cell: 37 }],
    [{ row: 2, cell: 3 }, press('PageUp'), { row: 2, cell: 0 }],
    [{ row: 2, cell: 3 }, press('Home'), { row: 2, cell: 0 }],
    [{ row: 2, cell: 3 }, press('End'), { row: 2, cell: 37 }],
    [{ row: 2, cell: 3 }, press('Home', true), { row: 0, cell: 0 }],
    [{ row: 0, cell: 3 }, press('End', true), { row: 2, cell: 37 }],
  ])('%j with %j leads to %j', (from, key, to) => {
    expect(movedFocus(from, LENGTHS, key)).toEqual(to);
  });

  test('other keys are left to the page', () => {
    expect(movedFocus({ row: 0, cell: 0 }, LENGTHS, press('m'))).toBeNull();
  });
});

test.each([
  [0, 6, 62, { from: 0, to: 7 }],
  [61, 6, 62, { from: 55, to: 62 }],
  [1, 6, 2, { from: 0, to: 2 }],
])('around %i, %i on each side of %i', (middle, reach, length, window) => {
  expect(windowAround(middle, reach, length)).toEqual(window);
});

describe('the steps and the list', () => {
  const given = <T>(result: { ok: true; value: T } | { ok: false }): T => {
    if (!result.ok) throw new Error('not readable');
    return result.value;
  };
  const edge = given(
    readEdge({ sides: [12, 9, 12, 9], corner: { made: 'chain', size: 2 }, counted: 'one-corner' }),
  );
  const plan: Plan = given(planBack(edge));
  const worked = work(plan);
  const start = { start: worked.join, manner: 'corner-to-corner' as const };
  const pairing = pair(edge, worked.edgings.at(-1)!, start);
  const all = steps(plan);
  const making = { edge, plan, worked, pairing, steps: all, acts: [], seen: {} };
  const speech = { dialect: 'uk', hand: 'right', units: 'cm' } as const;

  test('every step that makes a stitch has a cell, and the cell leads back to a step there', () => {
    let found = 0;
    for (let index = 0; index < all.length; index++) {
      const step = all.at(index);
      const at = placeOfStep(step);
      if (!at) continue;
      const twin = twinOf({ making, step }, speech);
      const focus = twin.find(at);
      expect(focus, `${step.kind} ${index}`).not.toBeNull();
      if (!focus) continue;
      const cell = twin.rows[focus.row]?.cell(focus.cell);
      expect(cell?.at).toEqual(at);
      found += 1;
    }
    expect(found).toBeGreaterThan(3 * edge.total - 30);
  });

  test('a cell is said as a whole, and never says a sentence twice', () => {
    const twin = twinOf({ making, step: all.at(0) }, speech);
    for (const row of twin.rows) {
      const said = sayCell(row.cell(0));
      const sentences = said.split(/(?<=\.) /);
      expect(new Set(sentences).size, said).toBe(sentences.length);
      expect(said).toMatch(/^(Front|Foundation|Edging), .*\.$/);
    }
  });
});
