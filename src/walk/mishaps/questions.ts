/** Questions of the making that stand between where the work is and another step. */
import { type Step, type StepKind, stepOfKind } from '../../../core/index.ts';
import type { Snapshot } from '../../state/snapshot.ts';

type Asks = NonNullable<Step['asks']>;

/** The questions of the making, in their order, and the step at which each is asked. */
const QUESTIONS: readonly { asks: Asks; kind: StepKind }[] = [
  { asks: 'twist', kind: 'check-twist' },
  { asks: 'pad', kind: 'pad-in' },
];

/** Questions not answered yet that stand between the place of the work and step `to`. */
export function questionsBefore(
  { making, place, answered }: Pick<Snapshot, 'making' | 'place' | 'answered'>,
  to: number,
): { asks: Asks; at: number }[] {
  return QUESTIONS.filter(({ asks }) => !answered.includes(asks))
    .map(({ asks, kind }) => ({ asks, at: stepOfKind(making, kind) }))
    .filter(({ at }) => at >= place && at < to);
}
