/** The words on the drawing itself: few, short, and true from the side it is seen from. */

/** "front 58", at its side. */
export const sayFrontSide = (stitches: number): string => `front ${stitches}`;

/** "back 57", at its side. */
export const sayBackSide = (stitches: number): string => `back ${stitches}`;

/** "corner 3"; corners are told from 1. */
export const sayCorner = (corner: number): string => `corner ${corner + 1}`;

/** "back corner 2", by the back's own numbers. */
export const sayBackCorner = (corner: number): string => `back corner ${corner + 1}`;

/** Said at a hole in the braid. */
export const sayNoPartner = (count = 1): string => (count === 1 ? 'no partner' : `${count} without partner`);

/** Said where a pair belongs together and was left unjoined. */
export const sayOpen = (): string => 'left open';

/** "corner 2 late" with the number that stands on the ruler. */
export const sayDrift = (late: number): string => (late > 0 ? `+${late}` : `\u2212${-late}`);

export const sayClash = (late: number): string => `${Math.abs(late)} ${late > 0 ? 'late' : 'early'}`;

export const saySeenTogether = (): string => 'wrong sides together, seen from the front';

/** Which piece lies there and which of its sides shows; shown with the pieces apart. */
export const saySeenFront = (): string => 'front, right side up';
export const saySeenBack = (): string => 'back, right side up';

/** The close-up: which side the hand looks at. Short: on a phone it shares its line. */
export const saySeenClose = (back: boolean): string =>
  back ? "the back's right side" : 'seen from the front';

export const sayFoundationStart = (): string => 'the back begins here';
export const sayJoinStart = (): string => 'the join begins here';

/** Names of the lanes in the close-up. */
export const sayFrontLane = (): string => 'front edge';
export const sayBackLane = (): string => 'edging on the foundation';
export const sayFoundation = (): string => 'foundation';
export const sayEdging = (edging: number): string => `edging ${edging + 1}`;

/** Sides that face each other bear the same letter, A to X. */
export const sayFacing = (index: number): string => String.fromCharCode(65 + index);

/** "A · 58". */
export const sayFacingCount = (index: number, stitches: number): string =>
  `${sayFacing(index)} \u00b7 ${stitches}`;
