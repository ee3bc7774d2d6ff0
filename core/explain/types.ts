/** What `explain` answers with: causes, how they are told apart, and how to put them right. */

import type { ActKind, Adjustment, Mishap } from '../hand/acts/acts.ts';
import type { Commonness, SeenAs } from '../hand/acts/entry.ts';
import type { Tallies } from '../hand/tally.ts';
import type { ActRound, Seen, Stand } from '../types.ts';

/** A front side whose number was not right: it has (or was taken to have) `by` stitches more than was given. */
export type FrontMiscount = { side: number; by: number };

export type CauseKind = ActKind | 'front-miscounted';

/**
 * What the back was made for, where the front was miscounted: the front as it really is (only the number given is
 * wrong), the recipe (the front is really another), or neither (made from another number than the one given).
 */
export type BackMadeFor = 'front' | 'recipe' | 'neither';

/** One thing that went wrong: a single mishap, a habit kept up everywhere, or the front miscounted. */
export type Cause = Commonness & {
  kind: CauseKind;
  /** Done at every corner, on every side or in every round: one habit is one cause. */
  habit: boolean;
  /** The place on its side is one of many that give the same counts. */
  anywhere: boolean;
  mishaps: Mishap[];
  front: FrontMiscount[];
  backMadeFor?: BackMadeFor;
};

/** In words only: no percentage could be measured. */
export type Sure = 'most likely' | 'likely' | 'possible';

export type LookAt =
  | 'round'
  | 'side'
  | 'corner'
  | 'front'
  | 'closing'
  | 'after-corner'
  | 'arm'
  | 'corner-place'
  | 'along'
  | 'first-corner'
  | SeenAs
  | 'join-start'
  | 'join-side'
  | 'join-corner'
  | 'join-along';

/**
 * Somewhere to count or to look. Sides, corners and edgings are the back's, from 0; with `front` the side is the
 * front's. `key` names it, for `Options.looked` and for fields.
 */
export type Look = {
  key: string;
  look: LookAt;
  round?: ActRound;
  edging?: number;
  side?: number;
  corner?: number;
  end?: 'before' | 'after';
};

/** What is found there: a count, or one of a few words. */
export type Found = number | string;

/** Look there: this explanation holds if it is so. */
export type Tell = Look & { expect: Found; asRecipe: Found };

/** The one count that changes most in what to do, and what each answer would leave of `explanations`. */
export type NextCount = Look & {
  answers: { found: Found; leaves: number[] }[];
  /** The share of what is left that one cure puts right: now, and on average once this is known. */
  cured: { now: number; then: number };
};

export type CureKind =
  | 'correct-the-number'
  | 'rip-back'
  | 'make-up'
  | 'ease-in'
  | 'redo-join'
  | 'close-hole'
  | 'leave';

/** Where a cure is worked: places of a side, in the back's working order (`front`: the front's). */
export type CurePlaces = {
  round: ActRound | 'front';
  edging: number;
  side: number;
  corner?: number;
  /** Work two in one, or miss one, or take two of one piece with one of the other. */
  act: 'two-in-one' | 'miss-one' | 'two-back-with-one' | 'two-front-with-one';
  places: number[];
};

export type Cost = {
  /** Stitches of the back's rounds that come off, and slip stitches of the join. */
  stitches: number;
  slips: number;
  /** Rounds that come off whole because they stand on the place. */
  rounds: number;
  /** The strip comes off the cloth. */
  sewing: boolean;
  /** Stitches and slip stitches made again, until the work stands where it stood. */
  again: number;
};

export type Cure = {
  kind: CureKind;
  recommended: boolean;
  /** Why it is fine, or what it looks like afterwards. */
  looks: 'as-planned' | 'hidden' | 'slight' | 'shows' | 'loose' | 'open';
  /** Rip back to the stitch named: it is the first to go. */
  to?: { round: ActRound; edging: number; side: number; corner?: number; place: number; node: number };
  /** Counted from where the work stands, by carrying it out. */
  cost: Cost;
  at: CurePlaces[];
  /** Numbers for the front's sides, where those are what was wrong. */
  frontSides?: FrontMiscount[];
  /** What is left of the mishaps afterwards, and what is worked otherwise on purpose; both for `work`. */
  mishaps: Mishap[];
  adjustments: Adjustment[];
  /** The counts afterwards. */
  seenAfter: Seen;
  /** It meets afterwards, stitch for stitch, or with easing. */
  then: 'meets' | 'meets-with-easing' | 'does-not-meet';
};

export type Explanation = {
  /** Carried out by `work` on the plan given they make what was seen. */
  mishaps: Mishap[];
  causes: Cause[];
  front?: FrontMiscount[];
  sure: Sure;
  /** Lower is likelier. `rank` is the sum: causes count most, then how rare they are. */
  rank: number;
  score: { causes: number; rarity: number };
  /** The counts of the simulation, all of them, also where nothing was seen. */
  gives: Tallies & { join?: JoinSeen; front: number[] };
  tell: Tell[];
  cures: Cure[];
};

/** What the join shows: drift at every corner passed, and what is left over (back − front). */
export type JoinSeen = { drift: number[]; leftOver: number };

/** The nearest that can be said where nothing fits. */
export type Nearest = { explanation: Explanation; off: number };

export type Explained = {
  /** Best first. One without mishaps: all that was counted is as the recipe has it. */
  explanations: Explanation[];
  nextCount?: NextCount;
  /** The cure that is right whichever it was of the explanations with the fewest causes. */
  cureForAll?: Cure;
  nearest?: Nearest;
  /** From where cures and costs are counted. */
  stands: Stand;
  /** How it was found: makings tried, of so many that plain trying would need; sets before the list was cut. */
  effort: {
    tried: number;
    plain: number;
    candidates: number;
    sets: number;
    /** False where so much is off that the search was given up: there may be other sets of as many causes. */
    complete: boolean;
  };
};

export type Options = {
  /** Most explanations listed (40). */
  most?: number;
  /** Most causes in one explanation, 1 to 3 (3). */
  causes?: 1 | 2 | 3;
  /** How far the piece is. Default: the last round of which anything was seen; joined, where the join was. */
  stands?: Stand;
  /** What was found by looking where `Tell` or `NextCount` said. */
  looked?: readonly { key: string; found: Found }[];
  /** False leaves out tells, cures and the next count. */
  advice?: boolean;
};
