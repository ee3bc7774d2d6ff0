/**
 * Where the work stands, in stitches: what has to come off to get at a place, and what is made again.
 *
 * Rule: stitches come off from the last one made backwards, and only so. A stitch of the edging comes free once every
 * slip stitch that holds it, and all made after that one, is out; what holds the strip to the cloth comes out only with
 * the foundation.
 */
import { joinMade } from '../hand/acts/doing.ts';
import { begunWhereItFits } from '../join/corners.ts';
import { laneOf, nodeAt } from '../join/lane.ts';
import { frontCorners, type Meeting, meet, pinchesOf } from '../join/meeting.ts';
import type { Plan, Stand } from '../types.ts';
import { sum } from '../whole.ts';
import type { Done } from './outcome.ts';
import { startOfSide } from './rip.ts';
import type { Cost, Cure } from './types.ts';

/** Rounds made: 1 is the foundation alone, one more for every edging. */
export const roundsMade = ({ edgings }: Plan, stand: Stand): number => {
  if (stand.at === 'foundation') return 1;
  return stand.at === 'edging' ? Math.min(stand.edging, edgings.length - 1) + 2 : edgings.length + 1;
};

const isSewn = ({ at }: Stand): boolean => at !== 'foundation' && at !== 'edging';
export const isJoining = ({ at }: Stand): boolean => at === 'join' || at === 'finished';

/** The join of a making, whose front may be another than the recipe's; null where there is nothing to join. */
export function meetingFor(plan: Plan, { rounds, front, mishaps, makings }: Done): Meeting | null {
  const last = rounds.at(-1);
  const making = makings.at(-1);
  if (!last || !making) return null;
  const begun = meet(
    laneOf(
      [...front],
      plan.edge.corners.map(({ size }) => size),
    ),
    laneOf(last.sides, last.corners, startOfSide(making, 0) % Math.max(1, making.length)),
    { faces: plan.choices.start.side, twisted: false },
    joinMade(plan, mishaps),
  );
  return begun && begunWhereItFits(begun);
}

/** Slip stitches made when the join has come to the end of a front side. */
export function joinedTo(meeting: Meeting, frontSide: number): number {
  const corner = frontCorners(meeting).find((one) => one.corner === frontSide);
  const passed = corner ? corner.at : meeting.front.total;
  // Two of the front taken with one of the back are one slip stitch.
  const taken = pinchesOf(meeting).filter(({ of, front }) => of === 'front' && front < passed).length;
  return Math.min(passed - taken, pairsOf(meeting));
}

/** A place passed over has no partner; of two taken together one has none of its own. */
const pairsOf = ({ front, back, start }: Meeting): number => {
  const taken = (piece: 'front' | 'back'): number =>
    (start.together ?? []).filter(({ of }) => of === piece).length;
  return Math.min(front.total - taken('front'), back.total - taken('back') - (start.skipped?.length ?? 0));
};

/** The join from a front corner on, as the place where a cure begins; told by the back's own corner. */
export const joinFrom = ({ cornerFaces }: Plan, frontCorner: number): NonNullable<Cure['to']> => ({
  round: 'join',
  edging: 0,
  side: -1,
  corner: cornerFaces.indexOf(frontCorner),
  place: 0,
  node: -1,
});

/** Slip stitches made so far. */
export function joinedSoFar(meeting: Meeting | null, stand: Stand): number {
  if (!meeting || !isJoining(stand)) return 0;
  return stand.at === 'join' ? joinedTo(meeting, stand.side) : pairsOf(meeting);
}

/** Of those, how many stay while the stitches of the last round from a node on come off. */
function joinedBelow(meeting: Meeting, node: number): number {
  const begun = nodeAt(meeting.back, meeting.backFrom);
  return begun < node ? begun + 1 - (meeting.start.skipped?.length ?? 0) : 0;
}

/** Where a cure goes back to: a stitch of a round, or so many slip stitches of the join. */
export type Back = { round: number; node: number } | { joined: number };

export type Work = { plan: Plan; stand: Stand; before: Done; after: Done };

/** What it costs to go back there from where the work stands, and to come as far again. */
export function costOf({ plan, stand, before, after }: Work, back: Back | null): Cost {
  const was = meetingFor(plan, before);
  const becomes = meetingFor(plan, after);
  const joined = joinedSoFar(was, stand);
  const made = roundsMade(plan, stand);
  if (!back) return { stitches: 0, slips: 0, rounds: 0, sewing: false, again: 0 };
  if ('joined' in back) {
    const stays = Math.min(back.joined, joined);
    const slips = joined - stays;
    const again = Math.max(0, joinedSoFar(becomes, stand) - stays);
    return { stitches: 0, slips, rounds: 0, sewing: false, again };
  }
  const { round, node } = back;
  const lengthFrom = ({ makings }: Done): number =>
    sum(makings.slice(round, made).map(({ length }) => length)) - node;
  const isLast = round === plan.edgings.length;
  const stays = was && isLast ? Math.min(joined, Math.max(0, joinedBelow(was, node))) : 0;
  return {
    stitches: Math.max(0, lengthFrom(before)),
    slips: joined - stays,
    rounds: Math.max(0, made - 1 - round),
    sewing: round === 0 && isSewn(stand),
    again: Math.max(0, lengthFrom(after)) + Math.max(0, joinedSoFar(becomes, stand) - stays),
  };
}

/** What a cost weighs: every stitch out and every stitch in, and the sewing as long as the strip, out and in. */
export const weightOfCost = (plan: Plan, { stitches, slips, sewing, again }: Cost): number =>
  stitches + slips + again + (sewing ? 2 * plan.foundation.total : 0);
