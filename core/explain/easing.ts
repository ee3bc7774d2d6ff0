/** Easing in: two of one piece with one of the other, spread along the side, on the way through the join. */
import { ease } from '../join/ease.ts';
import { limits } from '../limits.ts';
import type { Plan } from '../types.ts';
import { type Case, carryOut, withoutJoin } from './case.ts';
import { type Meets, meetingOf } from './outcome.ts';
import { isJoining, joinedBefore, joinedTo, meetingFor } from './stand.ts';
import type { Cure, CurePlaces } from './types.ts';

export function easeIn(of: Case): Cure | null {
  const { plan, done, explanation } = of;
  const meets = meetingOf(plan, done);
  if (meets.reshaped || meets.kind === 'meets') return null;
  const at = [...easedSides(plan, meets), ...easedCorners(plan, meets)];
  if (at.length === 0 || at.some(({ places }) => places.length > limits.mishaps)) return null;
  return carryOut(of, {
    kind: 'ease-in',
    looks: meets.slight ? 'slight' : 'shows',
    at,
    mishaps: withoutJoin(explanation.mishaps),
    // What is not slight, or lies in a corner, can be eased too, but it shows.
    then: meets.slight && meets.cornersOff === 0 ? 'meets-with-easing' : 'does-not-meet',
    back: backFor(of, meets),
  });
}

/** What is joined comes out back to the first place that is eased. */
function backFor({ plan, done, stand }: Case, { sides, corners }: Meets): { joined: number } | null {
  const meeting = isJoining(stand) ? meetingFor(plan, done) : null;
  if (!meeting) return null;
  const befores = [
    ...sides.flatMap((by, side) => (by === 0 ? [] : [joinedBefore(meeting, plan.faces[side] as number)])),
    ...corners.flatMap((by, corner) =>
      by === 0 ? [] : [joinedTo(meeting, plan.cornerFaces[corner] as number)],
    ),
  ];
  return befores.length > 0 ? { joined: Math.min(...befores) } : null;
}

function easedSides(plan: Plan, meets: Meets): CurePlaces[] {
  return meets.sides.flatMap((by, side): CurePlaces[] => {
    if (by === 0) return [];
    const front = plan.faces[side] as number;
    const longer = by > 0 ? (meets.back[side] as number) : (meets.front[front] as number);
    const where = by > 0 ? { round: 'edging' as const, side } : { round: 'front' as const, side: front };
    return [
      {
        ...where,
        edging: plan.edgings.length - 1,
        act: by > 0 ? 'two-back-with-one' : 'two-front-with-one',
        places: ease(longer, Math.abs(by)),
      },
    ];
  });
}

function easedCorners(plan: Plan, meets: Meets): CurePlaces[] {
  return meets.corners.flatMap((by, corner): CurePlaces[] =>
    by === 0
      ? []
      : [
          {
            round: 'edging',
            edging: plan.edgings.length - 1,
            side: corner,
            corner,
            act: by > 0 ? 'two-back-with-one' : 'two-front-with-one',
            places: Array.from({ length: Math.abs(by) }, (_, place) => place),
          },
        ],
  );
}
