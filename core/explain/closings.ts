/** What can go wrong where a round begins and ends. */
import { type ActKind, type AtRound, whyNot } from '../hand/acts/acts.ts';
import type { Plan } from '../types.ts';

export const foundationClosings: ActKind[] = [
  'start-counted',
  'closing-forgotten',
  'closing-over-first',
  'closing-beside-first',
];
export const edgingClosings: ActKind[] = [...foundationClosings, 'attach-doubled', 'closing-worked'];

/** A closing planned to add cannot be laid beside by mistake, and the other way round. */
export const closingCanBe = (plan: Plan, at: AtRound, kind: ActKind): boolean =>
  whyNot(kind, { edging: 0, ...at }, plan) === null;
