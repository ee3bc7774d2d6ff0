/**
 * The sentences for ending, closing and weaving in. What a closing does to the count is published both ways:
 * a needle-made join through the first stitch shows one extra, through the second or over a starting
 * chain none (read, three tutorials). The plan's choice decides which is said.
 */
import type { StepKind } from '../../../core/index.ts';
import { ordinal } from '../numbers.ts';
import type { Sentences, Telling } from './telling.ts';

type ClosingKind = Extract<
  StepKind,
  'fasten-off' | 'tape-ends' | 'check-twist' | 'close-tops' | 'close-base' | 'close-round' | 'weave-ends'
>;

const NEEDLE = 'Keep needles and blades away from small children.'; // usual for the trade

export const CLOSING: Record<ClosingKind, (telling: Telling) => Sentences> = {
  'fasten-off': () => ({
    act: "Cut the yarn a hand's length from the hook; draw it through.",
    check: 'The last loop is closed. You sew with this end: have a blunt needle ready.',
    caution: NEEDLE,
  }),
  'tape-ends': ({ t }) => ({
    act: `Tape both ends to the table, all ${t('treble', 'many')} to one side.`, // common practice
    check: 'It lies as a ring: base chains inside, tops outside.',
  }),
  'check-twist': ({ t }) => ({
    act: 'Lay the ring flat and follow the base once round.',
    check: 'All base chains look the same way, from start to end.',
    ask: 'Does the base stay on one side, all the way round?',
    answers: {
      yes: 'Yes, it lies flat',
      no: 'No, it is twisted',
      // Common practice, no source.
      how: `Lift the tape at one end. Turn that end over until its ${t('treble', 'many')} point as the others do. Tape it down and look again.`,
    },
    // First row flat, check, then close (read, public reports).
    caution: 'Once the ring is closed, a twist stays.',
  }),
  'close-tops': ({ making, t }) => {
    const { foundationClosing, foundationStart } = making.plan.choices;
    const startCounts = foundationStart.counts === 1;
    return needle(
      foundationClosing.adds,
      startCounts
        ? { first: 'the top starting chain', second: `the first ${t('treble')}`, over: 'the starting chains' }
        : stitches,
      making.plan.foundation.sides,
    );
  },
  'close-base': () => ({
    act: 'With the starting end, sew the last base chain to the first.',
    check: 'The base runs on without a step.',
  }),
  'close-round': ({ making, step }) =>
    needle(making.plan.choices.edgingClosing.adds, stitches, making.plan.edgings[step.edging]?.sides ?? []),
  'weave-ends': () => ({
    act: 'Weave both ends in on the wrong side.',
    check: 'Run each end one way, then back.', // common practice
  }),
};

type Under = { first: string; second: string; over: string };

const stitches: Under = { first: 'the first stitch', second: 'the second stitch', over: 'the first stitch' };

function needle(adds: 0 | 1, { first, second, over }: Under, sides: readonly number[]): Sentences {
  return {
    act: `Thread the cut end: under both loops of ${adds === 1 ? first : second}.`,
    check: `Then down into the middle of the last V. ${adds === 1 ? makes(sides) : `It lies over ${over} and makes none of its own.`}`,
  };
}

/** The closing lies in side 1 (on a round panel, in the only side), where the round began. */
function makes(sides: readonly number[]): string {
  const stitch = ordinal(sides[0] ?? 1);
  return sides.length > 1 ? `This makes the ${stitch} stitch of side 1.` : `This makes the ${stitch} stitch.`;
}
