/** The lists: what to buy, what to have at hand, how long it takes, what it costs. */
import type { YarnNeed } from '../../../core/index.ts';
import type { Price } from '../../state/cloth-fields.ts';
import type { Units } from '../../state/snapshot.ts';
import { many } from '../numbers.ts';
import { opening } from './fields.ts';
import { sayLength, sayMoney } from './lengths.ts';
import { sayNeedShort } from './stock.ts';

export const SHOPPING = {
  heading: 'Shopping list',
  how: 'Open a line to make it exact.',
  foundation: 'Foundation yarn',
  edging: 'Edging and join yarn',
  cloth: 'Cloth',
  thread: 'Thread',
  measureFirst: 'measure the panel',
  swatch: 'measure a swatch',
  swatchHow:
    'Work a few stitches, then unravel and measure them, or weigh them. 10 % is added for ends and a second try.',
  ballBand: 'On the ball band',
  left: 'Enough left?',
  leftOf: "Of the edging's yarn, for edging and join.",
  weigh: 'No swatch? Weigh the yarn before and after side 1 of the edging.',
  way: 'Its pattern has a top',
  no: 'no',
  yes: 'yes',
  layoutNeeds: 'Enter the width of the cloth, and the layout stands here.',
  layoutUnread: 'Check the width, the number and the pattern.',
} as const;

/** "edging 15.7–19.2 m", "join by swatch": the needs of one colour. */
export function sayNeeds(needs: readonly YarnNeed[], units: Units): string[] {
  if (needs.every(({ from }) => from === 'nothing')) return [SHOPPING.swatch];
  return needs.map((need) => {
    if (needs.length === 1) return sayNeedShort(need, units);
    return need.from === 'nothing' ? `${need.part} by swatch` : `${need.part} ${sayNeedShort(need, units)}`;
  });
}

export const saySelvedge = (mm: number, units: Units): string =>
  `${sayLength(mm, units)} along each selvedge is not used.`;

export const sayTooNarrow = (wanted: number, units: Units): string =>
  `1 piece needs a cloth ${sayLength(wanted, units)} wide or more.`;

export const sayPieceOf = (size: string, isTwice: boolean): string =>
  `a piece ${size}${isTwice ? ', twice' : ''}`;

export const MACHINE_THREAD = 'Upper and lower together: 2.5 times the seam, and 10 to 15 % for waste.';

export const TOOLS_HEADING = 'At hand';

export const sayTools = (markers: number, pins: number | null, isByHand: boolean): string[] => [
  'Hook, tape, scissors',
  many(markers, 'stitch marker'),
  pins === null ? 'Pins' : many(pins, 'pin'),
  isByHand ? 'Sewing needle' : 'Sewing machine, straight stitch',
  'Yarn needle for the closings',
  'Iron',
];

export const TIME_HEADING = 'Time';

/** `time`: what the stitches take at the maker's pace; null until it is known. */
export const sayTime = (time: string | null, stitches: number): string =>
  time === null
    ? 'Walk 12 stitches or more beside your work, and the time stands here.'
    : `At your pace the ${stitches} stitches take ${time}. Pinning and sewing come on top.`;

export const COST = {
  heading: 'Cost, for 1 piece',
  how: 'In your own money. Only what you fill in is counted.',
} as const;

export const costUnit = (of: Price, units: Units): string =>
  of === 'cloth' ? (units === 'cm' ? 'a metre' : 'a yard') : '';

const COSTS: Record<Price, string> = {
  'foundation-ball': 'Foundation yarn',
  'edging-ball': 'Edging yarn',
  cloth: 'Cloth',
  pad: '',
  thread: 'Thread',
  hour: 'Time',
};

export type Cost = { of: Price; amount: number; balls?: number; each?: number };

export function sayCost({ of, amount, balls, each }: Cost, inside: string): string {
  const name = of === 'pad' ? opening(inside) : COSTS[of];
  const count = balls === undefined || each === undefined ? '' : `, ${balls} × ${sayMoney(each)}`;
  return `${name}${count}: ${sayMoney(amount)}`;
}

export const sayTotal = (amount: number): { amount: string; rest: string } => ({
  amount: sayMoney(amount),
  rest: ' in all',
});
