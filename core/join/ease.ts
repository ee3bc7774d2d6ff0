/**
 * Spreading a surplus along a side so that nobody sees it.
 *
 * Rule: even, symmetric about the middle, the odd one in the middle, and away from the corners.
 * Source: joining unequal pieces, "spread; d differences split a side into d + 1 clusters; odd one in the
 * middle" (published guides). The 3 positions kept from a corner are our own choice.
 */
import { isWhole } from '../whole.ts';

const fromCorner = 3;
const mostPlaces = 2_500_000;

/**
 * Places 0…n-1 along a side of `n` at which `d` stitches are eased, ascending.
 * No two are closer than floor(n/d) - 1; symmetric about the middle; none within 3 positions of a corner where
 * that leaves room for the spacing. Where d > n places repeat. Anything but whole numbers gives [].
 */
export function ease(n: number, d: number): number[] {
  if (!isWhole(n, 1, mostPlaces) || !isWhole(d, 1, mostPlaces)) return [];
  if (d > n) return repeated(n, d);
  const first = firstPlace(n, d);
  const span = n - 1 - 2 * first;
  const step = d > 1 ? span / (d - 1) : 0;
  const places = new Array<number>(d);
  for (let i = 0; i < d >> 1; i++) {
    // A hair is added against sums like 2.9999999: the places are whole where the steps are.
    places[i] = Math.floor(first + i * step + 1e-9);
    places[d - 1 - i] = n - 1 - (places[i] as number);
  }
  if (d % 2 === 1) places[d >> 1] = (n - 1) >> 1;
  return places;
}

function firstPlace(n: number, d: number): number {
  const even = (n / d - 1) / 2;
  if (even >= fromCorner || d === 1) return even;
  const spacing = (n - 1 - 2 * fromCorner) / (d - 1);
  return spacing >= 1 && spacing >= Math.floor(n / d) - 1 ? fromCorner : even;
}

function repeated(n: number, d: number): number[] {
  const extra = new Set(ease(n, d % n));
  const places: number[] = [];
  for (let place = 0; place < n; place++) {
    const times = Math.floor(d / n) + (extra.has(place) ? 1 : 0);
    for (let i = 0; i < times; i++) places.push(place);
  }
  return places;
}
