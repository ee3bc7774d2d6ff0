/**
 * Marks cut into runs with bounds, so that what lies outside a view costs one comparison a run
 * instead of one a stitch. Marks follow their round, so a run of neighbours is compact.
 */

import { type Box, Glyph, type Marks } from '../draw-list.ts';
import { overlaps } from '../view/camera.ts';

export type Chunk = { first: number; count: number; bounds: Box };

/** Marks a chunk: large enough that one draw call pays, small enough that a change re-sends little. */
export const CHUNK_SIZE = 512;

/** How far a mark reaches from its place, in world units. */
function reachOf(marks: Marks, index: number): number {
  const scale = marks.scale[index]!;
  const long = marks.glyph[index] === Glyph.post || marks.glyph[index] === Glyph.bar;
  return long ? scale + 0.5 : scale;
}

/** Cuts marks into chunks, in order. Empty marks give none. */
export function cutChunks(marks: Marks, size = CHUNK_SIZE): Chunk[] {
  const chunks: Chunk[] = [];
  for (let first = 0; first < marks.count; first += size) {
    const count = Math.min(size, marks.count - first);
    chunks.push({ first, count, bounds: boundsOf(marks, first, count) });
  }
  return chunks;
}

function boundsOf(marks: Marks, first: number, count: number): Box {
  const box: Box = { x0: Infinity, y0: Infinity, x1: -Infinity, y1: -Infinity };
  for (let index = first; index < first + count; index++) {
    const reach = reachOf(marks, index);
    const [x, y] = [marks.x[index]!, marks.y[index]!];
    box.x0 = Math.min(box.x0, x - reach);
    box.y0 = Math.min(box.y0, y - reach);
    box.x1 = Math.max(box.x1, x + reach);
    box.y1 = Math.max(box.y1, y + reach);
  }
  return box;
}

/** Indices of the chunks that touch `box`, ascending. */
export function chunksWithin(chunks: readonly Chunk[], box: Box): number[] {
  const found: number[] = [];
  for (let index = 0; index < chunks.length; index++) {
    if (overlaps(chunks[index]!.bounds, box)) found.push(index);
  }
  return found;
}

const known = new WeakMap<Marks, Chunk[]>();

/** The chunks of some marks, cut once for as long as the marks live. */
export function chunksOf(marks: Marks): Chunk[] {
  let chunks = known.get(marks);
  if (chunks === undefined) {
    chunks = cutChunks(marks);
    known.set(marks, chunks);
  }
  return chunks;
}
