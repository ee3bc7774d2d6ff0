/** What each move is called on screen: at most 12 words, so that the eye can stay on the movement. */
import { many } from '../words/numbers.ts';
import { type TermId, term } from '../words/terms.ts';
import type { Speech } from '../words/words.ts';
import { type Move, type MoveTarget, movesOf, type StitchKind } from './moves.ts';
import type { Variant } from './variant.ts';

const NAMES: Record<StitchKind, TermId | 'ending' | 'closing' | 'running'> = {
  chain: 'chain',
  'slip-stitch': 'slip-stitch',
  'double-crochet': 'double-crochet',
  treble: 'treble',
  'foundation-start': 'foundation-treble',
  'foundation-treble': 'foundation-treble',
  'fasten-off': 'ending',
  'needle-closing': 'closing',
  'running-stitch': 'running',
};

/** The stitch's name in the person's terms, as a heading. */
export function stitchName(kind: StitchKind, speech: Speech): string {
  const name = NAMES[kind];
  if (name === 'ending') return 'Ending the yarn';
  if (name === 'closing') return 'Needle-made closing';
  if (name === 'running') return 'Running stitch';
  const word = sentence(term(name, speech.dialect));
  return kind === 'foundation-start' ? `First ${word.toLowerCase()}` : word;
}

/** The term whose note on false friends belongs beside the heading, if any. */
export function termOf(kind: StitchKind): TermId | null {
  const name = NAMES[kind];
  return name === 'ending' || name === 'closing' || name === 'running' ? null : name;
}

const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

const TARGETS: Record<MoveTarget, string> = {
  'first-chain': 'Hook into the first chain, under both its strands.',
  'base-chain': 'Hook into the base chain, under 2 strands.',
  'back-loop': 'Hook under the back loop only.',
  'both-loops': 'Hook under both loops of the next stitch.',
  'inner-loops': 'Hook under the inner 2 of the 4 loops.',
  'first-stitch': 'Needle under both loops of the first stitch.',
  'last-stitch': 'Needle back into the last stitch.',
  strip: 'Needle through strip and cloth.',
};

/** The caption of move `index` (from 0). */
export function sayMove(variant: Variant, index: number, speech: Speech): string {
  const moves = movesOf(variant.kind);
  const move = moves[index];
  if (move === undefined) return '';
  const round = sentence(term('yarn-round-hook', speech.dialect));
  switch (move.move) {
    case 'yarn-round':
      return `${round}.`;
    case 'draw-up':
      return `${round}, draw up a loop.`;
    case 'draw-through':
      return `${round}, ${through(variant.kind, move, speech)}.`;
    case 'pull-out':
      return "Cut the yarn a hand's length from the hook; draw it through.";
    case 'snug':
      return 'Draw it in to the size of a stitch.';
    case 'needle-down':
      return 'Needle down through the strip, 1 stitch on.';
    case 'needle-up':
      return 'Needle up again, 1 stitch further.';
    case 'thread-through':
      return 'Draw the thread through, flat and not tight.';
    case 'insert':
      return variant.intoCorner
        ? 'Hook under both loops of the corner chain.'
        : TARGETS[move.target ?? 'both-loops'];
    case 'needle-under':
      return variant.adds === 1 ? TARGETS['first-stitch'] : 'Needle under both loops of the second stitch.';
    case 'needle-back':
      return TARGETS['last-stitch'];
  }
}

function through(kind: StitchKind, { through: loops = 1 }: Move, speech: Speech): string {
  if (kind === 'slip-stitch') return 'draw through all of them';
  if (kind === 'chain') return 'draw through the loop';
  return loops === 1
    ? `draw through 1 loop: the base ${term('chain', speech.dialect)}`
    : `draw through ${loops} loops`;
}

/** How many loops lie on the hook after so many moves; for a needle, nothing. */
export function sayLoops({ kind }: Variant, done: number): string {
  if (kind === 'needle-closing' || kind === 'running-stitch') return '';
  const moves = movesOf(kind);
  const loops = done === 0 ? moves[0]?.loopsBefore : moves[done - 1]?.loopsAfter;
  return loops === undefined ? '' : `${many(loops, 'loop')} on the hook`;
}
