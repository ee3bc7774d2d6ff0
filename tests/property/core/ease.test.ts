import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ease } from '../../../core/index.ts';
import { runs } from './panels.ts';

/** A side and how many stitches are eased along it: few, some, or as many as it has. */
const eased = fc
  .oneof(
    { weight: 4, arbitrary: fc.integer({ min: 1, max: 200 }) },
    { weight: 1, arbitrary: fc.integer({ min: 1, max: 100_000 }) },
  )
  .chain((n) =>
    fc.tuple(
      fc.constant(n),
      fc.oneof(fc.integer({ min: 1, max: Math.min(n, 12) }), fc.integer({ min: 1, max: Math.min(n, 2000) })),
    ),
  );

const gapsOf = (places: number[]): number[] =>
  places.slice(1).map((place, i) => place - (places[i] as number));

/** Stitches kept between an eased place and a corner, where there is room (our own choice). */
const kept = 3;

describe('ease', () => {
  it('gives as many places as are asked for, in order, all on the side', () => {
    fc.assert(
      fc.property(eased, ([n, d]) => {
        const places = ease(n, d);
        expect(places).toHaveLength(d);
        expect(places.every((place) => Number.isInteger(place) && place >= 0 && place < n)).toBe(true);
        expect(gapsOf(places).every((gap) => gap > 0)).toBe(true);
      }),
      runs,
    );
  });

  it('never crowds: no two places closer than floor(n / d) - 1', () => {
    fc.assert(
      fc.property(eased, ([n, d]) => {
        const least = Math.floor(n / d) - 1;
        expect(gapsOf(ease(n, d)).filter((gap) => gap < least)).toEqual([]);
      }),
      runs,
    );
  });

  it('is symmetric about the middle', () => {
    fc.assert(
      fc.property(eased, ([n, d]) => {
        const places = ease(n, d);
        const mirrored = places.map((place) => n - 1 - place).reverse();
        // An odd place on an even side has two middles to choose from.
        const middle = d % 2 === 1 && n % 2 === 0 ? (d - 1) / 2 : -1;
        const without = (list: number[]): number[] => list.filter((_, i) => i !== middle);
        expect(without(places)).toEqual(without(mirrored));
        if (middle >= 0) expect(places[middle]).toBe(n / 2 - 1);
      }),
      runs,
    );
  });

  it('keeps 3 stitches from a corner where the side is long enough', () => {
    let long = 0;
    fc.assert(
      fc.property(eased, ([n, d]) => {
        // Room: between the kept stitches all places fit with their spacing.
        const spacing = Math.max(1, Math.floor(n / d) - 1);
        const isLong = n - 2 * kept >= 1 + (d - 1) * spacing;
        if (!isLong) return;
        long++;
        const places = ease(n, d);
        expect(Math.min(places[0] as number, n - 1 - (places.at(-1) as number))).toBeGreaterThanOrEqual(kept);
      }),
      runs,
    );
    expect(long).toBeGreaterThan(runs.numRuns / 2);
  });

  it('spreads evenly: of the stretches between places none is more than 2 longer than another', () => {
    fc.assert(
      fc.property(eased, ([n, d]) => {
        const gaps = gapsOf(ease(n, d));
        if (gaps.length > 0) expect(Math.max(...gaps) - Math.min(...gaps)).toBeLessThanOrEqual(2);
      }),
      runs,
    );
  });

  it('uses every stitch as often as any other, but one, where more are eased than there are', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 40 }), fc.integer({ min: 1, max: 200 }), (n, d) => {
        const times = new Array<number>(n).fill(0);
        for (const place of ease(n, d)) times[place] = (times[place] as number) + 1;
        expect(times.reduce((all, one) => all + one, 0)).toBe(d);
        expect(Math.max(...times) - Math.min(...times)).toBeLessThanOrEqual(1);
      }),
      runs,
    );
  });
});
