/** The sentences for counting the front and for working the foundation and the edging rounds. */
import type { Corner, Step, StepKind } from '../../../core/index.ts';
import { onwards } from '../hand.ts';
import { many, ordinal, ordinalWord } from '../numbers.ts';
import { type ArmEnd, armOf, cornerBelow, isCornerStep } from './arms.ts';
import { neighbour, type Sentences, type Telling } from './telling.ts';

type Acts<K extends StepKind> = Record<K, (telling: Telling) => Sentences>;

type RoundKind =
  | 'count-stitch'
  | 'count-corner'
  | 'slip-knot'
  | 'start-chains'
  | 'foundation-treble'
  | 'corner-chain'
  | 'corner-stitch'
  | 'right-side'
  | 'attach'
  | 'attach-chain'
  | 'double-crochet';

/** Chains before the first foundation treble: 3 or 4 are published, with both ways of counting them (read). */
export const STARTING_CHAINS = 4;

export const ROUND: Acts<RoundKind> = {
  'count-stitch': ({ step, making, speech }) => ({
    act: `Count ${step.place + 1}: 1 V, going ${onwards(speech)}.`,
    ...(step.marker && { check: 'Put a marker in this V.' }),
    // Exactly one per side is missed, tucked under the corner (read, two tutorials).
    ...(step.place === 0 && {
      check: `${step.index === 0 ? 'A V is the 2 loops on top of a stitch. ' : ''}${
        making.plan.edge.corners.length > 0
          ? 'The first V can hide under the corner.'
          : 'Put a marker in this V, so that you know where to stop.'
      }`,
    }),
  }),
  'count-corner': ({ step, making }) =>
    making.plan.edge.corners[step.corner]?.made === 'stitch'
      ? { act: 'Count the stitch that is the corner.', check: 'It is counted apart from the sides.' }
      : {
          act:
            step.of === 1
              ? "Count the corner's chain."
              : `Count the corner's ${ordinalWord(step.place + 1)} chain.`,
          ...(step.place === 0 && { check: 'Corner chains are counted apart from the stitches.' }),
        },
  'slip-knot': () => ({
    act: 'Make a slip knot on the hook you used for the front.',
    // Common practice, no source: yarn and hook as the front's, and that end closes the base of the ring later.
    check: "Yarn as thick as the front's. Leave an end a hand long: you sew with it later.",
  }),
  'start-chains': ({ making }) => ({
    act: `Chain ${STARTING_CHAINS}.`,
    // Both teachings are published (read), so the plan carries the choice.
    check:
      making.plan.choices.foundationStart.counts === 1
        ? `The first will hold your next stitch; the other ${STARTING_CHAINS - 1} count as 1 stitch. Put your start marker in the last.`
        : `The first will hold your first stitch; the other ${STARTING_CHAINS - 1} count as none.`,
  }),
  'foundation-treble': foundationTreble,
  'corner-chain': cornerChain,
  'corner-stitch': ({ step, t }) =>
    step.stage === 'foundation'
      ? {
          act: `1 ${t('foundation-treble')} ${step.place === 0 ? "at the last one's foot" : 'in the same chain'}: the corner.`,
          check: 'This stitch is the corner. Put a marker in it.', // common practice
        }
      : {
          act: `1 ${t('double-crochet')} in the same place: the corner.`,
          check: 'This middle stitch is the corner. Put a marker in it.', // common practice
        },
  'right-side': () => ({
    act: "Take the colour of the front's last round, right side to you.",
    // The right side of a crocheted row shows Vs, the wrong side bars: common practice.
    check: 'The Vs face you. On the wrong side you see bars.',
  }),
  attach,
  'attach-chain': ({ making }) => ({
    act: 'Chain 1. It counts as no stitch.',
    // Counting this chain and working the first stitch gives one too many (read, two tutorials).
    check:
      making.plan.choices.edgingClosing.adds === 1
        ? 'The first stitch goes in the next place. The closing covers this one.'
        : 'The first stitch goes in this same place.',
  }),
  'double-crochet': doubleCrochet,
};

