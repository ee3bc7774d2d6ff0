/**
 * Reading a length, a weight or a price as people type it: either decimal sign, fractions of an inch, a unit behind it.
 *
 * Rule: text stays as typed; mm are worked out anew each time, and 1 in is 25.4 mm exactly. What could be read in two
 * ways is not read.
 */

export type LengthUnit = 'cm' | 'inch';

export type ReadDecimal =
  | { ok: true; value: number }
  /** `ambiguous`: "1,250" may be a thousand or one and a quarter. */
  | { ok: false; code: 'empty' | 'not-a-length' | 'several' | 'ambiguous' };

const unseen = /[\u00ad\u061c\u200b-\u200f\u202a-\u202e\u2060-\u2069\ufeff]/g;
const vulgar: Record<string, string> = {
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
  '⅓': '1/3',
  '⅔': '2/3',
};
const fractionSigns = new RegExp(`[${Object.keys(vulgar).join('')}]`, 'g');

const unitsBehind: [pattern: RegExp, mm: number][] = [
  [/\s*(mm|millimet(re|er)s?)\.?$/i, 1],
  [/\s*(cm|centimet(re|er)s?)\.?$/i, 10],
  [/\s*(in|inch|inches|"|″|”|'')\.?$/i, 25.4],
  [/\s*(yd|yards?)\.?$/i, 914.4],
  [/\s*(m|met(re|er)s?)\.?$/i, 1000],
];

const plainly = (text: string): string =>
  text
    .replace(fractionSigns, (sign) => ` ${vulgar[sign]}`)
    .normalize('NFKC')
    .replace(unseen, '')
    .replace(/\u2044/g, '/')
    .replace(/\s+/g, ' ')
    .trim();

/** A decimal number, or a whole number with a fraction. `most` tells a thousand from a decimal where only one can be. */
export function readDecimal(text: string, most: number): ReadDecimal {
  const plain = plainly(text);
  if (plain === '') return { ok: false, code: 'empty' };
  const fraction = /^(?:(\d+)[ -])?(\d+)\/(\d+)$/.exec(plain);
  if (fraction) {
    const [, whole = '0', above, below] = fraction;
    const value = Number(whole) + Number(above) / Number(below);
    return Number.isFinite(value) ? { ok: true, value } : { ok: false, code: 'not-a-length' };
  }
  const number = /^(\d*)(?:([.,])(\d+))?$/.exec(plain);
  if (!number) return { ok: false, code: /\d[^\d.,]+\d/.test(plain) ? 'several' : 'not-a-length' };
  const [, whole = '', , decimals] = number;
  if (decimals === undefined) return { ok: true, value: Number(whole) };
  const value = Number(`${whole || '0'}.${decimals}`);
  const couldBeThousands =
    decimals.length === 3 && /^[1-9]\d{0,2}$/.test(whole) && Number(whole + decimals) <= most;
  return couldBeThousands ? { ok: false, code: 'ambiguous' } : { ok: true, value };
}

/** A length in mm: in the unit behind it, or else in the unit that the field is in. `most` in mm. */
export function readLength(text: string, unit: LengthUnit, most = 20_000): ReadDecimal {
  const plain = plainly(text);
  const behind = unitsBehind.find(([pattern]) => pattern.test(plain));
  const mm = behind?.[1] ?? (unit === 'cm' ? 10 : 25.4);
  const read = readDecimal(behind ? plain.replace(behind[0], '') : plain, most / mm);
  // Eighths of an inch written as decimals are no thousands.
  if (
    !read.ok &&
    read.code === 'ambiguous' &&
    mm === 25.4 &&
    /[.,](125|375|625|875)$/.test(plain.replace(/[^\d.,]+$/, ''))
  )
    return readLength(plain.replace(/[.,](\d{3})/, '.$10'), unit, most);
  return read.ok ? { ok: true, value: read.value * mm } : read;
}

/**
 * A field's text keeps the unit it was typed in, so that a change of units changes nothing: typed without one, the unit
 * is written behind a no-break space, which nobody types.
 */
const marks: Record<LengthUnit, string> = { cm: '\u00a0cm', inch: '\u00a0in' };

export const withUnit = (typed: string, unit: LengthUnit): string =>
  typed.trim() === '' || unitsBehind.some(([pattern]) => pattern.test(plainly(typed)))
    ? typed
    : typed + marks[unit];

/** The text as the person typed it, and in which unit that was, where they named none. */
export function withoutUnit(text: string): { typed: string; unit: LengthUnit | null } {
  for (const unit of ['cm', 'inch'] as const)
    if (text.endsWith(marks[unit])) return { typed: text.slice(0, -marks[unit].length), unit };
  return { typed: text, unit: null };
}
