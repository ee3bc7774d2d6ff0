/**
 * How big a mishap may be taken to be: small numbers always, and just those bigger ones that what was seen speaks of.
 * So a whole marker's worth missed is found, and nothing in between is tried for nothing.
 */
import type { Tally } from '../hand/tally.ts';
import type { Plan } from '../types.ts';
import { mod } from '../whole.ts';
import { misshapen, totalOf, type Wanted } from './wanted.ts';

export const smallest = [1, 2, 3] as const;

export type Magnitudes = {
  /** Stitches by which a back side may have come out wrong at one go, ascending. */
  ofSide: number[][];
  /** Positions by which the join may have been begun wrongly. */
  ofJoin: number[];
  /** Positions that a corner of a round may have been given. */
  ofCorner: (round: number, corner: number) => number[];
};

export function magnitudesOf(plan: Plan, wanted: Wanted, asRecipe: readonly Tally[]): Magnitudes {
  const k = plan.foundation.sides.length;
  const seen: Set<number>[] = Array.from({ length: k }, () => new Set(smallest));
  const add = (side: number, by: number): void => {
    if (by !== 0) seen[mod(side, k)]?.add(Math.abs(by));
  };
  const hasShape = misshapen(wanted, asRecipe) === null;
  if (hasShape) addDifferences(wanted, asRecipe, add);
  for (const by of totalsOff(wanted, asRecipe)) for (let side = 0; side < k; side++) add(side, by);
  const drifts = driftsSeen(wanted);
  const steps = drifts.map((drift, n) => drift - (drifts[n - 1] ?? 0));
  for (const by of steps) for (let side = 0; side < k; side++) add(side, by);
  const join = new Set<number>([...smallest, ...drifts.filter((by) => by !== 0).map(Math.abs)]);
  return {
    ofSide: seen.map(ascending),
    ofJoin: ascending(join),
    ofCorner: (round, corner) => sizesOf(plan, wanted, hasShape, { round, corner }),
  };
}

const ascending = (set: Set<number>): number[] => [...set].sort((a, b) => a - b);

/** What each side differs by in a round, and from round to round. */
function addDifferences(
  wanted: Wanted,
  asRecipe: readonly Tally[],
  add: (side: number, by: number) => void,
): void {
  const before = new Map<number, number[]>();
  wanted.spots.forEach((spot, i) => {
    if (spot.part !== 'side') return;
    const by = (wanted.values[i] as number) - ((asRecipe[spot.round] as Tally).sides[spot.index] as number);
    add(spot.index, by);
    const earlier = before.get(spot.index) ?? [];
    for (const other of earlier) add(spot.index, by - other);
    before.set(spot.index, [...earlier, by]);
  });
}

/** What whole rounds differ by: it may lie on any side. */
const totalsOff = (wanted: Wanted, asRecipe: readonly Tally[]): number[] =>
  wanted.spots.flatMap(({ part, round }, i) =>
    part === 'total' ? [(wanted.values[i] as number) - totalOf(asRecipe[round] as Tally)] : [],
  );

const driftsSeen = (wanted: Wanted): number[] =>
  wanted.spots.flatMap((spot, i) =>
    spot.part === 'drift' || spot.part === 'left-over' ? [wanted.values[i] as number] : [],
  );

/** Where corners were counted only the sizes counted can be; elsewhere a few about the one asked for. */
function sizesOf(
  plan: Plan,
  wanted: Wanted,
  hasShape: boolean,
  { round, corner }: { round: number; corner: number },
): number[] {
  const asked =
    round === 0
      ? plan.foundation.corners[corner]
      : (plan.edgings[round - 1] as Plan['edgings'][number]).corners[corner];
  const size = asked?.size ?? 0;
  const counted = wanted.spots.flatMap((spot, i) =>
    spot.part === 'corner' && spot.round === round
      ? [{ at: spot.index, size: wanted.values[i] as number }]
      : [],
  );
  const here = counted.find(({ at }) => at === corner);
  // A round with another number of corners: which is which is not known before the search.
  const sizes = here && hasShape ? [here.size] : [...counted.map((one) => one.size), ...about(size)];
  return ascending(new Set(sizes)).filter((one) => one !== size);
}

const about = (size: number): number[] => [0, size - 1, size + 1, size + 2].filter((one) => one >= 0);
