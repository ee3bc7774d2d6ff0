/**
 * Words that turn with the hand, and nothing else does. A right-handed maker works from right to left,
 * so a round runs anticlockwise seen from its right side; a left-handed maker the other way.
 */
import type { Speech } from './words.ts';

type Turning = Pick<Speech, 'dialect' | 'hand'>;

/** The side on which the next stitch lies. */
export const onwards = ({ hand }: Turning): string => (hand === 'right' ? 'left' : 'right');
