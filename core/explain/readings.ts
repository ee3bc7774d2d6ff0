/**
 * The ways in which a list of counts can be meant.
 *
 * Rule: where not every side was counted, nobody has said how many there are; a side more than half again as long as
 * planned may be two, with the corner between them missing. Then the list is read with a side fewer as well.
 */
import type { Plan, RoundSeen, Seen } from '../types.ts';

export function readingsOf(plan: Plan, seen: Seen): Seen[] {
  if (plan.foundation.corners.length < 2) return [seen];
  const foundation = seen.foundation && withoutCorner(seen.foundation, plan.foundation.sides);
  const edgings = seen.edgings?.map((one, n) => withoutCorner(one, plan.edgings[n]?.sides ?? []));
  const isSame = !foundation && !edgings?.some((one) => one !== null);
  if (isSame) return [seen];
  return [
    seen,
    {
      ...seen,
      ...(foundation ? { foundation } : {}),
      ...(seen.edgings ? { edgings: seen.edgings.map((one, n) => edgings?.[n] ?? one) } : {}),
    },
  ];
}

/** The same counts on a side fewer: an uncounted side beside the long one goes. Null where it cannot be read so. */
function withoutCorner(seen: RoundSeen, planned: readonly number[]): RoundSeen | null {
  if (seen.sides.length !== planned.length || seen.corners?.some((count) => count !== null)) return null;
  const long = seen.sides.findIndex((count, side) => count !== null && 2 * count > 3 * (planned[side] ?? 0));
  if (long < 0) return null;
  const after = seen.sides.indexOf(null, long + 1);
  const gone = after >= 0 ? after : seen.sides.lastIndexOf(null, long);
  if (gone < 0) return null;
  return { sides: seen.sides.toSpliced(gone, 1), ...(seen.total === undefined ? {} : { total: seen.total }) };
}
