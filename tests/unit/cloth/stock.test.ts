/** What to buy: yarn, hooks, cloth, pads. Sources stand beside the tables in core and are named here. */
import { describe, expect, it } from 'vitest';
import {
  ballsFor,
  enoughFor,
  hookNames,
  layOut,
  meanOf,
  padFor,
  swatchByWeighing,
  together,
  toTape,
  weightsFor,
  type YarnNeed,
  yarnFor,
  yarnWeights,
} from '../../../core/cloth/index.ts';

const ball = { grams: 50, metres: 125 };

describe('yarn', () => {
  it('by a swatch that was unravelled: stitches in proportion, and a tenth to spare', () => {
    const need = yarnFor({
      part: 'edging',
      stitches: 280,
      edge: 1400,
      rounds: 1,
      swatch: { stitches: 20, unravelled: 900 },
      ball,
    });
    expect(need).toEqual({
      part: 'edging',
      from: 'measured',
      metres: [expect.closeTo(13.86, 6), expect.closeTo(13.86, 6)],
      grams: [expect.closeTo(5.544, 6), expect.closeTo(5.544, 6)],
    });
  });

  it('by a swatch that was weighed', () => {
    const need = yarnFor({
      part: 'foundation',
      stitches: 272,
      edge: 1400,
      rounds: 1,
      swatch: { stitches: 34, grams: 2 },
      ball,
    });
    expect(need.grams).toEqual([expect.closeTo(17.6, 6), expect.closeTo(17.6, 6)]);
    expect(need.metres).toEqual([expect.closeTo(44, 6), expect.closeTo(44, 6)]);
  });

  // Foundation treble 16 × the edge (one maker, read) lies inside its band; dc 9–11 × (others, read) is its band.
  it.each([
    ['foundation' as const, 16],
    ['edging' as const, 9.5],
    ['edging' as const, 10.9],
  ])('of the %s without a measure is a band around what is in print', (part, times) => {
    const need = yarnFor({ part, stitches: 280, edge: 1000, rounds: 1 });
    expect(need.from).toBe('published');
    const [least, most] = need.metres as [number, number];
    expect(least).toBeLessThan(times * 1.1);
    expect(most).toBeGreaterThan(times * 1.1);
    expect(most / least).toBeGreaterThan(1.2);
  });

  it('of the join without a measure is not told at all', () => {
    expect(yarnFor({ part: 'join', stitches: 288, edge: 1400, rounds: 1, ball })).toEqual({
      part: 'join',
      from: 'nothing',
      metres: null,
      grams: null,
    });
  });

  it('of a colour is what its parts take together, in whole balls', () => {
    const needs = ['foundation', 'edging'].map((part) =>
      yarnFor({
        part: part as 'edging',
        stitches: 280,
        edge: 1400,
        rounds: 1,
        swatch: { stitches: 10, unravelled: 3000 },
      }),
    );
    expect(together(needs, 'metres')).toEqual([expect.closeTo(184.8, 6), expect.closeTo(184.8, 6)]);
    expect(ballsFor([184.8, 184.8], ball)).toEqual([2, 2]);
    expect(ballsFor([100, 251], ball)).toEqual([1, 3]);
    expect(
      together([...needs, yarnFor({ part: 'join', stitches: 9, edge: 9, rounds: 1 })], 'metres'),
    ).toBeNull();
  });

  it('that is left is enough for the edging, not for the join', () => {
    const swatch = { stitches: 280, grams: 20 };
    const needs = (['edging', 'join'] as const).map((part) =>
      yarnFor({ part, stitches: 280, edge: 1, rounds: 1, swatch }),
    );
    expect(enoughFor(23, needs).map(({ is }) => is)).toEqual(['enough', 'not-enough']);
  });

  it('that is left is uncertain within a band, and unknown where nothing is known', () => {
    const needs = [
      yarnFor({ part: 'edging', stitches: 280, edge: 1400, rounds: 1, ball }),
      yarnFor({ part: 'join', stitches: 1, edge: 1, rounds: 1 }),
    ];
    const [least, most] = (needs[0] as YarnNeed).grams as [number, number];
    expect(enoughFor((least + most) / 2, needs).map(({ is }) => is)).toEqual(['uncertain', 'unknown']);
  });

  it('is weighed on the work itself', () => {
    expect(swatchByWeighing(62, 55.5, 80)).toEqual({ stitches: 80, grams: 6.5 });
  });
});

