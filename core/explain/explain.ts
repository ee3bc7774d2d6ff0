/**
 * Why did it come out wrong? The smallest sets of causes whose making gives exactly what was seen, best first.
 *
 * Rule: nothing is concluded from a difference; every explanation is carried out by the same hand that works the
 * recipe, and stands only if it gives the counts seen. Trade-off: sizes are tried as far as what was seen speaks of
 * them, so a set of mishaps that hide one another's size is not looked for.
 */

import { looksLikePlan } from '../plan-again.ts';
import { done, fail, fieldsOf, own } from '../problems.ts';
import { readSeen } from '../seen-again.ts';
import { tallyWith } from '../tally.ts';
import type { Plan, Result, Seen } from '../types.ts';
import { type Candidate, plainMishaps } from './candidate.ts';
import { rankOf } from './commonness.ts';
import { magnitudesOf } from './magnitudes.ts';
import { searchSets } from './search.ts';
import { outcomeOf, startTrying, type Trying } from './trying.ts';
import type { Explained, Explanation, Options } from './types.ts';
import { universeOf } from './universe.ts';
import { readWanted, roundsOf } from './wanted.ts';

/**
 * The explanations of what was seen. `plan` from `planBack`; `seen` a `Seen`, any of it null or left out; `options`
 * see `Options`. Problems are at `plan` and `seen`.
 */
export function explain(plan: unknown, seen: unknown, options?: unknown): Result<Explained> {
  if (!looksLikePlan(plan)) return fail([{ at: 'plan', code: 'plan', says: 'Plan the back first' }]);
  if (seen !== undefined && !fieldsOf(seen))
    return fail([{ at: 'seen', code: 'seen', says: 'Enter what you counted' }]);
  return done(explainWith(plan, readSeen(seen), readOptions(options)));
}

type Settled = { most: number; causes: 1 | 2 | 3; looked: NonNullable<Options['looked']>; advice: boolean };

function readOptions(options: unknown): Settled {
  const fields = fieldsOf(options) ?? {};
  const most = own(fields, 'most');
  const causes = own(fields, 'causes');
  const looked = own(fields, 'looked');
  return {
    most: typeof most === 'number' && most >= 1 ? most : 40,
    causes: causes === 1 || causes === 2 ? causes : 3,
    looked: Array.isArray(looked) ? looked : [],
    advice: own(fields, 'advice') !== false,
  };
}

function explainWith(plan: Plan, seen: Seen, options: Settled): Explained {
  const wanted = readWanted(plan, seen);
  const trying = startTrying(plan, wanted);
  const magnitudes = magnitudesOf(plan, wanted, roundsOf(tallyWith(plan, [])));
  const candidates = universeOf(plan, wanted, magnitudes);
  const sets = searchSets(trying, candidates, magnitudes, options.causes);
  const explanations = sets
    .map((set) => ({ set, score: rankOf(set.map(({ cause }) => cause)) }))
    .sort((a, b) => a.score.rank - b.score.rank)
    .slice(0, options.most)
    .map(({ set, score }) => explanationOf(trying, set, score));
  return {
    explanations,
    effort: {
      tried: trying.tried,
      plain: plainEffort(candidates.length, options.causes),
      candidates: candidates.length,
      sets: sets.length,
    },
  };
}

/** Makings that trying every set would take. */
const plainEffort = (n: number, causes: number): number =>
  n + (causes > 1 ? (n * (n - 1)) / 2 : 0) + (causes > 2 ? (n * (n - 1) * (n - 2)) / 6 : 0);

function explanationOf(
  trying: Trying,
  set: Candidate[],
  { causes, rarity, rank }: ReturnType<typeof rankOf>,
): Explanation {
  const outcome = outcomeOf(trying, set);
  const [foundation, ...edgings] = outcome.rounds;
  const front = set.flatMap(({ cause }) => cause.front);
  return {
    mishaps: plainMishaps(set),
    causes: set.map(({ cause }) => cause),
    ...(front.length > 0 ? { front } : {}),
    sure: 'possible',
    rank,
    score: { causes, rarity },
    gives: {
      foundation: foundation as Explanation['gives']['foundation'],
      edgings,
      ...(outcome.join ? { join: outcome.join } : {}),
      front: [...outcome.front],
    },
    tell: [],
    cures: [],
  };
}

/** Every cause that would be tried, and every smallest set found: for tests and for measuring. */
export function universeFor(plan: Plan, seen: Seen): Candidate[] {
  const wanted = readWanted(plan, seen);
  return universeOf(plan, wanted, magnitudesOf(plan, wanted, roundsOf(tallyWith(plan, []))));
}

export function explainSets(plan: Plan, seen: Seen, causes: number): Candidate[][] {
  const wanted = readWanted(plan, seen);
  const magnitudes = magnitudesOf(plan, wanted, roundsOf(tallyWith(plan, [])));
  const candidates = universeOf(plan, wanted, magnitudes);
  return searchSets(startTrying(plan, wanted), candidates, magnitudes, causes);
}
