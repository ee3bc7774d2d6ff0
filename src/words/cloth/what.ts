/** What it is to be, and what the front is. */
import type { Becomes } from '../../state/cloth-types.ts';
import type { Dialect, Units } from '../../state/snapshot.ts';
import { term } from '../terms.ts';

export const PLACE_HEADING = 'Cloth';
export const WHAT_HEADING = 'What is it to be?';

export const sayBecomes = (becomes: Becomes, dialect: Dialect): string =>
  ({
    cushion: `a ${term('cushion', dialect)}`,
    bag: 'a bag or pocket',
    cover: 'a cover over a form',
  })[becomes];

export const OPEN_SIDE = 'Front side that stays open';
export const optionSide = (side: string): string => `side ${side}`;
export const OPEN_SIDE_DONE = 'Its stitches are not joined. Fasten off at both its corners.';
export const NO_SIDE_TO_OPEN =
  'A piece without corners has no side to leave open: join it as far as you like, and finish both edges off.';

export const sayForm = (pad: string, hasSides: boolean): string =>
  `The form takes the place of the ${pad}: it goes in before the last ${hasSides ? 'side' : 'quarter'} is joined.`;

export const FRONT_OF_CLOTH = 'The front is cloth too, with a strip of its own';
/** `sides`: of the panel, 0 where their order makes no difference. The front's side n lies where the back's, counted the other way round, does. */
export const sayFrontOfCloth = (sides: number): string =>
  `Cut 2 pieces, one the mirror image of the other, and work 2 strips: the recipe has both. ${
    sides > 2
      ? `Pins and sewing are listed for the back. For the front, read its sides in the order 1, ${Array.from({ length: sides - 1 }, (_, i) => sides - i).join(', ')}. `
      : ''
  }Where it says panel, measure the front's cloth between its seams.`;

export const UNITS_HEADING = 'Lengths in';
export const UNIT_NAMES: Record<Units, string> = { cm: 'cm', inch: 'inches' };

/** Ways down the place, below the answer. */
export const WAYS = {
  heading: 'In this place',
  measures: 'Measures',
  drawing: 'Drawing',
  pins: 'Pins',
} as const;
