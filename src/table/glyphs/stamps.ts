/**
 * Where the picture of a mark goes: the one place that turns columns of marks into placed cells.
 */

import { Look, type Part } from '../draw-list.ts';
import { type CellKey, cellKey, type Detail } from './cells.ts';
import { GLYPHS } from './glyphs.ts';

/** A cell placed in the world. `sx`, `sy` are stitch widths. */
export type Stamp = {
  cell: CellKey;
  x: number;
  y: number;
  angle: number;
  sx: number;
  sy: number;
};

/** The stamp of mark `index`; `swell` enlarges what must not get too small to see. */
export function stampOf(part: Part, index: number, detail: Detail, swell = 1): Stamp {
  const { marks } = part;
  const glyph = marks.glyph[index]!;
  const look = marks.look[index]!;
  const scale = marks.scale[index]!;
  const length = GLYPHS[glyph as keyof typeof GLYPHS].length;
  // A gap is the room of one stitch, whatever was to stand there.
  const long = length !== undefined && look !== Look.gap;
  return {
    cell: cellKey({ glyph, tone: marks.tone[index]!, look, made: index < part.made, detail }),
    x: marks.x[index]!,
    y: marks.y[index]!,
    angle: marks.angle[index]!,
    sx: (long ? 1 : scale) * swell,
    sy: (long ? scale / length : scale) * swell * (part.mirrored ? -1 : 1),
  };
}
