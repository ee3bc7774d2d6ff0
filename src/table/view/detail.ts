/**
 * How much is drawn at which size. All numbers are CSS px a stitch, on a screen of one device px a CSS px;
 * denser screens show smaller things clearly.
 */

import { Glyph, Look, type Marks, type Part } from '../draw-list.ts';
import type { Detail } from '../glyphs/cells.ts';

/** Below this a stitch is too small to be told from its neighbour: parts with ribbons show those. */
const RIBBON_BELOW_PX = 4;
/** From here on both loops, plies and folds can be seen. */
const FULL_FROM_PX = 14;
/**
 * However far out the view is, a place without partner is never smaller than this, in CSS px; nor a stitch
 * too many or a mishap; nor, on a ribbon, a corner.
 */
const LEAST_PX = { gap: 13, look: 9, corner: 6 };

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
const isTelling = (marks: Marks, index: number): boolean =>
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

/** Sizes of a stitch between which no mark needs another size: quarters of an octave, in CSS px. */
export const sizeStep = (px: number): number =>
  px >= LEAST_PX.gap ? LEAST_PX.gap : 2 ** (Math.floor(4 * Math.log2(px)) / 4);

/** Size factor of a mark at a size step: above 1 for one that would be too small to tell what it has to. */
export function swellOf(marks: Marks, index: number, step: number, onRibbon: boolean): number {
  return Math.max(1, leastPxOf(marks, index, onRibbon) / step);
}

function leastPxOf(marks: Marks, index: number, onRibbon: boolean): number {
  if (!isTelling(marks, index)) return onRibbon ? LEAST_PX.corner : 0;
  const gap = marks.look[index] === Look.gap || marks.glyph[index] === Glyph.hollow;
  return gap ? LEAST_PX.gap : LEAST_PX.look;
}
