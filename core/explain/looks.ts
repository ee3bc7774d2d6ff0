/**
 * Where to count or look, and what each explanation says will be found there.
 *
 * Rule: a look must be something a maker can do with the piece in hand: count one side, the chains of one corner,
 * or look at one place. What an explanation expects is read off its own making, never off another's.
 */
import { actKinds, entryOf, type Mishap, roundsOf } from '../hand/acts/acts.ts';
import type { SeenAs } from '../hand/acts/entry.ts';
import type { ActRound, Plan } from '../types.ts';
import type { Explanation, Found, Look } from './types.ts';

type Told = Pick<Explanation, 'mishaps' | 'causes' | 'front' | 'gives'>;

export type Question = Look & {
  /** Stitches or places to go over, roughly: the least is asked for where two questions do as well. */
  effort: number;
  expects: (of: Told) => Found;
};

type At = { round: 'foundation' | 'edging'; edging: number };

const nameOfRound = ({ round, edging }: At): string => (round === 'foundation' ? round : `edging.${edging}`);

const inRound = (mishap: Mishap, at: At): boolean =>
  mishap.round === at.round && (at.round === 'foundation' || (mishap.edging ?? 0) === at.edging);

/** All questions that can be asked of a plan. */
export function questionsOf(plan: Plan, usesJoin: boolean): Question[] {
  const rounds: At[] = [
    { round: 'foundation', edging: 0 },
    ...plan.edgings.map((_, edging): At => ({ round: 'edging', edging })),
  ];
  return [
    ...rounds.flatMap((at) => [
      ...counts(plan, at),
      closing(at),
      ...(plan.foundation.corners.length > 1 ? [firstCorner(at)] : []),
      ...alongSides(plan, at),
      ...cornersOf(plan, at),
    ]),
    ...plan.edge.sides.map(
      (count, side): Question => ({
        key: `front.${side}`,
        look: 'front',
        side,
        effort: count,
        expects: ({ gives }) => gives.front[side] as number,
      }),
    ),
    ...(usesJoin ? joins(plan) : []),
    ...rounds.flatMap((at) => (at.round === 'edging' ? [seen('loops', at)] : [])),
    seen('twist', { round: 'foundation', edging: 0 }),
    { ...seen('hole', { round: 'join', edging: 0 }) },
  ];
}

/** What no count shows, and is found by looking alone. Its answers name the kind of act. */
function seen(look: SeenAs, { round, edging }: { round: ActRound; edging: number }): Question {
  const kinds = actKinds.filter((kind) => entryOf(kind).seenAs === look);
  return {
    key: [look, round, ...(round === 'edging' ? [edging] : [])].join('.'),
    look,
    round,
    edging,
    effort: 4,
    expects: ({ mishaps }) =>
      mishaps.find((one) => kinds.includes(one.kind) && (one.edging ?? 0) === edging)?.kind ?? asAsked,
  };
}

/** The act that was seen by looking, where the answer names one; null where it is an answer of another sort. */
export function actSeen({ look, round, edging }: Look, found: Found): Mishap | null {
  const kind = actKinds.find((one) => one === found);
  if (!kind || entryOf(kind).seenAs !== look) return null;
  return { kind, round: round ?? roundsOf(kind)[0], ...(round === 'edging' ? { edging } : {}) } as Mishap;
}

/** Whether the first corner comes where it belongs, or a side further on: the corner itself is not there. */
function firstCorner(at: At): Question {
  return {
    key: `first-corner.${nameOfRound(at)}`,
    look: 'first-corner',
    ...at,
    effort: 3,
    expects: ({ mishaps }) => {
      const isGone = mishaps.some(
        ({ kind, corner, round, edging = 0 }) =>
          kind === 'corner-forgotten' &&
          corner === 0 &&
          (round === 'foundation' || (at.round === 'edging' && edging <= at.edging)),
      );
      return isGone ? 'a side on' : asAsked;
    },
  };
}

function counts(plan: Plan, at: At): Question[] {
  const of =
    at.round === 'foundation' ? plan.foundation : (plan.edgings[at.edging] as Plan['edgings'][number]);
  const read = ({ gives }: Told) => (at.round === 'foundation' ? gives.foundation : gives.edgings[at.edging]);
  const sides = of.sides.map(
    (count, side): Question => ({
      key: `side.${nameOfRound(at)}.${side}`,
      look: 'side',
      ...at,
      side,
      effort: count,
      expects: (told) => read(told)?.sides[side] ?? 'not there',
    }),
  );
  const corners = of.corners.map(
    ({ size }, corner): Question => ({
      key: `corner.${nameOfRound(at)}.${corner}`,
      look: 'corner',
      ...at,
      corner,
      effort: size,
      expects: (told) => read(told)?.corners[corner] ?? 'not there',
    }),
  );
  // One side more is hardly more to ask than one: a round is counted in one go.
  const all: Question = {
    key: `round.${nameOfRound(at)}`,
    look: 'round',
    ...at,
    effort: of.total,
    expects: (told) => (read(told)?.sides ?? []).join(', '),
  };
  return [...(of.sides.length > 1 ? [all] : []), ...sides, ...corners];
}

