/** Pinning and sewing in the maker's own numbers. The walk and the place say the same. */
import type { Pin, SewingPlan } from '../../../core/index.ts';
import type { Dialect, Units } from '../../state/snapshot.ts';
import { many, ordinal } from '../numbers.ts';
import { dialectName, term } from '../terms.ts';
import { lengthText, listed, sayLength, sayRough } from './lengths.ts';

/** "the 41st stitch", "between the 40th and 41st stitch". */
const sayPinStitch = ({ stitch, isBetween, kind }: Pin): string => {
  if (kind === 'corner') return 'the corner';
  if (!isBetween) return `the ${ordinal(stitch)} stitch`;
  return stitch === 0
    ? 'where the round begins'
    : `between the ${ordinal(stitch)} and ${ordinal(stitch + 1)} stitch`;
};

/** "20 cm from the corner: the 41st stitch". */
export const sayPin = (pin: Pin, units: Units, from: string): string =>
  pin.kind === 'corner'
    ? 'the corner'
    : `${sayLength(pin.distance, units)} from ${from}: ${sayPinStitch(pin)}`;

export const sayPinCount = (pins: readonly Pin[]): string => many(pins.length, 'pin');

/** "Out 40, back 40." */
const sayPasses = ({ over }: SewingPlan, side: number): string =>
  `out over ${over.out[side]}, back over ${over.back[side]}`;

export const sayThread = ({ lengths, cut }: SewingPlan, working: number, units: Units): string =>
  `${many(2 * lengths, 'length')} of ${sayLength(working, units)}: ${many(lengths, 'length')} out and ${lengths} back, ${sayRough(cut, units)} in all.`;

export const sayThreadEnds = (dialect: Dialect): string =>
  `Make both ends fast in the ${term('treble', dialect, 'many')}, and change away from corners.`;

export const sayThreadDefaults = (
  { thickness, working, tail }: Record<'thickness' | 'working' | 'tail', number>,
  units: Units,
): string =>
  `Left empty: ${sayLength(thickness, units)} thick, ${sayLength(working, units)} to sew with (${lengthText(450, units)} to ${sayLength(600, units)} is usual), ${sayLength(tail, units)} at each end.`;

/** The pins as a list. */
export const PINS = {
  heading: 'Pins',
  straight: 'Centres first, then corners, then from each corner to the centre.',
  round: 'Quarters first, then halfway, then between.',
  count: 'Count them in, and out again.',
  paper: 'Paper',
  print: 'Print the list and a strip with marks',
  a4: 'A4',
  letter: 'Letter',
  checkLine: 'This line measures 100 mm.',
  standard: 'Pins',
} as const;

export const sayPinSpacing = (spacing: number, units: Units): string =>
  `Left empty: every ${sayLength(spacing, units)}. A pin goes into the nearest stitch, and its distance is that stitch's.`;

export const sayPinGroup = (sides: readonly number[], isRound: boolean): string =>
  isRound ? 'All round' : sides.length === 1 ? `Side ${sides[0]}` : `Sides ${listed(sides)}, each`;

/** What the distances of the pins are measured from. */
export const pinsFrom = (isRound: boolean): string => (isRound ? 'where the round begins' : 'the corner');

/** 100 mm is no round number of inches. */
export const sayPrinting = (units: Units): string =>
  `Print at 100 %, not fitted to the page. The check line must measure 100 mm${units === 'inch' ? ', 1/16 in short of 4 in' : ''}.`;

/** A row of the strip: where it begins and ends, and how rows go together. */
export const sayRow = ({ sides, isRound, from, to, isFirst, isLast }: RowSaid, units: Units): string => {
  const name = isRound ? 'all round' : sides.length === 1 ? `side ${sides[0]}` : `sides ${listed(sides)}`;
  const begins = isFirst ? 'begins at the corner' : 'tape on to the row before';
  return `${name}: ${sayLength(from, units)} to ${sayLength(to, units)}, ${begins}${isLast ? ', ends at the corner' : ''}`;
};

export type RowSaid = {
  sides: readonly number[];
  isRound: boolean;
  from: number;
  to: number;
  isFirst: boolean;
  isLast: boolean;
};

/** What a mark on the strip says: short, for there is little room. */
export function sayMark(pin: Pin): string {
  if (pin.kind === 'corner') return 'corner';
  const stitch = sayPinStitch(pin).replace(/^the /, '');
  return pin.kind === 'between' ? stitch.replace(/ stitch$/, '') : `${pin.kind}: ${stitch}`;
}

export const sayCutLine = 'Cut the cloth:';

export function saySheet(
  page: number,
  pages: number,
  { units, dialect, hand }: { units: Units; dialect: Dialect; hand: 'left' | 'right' },
): string {
  const unit = units === 'cm' ? 'cm' : 'inches';
  return `${unit} · ${dialectName(dialect)} · ${hand} hand · sheet ${page} of ${pages}`;
}

/** Sewing the strip on. */
export const SEWING = {
  heading: 'Sewing',
  hand: 'by hand',
  machine: 'by machine',
  how: 'Running stitch, over 1 stitch of the strip and under the next. Go all round, turn, and sew back through the gaps.',
  beginRound: 'Begin anywhere.',
  beginSide: 'Begin in the middle of side 1. A corner counts as 1 place.',
} as const;

/** "Side 1: out over 25, back over 25; the needle comes out before corner 1". */
export function saySide(sewing: SewingPlan, side: number, isRound: boolean): string {
  const out = sewing.corners[side];
  const corner = out === undefined ? '' : `; the needle comes out ${out} corner ${side + 1}`;
  return `${isRound ? 'All round' : `Side ${side + 1}`}: ${sayPasses(sewing, side)}${corner}`;
}

export const sayChanges = (changes: SewingPlan['changes'], isRound: boolean): string =>
  `On the way out, change the thread after: ${changes
    .map(({ side, stitch }) => `${isRound ? '' : `side ${side + 1}, `}stitch ${stitch}`)
    .join('; ')}.`;

export const MACHINE = 'By machine: straight stitch, just below the edging, slowly over the corners.';
