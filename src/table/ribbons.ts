/**
 * Ribbons: what a round looks like when a stitch is too small to see. A cased band, dark where it is made
 * and hollow where it is still to come, with ticks as close as can still be told apart.
 */
import type { Part, Ribbon } from './draw-list.ts';
import type { Inks } from './inks.ts';
import { at, lengthsAlong, type Stroke, stretch } from './strokes.ts';

/** Thinnest ribbon in CSS px, so that its outline keeps its contrast. */
const LEAST_WIDTH_PX = 2.5;
/** From this width on the casing and the inside can be told apart. */
const CASED_FROM_PX = 5;
const CASING_PX = 1.5;

/** Strokes of all ribbons of a part with a stitch `px` wide. */
export function ribbonStrokes(part: Part, inks: Inks, px: number): Stroke[] {
  return part.ribbons.flatMap((ribbon) => strokesOf(ribbon, part.made, inks, px));
}

function strokesOf(ribbon: Ribbon, made: number, inks: Inks, px: number): Stroke[] {
  const share = ribbon.markCount > 0 ? (made - ribbon.firstMark) / ribbon.markCount : 1;
  const cut = Math.min(1, Math.max(0, share));
  const widthPx = Math.max(LEAST_WIDTH_PX, ribbon.width * px);
  const ink = inks.tones[ribbon.tone]!;
  const toCome = stretch(ribbon.points, cut, 1);
  const done = cut === 1 ? ribbon.points : stretch(ribbon.points, 0, cut);
  const strokes: Stroke[] = [];
  if (toCome.length > 0) strokes.push(...band(toCome, widthPx, ink.ghost, ink.pale));
  if (done.length > 0) strokes.push(...band(done, widthPx, ink.line, ink.body));
  return strokes;
}

function band(points: ArrayLike<number>, widthPx: number, casing: string, inside: string): Stroke[] {
  if (widthPx < CASED_FROM_PX) return [{ points, widthPx, colour: casing }];
  return [
    { points, widthPx, colour: casing },
    { points, widthPx: widthPx - 2 * CASING_PX, colour: inside },
  ];
}

/** Ticks are at least this far apart, in CSS px. */
const TICK_GAP_PX = 7;
const STEPS = [5, 10, 50, 100, 500, 1000, 5000, 10_000];

/** How many stitches lie between two ticks with a stitch `px` wide. */
export const tickStep = (px: number): number => STEPS.find((step) => step * px >= TICK_GAP_PX) ?? 50_000;

/** Ticks across the ribbons of a part, cut out of the band in paper, `tickStep` stitches apart. */
export function tickStrokes(part: Part, inks: Inks, px: number): Stroke[] {
  const step = tickStep(px);
  return part.ribbons.flatMap((ribbon) => {
    const half = Math.max(LEAST_WIDTH_PX, ribbon.width * px) / 2 / px;
    return placesAlong(ribbon.points, ribbon.markCount, step).map(({ x, y, angle }) => {
      const [dx, dy] = [-Math.sin(angle) * half, Math.cos(angle) * half];
      return { points: [x - dx, y - dy, x + dx, y + dy], widthPx: 1.1, colour: inks.paper };
    });
  });
}

/** Every `step`th of `marks` even parts of a path, without its ends. */
function placesAlong(points: ArrayLike<number>, marks: number, step: number) {
  const places: { x: number; y: number; angle: number }[] = [];
  const lengths = lengthsAlong(points);
  const each = lengths.at(-1)! / Math.max(1, marks);
  let piece = 1;
  for (let place = step; place < marks; place += step) {
    const along = place * each;
    while (piece < lengths.length - 1 && lengths[piece]! < along) piece++;
    const [a, b] = [at(points, piece - 1), at(points, piece)];
    const share = (along - lengths[piece - 1]!) / (lengths[piece]! - lengths[piece - 1]! || 1);
    places.push({
      x: a.x + (b.x - a.x) * share,
      y: a.y + (b.y - a.y) * share,
      angle: Math.atan2(b.y - a.y, b.x - a.x),
    });
  }
  return places;
}
