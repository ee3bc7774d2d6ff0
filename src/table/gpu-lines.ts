/**
 * Strokes on the GPU: each straight piece is a stretched white box, each joint a disc, all in one draw call.
 * The soft rim of the box in its mipmaps keeps slanted lines smooth without multisampling.
 */
import { Particle, ParticleContainer } from 'pixi.js';
import type { Atlas, Shape } from './atlas.ts';
import { at, count, type Stroke } from './strokes.ts';

/** A container for strokes; nothing in it changes between two fillings. */
export function lineContainer(): ParticleContainer {
  return new ParticleContainer({
    dynamicProperties: { position: false, rotation: false, vertex: false, uvs: false, color: false },
  });
}

/** Replaces the content of `container` by `strokes`, for a stitch `px` CSS px wide. */
export function fillLines(
  container: ParticleContainer,
  strokes: readonly Stroke[],
  atlas: Atlas,
  px: number,
  originX: number,
  originY: number,
  rounded = true,
): void {
  const particles: Particle[] = [];
  const add = (shape: Shape, colour: string, x: number, y: number, angle: number, w: number, h: number) => {
    const cell = atlas.shape(shape);
    particles.push(
      new Particle({
        texture: cell.texture,
        anchorX: cell.anchorX,
        anchorY: cell.anchorY,
        x: x - originX,
        y: y - originY,
        rotation: angle,
        scaleX: w / cell.unit,
        scaleY: h / cell.unit,
        tint: colour,
      }),
    );
  };
  for (const stroke of strokes) {
    if (stroke.filled) addWedge(stroke, add);
    else addPieces(stroke, px, rounded, add);
  }
  container.particleChildren = particles;
  container.texture = atlas.shape('box').texture;
  container.update();
}

type Add = (shape: Shape, colour: string, x: number, y: number, angle: number, w: number, h: number) => void;

function addPieces(stroke: Stroke, px: number, rounded: boolean, add: Add): void {
  const { points, closed, colour } = stroke;
  const points2 = count(points);
  const width = stroke.widthPx / px;
  const joints = rounded && stroke.widthPx > 1.2;
  const pieces = closed ? points2 : points2 - 1;
  for (let index = 0; index < pieces; index++) {
    const [a, b] = [at(points, index), at(points, (index + 1) % points2)];
    const length = Math.hypot(b.x - a.x, b.y - a.y);
    const angle = Math.atan2(b.y - a.y, b.x - a.x);
    add('box', colour, (a.x + b.x) / 2, (a.y + b.y) / 2, angle, length, width);
    if (joints) add('disc', colour, a.x, a.y, 0, width, width);
  }
  const end = at(points, points2 - 1);
  if (!closed && joints && points2 > 0) add('disc', colour, end.x, end.y, 0, width, width);
}

/** A filled triangle: its first and last point are the base. */
function addWedge(stroke: Stroke, add: Add): void {
  const [a, tip, c] = [at(stroke.points, 0), at(stroke.points, 1), at(stroke.points, 2)];
  const base = { x: (a.x + c.x) / 2, y: (a.y + c.y) / 2 };
  const height = Math.hypot(tip.x - base.x, tip.y - base.y);
  const angle = Math.atan2(tip.y - base.y, tip.x - base.x);
  const width = Math.hypot(c.x - a.x, c.y - a.y);
  add('wedge', stroke.colour, (tip.x + base.x) / 2, (tip.y + base.y) / 2, angle, height, width);
}
