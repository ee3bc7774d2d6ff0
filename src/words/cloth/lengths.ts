/** Lengths, weights and counts in sentences. Rounded here and nowhere else: to the mm, or to an eighth of an inch. */
import type { Units } from '../../state/snapshot.ts';

const mmPerInch = 25.4;
const number = (most: number): Intl.NumberFormat =>
  new Intl.NumberFormat('en-GB', { maximumFractionDigits: most });
const withUnitName = (unit: string, most: number): Intl.NumberFormat =>
  new Intl.NumberFormat('en-GB', { style: 'unit', unit, maximumFractionDigits: most });
const formats = {
  centimetres: withUnitName('centimeter', 1),
  metres: withUnitName('meter', 2),
  grams: withUnitName('gram', 0),
  fineGrams: withUnitName('gram', 1),
  millimetres: withUnitName('millimeter', 1),
  plain: number(1),
  yards: number(2),
  money: new Intl.NumberFormat('en-GB', { minimumFractionDigits: 2, maximumFractionDigits: 2 }),
} as const;

/** Inches in whole and eighths: 16.75 → "16 3/4". */
export function sayEighths(inches: number): string {
  const eighths = Math.round(Math.abs(inches) * 8);
  const sign = inches < 0 && eighths > 0 ? '\u2212' : '';
  const whole = Math.floor(eighths / 8);
  const rest = eighths % 8;
  if (rest === 0) return `${sign}${whole}`;
  const by = rest % 4 === 0 ? 4 : rest % 2 === 0 ? 2 : 1;
  const fraction = `${rest / by}/${8 / by}`;
  return whole === 0 ? sign + fraction : `${sign}${whole} ${fraction}`;
}

/** The number alone, as it stands in a field. */
export const lengthText = (mm: number, units: Units): string =>
  units === 'cm' ? formats.plain.format(mm / 10) : sayEighths(mm / mmPerInch);

/** 425 → "42.5 cm" or "16 3/4 in". */
export const sayLength = (mm: number, units: Units): string =>
  units === 'cm' ? formats.centimetres.format(mm / 10) : `${sayEighths(mm / mmPerInch)}\u00a0in`;

/** A size: "42.5 × 42.5 cm". */
export const saySize = (width: number, height: number, units: Units): string =>
  `${lengthText(width, units)} × ${sayLength(height, units)}`;

/** A long length: metres or yards. */
export const sayLong = (mm: number, units: Units): string =>
  units === 'cm' ? formats.metres.format(mm / 1000) : `${formats.yards.format(mm / 914.4)}\u00a0yd`;

/** A length of a stitch: mm, or hundredths of an inch, of which eighths would say nothing. */
export const sayPitch = (mm: number, units: Units): string =>
  units === 'cm' ? formats.millimetres.format(mm) : `${formats.yards.format(mm / mmPerInch)}\u00a0in`;

export const sayGrams = (grams: number): string =>
  (grams < 10 ? formats.fineGrams : formats.grams).format(grams);

export const sayMoney = (amount: number): string => formats.money.format(amount);

export const sayNumber = (value: number): string => formats.plain.format(value);

/** A band as one number where both ends read the same: "12–15 m". */
export function sayBand([least, most]: readonly [number, number], say: (value: number) => string): string {
  const [low, high] = [say(least), say(most)];
  return low === high ? low : `${low.replace(/\s.*$/, '')}–${high}`;
}

/** "+3.8 %", "−2 %", with a true minus. */
export const signed = (value: number, most = 1): string => {
  const text = number(most).format(Math.abs(value));
  return text === '0' ? '0' : `${value > 0 ? '+' : '\u2212'}${text}`;
};

/** 1, 2, 4 → "1, 2 and 4". */
export const listed = (numbers: readonly number[]): string =>
  numbers.length < 2 ? `${numbers[0]}` : `${numbers.slice(0, -1).join(', ')} and ${numbers.at(-1)}`;
