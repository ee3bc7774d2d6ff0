/**
 * A front whose sides were meant to be alike and are not: what one more round evens out.
 *
 * Rule: meant alike are all sides where more than half of them are, or the opposite ones of four. They are off by three
 * at most: what is off by more was meant. Our own bounds; that panels are squared in their last round is common
 * practice, no source.
 */
import { ease } from '../join/ease.ts';

/** `by`: stitches that the side lacks (+) or has too many (-); `places`: at which of its stitches, spread, from 0. */
export type Evening = { side: number; by: number; meant: number; places: number[] };

const most = 3;

/** What evens the sides out, in their order; empty where they are alike, or meant to differ. */
export function evenOut(sides: readonly number[]): Evening[] {
  const off = meantFor(sides).flatMap((meant, side): Evening[] => {
    const count = sides[side] as number;
    const by = meant - count;
    return by === 0 ? [] : [{ side, by, meant, places: ease(count, Math.abs(by)) }];
  });
  return off.every(({ by }) => Math.abs(by) <= most) ? off : [];
}

/** What each side was meant to have; as it is where nothing tells. */
function meantFor(sides: readonly number[]): readonly number[] {
  const times = new Map<number, number>();
  for (const count of sides) times.set(count, (times.get(count) ?? 0) + 1);
  const [usual, often] = [...times].reduce((best, one) => (one[1] > best[1] ? one : best), [0, 0]);
  if (sides.length > 2 && often * 2 > sides.length) return sides.map(() => usual);
  if (sides.length !== 4) return sides;
  return sides.map((count, side) => Math.max(count, sides[(side + 2) % 4] as number));
}
