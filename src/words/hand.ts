/**
 * Words that turn with the hand, and nothing else does. A right-handed maker works from right to left,
 * so a round runs anticlockwise seen from its right side; a left-handed maker the other way.
 */
import { term } from './terms.ts';
import type { Speech } from './words.ts';

type Turning = Pick<Speech, 'dialect' | 'hand'>;

/** The side on which the next stitch lies. */
export const onwards = ({ hand }: Turning): string => (hand === 'right' ? 'left' : 'right');

/** The side on which the last stitch lies. */
export const backwards = ({ hand }: Turning): string => (hand === 'right' ? 'right' : 'left');

/** The way a round runs, seen from the side that faces the maker. */
export const roundWise = ({ hand, dialect }: Turning): string =>
  hand === 'right' ? term('anticlockwise', dialect) : 'clockwise';

/** The way the same round runs seen from behind: mirrored. */
export const roundWiseBehind = ({ hand, dialect }: Turning): string =>
  roundWise({ dialect, hand: hand === 'right' ? 'left' : 'right' });
