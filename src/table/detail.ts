/**
 * How much is drawn at which size. All numbers are CSS px a stitch, on a screen of one device px a CSS px;
 * denser screens show smaller things clearly.
 */
import type { Detail } from './cells.ts';
import { Glyph, Look, type Marks, type Part } from './draw-list.ts';

/** Below this a stitch is too small to be told from its neighbour: parts with ribbons show those. */
export const RIBBON_BELOW_PX = 4;
/** From here on both loops, plies and folds can be seen. */
export const FULL_FROM_PX = 14;
/** A mark that says something is never smaller than this, however far out the view is. */
export const LEAST_TELLING_PX = 13;
/** Corners on a ribbon. */
export const LEAST_CORNER_PX = 6;

export type Level = 'ribbon' | Detail;

/** How much smaller a dense screen shows things clearly; eyes do not go along for ever. */
const clearer = (density: number): number => Math.min(1.6, Math.max(1, density));

/** What a part shows at `px`: its ribbons, or its marks in one of two drawings. Some parts have ribbons only. */
export function levelOf(part: Part, px: number, density: number): Level {
  const size = px * clearer(density);
  if (part.ribbons.length > 0 && (size < RIBBON_BELOW_PX || part.marks.count === 0)) return 'ribbon';
  return size < FULL_FROM_PX ? 'small' : 'full';
}

/** Whether something limited to a range of sizes shows at `px`. */
export const showsAt = (limits: { minPx?: number; maxPx?: number }, px: number): boolean =>
  px >= (limits.minPx ?? 0) && px <= (limits.maxPx ?? Infinity);

/** Whether a mark tells something that must be seen from afar. */
export const isTelling = (marks: Marks, index: number): boolean =>
  marks.look[index] !== Look.plain || marks.glyph[index] === Glyph.hollow;

export type Telling = { looks: number[]; corners: number[] };

const told = new WeakMap<Marks, Telling>();

/** Marks that stay on a ribbon: those that tell something, and corners. Indices, ascending; found once. */
export function tellingMarks(marks: Marks): Telling {
  let telling = told.get(marks);
  if (telling === undefined) {
    telling = findTelling(marks);
    told.set(marks, telling);
  }
  return telling;
}

function findTelling(marks: Marks): Telling {
  const telling: Telling = { looks: [], corners: [] };
  for (let index = 0; index < marks.count; index++) {
    const glyph = marks.glyph[index];
    if (isTelling(marks, index)) telling.looks.push(index);
    else if (glyph === Glyph.oval || glyph === Glyph.corner) telling.corners.push(index);
  }
  return telling;
}

/**
 * Size factor that keeps a glyph at `leastPx` when a stitch is `px` wide; 1 when it is larger anyway.
 * Rounded up to a power of √2, so that a glyph need not be placed anew for every little zoom.
 */
export function atLeast(leastPx: number, px: number): number {
  if (px >= leastPx) return 1;
  return 2 ** (Math.ceil(2 * Math.log2(leastPx / px)) / 2);
}