describe('yarn weights and hooks', () => {
  // Craft Yarn Council, reprints of 2018 and others (read).
  it.each([
    [1, [21, 32], [2.25, 3.5]],
    [2, [16, 20], [3.5, 4.5]],
    [3, [12, 17], [4.5, 5.5]],
    [4, [11, 14], [5.5, 6.5]],
    [5, [8, 11], [6.5, 9]],
  ])('weight %i is as printed', (number, stitches, hook) => {
    expect(yarnWeights[number]).toMatchObject({ number, stitches, hook });
  });

  it('takes the hooks of lace from the three reprints that agree', () => {
    expect(yarnWeights[0]).toMatchObject({ hook: [1.4, 2.25], counted: 'double-crochet' });
  });

  it('is found from a measured pitch; neighbours may overlap', () => {
    expect(weightsFor(100 / 18).map(({ name }) => name)).toEqual(['fine']);
    expect(weightsFor(100 / 13).map(({ name }) => name)).toEqual(['light', 'medium']);
  });

  it.each([
    [2.25, 'B-1'],
    [4, 'G-6'],
    [4.5, '7'],
    [6.5, 'K-10½'],
    [9, 'M/N-13'],
  ])('%d mm is a US %s (read)', (mm, name) => {
    expect(hookNames.get(mm)).toBe(name);
  });
});

describe('cutting several backs', () => {
  const input = {
    piece: { width: 425, height: 425 },
    count: 4,
    clothWidth: 1400,
    selvedge: 10,
    hasWay: true,
  };
  const laid = (changes: Partial<typeof input & { repeat: number }>) => {
    const result = layOut({ ...input, ...changes });
    return result.ok ? result.value : result.problems.map(({ code }) => code);
  };

  it('fills the width, row by row', () => {
    expect(laid({})).toEqual({ across: 3, rows: 2, isTurned: false, rowStep: 425, length: 850 });
  });
  it('turns pieces where that saves cloth and the pattern has no way', () => {
    const piece = { width: 700, height: 450 };
    expect(laid({ piece, count: 3 })).toMatchObject({ across: 1, rows: 3, length: 1350 });
    expect(laid({ piece, count: 3, hasWay: false })).toMatchObject({
      across: 3,
      rows: 1,
      isTurned: true,
      length: 700,
    });
  });
  it('begins every row at the same place of a pattern that repeats', () => {
    expect(laid({ repeat: 320 })).toMatchObject({ rowStep: 640, length: 640 + 425 + 320 });
  });
  it('says how wide a cloth must be', () => {
    expect(laid({ clothWidth: 400 })).toEqual(['cloth-too-narrow']);
  });
});

describe('pads', () => {
  it('are usually 2.5 cm larger than the cover, and told with the sizes sold around that', () => {
    expect(padFor({ shape: 'rectangle', width: 407, height: 407 }, 'usual', 'cm')).toEqual({
      width: 432,
      height: 432,
      isRound: false,
      sold: [400, 450],
    });
    expect(padFor({ shape: 'rectangle', width: 406.4, height: 406.4 }, 'usual', 'inch').sold).toEqual([
      16 * 25.4,
      18 * 25.4,
    ]);
  });
  it('for a round are round, whatever the square sizes sold', () => {
    expect(padFor({ shape: 'round', diameter: 400 }, 'usual', 'cm')).toEqual({
      width: 425,
      height: 425,
      isRound: true,
      sold: [],
    });
  });
  it('that are not square have no standard size', () => {
    expect(padFor({ shape: 'rectangle', width: 500, height: 300 }, 'full', 'cm')).toEqual({
      width: 550,
      height: 350,
      isRound: false,
      sold: [],
    });
  });
});

describe('measuring', () => {
  it('twice: the mean, and how far it may be off', () => {
    expect(meanOf([410, 412], 'width')).toEqual({ length: 411, give: 1, notes: [] });
  });
  it('that differs is told with both readings', () => {
    expect(meanOf([405, 418], 'width').notes).toEqual([
      { at: 'width', code: 'readings-differ', params: { low: 405, high: 418, off: 13, length: 411.5 } },
    ]);
  });

  it.each([
    [424.2, 'cm', 'up', 425],
    [425, 'cm', 'up', 425],
    [424.6, 'cm', 'nearest', 425],
    [425, 'inch', 'nearest', 16.75 * 25.4],
    [425.5, 'inch', 'up', 16.875 * 25.4],
    [16.75 * 25.4, 'inch', 'up', 16.75 * 25.4],
    [424.9, 'cm', 'down', 424],
  ] as const)('%d mm on a tape in %s, %s', (mm, unit, rounding, told) => {
    expect(toTape(mm, unit, rounding)).toBeCloseTo(told, 9);
  });
});
