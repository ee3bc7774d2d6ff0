/**
 * Putting it right: what to do about an explanation, what it costs from where the work stands, and what is left of it.
 *
 * Rule: every cure is carried out by the hand again, and says itself whether the rounds meet then. One that the work is
 * past already is no cure.
 */

import { entryOf, type Mishap } from '../hand/acts/acts.ts';
import type { Meeting } from '../join/meeting.ts';
import type { Plan, Stand } from '../types.ts';
import { type Case, carryOut, countsOf, withoutJoin } from './case.ts';
import { easeIn } from './easing.ts';
import { doneWith, meetingOf } from './outcome.ts';
import { makeUpAtEnds, makeUpIn, ripBack } from './remake.ts';
import { joinedTo, joinFrom, meetingFor, roundsMade, weightOfCost } from './stand.ts';
import type { Cure } from './types.ts';

/** Cures of an explanation that are possible from where the work stands, the recommended first. */
export function curesOf(plan: Plan, explanation: Case['explanation'], stand: Stand): Cure[] {
  const done = doneWith(plan, explanation.mishaps, explanation.gives.front);
  const of: Case = { plan, explanation, stand, done };
  const next = roundsMade(plan, stand) - 1;
  const cures = [
    correctNumber(of),
    leave(of),
    closeHole(of),
    redoJoin(of),
    makeUpIn(of, next),
    makeUpIn(of, next - 1),
    makeUpAtEnds(of, next - 1),
    easeIn(of),
    ripBack(of),
  ].filter((cure) => cure !== null);
  return recommended(plan, cures);
}

/** Of those that cost the same, the one that changes least. */
const order: Cure['kind'][] = [
  'correct-the-number',
  'leave',
  'close-hole',
  'redo-join',
  'make-up',
  'ease-in',
  'rip-back',
];

/** So few stitches are sooner made again than eased in. */
const few = 12;

/** What costs nothing and meets comes first; then what costs least. */
function recommended(plan: Plan, cures: Cure[]): Cure[] {
  const worth = ({ kind, cost, then }: Cure): number => {
    const weight = weightOfCost(plan, cost);
    if (then === 'does-not-meet') return 1e9 + order.indexOf(kind);
    if (weight > 0 && weight <= few) return order.indexOf('make-up') - 0.5;
    return weight === 0 ? order.indexOf(kind) : 100 + weight;
  };
  return cures
    .sort((a, b) => worth(a) - worth(b))
    .map((cure, index) => ({ ...cure, recommended: index === 0 && cure.then !== 'does-not-meet' }));
}

/** The number given for the front was wrong: the back, or the recipe, is mended by giving the right one. */
function correctNumber(of: Case): Cure | null {
  const { front, causes, mishaps } = of.explanation;
  const miscounted = causes.filter(({ kind }) => kind === 'front-miscounted');
  if (!front || miscounted.length === 0) return null;
  const rightlyMade = miscounted.filter(({ backMadeFor }) => backMadeFor === 'front');
  const wrong = miscounted.filter(({ backMadeFor }) => backMadeFor !== 'neither').flatMap((one) => one.front);
  if (wrong.length === 0) return null;
  const told = new Set(rightlyMade.flatMap((one) => one.mishaps).map((one) => JSON.stringify(bare(one))));
  const left = mishaps.filter((one) => !told.has(JSON.stringify(bare(one))));
  const meets = meetingOf(of.plan, of.done).kind;
  return carryOut(of, {
    kind: 'correct-the-number',
    looks: 'as-planned',
    mishaps: left,
    frontSides: wrong,
    then: meets,
    seenAfter: countsOf(of.done),
  });
}

const bare = ({ edging: _edging, ...mishap }: Mishap): object => ({
  ...mishap,
  edging: mishap.round === 'edging' ? 0 : undefined,
});

/** It meets as it is, whatever lies below: nothing of it is seen or felt. */
function leave(of: Case): Cure | null {
  const { kind } = meetingOf(of.plan, of.done);
  const isRightlyMade = of.explanation.causes.some(({ backMadeFor }) => backMadeFor === 'front');
  if (kind !== 'meets' || of.explanation.mishaps.length === 0 || isRightlyMade) return null;
  const isSeen = of.explanation.mishaps.some((one) => entryOf(one.kind).wholeRound);
  return carryOut(of, { kind: 'leave', looks: isSeen ? 'shows' : 'hidden', mishaps: of.explanation.mishaps });
}

function closeHole(of: Case): Cure | null {
  const { mishaps } = of.explanation;
  if (!mishaps.some(({ kind }) => kind === 'last-hole')) return null;
  return carryOut(of, {
    kind: 'close-hole',
    looks: 'as-planned',
    cost: { stitches: 0, slips: 0, rounds: 0, sewing: false, again: 1 },
    mishaps: mishaps.filter(({ kind }) => kind !== 'last-hole'),
  });
}

/** The join undone as far as it is wrong, and made again. */
function redoJoin(of: Case): Cure | null {
  const { mishaps } = of.explanation;
  const wrong = mishaps.filter(({ round, kind }) => round === 'join' && kind !== 'last-hole');
  if (wrong.length === 0) return null;
  const meeting = meetingFor(of.plan, of.done);
  const from = meeting ? wrong.map((one) => cornerBefore(of.plan, meeting, one)) : [null];
  const corner = from.reduce((a, b) =>
    a === null || b === null || !meeting ? null : joinedTo(meeting, a) < joinedTo(meeting, b) ? a : b,
  );
  const joined = corner === null || !meeting ? 0 : joinedTo(meeting, corner);
  return carryOut(of, {
    kind: 'redo-join',
    looks: 'as-planned',
    back: { joined },
    mishaps: withoutJoin(mishaps),
    ...(corner === null ? {} : { to: joinFrom(of.plan, corner) }),
  });
}

/** The front corner back to which the join is undone because of an act; null where it is wrong from its beginning. */
function cornerBefore({ cornerFaces, edge }: Plan, { frontSide }: Meeting, act: Mishap): number | null {
  if (act.kind === 'join-chain-skipped') return cornerFaces[act.corner] ?? null;
  if (act.kind !== 'two-with-one' || act.side === frontSide || edge.corners.length === 0) return null;
  return (act.side + edge.corners.length - 1) % edge.corners.length;
}
