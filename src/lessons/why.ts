/** Why each step is as it is: one or two sentences. Common practice, no source, unless marked. */
import type { StepKind } from '../../core/index.ts';
import { type TermForm, type TermId, term } from '../words/terms.ts';
import { armOf } from '../words/walk/arms.ts';
import type { Speech } from '../words/words.ts';
import type { Item } from './lesson.ts';

type Terms = (id: TermId, form?: TermForm) => string;

const WHY: Record<StepKind, (t: Terms) => string> = {
  'count-stitch': () => 'What is counted here decides every number of the back.',
  'count-corner': () => 'Corners are counted apart, because patterns differ in whether they take them in.', // read
  'slip-knot': () => 'Let the yarn run around a finger of the other hand: every loop then comes out alike.',
  'start-chains': (t) =>
    `They lift the hook to the height of a ${t('treble')}. Not tight: the hook must go back into the first.`,
  'foundation-treble': (t) =>
    `Chain and ${t('treble')} grow together, so the edge gives. It curls until it is sewn: let it.`,
  'corner-chain': () => 'The chains give the stitches on both sides room to turn.',
  'corner-stitch': () => 'Three stitches in one place turn the row.',
  'fasten-off': () => 'The end must be long enough for the needle, and to be woven in.',
  'tape-ends': () => 'The foundation curls by itself. Held down, it shows whether it is twisted.',
  // First row flat, check, then close (read, public reports).
  'check-twist': (t) => `After closing, only ${t('unravel', 'doing')} undoes a twist.`,
  'close-tops': () => "The needle's V looks like the others: nobody sees the closing.",
  'close-base': () => 'The base is open still: 1 stitch, and the ring holds.',
  'close-round': () => "The needle's V lies where the round began, so that no step is seen.",
  'weave-ends': () => 'A knot would be felt in the seam.',
  // The edging worked on the wrong side is among the public reports (read).
  'right-side': () => 'Worked from the other side, the Vs would look away from the front.',
  attach: () => 'Begin in a side and not in a corner: there a small unevenness shows least.',
  'attach-chain': () => 'It lifts the hook. Counted as a stitch it would be 1 too many.', // read, two tutorials
  'double-crochet': () => 'The front loops stay free: along their line the strip turns over.',
  'lay-strip': () => 'Turned over later, it hides the raw edge.',
  'cloth-centres': () => 'What is loose is then shared by both halves.',
  'cloth-corners': () => 'A corner that slips cannot be brought back by sewing.',
  'cloth-pins': () => 'Halves of halves: looseness never gathers in one place.',
  'sew-out': () => 'Over 1 stitch at a time, so that the line gives a little.',
  'sew-back': () => 'The second pass lies where the first did not, and the line is whole.',
  'sew-fast': (t) => `The ${t('cushion-pad')} pulls at this seam.`,
  'pins-out': () => 'A pin left inside is found by whoever sits down.',
  'turn-strip': () => 'Now the edging lies outside, ready to be joined.',
  'wrong-sides': () => 'Both pieces show their best side, and run opposite ways.',
  'join-marker': () => 'In a corner the last hole would be hard to close, and would show.',
  'join-attach': () => "Yarn of the edging's colour shows least.",
  'slip-stitch': () => 'The outer loops stay as a fine line on each side.',
  'long-loop': (t) => `A short loop slips out while you work the ${t('cushion-pad')} in.`,
  'pad-in': () => 'Through 1 open side it still goes in, and 3 sides hold it.',
  'pin-last': () => 'Pinned stitch to stitch, the last side cannot come out uneven.',
  'take-loop': () => 'A loop left long would show in the line.',
  'look-for-holes': () => 'Now a hole is 1 stitch of work. Later it is a side.',
  'last-hole': () => 'Here the yarn was attached, so this pair was left out.',
  'join-close': () => 'The needle lies over the first stitch: no more, no fewer.',
  'ends-inside': () => 'Inside they cannot be seen or pulled.',
  finished: () => 'A front, and a back of cloth with a crocheted edge, joined without a zip.',
};

export function sayReason({ step, making }: Item, { dialect }: Speech): string {
  const t: Terms = (id, form) => term(id, dialect, form);
  // Both corners are of one size, or chain cannot be joined to chain.
  if (step.kind === 'corner-chain' && step.stage === 'edging')
    return "It must have as many chains as the front's corner, or chain cannot meet chain.";
  if (armOf({ step, making }) !== null) return 'With 1 on each side the corner lies in its middle.';
  return WHY[step.kind](t);
}
