/**
 * One step of the making as a person is told it. Everything comes from the step and the plan; the same
 * sentences serve the walk, the lessons, reading aloud and the list beside the drawing.
 */
import type { Step, StepKind } from '../../../core/index.ts';
import type { Cloth } from '../../state/cloth-types.ts';
import { inNumbers } from '../cloth/in-numbers.ts';
import type { Speech } from '../words.ts';
import { CLOSING } from './acts-closing.ts';
import { CLOTH } from './acts-cloth.ts';
import { JOIN } from './acts-join.ts';
import { ROUND } from './acts-round.ts';
import { sayAdjusted } from './adjusted.ts';
import { type Sentences, type Telling, type Told, tellingOf } from './telling.ts';
import { sayCount, sayWhere } from './where.ts';

export type Said = Sentences & {
  where: string;
  /** The number to show large, as text; empty where nothing is counted. */
  count: string;
};

const ACTS: Record<StepKind, (telling: Telling) => Sentences> = { ...ROUND, ...CLOSING, ...CLOTH, ...JOIN };

/**
 * What to do now, where that is, and how to tell it is right.
 * A step that carries out a mishap says so in its check; what is asked for is told as the instruction it is.
 */
export function sayStep(step: Step, making: Told, speech: Speech, cloth: Cloth | null = null): Said {
  const telling = tellingOf(step, making, speech);
  const plain = ACTS[step.kind](telling);
  const sentences = sayAdjusted(telling, plain) ?? { ...plain, ...inNumbers(step.kind, cloth, speech.units) };
  const said = { ...sentences, where: sayWhere(step, making), count: sayCount(step) };
  return step.mishap === undefined
    ? said
    : { ...said, check: 'The recipe does not ask for this: it is a mishap.' };
}

/** Why slider and jumps end at a question. */
export const sayHeldBack = (): string => 'The slider stops here until you answer.';

const STITCHES: ReadonlySet<StepKind> = new Set([
  'count-stitch',
  'count-corner',
  'foundation-treble',
  'corner-chain',
  'corner-stitch',
  'double-crochet',
  'slip-stitch',
  'last-hole',
]);

/** On the button that leads to the step after this one. */
export function sayNext(step: Step, { steps }: Told): string {
  return step.index + 1 < steps.length && STITCHES.has(steps.at(step.index + 1).kind)
    ? 'Next stitch'
    : 'Next';
}

/** The step as one line for a list or a voice: what to do, then where. */
export function sayStepInOne(step: Step, making: Told, speech: Speech): string {
  const { act, where } = sayStep(step, making, speech);
  return `${act} ${where}.`;
}
