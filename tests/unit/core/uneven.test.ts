/**
 * Evening out a front, on invented counts. That a panel is squared in its last round by working two in one, or missing
 * one, is common practice, no source.
 */
import { describe, expect, test } from 'vitest';
import { evenOut } from '../../../core/index.ts';

const off = (sides: number[]) => evenOut(sides).map(({ side, by, meant }) => [side, by, meant]);

describe('a front', () => {
  test.each<[string, number[], number[][]]>([
    ['one short of alike', [58, 57, 58, 58], [[1, 1, 58]]],
    ['one too many of alike', [58, 58, 60, 58], [[2, -2, 58]]],
    [
      'two sides off of five',
      [40, 39, 40, 42, 40],
      [
        [1, 1, 40],
        [3, -2, 40],
      ],
    ],
    ['an oblong with one of a pair short', [64, 40, 63, 40], [[2, 1, 64]]],
  ])('%s is evened out', (_name, sides, expected) => {
    expect(off(sides)).toEqual(expected);
  });

  test.each<[string, number[]]>([
    ['alike', [58, 58, 58, 58]],
    ['an oblong', [64, 40, 64, 40]],
    ['meant to differ', [40, 34, 28, 22]],
    ['off by more than a slip', [58, 54, 58, 58]],
    ['of three lengths', [30, 31, 32]],
    ['round', [180]],
  ])('%s is left as it is', (_name, sides) => {
    expect(off(sides)).toEqual([]);
  });

  test('is evened out in the middle of the side, and spread where there is more', () => {
    expect(evenOut([58, 57, 58, 58])[0]?.places).toEqual([28]);
    const [{ places } = { places: [] }] = evenOut([58, 55, 58, 58]);
    expect(places).toHaveLength(3);
    expect(places[1]).toBe(27);
    expect((places[0] ?? 0) + (places[2] ?? 0)).toBe(54);
  });
});
