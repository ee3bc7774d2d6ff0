/** What a camera does to a picture: blur, noise, and the blocks of JPEG. All on one plane of light, in place. */
import type { Chance } from './chance.ts';

export type Plane = { width: number; height: number; light: Float32Array };

/** Three running means, which together come close to a bell curve. @param spread in pixels */
export function blur(plane: Plane, spread: number): void {
  // A mean over 2r + 1 pixels has a variance of r (r + 1) / 3; three of them add up.
  const radius = (Math.sqrt(1 + 4 * spread * spread) - 1) / 2;
  for (let pass = 0; pass < 3; pass++) {
    for (let y = 0; y < plane.height; y++)
      runningMean(plane, { from: y * plane.width, step: 1, count: plane.width }, radius);
    for (let x = 0; x < plane.width; x++)
      runningMean(plane, { from: x, step: plane.width, count: plane.height }, radius);
  }
}

/** Mean over `radius` pixels on each side; the outermost pixel counts by its part. */
function runningMean(
  { light }: Plane,
  { from, step, count }: { from: number; step: number; count: number },
  radius: number,
): void {
  const whole = Math.floor(radius);
  const part = radius - whole;
  const line = Float32Array.from({ length: count }, (_, i) => light[from + i * step] ?? 0);
  const at = (i: number): number => line[Math.min(count - 1, Math.max(0, i))] ?? 0;
  let sum = 0;
  for (let i = -whole; i <= whole; i++) sum += at(i);
  for (let i = 0; i < count; i++) {
    light[from + i * step] = (sum + part * (at(i - whole - 1) + at(i + whole + 1))) / (1 + 2 * radius);
    sum += at(i + whole + 1) - at(i - whole);
  }
}

export function addNoise({ light }: Plane, spread: number, chance: Chance): void {
  for (let i = 0; i < light.length; i++) light[i] = (light[i] ?? 0) + spread * chance.normal();
}

/** Quantisation of light, ITU-T T.81, annex K, table K.1. */
const table = [
  16, 11, 10, 16, 24, 40, 51, 61, 12, 12, 14, 19, 26, 58, 60, 55, 14, 13, 16, 24, 40, 57, 69, 56, 14, 17, 22,
  29, 51, 87, 80, 62, 18, 22, 37, 56, 68, 109, 103, 77, 24, 35, 55, 64, 81, 104, 113, 92, 49, 64, 78, 87, 103,
  121, 120, 101, 72, 92, 95, 98, 112, 100, 103, 99,
];

const cosines = Float64Array.from({ length: 64 }, (_, k) => {
  const [u, x] = [k >> 3, k & 7];
  return (u === 0 ? Math.SQRT1_2 : 1) * 0.5 * Math.cos(((2 * x + 1) * u * Math.PI) / 16);
});

/** @param quality 1 to 100, scaled as is common practice (no source at hand) */
export function jpeg(plane: Plane, quality: number): void {
  const scale = (quality < 50 ? 5000 / quality : 200 - 2 * quality) / 100;
  const steps = table.map((step) => Math.max(1, Math.round(step * scale)));
  for (let y = 0; y + 8 <= plane.height; y += 8)
    for (let x = 0; x + 8 <= plane.width; x += 8) block(plane, y * plane.width + x, steps);
}

function block({ light, width }: Plane, from: number, steps: readonly number[]): void {
  const values = Float64Array.from(
    { length: 64 },
    (_, i) => (light[from + (i >> 3) * width + (i & 7)] ?? 0) - 128,
  );
  const waves = turned(turned(values, false), false);
  const kept = waves.map((wave, i) => Math.round(wave / (steps[i] ?? 1)) * (steps[i] ?? 1));
  const back = turned(turned(kept, true), true);
  for (let i = 0; i < 64; i++) light[from + (i >> 3) * width + (i & 7)] = (back[i] ?? 0) + 128;
}

/** The cosine transform of every row, laid out as columns; done twice it is that of the block. */
function turned(values: Float64Array, isBack: boolean): Float64Array {
  const out = new Float64Array(64);
  for (let row = 0; row < 8; row++)
    for (let u = 0; u < 8; u++) {
      let sum = 0;
      for (let x = 0; x < 8; x++)
        sum += (values[row * 8 + x] ?? 0) * (cosines[isBack ? x * 8 + u : u * 8 + x] ?? 0);
      out[u * 8 + row] = sum;
    }
  return out;
}
