/**
 * The cloth to scale, from its right side: the strip laid face down with its pins, and the turned back.
 *
 * Rule: a label stands outside the piece at the side it measures, or in the middle where nothing else is; never on a line.
 */
import { type SVGTemplateResult, svg } from 'lit-html';
import {
  type ClothPlan,
  growPiece,
  type Piece,
  type Pin,
  type Point,
  pieceBox,
  pieceCorners,
  pieceSides,
} from '../../core/index.ts';
import type { Units } from '../state/snapshot.ts';
import { sayLength } from '../words/cloth/lengths.ts';

/** A piece seen from the right side of the cloth: the mirror image of the front's. */
const mirrored = (corners: readonly Point[]): Point[] => corners.map(({ x, y }) => ({ x: -x, y }));

const pathOf = (piece: Piece, centre: Point): string => {
  if (piece.shape === 'round') {
    const radius = piece.diameter / 2;
    return `M${-radius} 0A${radius} ${radius} 0 1 0 ${radius} 0A${radius} ${radius} 0 1 0 ${-radius} 0Z`;
  }
  return `M${pointsOf(piece, centre)
    .map(({ x, y }) => `${x.toFixed(1)} ${y.toFixed(1)}`)
    .join('L')}Z`;
};

const pointsOf = (piece: Piece, centre: Point): Point[] =>
  mirrored(pieceCorners(piece)).map(({ x, y }) => ({ x: x - centre.x, y: y - centre.y }));

/** Every piece of one panel about the same middle: that of a rectangle is its own, a polygon's that of the panel. */
function centreOf(piece: Piece, panel: Piece): Point {
  if (piece.shape === 'round') return { x: 0, y: 0 };
  if (piece.shape === 'rectangle') return { x: -piece.width / 2, y: piece.height / 2 };
  const corners = mirrored(pieceCorners(panel));
  const mean = (of: (point: Point) => number): number =>
    (Math.max(...corners.map(of)) + Math.min(...corners.map(of))) / 2;
  return { x: mean(({ x }) => x), y: mean(({ y }) => y) };
}

const ring = (outer: Piece, inner: Piece | null, panel: Piece): string =>
  `${pathOf(outer, centreOf(outer, panel))}${inner ? pathOf(inner, centreOf(inner, panel)) : ''}`;

type Frame = { scale: number; size: number; box: string };

/** Room for a line of words all round, at any size of piece. */
function frameOf(piece: Piece): Frame {
  const { width, height } = pieceBox(piece);
  const size = Math.max(width, height);
  const scale = size / 300;
  const [wide, high] = [width / 2 + 76 * scale, height / 2 + 34 * scale];
  return { scale, size, box: `${-wide} ${-high} ${2 * wide} ${2 * high}` };
}

export type Laid = {
  plan: ClothPlan;
  depth: number;
  edging: number;
  faces: readonly number[];
  pins: readonly Pin[];
  units: Units;
};

/** Before turning: base chains on the raw edge, edging inwards, the seam just below the edging. */
export function laidPicture({ plan, depth, edging, faces, pins, units }: Laid): SVGTemplateResult {
  const { cut, seam, panel } = plan;
  const frame = frameOf(cut);
  const inner = growPiece(cut, -(depth + edging));
  const middle = (piece: Piece): string => pathOf(piece, centreOf(piece, panel));
  return svg`<svg class="cloth-picture" viewBox=${frame.box} role="img" aria-label=${`The cloth from its right side, ${sayOutline(cut, units)}, with the strip face down on its edge`}>
    <path class="picture-cloth" d=${middle(cut)}/>
    <path class="picture-strip" fill-rule="evenodd" d=${ring(cut, seam, panel)}/>
    ${edging > 0 ? svg`<path class="picture-edging" fill-rule="evenodd" d=${ring(seam, inner, panel)}/>` : ''}
    <path class="picture-base" d=${middle(cut)} stroke-width=${2.4 * frame.scale} stroke-dasharray="0.1 ${5 * frame.scale}"/>
    <path class="picture-seam" d=${middle(seam)} stroke-width=${1.4 * frame.scale} stroke-dasharray="${7 * frame.scale} ${4 * frame.scale}"/>
    ${pins.map((pin) => pinLine(pin, plan, faces, depth, frame.scale))}
    ${sideLabels(cut, panel, faces, units, frame.scale)}
    ${middleWords(['right side of the cloth', 'strip face down', `seam ${sayOutline(seam, units)}`], frame.scale)}
  </svg>`;
}

/** After turning: the edging stands outside the cloth. */
export function turnedPicture({
  plan,
  faces,
  units,
}: Pick<Laid, 'plan' | 'faces' | 'units'>): SVGTemplateResult {
  const { seam, finishedBack, panel } = plan;
  const frame = frameOf(finishedBack);
  const middle = (piece: Piece): string => pathOf(piece, centreOf(piece, panel));
  return svg`<svg class="cloth-picture" viewBox=${frame.box} role="img" aria-label=${`The finished back from its right side, ${sayOutline(finishedBack, units)}`}>
    <path class="picture-edging" fill-rule="evenodd" d=${ring(finishedBack, seam, panel)}/>
    <path class="picture-cloth" d=${middle(seam)}/>
    <path class="picture-outline" d=${middle(finishedBack)} stroke-width=${1.4 * frame.scale}/>
    ${sideLabels(finishedBack, panel, faces, units, frame.scale)}
    ${middleWords(['turned', 'right side of the cloth'], frame.scale)}
  </svg>`;
}

