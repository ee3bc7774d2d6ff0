/** The sentences for joining front and back with slip stitches (common practice unless marked). */
import type { Step, StepKind } from '../../../core/index.ts';
import { ordinalWord } from '../numbers.ts';
import { sayNearest } from './nearest.ts';
import { neighbour, type Sentences, type Telling } from './telling.ts';

type JoinKind = Extract<
  StepKind,
  | 'wrong-sides'
  | 'join-marker'
  | 'join-attach'
  | 'slip-stitch'
  | 'long-loop'
  | 'pad-in'
  | 'pin-last'
  | 'take-loop'
  | 'look-for-holes'
  | 'last-hole'
  | 'join-close'
  | 'ends-inside'
  | 'finished'
>;

export const JOIN: Record<JoinKind, (telling: Telling) => Sentences> = {
  'wrong-sides': ({ making: { plan } }) => ({
    act: 'Lay front and back wrong sides together.',
    check:
      plan.edge.sides.length > 1
        ? `The front faces you. Side 1 of the back lies behind side ${(plan.faces[0] ?? 0) + 1} of the front.`
        : 'The front faces you, the back looks away.',
  }),
  'join-marker': ({ making, step }) =>
    making.plan.choices.open !== undefined
      ? {
          act: `Mark the last stitch of side ${step.side + 1}, on both pieces.`,
          check: `Side ${step.side + 1} stays open. On the back it is the stitch that lies behind.`,
        }
      : hasCorners(making)
        ? {
            act: `Put a marker ${startWords(making.plan.choices.joinStart.fromCorner)}, on both pieces.`,
            check: sayFromCorner(making, step),
          }
        : {
            act: `Mark stitch ${step.place + 1} of the front and any stitch of the back.`,
            check: 'On a round piece the join may begin anywhere.',
          },
  'join-attach': ({ making, t }) => ({
    act: "Attach the edging's colour through the marked pair's inner 2 loops.",
    check: `Of its 4 loops these 2 touch. ${
      making.plan.choices.open === undefined
        ? `The pair gets its own ${t('slip-stitch')} at the very end.`
        : 'The pair stays open with its side.'
    } The picture shows another colour.`,
  }),
  'slip-stitch': slipStitch,
  'long-loop': ({ making }) => ({
    act: 'Draw the loop about a hand long and take the hook out.',
    check: `A long loop cannot slip out. The ${openPart(making)} stays open.`,
  }),
  'pad-in': padIn,
  'pin-last': ({ making }) => ({
    act: `Pin the ${openPart(making)}: ends, middle, then halves.`,
    check: 'Both pieces lie stitch to stitch. Take each pin out as you come to it.',
    caution: 'Count the pins in, and out again.',
  }),
  'take-loop': () => ({
    act: 'Put the hook back in the loop and draw it small.',
    check: 'It is as large as the loops before it.',
  }),
  'look-for-holes': ({ making, t }) => ({
    act: 'Look along the whole join for holes.',
    check: `Every pair shows 1 ${t('slip-stitch')}; at a hole, ${t('unravel')} to it. ${
      making.plan.choices.open === undefined
        ? 'Only the first pair is still open.'
        : `Only side ${making.plan.choices.open + 1} is open, from corner to corner.`
    }`,
  }),
  'last-hole': ({ t }) => ({
    act: `1 ${t('slip-stitch')} in the pair where you attached the yarn.`,
    check: 'The last hole is closed.',
  }),
  'join-close': ({ t }) => ({
    act: `Thread the end: under the second ${t('slip-stitch')}, down into the last.`,
    check: 'It lies over the first. The line runs on without a step.',
  }),
  'ends-inside': () => ({
    act: 'Draw both ends inside with the needle.',
    caution: 'Count the needles and pins before you put them away.',
  }),
  finished: (telling) => ({ act: 'Front and back are one piece.', check: sayFinished(telling) }),
};

/** How many pairs were joined, by the step before: acts beside the recipe may have taken 2 with 1. */
function sayFinished(telling: Telling): string {
  const { plan, becomes } = telling.making;
  const { open } = plan.choices;
  const pairs = neighbour(telling, -1)?.done ?? plan.pairs;
  if (open !== undefined) return `${pairs} pairs, stitch to stitch. Side ${open + 1} is the opening.`;
  return becomes === 'cover'
    ? 'The cover is on its form.'
    : `${pairs} pairs, stitch to stitch, all the way round.`;
}

/** A cushion gets its pad, a cover the form it is for. */
function padIn({ making, t }: Telling): Sentences {
  const isCover = making.becomes === 'cover';
  const inside = isCover ? 'form' : t('cushion-pad');
  const open = `The ${openPart(making)} is still open.`;
  return {
    act: hasCorners(making)
      ? `Put the ${inside} in, corner into corner.`
      : `Put the ${inside} in and spread it evenly.`,
    check: hasCorners(making)
      ? `Push it into every corner. ${open}`
      : `It reaches the edge all round. ${open}`,
    ask: `Is the ${inside} in?`,
    answers: {
      yes: 'Yes, it is in',
      no: 'No, it will not go in',
      // Common practice, no source.
      how: isCover
        ? 'Bend the form, if it bends. If it does not, undo the join back to the last corner and try 2 open sides.'
        : `Fold the ${inside} in half and push it in deep. Let it open inside, and pull it into place from there.`,
    },
    // Usual for the trade.
    ...(!isCover && { caution: `Keep the finished ${t('cushion')} out of a baby's sleeping place.` }),
  };
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

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
        ? `the ${ordinalWord(step.place + 1)} ${thing} you meet on each piece`
        : `both corner ${thing === 'stitch' ? 'stitches' : 'chains'}`;
    return { act: `1 ${name} through ${which}.`, check: 'Corner lies on corner.' };
  }
  return {
    act: `1 ${name} through the next pair's inner 2 loops.`,
    check: 'Of the 4 loops side by side, the outer 2 stay free.',
  };
}

/** "Count from corner 4 into side 1": the corner before the side on which the join begins. */
function sayFromCorner({ plan }: Telling['making'], step: Step): string {
  const { side } = plan.choices.joinStart;
  const { corners } = plan.edge;
  const before = (side - 1 + corners.length) % corners.length;
  const nearest = capital(sayNearest(corners[before]));
  const marked = step.corner < 0 && step.place >= 0 ? ` That is its stitch ${step.place + 1}.` : '';
  return `${nearest} is 1: count from corner ${before + 1} into front side ${side + 1}.${marked} On the back, mark the one behind it.`;
}

function startWords(fromCorner: number): string {
  return fromCorner > 0 ? `${fromCorner} in from the corner` : 'where the join begins';
}
