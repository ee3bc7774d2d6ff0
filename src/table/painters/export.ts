/**
 * The same drawing as a picture to keep: SVG built from the same paths, and PNG for print.
 */

import type { Part, SceneView } from '../draw-list.ts';
import { type CellKey, cellLayers, cellPlan } from '../glyphs/cells.ts';
import type { Ink, Inks } from '../glyphs/inks.ts';
import type { Layer } from '../glyphs/layer.ts';
import { type Stamp, stampOf } from '../glyphs/stamps.ts';
import type { Camera, Point, Viewport } from '../view/camera.ts';
import { levelOf, showsAt, sizeStep, swellOf, tellingMarks } from '../view/detail.ts';
import { extentAt, FIT_MARGIN_PX, wantedCamera } from '../view/looking.ts';
import { paintView } from './flat.ts';
import { ribbonStrokes, tickStrokes } from './ribbons.ts';
import { signShape } from './signs.ts';
import type { Stroke } from './strokes.ts';
import { documentOf, node, type SvgNode } from './svg-node.ts';
import { anchorOf, FONT_STACK, labelWords, plateRoom, type Words } from './words.ts';

/** Longest side of a picture in px: beyond it browsers give wrong pictures without a word. */
export const MOST_PICTURE_PX = 8192;
/** CSS px across a picture for which words have their size. */
const PICTURE_WIDTH = 1200;
/** A picture can be enlarged: it shows as much as a dense screen. */
const PICTURE_DENSITY = 2;

const number = (value: number): string => String(Math.round(value * 1000) / 1000);

/** The whole of a view, with all its words, on a picture `width` px across. */
function pictureOf(view: SceneView, width: number): Viewport {
  const tall = { x: 0, y: 0, width, height: width * 8 };
  const { px } = wantedCamera({ ...view, id: 'whole' }, tall);
  const box = extentAt(view, px, FIT_MARGIN_PX);
  const region = { x: 0, y: 0, width, height: Math.max(160, Math.ceil(box.y1 - box.y0)) };
  return { region, camera: { x: (box.x0 + box.x1) / 2 / px, y: (box.y0 + box.y1) / 2 / px, px } };
}

/** The view as an SVG document; an empty picture where there is no view. */
export const svgOf = (view: SceneView | null, inks: Inks, title: string): string =>
  documentOf(svgPicture(view, inks, { title }));

/** `across`: CSS px across the picture for which words have their size. `density`: as of a screen that shows it. */
type PictureOptions = { title: string; across?: number; density?: number };

export function svgPicture(
  view: SceneView | null,
  inks: Inks,
  { title, across = PICTURE_WIDTH, density = PICTURE_DENSITY }: PictureOptions,
): SvgNode {
  if (view === null) return node('svg', { viewBox: '0 0 1 1' });
  const picture = pictureOf(view, across);
  const { region, camera } = picture;
  const cells: Cells = { density, ids: new Map() };
  const parts = [...view.parts].sort((one, other) => one.layer - other.layer);
  const body = parts.flatMap((part) => partSvg(part, camera, inks, cells));
  const shapes = view.signs.map((sign) => signShape(sign, inks, camera.px, inks.raised));
  const signs = shapes.flatMap((shape) => shape.strokes.map((stroke) => strokeSvg(stroke, camera.px)));
  const words = [...labelWords(view.labels, picture), ...shapes.flatMap((shape) => shape.words)];
  const move = `translate(${number(region.width / 2)} ${number(region.height / 2)}) scale(${number(camera.px)}) translate(${number(-camera.x)} ${number(-camera.y)})`;
  const definitions = [...cells.ids].map(([key, id]) => cellSvg(key, id, inks));
  const { width, height } = region;
  const whole = { viewBox: `0 0 ${width} ${height}`, width, height, role: 'img' };
  return node('svg', whole, [
    node('title', {}, [title]),
    node('defs', {}, definitions),
    node('rect', { width, height, fill: inks.raised }),
    node('g', { transform: move, 'stroke-linecap': 'round', 'stroke-linejoin': 'round' }, [
      ...body,
      ...signs,
    ]),
    node(
      'g',
      { 'font-family': FONT_STACK },
      words.flatMap((one) => wordsSvg(one, picture, inks)),
    ),
  ]);
}

/** The drawings of a stitch that a picture uses, each written once. */
type Cells = { density: number; ids: Map<CellKey, string> };

function partSvg(part: Part, camera: Camera, inks: Inks, cells: Cells): SvgNode[] {
  if (!showsAt(part, camera.px)) return [];
  const level = levelOf(part, camera.px, cells.density);
  const step = sizeStep(camera.px);
  if (level !== 'ribbon') {
    const stamps = Array.from({ length: part.marks.count }, (_, index) =>
      stampOf(part, index, level, swellOf(part.marks, index, step, false)),
    );
    return stamps.map((stamp) => stampSvg(stamp, cells));
  }
  const strokes = [...ribbonStrokes(part, inks, camera.px), ...tickStrokes(part, inks, camera.px)];
  const { corners, looks } = tellingMarks(part.marks);
  const telling = [...corners, ...looks].map((index) =>
    stampOf(part, index, 'small', swellOf(part.marks, index, step, true)),
  );
  return [
    ...strokes.map((stroke) => strokeSvg(stroke, camera.px)),
    ...telling.map((stamp) => stampSvg(stamp, cells)),
  ];
}

