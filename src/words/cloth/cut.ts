/** The sentences about the cut: what to cut, what it comes to, and how the crochet will lie. */
import {
  type ClothPlan,
  type Comparison,
  lieBand,
  type Piece,
  pieceBox,
  type Rounding,
  toTape,
} from '../../../core/index.ts';
import type { Units } from '../../state/snapshot.ts';
import { many } from '../numbers.ts';
import { listed, sayGauge, sayLength, saySize, signed } from './lengths.ts';

/** "42.5 × 42.5 cm", "37.6 cm across", or the sides of a polygon; to the nearest step of a tape, or the next above. */
export function sayPiece(piece: Piece, units: Units, rounding: Rounding = 'nearest'): string {
  const tape = (mm: number): number => toTape(mm, units, rounding);
  if (piece.shape === 'round') return `${sayLength(tape(piece.diameter), units)} across`;
  if (piece.shape === 'rectangle') return saySize(tape(piece.width), tape(piece.height), units);
  const [first] = piece.sides as [number];
  const alike = piece.sides.every((side) => Math.abs(side - first) < 0.5);
  if (alike) return `${piece.sides.length} sides of ${sayLength(tape(first), units)}`;
  const { width, height } = pieceBox(piece);
  return `in a box of ${saySize(tape(width), tape(height), units)}`;
}

/** A piece by the box around it: "42.5 cm by 40 cm". */
export function sayOutline(piece: Piece, units: Units, rounding: Rounding = 'nearest'): string {
  const { width, height } = pieceBox(piece);
  const [across, down] = [width, height].map((mm) => sayLength(toTape(mm, units, rounding), units));
  return piece.shape === 'round' ? `${across} across` : `${across} by ${down}`;
}

export const CUT = {
  heading: 'Cut the cloth',
  waiting: 'The cut',
  drawn: 'What it comes to',
  waits: 'It stands here once the panel and the depth of the foundation are measured.',
  seam: 'seam',
  back: 'finished back',
  front: 'finished front',
} as const;

/** The cut to the next step of a tape above: too large can be trimmed. */
export function sayCut({ cut }: Pick<ClothPlan, 'cut'>, units: Units): { size: string; isRounded: boolean } {
  const isRounded = Object.values(pieceBox(cut)).some(
    (length) => Math.abs(toTape(length, units, 'up') - length) > 0.05,
  );
  return { size: sayPiece(cut, units, 'up'), isRounded };
}

/** More than 1 piece. Of a front of cloth, half are for fronts. */
export const sayPieces = (pieces: number, isMirrored: boolean): string => {
  if (!isMirrored) return `${pieces} pieces.`;
  return pieces === 2 ? '2 pieces, mirror images.' : `${pieces} pieces, half of them mirrored.`;
};

export const ROUNDED_UP: Record<Units, string> = {
  cm: 'Rounded up to the next mm. Too large can be trimmed.',
  inch: 'Rounded up to the next 1/8 in. Too large can be trimmed.',
};

/** What the rule does, in the maker's numbers. */
export function sayAllowance({ allowance }: ClothPlan, units: Units): string {
  if (Math.abs(allowance) < 0.05) return 'The cloth is cut as large as the panel.';
  return allowance > 0
    ? `The cut edge lies ${sayLength(allowance, units)} outside the panel, all round.`
    : `The cut edge lies ${sayLength(-allowance, units)} inside the panel, all round.`;
}

/** Where the maker gave no depth of the last rounds, the finished sizes are without them. */
export const EDGES_UNKNOWN = 'Without the last rounds: measure how deep they are.';

const STRIPS: Record<Comparison['what'], [strip: string, edge: string]> = {
  'top-on-seam': ["the strip's tops", 'the seam'],
  'base-on-cut': ["the strip's base", 'the cut edge'],
  'edging-on-back': ['the edging', "the back's edge"],
  'edging-on-front': ['the edging', "the front's edge"],
};

export const LIES = {
  heading: 'How it will lie',
  how: 'Count stitches along a ruler, in the middle of a side.',
  baseAsTops: 'Where the base is not measured, it is taken to be as the tops.',
} as const;

export const saySides = (sides: readonly number[]): string =>
  sides.length === 1 ? `side ${sides[0]}` : `sides ${listed(sides)}`;

export type SaidLie = { lead: string; numbers: string; lengths: string; then: string; isWarned: boolean };

/** `seam`: the side's seam, mm. */
export type LieAt = { units: Units; corners: boolean; seam: number };

/**
 * At a corner the raw edge runs on past the seam by the strip's depth, and the corner's stitches open there: a base
 * that is no shorter than the seam needs no stretching. Our own judgement.
 */
const cornersOpen = ({ what, percent, length }: Comparison, { corners, seam }: LieAt): boolean =>
  what === 'base-on-cut' && corners && percent < 0 && length >= seam * (1 - lieBand.stretch / 100);

/** "The strip's tops on the seam: +4 %, 3 stitches over." A stretch measured on crochet tells no finer than whole percents. */
export function sayLie(comparison: Comparison, at: LieAt): SaidLie {
  const { what, length, along, percent, stitches, give, lies, mend } = comparison;
  const { units } = at;
  const [strip, edge] = STRIPS[what];
  const off = give >= 0.5 ? `, ${signed(give).replace('+', '')} % either way` : '';
  const whole = Math.round(Math.abs(stitches));
  const over = whole === 0 ? '' : `, ${many(whole, 'stitch', 'stitches')} ${percent < 0 ? 'short' : 'over'}`;
  const opens = cornersOpen(comparison, at);
  return {
    lead: `${strip} on ${edge}`,
    numbers: `${signed(percent)} %${over}${off}`,
    lengths: `${sayLength(length, units)} on ${sayLength(along, units)}`,
    then: opens
      ? 'The corners take that up: their stitches open out along the raw edge.'
      : thenOf(percent, lies, mend, units),
    isWarned: lies !== 'fits' && !opens,
  };
}

/** In a word, before it is opened. */
export function sayLieTag({ lies, cut }: ClothPlan): string {
  const corners = cut.shape !== 'round';
  const isWarned = lies.some(({ comparisons, seam }) =>
    comparisons.some((one) => one.lies !== 'fits' && !cornersOpen(one, { units: 'cm', corners, seam })),
  );
  return isWarned ? 'look here' : 'it fits';
}

function thenOf(percent: number, lies: Comparison['lies'], mend: Comparison['mend'], units: Units): string {
  const mending = mend
    ? ` It fits at ${sayGauge(mend.pitch, units)}: another hook. Or with ${many(mend.count, 'stitch', 'stitches')}.`
    : '';
  if (lies === 'slack') return `Too slack: it stands in waves that patting will not take out.${mending}`;
  if (lies === 'stretched')
    return `Stretched too far: it pulls the cloth together or will not reach.${mending}`;
  if (percent > 0.5) return 'Slack: pat it flat, evenly between the pins.';
  return percent < -0.5 ? 'A little stretch: ease it out evenly between the pins.' : 'It lies flat.';
}

export const BAND_SAID = `Slack up to ${lieBand.slack} % and stretch up to ${lieBand.stretch} % pass here. That band is our own judgement: 10 % is a textbook's upper example for easing cloth, and no limit for stretch was found in print.`;

/** The allowance at which the tops would fit all round. */
export const sayFitting = (allowance: number, units: Units): string =>
  `All round the tops fit with ${sayLength(Math.abs(allowance), units)} from the panel to the cut edge${allowance < 0 ? ', inwards' : ''}.`;
