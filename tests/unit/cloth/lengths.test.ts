/** Lengths as people type them, and as they are told back. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readDecimal, readLength, withoutUnit, withUnit } from '../../../src/input/length.ts';
import {
  lengthText,
  sayBand,
  sayEighths,
  sayGauge,
  sayLength,
  sayLong,
  sayRough,
  signed,
} from '../../../src/words/cloth/lengths.ts';

describe('a typed length', () => {
  it.each([
    ['41', 'cm', 410],
    ['41.5', 'cm', 415],
    ['41,5', 'cm', 415],
    [' 41,5 cm ', 'inch', 415],
    ['415mm', 'inch', 415],
    ['1.2 m', 'cm', 1200],
    ['.5', 'cm', 5],
    ['４１', 'cm', 410],
    ['16', 'inch', 406.4],
    ['16 3/4', 'inch', 425.45],
    ['16-3/4', 'inch', 425.45],
    ['16¾', 'inch', 425.45],
    ['16 ¾"', 'cm', 425.45],
    ['3/8', 'inch', 9.525],
    ['⅝ in', 'cm', 15.875],
    ['4.125', 'inch', 104.775],
    ['4,875', 'inch', 123.825],
    ['42,125', 'cm', 421.25],
  ] as const)('%s in a field of %s', (text, unit, mm) => {
    const read = readLength(text, unit);
    expect(read.ok && read.value).toBeCloseTo(mm, 9);
  });

  it.each([
    ['', 'empty'],
    ['wide', 'not-a-length'],
    ['-3', 'not-a-length'],
    ['4 by 5', 'several'],
    ['1,250', 'ambiguous'],
    ['1.250', 'ambiguous'],
    ['3/0', 'not-a-length'],
    ['1.2.3', 'not-a-length'],
  ] as const)('%j is not read: %s', (text, code) => {
    expect(readLength(text, 'cm')).toEqual({ ok: false, code });
  });

  it('of a price has two decimals with either sign', () => {
    expect(readDecimal('4,95', 10_000)).toEqual({ ok: true, value: 4.95 });
    expect(readDecimal('4.95', 10_000)).toEqual({ ok: true, value: 4.95 });
  });
});

describe('units', () => {
  it('stay with what was typed, however often they are changed', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 160 }), fc.constantFrom('cm', 'inch'), (eighths, unit) => {
        const typed = unit === 'cm' ? `${eighths / 4}` : sayEighths(eighths / 8);
        const kept = withUnit(typed, unit);
        expect(withoutUnit(kept)).toEqual({ typed, unit });
        const read = readLength(kept, unit === 'cm' ? 'inch' : 'cm');
        expect(read.ok && read.value).toBeCloseTo(unit === 'cm' ? eighths * 2.5 : (eighths / 8) * 25.4, 9);
      }),
    );
  });

  it('that the person named are left as they are', () => {
    expect(withUnit('16 in', 'cm')).toBe('16 in');
    expect(withoutUnit('16 in')).toEqual({ typed: '16 in', unit: null });
    expect(withUnit('', 'cm')).toBe('');
  });

  it('of a length told and typed back give it again, to the step of a tape', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 19_999 }), fc.constantFrom('cm', 'inch'), (mm, unit) => {
        const read = readLength(lengthText(mm, unit).replace(',', ''), unit);
        const step = unit === 'cm' ? 1 : 25.4 / 8;
        expect(Math.abs((read.ok ? read.value : Number.NaN) - mm)).toBeLessThanOrEqual(step / 2 + 1e-9);
      }),
    );
  });
});

describe('a length told', () => {
  it.each([
    [425, 'cm', '42.5 cm'],
    [425.45, 'inch', '16\u00a03/4 in'],
    [406.4, 'inch', '16 in'],
    [9.525, 'inch', '3/8 in'],
    [25.3, 'inch', '1 in'],
  ] as const)('%d mm in %s', (mm, units, told) => {
    expect(sayLength(mm, units).replaceAll('\u00a0', ' ')).toBe(told.replaceAll('\u00a0', ' '));
  });
  it('may be long, a band, or signed', () => {
    expect(sayLong(1300, 'cm')).toBe('1.3 m');
    expect(sayLong(914.4, 'inch')).toBe('1\u00a0yd');
    expect(sayLong(914.4 * 0.625, 'inch')).toBe('5/8\u00a0yd');
    expect(sayBand([12_000, 15_000], (mm) => sayLong(mm, 'cm'))).toBe('12–15 m');
    expect(sayBand([914.4 * 4.5, 914.4 * 6], (mm) => sayLong(mm, 'inch'))).toBe('4 1/2–6\u00a0yd');
    expect([signed(3.84), signed(-2), signed(0.01)]).toEqual(['+4', '\u22122', '0']);
  });

  it.each([
    [7680, 'cm', 'up', '8 m'],
    [7020, 'cm', 'up', '7.5 m'],
    [22_680, 'cm', 'down', '22 m'],
    [33_050, 'cm', 'up', '34 m'],
    [914.4 * 7.1, 'inch', 'up', '7 1/2 yd'],
    [914.4 * 24.72, 'inch', 'down', '24 yd'],
  ] as const)('may be rough: %d mm in %s, %s', (mm, units, way, told) => {
    expect(sayRough(mm, units, way).replaceAll('\u00a0', ' ')).toBe(told);
  });

  it.each([
    [7.1, 'cm', '14 stitches in 10 cm'],
    [6.9, 'cm', '14.5 stitches in 10 cm'],
    [7.1, 'inch', '14 1/2 stitches in 4 in'],
  ] as const)('%d mm a stitch in %s is counted along a ruler', (pitch, units, told) => {
    expect(sayGauge(pitch, units).replaceAll('\u00a0', ' ')).toBe(told);
  });
});
