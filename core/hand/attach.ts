/**
 * The round below as the hand feels it, and the place where it attaches the yarn.
 *
 * Rule: the attach place is a stitch of side 0 and is left alone until the closing covers it.
 */
import type { Making } from './graph.ts';

/** As much of the round below as the hand feels: where its corners lie and how big they are. */
export type RoundBelow = Pick<Making, 'length' | 'turns' | 'sizes'>;

/** A corner of the round below, as the hand meets it. */
export type Below = { corner: number; from: number; size: number };

export const cornersBelow = (below: { turns: readonly number[]; sizes: readonly number[] }): Below[] =>
  below.turns.map((from, corner) => ({ corner, from, size: below.sizes[corner] as number }));

/**
 * Where the yarn is attached: an ordinary stitch of side 0, the first of the ring if that is one, else the last of it;
 * -1 if side 0 has none.
 */
export function attachPlace(below: Pick<RoundBelow, 'length'>, corners: readonly Below[]): number {
  if (beginsWithStitch(below, corners)) return 0;
  const last = below.length - 1;
  const lastCorner = corners.at(-1);
  return lastCorner && last >= lastCorner.from + lastCorner.size ? last : -1;
}

/** The places worked between attaching and closing, `to` not among them: all but the attach place. */
export function placesBetween(
  below: Pick<RoundBelow, 'length'>,
  corners: readonly Below[],
): { from: number; to: number } {
  if (beginsWithStitch(below, corners)) return { from: 1, to: below.length };
  return { from: 0, to: attachPlace(below, corners) < 0 ? below.length : below.length - 1 };
}

const beginsWithStitch = ({ length }: Pick<RoundBelow, 'length'>, corners: readonly Below[]): boolean =>
  (corners[0]?.from ?? length) > 0;
