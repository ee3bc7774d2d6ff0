/**
 * Strokes on the GPU: each straight piece is a stretched white bar, each joint a disc, all in one draw call.
 */
import { Particle, type ParticleContainer } from 'pixi.js';
import type { Point } from '../view/camera.ts';
import type { LineShape, LineTexture } from './line-texture.ts';
import { at, count, type Stroke } from './strokes.ts';

/** Sizes of the screen that lines depend on: CSS px a stitch, device px a CSS px, and what to count from. */
export type LineScale = { px: number; density: number; originX: number; originY: number };

/** A shape of the line texture, stretched: its middle and its sizes in world units. */
type LinePiece = {
  shape: LineShape;
  colour: string;
  middle: Point;
  angle: number;
  length: number;
  width: number;
};

/** Replaces the content of `container` by `strokes`. */
export function fillLines(
  container: ParticleContainer,
  strokes: readonly Stroke[],
  texture: LineTexture,
  scale: LineScale,
): void {
  const devicePx = scale.px * scale.density;
  const pieces = strokes.flatMap((stroke) => (stroke.filled ? [wedge(stroke)] : piecesOf(stroke, scale.px)));
  container.particleChildren = pieces.map(({ shape, colour, middle, angle, length, width }) => {
    const cell = texture.cell(shape, width * devicePx);
    return new Particle({
      texture: cell.texture,
      anchorX: 0.5,
      anchorY: 0.5,
      x: middle.x - scale.originX,
      y: middle.y - scale.originY,
      rotation: angle,
      scaleX: length / cell.insideX,
      scaleY: width / cell.insideY,
      tint: colour,
    });
  });
  container.texture = texture.blank;
  container.update();
}

/** A bar for each straight piece of a stroke and, where they would be seen, a disc for each joint. */
function piecesOf({ points, closed, colour, widthPx }: Stroke, px: number): LinePiece[] {
  const corners = count(points);
  if (corners < 2) return [];
  const width = widthPx / px;
  const pieces: LinePiece[] = [];
  for (let index = 0; index < (closed ? corners : corners - 1); index++) {
    const [a, b] = [at(points, index), at(points, (index + 1) % corners)];
    const length = Math.hypot(b.x - a.x, b.y - a.y);
    pieces.push({ shape: 'bar', colour, middle: middleOf(a, b), angle: angleOf(a, b), length, width });
  }
  if (widthPx <= 1.2) return pieces;
  for (let index = 0; index < corners; index++) {
    pieces.push({ shape: 'disc', colour, middle: at(points, index), angle: 0, length: width, width });
  }
  return pieces;
}

/** A filled triangle: its first and last point are the base. */
function wedge({ points, colour }: Stroke): LinePiece {
  const [a, tip, c] = [at(points, 0), at(points, 1), at(points, 2)];
  const base = middleOf(a, c);
  return {
    shape: 'wedge',
    colour,
    middle: middleOf(tip, base),
    angle: angleOf(base, tip),
    length: Math.hypot(tip.x - base.x, tip.y - base.y),
    width: Math.hypot(c.x - a.x, c.y - a.y),
  };
}

const middleOf = (a: Point, b: Point): Point => ({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 });

/** Direction from one point to another. */
const angleOf = (a: Point, b: Point): number => Math.atan2(b.y - a.y, b.x - a.x);