/** How the beginning and the end of a round lie: what stands there that the recipe did not ask for, if anything. */
function closing(at: At): Question {
  const kinds = [
    'start-counted',
    'attach-doubled',
    'closing-worked',
    'closing-forgotten',
    'closing-over-first',
    'closing-beside-first',
  ];
  return {
    key: `closing.${nameOfRound(at)}`,
    look: 'closing',
    ...at,
    effort: 3,
    expects: ({ mishaps }) => {
      const there = kinds.filter(
        (kind) =>
          // A ring's last treble worked although the closing makes it looks like any other: only a count tells.
          !(kind === 'closing-forgotten' && at.round === 'foundation') &&
          mishaps.some((mishap) => mishap.kind === kind && inRound(mishap, at)),
      );
      return there.length === 0 ? asAsked : there.join(' + ');
    },
  };
}

/** Nothing there but what the recipe asks for. */
const asAsked = 'as asked';

const seenAlong: readonly string[] = ['stitch-missed', 'stitch-doubled', 'stitch-between'];

/** A stitch passed over or two in one can be seen on an edging; on the foundation only two in one chain can. */
function alongSides(plan: Plan, at: At): Question[] {
  return plan.foundation.sides.map(
    (count, side): Question => ({
      key: `along.${nameOfRound(at)}.${side}`,
      look: 'along',
      ...at,
      side,
      effort: count + 10,
      expects: ({ causes }) => {
        const there = causes
          .filter(({ kind }) => seenAlong.includes(kind))
          .flatMap(({ mishaps }) => mishaps)
          .filter((mishap) => inRound(mishap, at) && mishap.side === side)
          .filter(({ kind }) => at.round === 'edging' || kind === 'stitch-doubled');
        return there.length === 0
          ? asAsked
          : there.map(({ kind, count }) => `${kind} ${count ?? 1}`).join(' + ');
      },
    }),
  );
}

function cornersOf(plan: Plan, at: At): Question[] {
  return plan.foundation.corners.flatMap((_, corner) => {
    const at2 = { ...at, corner };
    const one =
      (kinds: Mishap['kind'][], say: (mishap: Mishap) => string | number, none: Found) => (told: Told) => {
        const mishap = told.mishaps.find(
          (each) => kinds.includes(each.kind) && inRound(each, at) && each.corner === corner,
        );
        return mishap ? say(mishap) : none;
      };
    if (at.round === 'foundation') return [];
    const arm = plan.edgings[at.edging]?.arm ?? [0, 0];
    const hidden: Question = {
      key: `after-corner.${nameOfRound(at)}.${corner}`,
      look: 'after-corner',
      ...at2,
      effort: 1,
      expects: one(['hidden-missed'], () => 'passed over', asAsked),
    };
    const arms = (['before', 'after'] as const).map(
      (end, i): Question => ({
        key: `arm.${nameOfRound(at)}.${corner}.${end}`,
        look: 'arm',
        ...at2,
        end,
        effort: 1,
        expects: ({ mishaps }) => {
          const missed = mishaps.find(
            (each) =>
              inRound(each, at) &&
              each.corner === corner &&
              (each.kind === 'corner-worked-over' || (each.kind === 'arm-missed' && each.end === end)),
          );
          const asked = arm[i] as number;
          return missed ? Math.max(0, asked - (missed.count ?? asked)) : asked;
        },
      }),
    );
    const place: Question = {
      key: `corner-place.${nameOfRound(at)}.${corner}`,
      look: 'corner-place',
      ...at2,
      effort: 2,
      expects: one(['corner-moved'], ({ count }) => count ?? 0, 0),
    };
    return [hidden, ...arms, place];
  });
}

function joins(plan: Plan): Question[] {
  const sum = (mishaps: readonly Mishap[], kind: Mishap['kind']): number =>
    mishaps.filter((mishap) => mishap.kind === kind).reduce((total, { count }) => total + (count ?? 0), 0);
  const join = { round: 'join' as ActRound };
  const together = ({ mishaps }: Told): string =>
    mishaps
      .flatMap((one) => (one.kind === 'two-with-one' ? [`${one.kind} ${one.of} ${one.side}`] : []))
      .join(' + ');
  return [
    {
      key: 'join-along',
      look: 'join-along',
      ...join,
      effort: plan.pairs,
      expects: (told) => together(told) || asAsked,
    },
    {
      key: 'join-start',
      look: 'join-start',
      ...join,
      effort: 4,
      expects: ({ mishaps }) => sum(mishaps, 'join-offset'),
    },
    {
      key: 'join-side',
      look: 'join-side',
      ...join,
      effort: 4,
      expects: ({ mishaps }) => sum(mishaps, 'join-wrong-side'),
    },
    ...plan.edge.corners.map(
      (_, corner): Question => ({
        key: `join-corner.${corner}`,
        look: 'join-corner',
        ...join,
        corner,
        effort: 1,
        expects: ({ mishaps }) =>
          mishaps.some((mishap) => mishap.kind === 'join-chain-skipped' && mishap.corner === corner)
            ? 'passed over'
            : asAsked,
      }),
    ),
  ];
}

export const lookOf = ({ effort: _effort, expects: _expects, ...look }: Question): Look => look;
