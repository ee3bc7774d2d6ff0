/**
 * What is ticked off: a box for each marker of each side, for each corner, and for what closes a round.
 *
 * Rule: boxes follow the walk of the recipe with what is worked otherwise by wish, and without any mishap. The last
 * box of a side ends where the side does, whether a marker lies there or not.
 */
import {
  countRound,
  type Plan,
  planFrontStrip,
  type Step,
  type Steps,
  steps,
  work,
} from '../../../core/index.ts';
import { clothFields } from '../../state/cloth-fields.ts';
import type { Project, Settings, Snapshot } from '../../state/snapshot.ts';
import type { TickedAct } from '../../words/pattern/sheet-messages.ts';

export type TickStretch =
  /** `ends`: the stitch at which each box ends, counted from the corner. */
  | { what: 'side'; side: number; part: number; parts: number; count: number; ends: readonly number[] }
  | { what: 'corner'; corner: number }
  | { what: 'act'; act: TickedAct };

export type TickRound = {
  of: 'foundation' | 'edging' | 'join';
  edging: number;
  /** Of the strip that a front of cloth has of its own: sides and corners are the front's. */
  isFront: boolean;
  stretches: readonly TickStretch[];
  atEnd: AtEnd;
};

/** What the round comes to. */
type AtEnd = { sides: number[]; corners: number[]; total: number };

/** Boxes in all. */
export const boxesIn = (rounds: readonly TickRound[]): number =>
  rounds
    .flatMap(({ stretches }) => stretches)
    .reduce((sum, one) => sum + (one.what === 'side' ? one.ends.length : 1), 0);

const acts: Partial<Record<Step['kind'], TickedAct>> = {
  'close-tops': 'closing',
  'close-round': 'closing',
  'pad-in': 'pad-in',
  'last-hole': 'last-pair',
};

const stages: Partial<Record<Step['stage'], TickRound['of']>> = {
  foundation: 'foundation',
  'foundation-closing': 'foundation',
  edging: 'edging',
  'edging-closing': 'edging',
  join: 'join',
};

/** The back's rounds, a front of cloth's strip after them, and the join last. */
export function tickRounds({ making: { plan }, project, settings }: Snapshot): TickRound[] {
  const rounds = roundsOf(plan, recipeWalk(plan, project, settings)).map(
    (round): TickRound => ({ ...round, isFront: false, atEnd: atEnd(plan, project, round) }),
  );
  if (project.texts[clothFields.front] !== 'cloth') return rounds;
  const isJoin = ({ of }: TickRound): boolean => of === 'join';
  return [
    ...rounds.filter((round) => !isJoin(round)),
    ...frontRounds(plan, settings),
    ...rounds.filter(isJoin),
  ];
}

/** Side j of the front's strip is front side `start.side + j`, and so are its corners. */
function frontRounds(plan: Plan, settings: Pick<Settings, 'manner'>): TickRound[] {
  const strip = planFrontStrip(plan);
  if (!strip.ok) return [];
  const none = { adjustments: [] };
  const onFront = (index: number): number => (plan.choices.start.side + index) % plan.edge.sides.length;
  return roundsOf(strip.value, recipeWalk(strip.value, none, settings))
    .filter(({ of }) => of !== 'join')
    .map((round) => ({
      ...round,
      isFront: true,
      stretches: round.stretches.map((one) => {
        if (one.what === 'side') return { ...one, side: onFront(one.side) };
        return one.what === 'corner' ? { ...one, corner: onFront(one.corner) } : one;
      }),
      atEnd: atEnd(strip.value, none, round),
    }));
}

type WalkedRound = Pick<TickRound, 'of' | 'edging' | 'stretches'>;

/** As the round comes out, with what is worked otherwise by wish. */
function atEnd(
  plan: Plan,
  { adjustments }: Pick<Project, 'adjustments'>,
  { of, edging }: WalkedRound,
): AtEnd {
  if (of === 'join') return { sides: [], corners: [], total: plan.pairs };
  const { foundation, edgings } = work(plan, adjustments);
  const round = of === 'foundation' ? foundation : (edgings[edging] ?? foundation);
  const { sides, corners } = countRound(round);
  return { sides, corners: corners.map(({ size }) => size), total: round.length };
}

/** The walk as the recipe asks for it. */
const recipeWalk = (
  plan: Plan,
  { adjustments }: Pick<Project, 'adjustments'>,
  { manner }: Pick<Settings, 'manner'>,
): Steps => steps(plan, adjustments, { manner });

function roundsOf({ choices: { markerEvery } }: Plan, walk: Steps): WalkedRound[] {
  const rounds = new Map<string, { of: TickRound['of']; edging: number; stretches: TickStretch[] }>();
  walk.stretches.forEach(({ from, stage, edging, side, corner }, i) => {
    const of = stages[stage];
    if (of === undefined) return;
    const key = `${of} ${of === 'edging' ? edging : 0}`;
    const round = rounds.get(key) ?? { of, edging: of === 'edging' ? edging : 0, stretches: [] };
    rounds.set(key, round);
    const to = walk.stretches[i + 1]?.from ?? walk.length;
    if (corner >= 0) round.stretches.push({ what: 'corner', corner });
    else if (side >= 0) round.stretches.push(sideOf(walk.at(from), to - from, side, markerEvery));
    else
      for (let at = from; at < to; at++) {
        const act = acts[walk.at(at).kind];
        if (act) round.stretches.push({ what: 'act', act });
      }
  });
  return [...rounds.values()].map((round) => ({ ...round, stretches: withParts(round.stretches) }));
}

type SideStretch = Extract<TickStretch, { what: 'side' }>;

/** @param first the stretch's first step: it may begin within its side */
function sideOf({ place }: Step, count: number, side: number, every: number): SideStretch {
  const last = place + count;
  const ends: number[] = [];
  for (let end = (Math.floor(place / every) + 1) * every; end < last; end += every) ends.push(end);
  return { what: 'side', side, part: 0, parts: 1, count, ends: [...ends, last] };
}

/** A side that is worked in several parts has them told apart. */
function withParts(stretches: readonly TickStretch[]): TickStretch[] {
  const sides = stretches.flatMap((one) => (one.what === 'side' ? [one.side] : []));
  const seen = new Map<number, number>();
  return stretches.map((one) => {
    if (one.what !== 'side') return one;
    const part = seen.get(one.side) ?? 0;
    seen.set(one.side, part + 1);
    return { ...one, part, parts: sides.filter((side) => side === one.side).length };
  });
}
