/** How much places of a straightened strip look like the marked ones: correlation with their mean. */
import type { Strip } from './strip.ts';

/** Evens out the light: every row less its mean nearby, all by its spread nearby. @param reach columns on each side */
export function evened(strip: Strip, reach: number): Strip {
  const { width, height } = strip;
  const light = new Float32Array(strip.light);
  const spread = new Float64Array(width);
  for (let row = 0; row < height; row++) {
    const line = strip.light.subarray(row * width, (row + 1) * width);
    const mean = meansOf(line, reach);
    for (let x = 0; x < width; x++) {
      const rest = (line[x] as number) - (mean[x] as number);
      light[row * width + x] = rest;
      spread[x] = (spread[x] as number) + rest * rest;
    }
  }
  const near = meansOf(spread, reach * 2);
  for (let row = 0; row < height; row++)
    for (let x = 0; x < width; x++)
      light[row * width + x] =
        (light[row * width + x] as number) / Math.sqrt(1e-3 + (near[x] as number) / height);
  return { width, height, light };
}

/** Mean of every value and its neighbours up to `reach` on each side. */
function meansOf(values: ArrayLike<number>, reach: number): Float64Array {
  const sums = new Float64Array(values.length + 1);
  for (let i = 0; i < values.length; i++) sums[i + 1] = (sums[i] as number) + (values[i] as number);
  return Float64Array.from({ length: values.length }, (_, i) => {
    const from = Math.max(0, i - reach);
    const to = Math.min(values.length, i + reach + 1);
    return ((sums[to] as number) - (sums[from] as number)) / (to - from);
  });
}

/** A piece of a strip with a mean of 0 and a length of 1. `half`: columns on each side of its middle. */
export type Sample = { half: number; values: Float32Array };

/** What stands around a column. Rows far from the line count less. */
function pieceAt({ width, height, light }: Strip, column: number, half: number): Float32Array {
  const values = new Float32Array((2 * half + 1) * height);
  for (let row = 0; row < height; row++)
    for (let dx = -half; dx <= half; dx++) {
      const x = Math.min(width - 1, Math.max(0, column + dx));
      values[row * (2 * half + 1) + dx + half] = light[row * width + x] as number;
    }
  return values;
}

/** The mean of the places, as one piece. */
export function sampleOf(strip: Strip, columns: readonly number[], half: number): Sample {
  const values = new Float32Array((2 * half + 1) * strip.height);
  for (const column of columns) {
    const piece = unit(pieceAt(strip, column, half));
    for (let i = 0; i < values.length; i++) values[i] = (values[i] as number) + (piece[i] as number);
  }
  return { half, values: unit(values) };
}

function unit(values: Float32Array): Float32Array {
  let mean = 0;
  for (const value of values) mean += value / values.length;
  let square = 0;
  for (const value of values) square += (value - mean) ** 2;
  const long = Math.sqrt(square) || 1;
  return values.map((value) => (value - mean) / long);
}

/** Correlation of every column's surroundings with the sample, from -1 to 1. */
export function likeness(strip: Strip, { half, values }: Sample): Float32Array {
  const { width, height, light } = strip;
  const wide = 2 * half + 1;
  const count = wide * height;
  const found = new Float32Array(width);
  for (let column = half; column < width - half; column++) {
    let dot = 0;
    let sum = 0;
    let square = 0;
    for (let row = 0; row < height; row++) {
      const from = row * width + column - half;
      const own = row * wide;
      for (let dx = 0; dx < wide; dx++) {
        const value = light[from + dx] as number;
        dot += value * (values[own + dx] as number);
        sum += value;
        square += value * value;
      }
    }
    found[column] = dot / Math.sqrt(Math.max(1e-6, square - (sum * sum) / count));
  }
  return found;
}
