/**
 * Signs as strokes and words. Their size is in CSS px where they point at something, in stitch widths where
 * they enclose something.
 */

import type { Sign } from '../draw-list.ts';
import type { Inks } from '../glyphs/inks.ts';
import { showsAt } from '../view/detail.ts';
import { arc, at, count, lengthsAlong, placed, type Stroke, stretch } from './strokes.ts';
import type { Words } from './words.ts';

export type SignShape = { strokes: Stroke[]; words: Words[] };

/** The shape of one sign with a stitch `px` CSS px wide, on `paper`. */
export function signShape(sign: Sign, inks: Inks, px: number, paper: string): SignShape {
  if (!showsAt(sign, px)) return { strokes: [], words: [] };
  const ink = inks.tones[sign.tone]!;
  switch (sign.kind) {
    case 'frame':
      return { strokes: frame(sign, ink.line, paper, px), words: [] };
    case 'ring':
      return { strokes: ring(sign, ink.line, paper, px), words: [] };
    case 'window':
      return { strokes: brackets(sign.points, ink.line, px, paper), words: [] };
    case 'band':
      return {
        strokes: haloed({ points: sign.points, widthPx: sign.px, colour: ink.line }, paper),
        words: [],
      };
    case 'arrow':
      return { strokes: arrow(sign, ink.line, px, paper), words: [] };
    case 'ruler':
      return ruler(sign, ink.line, px, paper);
    case 'flag':
      return flag(sign, ink.line, px);
  }
}

const FRAME_PX = 3;
/** Half the length of an arrow, and of its barbs, in CSS px. */
const ARROW = { shaft: 14, barb: 8 };

/** A halo of paper beneath keeps a sign apart from whatever yarn it crosses. */
const haloed = (stroke: Stroke, paper: string): Stroke[] => [
  { ...stroke, widthPx: stroke.widthPx + 2.5, colour: paper },
  stroke,
];

function frame(sign: Extract<Sign, { kind: 'frame' }>, colour: string, paper: string, px: number): Stroke[] {
  const [halfWidth, halfHeight] = [sign.w / 2, sign.h / 2];
  const radius = Math.min(10 / px, 0.32, halfWidth, halfHeight);
  const corner = (x: number, y: number, from: number): number[] =>
    arc({ x: x * (halfWidth - radius), y: y * (halfHeight - radius), radius }, from, from + Math.PI / 2, 5);
  const outline = [
    ...corner(1, 1, 0),
    ...corner(-1, 1, Math.PI / 2),
    ...corner(-1, -1, Math.PI),
    ...corner(1, -1, -Math.PI / 2),
  ];
  const points = placed(outline, sign, sign.angle);
  return haloed({ points, widthPx: FRAME_PX, colour, closed: true }, paper);
}

function ring(sign: Extract<Sign, { kind: 'ring' }>, colour: string, paper: string, px: number): Stroke[] {
  const points = arc({ x: sign.x, y: sign.y, radius: sign.px / px }, 0, 2 * Math.PI, 40).slice(0, -2);
  const around = haloed({ points, widthPx: sign.strong ? 5 : 2.5, colour, closed: true }, paper);
  if (sign.towards === undefined) return around;
  // It sets out from the ring's edge.
  const middle = (sign.px + ARROW.shaft) / px;
  const leaving = {
    x: sign.x + middle * Math.cos(sign.towards),
    y: sign.y + middle * Math.sin(sign.towards),
    angle: sign.towards,
  };
  return [...arrow(leaving, colour, px, paper), ...around];
}

/** How far a bracket's feet reach along the lanes, in CSS px. */
const FOOT = 7;

