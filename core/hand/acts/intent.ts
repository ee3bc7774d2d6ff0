/**
 * What the hand means to do, before it does it: the recipe, and where acts make it mean something else.
 *
 * Rule: an act changes what is meant and never what comes of it. Numbers named after acts are their indices in the
 * list given, so that what is done because of one can be marked with it. Only what differs from the recipe is here;
 * of two acts that say the same thing the first stands.
 */

/** How the front is read while planning. */
export type Reading = {
  /** Corner positions are taken for side stitches, or taken off once more. */
  addsCorners: boolean;
  dropsCorners: boolean;
  /** The foundation leaves room for what the edging adds. */
  allowsForArms: boolean;
  /** The back's sides run the other way round than the front's. */
  mirrors: boolean;
};

/** Otherwise than one stitch in one place. */
export type Slip = {
  /** A stitch of a side as planned; or the first one after a corner. */
  at: { side: number; place: number } | { afterCorner: number };
  /** `counts`: so many are counted and not made; `makes`: so many more are made and not counted. */
  does: 'counts' | 'makes';
  times: number;
  act: number;
};

/** A corner made so many stitches late (+) or early (-). */
export type Move = { corner: number; by: number; then: 'from-corner' | 'from-total'; act: number };

export type CornerIntent = {
  forgotten?: number;
  moved?: number;
  size?: { is: number; act: number };
  /** Stitches of an arm that are left out. */
  before?: { less: number; act: number };
  after?: { less: number; act: number };
};

/** A round of the back: foundation or edging. */
export type RoundIntent = {
  /** The chains at the beginning are counted as a stitch; a stitch is made where the yarn is attached. */
  startCounted?: number;
  attachDoubled?: number;
  /** The whole round goes into other loops than the back ones. */
  loops?: number;
  slips: Slip[];
  moves: Move[];
  /** By corner; most have nothing. */
  corners: CornerIntent[];
  /** The closing's own stitch is worked as well; the closing below is worked into; it is laid over, or beside. */
  closingForgotten?: number;
  closingWorked?: number;
  closedOver?: number;
  closedBeside?: number;
  twisted?: number;
};

export const asRecipe = (): RoundIntent => ({ slips: [], moves: [], corners: [] });

/** What is meant at a corner, to be changed. */
export function cornerOf({ corners }: RoundIntent, corner: number): CornerIntent {
  const there = corners[corner] ?? {};
  corners[corner] = there;
  return there;
}
