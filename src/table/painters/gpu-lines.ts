/**
 * Strokes on the GPU: each straight piece is a stretched white bar, each joint a disc, all in one draw call.
 */
import { Particle, type ParticleContainer } from 'pixi.js';
import type { LineShape, LineTexture } from './line-texture.ts';
import { at, count, type Stroke } from './strokes.ts';

/** Sizes of the screen that lines depend on: CSS px a stitch, device px a CSS px, and what to count from. */
export type LineScale = { px: number; density: number; originX: number; originY: number };

/** A shape of the line texture, stretched: its middle `x`, `y` and its sizes in world units. */
type LinePiece = {
  shape: LineShape;
  colour: string;
  x: number;
  y: number;
  angle: number;
  length: number;
  width: number;
};

type Add = (piece: LinePiece) => void;

/** Replaces the content of `container` by `strokes`. */
export function fillLines(
  container: ParticleContainer,
  strokes: readonly Stroke[],
  texture: LineTexture,
  scale: LineScale,
): void {
  const particles: Particle[] = [];
  const devicePx = scale.px * scale.density;
  const add: Add = ({ shape, colour, x, y, angle, length, width }) => {
    const cell = texture.cell(shape, width * devicePx);
    particles.push(
      new Particle({
        texture: cell.texture,
        anchorX: 0.5,
        anchorY: 0.5,
        x: x - scale.originX,
        y: y - scale.originY,
        rotation: angle,
        scaleX: length / cell.insideX,
        scaleY: width / cell.insideY,
        tint: colour,
      }),
    );
  };
  for (const stroke of strokes) {
    if (stroke.filled) addWedge(stroke, add);
    else addPieces(stroke, scale.px, add);
  }
  container.particleChildren = particles;
  container.texture = texture.blank;
  container.update();
}

/** A bar for each straight piece of a stroke and, where they would be seen, a disc for each joint. */
function addPieces({ points, closed, colour, widthPx }: Stroke, px: number, add: Add): void {
  const corners = count(points);
  if (corners < 2) return;
  const width = widthPx / px;
  const pieces = closed ? corners : corners - 1;
  for (let index = 0; index < pieces; index++) {
    const [a, b] = [at(points, index), at(points, (index + 1) % corners)];
    const length = Math.hypot(b.x - a.x, b.y - a.y);
    const angle = Math.atan2(b.y - a.y, b.x - a.x);
    add({ shape: 'bar', colour, x: (a.x + b.x) / 2, y: (a.y + b.y) / 2, angle, length, width });
  }
  if (widthPx <= 1.2) return;
  for (let index = 0; index < corners; index++) {
    const { x, y } = at(points, index);
    add({ shape: 'disc', colour, x, y, angle: 0, length: width, width });
  }
}

/** A filled triangle: its first and last point are the base. */
function addWedge({ points, colour }: Stroke, add: Add): void {
  const [a, tip, c] = [at(points, 0), at(points, 1), at(points, 2)];
  const base = { x: (a.x + c.x) / 2, y: (a.y + c.y) / 2 };
  const length = Math.hypot(tip.x - base.x, tip.y - base.y);
  const angle = Math.atan2(tip.y - base.y, tip.x - base.x);
  const width = Math.hypot(c.x - a.x, c.y - a.y);
  add({ shape: 'wedge', colour, x: (tip.x + base.x) / 2, y: (tip.y + base.y) / 2, angle, length, width });
}
