/** Which sides of the front one side of the back lies against: more than one where the back lacks a corner. */
import type { Drawn } from '../ring.ts';

/** Front sides in the front's order, from the one at which the meeting is told. */
export function sidesMet({ edge, pairing }: Pick<Drawn, 'edge' | 'pairing'>, from: number): number[] {
  const count = edge.sides.length;
  const told = pairing.sides.map(({ frontSide }) => frontSide);
  const after = Array.from({ length: count - 1 }, (_, n) => (from + n + 1) % count);
  const end = after.findIndex((side) => told.includes(side));
  return [from, ...after.slice(0, end < 0 ? count : end)];
}
