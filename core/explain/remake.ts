/**
 * Making up in a round that is still to come, and ripping back.
 *
 * Rule: a round that is made is only changed by ripping it back, and that is what it is then called. What may lie
 * anywhere on a side of an edging is left where it is and made up for at the side's end, where least comes off.
 */
import type { Act, Mishap } from '../hand/acts/acts.ts';
import { ease } from '../join/ease.ts';
import { limits } from '../limits.ts';
import { type Case, carryOut, withoutJoin } from './case.ts';
import { type Done, doneWith, meetingOf } from './outcome.ts';
import { roundOf } from './reach.ts';
import { endOfSide, markOf, placeOf, placeOfMishap, roomFor, startOfSide } from './rip.ts';
import { roundsMade } from './stand.ts';
import type { Cure, CurePlaces } from './types.ts';

type Off = { side: number; by: number };

/** Sides that mishaps leave wrong; null where what they leave cannot be mended side by side. */
function sidesOff({ plan, explanation }: Case, mishaps: readonly Mishap[]): Off[] | null {
  const meets = meetingOf(plan, doneWith(plan, mishaps, explanation.gives.front));
  if (meets.reshaped || meets.cornersOff > 0) return null;
  return meets.sides.map((by, side) => ({ by, side })).filter(({ by }) => by !== 0);
}

const isBelow = (edging: number, mishap: Case['done']['mishaps'][number]): boolean =>
  mishap.round === 'plan' || (mishap.round !== 'join' && roundOf(mishap) <= edging);

const inExplanation = ({ explanation, done }: Case, those: Case['done']['mishaps']): Mishap[] =>
  done.mishaps.filter((one) => those.includes(one)).flatMap(({ index }) => explanation.mishaps[index] ?? []);

/** What the rounds below lack or have too many, made up in one edging: the next to come, or the last made. */
export function makeUpIn(of: Case, edging: number): Cure | null {
  const { plan, done } = of;
  if (edging < 0 || edging >= plan.edgings.length) return null;
  const below = done.mishaps.filter((one) => isBelow(edging, one));
  const mishaps = inExplanation(of, below);
  const off = sidesOff(of, mishaps);
  if (!off || off.length === 0) return null;
  const isMade = edging + 2 <= roundsMade(plan, of.stand);
  const at = off.map((one) => spreadOn(of, edging, one, isMade));
  if (at.some((one) => one === null)) return null;
  const places = at as CurePlaces[];
  const round = edging + 1;
  const node = isMade
    ? startOfSide(of.done.makings[round] as Case['done']['makings'][number], firstWorked(off))
    : 0;
  return carryOut(of, {
    kind: isMade ? 'rip-back' : 'make-up',
    looks: places.every((one) => one.places.length <= 2) ? 'hidden' : 'slight',
    at: places,
    mishaps,
    adjustments: places.flatMap(actsAt),
    ...(isMade ? ripped(of, round, node) : {}),
  });
}

/** Side 0 comes last: it is made up on the part after the last corner. */
const firstWorked = (off: readonly Off[]): number => {
  const others = off.map(({ side }) => side).filter((side) => side > 0);
  return others.length > 0 ? Math.min(...others) : 0;
};

const armBefore = ({ plan }: Case, edging: number): number =>
  plan.foundation.corners.length > 0 ? (plan.edgings[edging]?.arm[1] ?? 0) : 0;

const actOf = (by: number): CurePlaces['act'] => (by < 0 ? 'two-in-one' : 'miss-one');

/** More than one stitch in so many puckers: 11 into 10 is the textbook's upper example for easing cloth. */
const oneIn = 10;

function spreadOn(of: Case, edging: number, { side, by }: Off, isMade: boolean): CurePlaces | null {
  const below = of.done.makings[edging];
  if (!below) return null;
  const whole = of.done.rounds[edging]?.sides[side] ?? 0;
  const targets = side === 0 && isMade ? below.length - startOfSide(below, 0) : whole;
  const count = Math.abs(by);
  if (count > limits.mishaps / 2 || count > Math.max(1, targets / oneIn)) return null;
  const arm = armBefore(of, edging);
  const places = ease(targets, count).map((place) => arm + place);
  return { round: 'edging', edging, side, act: actOf(by), places };
}

/**
 * What is amiss in an edging that is made, or below it, made up for at the end of each side in that edging: nobody
 * needs to know what it was, and least comes off.
 */
export function makeUpAtEnds(of: Case, edging: number): Cure | null {
  const { done, explanation } = of;
  const round = edging + 1;
  const making = done.makings[round];
  if (edging < 0 || !making || roundsMade(of.plan, of.stand) !== round + 1) return null;
  const mishaps = withoutJoin(explanation.mishaps);
  const off = sidesOff(of, mishaps);
  if (!off || off.length === 0) return null;
  const at = off.map((one) => atEndOf(of, edging, one));
  if (at.some((one) => one === null)) return null;
  const places = at as CurePlaces[];
  // Side 0 ends in the closing, and in what may have been worked just before it; the others in an arm.
  const closing = 1 + of.plan.choices.edgingClosing.adds;
  const arm = of.plan.edgings[edging]?.arm[0] ?? 0;
  const nodes = off.map(
    ({ side, by }) => endOfSide(making, side) - roomFor(Math.abs(by)) - (side === 0 ? closing : arm),
  );
  const node = Math.max(0, Math.min(...nodes));
  // What comes off with the stitches is simply worked again.
  const comesOff = done.mishaps.some(
    (one) => one.round === 'edging' && roundOf(one) === round && (markOf(making, one) ?? 0) >= node,
  );
  if (comesOff) return null;
  const cure = carryOut(of, {
    kind: 'rip-back',
    looks: 'hidden',
    at: places,
    mishaps,
    adjustments: places.flatMap(actsAt),
    ...ripped(of, round, node),
  });
  return cure.then === 'meets' ? cure : null;
}

