/**
 * The texture all stitches are cut from: cells painted on one 2D canvas when first needed, shrunk by mipmaps.
 * A canvas outlives a lost context, which a texture rendered on the GPU does not.
 */
import { CanvasSource, Rectangle, Texture } from 'pixi.js';
import { paintLayers } from './brush.ts';
import { type CellKey, cellBounds, cellLayers, cellPlan } from './cells.ts';
import type { Inks } from './inks.ts';

/** A cell in the texture. `unit` is texture px a stitch width; anchors are shares of the frame. */
type Cell = { texture: Texture; unit: number; anchorX: number; anchorY: number };

export type Atlas = {
  cell(key: CellKey): Cell;
  /** Sends what was painted since to the GPU. Call once before a frame. */
  upload(): void;
  /** Goes up when all cells have moved: everything cut from the texture must be cut anew. */
  generation(): number;
  setInks(inks: Inks): void;
  destroy(): void;
};

/** Texture px a stitch width, near and far out; and room around a cell so that mipmaps do not mix neighbours. */
const SMALL_UNIT = 64;
const ROOM = 8;
const FIRST_SIZE = 1024;
const MOST_SIZE = 4096;

/** Opens an atlas; `fullUnit` is the texture px a stitch width of the near drawing. */
export function openAtlas(firstInks: Inks, fullUnit: number): Atlas {
  let inks = firstInks;
  let size = FIRST_SIZE;
  let generation = 0;
  let dirty = false;
  let shelf = { x: 0, y: 0, height: 0 };
  const cells = new Map<CellKey, Cell>();
  const canvas = document.createElement('canvas');
  canvas.width = canvas.height = size;
  let context = canvas.getContext('2d')!;
  let source = makeSource(canvas);

  /** Room for a picture, shelf by shelf; null where the texture is full. */
  function claim(width: number, height: number): { x: number; y: number } | null {
    if (shelf.x + width > size) shelf = { x: 0, y: shelf.y + shelf.height, height: 0 };
    if (shelf.y + height > size) return null;
    const at = { x: shelf.x, y: shelf.y };
    shelf = { x: shelf.x + width, y: shelf.y, height: Math.max(shelf.height, height) };
    return at;
  }

  function clear(): void {
    for (const cell of cells.values()) cell.texture.destroy(false);
    cells.clear();
    shelf = { x: 0, y: 0, height: 0 };
    generation++;
    dirty = true;
    context.setTransform(1, 0, 0, 1, 0, 0);
    context.clearRect(0, 0, size, size);
  }

  /** Doubles the texture, or starts it afresh where it cannot grow. */
  function grow(): void {
    if (size < MOST_SIZE) {
      size *= 2;
      canvas.width = canvas.height = size;
      context = canvas.getContext('2d')!;
      source.destroy();
      source = makeSource(canvas);
    }
    clear();
  }

  function put(
    key: CellKey,
    [x0, y0, x1, y1]: readonly [number, number, number, number],
    unit: number,
    paint: () => void,
  ): Cell {
    const width = Math.ceil((x1 - x0) * unit);
    const height = Math.ceil((y1 - y0) * unit);
    let at = claim(width + 2 * ROOM, height + 2 * ROOM);
    if (at === null) {
      grow();
      at = claim(width + 2 * ROOM, height + 2 * ROOM)!;
    }
    context.setTransform(unit, 0, 0, unit, at.x + ROOM - x0 * unit, at.y + ROOM - y0 * unit);
    paint();
    dirty = true;
    const frame = new Rectangle(at.x + ROOM - 1, at.y + ROOM - 1, width + 2, height + 2);
    const cell = {
      texture: new Texture({ source, frame }),
      unit,
      anchorX: (1 - x0 * unit) / frame.width,
      anchorY: (1 - y0 * unit) / frame.height,
    };
    cells.set(key, cell);
    return cell;
  }

  return {
    cell(key) {
      const known = cells.get(key);
      if (known !== undefined) return known;
      const plan = cellPlan(key);
      const { layers, tone } = cellLayers(plan);
      const unit = plan.detail === 'full' ? fullUnit : SMALL_UNIT;
      return put(key, cellBounds(plan), unit, () => paintLayers(context, layers, inks.tones[tone]!));
    },
    upload() {
      if (dirty) source.update();
      dirty = false;
    },
    generation: () => generation,
    setInks(next) {
      inks = next;
      clear();
    },
    destroy() {
      for (const cell of cells.values()) cell.texture.destroy(false);
      cells.clear();
      source.destroy();
    },
  };
}

const makeSource = (canvas: HTMLCanvasElement): CanvasSource =>
  new CanvasSource({
    resource: canvas,
    autoGenerateMipmaps: true,
    scaleMode: 'linear',
    mipmapFilter: 'linear',
  });
