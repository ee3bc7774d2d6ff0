/** How the strip will lie beside the cloth: one comparison a side, with its sign. */
import { describe, expect, it } from 'vitest';
import { type ClothInput, cutCloth, type SideLies } from '../../../core/cloth/index.ts';

const counts = { front: [80, 60, 80, 60], strip: [78, 58, 78, 58], edging: [80, 60, 80, 60] };
const input: ClothInput = {
  panel: { shape: 'rectangle', width: 400, height: 300 },
  depth: 16,
  rule: 'exact',
  pitch: { front: 5, top: 5 },
  counts,
};

function liesOf(changes: Partial<ClothInput>): SideLies[] {
  const result = cutCloth({ ...input, ...changes });
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value.lies;
}

const topOnSeam = (lies: SideLies[], side = 0) =>
  lies[side]?.comparisons.find(({ what }) => what === 'top-on-seam');

describe('a side of the strip', () => {
  it('is count times pitch, beside the seam and the cut edge', () => {
    const [side] = liesOf({});
    expect(side).toMatchObject({
      side: 0,
      top: 390,
      base: 390,
      edging: 400,
      frontStitches: 400,
      seam: 400,
      cut: 432,
      back: 400,
    });
  });

  // [what, pitch of the tops, percent, stitches, how it lies]: worked out by hand from 78 stitches along 400 mm.
  const rows: [string, number, number, number, string][] = [
    ['a little short', 5, -2.5, -2, 'fits'],
    ['stretched', 4.5, -12.25, -10.89, 'stretched'],
    ['slack within the book’s 10 %', 5.5, 7.25, 5.27, 'fits'],
    ['slack beyond it', 6, 17, 11.33, 'slack'],
  ];
  it.each(rows)('%s', (_what, top, percent, stitches, lies) => {
    const found = topOnSeam(liesOf({ pitch: { front: 5, top } }));
    expect(found?.percent).toBeCloseTo(percent, 2);
    expect(found?.stitches).toBeCloseTo(stitches, 2);
    expect(found?.lies).toBe(lies);
    expect(found?.mend === undefined).toBe(lies === 'fits');
  });

  it('that is stretched is told the pitch and the count that would fit', () => {
    const found = topOnSeam(liesOf({ pitch: { top: 4.5 } }));
    expect(found?.mend).toEqual({ pitch: expect.closeTo(400 / 78, 9), count: 89 });
  });

  it('has a base of its own where that was measured', () => {
    expect(liesOf({ pitch: { top: 5, base: 5.4 } })[1]).toMatchObject({ top: 290, base: 58 * 5.4 });
  });

  it('is told as a range where the panel’s lengths are rough', () => {
    expect(topOnSeam(liesOf({ give: 6 }))?.give).toBeCloseTo(1.5, 9);
    expect(topOnSeam(liesOf({ give: 6 }), 1)?.give).toBeCloseTo(2, 9);
  });

  it('has nothing to compare without a pitch or counts, and says no length', () => {
    expect(liesOf({ pitch: {} })[0]).toMatchObject({ top: null, base: null, comparisons: [] });
  });
});

describe('the allowance that would fit', () => {
  it('makes the seam as long as all the tops together', () => {
    const first = cutCloth(input);
    const allowance = (first.ok && first.value.fittingAllowance) as number;
    const result = cutCloth({ ...input, rule: { allowance } });
    const lies = result.ok ? result.value.lies : [];
    const sum = (of: (side: SideLies) => number): number => lies.reduce((total, side) => total + of(side), 0);
    expect(sum(({ seam }) => seam)).toBeCloseTo(
      sum(({ top }) => top as number),
      6,
    );
  });
});
