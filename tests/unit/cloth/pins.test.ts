/** Pins: centres, corners, then from each corner to the centre. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Pin, pinsFor, pinsForRound } from '../../../core/cloth/index.ts';

const told = ({ kind, side, distance, stitch, isBetween }: Pin): string =>
  `${kind} ${side} ${distance.toFixed(1)} ${stitch}${isBetween ? '|' : ''}`;

describe('pins along a side', () => {
  it('of an even count: the centre lies between two stitches', () => {
    expect(pinsFor([{ length: 400, stitches: 80 }], 100).map(told)).toEqual([
      'centre 0 200.0 40|',
      'corner 0 0.0 0',
      'between 0 102.5 21',
      'between 0 297.5 60',
    ]);
  });

  it('of an odd count: the centre is a stitch', () => {
    expect(pinsFor([{ length: 405, stitches: 81 }], 60).map(told)).toEqual([
      'centre 0 202.5 41',
      'corner 0 0.0 0',
      'between 0 62.5 13',
      'between 0 342.5 69',
      'between 0 122.5 25',
      'between 0 282.5 57',
    ]);
  });

  it('come in the order of the trade, all round', () => {
    const sides = [
      { length: 400, stitches: 80 },
      { length: 300, stitches: 59 },
      { length: 400, stitches: 80 },
      { length: 300, stitches: 59 },
    ];
    const kinds = pinsFor(sides, 80).map(({ kind }) => kind);
    expect(kinds.slice(0, 8)).toEqual([...Array(4).fill('centre'), ...Array(4).fill('corner')]);
    expect(new Set(kinds.slice(8))).toEqual(new Set(['between']));
  });

  it('are mirrored about the centre, each at its own stitch, and never two at one', () => {
    fc.assert(
      fc.property(
        fc.record({
          length: fc.double({ min: 20, max: 1500, noNaN: true }),
          stitches: fc.integer({ min: 1, max: 300 }),
        }),
        fc.double({ min: 5, max: 300, noNaN: true }),
        (side, spacing) => {
          const pins = pinsFor([side], spacing).filter(({ kind }) => kind !== 'corner');
          const places = pins.map(({ stitch }) => stitch);
          expect(new Set(places).size).toBe(places.length);
          for (const { kind, stitch, distance } of pins) {
            expect(stitch).toBeGreaterThanOrEqual(1);
            expect(stitch).toBeLessThanOrEqual(side.stitches);
            if (kind !== 'between') continue;
            expect(places).toContain(side.stitches + 1 - stitch);
            expect(distance).toBeCloseTo(((stitch - 0.5) * side.length) / side.stitches, 6);
          }
        },
      ),
    );
  });
});

describe('pins around a round piece', () => {
  it('are quarters, then halfway between, then the rest', () => {
    const pins = pinsForRound({ length: 1200, stitches: 240 }, 80);
    expect(pins.slice(0, 8).map(told)).toEqual([
      'quarter 0 0.0 0|',
      'quarter 0 300.0 60|',
      'quarter 0 600.0 120|',
      'quarter 0 900.0 180|',
      'halfway 0 150.0 30|',
      'halfway 0 450.0 90|',
      'halfway 0 750.0 150|',
      'halfway 0 1050.0 210|',
    ]);
    expect(pins).toHaveLength(16);
  });

  it('pin a stitch where a quarter falls on one', () => {
    expect(pinsForRound({ length: 1000, stitches: 101 }, 500)[1]).toMatchObject({
      stitch: 26,
      isBetween: false,
    });
  });
});
