/** What the join shows of a making, from its counts. */

import type { Settled } from '../mishap.ts';
import { pair } from '../pair.ts';
import type { Plan } from '../types.ts';
import { workWith } from '../work.ts';
import type { JoinSeen } from './types.ts';

/** Null where there is nothing to join. `front`: the front's sides as they really are. */
export function joinOf(plan: Plan, mishaps: readonly Settled[], front: readonly number[]): JoinSeen | null {
  const worked = workWith(plan, mishaps);
  const edge = { ...plan.edge, sides: [...front] };
  const paired = pair(edge, worked.edgings.at(-1), { start: worked.join, manner: 'stitch-by-stitch' });
  if (!paired.ok) return null;
  return { drift: paired.value.sides.map(({ drift }) => drift), leftOver: paired.value.leftOver };
}
