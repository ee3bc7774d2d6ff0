/** What the join shows of a making, from its counts alone; a property test holds it equal to `pair`. */

import { joinMade, type Settled } from '../hand/acts/doing.ts';
import type { Tally } from '../hand/tally.ts';
import { alignCorners, begunWhereItFits } from '../join/corners.ts';
import { laneOf } from '../join/lane.ts';
import { meet, takenUp } from '../join/meeting.ts';
import { sidesMet } from '../join/side-meetings.ts';
import type { Plan } from '../types.ts';
import type { JoinSeen } from './types.ts';

/** Null where there is nothing to join. `front`: the front's sides as they really are. */
export function joinOf(
  plan: Plan,
  last: Tally,
  mishaps: readonly Settled[],
  front: readonly number[],
): JoinSeen | null {
  const begun = meet(
    laneOf(
      [...front],
      plan.edge.corners.map(({ size }) => size),
    ),
    laneOf(last.sides, last.corners),
    { faces: plan.choices.start.side, twisted: false },
    joinMade(plan, mishaps),
  );
  if (!begun) return null;
  const meeting = begunWhereItFits(begun);
  const aligned = meeting.front.sizes.length === meeting.back.sizes.length ? null : alignCorners(meeting);
  return {
    drift: sidesMet(meeting, aligned).map(({ drift }) => drift),
    leftOver: meeting.back.total - meeting.front.total - takenUp(meeting.start.together ?? []),
  };
}
