/**
 * The search for causes in turns: sets of one cause, then of two, then of three. Each turn answers for itself, so
 * that what is found at once is shown at once.
 */
import { explain } from '../../../core/index.ts';
import { type Question, type Turn, turnSizes } from './question.ts';

export function* turnsOf({ plan, seen, looked, stands }: Question): Generator<Turn, undefined> {
  for (const causes of turnSizes) {
    yield { causes, explained: explain(plan, seen, { looked, causes, ...(stands ? { stands } : {}) }) };
  }
}
