/** Whether acts that come from a person, or from a file, can happen on a panel. */
import { limits } from '../../limits.ts';
import type { Problem, ProblemParams } from '../../problems.ts';
import type { Plan } from '../../types.ts';
import { isWhole, sum } from '../../whole.ts';
import { type Act, actKinds, entryOf, needs, roundsOf } from './acts.ts';
import type { Field } from './entry.ts';

/** Everything that is wrong with a list of acts. Problems are at the list's name, and `mishaps[i].side` and so on. */
export function checkActs(
  acts: readonly Act[],
  plan: Plan,
  list: 'mishaps' | 'adjustments' = 'mishaps',
): Problem[] {
  if (acts.length > limits.mishaps) return [{ at: list, code: 'mishaps', params: { max: limits.mishaps } }];
  const strange = acts.findIndex(({ kind }) => !actKinds.includes(kind));
  if (strange >= 0) return [{ at: `${list}[${strange}]`, code: 'mishap-kind', params: { mishap: strange } }];
  const problems = acts.flatMap((act, index) =>
    checkAct(act, index, plan).map(
      (one): Problem => ({
        ...one,
        at: `${list}[${index}].${one.code.slice('mishap-'.length)}`,
      }),
    ),
  );
  const made = sum(acts.map((act) => (roundsOf(act.kind)[0] === 'join' ? 0 : Math.abs(act.count ?? 0))));
  if (made > limits.stitchesAdded)
    problems.push({ at: list, code: 'mishap-sum', params: { max: limits.stitchesAdded } });
  return problems;
}

/** Places and numbers beyond a side are taken as its end, so they are bounded only as counts are. */
const most = limits.stitches * 2;

function checkAct(act: Act, index: number, plan: Plan): Wrong[] {
  const sides = plan.foundation.sides.length;
  const corners = plan.foundation.corners.length;
  const rounds = roundsOf(act.kind);
  const params = { mishap: index };
  const isOutside = (field: Field, least: number, highest: number): boolean => {
    const value = act[field];
    return value === undefined
      ? needs(act.kind, field)
      : typeof value === 'number' && !isWhole(value, least, highest);
  };
  const found: (Wrong | false)[] = [
    act.round !== undefined &&
      !rounds.some((round) => round === act.round) && {
        code: 'mishap-round',
        params: { mishap: index, rounds },
      },
    !isWhole(act.edging ?? 0, 0, plan.edgings.length - 1) && { code: 'mishap-edging', params },
    isOutside('side', 0, sides - 1) && { code: 'mishap-side', params: { ...params, sides } },
    isOutside('corner', 0, corners - 1) && { code: 'mishap-corner', params: { ...params, corners } },
    isOutside('place', 0, most) && { code: 'mishap-place', params },
    isOutside('count', entryOf(act.kind).least ?? -most, most) && { code: 'mishap-count', params },
  ];
  return found.filter((one) => one !== false);
}

type Code = Extract<keyof ProblemParams, `mishap-${string}`>;
/** A problem of one act; its place follows from its code. */
type Wrong = { [C in Code]: { code: C; params: ProblemParams[C] } }[Code];
