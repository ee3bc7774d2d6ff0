/**
 * Reading a whole number as people type it: spaces around it, full-width digits, a unit behind it, all forgiven.
 * The only place where text becomes a number.
 */

export type ReadNumber =
  | { ok: true; value: number }
  | { ok: false; code: 'empty' | 'not-a-number' | 'not-whole' | 'several' };

// Zero-width and formatting characters that come along when numbers are copied.
const unseen = /[\u00ad\u200b-\u200f\u202a-\u202e\u2060-\u2064\ufeff]/g;
const units = /\s*(sts?|stitches|ch|chains?|tr|dc|sc|ftr|fdc)\.?$/i;

export function readWhole(text: string): ReadNumber {
  // Compatibility form turns full-width digits into plain ones.
  const plain = text.normalize('NFKC').replace(unseen, '').trim().replace(units, '').trim();
  if (plain === '') return { ok: false, code: 'empty' };
  if (/^[+-]?\d+$/.test(plain)) return { ok: true, value: Number(plain) };
  if (/^[+-]?\d+[.,]\d+$/.test(plain)) return { ok: false, code: 'not-whole' };
  return { ok: false, code: /\d\D+\d/.test(plain) ? 'several' : 'not-a-number' };
}
