/**
 * Reading a whole number as people type it. The only place where text becomes a number.
 *
 * Rule: a digit is a decimal digit of any script, by its value; raised and circled digits are none. Spaces around it,
 * unseen characters and a unit behind it are forgiven. What could be read in two ways is not read.
 */

export type ReadNumber =
  | { ok: true; value: number }
  | { ok: false; code: 'empty' | 'not-a-number' | 'not-whole' | 'several' }
  /** "100,000": a hundred thousand, or a hundred. `digits`: what to type for the first. */
  | { ok: false; code: 'grouped'; digits: string };

// Zero-width and formatting characters that come along when numbers are copied.
const unseen = /[\u00ad\u061c\u200b-\u200f\u202a-\u202e\u2060-\u2069\ufeff]/g;
const units =
  /\s*(sts?|stitch(es)?|chs?|chains?|ss|sl st|dc|sc|htr|hdc|d?tr|ftr|fdc|trebles?|cm|mm|in(ch(es)?)?|["″])\.?$/i;
const signs = /^[+\-\u2010-\u2013\u2212\ufe63\uff0b\uff0d]/;

export function readWhole(text: string): ReadNumber {
  const typed = inPlainDigits(text).replace(unseen, '').trim().replace(units, '').trim();
  if (typed === '') return { ok: false, code: 'empty' };
  const { isMinus, rest: plain } = splitSign(typed);
  // Plus zero: minus zero is a zero.
  if (/^\d+$/.test(plain)) return { ok: true, value: (isMinus ? -Number(plain) : Number(plain)) + 0 };
  if (/^\d{1,3}([.,٬٫'’]\d{3})+$/.test(plain))
    return { ok: false, code: 'grouped', digits: plain.replace(/\D/g, '') };
  if (/^\d*[.,٫]\d+$/.test(plain)) return { ok: false, code: 'not-whole' };
  return { ok: false, code: /\d\D+\d/.test(plain) ? 'several' : 'not-a-number' };
}

/** A text without the sign before it, and whether that was one of the marks used for minus. */
export function splitSign(text: string): { isMinus: boolean; rest: string } {
  const sign = signs.exec(text)?.[0] ?? '';
  return { isMinus: sign !== '' && sign !== '+' && sign !== '\uff0b', rest: text.slice(sign.length).trim() };
}

const inPlainDigits = (text: string): string => text.replace(/\p{Nd}/gu, (digit) => `${digitOf(digit)}`);

/** Unicode keeps the ten digits of a script side by side, from 0 to 9, and sets begin at the start of such a run. */
function digitOf(digit: string): number {
  const code = digit.codePointAt(0) ?? 0;
  let from = code;
  while (/\p{Nd}/u.test(String.fromCodePoint(from - 1))) from--;
  return (code - from) % 10;
}
