/**
 * Why did it come out wrong? The smallest sets of causes whose making gives exactly what was seen, best first.
 *
 * Rule: nothing is concluded from a difference; every explanation is carried out by the same hand that works the
 * recipe, and stands only if it gives the counts seen. Trade-off: sizes are tried as far as what was seen speaks of
 * them, so a set of mishaps that hide one another's size is not looked for.
 */

import type { Mishap } from '../hand/acts/acts.ts';
import { type Tally, tallyWith } from '../hand/tally.ts';
import type { Plan, Seen, Stand } from '../types.ts';
import { sum } from '../whole.ts';
import { type Candidate, candidateOf, frontWith, plainMishaps } from './candidate.ts';
import { rankOf } from './commonness.ts';
import { curesOf } from './cures.ts';
import { actSeen, type Question, questionsOf } from './looks.ts';
import { magnitudesOf } from './magnitudes.ts';
import { nearestOf } from './nearest.ts';
import { askAll, nextCountOf, simplest, tellsOf, weightOf } from './next.ts';
import { readingsOf } from './readings.ts';
import { cureForAll } from './right.ts';
import { searchSets } from './search.ts';
import { roundsMade } from './stand.ts';
import { outcomeOf, startTrying, type Trying } from './trying.ts';
import type { Explained, Explanation, Options } from './types.ts';
import { universeOf } from './universe.ts';
import { readWanted, roundsOf, type Wanted } from './wanted.ts';

type Settled = Required<Omit<Options, 'stands'>> & Pick<Options, 'stands'>;

const usual: Settled = { most: 40, causes: 3, looked: [], advice: true };

/** The explanations of what was seen, any of it null or left out; see `Options`. */
export const explain = (plan: Plan, seen: Seen, options: Options = {}): Explained =>
  explainWith(plan, seen, { ...usual, ...options });

function explainWith(plan: Plan, seen: Seen, options: Settled): Explained {
  const searches = readingsOf(plan, seen).map((reading) => searchFor(plan, reading, options.causes));
  const [asTold] = searches as [Searched];
  const { wanted, trying, candidates } = asTold;
  const ranked = searches.flatMap((one) => one.ranked).sort((a, b) => a.score.rank - b.score.rank);
  const tried = sum(searches.map((one) => one.trying.tried));
  const questions = questionsOf(plan, wanted.usesJoin);
  const bare = agreeing(ranked, options, trying, questions);
  const stand = laterOf(plan, options.stands, standSeen(plan, wanted, seenBy(options, questions)));
  const advised = options.advice ? withAdvice(trying, bare, questions, stand) : { explanations: bare };
  return {
    ...advised,
    ...(ranked.length === 0 ? nearest(trying, candidates, options, stand) : {}),
    stands: stand,
    effort: {
      tried,
      plain: plainEffort(candidates.length, options.causes),
      candidates: candidates.length,
      sets: ranked.length,
      complete: searches.every((one) => one.trying.tried < one.trying.limit),
    },
  };
}

type Searched = { wanted: Wanted; trying: Trying; candidates: Candidate[]; ranked: Ranked[] };

function searchFor(plan: Plan, seen: Seen, causes: number): Searched {
  const wanted = readWanted(plan, seen);
  const trying = startTrying(plan, wanted);
  const candidates = universeOf(plan, wanted, magnitudesOf(plan, wanted, roundsOf(tallyWith(plan, []))));
  const sets = searchSets(trying, candidates, causes);
  const ranked = sets.map((set) => ({ set, score: rankOf(set.map(({ cause }) => cause)) }));
  return { wanted, trying, candidates, ranked };
}

type Ranked = { set: Candidate[]; score: ReturnType<typeof rankOf> };

/** The best, as many as are asked for, that agree with what was found by looking. */
function agreeing(
  ranked: readonly Ranked[],
  { looked, most }: Settled,
  trying: Trying,
  questions: readonly Question[],
): Explanation[] {
  const asked = looked.flatMap(({ key, found }) => {
    const question = questions.find((one) => one.key === key);
    return question ? [{ question, found }] : [];
  });
  const seen = seenBy({ looked }, questions).map((act) => candidateOf([act]));
  const explanations: Explanation[] = [];
  for (const one of ranked) {
    const set = [...one.set, ...seen];
    const explanation = explanationOf(
      trying,
      set,
      seen.length === 0 ? one.score : rankOf(set.map(({ cause }) => cause)),
    );
    if (!asked.every(({ question, found }) => question.expects(explanation) === found)) continue;
    explanations.push(explanation);
    if (explanations.length === most) break;
  }
  return sayHowSure(explanations);
}

