/**
 * Putting it right: what to do about an explanation, what it costs, and what is left of it afterwards.
 *
 * Rule: every cure is carried out by the hand again, and says itself whether the rounds meet then. A cause that may
 * lie anywhere on a side, or at the beginning of a round, is put right where least comes off: at that side's end.
 */

import type { Mishap } from '../hand/acts/acts.ts';
import { ease } from '../join/ease.ts';
import { limits } from '../limits.ts';
import type { Plan, Seen } from '../types.ts';
import { mod, sum } from '../whole.ts';
import { type Done, doneWith, type Meets, meetingOf } from './outcome.ts';
import { ripToMishaps, ripToSide, startOfSide } from './rip.ts';
import type { Cure, CurePlaces, Explanation } from './types.ts';

type Case = {
  plan: Plan;
  explanation: Explanation;
  /** Rounds that are made: 1 is the foundation alone, one more for every edging; joined on top of that. */
  made: number;
  joined: boolean;
  done: Done;
};

/** Cures of an explanation, the recommended first. `made`: see `Options.made`. */
export function curesOf(plan: Plan, explanation: Explanation, made: number, joined: boolean): Cure[] {
  const done = doneWith(plan, explanation.mishaps, explanation.gives.front);
  const of: Case = { plan, explanation, made, joined, done };
  const cures = [
    correctNumber(of),
    leave(of),
    closeHole(of),
    redoJoin(of),
    ...makeUps(of),
    easeIn(of),
    ripBack(of),
  ].filter((cure) => cure !== null);
  return recommended(cures);
}

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
const few = 6;

/** What costs nothing and meets comes first; then easing that nobody sees; then what takes least off. */
function recommended(cures: Cure[]): Cure[] {
  const worth = ({ kind, lost, then }: Cure): number => {
    if (then === 'does-not-meet') return 1e9 + order.indexOf(kind);
    if (lost > 0 && lost <= few) return order.indexOf('make-up') - 0.5;
    return lost === 0 ? order.indexOf(kind) : 100 + lost;
  };
  return cures
    .sort((a, b) => worth(a) - worth(b))
    .map((cure, index) => ({ ...cure, recommended: index === 0 && cure.then !== 'does-not-meet' }));
}

/** A cure with what it leads to worked out. */
function cure(
  { plan, explanation }: Case,
  given: Omit<Cure, 'recommended' | 'seenAfter' | 'then' | 'takesOff' | 'at' | 'lost'> & Partial<Cure>,
): Cure {
  const after = doneWith(plan, given.mishaps, explanation.gives.front);
  return {
    recommended: false,
    lost: 0,
    takesOff: 0,
    at: [],
    seenAfter: countsOf(after),
    then: meetingOf(plan, after).kind,
    ...given,
  };
}

