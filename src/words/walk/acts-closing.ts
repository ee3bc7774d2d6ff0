/**
 * The sentences for closings and ends. What a closing does to the count is published both ways:
 * a needle-made join through the first stitch shows one extra, through the second or over a starting
 * chain none (read, three tutorials). The plan's choice decides which is said.
 */
import type { StepKind } from '../../../core/index.ts';
import { ordinal } from '../numbers.ts';
import type { Sentences, Telling } from './telling.ts';

type ClosingKind = Extract<
  StepKind,
  'check-twist' | 'close-tops' | 'close-base' | 'close-round' | 'weave-ends'
>;

const NEEDLE = 'Keep needles away from small children.'; // usual for the trade

export const CLOSING: Record<ClosingKind, (telling: Telling) => Sentences> = {
  'check-twist': () => ({
    act: 'Lay the ring flat and follow the base once round.',
    check: 'All base chains look the same way, from start to end.',
    ask: 'Does the base stay on one side, all the way round?',
    // First row flat, check, then close (read, public reports).
    caution: 'Once the ring is closed, a twist stays.',
  }),
  'close-tops': ({ making }) => ({
    act:
      making.plan.choices.foundationClosing.adds === 1
        ? 'Close the tops with the needle, beside the first stitch.'
        : 'Close the tops with the needle, over the first stitch.',
    check: closingCounts(making.plan.choices.foundationClosing.adds, making.plan.foundation.sides),
    caution: NEEDLE,
  }),
  'close-base': () => ({
    act: 'Close the base with 1 stitch.',
    check: 'The base runs on without a step.',
    caution: NEEDLE,
  }),
  'close-round': ({ making, step, t }) => ({
    act:
      making.plan.choices.edgingClosing.adds === 1
        ? 'Close with the needle, over the attach place.'
        : `Close over the first ${t('double-crochet')}.`,
    check: closingCounts(
      making.plan.choices.edgingClosing.adds,
      making.plan.edgings[step.edging]?.sides ?? [],
    ),
    caution: NEEDLE,
  }),
  'weave-ends': () => ({
    act: 'Weave the ends in on the wrong side.',
    check: 'Run each end one way, then back.', // common practice
    caution: NEEDLE,
  }),
};

/** The closing lies in side 1 (on a round panel, in the only side), where the round began. */
function closingCounts(adds: 0 | 1, sides: number[]): string {
  if (adds === 0) return 'This closing makes no stitch of its own.';
  const stitch = ordinal(sides[0] ?? 1);
  return sides.length > 1 ? `This makes the ${stitch} stitch of side 1.` : `This makes the ${stitch} stitch.`;
}
