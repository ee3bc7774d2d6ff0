/**
 * Which corner of the back was left out, where it has one too few.
 *
 * Rule: the back's sides are held in its own working order against those it should have. Left out, a corner makes one
 * long side of the two beside it; it is known where all other sides are as they should be with this one left out, and
 * with no other.
 */
import { mod } from '../whole.ts';
import type { Meeting } from './meeting.ts';

/** Corners of the back, by the numbers they should have, each of which may be the one; none where no count tells. */
export function cornersLeftOut({ front, back, faces }: Pick<Meeting, 'front' | 'back' | 'faces'>): number[] {
  const k = front.sizes.length;
  if (back.sizes.length !== k - 1 || back.sizes.length === 0) return [];
  const due = (side: number): number | undefined => front.sides[mod(faces - side, k)];
  const isAsDue = (leftOut: number) => (count: number, side: number) =>
    side === mod(leftOut, k - 1) || count === due(side <= leftOut ? side : side + 1);
  return front.sizes.map((_, corner) => corner).filter((corner) => back.sides.every(isAsDue(corner)));
}

/** The front corner that a corner of the back should meet. */
export const facedBy = ({ front, faces }: Pick<Meeting, 'front' | 'faces'>, backCorner: number): number =>
  mod(faces - backCorner - 1, front.sizes.length);

/** The back's side on which the join begins, with this corner left out. */
export function begunWithout({ front, back, faces, frontSide }: Meeting, leftOut: number): number {
  const side = mod(faces - frontSide, front.sizes.length);
  return mod(side <= leftOut ? side : side - 1, back.sizes.length);
}
