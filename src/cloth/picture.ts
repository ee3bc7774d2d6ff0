/**
 * The cloth to scale, from its right side: the strip laid face down with its pins, and the turned back.
 *
 * Rule: a label stands outside the piece at the side it measures, or in the middle where nothing else is; never on a line.
 */
import {
  type ClothPlan,
  growPiece,
  type Piece,
  type Pin,
  type Point,
  pieceBox,
  pieceCorners,
  pieceSides,
  type Rounding,
} from '../../core/index.ts';
import type { Units } from '../state/snapshot.ts';
import { acrossOf, edgeLength, laidWords, sideName, turnedWords } from '../words/cloth/figures.ts';
import type { Figure, Ink, Shape } from './figure.ts';

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

export type Laid = {
  plan: ClothPlan;
  depth: number;
  edging: number;
  /** `faces[j]`: the front's side that side j of the back faces. */
  faces: readonly number[];
  pins: readonly Pin[];
  units: Units;
};

/** What every shape of one picture is drawn by. `scale`: mm for what is 1 px where the piece is 300 px wide. */
type Sheet = Pick<Laid, 'plan' | 'faces' | 'units'> & { scale: number };

/** Room for a line of words all round, at any size of piece. */
function sheetOf({ plan, faces, units }: Pick<Laid, 'plan' | 'faces' | 'units'>, piece: Piece) {
  const { width, height } = pieceBox(piece);
  const scale = Math.max(width, height) / 300;
  const [wide, high] = [width / 2 + 82 * scale, height / 2 + 36 * scale];
  const box: Figure['box'] = [-wide, -high, 2 * wide, 2 * high];
  return { sheet: { plan, faces, units, scale } satisfies Sheet, box };
}

const outline = ({ plan }: Sheet, piece: Piece): string => pathOf(piece, centreOf(piece, plan.panel));

const band = (sheet: Sheet, ink: Ink, outer: Piece, inner: Piece | null): Shape => ({
  kind: 'path',
  ink,
  d: outline(sheet, outer) + (inner ? outline(sheet, inner) : ''),
});

/** Before turning: base chains on the raw edge, edging inwards, the seam just below the edging. */
export function laidPicture(laid: Laid): Figure {
  const { plan, depth, edging, pins, units } = laid;
  const { cut, seam } = plan;
  const { sheet, box } = sheetOf(laid, cut);
  const { scale } = sheet;
  const inner = growPiece(cut, -(depth + edging));
  const words = laidWords(cut, seam, units);
  return {
    box,
    says: words.says,
    shapes: [
      band(sheet, 'cloth', cut, null),
      band(sheet, 'strip', cut, seam),
      ...(edging > 0 ? [band(sheet, 'edging', seam, inner)] : []),
      { kind: 'path', ink: 'base', d: outline(sheet, cut), width: 2.4 * scale, dash: [0.1, 5 * scale] },
      {
        kind: 'path',
        ink: 'seam',
        d: outline(sheet, seam),
        width: 1.4 * scale,
        dash: [7 * scale, 4 * scale],
      },
      ...pins.flatMap((pin) => pinShapes(pin, sheet, depth)),
      ...sideLabels(cut, sheet, 'up'),
      ...middleWords(words.inside, scale),
    ],
  };
}

/** After turning: the edging stands outside the cloth. */
export function turnedPicture(laid: Pick<Laid, 'plan' | 'faces' | 'units'>): Figure {
  const { seam, finishedBack } = laid.plan;
  const { sheet, box } = sheetOf(laid, finishedBack);
  const words = turnedWords(finishedBack, laid.units);
  return {
    box,
    says: words.says,
    shapes: [
      band(sheet, 'edging', finishedBack, seam),
      band(sheet, 'cloth', seam, null),
      { kind: 'path', ink: 'outline', d: outline(sheet, finishedBack), width: 1.4 * sheet.scale },
      ...sideLabels(finishedBack, sheet, 'nearest'),
      ...middleWords(words.inside, sheet.scale),
    ],
  };
}

const middleWords = (lines: readonly string[], scale: number): Shape[] =>
  lines.map((text, i) => ({
    kind: 'words',
    ink: 'word',
    x: 0,
    y: (i - (lines.length - 1) / 2) * 20 * scale,
    size: 16 * scale,
    text,
  }));

/** "side 1" and its length, outside each side; the width below a round piece. */
function sideLabels(piece: Piece, { plan, faces, units, scale }: Sheet, rounding: Rounding): Shape[] {
  const size = 17 * scale;
  if (piece.shape === 'round')
    return [
      {
        kind: 'words',
        ink: 'length',
        x: 0,
        y: piece.diameter / 2 + 20 * scale,
        size,
        text: acrossOf(edgeLength(piece.diameter, units, rounding)),
      },
    ];
  const points = pointsOf(piece, centreOf(piece, plan.panel));
  const lengths = pieceSides(piece);
  return points.flatMap((to, side): Shape[] => {
    const from = points[(side + points.length - 1) % points.length] as Point;
    const [dx, dy] = [to.x - from.x, to.y - from.y];
    const length = Math.hypot(dx, dy);
    // Mirrored, the front's order runs clockwise, and outwards is the other way.
    const [nx, ny] = [dy / length, -dx / length];
    const isUpright = Math.abs(nx) > 0.7;
    const gap = (isUpright ? 46 : 18) * scale;
    const [x, y] = [(from.x + to.x) / 2 + nx * gap, (from.y + to.y) / 2 + ny * gap];
    const text = edgeLength(lengths[side] as number, units, rounding);
    const name = { ink: 'word', size: 15 * scale, text: sideName(faces.indexOf(side) + 1) } as const;
    return isUpright
      ? [
          { kind: 'words', ink: 'length', x, y: y - 8 * scale, size, text },
          { kind: 'words', x, y: y + 10 * scale, ...name },
        ]
      : [{ kind: 'words', ink: 'length', x, y, size, text, then: name }];
  });
}

/** A pin crosses the cut edge at its place. */
function pinShapes(pin: Pin, sheet: Sheet, depth: number): Shape[] {
  const { scale } = sheet;
  const { at, inwards } = pinPlace(pin, sheet);
  const [inside, outside] = [Math.max(depth * 0.7, 8 * scale), 5 * scale];
  const head = { x: at.x - inwards.x * outside, y: at.y - inwards.y * outside };
  const d = `M${head.x} ${head.y}L${at.x + inwards.x * inside} ${at.y + inwards.y * inside}`;
  return [
    { kind: 'path', ink: 'pin', d, width: 1.3 * scale },
    { kind: 'dot', ink: 'pin-head', ...head, r: 2.4 * scale },
  ];
}

function pinPlace(pin: Pin, { plan, faces }: Sheet): { at: Point; inwards: Point } {
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
