/**
 * Ribbons: what a round looks like when a stitch is too small to see. A cased band, dark where it is made
 * and hollow where it is still to come, with ticks as close as can still be told apart; the seam is a ladder.
 */
import { type Part, type Ribbon, Tone } from '../draw-list.ts';
import type { Inks } from '../glyphs/inks.ts';
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

/** Yarns are bands; whatever else runs along a path, like the seam, is a ladder. */
const isBand = ({ tone }: Ribbon): boolean =>
  tone === Tone.front || tone === Tone.edging || tone === Tone.foundation;

function strokesOf(ribbon: Ribbon, made: number, inks: Inks, px: number): Stroke[] {
  if (!isBand(ribbon)) return rungs(ribbon, made - ribbon.firstMark, inks, px);
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

/** Ticks and rungs are at least this far apart, in CSS px. */
const TICK_GAP_PX = 7;
const RUNG_GAP_PX = 3.5;
const STEPS = [1, 2, 5, 10, 50, 100, 500, 1000, 5000, 10_000];

/** How many stitches lie between two strokes that are to be `gapPx` apart, with a stitch `px` wide. */
const stepFor = (px: number, gapPx: number): number => STEPS.find((step) => step * px >= gapPx) ?? 50_000;

/** Ticks stand at counts that a person would choose: every fifth stitch, or every tenth … */
export const tickStep = (px: number): number => Math.max(5, stepFor(px, TICK_GAP_PX));

/** Ticks across the ribbons of a part, cut out of the band in paper, `tickStep` stitches apart. */
export function tickStrokes(part: Part, inks: Inks, px: number): Stroke[] {
  return part.ribbons.filter(isBand).flatMap((ribbon) => {
    const half = Math.max(LEAST_WIDTH_PX, ribbon.width * px) / 2 / px;
    const points = pointsAlong(ribbon, tickStep(px), tickStep(px));
    return points.map((point) => ({ points: acrossAt(point, half), widthPx: 1.1, colour: inks.paper }));
  });
}

/** Length of a rung, in CSS px at least and in stitches at most. */
const RUNG = { leastPx: 3, width: 0.9 };

function rungs(ribbon: Ribbon, made: number, inks: Inks, px: number): Stroke[] {
  const ink = inks.tones[ribbon.tone]!;
  const half = Math.max(RUNG.leastPx / px, RUNG.width) / 2;
  return pointsAlong(ribbon, 0.5, stepFor(px, RUNG_GAP_PX)).map((point) =>
    point.mark < made
      ? { points: acrossAt(point, half), widthPx: 1.3, colour: ink.body }
      : { points: acrossAt(point, half / 3), widthPx: 1.1, colour: ink.ghost },
  );
}

type RibbonPoint = { x: number; y: number; angle: number; mark: number };

/** The line across a path at a point, `half` to either side. */
function acrossAt({ x, y, angle }: RibbonPoint, half: number): number[] {
  const [dx, dy] = [-Math.sin(angle) * half, Math.cos(angle) * half];
  return [x - dx, y - dy, x + dx, y + dy];
}

/** Points on a ribbon from mark `first`, `step` marks apart; the marks lie evenly along it. */
function pointsAlong({ points, markCount }: Ribbon, first: number, step: number): RibbonPoint[] {
  const found: RibbonPoint[] = [];
  const lengths = lengthsAlong(points);
  const each = lengths.at(-1)! / Math.max(1, markCount);
  let piece = 1;
  for (let mark = first; mark < markCount; mark += step) {
    const along = mark * each;
    while (piece < lengths.length - 1 && lengths[piece]! < along) piece++;
    const [a, b] = [at(points, piece - 1), at(points, piece)];
    const share = (along - lengths[piece - 1]!) / (lengths[piece]! - lengths[piece - 1]! || 1);
    const [x, y] = [a.x + (b.x - a.x) * share, a.y + (b.y - a.y) * share];
    found.push({ x, y, angle: Math.atan2(b.y - a.y, b.x - a.x), mark });
  }
  return found;
}