function foundationTreble(telling: Telling): Sentences {
  const { step, t } = telling;
  const name = t('foundation-treble');
  if (step.target.loop === 'first-chain') {
    return {
      act: `1 ${name} in the ${ordinal(STARTING_CHAINS)} chain from the hook.`,
      check: `It is the first chain you made: under 2 strands.${startMarker(telling)}`,
    };
  }
  const before = neighbour(telling, -1);
  if (before?.kind === 'corner-stitch')
    return {
      act: `1 ${name} in the same chain as the corner.`,
      check: 'Corner and side share this chain, and the row turns.',
    };
  if (before?.kind === 'corner-chain') {
    return {
      act: `1 ${name} in the last base chain, not the post.`,
      check: `The hook goes below the corner ${before.of === 1 ? 'chain' : 'chains'}, into the base of the last ${t('treble')}'s upright post.`,
    };
  }
  return {
    act: `1 ${name} in the chain at the last one's foot.`,
    // Common practice, no source.
    check: step.marker
      ? 'Put a marker in this stitch.'
      : `That is the base chain of the last ${t('treble')}: under 2 strands.`,
  };
}

function cornerChain(telling: Telling): Sentences {
  const { step } = telling;
  const chains =
    step.of > 1
      ? `Chain 1: ${ordinalWord(step.place + 1)} of ${step.of} for the corner.`
      : 'Chain 1 for the corner.';
  const last = step.place === step.of - 1;
  if (step.stage === 'foundation') {
    return { act: chains, ...(last && { check: 'The next stitch goes in the last base chain.' }) };
  }
  return { act: chains, ...(last && { check: `${cornerNow(step)} holds ${many(step.of, 'chain')}.` }) };
}

const cornerNow = ({ corner }: Step): string => `Corner ${corner + 1}`;

function doubleCrochet(telling: Telling): Sentences {
  const { step, t } = telling;
  const name = t('double-crochet');
  const before = neighbour(telling, -1);
  const arm = armOf(telling) ?? aroundTurn(telling);
  if (arm !== null) return cornerArm(telling, name, arm);
  if (before?.kind === 'attach-chain') return firstOfRound(telling, name);
  const isPastArm = armOf(telling, -1) === 'after';
  if (isPastArm && before !== null && isMovedCorner({ ...telling, step: before })) {
    return { act: `1 ${name} in the next back loop.`, check: 'Look for it tucked against the corner.' };
  }
  if (isCornerStep(before) || isPastArm || before?.target.loop === 'corner-chain') {
    // The first stitch after a corner is the one most often missed (read, two tutorials).
    return {
      act: `1 ${name} in the hidden first stitch, back loop.`,
      check: 'Look for it tucked against the corner.',
    };
  }
  return {
    act: `1 ${name} in the next back loop.`,
    check: step.marker ? 'Put a marker in this stitch.' : 'The front loops stay free in a line.',
  };
}

/** Where a corner below is worked into and the new corner has no place of its own, the round only turns there. */
function aroundTurn(telling: Telling): ArmEnd | null {
  const { target } = telling.step;
  if (target.loop !== 'corner-chain') return null;
  for (let by = 1; neighbour(telling, by)?.target.loop === 'corner-chain'; by++)
    if (neighbour(telling, by)?.target.node !== target.node) return 'before';
  return 'after';
}

function firstOfRound({ making, speech }: Telling, name: string): Sentences {
  const marker = `Put your start marker in this stitch, and go on to the ${onwards(speech)}.`;
  return making.plan.choices.edgingClosing.adds === 1
    ? { act: `1 ${name} in the next back loop.`, check: `Leave the attach place free. ${marker}` }
    : { act: `1 ${name} in the attach place, back loop.`, check: marker };
}