const sayOutline = (piece: Piece, units: Units): string => {
  const { width, height } = pieceBox(piece);
  return piece.shape === 'round'
    ? `${sayLength(width, units)} across`
    : `${sayLength(width, units)} by ${sayLength(height, units)}`;
};

function middleWords(lines: readonly string[], scale: number): SVGTemplateResult {
  const step = 18 * scale;
  return svg`${lines.map(
    (line, i) =>
      svg`<text class="picture-word" x="0" y=${(i - (lines.length - 1) / 2) * step} font-size=${14 * scale}>${line}</text>`,
  )}`;
}

/** "side 1" and its length, outside each side; the width below a round piece. */
function sideLabels(
  piece: Piece,
  panel: Piece,
  faces: readonly number[],
  units: Units,
  scale: number,
): SVGTemplateResult {
  if (piece.shape === 'round')
    return svg`<text class="picture-length" x="0" y=${piece.diameter / 2 + 20 * scale} font-size=${15 * scale}>${sayLength(piece.diameter, units)} across</text>`;
  const points = pointsOf(piece, centreOf(piece, panel));
  const lengths = pieceSides(piece);
  return svg`${points.map((to, side) => {
    const from = points[(side + points.length - 1) % points.length] as Point;
    const [dx, dy] = [to.x - from.x, to.y - from.y];
    const length = Math.hypot(dx, dy);
    // Mirrored, the front's order runs clockwise, and outwards is the other way.
    const [nx, ny] = [dy / length, -dx / length];
    const isUpright = Math.abs(nx) > 0.7;
    const gap = (isUpright ? 42 : 16) * scale;
    const [x, y] = [(from.x + to.x) / 2 + nx * gap, (from.y + to.y) / 2 + ny * gap];
    const says = sayLength(lengths[side] as number, units);
    const name = `side ${faces.indexOf(side) + 1}`;
    return isUpright
      ? svg`<text class="picture-length" x=${x} y=${y - 8 * scale} font-size=${15 * scale}>${says}</text>
          <text class="picture-word" x=${x} y=${y + 10 * scale} font-size=${13 * scale}>${name}</text>`
      : svg`<text class="picture-length" x=${x} y=${y} font-size=${15 * scale}>${says} <tspan class="picture-word" font-size=${13 * scale}>${name}</tspan></text>`;
  })}`;
}

/** A pin crosses the cut edge at its place. */
function pinLine(
  pin: Pin,
  plan: ClothPlan,
  faces: readonly number[],
  depth: number,
  scale: number,
): SVGTemplateResult {
  const { at, inwards } = pinPlace(pin, plan, faces);
  const [inside, outside] = [Math.max(depth * 0.7, 8 * scale), 5 * scale];
  const head = { x: at.x - inwards.x * outside, y: at.y - inwards.y * outside };
  return svg`<path class="picture-pin" stroke-width=${1.3 * scale}
      d="M${head.x} ${head.y}L${at.x + inwards.x * inside} ${at.y + inwards.y * inside}"/>
    <circle class="picture-pin-head" cx=${head.x} cy=${head.y} r=${2.4 * scale}/>`;
}

function pinPlace(pin: Pin, plan: ClothPlan, faces: readonly number[]): { at: Point; inwards: Point } {
  const { cut, panel } = plan;
  if (cut.shape === 'round') {
    const angle = -Math.PI / 2 - (pin.distance / (Math.PI * cut.diameter)) * 2 * Math.PI;
    const out = { x: Math.cos(angle), y: Math.sin(angle) };
    const at = { x: (out.x * cut.diameter) / 2, y: (out.y * cut.diameter) / 2 };
    return { at, inwards: { x: -out.x, y: -out.y } };
  }
  const points = pointsOf(cut, centreOf(cut, panel));
  const k = points.length;
  // The back goes round the other way: its side begins where the front's ends.
  const frontSide = faces[pin.side] as number;
  const [from, to] = [points[frontSide] as Point, points[(frontSide + k - 1) % k] as Point];
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const part = pin.distance / length;
  const along = { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
  const at = { x: from.x + (to.x - from.x) * part, y: from.y + (to.y - from.y) * part };
  const inwards = pin.kind === 'corner' ? unit({ x: -at.x, y: -at.y }) : { x: along.y, y: -along.x };
  return { at, inwards: dot(inwards, at) > 0 ? { x: -inwards.x, y: -inwards.y } : inwards };
}

const dot = (a: Point, b: Point): number => a.x * b.x + a.y * b.y;
const unit = ({ x, y }: Point): Point => ({ x: x / Math.hypot(x, y), y: y / Math.hypot(x, y) });
