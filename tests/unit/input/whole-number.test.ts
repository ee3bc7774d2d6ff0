import { describe, expect, test } from 'vitest';
import { readWhole } from '../../../src/input/whole-number.ts';

describe('a whole number', () => {
  test.each([
    ['58', 58],
    [' 58 ', 58],
    ['\u00a058\u2009', 58],
    ['5８', 58],
    ['５８', 58],
    ['٥٨', 58],
    ['۵۸', 58],
    ['५८', 58],
    ['৫৮', 58],
    ['๕๘', 58],
    ['𝟓𝟖', 58],
    ['𝟝𝟠', 58],
    ['58\u200b', 58],
    ['\u206658\u2069', 58],
    ['58 sts', 58],
    ['58 sts.', 58],
    ['58stitches', 58],
    ['2 ch', 2],
    ['60 htr', 60],
    ['60 sl st', 60],
    ['12 cm', 12],
    ['12"', 12],
    ['-3', -3],
    ['−3', -3],
    [' − 3', -3],
    ['–3', -3],
    ['+3', 3],
    ['-0', 0],
    ['007', 7],
    ['100000', 100_000],
  ])('%j is read as %d', (text, value) => {
    expect(readWhole(text)).toEqual({ ok: true, value });
  });

  test.each([
    ['', 'empty'],
    ['  ', 'empty'],
    ['\u200b', 'empty'],
    ['sts', 'empty'],
    ['abc', 'not-a-number'],
    ['58x', 'not-a-number'],
    ['5²', 'not-a-number'],
    ['⑱', 'not-a-number'],
    ['½', 'not-a-number'],
    ['Ⅻ', 'not-a-number'],
    ['--3', 'not-a-number'],
    ['12.5', 'not-whole'],
    ['12,5', 'not-whole'],
    ['.5', 'not-whole'],
    ['58 36', 'several'],
    ['58 360', 'several'],
    ['58/36', 'several'],
    ['62-63', 'several'],
    ['62–63', 'several'],
    ['1e5', 'several'],
  ])('%j is told as %s', (text, code) => {
    expect(readWhole(text)).toEqual({ ok: false, code });
  });

  test.each([
    ['100,000', '100000'],
    ['100.000', '100000'],
    ['1,200,000', '1200000'],
    ["100'000", '100000'],
    ['١٠٠٬٠٠٠', '100000'],
  ])('%j can mean two things, and is told how to type it', (text, digits) => {
    expect(readWhole(text)).toEqual({ ok: false, code: 'grouped', digits });
  });

  test('every decimal digit of Unicode has its value', () => {
    const digits = Array.from({ length: 0x110000 }, (_, code) => code)
      .filter((code) => code < 0xd800 || code > 0xdfff)
      .map((code) => String.fromCodePoint(code))
      .filter((one) => /\p{Nd}/u.test(one));
    expect(digits.length % 10).toBe(0);
    digits.forEach((digit, i) => {
      expect(readWhole(`1${digit}`), digit).toEqual({ ok: true, value: 10 + (i % 10) });
    });
  });
});
