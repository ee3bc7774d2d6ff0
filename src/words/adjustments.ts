/** What is to be worked otherwise than the recipe first had it, a line for every side and corner. */
import { type Act, type ActKind, type ActRound, entryOf, type Plan, roundsOf } from '../../core/index.ts';
import { many, ordinal } from './numbers.ts';
import { term } from './terms.ts';
import type { Speech } from './words.ts';

/** What is asked for in one round, the acts of a side or corner together. */
export function adjustmentsIn(acts: readonly Act[], round: ActRound, edging = 0): Act[][] {
  const groups = new Map<string, Act[]>();
  for (const act of acts) {
    const own = act.round ?? roundsOf(act.kind)[0];
    if (!act.asked || own !== round || (own === 'edging' && (act.edging ?? 0) !== edging)) continue;
    const key = `${act.kind} ${act.side} ${act.corner} ${act.of}`;
    groups.set(key, [...(groups.get(key) ?? []), act]);
  }
  return [...groups.values()];
}

/**
 * "Side 2: 11, miss the 7th." `made`: stitches of the round's sides as they come out.
 * The acts are of one kind and on one side, or at one corner.
 */
export function sayAdjustments(
  acts: readonly Act[],
  plan: Plan,
  made: readonly number[],
  speech: Speech,
): string {
  const [first] = acts;
  if (!first) return '';
  const comes = first.side === undefined || entryOf(first.kind).onFront ? '' : `${made[first.side] ?? ''}`;
  const does = ASKED[first.kind]?.(acts, plan, speech) ?? '';
  return `${sayWhere(first, plan)}: ${[comes, does].filter(Boolean).join(', ')}.`;
}

function sayWhere({ kind, side, corner }: Act, plan: Plan): string {
  if (corner !== undefined) return `Corner ${corner + 1}`;
  if (plan.edge.sides.length === 1) return entryOf(kind).onFront ? 'Front' : 'The round';
  return `${entryOf(kind).onFront ? 'Front side' : 'Side'} ${(side ?? 0) + 1}`;
}

const ASKED: Partial<Record<ActKind, (acts: readonly Act[], plan: Plan, speech: Speech) => string>> = {
  'stitch-missed': (acts, _plan, { dialect }) => `${term('miss', dialect)} ${sayPlaces(acts)}`,
  'stitch-doubled': (acts) => `work ${(acts[0]?.count ?? 1) + 1} in ${sayPlaces(acts)}`,
  'corner-chains': ([act], plan) =>
    plan.edge.corners[0]?.made === 'stitch'
      ? many(act?.count ?? 0, 'stitch', 'stitches')
      : many(act?.count ?? 0, 'chain'),
  'corner-moved': ([act]) => {
    const by = act?.count ?? 0;
    return `${many(Math.abs(by), 'stitch', 'stitches')} ${by < 0 ? 'earlier' : 'later'}`;
  },
  'two-with-one': (acts) => {
    const of = acts[0]?.of ?? 'back';
    return `take 2 of the ${of} with 1 of the ${of === 'back' ? 'front' : 'back'}, at ${sayPlaces(acts)}`;
  },
};

/** "the 7th", "the 7th, 14th and 21st". */
function sayPlaces(acts: readonly Act[]): string {
  const places = acts
    .map(({ place = 0 }) => place)
    .sort((a, b) => a - b)
    .map((place) => ordinal(place + 1));
  const last = places.pop() ?? '';
  return places.length === 0 ? `the ${last}` : `the ${places.join(', ')} and ${last}`;
}

/** That the recipe is no longer the first one. */
export const sayAdjusted = (count: number): string =>
  `This is the recipe from here on, with ${many(count, 'adjustment')}.`;
