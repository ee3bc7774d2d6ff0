/** A front whose sides were meant to be alike: what is off, and both ways on. */
import type { Evening } from '../../core/index.ts';
import type { Dialect } from '../state/snapshot.ts';
import { many, ordinal } from './numbers.ts';
import { term } from './terms.ts';

const list = new Intl.ListFormat('en-GB', { type: 'conjunction' });

/** "Side 2 has 1 stitch fewer than it was meant to, it seems." */
export const sayUneven = (evening: readonly Evening[]): string =>
  `${list
    .format(
      evening.map(
        ({ side, by }) =>
          `side ${side + 1} has ${many(Math.abs(by), 'stitch', 'stitches')} ${by > 0 ? 'fewer' : 'more'}`,
      ),
    )
    .replace(/^s/, 'S')} than it seems meant to have.`;

export const sayKept = 'Keep it: the back is worked to match, side for side.';

/** Where to work two in one, or miss one, in one more round of the front. */
export function sayEvening(evening: readonly Evening[], dialect: Dialect): string {
  const dc = term('double-crochet', dialect, 'short');
  const acts = evening.map(({ side, by, places }) => {
    const stitches = list.format(places.map((place) => ordinal(place + 1)));
    const what =
      by > 0 ? `work 2 ${dc} into the ${stitches} stitch` : `${term('miss', dialect)} the ${stitches} stitch`;
    return `on side ${side + 1} ${what}`;
  });
  return `Or even it out: work one more round of ${dc} on the front, 1 ${dc} on each side of every corner, and ${list.format(acts)}.`;
}

/** What the sides have then. */
export function sayEvened(sides: readonly number[], evening: readonly Evening[], added: number): string {
  const off = new Map(evening.map(({ side, by }) => [side, by]));
  return `The sides then have ${sides.map((count, side) => count + (off.get(side) ?? 0) + added).join(', ')}.`;
}
