/** Mishaps as data: reading them without trust, and finding the one that bears on an act. */
import { done, fail, fieldsOf, limits, listOf, ordinal, own, plainZero } from '../problems.ts';
import type { Mishap, MishapKind, MishapRound, Plan, Problem, Result } from '../types.ts';
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

/** Stitches that mishaps may add in all: as many as the biggest panel has. */
const mostMade = limits.sides * limits.stitches;

/** A mishap with its round settled, and its place in the list given. */
export type Settled = Mishap & { round: MishapRound; edging: number; index: number };

export function readMishaps(value: unknown, plan: Plan): Result<Settled[]> {
  if (value === undefined || value === null) return done([]);
  const list = listOf(value, limits.mishaps);
  if (!list)
    return fail([{ at: 'mishaps', code: 'mishaps', says: `Give between 0 and ${limits.mishaps} mishaps` }]);
  const problems: Problem[] = [];
  const read = list.map((one, index) => readMishap(one, index, plan, problems));
  const made = sum(read.map((one) => (one?.round === 'join' ? 0 : Math.abs(one?.count ?? 0))));
  if (made > mostMade)
    problems.push({
      at: 'mishaps',
      code: 'mishap-sum',
      says: `The mishaps must add ${mostMade.toLocaleString('en-GB')} stitches or fewer in all`,
    });
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
    problems.push({ at, code: 'mishap-kind', says: `Mishap ${ordinal(index)} must be one that is known` });
    return null;
  }
  const { rounds, needs } = mishapKinds[kind as MishapKind];
  const round = own(fields, 'round') ?? rounds[0];
  const wrong = (key: string, says: string) =>
    problems.push({ at: `${at}.${key}`, code: `mishap-${key}`, says: `Mishap ${ordinal(index)}: ${says}` });
  if (!rounds.includes(round as MishapRound))
    wrong('round', `it can happen in the ${rounds.join(' or the ')} only`);
  const corners = plan.foundation.corners.length;
  const sides = plan.foundation.sides.length;
  const most = limits.stitches * 2;
  const check = (key: Need | 'edging', low: number, high: number, says: string): number | undefined => {
    const given = own(fields, key);
    if (given === undefined && !needs.includes(key as Need)) return undefined;
    if (isWhole(given, low, high)) return plainZero(given);
    wrong(key, says);
    return undefined;
  };
  const edging = check('edging', 0, plan.edgings.length - 1, 'it names an edging round that is not there');
  const settled: Settled = {
    kind: kind as MishapKind,
    round: round as MishapRound,
    edging: edging ?? 0,
    index,
  };
  const side = check('side', 0, sides - 1, `its side must be between 1 and ${sides}`);
  const corner = check(
    'corner',
    0,
    corners - 1,
    corners ? `its corner must be between 1 and ${corners}` : 'there are no corners here',
  );
  const place = check('place', 0, most, 'its stitch must be on the side');
  const least = kind === 'corner-chains' || kind === 'arm-missed' ? 0 : kind.startsWith('stitch') ? 1 : -most;
  const count = check('count', least, most, 'its number must be a whole number');
  if (side !== undefined) settled.side = side;
  if (corner !== undefined) settled.corner = corner;
  if (place !== undefined) settled.place = place;
  if (count !== undefined) settled.count = count;
  readWords(fields, needs, settled, wrong);
  return settled;
}

function readWords(
  fields: Readonly<Record<string, unknown>>,
  needs: readonly Need[],
  settled: Settled,
  wrong: (key: string, says: string) => void,
): void {
  const end = own(fields, 'end');
  if (end === 'before' || end === 'after') settled.end = end;
  else if (needs.includes('end')) wrong('end', 'say whether it was before or after the corner');
  const then = own(fields, 'then') ?? 'from-corner';
  if (!needs.includes('then')) return;
  if (then === 'from-corner' || then === 'from-total') settled.then = then;
  else wrong('then', 'say whether the next side was counted from the corner or from the total');
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
