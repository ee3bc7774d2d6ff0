/**
 * The search against plain trying: every set of up to two causes, each carried out by `work` and counted by
 * `countRound`. The two must find the very same sets. On small sides every place is tried.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Candidate, candidateOf, fitsWith, plainMishaps } from '../../core/explain/candidate.ts';
import { setsFor, universeFor } from '../../core/explain/explain.ts';
import type { Plan, Seen, Tally } from '../../core/index.ts';
import { anyMishap, countsOf, masked, matches, plans, seenOf, totalOf } from './explain-panels.ts';

/** Every place on its side for one stitch missed or doubled, or, on long sides, those that can make a difference. */
function withAllPlaces(plan: Plan, candidates: readonly Candidate[]): Candidate[] {
  return candidates.flatMap((candidate) => {
    const { cause, elsewhere } = candidate;
    const [mishap] = cause.mishaps;
    if (elsewhere) return [];
    if (mishap?.place === undefined || cause.kind !== mishap.kind) return [candidate];
    if (cause.habit || mishap.count !== 1) return [candidate];
    const side = mishap.side as number;
    const round = mishap.round === 'foundation' ? plan.foundation : plan.edgings[mishap.edging as number];
    const count = round?.sides[side] as number;
    const all = Array.from({ length: count + 1 }, (_, place) => place);
    const places =
      count <= 10 ? all : [0, 1, 2, Math.floor(count / 3), count - 3, count - 2, count - 1, count];
    return places.map((place) => candidateOf([{ ...mishap, place }], { anywhere: true }));
  });
}

const nameOf = (set: readonly Candidate[]): string =>
  set
    .map(({ key }) => key)
    .sort()
    .join(' + ');

const isFollowed = ({ cause }: Candidate): boolean =>
  cause.mishaps.some(
    ({ kind, round, then }) => kind === 'corner-moved' && round === 'edging' && then === 'from-corner',
  );

function tryAll(plan: Plan, seen: Seen): string[] {
  const fits = (set: Candidate[]): boolean => matches(countsOf(plan, plainMishaps(set)), seen);
  if (fits([])) return [''];
  const all = withAllPlaces(plan, universeFor(plan, seen));
  const found = new Set<string>();
  const alone = new Set<string>();
  for (const one of all)
    if (fits([one])) {
      found.add(nameOf([one]));
      alone.add(one.key);
    }
  // Where one cause is enough, a corner followed around an edging is not looked for beside another.
  const isIn = (one: Candidate): boolean => alone.size === 0 || !isFollowed(one);
  const paired = all.filter(isIn);
  paired.forEach((one, i) => {
    for (const other of paired.slice(i + 1))
      if (!alone.has(one.key) && !alone.has(other.key) && fitsWith(one, other) && fits([one, other]))
        found.add(nameOf([one, other]));
  });
  return [...found].sort();
}

const cases = (panels: fc.Arbitrary<Plan>) =>
  panels
    .filter((plan) => plan.edgings.length <= 2)
    .chain((plan) =>
      fc.tuple(
        fc.constant(plan),
        fc.array(anyMishap(plan), { minLength: 1, maxLength: 2 }),
        fc.array(fc.boolean(), { minLength: 2, maxLength: 11 }),
      ),
    );

function sameSets([plan, mishaps, counted]: [Plan, Parameters<typeof countsOf>[1], boolean[]]): void {
  const seen = masked(seenOf(countsOf(plan, mishaps)), counted.includes(true) ? counted : [true]);
  expect(setsFor(plan, seen, 2).map(nameOf).sort()).toEqual(tryAll(plan, seen));
}

/** Only whole rounds were counted, and here and there a side. */
function sameSetsByTotals([plan, mishaps, counted]: [Plan, Parameters<typeof countsOf>[1], boolean[]]): void {
  const made = countsOf(plan, mishaps);
  const few = counted.map((isCounted, i) => isCounted && i === 0);
  const { foundation, edgings = [] } = masked(seenOf(made), [...few, false, false, false, false]);
  const last = edgings.length - 1;
  const seen: Seen = {
    ...(foundation && counted[1] ? { foundation: { ...foundation, total: totalOf(made.foundation) } } : {}),
    edgings: edgings.map((one, n) =>
      n === last ? { ...one, total: totalOf(made.edgings[n] as Tally) } : one,
    ),
  };
  expect(setsFor(plan, seen, 2).map(nameOf).sort()).toEqual(tryAll(plan, seen));
}

describe('the sets found', () => {
  it('are those that plain trying finds, on panels where mishaps run into one another', () => {
    fc.assert(fc.property(cases(plans({ sides: [0, 4], stitches: [1, 7] })), sameSets), { numRuns: 60 });
  });

  it('are those that plain trying finds, where whole rounds were counted', () => {
    fc.assert(fc.property(cases(plans({ sides: [0, 3], stitches: [1, 9] })), sameSetsByTotals), {
      numRuns: 12,
    });
    fc.assert(fc.property(cases(plans({ sides: [1, 2], stitches: [14, 30] })), sameSetsByTotals), {
      numRuns: 4,
    });
  });

  it('are those that plain trying finds, on panels with room', () => {
    fc.assert(fc.property(cases(plans({ sides: [0, 3], stitches: [14, 40] })), sameSets), { numRuns: 8 });
  });
});
