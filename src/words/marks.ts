/** The words on the drawing itself: few, short, and true from the side it is seen from. */

/** "front 3 · 58", at its side; without the side's number where there is no room for it, or no sides. */
export const sayFrontSide = (side: number | null, stitches: number): string =>
  `front ${sayNumbered(side, stitches)}`;

/** "back 3 · 57", at its side. */
export const sayBackSide = (side: number | null, stitches: number): string =>
  `back ${sayNumbered(side, stitches)}`;

/** "back 2 · 99 along both": one side of the back where the front has two. */
export const sayAlongBoth = (side: number | null, stitches: number): string =>
  `${sayBackSide(side, stitches)} along both`;

/** Both counts of a side that are the same, where there is little room. */
export const sayBothSides = (stitches: number): string => `both ${stitches}`;

/** "3 · 58". */
export const sayNumbered = (side: number | null, stitches: number): string =>
  side === null ? `${stitches}` : `${side + 1} \u00b7 ${stitches}`;

/** "corner 3"; corners are told from 1. */
export const sayCorner = (corner: number): string => `corner ${corner + 1}`;

/** "back corner 2", by the back's own numbers. */
export const sayBackCorner = (corner: number): string => `back corner ${corner + 1}`;

/** Said at a hole in the braid. */
export const sayNoPartner = (count = 1): string => (count === 1 ? 'no partner' : `${count} without partner`);

/** Said where the hand did otherwise and there is no room for what it did, told apart from where the gap that comes of it is drawn. */
export const sayHappened = (): string => 'it happened here';

/** Said where a pair belongs together and was left unjoined. */
export const sayOpen = (): string => 'left open';

/** "2 apart": how far the corners that should meet lie from each other. */
export const sayApart = (places: number): string => `${Math.abs(places)} apart`;

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

/** With the pieces apart: the front side that a back side meets. */
export const sayMeets = (frontSide: number): string => `meets front ${frontSide + 1}`;

/** What is worked of side 1 before the first corner, and what after the last. */
export const PARTS = { first: 'its start', last: 'its rest' } as const;

/** The ring diagram: which side of the back a leg belongs to, what a corner has, and all of the foundation. */
export const sayLeg = (side: number | null, part: keyof typeof PARTS | null = null): string =>
  side === null ? 'in the round' : `side ${side + 1}${part === null ? '' : `, ${PARTS[part]}`}`;
export const sayCornerSize = (
  size: number,
  { corners }: { corners: { made: 'chain' | 'stitch' }[] },
): string => (corners[0]?.made === 'stitch' ? `${size} st` : `${size} ch`);
export const sayFoundationTotal = (total: number): string => `${total} in all, corners too`;
export const saySeenFoundation = (): string => 'foundation, right side up';
