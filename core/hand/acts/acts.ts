/** Every kind of act there is, and asking about one. */

import type { ActRound, Plan } from '../../types.ts';
import { armMissed } from './arm-missed.ts';
import { armsForgotten } from './arms-forgotten.ts';
import { attachDoubled } from './attach-doubled.ts';
import { bothLoops } from './both-loops.ts';
import { chainsAsStitches } from './chains-as-stitches.ts';
import { chainsLeftOut } from './chains-left-out.ts';
import { closingBesideFirst } from './closing-beside-first.ts';
import { closingForgotten } from './closing-forgotten.ts';
import { closingOverFirst } from './closing-over-first.ts';
import { closingWorked } from './closing-worked.ts';
import { cornerChains } from './corner-chains.ts';
import { cornerForgotten } from './corner-forgotten.ts';
import { cornerMoved } from './corner-moved.ts';
import { cornerWorkedOver } from './corner-worked-over.ts';
import type { ActParts, Entry, Field, When, WhyNot } from './entry.ts';
import { frontLoops } from './front-loops.ts';
import { hiddenMissed } from './hidden-missed.ts';
import { joinChainSkipped } from './join-chain-skipped.ts';
import { joinOffset } from './join-offset.ts';
import { joinWrongSide } from './join-wrong-side.ts';
import { lastHole } from './last-hole.ts';
import { markerMiscounted } from './marker-miscounted.ts';
import { orderNotMirrored } from './order-not-mirrored.ts';
import { startCounted } from './start-counted.ts';
import { stitchBetween } from './stitch-between.ts';
import { stitchDoubled } from './stitch-doubled.ts';
import { stitchMissed } from './stitch-missed.ts';
import { twisted } from './twisted.ts';
import { twoWithOne } from './two-with-one.ts';

/** In the order in which they are told. */
const kinds = {
  'start-counted': startCounted,
  'closing-forgotten': closingForgotten,
  'closing-over-first': closingOverFirst,
  'closing-beside-first': closingBesideFirst,
  'stitch-missed': stitchMissed,
  'stitch-doubled': stitchDoubled,
  'stitch-between': stitchBetween,
  'marker-miscounted': markerMiscounted,
  'corner-moved': cornerMoved,
  'corner-forgotten': cornerForgotten,
  'corner-chains': cornerChains,
  'arm-missed': armMissed,
  'corner-worked-over': cornerWorkedOver,
  'hidden-missed': hiddenMissed,
  'attach-doubled': attachDoubled,
  'closing-worked': closingWorked,
  'both-loops': bothLoops,
  'front-loops': frontLoops,
  'chains-as-stitches': chainsAsStitches,
  'chains-left-out': chainsLeftOut,
  'arms-forgotten': armsForgotten,
  'order-not-mirrored': orderNotMirrored,
  'join-offset': joinOffset,
  'join-wrong-side': joinWrongSide,
  'join-chain-skipped': joinChainSkipped,
  'two-with-one': twoWithOne,
  'last-hole': lastHole,
  twisted,
};

type Kinds = typeof kinds;
export type ActKind = keyof Kinds;
type Acts = { [K in ActKind]: Kinds[K] extends Entry<infer A> ? A : never };

/** Something a hand does beside the recipe. */
export type Act = Acts[ActKind];
/** One that happened. */
export type Mishap = Act;
/** One that is asked for: part of what is to be worked from here on. */
export type Adjustment = Act & { asked: true };

export const asked = (act: Act): Adjustment => ({ ...act, asked: true });

const entries: { [K in ActKind]: Entry<Acts[K]> } = kinds;

export const actKinds = Object.keys(kinds) as ActKind[];

/** All that there is to say about a kind. */
export const entryOf = <K extends ActKind>(kind: K): Entry<Acts[K]> => entries[kind];

/** The times at which a hand can do otherwise, in the order of the making. */
export const actRounds: readonly ActRound[] = ['plan', 'foundation', 'edging', 'join'];

/** All kinds that can happen in a round. A kind may stand in two rounds. */
export const kindsIn = (round: ActRound): ActKind[] =>
  actKinds.filter((kind) => roundsOf(kind).includes(round));

/** The rounds in which a kind can happen; the first is meant where an act does not say. */
export const roundsOf = (kind: ActKind): readonly [ActRound, ...ActRound[]] => entryOf(kind).rounds;

/** Whether a kind has a field, and cannot be told without it. */
export const needs = (kind: ActKind, field: Field): boolean => fieldsOf(kind)[field] === 'needed';
export const has = (kind: ActKind, field: Field): boolean => fieldsOf(kind)[field] !== undefined;
const fieldsOf = (kind: ActKind): { readonly [F in Field]?: 'needed' | 'optional' } => entryOf(kind).fields;

/** A round that is worked, as an act names it. */
export type AtRound = { round: 'foundation' | 'edging'; edging?: number };

/** Why an act of a kind cannot happen on a panel; null where it can. */
export function whyNot(kind: ActKind, when: When, plan: Plan): WhyNot | null {
  if (needs(kind, 'corner') && plan.edge.corners.length === 0) return 'no-corners';
  return entryOf(kind).whyNot?.(plan, when) ?? null;
}

/** An act of a kind, from what was chosen: the fields that the kind has, and no others. */
export function actOf(
  kind: ActKind,
  { round, edging, asked: isAsked, ...chosen }: Omit<ActParts, 'kind'>,
): Act {
  const own = Object.entries(chosen).filter(([field]) => has(kind, field as Field));
  const when = {
    ...(round && { round }),
    ...(edging !== undefined && { edging }),
    ...(isAsked && { asked: isAsked }),
  };
  // Each entry's `fields` are by their type those of its act.
  return { kind, ...when, ...Object.fromEntries(own) } as Act;
}
