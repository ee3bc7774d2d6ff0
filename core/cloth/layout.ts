/** Cutting several backs from a width of cloth, and how much to buy. A grid of boxes: what a maker lays out on a table. */

import { lengthProblems } from './shape.ts';
import type { ClothResult, Note } from './types.ts';

export type LayoutInput = {
  /** The box around one piece, mm. */
  piece: { width: number; height: number };
  count: number;
  clothWidth: number;
  /** Not used along both selvedges, mm each. */
  selvedge: number;
  /** The cloth's pattern has a top: every piece lies that way up. */
  hasWay: boolean;
  /** mm after which the pattern comes again down the length; every row begins at the same place of it. */
  repeat?: number;
};

export type Layout = {
  across: number;
  rows: number;
  /** Pieces lie turned by a quarter. */
  isTurned: boolean;
  /** mm down the length from one row to the next, and to buy before shops round it. */
  rowStep: number;
  length: number;
};

/** The shorter way of the two, or the only one where the pattern has a way. */
export function layOut(input: LayoutInput): ClothResult<Layout> {
  const { piece, clothWidth, selvedge, hasWay, count, repeat } = input;
  const problems: Note[] = [
    ...lengthProblems(clothWidth, 'clothWidth', 10, 5_000),
    ...lengthProblems(count, 'count', 1, 1_000),
    ...(repeat === undefined ? [] : lengthProblems(repeat, 'repeat', 1, 5_000)),
  ];
  if (problems.length > 0) return { ok: false, problems };
  const usable = clothWidth - 2 * selvedge;
  const ways = [lay(input, usable, false)];
  if (!hasWay) ways.push(lay(input, usable, true));
  const fitting = ways.filter((way) => way !== null).sort((a, b) => a.length - b.length);
  const [best] = fitting;
  if (best) return { ok: true, value: best };
  const wanted = (hasWay ? piece.width : Math.min(piece.width, piece.height)) + 2 * selvedge;
  return {
    ok: false,
    problems: [{ at: 'clothWidth', code: 'cloth-too-narrow', params: { wanted, width: clothWidth } }],
  };
}

function lay({ piece, count, repeat }: LayoutInput, usable: number, isTurned: boolean): Layout | null {
  const [width, height] = isTurned ? [piece.height, piece.width] : [piece.width, piece.height];
  const across = Math.floor(usable / width + 1e-9);
  if (across < 1) return null;
  const rows = Math.ceil(count / across);
  const rowStep = repeat ? Math.ceil(height / repeat - 1e-9) * repeat : height;
  // The first row may begin anywhere in the pattern: one repeat more lets the maker choose where.
  return {
    across: Math.min(across, count),
    rows,
    isTurned,
    rowStep,
    length: (rows - 1) * rowStep + height + (repeat ?? 0),
  };
}
