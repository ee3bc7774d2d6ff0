/** Panels, hands and mishaps for the tests of finding causes: random by a seed, or as fast-check arbitraries. */
import fc from 'fast-check';
import {
  type ActRound,
  actKinds,
  actOf,
  type Choices,
  type Corner,
  countRound,
  entryOf,
  type Mishap,
  needs,
  type Plan,
  planBack,
  readEdge,
  roundsOf,
  type Seen,
  type Tallies,
  work,
} from '../../core/index.ts';

export const chainCorner = (size: number): Corner => ({ made: 'chain', size });

/** A plan that must be possible. */
export function planOf(sides: number[], corner: Corner | Corner[], choices?: Choices): Plan {
  const edge = readEdge({ sides, corner, counted: 'stitches-only' });
  if (!edge.ok) throw new Error(JSON.stringify(edge.problems));
  const plan = planBack(edge.value, choices);
  if (!plan.ok) throw new Error(JSON.stringify(plan.problems));
  return plan.value;
}

export type PanelShape = { sides: [least: number, most: number]; stitches: [number, number] };

/** Panels of all kinds: tiny ones too, closings and starts of every sort, several edgings. */
export const plans = ({ sides, stitches }: PanelShape): fc.Arbitrary<Plan> =>
  fc
    .record({
      counts: fc.array(fc.integer({ min: stitches[0], max: stitches[1] }), {
        minLength: Math.max(1, sides[0]),
        maxLength: sides[1],
      }),
      round: sides[0] === 0 ? fc.boolean() : fc.constant(false),
      size: fc.integer({ min: 0, max: 4 }),
      made: fc.constantFrom('chain' as const, 'stitch' as const),
      foundationSize: fc.integer({ min: 0, max: 3 }),
      arms: fc.array(fc.tuple(fc.integer({ min: 0, max: 2 }), fc.integer({ min: 0, max: 2 })), {
        minLength: 1,
        maxLength: 3,
      }),
      starts: fc.constantFrom(0 as const, 1 as const),
      foundationAdds: fc.constantFrom(0 as const, 1 as const),
      edgingAdds: fc.constantFrom(0 as const, 1 as const),
      startSide: fc.nat(30),
      lead: fc.option(fc.nat(40), { nil: undefined }),
      increase: fc.nat(3),
    })
    .map((of): Plan | null => {
      const corner: Corner | [] = of.round ? [] : { made: of.made, size: of.size };
      const counts = of.round ? of.counts.slice(0, 1) : of.counts;
      const edge = readEdge({ sides: counts, corner, counted: 'stitches-only' });
      if (!edge.ok) return null;
      const plan = planBack(edge.value, {
        edgings: of.arms.map((arm) => ({
          arm,
          corner: { made: of.made, size: of.size },
          ...(of.round ? { increase: of.increase } : {}),
        })),
        foundationCorner: chainCorner(of.foundationSize),
        start: {
          side: of.startSide % counts.length,
          ...(of.lead === undefined || of.round ? {} : { lead: of.lead }),
        },
        foundationStart: { counts: of.starts },
        foundationClosing: { adds: of.foundationAdds },
        edgingClosing: { adds: of.edgingAdds },
      });
      return plan.ok ? plan.value : null;
    })
    .filter((plan) => plan !== null);

/** Any mishap that a plan can have, with any numbers. */
export function anyMishap(plan: Plan): fc.Arbitrary<Mishap> {
  const k = plan.foundation.corners.length;
  const kinds = actKinds.filter((kind) => k > 0 || !needs(kind, 'corner'));
  return fc
    .record({
      kind: fc.constantFrom(...kinds),
      round: fc.nat(1),
      edging: fc.nat(plan.edgings.length - 1),
      side: fc.nat(plan.foundation.sides.length - 1),
      corner: fc.nat(Math.max(0, k - 1)),
      place: fc.nat(Math.max(...plan.edge.sides) + 2),
      count: fc.integer({ min: -4, max: 6 }),
      end: fc.constantFrom('before' as const, 'after' as const),
      then: fc.constantFrom('from-corner' as const, 'from-total' as const),
      of: fc.constantFrom('back' as const, 'front' as const),
    })
    .map(({ kind, round, edging, side, corner, place, count, end, then, of: piece }): Mishap => {
      const rounds = roundsOf(kind);
      const { least = -9 } = entryOf(kind);
      const of = rounds[round % rounds.length] as ActRound;
      return actOf(kind, {
        round: of,
        ...(of === 'edging' ? { edging } : {}),
        side,
        corner,
        place,
        ...(entryOf(kind).count ? { count: Math.max(least, count) } : {}),
        end,
        then,
        of: piece,
      });
    });
}

/** The counts of a making, read off its graph. */
export function countsOf(plan: Plan, mishaps: readonly Mishap[]): Tallies {
  const worked = work(plan, mishaps);
  const read = (round: Parameters<typeof countRound>[0]) => {
    const { sides, corners } = countRound(round);
    return { sides, corners: corners.map(({ size }) => size) };
  };
  return { foundation: read(worked.foundation), edgings: worked.edgings.map(read) };
}

export const seenOf = ({ foundation, edgings }: Tallies): Seen => ({ foundation, edgings });

/** A `Seen` with every number left out where the pattern, repeated, says false. */
export function masked(seen: Seen, counted: readonly boolean[]): Seen {
  let at = 0;
  const mask = (list: readonly (number | null)[] = []): (number | null)[] =>
    list.map((count) => (counted[at++ % counted.length] ? count : null));
  const round = (of: NonNullable<Seen['foundation']>) => ({
    sides: mask(of.sides),
    corners: mask(of.corners),
  });
  return {
    ...(seen.foundation ? { foundation: round(seen.foundation) } : {}),
    ...(seen.edgings ? { edgings: seen.edgings.map(round) } : {}),
  };
}

const sum = (list: readonly number[]): number => list.reduce((all, one) => all + one, 0);

/** All positions of a round. */
export const totalOf = ({ sides, corners }: Tallies['foundation']): number => sum(sides) + sum(corners);

/** Whether counts are what was seen, wherever something was; a list with nothing counted says nothing. */
export function matches(made: Tallies, seen: Seen): boolean {
  const round = (of: Tallies['foundation'], given: Seen['foundation']): boolean => {
    if (!given) return true;
    if (given.total !== undefined && given.total !== totalOf(of)) return false;
    const corners = given.corners ?? null;
    if (![...given.sides, ...(corners ?? [])].some((count) => count !== null)) return true;
    const same = (list: readonly number[], wanted: readonly (number | null)[]): boolean =>
      wanted.every((count, i) => count === null || list[i] === count);
    const isShaped =
      of.sides.length === Math.max(1, given.sides.length) &&
      (corners === null || of.corners.length === corners.length);
    return isShaped && same(of.sides, given.sides) && same(of.corners, corners ?? []);
  };
  return (
    round(made.foundation, seen.foundation) && made.edgings.every((one, n) => round(one, seen.edgings?.[n]))
  );
}
