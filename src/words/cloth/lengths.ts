/**
 * Lengths, weights and counts in sentences. Rounded here and nowhere else: to the mm, or to an eighth of an inch; what is
 * bought, only as finely as shops sell and makers measure.
 */
import type { Units } from '../../state/snapshot.ts';

const mmPerInch = 25.4;
const number = (most: number): Intl.NumberFormat =>
  new Intl.NumberFormat('en-GB', { maximumFractionDigits: most });
const withUnitName = (unit: string, most: number): Intl.NumberFormat =>
  new Intl.NumberFormat('en-GB', { style: 'unit', unit, maximumFractionDigits: most });
const formats = {
  centimetres: withUnitName('centimeter', 1),
  metres: withUnitName('meter', 1),
  grams: withUnitName('gram', 0),
  plain: number(1),
  whole: number(0),
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

const mmPerYard = 914.4;

/** A long length: metres to a tenth, or yards to an eighth. */
export const sayLong = (mm: number, units: Units): string =>
  units === 'cm' ? formats.metres.format(mm / 1000) : `${sayEighths(mm / mmPerYard)}\u00a0yd`;

/** What is bought by the metre or yard and reckoned roughly: to halves up to 10, and whole beyond; up, or down for the low end of a band. */
export function sayRough(mm: number, units: Units, way: 'up' | 'down' = 'up'): string {
  const unit = units === 'cm' ? 1000 : mmPerYard;
  const step = mm < 10 * unit ? unit / 2 : unit;
  const steps = mm / step;
  return sayLong((way === 'up' ? Math.ceil(steps - 1e-9) : Math.floor(steps + 1e-9)) * step, units);
}

/** How closely stitches stand, as it is counted along a ruler: to half a stitch in 10 cm, or in 4 in. */
export function sayGauge(pitch: number, units: Units): string {
  const [along, says] = units === 'cm' ? [100, '10 cm'] : [4 * mmPerInch, '4\u00a0in'];
  const stitches = Math.round((2 * along) / pitch) / 2;
  return `${units === 'cm' ? formats.plain.format(stitches) : sayEighths(stitches)} stitches in ${says}`;
}

/** What a length is off by: "+0.3 cm", "−1/8 in"; empty where a tape shows no difference. */
export function sayOff(mm: number, units: Units): string {
  const isSeen = lengthText(Math.abs(mm), units) !== '0';
  return isSeen ? `${mm > 0 ? '+' : '\u2212'}${sayLength(Math.abs(mm), units)}` : '';
}

/** Kitchen scales show grams. */
export const sayGrams = (grams: number): string => formats.grams.format(grams);

export const sayMoney = (amount: number): string => formats.money.format(amount);

export const sayNumber = (value: number): string => formats.plain.format(value);

/** A band as one number where both ends read the same: "12–15 m". */
export function sayBand([least, most]: readonly [number, number], say: (value: number) => string): string {
  const [low, high] = [say(least), say(most)];
  return low === high ? low : `${low.replace(/\s\S+$/, '')}–${high}`;
}

/** "+4", "−2", whole, with a true minus. */
export const signed = (value: number): string => {
  const text = formats.whole.format(Math.abs(value));
  return text === '0' ? '0' : `${value > 0 ? '+' : '\u2212'}${text}`;
};

/** 1, 2, 4 → "1, 2 and 4". */
export const listed = (numbers: readonly number[]): string =>
  numbers.length < 2 ? `${numbers[0]}` : `${numbers.slice(0, -1).join(', ')} and ${numbers.at(-1)}`;
