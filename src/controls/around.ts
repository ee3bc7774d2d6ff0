/** Where the sides of a panel stand around its picture, and the picture's own corners. Plain geometry. */
import type { Hand } from '../state/snapshot.ts';

/** A place on the grid of three columns and five rows whose middle holds the picture. */
export type AroundCell = { side: number; column: 'left' | 'middle' | 'right'; row: 1 | 2 | 3 | 4 | 5 };

/** Sides up to this number stand around the picture; more are a list beside it. */
export const MOST_AROUND = 8;

/**
 * The direction in which side `side` of `count` looks, in radians clockwise from +x with y down.
 * Side 0 lies on top, as in the drawing; right-handed work runs anticlockwise seen from the right side.
 */
export function sideAngle(side: number, count: number, hand: Hand): number {
  const turn = ((2 * Math.PI) / count) * side;
  return hand === 'right' ? -Math.PI / 2 - turn : -Math.PI / 2 + turn;
}

/** Three rows of a column, by how many sides share it. */
const SPREAD: Record<number, AroundCell['row'][]> = { 1: [3], 2: [2, 4], 3: [2, 3, 4] };

export function cellsAround(count: number, hand: Hand): AroundCell[] {
  const looks = Array.from({ length: count }, (_, side) => {
    const angle = sideAngle(side, count, hand);
    return { side, x: Math.cos(angle), y: Math.sin(angle) };
  });
  const columnOf = (x: number): AroundCell['column'] =>
    Math.abs(x) < 0.3 ? 'middle' : x < 0 ? 'left' : 'right';
  return (['left', 'middle', 'right'] as const).flatMap((column) => {
    const inColumn = looks.filter(({ x }) => columnOf(x) === column).sort((a, b) => a.y - b.y);
    return inColumn.map(({ side, y }, index): AroundCell => {
      if (column === 'middle') return { side, column, row: y < 0 ? 1 : 5 };
      return { side, column, row: SPREAD[inColumn.length]?.[index] ?? 3 };
    });
  });
}

export type Point = { x: number; y: number };

/**
 * Corner points of the picture, corner i following side i, in a box of `width` × `height` about its
 * middle. Four sides make a rectangle as long and as wide as the counts, within reason; others a regular figure.
 */
export function outline(counts: readonly number[], hand: Hand, width: number, height: number): Point[] {
  const count = counts.length;
  const raw = counts.map((_, side) => {
    const angle = sideAngle(side + 0.5, count, hand);
    return { x: Math.cos(angle), y: Math.sin(angle) };
  });
  if (count === 4) return rectangle(raw, counts, width, height);
  return fitted(raw, width, height);
}

function rectangle(raw: Point[], counts: readonly number[], width: number, height: number): Point[] {
  const long = (counts[0] ?? 1) + (counts[2] ?? 1);
  const wide = (counts[1] ?? 1) + (counts[3] ?? 1);
  const ratio = Math.min(2.2, Math.max(0.6, long / Math.max(1, wide)));
  return fitted(
    raw.map(({ x, y }) => ({ x: x * ratio, y })),
    width,
    height,
  );
}

function fitted(points: Point[], width: number, height: number): Point[] {
  const xs = points.map(({ x }) => x);
  const ys = points.map(({ y }) => y);
  const midX = (Math.max(...xs) + Math.min(...xs)) / 2;
  const midY = (Math.max(...ys) + Math.min(...ys)) / 2;
  const scale = Math.min(
    width / (Math.max(...xs) - Math.min(...xs)),
    height / (Math.max(...ys) - Math.min(...ys)),
  );
  return points.map(({ x, y }) => ({
    x: width / 2 + (x - midX) * scale,
    y: height / 2 + (y - midY) * scale,
  }));
}
