/**
 * What is ticked off: a box for each marker of each side, for each corner, and for what closes a round.
 *
 * Rule: boxes follow the walk of the recipe with what is worked otherwise by wish, and without any mishap. The last
 * box of a side ends where the side does, whether a marker lies there or not.
 */
import { type Plan, type Step, type Steps, steps } from '../../../core/index.ts';
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
  stretches: readonly TickStretch[];
};

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

export function tickRounds({ making: { plan }, project, settings }: Snapshot): TickRound[] {
  return roundsOf(plan, recipeWalk(plan, project, settings));
}

/** The walk as the recipe asks for it. */
const recipeWalk = (plan: Plan, { adjustments }: Project, { manner }: Pick<Settings, 'manner'>): Steps =>
  steps(plan, adjustments, { manner });

function roundsOf({ choices: { markerEvery } }: Plan, walk: Steps): TickRound[] {
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
