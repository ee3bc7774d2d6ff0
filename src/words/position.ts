/** One place on a round in words: its name, what it is, what it is worked into and whom it meets. */
import { many } from './numbers.ts';
import { term } from './terms.ts';
import type { Speech } from './words.ts';

export type PositionKind =
  | 'stitch'
  | 'chain'
  | 'corner-stitch'
  | 'foundation-treble'
  | 'double-crochet'
  | 'closing'
  | 'start';

export type PositionWords = {
  speech: Pick<Speech, 'dialect'>;
  /** Edging rounds in all. */
  edgings: number;
  /** A round panel: no sides to tell. */
  round: boolean;
};

/** Indices from 0; `corner` is -1 on a side. */
type Standing = {
  side: number;
  corner: number;
  place: number;
  of: number;
  tail: boolean;
  kind: PositionKind;
};

/** "front", "foundation", "edging" or "edging 2". `index`: -1 front, 0 foundation, then the edgings. */
function sayRound(index: number, { edgings }: PositionWords): string {
  if (index < 0) return 'front';
  if (index === 0) return 'foundation';
  return edgings > 1 ? `edging ${index}` : 'edging';
}

/** "side 3, stitch 31", "corner 2, chain 1"; the tail of the first side is told as after the last corner. */
function sayPlace(at: Standing, words: PositionWords): string {
  if (at.corner >= 0) {
    const thing = at.kind === 'corner-stitch' ? 'stitch' : 'chain';
    return at.of > 1 ? `corner ${at.corner + 1}, ${thing} ${at.place + 1}` : `corner ${at.corner + 1}`;
  }
  const stitch = `stitch ${at.place + 1}`;
  if (words.round) return stitch;
  return at.tail ? `side 1 after the last corner, ${stitch}` : `side ${at.side + 1}, ${stitch}`;
}

/** "Edging, side 3, stitch 31". */
export function sayPosition(index: number, at: Standing, words: PositionWords): string {
  const round = sayRound(index, words);
  return `${round.charAt(0).toUpperCase()}${round.slice(1)}, ${sayPlace(at, words)}`;
}

/** What it is: "Double crochet, 31 of 58." */
export function sayKind(at: Standing, words: PositionWords): string {
  const name = sayName(at.kind, words);
  const capital = `${name.charAt(0).toUpperCase()}${name.slice(1)}`;
  if (at.kind === 'closing') return `${capital}.`;
  return `${capital}, ${at.place + 1} of ${at.of}.`;
}

function sayName(kind: PositionKind, { speech: { dialect } }: PositionWords): string {
  switch (kind) {
    case 'stitch':
      return 'stitch';
    case 'chain':
      return `corner ${term('chain', dialect)}`;
    case 'corner-stitch':
      return 'corner stitch';
    case 'foundation-treble':
      return term('foundation-treble', dialect);
    case 'double-crochet':
      return term('double-crochet', dialect);
    case 'closing':
      return 'the stitch that the closing makes';
    case 'start':
      return 'the starting chains, counted as a stitch';
  }
}

export const sayInto = (index: number, at: Standing, words: PositionWords): string =>
  `Worked into the ${sayRound(index, words)}, ${sayPlace(at, words)}.`;

export const sayPartner = (index: number, at: Standing, words: PositionWords): string =>
  `Meets the ${sayRound(index, words)}, ${sayPlace(at, words)}.`;

export const sayAlone = (): string => 'No partner.';

export const sayMishap = (): string => 'Made otherwise than the recipe asks.';

/** Short states for the list of stitches. */
const STATES = {
  made: 'made',
  'to-come': 'to come',
  alone: 'no partner',
} as const;
export type PositionState = keyof typeof STATES;
export const sayState = (state: PositionState): string => STATES[state];

/** Heading of a row of the list: "Edging, side 3: 58 stitches". */
export function sayRow(index: number, at: Standing, words: PositionWords): string {
  const round = sayRound(index, words);
  const head = `${round.charAt(0).toUpperCase()}${round.slice(1)}`;
  const count =
    at.corner >= 0 && at.kind === 'chain'
      ? many(at.of, term('chain', words.speech.dialect))
      : many(at.of, 'stitch', 'stitches');
  if (at.corner >= 0) return `${head}, corner ${at.corner + 1}: ${count}`;
  if (words.round) return `${head}: ${count}`;
  return at.tail
    ? `${head}, side 1 after the last corner: ${count}`
    : `${head}, side ${at.side + 1}: ${count}`;
}
