/**
 * White shapes that lines are made of, tinted when used. Each exists in several sizes and the nearest is
 * taken, so that its rim is about one device pixel soft: smooth slanted lines without multisampling.
 */
import { CanvasSource, Rectangle, Texture } from 'pixi.js';

export type LineShape = 'bar' | 'disc' | 'wedge';

/** A shape to stretch: `inside` is how many texture px of the frame the shape itself takes, per side. */
type LineCell = { texture: Texture; insideX: number; insideY: number };

export type LineTexture = {
  source: CanvasSource;
  blank: Texture;
  /** The cell for a shape `thick` device px thick. */
  cell(shape: LineShape, thick: number): LineCell;
  destroy(): void;
};

/** Thicknesses at hand, in texture px. A bar is stretched along its way, so it has no soft ends. */
const SIZES = [1, 2, 3, 4, 6, 8, 12, 16, 24, 32, 48, 64];
const BAR_LENGTH = 4;

export function openLineTexture(): LineTexture {
  const canvas = document.createElement('canvas');
  canvas.width = 512;
  canvas.height = 256;
  const context = canvas.getContext('2d')!;
  context.fillStyle = '#ffffff';
  const source = new CanvasSource({ resource: canvas, scaleMode: 'linear' });
  const cells = new Map<string, LineCell>();
  let x = 2;
  const cut = (key: string, frame: Rectangle, insideX: number, insideY: number) => {
    cells.set(key, { texture: new Texture({ source, frame }), insideX, insideY });
  };
  for (const size of SIZES) {
    context.fillRect(x, 2, BAR_LENGTH + 4, size);
    cut(`bar${size}`, new Rectangle(x + 2, 1, BAR_LENGTH, size + 2), BAR_LENGTH, size);
    context.beginPath();
    context.arc(x + size / 2, 80 + size / 2, size / 2, 0, 2 * Math.PI);
    context.fill();
    cut(`disc${size}`, new Rectangle(x - 1, 79, size + 2, size + 2), size, size);
    context.beginPath();
    context.moveTo(x, 160);
    context.lineTo(x + size, 160 + size / 2);
    context.lineTo(x, 160 + size);
    context.fill();
    cut(`wedge${size}`, new Rectangle(x - 1, 159, size + 2, size + 2), size, size);
    x += Math.max(size, BAR_LENGTH + 4) + 6;
  }
  source.update();
  return {
    source,
    blank: cells.get('bar8')!.texture,
    cell(shape, thick) {
      const size = SIZES.find((one) => one >= thick * 0.99) ?? SIZES.at(-1)!;
      return cells.get(`${shape}${size}`)!;
    },
    destroy() {
      for (const { texture } of cells.values()) texture.destroy(false);
      source.destroy();
    },
  };
}
