/** The sentences for counting the front and for working the foundation and the edging rounds. */
import type { Step, StepKind } from '../../core/index.ts';
import { onwards } from './hand.ts';
import { ordinalWord } from './numbers.ts';
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
  'count-stitch': ({ step, speech }) => ({
    act: `Count ${step.place + 1}: 1 V, going ${onwards(speech)}.`,
    // Exactly one per side is missed, tucked under the corner (read, two tutorials).
    ...(step.place === 0 && { check: 'The first V can hide under the corner.' }),
  }),
  'count-corner': ({ step, making }) => ({
    act:
      making.plan.edge.corners[step.corner]?.made === 'stitch'
        ? 'This stitch is the corner.'
        : `Chain ${step.place + 1} of the corner.`,
    ...(step.place === 0 && { check: 'Corner chains are counted apart from the stitches.' }),
  }),
  'slip-knot': () => ({
    act: 'Make a slip knot on the hook.',
    check: 'The loop slides when you pull the short end.', // common practice
  }),
  'start-chains': ({ making }) => ({
    act: `Chain ${STARTING_CHAINS}.`,
    // Both teachings are published (read), so the plan carries the choice.
    check:
      making.plan.choices.foundationStart.counts === 1
        ? 'These chains count as the first stitch.'
        : 'These chains count as no stitch.',
  }),
  'foundation-treble': foundationTreble,
  'corner-chain': cornerChain,
  'corner-stitch': ({ step, t }) => ({
    act: `1 ${t(step.stage === 'foundation' ? 'foundation-treble' : 'double-crochet')} in the same place: the corner.`,
    check: 'This middle stitch is the corner. Put a marker in it.', // common practice
  }),
  'right-side': () => ({
    act: 'Turn the right side to you.',
    // The right side of a crocheted row shows Vs, the wrong side bars: common practice.
    check: 'The Vs face you. On the wrong side you see bars.',
  }),
  attach: ({ step }) => ({
    act:
      step.target.loop === 'back-loop'
        ? 'Attach the yarn in this back loop.'
        : 'Attach the yarn in this place.',
    check: 'This place carries only a chain.',
  }),
  'attach-chain': ({ making, step }) => ({
    act: 'Chain 1. It counts as no stitch.',
    // Counting this chain and working the first stitch gives one too many (read, two tutorials).
    check:
      making.plan.choices.edgingClosing.adds === 1 && step.stage !== 'join'
        ? 'The first stitch goes in the next place. The closing covers this one.'
        : 'Draw it snug.',
  }),
  'double-crochet': doubleCrochet,
};

function foundationTreble(telling: Telling): Sentences {
  const { step, t } = telling;
  const name = t('foundation-treble');
  if (step.target.loop === 'first-chain') {
    return {
      act: `1 ${name} in the first chain.`,
      check: 'The hook takes the front and the back strand of that chain.',
    };
  }
  if (isCorner(neighbour(telling, -1))) {
    return {
      act: `1 ${name} in the last base chain, not the post.`,
      check: `The hook goes below the corner chains, into the base of the last ${t('treble')}.`,
    };
  }
  return {
    act: `1 ${name} in the base chain of the last.`,
    check: 'The hook goes under 2 strands of the base chain.', // common practice
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
  return { act: chains, ...(last && { check: `${cornerNow(step)} holds ${step.of}.` }) };
}

const cornerNow = ({ corner }: Step): string => `Corner ${corner + 1}`;

function doubleCrochet(telling: Telling): Sentences {
  const { step, t } = telling;
  const name = t('double-crochet');
  if (step.target.loop === 'corner-chain') return cornerArm(telling, name);
  if (step.target.loop !== 'back-loop') return { act: `1 ${name} in this place.` };
  const first = neighbour(telling, -1)?.kind === 'attach-chain';
  if (first) return { act: `1 ${name} in the next back loop.`, check: 'Leave the attach place free.' };
  if (hidden(telling)) {
    // The first stitch after a corner is the one most often missed (read, two tutorials).
    return {
      act: `1 ${name} in the hidden first stitch, back loop.`,
      check: 'Look for it tucked against the corner.',
    };
  }
  return { act: `1 ${name}, back loop only.`, check: 'The front strands stay free in a line.' };
}

/** A stitch worked into a corner, before or after the new corner. */
function cornerArm(telling: Telling, name: string): Sentences {
  const before = isCorner(neighbour(telling, 1)) || neighbour(telling, 1)?.target.loop === 'corner-chain';
  const after = isCorner(neighbour(telling, -1));
  if (before && !after) return { act: `1 ${name} in the first chain of the corner.` };
  return { act: `1 ${name} in the last chain of the corner.` };
}

/** The first stitch of a side that does not go into the corner itself. */
function hidden(telling: Telling): boolean {
  const last = neighbour(telling, -1);
  return last !== null && last.stage === 'edging' && (last.target.loop === 'corner-chain' || isCorner(last));
}

const isCorner = (step: Step | null): boolean =>
  step?.kind === 'corner-chain' || step?.kind === 'corner-stitch';
