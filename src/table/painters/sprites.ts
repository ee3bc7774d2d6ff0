/**
 * Pictures of cells, each painted once at a size: the screen's flat painter copies them instead of painting every
 * path of every stitch anew, which takes five times as long.
 */
import { paintLayers } from '../glyphs/brush.ts';
import { type CellKey, cellBounds, cellLayers, cellPlan } from '../glyphs/cells.ts';
import type { Inks } from '../glyphs/inks.ts';

/** A picture, and where it lies around its mark, in stitch widths. */
export type Sprite = { image: ImageBitmap; x: number; y: number; width: number; height: number };

export type Sprites = {
  /** @param px canvas px a stitch width. Null where it would be too large to keep. */
  of(cell: CellKey, px: number): Sprite | null;
  setInks(inks: Inks): void;
};

/** Canvas px a stitch width: above this few are in sight, and they are painted. */
const MOST_PX = 128;
/** Kept at most; then all are made anew. A zoom through every size makes several hundred. */
const MOST_KEPT = 500;

export function openSprites(firstInks: Inks): Sprites {
  let inks = firstInks;
  const kept = new Map<string, Sprite>();

  function forget(): void {
    for (const { image } of kept.values()) image.close();
    kept.clear();
  }

  function paint(cell: CellKey, unit: number): Sprite {
    const plan = cellPlan(cell);
    const [x0, y0, x1, y1] = cellBounds(plan);
    const width = Math.ceil((x1 - x0) * unit) + 2;
    const height = Math.ceil((y1 - y0) * unit) + 2;
    const canvas = new OffscreenCanvas(width, height);
    const context = canvas.getContext('2d')!;
    const { layers, tone } = cellLayers(plan);
    context.setTransform(unit, 0, 0, unit, 1 - x0 * unit, 1 - y0 * unit);
    paintLayers(context, layers, inks.tones[tone]!);
    return {
      image: canvas.transferToImageBitmap(),
      x: x0 - 1 / unit,
      y: y0 - 1 / unit,
      width: width / unit,
      height: height / unit,
    };
  }

  return {
    of(cell, px) {
      if (px > MOST_PX) return null;
      // Never smaller than it is drawn, and at most half as large again.
      const step = Math.ceil(2 * Math.log2(px));
      const key = `${cell} ${step}`;
      const known = kept.get(key);
      if (known) return known;
      if (kept.size >= MOST_KEPT) forget();
      const sprite = paint(cell, 2 ** (step / 2));
      kept.set(key, sprite);
      return sprite;
    },
    setInks(next) {
      inks = next;
      forget();
    },
  };
}
