/** The photo along the line, straightened: columns along it, rows across it, the line in the middle. */
import { acrossAt, type Line, type Point, pointAt } from './line.ts';

/** RGBA, a byte each, row by row. */
export type Pixels = { width: number; height: number; data: Uint8ClampedArray };

/** Light from 0 to 255, row by row. */
export type Strip = { width: number; height: number; light: Float32Array };

/** `places`: pixels along the line, one a column. `rows`: pixels across it, one a row. */
export type Grid = { places: Float64Array; rows: Float64Array };

/** Evenly spaced numbers. */
export const even = (from: number, step: number, count: number): Float64Array =>
  Float64Array.from({ length: count }, (_, i) => from + i * step);

/** The light at every place of the grid, each a mean over the area it stands for. */
export function straightened(pixels: Pixels, line: Line, { places, rows }: Grid): Strip {
  const width = places.length;
  const height = rows.length;
  const light = new Float32Array(width * height);
  const tall = Math.abs((rows[1] ?? 1) - (rows[0] ?? 0));
  for (let column = 0; column < width; column++) {
    const at = places[column] as number;
    const wide = Math.abs((places[column + 1] ?? at) - (places[column - 1] ?? at)) / 2;
    const parts = Math.min(4, Math.max(1, Math.round(Math.max(wide, tall))));
    for (let part = 0; part < parts; part++) {
      const along = at + ((part + 0.5) / parts - 0.5) * wide;
      const middle = pointAt(line, along);
      const across = acrossAt(line, along);
      for (let row = 0; row < height; row++)
        for (let deep = 0; deep < parts; deep++) {
          const off = (rows[row] as number) + ((deep + 0.5) / parts - 0.5) * tall;
          const seen = lightAt(pixels, { x: middle.x + across.x * off, y: middle.y + across.y * off });
          light[row * width + column] = (light[row * width + column] as number) + seen / (parts * parts);
        }
    }
  }
  return { width, height, light };
}

/** Light between four pixels; outside the photo that of its rim. */
function lightAt({ width, height, data }: Pixels, { x, y }: Point): number {
  const left = Math.min(width - 2, Math.max(0, Math.floor(x)));
  const top = Math.min(height - 2, Math.max(0, Math.floor(y)));
  const right = Math.min(1, Math.max(0, x - left));
  const down = Math.min(1, Math.max(0, y - top));
  const i = (top * width + left) * 4;
  const j = i + width * 4;
  const upper = lightOf(data, i) * (1 - right) + lightOf(data, i + 4) * right;
  const lower = lightOf(data, j) * (1 - right) + lightOf(data, j + 4) * right;
  return upper * (1 - down) + lower * down;
}

/** Luma of ITU-R BT.601. */
const lightOf = (data: Uint8ClampedArray, i: number): number =>
  0.299 * (data[i] as number) + 0.587 * (data[i + 1] as number) + 0.114 * (data[i + 2] as number);

/** The straightened photo in colour, for looking at: the nearest pixel for every place. */
export function straightenedInColour(pixels: Pixels, line: Line, { places, rows }: Grid): Pixels {
  const width = places.length;
  const height = rows.length;
  const from = new Uint32Array(pixels.data.buffer, pixels.data.byteOffset, pixels.width * pixels.height);
  const to = new Uint32Array(width * height);
  for (let column = 0; column < width; column++) {
    const along = places[column] as number;
    const middle = pointAt(line, along);
    const across = acrossAt(line, along);
    for (let row = 0; row < height; row++) {
      const off = rows[row] as number;
      const x = Math.round(middle.x + across.x * off);
      const y = Math.round(middle.y + across.y * off);
      if (x < 0 || y < 0 || x >= pixels.width || y >= pixels.height) continue;
      to[row * width + column] = from[y * pixels.width + x] as number;
    }
  }
  return { width, height, data: new Uint8ClampedArray(to.buffer) };
}
