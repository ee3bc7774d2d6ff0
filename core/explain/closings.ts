/** What can go wrong where a round begins and ends. */
import type { Mishap, MishapKind, Plan } from '../types.ts';

export const foundationClosings: MishapKind[] = [
  'start-counted',
  'closing-forgotten',
  'closing-over-first',
  'closing-beside-first',
];
export const edgingClosings: MishapKind[] = [...foundationClosings, 'attach-doubled', 'closing-worked'];

/** A closing planned to add cannot be laid beside by mistake, and the other way round. */
export const closingCanBe = (plan: Plan, at: Pick<Mishap, 'round' | 'edging'>, kind: MishapKind): boolean => {
  const { foundationClosing, edgingClosing } = plan.choices;
  const { adds } = at.round === 'foundation' ? foundationClosing : edgingClosing;
  if (kind === 'closing-over-first' || kind === 'closing-forgotten') return adds === 1;
  return kind !== 'closing-beside-first' || adds === 0;
};