function stampSvg(stamp: Stamp, { ids }: Cells): SvgNode {
  let id = ids.get(stamp.cell);
  if (id === undefined) {
    id = `c${stamp.cell}`;
    ids.set(stamp.cell, id);
  }
  const turn = stamp.angle === 0 ? '' : ` rotate(${number((stamp.angle * 180) / Math.PI)})`;
  const size = stamp.sx === 1 && stamp.sy === 1 ? '' : ` scale(${number(stamp.sx)} ${number(stamp.sy)})`;
  const transform = `translate(${number(stamp.x)} ${number(stamp.y)})${turn}${size}`;
  return node('use', { href: `#${id}`, transform });
}

function cellSvg(key: CellKey, id: string, inks: Inks): SvgNode {
  const { layers, tone } = cellLayers(cellPlan(key));
  const ink = inks.tones[tone]!;
  return node(
    'g',
    { id },
    layers.map((layer) => layerSvg(layer, ink)),
  );
}

const layerSvg = (layer: Layer, ink: Ink): SvgNode =>
  node('path', {
    d: layer.d,
    fill: layer.fill === undefined ? 'none' : ink[layer.fill],
    ...(layer.evenOdd && { 'fill-rule': 'evenodd' }),
    ...(layer.stroke !== undefined && {
      stroke: ink[layer.stroke],
      'stroke-width': layer.width ?? 0.05,
      ...(layer.dash && { 'stroke-dasharray': layer.dash.join(' ') }),
    }),
    ...(layer.alpha !== undefined && { opacity: layer.alpha }),
  });

function strokeSvg(stroke: Stroke, px: number): SvgNode {
  const pairs: string[] = [];
  for (let index = 0; index < stroke.points.length; index += 2) {
    pairs.push(`${number(stroke.points[index]!)},${number(stroke.points[index + 1]!)}`);
  }
  const points = pairs.join(' ');
  if (stroke.filled) return node('polygon', { points, fill: stroke.colour });
  const pen = { fill: 'none', stroke: stroke.colour, 'stroke-width': number(stroke.widthPx / px) };
  return node(stroke.closed ? 'polygon' : 'polyline', { points, ...pen });
}

function wordsSvg(words: Words, picture: Viewport, inks: Inks): SvgNode[] {
  const at = anchorOf(words, picture);
  const look = {
    x: number(at.x),
    y: number(at.y + words.px * 0.335),
    'font-size': words.px,
    'font-weight': words.bold ? 700 : 400,
    'text-anchor': { left: 'start', centre: 'middle', right: 'end' }[words.align],
    fill: inks.tones[words.tone]!.text,
  };
  const text = node('text', look, [words.text]);
  return words.plate === undefined ? [text] : [plateSvg(words, at, inks), text];
}

/** A plate under words; letters are taken as 0.56 em wide, for no canvas is at hand to measure them. */
function plateSvg(words: Words, at: Point, inks: Inks): SvgNode {
  const room = plateRoom(words.px);
  const letters = words.text.length * words.px * 0.56;
  const [width, height] = [letters + 2 * room.x, words.px * 1.3 + 2 * room.y];
  const left = { left: at.x - room.x, centre: at.x - width / 2, right: at.x - width + room.x }[words.align];
  return node('rect', {
    x: number(left),
    y: number(at.y - height / 2),
    width: number(width),
    height: number(height),
    rx: number(room.radius),
    fill: inks.raised,
    stroke: inks.tones[words.plate!]!.line,
    'stroke-width': 1.5,
  });
}

/** The view as a PNG `widthPx` across, made smaller where it would be larger than browsers can hold. */
export async function pngOf(view: SceneView | null, inks: Inks, widthPx: number): Promise<Blob> {
  const canvas = document.createElement('canvas');
  const picture = view === null ? null : pictureOf(view, PICTURE_WIDTH);
  const size = picture?.region ?? { width: 1, height: 1 };
  const density = pictureDensity(size.width, size.height, widthPx);
  canvas.width = Math.max(1, Math.round(size.width * density));
  canvas.height = Math.max(1, Math.round(size.height * density));
  const context = canvas.getContext('2d', { alpha: false })!;
  context.fillStyle = inks.raised;
  context.fillRect(0, 0, canvas.width, canvas.height);
  if (view !== null && picture !== null) {
    paintView({ context, inks }, { view, ...picture, signs: view.signs, growth: null }, density);
  }
  return await new Promise((resolve, reject) => {
    canvas.toBlob((blob) =>
      blob === null ? reject(new Error('The picture could not be made.')) : resolve(blob),
    );
  });
}

/** Picture px a CSS px: as asked, but no side beyond `MOST_PICTURE_PX`. */
export function pictureDensity(width: number, height: number, widthPx: number): number {
  return Math.min(widthPx / width, MOST_PICTURE_PX / width, MOST_PICTURE_PX / height);
}