/** What no count shows and was seen by looking: it happened, whatever else did. */
const seenBy = ({ looked }: Pick<Settled, 'looked'>, questions: readonly Question[]): Mishap[] =>
  looked.flatMap(({ key, found }) => {
    const question = questions.find((one) => one.key === key);
    return (question && actSeen(question, found)) ?? [];
  });

const half = 0.5;
const eighth = 0.125;

/** In words, from the share of its weight among all that are left. */
function sayHowSure(explanations: Explanation[]): Explanation[] {
  const total = explanations.reduce((sum, one) => sum + weightOf(one), 0);
  return explanations.map((one, index) => {
    const share = weightOf(one) / total;
    const sure =
      index === 0 && share >= half ? 'most likely' : share >= eighth || index === 0 ? 'likely' : 'possible';
    return { ...one, sure };
  });
}

function withAdvice(
  trying: Trying,
  bare: readonly Explanation[],
  questions: readonly Question[],
  stand: Stand,
): Pick<Explained, 'explanations' | 'nextCount' | 'cureForAll'> {
  const { plan } = trying;
  const asked = askAll(questions, bare);
  const asRecipe = explanationOf(trying, [], rankOf([]));
  const explanations = bare.map((one, index) => ({
    ...one,
    tell: tellsOf(index, bare.length, asked, asRecipe),
    cures: curesOf(plan, one, stand),
  }));
  const nextCount = nextCountOf(plan, explanations, asked);
  const some = simplest(explanations);
  const forAll = some.length > 1 ? cureForAll(plan, some) : undefined;
  return { explanations, ...(nextCount ? { nextCount } : {}), ...(forAll ? { cureForAll: forAll } : {}) };
}

/** What was counted is made, whatever was said. */
function laterOf(plan: Plan, told: Stand | undefined, seen: Stand): Stand {
  if (!told) return seen;
  const isJoined = seen.at === 'finished' && told.at !== 'join';
  return isJoined || roundsMade(plan, told) < roundsMade(plan, seen) ? seen : told;
}

/** Where the work stands, as far as what was seen tells. */
function standSeen({ edgings }: Plan, { shapes, spots, usesJoin }: Wanted, acts: readonly Mishap[]): Stand {
  if (usesJoin || acts.some(({ round }) => round === 'join')) return { at: 'finished' };
  const counted = spots.flatMap(({ part, round }) => (part === 'total' ? [round] : []));
  const looked = acts.map(({ round, edging = 0 }) => (round === 'edging' ? edging + 1 : 0));
  const last = Math.max(
    ...counted,
    ...looked,
    shapes.findLastIndex((shape) => shape !== null),
  );
  return last < 1 ? { at: 'foundation' } : { at: 'edging', edging: Math.min(last, edgings.length) - 1 };
}

function nearest(
  trying: Trying,
  candidates: Candidate[],
  options: Settled,
  stand: Stand,
): Pick<Explained, 'nearest'> {
  const near = nearestOf(trying, candidates, options.causes);
  if (!near) return {};
  const score = rankOf(near.set.map(({ cause }) => cause));
  const bare = { ...explanationOf(trying, near.set, score), sure: 'possible' as const };
  const [explanation] = options.advice ? withAdvice(trying, [bare], [], stand).explanations : [bare];
  return { nearest: { explanation: explanation as Explanation, off: near.off } };
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
      foundation: foundation as Tally,
      edgings,
      ...(outcome.join ? { join: outcome.join } : {}),
      front: frontWith(trying.plan, set),
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

export function setsFor(plan: Plan, seen: Seen, causes: number): Candidate[][] {
  const wanted = readWanted(plan, seen);
  const magnitudes = magnitudesOf(plan, wanted, roundsOf(tallyWith(plan, [])));
  const candidates = universeOf(plan, wanted, magnitudes);
  return searchSets(startTrying(plan, wanted, Number.POSITIVE_INFINITY), candidates, causes);
}
