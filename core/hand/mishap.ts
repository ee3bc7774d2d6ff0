/** Mishaps as data: reading them without trust, and finding the one that bears on an act. */
import { fieldsOf, listOf, own, plainZero } from '../checks.ts';
import { limits } from '../limits.ts';
import { done, fail, type Problem, type ProblemParams, type Result } from '../problems.ts';
import type { Mishap, MishapKind, MishapRound, Plan } from '../types.ts';
import { isWhole, sum } from '../whole.ts';

type Need = 'side' | 'place' | 'corner' | 'count' | 'end' | 'then';

/** What each kind needs besides its name, and in which rounds it can happen (the first is the default). */
export const mishapKinds: Readonly<
  Record<MishapKind, { rounds: readonly MishapRound[]; needs: readonly Need[] }>
> = {
  'start-counted': { rounds: ['foundation', 'edging'], needs: [] },
  'closing-forgotten': { rounds: ['foundation', 'edging'], needs: [] },
  'closing-over-first': { rounds: ['foundation', 'edging'], needs: [] },
  'closing-beside-first': { rounds: ['foundation', 'edging'], needs: [] },
  'stitch-missed': { rounds: ['foundation', 'edging'], needs: ['side', 'place'] },
  'stitch-doubled': { rounds: ['foundation', 'edging'], needs: ['side', 'place'] },
  'corner-moved': { rounds: ['foundation', 'edging'], needs: ['corner', 'count', 'then'] },
  'corner-forgotten': { rounds: ['foundation', 'edging'], needs: ['corner'] },
  'corner-chains': { rounds: ['foundation', 'edging'], needs: ['corner', 'count'] },
  'arm-missed': { rounds: ['edging'], needs: ['corner', 'end'] },
  'hidden-missed': { rounds: ['edging'], needs: ['corner'] },
  'attach-doubled': { rounds: ['edging'], needs: [] },
  'closing-worked': { rounds: ['edging'], needs: [] },
  'chains-as-stitches': { rounds: ['plan'], needs: [] },
  'chains-left-out': { rounds: ['plan'], needs: [] },
  'arms-forgotten': { rounds: ['plan'], needs: [] },
  'order-not-mirrored': { rounds: ['plan'], needs: [] },
  'join-offset': { rounds: ['join'], needs: ['count'] },
  'join-wrong-side': { rounds: ['join'], needs: ['count'] },
  'join-chain-skipped': { rounds: ['join'], needs: ['corner'] },
  'last-hole': { rounds: ['join'], needs: [] },
  twisted: { rounds: ['foundation'], needs: [] },
};

/** A mishap with its round settled, and its place in the list given. */
export type Settled = Mishap & { round: MishapRound; edging: number; index: number };

export function readMishaps(value: unknown, plan: Plan): Result<Settled[]> {
  if (value === undefined || value === null) return done([]);
  const list = listOf(value, limits.mishaps);
  if (!list) return fail([{ at: 'mishaps', code: 'mishaps', params: { max: limits.mishaps } }]);
  const problems: Problem[] = [];
  const read = list.map((one, index) => readMishap(one, index, plan, problems));
  const made = sum(read.map((one) => (one?.round === 'join' ? 0 : Math.abs(one?.count ?? 0))));
  if (made > limits.stitchesAdded)
    problems.push({ at: 'mishaps', code: 'mishap-sum', params: { max: limits.stitchesAdded } });
  return problems.length > 0 ? fail(problems) : done(read as Settled[]);
}

/** Mishaps of our own making, which need no reading: only their rounds and places in the list are settled. */
export const settle = (mishaps: readonly Mishap[]): Settled[] =>
  mishaps.map((mishap, index) => ({
    ...mishap,
    round: mishap.round ?? (mishapKinds[mishap.kind].rounds[0] as MishapRound),
    edging: mishap.edging ?? 0,
    index,
  }));

function readMishap(value: unknown, index: number, plan: Plan, problems: Problem[]): Settled | null {
  const at = `mishaps[${index}]`;
  const fields = fieldsOf(value);
  const kind = fields && own(fields, 'kind');
  if (!fields || typeof kind !== 'string' || !Object.hasOwn(mishapKinds, kind)) {
    problems.push({ at, code: 'mishap-kind', params: { mishap: index } });
    return null;
  }
  const { rounds, needs } = mishapKinds[kind as MishapKind];
  const round = own(fields, 'round') ?? rounds[0];
  const wrong = (problem: Wrong): void => {
    problems.push({ ...problem, at: `${at}.${problem.code.slice('mishap-'.length)}` });
  };
  if (!rounds.includes(round as MishapRound))
    wrong({ code: 'mishap-round', params: { mishap: index, rounds } });
  const corners = plan.foundation.corners.length;
  const sides = plan.foundation.sides.length;
  const most = limits.stitches * 2;
  const check = (key: Need | 'edging', low: number, high: number, problem: Wrong): number | undefined => {
    const given = own(fields, key);
    if (given === undefined && !needs.includes(key as Need)) return undefined;
    if (isWhole(given, low, high)) return plainZero(given);
    wrong(problem);
    return undefined;
  };
  const params = { mishap: index };
  const edging = check('edging', 0, plan.edgings.length - 1, { code: 'mishap-edging', params });
  const settled: Settled = {
    kind: kind as MishapKind,
    round: round as MishapRound,
    edging: edging ?? 0,
    index,
  };
  const side = check('side', 0, sides - 1, { code: 'mishap-side', params: { ...params, sides } });
  const corner = check('corner', 0, corners - 1, { code: 'mishap-corner', params: { ...params, corners } });
  const place = check('place', 0, most, { code: 'mishap-place', params });
  const least = kind === 'corner-chains' || kind === 'arm-missed' ? 0 : kind.startsWith('stitch') ? 1 : -most;
  const count = check('count', least, most, { code: 'mishap-count', params });
  if (side !== undefined) settled.side = side;
  if (corner !== undefined) settled.corner = corner;
  if (place !== undefined) settled.place = place;
  if (count !== undefined) settled.count = count;
  readWords(fields, needs, settled, wrong);
  return settled;
}

type MishapCode = Extract<keyof ProblemParams, `mishap-${Need | 'round' | 'edging'}`>;
/** A problem of one mishap; its place follows from its code. */
type Wrong = { [C in MishapCode]: { code: C; params: ProblemParams[C] } }[MishapCode];

function readWords(
  fields: Readonly<Record<string, unknown>>,
  needs: readonly Need[],
  settled: Settled,
  wrong: (problem: Wrong) => void,
): void {
  const params = { mishap: settled.index };
  const end = own(fields, 'end');
  if (end === 'before' || end === 'after') settled.end = end;
  else if (needs.includes('end')) wrong({ code: 'mishap-end', params });
  const then = own(fields, 'then') ?? 'from-corner';
  if (!needs.includes('then')) return;
  if (then === 'from-corner' || then === 'from-total') settled.then = then;
  else wrong({ code: 'mishap-then', params });
}

/** Those mishaps that happen in one round. */
export const inRound = (mishaps: readonly Settled[], round: MishapRound, edging = 0): Settled[] =>
  mishaps.filter((mishap) => mishap.round === round && (round !== 'edging' || mishap.edging === edging));

export const first = (mishaps: readonly Settled[], kind: MishapKind): Settled | undefined =>
  mishaps.find((mishap) => mishap.kind === kind);

export const atCorner = (
  mishaps: readonly Settled[],
  kind: MishapKind,
  corner: number,
): Settled | undefined => mishaps.find((mishap) => mishap.kind === kind && mishap.corner === corner);