/** Every other stitch before the end of the side; null where that would show. */
function atEndOf(of: Case, edging: number, { side, by }: Off): CurePlaces | null {
  const below = of.done.makings[edging];
  if (!below) return null;
  // Side 0 lies at both ends of the round: only what comes after the last corner can still be worked otherwise.
  const targets =
    side === 0 ? below.length - startOfSide(below, 0) : (of.done.rounds[edging]?.sides[side] ?? 0);
  const count = Math.abs(by);
  if (count > mostAtEnd || roomFor(count) > targets) return null;
  const last = armBefore(of, edging) + targets - 1;
  const places = Array.from({ length: count }, (_, n) => last - 2 * (count - 1 - n));
  return { round: 'edging', edging, side, act: actOf(by), places };
}

/** So many made up for in one place are not seen; our own judgement. */
const mostAtEnd = 3;

const actsAt = ({ edging, side, act, places }: CurePlaces): Act[] =>
  places.map((place) => ({
    kind: act === 'two-in-one' ? 'stitch-doubled' : 'stitch-missed',
    round: 'edging',
    edging,
    side,
    place,
    count: 1,
  }));

const ripped = ({ done }: Case, round: number, node: number) => {
  const making = done.makings[round] as Case['done']['makings'][number];
  const at = Math.min(node, Math.max(0, making.length - 1));
  return { to: placeOf(making, round, at), back: { round, node: at } };
};

/** Back to where the first of the mishaps can be undone. */
export function ripBack(of: Case): Cure | null {
  const places = [...placesOfMishaps(of), ...placesOfFront(of)];
  if (places.length === 0) return null;
  const named = places.reduce((a, b) =>
    b.round < a.round || (b.round === a.round && b.node < a.node) ? b : a,
  );
  const beginning = named.round === 0 ? beginningLeft(of, named.node) : null;
  const mishaps = beginning?.mishaps ?? [];
  const adjustments = beginning?.evened ?? [];
  const first = { round: named.round, node: beginning?.node ?? named.node };
  const after = doneWith(of.plan, [...mishaps, ...adjustments], of.explanation.gives.front);
  const { round } = first;
  const node = round === 0 ? Math.min(first.node, ringSameUpTo(of.done, after)) : first.node;
  return carryOut(of, {
    kind: 'rip-back',
    looks: 'as-planned',
    mishaps,
    adjustments,
    // Made again from there it is as planned, and for the front as it is.
    then: 'meets',
    ...ripped(of, round, node),
  });
}

/** How many stitches of the ring are the same in two makings, up to its closing. */
function ringSameUpTo({ makings: [one] }: Done, { makings: [other] }: Done): number {
  if (!one || !other) return 0;
  const shorter = Math.min(one.length, other.length) - 1;
  const endings = [one, other].map(({ turns, sizes }) =>
    turns.flatMap((turn, corner) => [turn, turn + (sizes[corner] as number)]),
  ) as [number[], number[]];
  const unlike = endings[0].findIndex((node, n) => node !== endings[1][n]);
  return Math.min(shorter, endings[0][unlike] ?? shorter, endings[1][unlike] ?? shorter);
}

/**
 * The ring begins within a side, which lies at both of its ends: what that side has too many or too few before the first
 * corner may stay, and it gets less or more of after the last. Where it is too short for that, the ring is undone to the
 * end of that beginning.
 */
function beginningLeft(
  { plan, done, explanation }: Case,
  node: number,
): { mishaps: Mishap[]; evened: Act[]; node: number } | null {
  const corner = done.makings[0]?.turns[0] ?? 0;
  if (node < corner) return null;
  const lying = done.mishaps.filter((one) => liesInBeginning(one, done, corner));
  const mishaps = lying.flatMap(({ index }) => explanation.mishaps[index] ?? []);
  const lengthWith = (some: readonly Mishap[]): number =>
    doneWith(plan, some, explanation.gives.front).makings[0]?.turns[0] ?? 0;
  const by = lengthWith(mishaps) - lengthWith([]);
  if (by === 0) return null;
  const { tail } = plan.foundation;
  const count = Math.abs(by);
  if (tail === 0 || by > tail) return { mishaps: [], evened: [], node: corner - Math.max(0, by) };
  const at = { round: 'foundation', side: 0, count } as const;
  const evened: Act =
    by > 0
      ? { ...at, kind: 'stitch-missed', place: tail - count }
      : { ...at, kind: 'stitch-doubled', place: tail - 1 };
  return { mishaps, evened: [evened], node };
}

const liesInBeginning = (one: Done['mishaps'][number], { makings: [foundation] }: Done, corner: number) =>
  one.round === 'foundation' && foundation !== undefined && (markOf(foundation, one) ?? corner) < corner;

const placesOfMishaps = ({ plan, done }: Case) =>
  done.mishaps.filter(({ round }) => round !== 'join').map((one) => placeOfMishap(plan, done.makings, one));

/** The front is another than the back was made for: the foundation is made again from the first such side on. */
function placesOfFront({ plan, done, explanation }: Case) {
  const sides = explanation.causes
    .filter(({ backMadeFor }) => backMadeFor === 'recipe')
    .flatMap(({ front }) => front.map(({ side }) => plan.faces.indexOf(side)));
  const [foundation] = done.makings;
  if (sides.length === 0 || !foundation) return [];
  return [{ round: 0, node: startOfSide(foundation, firstWorked(sides.map((side) => ({ side, by: 1 })))) }];
}
