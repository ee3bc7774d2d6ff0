/** From measures to a piece: what cannot be so is told, all at once. */
import { bendsInAt, boxOf, cornersByDiagonals, cornersOnCircle, grow, sidesOf } from './geometry.ts';
import type { ClothResult, ClothShape, Note, Piece, Point } from './types.ts';

/** mm. From a coaster's edging to a carpet: our own choice. */
export const clothLimits = { least: 1, most: 20_000, sides: 24 } as const;

/** Measures taken on crochet differ by so much without a fault: 1 %, and not less than 3 mm. Our own judgement. */
export const measuringBand = (length: number): number => Math.max(3, length / 100);

/** What is wrong with a length; nothing where it can be. */
export function lengthProblems(
  value: number,
  at: string,
  least: number = clothLimits.least,
  most: number = clothLimits.most,
): Note[] {
  if (!(value >= least)) return [{ at, code: 'length-too-small', params: { least } }];
  return value > most ? [{ at, code: 'length-too-large', params: { most } }] : [];
}

export type ReadPiece = { piece: Piece; notes: Note[] };

export function readShape(panel: ClothShape): ClothResult<ReadPiece> {
  const problems = lengthsOf(panel).flatMap(([at, length]) => lengthProblems(length, `panel.${at}`));
  if (panel.shape === 'polygon') problems.push(...sideCountProblems(panel.sides, panel.diagonals));
  if (problems.length > 0) return { ok: false, problems };
  if (panel.shape === 'round')
    return { ok: true, value: { piece: { shape: 'round', diameter: panel.diameter }, notes: [] } };
  return panel.shape === 'rectangle' ? readRectangle(panel) : readPolygon(panel);
}

function lengthsOf(panel: ClothShape): [at: string, length: number][] {
  if (panel.shape === 'round') return [['diameter', panel.diameter]];
  const diagonals = (panel.diagonals ?? []).map((length, i): [string, number] => [`diagonals[${i}]`, length]);
  if (panel.shape === 'rectangle') return [['width', panel.width], ['height', panel.height], ...diagonals];
  return [...panel.sides.map((length, i): [string, number] => [`sides[${i}]`, length]), ...diagonals];
}

function sideCountProblems(sides: readonly number[], diagonals?: readonly number[]): Note[] {
  const k = sides.length;
  // Nothing straight has one or two corners: the panel itself is the pattern.
  if (k < 3) return [{ at: 'panel.sides', code: 'paper-pattern', params: { sides: k } }];
  if (k > clothLimits.sides)
    return [{ at: 'panel.sides', code: 'side-count', params: { most: clothLimits.sides } }];
  if (diagonals && diagonals.length !== k - 3)
    return [{ at: 'panel.diagonals', code: 'diagonal-count', params: { wanted: k - 3 } }];
  return [];
}

function readRectangle(panel: Extract<ClothShape, { shape: 'rectangle' }>): ClothResult<ReadPiece> {
  const { width, height, diagonals } = panel;
  const piece: Piece = { shape: 'rectangle', width, height };
  if (!diagonals) return { ok: true, value: { piece, notes: [] } };
  const [first, second] = diagonals;
  const wanted = Math.hypot(width, height);
  const off = Math.abs(first - second);
  if (off > measuringBand(wanted))
    return {
      ok: false,
      problems: [{ at: 'panel.diagonals', code: 'diagonals-differ', params: { first, second, off } }],
    };
  const mean = (first + second) / 2;
  if (Math.abs(mean - wanted) > 2 * measuringBand(wanted))
    return {
      ok: false,
      problems: [{ at: 'panel.diagonals', code: 'diagonals-unlikely', params: { mean, wanted } }],
    };
  return { ok: true, value: { piece, notes: [] } };
}

function readPolygon(panel: Extract<ClothShape, { shape: 'polygon' }>): ClothResult<ReadPiece> {
  const { sides, diagonals } = panel;
  const longest = Math.max(...sides);
  const rest = sides.reduce((sum, side) => sum + side, 0) - longest;
  if (longest >= rest)
    return {
      ok: false,
      problems: [
        { at: `panel.sides[${sides.indexOf(longest)}]`, code: 'side-too-long', params: { longest, rest } },
      ],
    };
  const isCertain = diagonals !== undefined || sides.length === 3;
  const corners = isCertain ? cornersByDiagonals(sides, diagonals ?? []) : cornersOnCircle(sides);
  if (!corners)
    return { ok: false, problems: [{ at: 'panel.diagonals', code: 'diagonals-do-not-close', params: {} }] };
  const bent = bendsInAt(corners);
  if (bent !== null)
    return {
      ok: false,
      problems: [{ at: 'panel.diagonals', code: 'bends-inwards', params: { corner: bent } }],
    };
  const notes: Note[] = isCertain
    ? []
    : [{ at: 'panel.sides', code: 'corners-on-circle', params: { diagonals: sides.length - 3 } }];
  return { ok: true, value: { piece: { shape: 'polygon', sides: [...sides], corners }, notes } };
}

/** A piece with every edge moved outwards; null where nothing would be left. */
export function growPiece(piece: Piece, by: number): Piece | null {
  if (piece.shape === 'round') {
    const diameter = piece.diameter + 2 * by;
    return diameter > 0 ? { shape: 'round', diameter } : null;
  }
  if (piece.shape === 'rectangle') {
    const [width, height] = [piece.width + 2 * by, piece.height + 2 * by];
    return width > 0 && height > 0 ? { shape: 'rectangle', width, height } : null;
  }
  const corners = grow(piece.corners, by);
  return corners && { shape: 'polygon', sides: sidesOf(corners), corners };
}

/** Lengths of the sides in the front's order; a round piece has one, all the way round. */
export function pieceSides(piece: Piece): number[] {
  if (piece.shape === 'round') return [Math.PI * piece.diameter];
  if (piece.shape === 'polygon') return piece.sides;
  return [piece.width, piece.height, piece.width, piece.height];
}

/** Corner points, side 0 on top, going round anticlockwise with y downwards. None on a round piece. */
export function pieceCorners(piece: Piece): Point[] {
  if (piece.shape === 'round') return [];
  if (piece.shape === 'polygon') return piece.corners;
  const { width, height } = piece;
  return [
    { x: 0, y: 0 },
    { x: 0, y: height },
    { x: width, y: height },
    { x: width, y: 0 },
  ];
}

/** The rectangle that a piece is cut from. */
export function pieceBox(piece: Piece): { width: number; height: number } {
  if (piece.shape === 'round') return { width: piece.diameter, height: piece.diameter };
  if (piece.shape === 'rectangle') return { width: piece.width, height: piece.height };
  const { width, height } = boxOf(piece.corners);
  return { width, height };
}

export const perimeter = (piece: Piece): number => pieceSides(piece).reduce((sum, side) => sum + side, 0);
