/** Easing in: two of one piece with one of the other, spread along the side, on the way through the join. */
import type { Adjustment } from '../hand/acts/acts.ts';
import { takenInJoin } from '../join/taken-in.ts';
import { limits } from '../limits.ts';
import type { Plan } from '../types.ts';
import { type Case, carryOut, withoutJoin } from './case.ts';
import { type Meets, meetingOf } from './outcome.ts';
import { isJoining, joinedSoFar, joinedTo, joinFrom, meetingFor } from './stand.ts';
import type { Cure, CurePlaces } from './types.ts';

export function easeIn(of: Case): Cure | null {
  const { plan, done, explanation } = of;
  const meets = meetingOf(plan, done);
  // Chain can only be joined to chain: a corner of another size is not eased in.
  if (meets.reshaped || meets.kind === 'meets' || meets.cornersOff > 0) return null;
  const taken = meets.sides.map((by, side) =>
    by === 0 ? [] : takenInJoin(plan, plan.faces[side] as number, by),
  );
  const adjustments = taken.every((one) => one !== null) ? taken.flat() : [];
  if (adjustments.length === 0 || adjustments.length > limits.mishaps) return null;
  return carryOut(of, {
    kind: 'ease-in',
    looks: meets.slight ? 'slight' : 'shows',
    at: placesOf(plan, meets, taken),
    mishaps: withoutJoin(explanation.mishaps),
    adjustments,
    // What is not slight can be eased too, but it shows.
    then: meets.slight ? 'meets-with-easing' : 'does-not-meet',
    ...backFor(of, meets),
  });
}

/** What is joined comes out back to the corner before the first side that is eased. */
function backFor(
  { plan, done, stand }: Case,
  { sides }: Meets,
): Pick<Cure, 'to'> & { back?: { joined: number } } {
  const meeting = isJoining(stand) ? meetingFor(plan, done) : null;
  if (!meeting) return {};
  const k = plan.edge.corners.length;
  const corners = sides.flatMap((by, side) => {
    const front = plan.faces[side] as number;
    return by === 0 ? [] : [k === 0 || front === meeting.frontSide ? null : (front + k - 1) % k];
  });
  const first = corners.reduce((a, b) =>
    a === null || b === null ? null : joinedTo(meeting, a) < joinedTo(meeting, b) ? a : b,
  );
  if (first === null || first === undefined) return { back: { joined: 0 } };
  const joined = joinedTo(meeting, first);
  // Not joined as far as that: nothing comes out.
  if (joined >= joinedSoFar(meeting, stand)) return { back: { joined } };
  return { back: { joined }, to: joinFrom(plan, first) };
}

/** Told along the front, for so the join goes. */
const placesOf = (plan: Plan, { sides }: Meets, taken: (Adjustment[] | null)[]): CurePlaces[] =>
  sides.flatMap((by, side): CurePlaces[] => {
    const places = (taken[side] ?? []).flatMap((one) => (one.kind === 'two-with-one' ? [one.place] : []));
    if (by === 0 || places.length === 0) return [];
    const front = plan.faces[side] as number;
    const act = by > 0 ? 'two-back-with-one' : 'two-front-with-one';
    return [{ round: 'front', edging: plan.edgings.length - 1, side: front, act, places }];
  });
