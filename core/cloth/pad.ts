/**
 * Pads. Usually larger than the cover, so that it is filled into its corners: by 2.5 cm, or by 3–5 cm (read, five
 * sources). One source has it otherwise, and a thin or firm form is as large as the cover (common practice).
 */
import type { LengthUnit } from './measuring.ts';
import { mmPerInch } from './measuring.ts';
import { pieceBox } from './shape.ts';
import type { Piece } from './types.ts';

/** mm larger than the finished back. */
export const padRules = { usual: 25, full: 50, same: 0 } as const;
export type PadRule = keyof typeof padRules;

/** Square sizes that shops usually have: common practice, no source; a maker's own size is always possible. */
export const padSizes: Record<LengthUnit, readonly number[]> = {
  cm: [300, 350, 400, 450, 500, 550, 600, 650, 700],
  inch: [12, 14, 16, 18, 20, 22, 24, 26, 28].map((inches) => inches * mmPerInch),
};

export type Pad = {
  width: number;
  height: number;
  isRound: boolean;
  /** The square sizes sold around it; none for what is round or not nearly square. */
  sold: number[];
};

export function padFor(back: Piece, rule: PadRule, unit: LengthUnit): Pad {
  const box = pieceBox(back);
  const [width, height] = [box.width + padRules[rule], box.height + padRules[rule]];
  const isRound = back.shape === 'round';
  const isSquare = back.shape === 'rectangle' && Math.abs(width - height) <= 10;
  const wanted = (width + height) / 2;
  const smaller = padSizes[unit].findLast((size) => size <= wanted);
  const larger = padSizes[unit].find((size) => size > wanted);
  return {
    width,
    height,
    isRound,
    sold: isSquare ? [smaller, larger].filter((size) => size !== undefined) : [],
  };
}
