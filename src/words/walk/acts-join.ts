/** The sentences for joining front and back with slip stitches (common practice unless marked). */
import type { StepKind } from '../../../core/index.ts';
import { ordinalWord } from '../numbers.ts';
import type { Sentences, Telling } from './telling.ts';

type JoinKind = Extract<
  StepKind,
  | 'wrong-sides'
  | 'join-marker'
  | 'join-attach'
  | 'slip-stitch'
  | 'long-loop'
  | 'pad-in'
  | 'pin-last'
  | 'look-for-holes'
  | 'last-hole'
  | 'join-close'
  | 'ends-inside'
  | 'finished'
>;

export const JOIN: Record<JoinKind, (telling: Telling) => Sentences> = {
  'wrong-sides': () => ({
    act: 'Lay front and back wrong sides together.',
    check: 'The right sides look outwards. The front faces you.',
  }),
  'join-marker': ({ making }) =>
    hasCorners(making)
      ? {
          act: `Put a marker ${startWords(making.plan.choices.joinStart.fromCorner)}, on both pieces.`,
          check: 'The nearest corner place counts as the first.',
        }
      : {
          act: 'Put a marker where the join begins, on both pieces.',
          check: 'On a round piece any place will do.',
        },
  'join-attach': () => ({
    act: 'Attach the yarn through both marked places.',
    check: 'This pair gets its own slip stitch at the very end.',
  }),
  'slip-stitch': slipStitch,
  'long-loop': ({ making }) => ({
    act: 'Draw the loop long, so that nothing runs.',
    check: `The ${openPart(making)} stays open.`,
  }),
  'pad-in': ({ making, t }) => ({
    act: hasCorners(making)
      ? `Put the ${t('cushion-pad')} in, corner into corner.`
      : `Put the ${t('cushion-pad')} in and spread it evenly.`,
    check: hasCorners(making)
      ? `Push it into every corner. The ${openPart(making)} is still open.`
      : `It reaches the edge all round. The ${openPart(making)} is still open.`,
    ask: `Is the ${t('cushion-pad')} in?`,
    // Usual for the trade.
    caution: `Keep the finished ${t('cushion')} out of a baby's sleeping place.`,
  }),
  'pin-last': ({ making }) => ({
    act: `Pin the ${openPart(making)}: ends, middle, then halves.`,
    check: 'Both pieces lie stitch to stitch.',
    caution: 'Count the pins in, and out again.',
  }),
  'look-for-holes': () => ({
    act: 'Look along the whole join for holes.',
    check: 'Every pair shows one slip stitch.',
  }),
  'last-hole': ({ t }) => ({
    act: `1 ${t('slip-stitch')} in the pair where you attached the yarn.`,
    check: 'The last hole is closed.',
  }),
  'join-close': ({ t }) => ({
    act: `Cut the yarn and close over the first ${t('slip-stitch')}.`,
    check: 'The line of slip stitches runs on without a step.',
    caution: 'Keep needles and blades away from small children.',
  }),
  'ends-inside': () => ({
    act: 'Draw the ends inside with the needle.',
    caution: 'Count the needles and pins before you put them away.',
  }),
  finished: () => ({ act: 'Front and back are one piece.' }),
};

const hasCorners = ({ plan }: Telling['making']): boolean => plan.edge.corners.length > 0;

/** What is left open for the pad: the last side, or a quarter where there are no sides to tell apart. */
const openPart = ({ plan }: Telling['making']): string =>
  plan.edge.sides.length > 1 ? 'last side' : 'last quarter';

function slipStitch({ step, making, t }: Telling): Sentences {
  const name = t('slip-stitch');
  if (step.corner >= 0) {
    const thing = making.plan.edge.corners[step.corner]?.made === 'stitch' ? 'stitch' : 'chain';
    const which =
      step.of > 1
        ? `the ${ordinalWord(step.place + 1)} ${thing} of both corners`
        : `both corner ${thing === 'stitch' ? 'stitches' : 'chains'}`;
    return { act: `1 ${name} through ${which}.`, check: 'Join corner to corner, so that they meet.' };
  }
  return {
    act: `1 ${name} through the inner 2 loops.`,
    check: 'Of the 4 loops side by side, the outer 2 stay free.',
  };
}

function startWords(fromCorner: number): string {
  return fromCorner > 0 ? `${fromCorner} in from the corner` : 'where the join begins';
}
