/**
 * What lies under a pointer: the nearest mark, so that even the smallest stitch can be met.
 */

import { type Box, Glyph, type Marks } from '../draw-list.ts';
import { type Chunk, chunksWithin } from '../painters/chunks.ts';
import type { Point } from './camera.ts';

/** Half the smallest target in CSS px (WCAG 2.2, 2.5.8). */
export const LEAST_REACH_PX = 12;

/** Middle of a mark in the world; posts and bars stand away from their place. */
export function middleOf(marks: Marks, index: number): Point {
  const glyph = marks.glyph[index];
  const long = glyph === Glyph.post || glyph === Glyph.bar;
  const off = long ? marks.scale[index]! / 2 : 0;
  const angle = marks.angle[index]!;
  return { x: marks.x[index]! - Math.sin(angle) * off, y: marks.y[index]! + Math.cos(angle) * off };
}

/** The nearest mark to a world point within `reach` world units, or null. */
export function nearestMark(
  marks: Marks,
  chunks: readonly Chunk[],
  { x, y }: Point,
  reach: number,
): { index: number; distance: number } | null {
  const box: Box = { x0: x - reach, y0: y - reach, x1: x + reach, y1: y + reach };
  let best = -1;
  let least = reach;
  for (const number of chunksWithin(chunks, box)) {
    const chunk = chunks[number]!;
    for (let index = chunk.first; index < chunk.first + chunk.count; index++) {
      const middle = middleOf(marks, index);
      const distance = Math.hypot(middle.x - x, middle.y - y);
      if (distance < least) {
        least = distance;
        best = index;
      }
    }
  }
  return best < 0 ? null : { index: best, distance: least };
}