const countsOf = ({ rounds }: Done): Seen => {
  const [foundation, ...edgings] = rounds;
  return { foundation: foundation as Done['rounds'][number], edgings };
};

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
  return cure(of, {
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
  return cure(of, { kind: 'leave', looks: 'hidden', mishaps: of.explanation.mishaps });
}

const withoutJoin = (mishaps: readonly Mishap[]): Mishap[] => mishaps.filter(({ round }) => round !== 'join');

function closeHole(of: Case): Cure | null {
  const { mishaps } = of.explanation;
  if (!mishaps.some(({ kind }) => kind === 'last-hole')) return null;
  return cure(of, {
    kind: 'close-hole',
    looks: 'as-planned',
    lost: 1,
    mishaps: mishaps.filter(({ kind }) => kind !== 'last-hole'),
  });
}

/** The join undone as far as it is wrong, and made again. */
function redoJoin(of: Case): Cure | null {
  const { mishaps } = of.explanation;
  const wrong = mishaps.filter(({ round, kind }) => round === 'join' && kind !== 'last-hole');
  if (wrong.length === 0) return null;
  const corner = wrong.every(({ kind }) => kind === 'join-chain-skipped')
    ? Math.max(...wrong.map((one) => one.corner as number))
    : -1;
  return cure(of, {
    kind: 'redo-join',
    looks: 'as-planned',
    lost: corner < 0 ? of.plan.pairs : pairsBeyond(of.plan, corner),
    mishaps: withoutJoin(mishaps),
    ...(corner < 0
      ? {}
      : { to: { round: 'join' as const, edging: 0, side: -1, corner, place: 0, node: -1 } }),
  });
}

/** Pairs joined from a back corner on: in join order the back's corners come last first. */
function pairsBeyond({ faces, cornerFaces, choices, edge, pairs }: Plan, corner: number): number {
  const k = faces.length;
  const front = cornerFaces[corner] as number;
  const passed = Array.from({ length: mod(front - choices.joinStart.side, k) + 1 }, (_, n) =>
    mod(choices.joinStart.side + n, k),
  );
  const before = sum(passed.map((side) => edge.sides[side] as number)) - choices.joinStart.fromCorner;
  return Math.max(0, pairs - before);
}

/** What the rounds below lack or have too many, made up in the next round, or in the last one made again. */
function makeUps(of: Case): Cure[] {
  const { plan, done, made, explanation } = of;
  const meets = meetingOf(plan, done);
  if (meets.reshaped || meets.cornersOff > 0) return [];
  const last = plan.edgings.length - 1;
  const next = Math.min(made - 1, last);
  const isMade = next < made - 1;
  const below = explanation.mishaps.filter(
    ({ round, edging = 0 }) =>
      round === 'foundation' || round === 'plan' || (round === 'edging' && edging < next),
  );
  const off = sidesOff(of, below);
  if (off.length === 0) return [];
  const places = off.map(({ by, side }) => makeUpAt(of, next, side, by, isMade));
  if (places.some((one) => one === null)) return [];
  const at = places as CurePlaces[];
  const ripped = isMade ? ripToSide(done, next + 1, firstWorked(off.map(({ side }) => side)), made) : null;
  const joined = ripped && of.joined ? { lost: plan.pairs, takesOff: 1 } : { lost: 0, takesOff: 0 };
  return [
    cure(of, {
      kind: 'make-up',
      looks: at.every(({ places: few }) => few.length <= 2) ? 'hidden' : 'slight',
      at,
      mishaps: [...below, ...at.flatMap(mishapsAt)],
      ...(ripped
        ? { to: ripped.to, lost: ripped.lost + joined.lost, takesOff: ripped.takesOff + joined.takesOff }
        : {}),
    }),
  ];
}

/** Side 0 comes last: it is made up on the part after the last corner. */
const firstWorked = (sides: readonly number[]): number => {
  const others = sides.filter((side) => side > 0);
  return others.length > 0 ? Math.min(...others) : 0;
};

/** Sides that the mishaps below, alone, leave wrong. */
function sidesOff({ plan, explanation }: Case, below: readonly Mishap[]): { side: number; by: number }[] {
  const meets = meetingOf(plan, doneWith(plan, below, explanation.gives.front));
  if (meets.reshaped) return [];
  return meets.sides.map((by, side) => ({ by, side })).filter(({ by }) => by !== 0);
}

function makeUpAt(
  { plan, done }: Case,
  edging: number,
  side: number,
  by: number,
  isMade: boolean,
): CurePlaces | null {
  const below = done.makings[edging];
  const whole = done.rounds[edging]?.sides[side] ?? 0;
  if (!below) return null;
  const targets = side === 0 && isMade ? below.length - startOfSide(below, 0) : whole;
  const count = Math.abs(by);
  // More than every third stitch would show, and the one where the yarn is attached cannot be used.
  if (count > limits.mishaps / 2 || count * 3 > targets) return null;
  const arm = plan.foundation.corners.length > 0 ? (plan.edgings[edging]?.arm[1] ?? 0) : 0;
  return {
    round: 'edging',
    edging,
    side,
    act: by < 0 ? 'two-in-one' : 'miss-one',
    places: ease(targets, count).map((place) => arm + place),
  };
}

const mishapsAt = ({ edging, side, act, places }: CurePlaces): Mishap[] =>
  places.map((place) => ({
    kind: act === 'two-in-one' ? 'stitch-doubled' : 'stitch-missed',
    round: 'edging',
    edging,
    side,
    place,
    count: 1,
  }));

/** Two of one piece with one of the other, spread along the side. */
function easeIn(of: Case): Cure | null {
  const { plan, done, explanation } = of;
  const meets = meetingOf(plan, done);
  if (meets.reshaped || meets.kind === 'meets') return null;
  const at = [...easedSides(plan, meets), ...easedCorners(plan, meets)];
  if (at.length === 0 || at.some(({ places }) => places.length > limits.mishaps)) return null;
  return cure(of, {
    kind: 'ease-in',
    looks: meets.slight ? 'slight' : 'shows',
    at,
    mishaps: withoutJoin(explanation.mishaps),
    // What is not slight, or lies in a corner, can be eased too, but it shows.
    then: meets.slight && meets.cornersOff === 0 ? 'meets-with-easing' : 'does-not-meet',
  });
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

function ripBack(of: Case): Cure | null {
  const { plan, done, explanation, made, joined } = of;
  const otherFront = explanation.causes
    .filter(({ backMadeFor }) => backMadeFor === 'recipe')
    .flatMap(({ front }) => front.map(({ side }) => plan.faces.indexOf(side)));
  const ripped =
    otherFront.length > 0
      ? ripToSide(done, 0, firstWorked(otherFront), made)
      : ripToMishaps(done, explanation.mishaps, made);
  if (!ripped) return null;
  return cure(of, {
    kind: 'rip-back',
    looks: 'as-planned',
    to: ripped.to,
    lost: ripped.lost + (joined ? plan.pairs : 0),
    takesOff: ripped.takesOff + (joined ? 1 : 0),
    mishaps: [],
    // Made again it is made for the front as it is.
    then: 'meets',
  });
}