/** Brackets across the lanes at both ends of a stretch: where the close-up looks, and no part of the work. */
function brackets(points: ArrayLike<number>, colour: string, px: number, paper: string): Stroke[] {
  const all = Array.from(points);
  const [outer, inner] = [all.slice(0, all.length / 2), all.slice(all.length / 2)];
  return [
    [inner, outer],
    [outer, inner],
  ].flatMap(([to, from]) => {
    const path = [...to!, ...from!];
    const lengths = lengthsAlong(path);
    const across = lengths.slice(count(to!) - 1, count(to!) + 1);
    const [start, end] = [across[0]! - FOOT / px, across[1]! + FOOT / px].map((at) => at / lengths.at(-1)!);
    return haloed(
      { points: stretch(path, Math.max(0, start!), Math.min(1, end!)), widthPx: 2, colour },
      paper,
    );
  });
}

function arrow(
  sign: { x: number; y: number; angle: number },
  colour: string,
  px: number,
  paper: string,
): Stroke[] {
  const [shaft, barb] = [ARROW.shaft / px, ARROW.barb / px];
  const lines = [
    [-shaft, 0, shaft, 0],
    [shaft - barb, -barb, shaft, 0, shaft - barb, barb],
  ];
  const strokes = lines.map((points) => ({
    points: placed(points, sign, sign.angle),
    widthPx: 3.5,
    colour,
  }));
  // All halos first: no line of the arrow is cut by another's.
  const haloes = strokes.map((stroke) => ({ ...stroke, widthPx: 6, colour: paper }));
  return [...haloes, ...strokes];
}

function ruler(sign: Extract<Sign, { kind: 'ruler' }>, colour: string, px: number, paper: string): SignShape {
  const { points } = sign;
  const last = count(points) - 1;
  if (last < 1) return { strokes: [], words: [] };
  const ends = [endStroke(points, 0, 1, px), endStroke(points, last, last - 1, px)];
  const middle = middleOf(points);
  return {
    strokes: [points, ...ends].flatMap((path) => haloed({ points: path, widthPx: 4, colour }, paper)),
    words:
      sign.text === ''
        ? []
        : [
            {
              text: sign.text,
              x: middle.x,
              y: middle.y,
              dx: 0,
              dy: 0,
              px: 14,
              bold: true,
              tone: sign.tone,
              align: 'centre',
              plate: sign.tone,
            },
          ],
  };
}

/** The short stroke across a ruler's end. */
function endStroke(points: ArrayLike<number>, end: number, next: number, px: number): number[] {
  const [a, b] = [at(points, end), at(points, next)];
  const angle = Math.atan2(b.y - a.y, b.x - a.x);
  return placed([0, -9 / px, 0, 9 / px], a, angle);
}

function middleOf(points: ArrayLike<number>): { x: number; y: number } {
  const lengths = lengthsAlong(points);
  const half = lengths.at(-1)! / 2;
  let index = 1;
  while (index < lengths.length - 1 && lengths[index]! < half) index++;
  const [a, b] = [at(points, index - 1), at(points, index)];
  const span = lengths[index]! - lengths[index - 1]! || 1;
  const share = (half - lengths[index - 1]!) / span;
  return { x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share };
}

/** A stitch marker: pole, pennant and number, in CSS px outwards from its stitch. */
const FLAG = { pole: 15, pennant: 9, wide: 10, number: 10 };

function flag(sign: Extract<Sign, { kind: 'flag' }>, colour: string, px: number): SignShape {
  const scale = (points: number[]) =>
    placed(
      points.map((value) => value / px),
      sign,
      sign.angle,
    );
  const outward = { x: Math.sin(sign.angle), y: -Math.cos(sign.angle) };
  const reach = FLAG.pole + FLAG.number;
  const top = -FLAG.pole;
  return {
    strokes: [
      { points: scale([0, 0, 0, top]), widthPx: 2, colour },
      {
        points: scale([0, top, FLAG.wide, top + FLAG.pennant / 2, 0, top + FLAG.pennant]),
        widthPx: 0,
        colour,
        filled: true,
      },
    ],
    words: [
      {
        text: sign.text,
        x: sign.x,
        y: sign.y,
        dx: outward.x * reach,
        dy: outward.y * reach,
        px: 14,
        bold: true,
        tone: sign.tone,
        align: 'centre',
      },
    ],
  };
}
