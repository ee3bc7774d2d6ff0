/** What the sentences about one step are made from, and what they come to. */
import type { Step } from '../../../core/index.ts';
import type { Making } from '../../state/snapshot.ts';
import { type TermForm, type TermId, term } from '../terms.ts';
import type { Speech } from '../words.ts';

/** The part of the making that a sentence looks at. Mishaps only say that a step is not in the recipe. */
export type Told = Pick<Making, 'plan' | 'steps'> & Partial<Pick<Making, 'acts' | 'becomes'>>;

export type Telling = {
  step: Step;
  making: Told;
  speech: Speech;
  /** A term in the person's words. */
  t: (id: TermId, form?: TermForm) => string;
};

/** The sentences of one step; `act` has at most 12 words and `ask` ends in a question mark. */
export type Sentences = {
  act: string;
  /** How to tell that it is right. */
  check?: string;
  /** What can hurt, or cannot be undone. */
  caution?: string;
  /** A question to be answered before going on, what can be answered, and what to do where the answer is no. */
  ask?: string;
  answers?: { yes: string; no: string; how: string };
};

export const tellingOf = (step: Step, making: Told, speech: Speech): Telling => ({
  step,
  making,
  speech,
  t: (id, form) => term(id, speech.dialect, form),
});

/** The step so many before (negative) or after, or null at the ends. */
export function neighbour({ step, making }: Pick<Telling, 'step' | 'making'>, by: number): Step | null {
  const at = step.index + by;
  return at < 0 || at >= making.steps.length ? null : making.steps.at(at);
}
