/** Yarn, cloth and pads in sentences. A band stays a band. */
import {
  type Ball,
  type Band,
  ballsFor,
  type Enough,
  type Layout,
  type Pad,
  type PadRule,
  type Piece,
  pieceBox,
  together,
  toTape,
  type YarnNeed,
} from '../../../core/index.ts';
import type { YarnField } from '../../state/cloth-fields.ts';
import type { Units } from '../../state/snapshot.ts';
import { many } from '../numbers.ts';
import { sayBand, sayGrams, sayLength, sayLong, saySize } from './lengths.ts';

export const YARN_PARTS: Record<YarnField, string> = {
  foundation: 'foundation',
  edging: 'edging',
  join: 'join',
};

/** "about 18–27 m, by what is in print", "13.9 m, 5.5 g". */
export function sayNeed(need: YarnNeed, units: Units): string {
  if (need.from === 'nothing')
    return need.part === 'join'
      ? 'measure a swatch: nothing is in print for slip stitches'
      : 'measure a swatch, or the panel';
  const metres = need.metres && sayBand(need.metres, (value) => sayLong(Math.ceil(value * 10) * 100, units));
  const grams = need.grams && sayBand(need.grams, (value) => sayGrams(Math.ceil(value * 2) / 2));
  const amount = [metres, grams].filter(Boolean).join(', ');
  return need.from === 'published' ? `somewhere in ${amount}: a rough band from print` : amount;
}

export const sayBalls = (needs: readonly YarnNeed[], ball: Ball | undefined): string => {
  const metres = together(needs, 'metres');
  if (!ball || !metres) return '';
  const [least, most] = ballsFor(metres, ball);
  return least === most ? many(least, 'ball') : `${least} to ${most} balls`;
};

/** "23 g left: enough for the edging, not for the join." */
export function sayLeft(left: number, enough: readonly Enough[]): string {
  const says: Record<Enough['is'], string> = {
    enough: 'enough for the',
    'not-enough': 'not for the',
    uncertain: 'perhaps for the',
    unknown: 'unknown without a swatch for the',
  };
  return `${sayGrams(left)} left: ${enough.map(({ part, is }) => `${says[is]} ${part}`).join(', ')}.`;
}

/** Shops cut by 10 cm or 1/8 yard. */
export function toBuy(mm: number, units: Units): number {
  const step = units === 'cm' ? 100 : 914.4 / 8;
  return Math.ceil(mm / step - 1e-9) * step;
}

export function sayLayout({ across, rows, isTurned, length }: Layout, units: Units): string {
  const turned = isTurned ? ', turned by a quarter' : '';
  return `Buy ${sayLong(toBuy(length, units), units)}: ${many(across, 'piece')} across in ${many(rows, 'row')}${turned}, ${sayLength(toTape(length, units, 'up'), units)} in all.`;
}

export const PAD_RULES: Record<PadRule, string> = {
  usual: '2.5 cm larger than the back is usual: it fills the corners.',
  full: '5 cm larger, for a firm, full piece. 3 to 5 cm is in print too.',
  same: 'As large as the back: for firm or thin forms.',
};

export function sayPad({ width, height, sold }: Pad, units: Units): string {
  const sizes = sold.map((size) => sayLength(size, units)).join(' or ');
  return `${saySize(width, height, units)}${sizes ? `. Sold near it: ${sizes} square` : ''}.`;
}

export function sayCutForm(piece: Piece, units: Units): string {
  const { width, height } = pieceBox(piece);
  return piece.shape === 'round' ? `${sayLength(width, units)} across` : saySize(width, height, units);
}

export const bandOf = (need: Band | null, say: (value: number) => string): string =>
  need ? sayBand(need, say) : '';
