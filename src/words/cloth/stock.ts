/** Yarn, cloth and pads in sentences. A band stays a band. */
import {
  type Ball,
  ballsFor,
  type Enough,
  type Layout,
  mmPerInch,
  type Pad,
  type PadRule,
  padRules,
  together,
  toTape,
  type YarnNeed,
} from '../../../core/index.ts';
import type { YarnField } from '../../state/cloth-fields.ts';
import type { Becomes } from '../../state/cloth-types.ts';
import type { Units } from '../../state/snapshot.ts';
import { many } from '../numbers.ts';
import { lengthText, sayBand, sayGrams, sayLength, sayLong, sayRough, saySize } from './lengths.ts';

export const YARN_PARTS: Record<YarnField, string> = {
  foundation: 'foundation',
  edging: 'edging',
  join: 'join',
};

/** "about 18–27 m" or "14 m, 6 g". Up, for what is left over can be kept; a band from print outwards both ways. */
export function sayNeedShort(need: YarnNeed, units: Units): string {
  const isBand = need.from === 'published';
  const metres =
    need.metres &&
    sayBand(need.metres, (value) =>
      sayRough(value * 1000, units, isBand && value === need.metres?.[0] ? 'down' : 'up'),
    );
  const grams = need.grams && sayBand(need.grams, (value) => sayGrams(Math.ceil(value)));
  const amount = [metres, grams].filter(Boolean).join(', ');
  return isBand ? `about ${amount}` : amount;
}

/** "Somewhere in 18–27 m: a rough band from print", "14 m, 6 g". */
export function sayNeed(need: YarnNeed, units: Units): string {
  if (need.from === 'nothing')
    return need.part === 'join'
      ? 'measure a swatch: nothing is in print for slip stitches'
      : 'measure a swatch, or the panel';
  const short = sayNeedShort(need, units);
  return need.from === 'published'
    ? `somewhere in ${short.replace(/^about /, '')}: a rough band from print`
    : short;
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

export const PAD_RULE_NAMES: Record<PadRule, string> = { usual: 'usual', full: 'fuller', same: 'the same' };
export const PAD_RULE_HEADING = 'Size';
export const PAD_WAITS = 'It stands here once the panel is measured.';

/** By how much a rule has the pad larger than the back. */
export const sayPadLarger = (rule: PadRule, units: Units): string => sayLength(padRules[rule], units);

const PAD_RULES: Record<PadRule, (larger: string, units: Units) => string> = {
  usual: (larger) => `${larger} larger than the back is usual: it fills the corners.`,
  full: (larger, units) =>
    `${larger} larger, for a firm, full piece. ${lengthText(30, units)} to ${sayLength(50, units)} is in print too.`,
  same: () => 'As large as the back: for firm or thin forms.',
};

export const sayPadRule = (rule: PadRule, units: Units): string =>
  `${PAD_RULES[rule](sayPadLarger(rule, units), units)} 1 source of 6 has it otherwise.`;

/** What goes in, by what it becomes. */
export const sayInside = (becomes: Becomes, pad: string): string => (becomes === 'cover' ? 'form' : pad);

/** "43.5 × 43 cm": for a line of the list. Pads give: to half a cm, or a quarter of an inch. */
export function sayPadSize({ width, height, isRound }: Pad, units: Units): string {
  const step = units === 'cm' ? 5 : mmPerInch / 4;
  const [across, down] = [width, height].map((mm) => Math.round(mm / step) * step) as [number, number];
  return isRound ? `${sayLength(across, units)} across` : saySize(across, down, units);
}

export function sayPad(pad: Pad, units: Units): string {
  const sizes = pad.sold.map((size) => sayLength(size, units)).join(' or ');
  return `${sayPadSize(pad, units)}${sizes ? `. Sold near it: ${sizes} square` : ''}.`;
}
