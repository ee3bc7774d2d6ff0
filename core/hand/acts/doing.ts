/** What acts make the hand mean: while planning, in a round, in the join. */
import type { ActRound, Joining, Plan } from '../../types.ts';
import { type Act, entryOf, roundsOf } from './acts.ts';
import { asRecipe, type Reading, type RoundIntent } from './intent.ts';

/** An act with its round settled, and its place in the list given. */
export type Settled = Act & { round: ActRound; edging: number; index: number };

const settled = (act: Act, index: number, round = act.round ?? roundsOf(act.kind)[0]): Settled =>
  Object.assign({}, act, { round, edging: act.edging ?? 0, index });

export const settle = (acts: readonly Act[]): Settled[] => acts.map((act, index) => settled(act, index));

export function readingWith(acts: readonly Settled[]): Reading {
  const reading: Reading = { addsCorners: false, dropsCorners: false, allowsForArms: true, mirrors: true };
  for (const act of acts) entryOf(act.kind).plans?.(reading, act);
  return reading;
}

export function intentFor(acts: readonly Settled[], round: 'foundation' | 'edging', edging = 0): RoundIntent {
  const intent = asRecipe();
  for (const act of acts)
    if (act.round === round && (round === 'foundation' || act.edging === edging))
      entryOf(act.kind).works?.(intent, act);
  return intent;
}

export function joinMade({ choices }: Plan, acts: readonly Settled[]): Joining {
  const made: Joining = {
    ...choices.joinStart,
    ...(choices.open !== undefined && { open: choices.open }),
    offset: 0,
    turned: 0,
    skipped: [],
    lastHoleOpen: false,
    together: [],
  };
  for (const act of acts) entryOf(act.kind).joins?.(made, act);
  return made;
}
