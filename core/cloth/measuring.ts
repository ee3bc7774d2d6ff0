/** Lengths as they are measured and as they are told. 1 in is 25.4 mm exactly; a length is rounded only to be told. */
import { measuringBand } from './shape.ts';
import type { Note } from './types.ts';

export type LengthUnit = 'cm' | 'inch';

export const mmPerInch = 25.4;

/** Steps that a tape shows: 1 mm, or an eighth of an inch. */
const tapeStep: Record<LengthUnit, number> = { cm: 1, inch: mmPerInch / 8 };

export type Rounding = 'nearest' | 'up' | 'down';

/** A length to the next step of the tape. Cloth is cut *up*: what is too large can be trimmed. */
export function toTape(mm: number, unit: LengthUnit, rounding: Rounding = 'nearest'): number {
  const step = tapeStep[unit];
  const steps = mm / step;
  // A length that lies on a step but for the arithmetic is on it.
  const nearest = Math.sign(steps) * Math.round(Math.abs(steps));
  if (rounding === 'nearest' || Math.abs(steps - nearest) < 1e-6) return nearest * step;
  return (rounding === 'up' ? Math.ceil(steps) : Math.floor(steps)) * step;
}

/** Two readings of one length: their mean, how far each may be off, and whether to measure again. */
export function meanOf(
  readings: readonly number[],
  at: string,
): { length: number; give: number; notes: Note[] } {
  const [low, high] = [Math.min(...readings), Math.max(...readings)];
  const length = readings.reduce((sum, one) => sum + one, 0) / readings.length;
  const off = high - low;
  const notes =
    off > measuringBand(length) ? [{ at, code: 'readings-differ', params: { low, high, off, length } }] : [];
  return { length, give: off / 2, notes };
}
