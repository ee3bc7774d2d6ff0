/** From a wanted size to counts; what a pattern needs is common practice (multiples, odd or even, equal opposite sides). */
import { describe, expect, it } from 'vitest';
import { type CountsWanted, countsFor, type SideCandidates } from '../../../core/cloth/index.ts';

function found(wanted: Partial<CountsWanted>): SideCandidates[] {
  const result = countsFor({ sides: [400], pitch: 5.2, arms: 2, ...wanted });
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
}

describe('a wanted side', () => {
  // 400 mm at 5.2 mm is 76.9 stitches.
  type Row = [
    what: string,
    wanted: Partial<CountsWanted>,
    below: number | null,
    above: number,
    nearest: number,
  ];
  const rows: Row[] = [
    ['any count', {}, 76, 77, 77],
    ['even', { parity: 'even' }, 76, 78, 76],
    ['odd', { parity: 'odd' }, 75, 77, 77],
    ['a multiple of 6 plus 1', { multiple: { of: 6, plus: 1 } }, 73, 79, 79],
    ['a multiple of 6, even', { multiple: { of: 6, plus: 0 }, parity: 'even' }, 72, 78, 78],
    ['a multiple of 5 plus 2, odd', { multiple: { of: 5, plus: 2 }, parity: 'odd' }, 67, 77, 77],
    ['exactly a count', { pitch: 5 }, 80, 80, 80],
    ['shorter than the arms', { sides: [10] }, null, 3, 3],
  ];
  it.each(rows)('%s', (_what, wanted, below, above, nearest) => {
    const [side] = found(wanted);
    expect(side?.below?.front ?? null).toBe(below);
    expect(side?.above.front).toBe(above);
    expect(side?.nearest.front).toBe(nearest);
  });

  it('is told the size each count gives, and the strip below it', () => {
    expect(found({})[0]?.above).toEqual({
      front: 77,
      length: expect.closeTo(400.4, 9),
      off: expect.closeTo(0.4, 9),
      strip: 75,
    });
    expect(found({})[0]?.below).toEqual({
      front: 76,
      length: expect.closeTo(395.2, 9),
      off: expect.closeTo(-4.8, 9),
      strip: 74,
    });
  });

  it('shares its count with the side that faces it', () => {
    const sides = found({ sides: [400, 300, 410, 290], equalOpposite: true }).map(
      ({ nearest }) => nearest.front,
    );
    expect(sides).toEqual([78, 57, 78, 57]);
  });
});

describe('what no count can be', () => {
  const codes = (wanted: Partial<CountsWanted>): string[] => {
    const result = countsFor({ sides: [400, 300, 200], pitch: 5, arms: 2, ...wanted });
    return result.ok ? [] : result.problems.map(({ code }) => code);
  };
  it('is told all at once', () => {
    expect(
      codes({
        sides: [0, 300, 200],
        pitch: 0,
        multiple: { of: 4, plus: 2 },
        parity: 'odd',
        equalOpposite: true,
      }),
    ).toEqual(['length-too-small', 'length-too-small', 'parity-never', 'no-opposite']);
  });
  it('is not where an odd multiple gives both', () => {
    expect(codes({ multiple: { of: 5, plus: 2 }, parity: 'odd' })).toEqual([]);
  });
});
