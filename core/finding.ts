/**
 * What is wrong between two rounds, told once for all who speak of it: the card, the list, the drawing, the voice.
 *
 * Rule: a finding names what the counts tell and no more. A side's count names the side, never the stitch.
 */

/**
 * How bad it is, on a scale a maker knows: our own judgement, from the share along the side and from the place.
 * The first two lie within "meets with easing", the others within "does not meet".
 */
export type Severity = 'eases-in' | 'shows' | 'puckers' | 'cannot-join';

/**
 * A side of the back against the front side it meets: `by` is what is left of back minus front, `of` the front's
 * stitches, `taken` how many more of the back than of the front the join took two of.
 */
export type SideOff = { frontSide: number; backSide: number; by: number; of: number; taken: number };

/** A corner of the back that comes `by` stitches late (+) or early (-) in the back's own working order. */
export type CornerMoved = { frontCorner: number; backCorner: number; by: number };

/**
 * `by`: corners too many (+) or too few (-). `leftOut`: corners of the back, by the numbers they should have, each of
 * which may be the one left out: one where it is known, none where no count tells. `frontCorner`: where it should be,
 * if it is known and the rest is laid so.
 */
export type CornerCount = { code: 'corner-count'; by: number; leftOut: number[]; frontCorner?: number };

export type FindingOf =
  | { code: 'twisted' | 'wrong-order' | 'last-hole' }
  | CornerCount
  /** `by`: sides the back would have to be turned; places the join begins late (+). */
  | { code: 'turned' | 'offset'; by: number }
  /** The sides on both sides of the corners, in the back's working order: what one has too much the next lacks. */
  | { code: 'corner-moved'; corners: CornerMoved[]; sides: SideOff[] }
  | ({ code: 'side-off' } & SideOff)
  | { code: 'corner-size'; frontCorner: number; backCorner: number; by: number }
  | { code: 'chain-skipped'; frontCorner: number; backCorner: number };

export type Finding = FindingOf & {
  /** null where nothing puckers: a hole is open or it is not. */
  severity: Severity | null;
  /** Goes away with the cause told before it: a piece in the wrong order or turned. */
  follows: boolean;
};
