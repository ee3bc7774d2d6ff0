/** An answer to what went wrong, as it travels: sums of a cause's and a cure's names, found again among what is found anew. */
import type { Cure, Explanation } from '../../core/index.ts';
import { sumOf } from '../input/sum.ts';
import { answerFields } from '../state/answer-fields.ts';
import type { Project } from '../state/snapshot.ts';
import { causePlace, explanationTitle } from '../words/wrong/causes.ts';
import { type Done, keyOf } from './chosen.ts';
import { nameOf } from './cured.ts';
import type { Answered } from './view.ts';

/** What is answered by taking a cure. */
export function answerOf({ cause, explained, snapshot }: Answered, cure: Cure): Done['answer'] {
  const { making, settings } = snapshot;
  const told = explained.explanations.find((one) => keyOf(one) === cause);
  const places = told?.causes.map((one) => causePlace(one, making.plan, settings)) ?? [];
  const says = told ? [`${explanationTitle(told.causes, making.plan, settings)}: ${places.join('; ')}.`] : [];
  return { cause: told ? sumOf(keyOf(told)) : '', cure: sumOf(nameOf(cure)), says };
}

/** The project that carries an answer. */
export const withAnswer = ({ before, answer }: Done): Project => ({
  ...before,
  texts: { ...before.texts, [answerFields.cause]: answer.cause, [answerFields.cure]: answer.cure },
});

export type Sent = { cause: string; cure: string };

/** The answer that came with a project. */
export function sentIn({ texts }: Project): Sent | null {
  const [cause, cure] = [texts[answerFields.cause] ?? '', texts[answerFields.cure] ?? ''];
  return cause === '' && cure === '' ? null : { cause, cure };
}

export const isCause = (sent: Sent | null, explanation: Explanation): boolean =>
  sent !== null && sent.cause !== '' && sumOf(keyOf(explanation)) === sent.cause;

/** The cure that the answer names, of the cause that it names. */
export function isNamed({ snapshot, cause }: Answered, cure: Cure): boolean {
  const sent = sentIn(snapshot.project);
  if (!sent || sumOf(nameOf(cure)) !== sent.cure) return false;
  return sent.cause === (cause === undefined ? '' : sumOf(cause));
}
