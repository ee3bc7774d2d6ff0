/** Paints layers of path data on any 2D canvas. The texture, the flat painter and the print use it. */
import type { Ink, Inks } from './inks.ts';
import type { Layer } from './layer.ts';

/** A 2D canvas and the colours to paint on it with. */
export type Brush = { context: CanvasRenderingContext2D; inks: Inks };

const paths = new Map<string, Path2D>();

/** A path from path data, made once. */
function pathOf(d: string): Path2D {
  let path = paths.get(d);
  if (path === undefined) {
    path = new Path2D(d);
    paths.set(d, path);
  }
  return path;
}

/** Paints layers in stitch widths; the context's transform carries place, turn and size. */
export function paintLayers(
  context: CanvasRenderingContext2D | OffscreenCanvasRenderingContext2D,
  layers: readonly Layer[],
  ink: Ink,
): void {
  context.lineCap = 'round';
  context.lineJoin = 'round';
  for (const layer of layers) {
    context.globalAlpha = layer.alpha ?? 1;
    const path = pathOf(layer.d);
    if (layer.fill !== undefined) {
      context.fillStyle = ink[layer.fill];
      context.fill(path, layer.evenOdd ? 'evenodd' : 'nonzero');
    }
    if (layer.stroke !== undefined) {
      context.strokeStyle = ink[layer.stroke];
      context.lineWidth = layer.width ?? 0.05;
      context.setLineDash(layer.dash ? [...layer.dash] : []);
      context.stroke(path);
    }
  }
  context.globalAlpha = 1;
  context.setLineDash([]);
}
