/**
 * How the positions of a lane are spread along it: between two corners every lane spreads its own positions evenly,
 * so that it runs up to its own corner whatever the lanes beside it do. Partners may lie a little askew there.
 */
import type { LaneStretch } from './shape.ts';

/** What a cell of the ring covers of a lane: from where to where, measured along it from the start of side 0. */
export type Cover = { from: number; to: number };

/** Corner positions keep this close together and no further apart, in stitches, where their arc allows it. */
const CLOSEST = 0.6;
const WIDEST = 1.7;

/** A lane's corners beside the outermost lane's. */
export type LaneCorners = {
  /** How much longer they are: 1 within the panel. */
  wide: number;
  /** Where the outermost lane has the middles of its own, as shares of their arcs, so that all lanes have them there. */
  middles: readonly number[];
};

/**
 * Covers of the cells of a lane (side 0, corner 0, side 1, …), in the lane's own length. `counts` are the places in
 * each cell.
 */
export function spread(
  stretches: readonly LaneStretch[],
  counts: readonly number[],
  { wide, middles }: LaneCorners = { wide: 1, middles: [] },
): Cover[] {
  const lengths = counts.map(() => 0);
  for (const { cell, length } of stretches) lengths[cell] = (lengths[cell] ?? 0) + length;
  const sides = Math.ceil(counts.length / 2);
  const cornered = stretches.some(({ cell }) => cell % 2 === 1);
  const before = (side: number) => 2 * ((side + sides - 1) % sides) + 1;
  const even = Array.from({ length: sides }, (_, side) => {
    const [a, b] = cornered ? [before(side), 2 * side + 1] : [-1, -1];
    const length = lengths[2 * side]! + ((lengths[a] ?? 0) + (lengths[b] ?? 0)) / 2;
    return length / Math.max(0.5, counts[2 * side]! + ((counts[a] ?? 0) + (counts[b] ?? 0)) / 2);
  });
  // How much of each corner's arc is left to the side before it and the side after it.
  const left = Array.from({ length: sides }, (_, corner): [number, number] => {
    if (!cornered) return [0, 0];
    const [count, arc] = [counts[2 * corner + 1]!, lengths[2 * corner + 1]!];
    const after = (corner + 1) % sides;
    const both = Math.min(even[corner]!, even[after]!);
    const least = Math.min(CLOSEST, both);
    const pitch = count > 0 ? Math.min(Math.max(arc / count, least), Math.max(WIDEST * wide, both)) : 0;
    const rest = arc - count * pitch;
    const [one, other] = [counts[2 * corner]!, counts[2 * after]!];
    const before =
      middles[corner] === undefined
        ? rest * shareBefore(rest, one, other)
        : arc * middles[corner]! - (arc - rest) / 2;
    return [before, rest - before];
  });
  const covers: Cover[] = [];
  let at = 0;
  for (let side = 0; side < sides; side++) {
    const from = at - left[(side + sides - 1) % sides]![1];
    at += lengths[2 * side]!;
    const to = at + left[side]![0];
    covers[2 * side] = { from, to };
    if (counts.length > 2 * side + 1) {
      at += lengths[2 * side + 1] ?? 0;
      covers[2 * side + 1] = { from: to, to: Math.max(to, at - left[side]![1]) };
    }
  }
  return covers;
}

/** Where each corner's places have their middle, as a share of its arc. */
export function cornerMiddles(stretches: readonly LaneStretch[], counts: readonly number[]): number[] {
  const covers = spread(stretches, counts);
  const middles: number[] = [];
  let at = 0;
  for (const { cell, length } of stretches) {
    const cover = covers[cell];
    if (cell % 2 === 1 && cover) middles[cell >> 1] = ((cover.from + cover.to) / 2 - at) / length;
    at += length;
  }
  return middles;
}

/** The share of what a corner leaves that the side before it takes: half, or less where that side is short for it. */
function shareBefore(rest: number, before: number, after: number): number {
  if (rest <= 0) return 0.5;
  const stretched = rest / 2 / Math.max(1, Math.min(before, after));
  const fair = Math.min(0.75, Math.max(0.25, before / Math.max(1, before + after)));
  return 0.5 + (fair - 0.5) * Math.min(1, 4 * stretched);
}

/** The part of a stretch between two lengths along it. */
export function cut(stretch: LaneStretch, from: number, to: number): LaneStretch {
  const [a, b] = [from / stretch.length, to / stretch.length];
  const { ax, ay, bx, by } = stretch;
  const cutTo = { ...stretch, length: to - from };
  if (stretch.radius !== 0) {
    return { ...cutTo, angle: stretch.angle + stretch.sweep * a, sweep: stretch.sweep * (b - a) };
  }
  return {
    ...cutTo,
    ax: ax + (bx - ax) * a,
    ay: ay + (by - ay) * a,
    bx: ax + (bx - ax) * b,
    by: ay + (by - ay) * b,
  };
}
