/** Mishaps as data: reading them without trust. */
import { fieldsOf, listOf, own, plainZero } from '../checks.ts';
import { limits } from '../limits.ts';
import { done, fail, type Problem, type Result } from '../problems.ts';
import type { ActRound, Plan } from '../types.ts';
import { type Act, type ActKind, actKinds, actOf, has, needs, roundsOf } from './acts/acts.ts';
import { checkAct, checkActs } from './acts/check.ts';
import { type Settled, settle } from './acts/doing.ts';

export function readMishaps(value: unknown, plan: Plan): Result<Settled[]> {
  if (value === undefined || value === null) return done([]);
  const list = listOf(value, limits.mishaps);
  if (!list) return fail([{ at: 'mishaps', code: 'mishaps', params: { max: limits.mishaps } }]);
  const problems: Problem[] = [];
  const read = list.map((one, index) => readMishap(one, index, problems));
  const acts = read.filter((one) => one !== null);
  problems.push(
    ...(acts.length === read.length
      ? checkActs(acts, plan)
      : read.flatMap((act, index) => (act ? checkAct(act, index, plan) : []))),
  );
  return problems.length > 0 ? fail(problems) : done(settle(acts));
}

const isKind = (kind: unknown): kind is ActKind => actKinds.some((one) => one === kind);
const isRound = (round: unknown): round is ActRound =>
  round === 'plan' || round === 'foundation' || round === 'edging' || round === 'join';

/** The act that is meant, whatever its numbers are. */
function readMishap(value: unknown, index: number, problems: Problem[]): Act | null {
  const at = `mishaps[${index}]`;
  const fields = fieldsOf(value);
  const kind = fields && own(fields, 'kind');
  const params = { mishap: index };
  if (!fields || !isKind(kind)) {
    problems.push({ at, code: 'mishap-kind', params });
    return null;
  }
  const number = (key: 'edging' | 'side' | 'corner' | 'place' | 'count'): Record<string, number> => {
    const given = own(fields, key);
    if (given === undefined) return {};
    return { [key]: typeof given === 'number' ? plainZero(given) : Number.NaN };
  };
  const round = own(fields, 'round');
  if (round !== undefined && !isRound(round))
    problems.push({ at: `${at}.round`, code: 'mishap-round', params: { ...params, rounds: roundsOf(kind) } });
  const end = own(fields, 'end');
  const isEnd = end === 'before' || end === 'after';
  if (!isEnd && needs(kind, 'end')) problems.push({ at: `${at}.end`, code: 'mishap-end', params });
  const then = own(fields, 'then') ?? 'from-corner';
  const isThen = then === 'from-corner' || then === 'from-total';
  if (!isThen && has(kind, 'then')) problems.push({ at: `${at}.then`, code: 'mishap-then', params });
  return actOf(kind, {
    ...(isRound(round) ? { round } : {}),
    ...number('edging'),
    ...number('side'),
    ...number('corner'),
    ...number('place'),
    ...number('count'),
    ...(isEnd ? { end } : {}),
    ...(isThen ? { then } : {}),
  });
}
