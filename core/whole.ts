/** Whole numbers: the only numbers there are in a stitch count. */

export const isWhole = (value: number | null | undefined, min: number, max: number): value is number =>
  typeof value === 'number' && Number.isInteger(value) && value >= min && value <= max;

/** Remainder that is never negative. */
export const mod = (value: number, by: number): number => ((value % by) + by) % by;

export const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

/** Index of the last entry of an ascending list that is not above `value`; -1 where all are. */
export function lastNotAbove(ascending: ArrayLike<number>, value: number): number {
  let low = 0;
  let high = ascending.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((ascending[middle] as number) <= value) low = middle + 1;
    else high = middle;
  }
  return low - 1;
}
