/** A case to be cured, and a cure of it carried out. */
import { type Act, asked, type Mishap } from '../hand/acts/acts.ts';
import type { Plan, Seen, Stand } from '../types.ts';
import { type Done, doneWith, meetingOf } from './outcome.ts';
import { type Back, costOf } from './stand.ts';
import type { Cure, Explanation } from './types.ts';

export type Case = {
  plan: Plan;
  explanation: Pick<Explanation, 'mishaps' | 'causes' | 'front' | 'gives'>;
  stand: Stand;
  /** The work as it is. */
  done: Done;
};

export const countsOf = ({ rounds }: Done): Seen => {
  const [foundation, ...edgings] = rounds;
  return { foundation: foundation as Done['rounds'][number], edgings };
};

type Given = Pick<Cure, 'kind' | 'looks' | 'mishaps'> &
  Partial<Omit<Cure, 'adjustments'>> & { back?: Back | null; adjustments?: readonly Act[] };

/** A cure with what it leads to, and what it costs, worked out. */
export function carryOut({ plan, explanation, stand, done }: Case, { back = null, ...given }: Given): Cure {
  const adjustments = (given.adjustments ?? []).map(asked);
  const after = doneWith(plan, [...given.mishaps, ...adjustments], explanation.gives.front);
  return {
    recommended: false,
    at: [],
    cost: costOf({ plan, stand, before: done, after }, back),
    seenAfter: countsOf(after),
    then: meetingOf(plan, after).kind,
    ...given,
    adjustments,
  };
}

export const withoutJoin = (mishaps: readonly Mishap[]): Mishap[] =>
  mishaps.filter(({ round }) => round !== 'join');
