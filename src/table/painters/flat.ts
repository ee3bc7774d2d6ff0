/**
 * The painter without a GPU: the same draw list on a 2D canvas. It also paints the printed picture.
 */

import type { Part } from '../draw-list.ts';
import { type Brush, paintLayers } from '../glyphs/brush.ts';
import { cellLayers, cellPlan } from '../glyphs/cells.ts';
import { type Inks, paperOf } from '../glyphs/inks.ts';
import { type Stamp, stampOf } from '../glyphs/stamps.ts';
import { isEmpty, overlaps, shownBox } from '../view/camera.ts';
import { levelOf, showsAt, sizeStep, swellOf, tellingMarks } from '../view/detail.ts';
import { chunksOf, chunksWithin } from './chunks.ts';
import { leftOf, measureWords, paintWords } from './lettering.ts';
import { growthScale, type Painter, type ViewFrame } from './painter.ts';
import { ribbonStrokes, tickStrokes } from './ribbons.ts';
import { signShape } from './signs.ts';
import { openSprites, type Sprites } from './sprites.ts';
import type { Stroke } from './strokes.ts';
import { anchorOf, labelWords } from './words.ts';

/** What is painted with; without `sprites` every stitch is painted path by path, sharp at any size. */
type FlatBrush = Brush & { sprites?: Sprites };

/** Opens the painter on a 2D canvas of its own. */
export function openFlatPainter(firstInks: Inks): Painter {
  let inks = firstInks;
  let density = 1;
  const canvas = document.createElement('canvas');
  const context = canvas.getContext('2d')!;
  const sprites = openSprites(inks);
  return {
    kind: 'flat',
    canvas,
    resize(width, height, nextDensity) {
      density = nextDensity;
      canvas.width = Math.max(1, Math.round(width * density));
      canvas.height = Math.max(1, Math.round(height * density));
      canvas.style.setProperty('width', `${width}px`);
      canvas.style.setProperty('height', `${height}px`);
    },
    setInks(next) {
      inks = next;
      sprites.setInks(next);
    },
    paint(frames) {
      context.setTransform(1, 0, 0, 1, 0, 0);
      context.clearRect(0, 0, canvas.width, canvas.height);
      for (const frame of frames) paintView({ context, inks, sprites }, frame, density);
    },
    destroy() {
      canvas.remove();
      canvas.width = canvas.height = 0;
    },
  };
}

/** Paints one view into its region; `density` is canvas px a CSS px. */
export function paintView(brush: FlatBrush, frame: ViewFrame, density: number): void {
  const { context, inks } = brush;
  const { region, camera, view } = frame;
  if (isEmpty(region)) return;
  context.save();
  context.setTransform(density, 0, 0, density, 0, 0);
  context.beginPath();
  context.rect(region.x, region.y, region.width, region.height);
  context.clip();
  const scale = camera.px * density;
  const toView = () =>
    context.setTransform(
      scale,
      0,
      0,
      scale,
      (region.x + region.width / 2 - camera.x * camera.px) * density,
      (region.y + region.height / 2 - camera.y * camera.px) * density,
    );
  toView();
  for (const part of [...view.parts].sort((one, other) => one.layer - other.layer)) {
    paintPart(brush, part, frame, density);
  }
  const shapes = frame.signs.map((sign) => signShape(sign, inks, camera.px, paperOf(view, inks)));
  for (const shape of shapes) for (const stroke of shape.strokes) paintStroke(context, stroke, camera.px);
  context.setTransform(density, 0, 0, density, 0, 0);
  const words = [...labelWords(view.labels, frame), ...shapes.flatMap((shape) => shape.words)];
  for (const one of words) {
    const at = anchorOf(one, frame);
    paintWords(brush, one, { x: at.x + leftOf(one, measureWords(context, one).width), y: at.y });
  }
  context.restore();
}

function paintPart(brush: FlatBrush, part: Part, frame: ViewFrame, density: number): void {
  const { context, inks } = brush;
  const { camera } = frame;
  const box = shownBox(frame, 40);
  if (!showsAt(part, camera.px) || !overlaps(part.bounds, box)) return;
  const level = levelOf(part, camera.px, density);
  const step = sizeStep(camera.px);
  const px = camera.px * density;
  if (level === 'ribbon') {
    for (const stroke of ribbonStrokes(part, inks, camera.px)) paintStroke(context, stroke, camera.px);
    for (const stroke of tickStrokes(part, inks, camera.px)) paintStroke(context, stroke, camera.px);
    const { corners, looks } = tellingMarks(part.marks);
    for (const index of [...corners, ...looks]) {
      paintStamp(brush, stampOf(part, index, 'small', swellOf(part.marks, index, step, true)), px);
    }
    return;
  }
  const { growth } = frame;
  const chunks = chunksOf(part.marks);
  for (const number of chunksWithin(chunks, box)) {
    const { first, count } = chunks[number]!;
    for (let index = first; index < first + count; index++) {
      const growing = growth?.part === part.key && index >= growth.from && index < growth.to;
      const told = swellOf(part.marks, index, step, false);
      const swell = growing ? told * growthScale(growth.share) : told;
      paintStamp(brush, stampOf(part, index, level, swell), px);
    }
  }
}

/** @param px canvas px a stitch width */
function paintStamp({ context, inks, sprites }: FlatBrush, stamp: Stamp, px: number): void {
  context.save();
  context.translate(stamp.x, stamp.y);
  context.rotate(stamp.angle);
  context.scale(stamp.sx, stamp.sy);
  const sprite = sprites?.of(stamp.cell, px * Math.max(stamp.sx, Math.abs(stamp.sy)));
  if (sprite) {
    context.drawImage(sprite.image, sprite.x, sprite.y, sprite.width, sprite.height);
  } else {
    const { layers, tone } = cellLayers(cellPlan(stamp.cell));
    paintLayers(context, layers, inks.tones[tone]!);
  }
  context.restore();
}

function paintStroke(context: CanvasRenderingContext2D, stroke: Stroke, px: number): void {
  const { points } = stroke;
  context.beginPath();
  for (let index = 0; index < points.length; index += 2) context.lineTo(points[index]!, points[index + 1]!);
  if (stroke.closed || stroke.filled) context.closePath();
  if (stroke.filled) {
    context.fillStyle = stroke.colour;
    context.fill();
    return;
  }
  context.lineCap = context.lineJoin = 'round';
  context.setLineDash([]);
  context.lineWidth = stroke.widthPx / px;
  context.strokeStyle = stroke.colour;
  context.stroke();
}