/** Where the starting chains count as a stitch the marker hangs in them. */
const startMarker = ({ making }: Telling): string =>
  making.plan.choices.foundationStart.counts === 1 ? '' : ' Put your start marker in this stitch.';

/** The yarn goes in the stitch that the round below began with; where that has no stitch there, in its last. */
function attach(telling: Telling): Sentences {
  const isFirst = telling.step.target.node === 0;
  const round = telling.making.plan.edge.corners.length === 0;
  const place = round ? 'stitch 1' : `stitch ${stitchesBefore(telling) + (isFirst ? 1 : 0)} of side 1`;
  return {
    act: isFirst
      ? 'Attach the yarn in the back loop under your start marker.'
      : 'Attach the yarn in the back loop of the last stitch.',
    // The loop is named where it is first worked into.
    check: `${telling.step.edging === 0 ? 'Of its top 2 loops the one away from you. ' : ''}It is ${place}${round ? '; any other will do' : ''}.`,
  };
}

/** Stitches of side 1 from its corner to where the round below was closed, the closing's own among them. */
function stitchesBefore(telling: Telling): number {
  let closing = 0;
  for (let by = -1; ; by--) {
    const step = neighbour(telling, by);
    if (step === null) return closing;
    if (step.kind === 'close-tops' || step.kind === 'close-round') closing = step.node >= 0 ? 1 : 0;
    if (step.kind === 'foundation-treble' || step.kind === 'double-crochet') return closing + step.place + 1;
    if (isCornerStep(step)) return closing;
  }
}

const cornersBelow = ({ step, making: { plan } }: Telling): readonly Corner[] =>
  (step.edging === 0 ? plan.foundation : plan.edgings[step.edging - 1])?.corners ?? [];

/** Where the corners below are chains, a corner in a stitch has been moved there. */
const isMovedCorner = (telling: Telling): boolean =>
  telling.step.target.loop !== 'corner-chain' && cornersBelow(telling)[0]?.made === 'chain';

/** A stitch worked into the corner below, before or after the new corner. */
function cornerArm(telling: Telling, name: string, arm: ArmEnd): Sentences {
  const { step } = telling;
  if (step.target.loop !== 'corner-chain') {
    const place = isMovedCorner(telling) ? 'same stitch' : 'corner stitch';
    return { act: `1 ${name} in the ${place}.`, ...besideCorner(telling, arm) };
  }
  const corners = cornersBelow(telling);
  const turned = (step.side - 1 + corners.length) % Math.max(1, corners.length);
  const corner = cornerBelow(telling, arm) ?? (arm === 'before' ? step.side : turned);
  const size = corners[corner]?.size ?? 1;
  const chain = size === 1 ? 'chain' : `${ordinalWord(arm === 'before' ? 1 : size)} chain`;
  return { act: `1 ${name} in the ${chain} of the corner below.`, ...besideCorner(telling, arm) };
}

/** What lies between this arm and the other one. */
function besideCorner(telling: Telling, arm: ArmEnd): Pick<Sentences, 'check'> {
  const { step, making } = telling;
  const next = neighbour(telling, arm === 'before' ? 1 : -1);
  if (next === null || !isCornerStep(next)) {
    const isElsewhere = (making.plan.edgings[step.edging]?.corners[0]?.size ?? 0) > 0;
    return isElsewhere ? { check: 'Go straight on: the corner is not here.' } : {};
  }
  const isBefore = arm === 'before';
  if (next.kind === 'corner-stitch')
    return { check: isBefore ? 'The corner stitch comes next.' : 'The corner stitch stands before it.' };
  const chains = next.of === 1 ? 'chain' : 'chains';
  const comes = next.of === 1 ? 'comes' : 'come';
  return {
    check: isBefore
      ? `The corner ${chains} ${comes} next.`
      : `The ${chains} you just made ${next.of === 1 ? 'lies' : 'lie'} before it.`,
  };
}
