/** What lies on the table: rounds as the hand feels them, place by place. */

/** `corner`: one chain of a corner, or its one stitch. */
export type Place = { kind: 'stitch' | 'corner'; made: 'chain' | 'stitch' };

/** The front as the maker has it before anything begins. */
export type FrontPiece = {
  sides: readonly number[];
  corners: readonly { made: 'chain' | 'stitch'; size: number }[];
};

export type Counts = { sides: number[]; corners: number[] };

/** What the reader has made in the end. */
export type Made = {
  foundation: Counts;
  edgings: Counts[];
  /** Pairs joined, the last hole among them; places left without a partner on either piece. */
  pairs: number;
  leftOver: { front: number; back: number };
};

const stitch: Place = { kind: 'stitch', made: 'stitch' };

export const placesOf = ({ sides, corners }: FrontPiece): Place[] =>
  sides.flatMap((count, side) => {
    const corner = corners[side];
    const places = Array.from({ length: count }, () => stitch);
    const turn: Place[] = corner
      ? Array.from({ length: corner.size }, () => ({ kind: 'corner', made: corner.made }))
      : [];
    return [...places, ...turn];
  });

/** Sides and corners of a round that begins within its first side. */
export function countPlaces(places: readonly Place[]): Counts {
  const sides = [0];
  const corners: number[] = [];
  places.forEach(({ kind }, i) => {
    const isFirst = places[i - 1]?.kind !== 'corner';
    if (kind === 'corner' && isFirst) {
      corners.push(0);
      sides.push(0);
    }
    if (kind === 'corner') corners[corners.length - 1]! += 1;
    else sides[sides.length - 1]! += 1;
  });
  if (corners.length === 0) return { sides, corners };
  const tail = sides.pop() ?? 0;
  sides[0] = (sides[0] ?? 0) + tail;
  return { sides, corners };
}

/** Runs of corner places, each as its first index and size. */
export function cornersOf(places: readonly Place[]): { from: number; size: number }[] {
  const found: { from: number; size: number }[] = [];
  places.forEach(({ kind }, i) => {
    if (kind !== 'corner') return;
    const last = found.at(-1);
    if (last && last.from + last.size === i) last.size += 1;
    else found.push({ from: i, size: 1 });
  });
  return found;
}
