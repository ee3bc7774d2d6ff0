/**
 * What there is to say about one kind of act.
 *
 * An act is something a hand does beside the recipe: by mistake (a mishap), or because it is asked for (an
 * adjustment). Each kind is one file of this folder; what is not in its entry and its words is nowhere.
 */
import type { ActRound, Joining, Plan, StepKind } from '../../types.ts';
import type { Reading, RoundIntent } from './intent.ts';

/** Everything an act may have to say about itself. Sides, corners and places are the back's, from 0. */
type Fields = {
  side: number;
  /** Which stitch of the side as planned, in working order after the corner. */
  place: number;
  corner: number;
  count: number;
  end: 'before' | 'after';
  then: 'from-corner' | 'from-total';
  /** Which piece. */
  of: 'front' | 'back';
};
export type Field = keyof Fields;

/** An act of a kind, with the fields it needs and those it may have; it has none of the others. */
export type ActOf<
  Kind extends string,
  Round extends ActRound,
  Needs extends Field = never,
  May extends Field = never,
> = {
  kind: Kind;
  /** The first round in which the kind can happen, where nothing is said. */
  round?: Round;
  /** Which edging, from 0. */
  edging?: number;
  /** It is asked for, and did not just happen. */
  asked?: true;
} & Pick<Fields, Needs> &
  Partial<Pick<Fields, May>> & { [F in Exclude<Field, Needs | May>]?: never };

/** Any act, by its fields alone. */
export type ActParts = { kind: string; round?: ActRound; edging?: number; asked?: true } & Partial<Fields>;

type RoundOf<A extends ActParts> = NonNullable<A['round']>;
type Has<A extends ActParts> = { [F in Field]-?: NonNullable<A[F]> extends never ? never : F }[Field];

/** A time at which an act happens; `edging` is 0 where the round is none. */
export type When = { round: ActRound; edging: number };

/** Where an act is to happen, as far as it is chosen yet. */
export type Spot = When & { side: number; corner: number; late: boolean };

export type Bounds = { least: number; most: number; usual: number };

/** Why an act cannot happen on a panel as planned. */
export type WhyNot =
  | 'no-corners'
  | 'start-counts'
  | 'closing-adds-none'
  | 'closing-adds-one'
  | 'corners-empty'
  | 'nothing-in-corners'
  | 'edging-adds-none'
  | 'one-side'
  | 'one-order';

/**
 * How rare a kind is; lower is commoner, a step of 1 reads "clearly rarer". `reports`: it stands where published
 * reports of wrong counts have it (24 public reports); all others, and all distances, are our own judgement.
 */
export type Commonness = { rarity: number; source: 'reports' | 'judgement' };

/** Where in the walk it shows, if not at the stitch that is marked with it. */
type Shows =
  | { at: 'mark' }
  | { at: StepKind }
  | { at: 'second-side' }
  | { at: 'corner-passed' }
  | { at: 'pair' };

/** What is looked at where no count tells: the loops along a round, how the ring lies, the pair joined last. */
export type SeenAs = 'loops' | 'twist' | 'hole';

export type Entry<A extends ActParts> = {
  /** In which rounds it can happen; the first is meant where an act does not say. */
  rounds: readonly [RoundOf<A>, ...RoundOf<A>[]];
  fields: Readonly<Record<Has<A>, 'needed' | 'optional'>>;
  /** What its number can be; left out where it has none, or none to choose. */
  count?: (plan: Plan, spot: Spot) => Bounds;
  /** Its side and place are the front's. */
  onFront?: true;
  /** It can be asked for, as an adjustment. */
  canBeAsked?: true;
  /** The smallest that its number may be; without it, it goes below zero. */
  least?: 0 | 1;
  /** The number goes both ways: below zero is early. */
  isSigned?: true;
  /** `asked`: what the recipe has where the act's number would be. */
  asked?: (plan: Plan, spot: Spot) => number;
  /** Null where it can happen. */
  whyNot?: (plan: Plan, when: When) => WhyNot | null;
  /** What the hand means because of it. */
  plans?: (reading: Reading, act: A) => void;
  works?: (intent: RoundIntent, act: A & { index: number }) => void;
  joins?: (made: Joining, act: A & { index: number }) => void;
  shows: Shows;
  /** Its number says how far off it is: the bigger, the rarer. */
  sized?: true;
  /** Stitches too few or too many on a side: one slip, told in two ways. */
  changesStitches?: true;
  /** No count shows it: it is seen by looking there. */
  seenAs?: SeenAs;
  /** It is done from the round's beginning to its end. */
  wholeRound?: true;
  /** On a foundation it is put right where the ring is closed. */
  atClosing?: true;
  prior: Commonness;
};
