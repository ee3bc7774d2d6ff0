import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cellsAround, MOST_AROUND, outline, sideAngle } from '../../src/controls/around.ts';
import type { Hand } from '../../src/state/snapshot.ts';

const HANDS: Hand[] = ['right', 'left'];
const figures = Array.from({ length: MOST_AROUND - 2 }, (_, index) => index + 3);

describe('sides around a picture', () => {
  test.each(figures.flatMap((count) => HANDS.map((hand) => [count, hand] as const)))(
    '%i sides, %s hand: every side has a place of its own',
    (count, hand) => {
      const cells = cellsAround(count, hand);
      expect(cells.map(({ side }) => side).sort((a, b) => a - b)).toEqual(range(count));
      expect(new Set(cells.map(({ column, row }) => `${column} ${row}`)).size).toBe(count);
    },
  );

  test.each([
    ['right', ['middle', 'left', 'middle', 'right'], [1, 3, 5, 3]],
    ['left', ['middle', 'right', 'middle', 'left'], [1, 3, 5, 3]],
  ] as const)('four sides run from the top, %s hand', (hand, columns, rows) => {
    const cells = [...cellsAround(4, hand)].sort((a, b) => a.side - b.side);
    expect(cells.map(({ column }) => column)).toEqual(columns);
    expect(cells.map(({ row }) => row)).toEqual(rows);
  });

  test('the other hand is the mirror image, and its mirror image is the first', () => {
    for (const count of figures)
      for (let side = 0; side < count; side++) {
        const right = sideAngle(side, count, 'right');
        const left = sideAngle(side, count, 'left');
        expect(Math.cos(left)).toBeCloseTo(-Math.cos(right), 9);
        expect(Math.sin(left)).toBeCloseTo(Math.sin(right), 9);
      }
  });
});

describe('the outline of the picture', () => {
  test('it fills its box in one direction and stays inside in both', () => {
    const counts = fc.array(fc.integer({ min: 1, max: 100_000 }), { minLength: 3, maxLength: 24 });
    fc.assert(
      fc.property(counts, fc.constantFrom(...HANDS), (sides, hand) => {
        const points = outline(sides, hand, 160, 100);
        const xs = points.map(({ x }) => x);
        const ys = points.map(({ y }) => y);
        const wide = Math.max(...xs) - Math.min(...xs);
        const high = Math.max(...ys) - Math.min(...ys);
        expect(Math.min(...xs)).toBeGreaterThanOrEqual(-1e-9);
        expect(Math.min(...ys)).toBeGreaterThanOrEqual(-1e-9);
        expect(wide).toBeLessThanOrEqual(160 + 1e-9);
        expect(high).toBeLessThanOrEqual(100 + 1e-9);
        expect(Math.abs(wide - 160) < 1e-6 || Math.abs(high - 100) < 1e-6).toBe(true);
      }),
    );
  });

  test('a long panel is drawn long and a tall one tall', () => {
    const size = (counts: number[]) => {
      const points = outline(counts, 'right', 100, 100);
      const span = (values: number[]) => Math.max(...values) - Math.min(...values);
      return span(points.map(({ x }) => x)) / span(points.map(({ y }) => y));
    };
    expect(size([64, 40, 64, 40])).toBeCloseTo(1.6, 6);
    expect(size([40, 64, 40, 64])).toBeLessThan(1);
    expect(size([400, 4, 400, 4])).toBeCloseTo(2.2, 6);
  });
});

const range = (count: number): number[] => Array.from({ length: count }, (_, index) => index);
