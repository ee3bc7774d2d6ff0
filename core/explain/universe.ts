/**
 * Every cause that is tried: single mishaps at every place that makes a difference, habits, and the front miscounted.
 *
 * Rule: places of one side that give the same counts are one candidate, with one place to stand for it. All sizes
 * come from `magnitudes`. What plain trying would try is just these, in sets of one, two and three. Kinds that no count
 * can show are not tried: they are seen by looking (`actSeen`).
 */
import { type AtRound, actOf, type Mishap } from '../hand/acts/acts.ts';
import { firstBehindStart } from '../join/taken-in.ts';
import type { Plan } from '../types.ts';
import { type Candidate, candidateOf } from './candidate.ts';
import { closingCanBe, edgingClosings, foundationClosings } from './closings.ts';
import { frontCandidates } from './fronts.ts';
import { habitCandidates } from './habits.ts';
import { type Magnitudes, smallest } from './magnitudes.ts';
import { elsewhereOnSide, placeForRun, placeOnSide } from './places.ts';
import type { Wanted } from './wanted.ts';

export function universeOf(plan: Plan, wanted: Wanted, magnitudes: Magnitudes): Candidate[] {
  const rounds: AtRound[] = [
    { round: 'foundation' },
    ...plan.edgings.map((_, edging) => ({ round: 'edging' as const, edging })),
  ];
  return [
    ...rounds.flatMap((at, round) => [
      ...stitchesIn(plan, magnitudes, at, round),
      ...cornersIn(plan, magnitudes, at, round),
      ...closingsIn(plan, at),
    ]),
    ...(['chains-as-stitches', 'chains-left-out', 'arms-forgotten', 'order-not-mirrored'] as const).map(
      (kind) => candidateOf([{ kind, round: 'plan' }]),
    ),
    ...(wanted.usesJoin ? joinsIn(plan, magnitudes) : []),
    ...habitCandidates(plan, wanted, magnitudes),
    ...frontCandidates(plan, wanted, magnitudes),
  ];
}

function stitchesIn(plan: Plan, magnitudes: Magnitudes, at: AtRound, round: number): Candidate[] {
  const candidates: Candidate[] = [];
  plan.foundation.sides.forEach((_, side) => {
    for (const kind of ['stitch-missed', 'stitch-doubled'] as const) {
      for (const count of magnitudes.ofSide[side] ?? [])
        candidates.push(
          candidateOf([{ kind, ...at, side, place: placeOnSide(plan, round, side), count }], {
            anywhere: true,
          }),
        );
      for (const place of elsewhereOnSide(plan, round, side))
        candidates.push(
          candidateOf([{ kind, ...at, side, place, count: 1 }], { anywhere: true, elsewhere: true }),
        );
    }
  });
  candidates.push(...(at.round === 'foundation' ? markersIn(plan, magnitudes) : betweenIn(plan, at, round)));
  return candidates;
}

const betweenIn = (plan: Plan, at: AtRound, round: number): Candidate[] =>
  plan.foundation.sides.map((_, side) =>
    candidateOf([actOf('stitch-between', { ...at, side, place: placeOnSide(plan, round, side) })], {
      anywhere: true,
    }),
  );

/** Whole markers by which a side was seen to be off. */
function markersIn(plan: Plan, { ofSide }: Magnitudes): Candidate[] {
  return plan.foundation.sides.flatMap((_, side) => {
    const sizes = (ofSide[side] ?? []).filter((by) => by % plan.choices.markerEvery === 0);
    return sizes.flatMap((by) =>
      [-by, by].map((count) =>
        candidateOf(
          [
            {
              kind: 'marker-miscounted',
              round: 'foundation',
              side,
              place: placeForRun(plan, side, Math.abs(count)),
              count,
            },
          ],
          { anywhere: true },
        ),
      ),
    );
  });
}

function cornersIn(plan: Plan, magnitudes: Magnitudes, at: AtRound, round: number): Candidate[] {
  const k = plan.foundation.corners.length;
  return plan.foundation.corners.flatMap((_, corner) => {
    const next = (corner + 1) % k;
    const seen = [...(magnitudes.ofSide[corner] ?? []), ...(magnitudes.ofSide[next] ?? [])];
    const by = new Set([...seen, ...(round > 0 ? besideChains(plan, round, corner, seen) : [])]);
    const moved = [...by].flatMap((count) =>
      [count, -count].flatMap((signed) =>
        waysOn(round, corner, k).map((then) =>
          candidateOf([{ kind: 'corner-moved', ...at, corner, count: signed, then }]),
        ),
      ),
    );
    const sizes = magnitudes
      .ofCorner(round, corner)
      .map((count) => candidateOf([{ kind: 'corner-chains', ...at, corner, count }]));
    const forgotten = candidateOf([{ kind: 'corner-forgotten', ...at, corner }]);
    return [...moved, ...sizes, forgotten, ...(round > 0 ? armsAt(plan, at, round, corner) : [])];
  });
}

/** A corner worked elsewhere on an edging leaves its old place to be worked into: the side that takes it gains more. */
function besideChains(plan: Plan, round: number, corner: number, seen: readonly number[]): number[] {
  const below = round === 1 ? plan.foundation : plan.edgings[round - 2];
  const more = (below?.corners[corner]?.size ?? 1) - 1;
  const most = Math.max(...smallest);
  return more <= 0 ? [] : seen.filter((by) => by > most && by - more > most).map((by) => by - more);
}

/** After the last corner of an edging there is none left to follow it: both ways are one. */
const waysOn = (round: number, corner: number, k: number): NonNullable<Mishap['then']>[] =>
  round > 0 && corner === k - 1 ? ['from-total'] : ['from-corner', 'from-total'];

function armsAt(plan: Plan, at: AtRound, round: number, corner: number): Candidate[] {
  const { arm } = plan.edgings[round - 1] as Plan['edgings'][number];
  const missed = (['before', 'after'] as const).flatMap((end, i) =>
    Array.from({ length: arm[i] as number }, (_, less) =>
      candidateOf([actOf('arm-missed', { ...at, corner, end, count: less + 1 })]),
    ),
  );
  const over = arm[0] + arm[1] > 0 ? [candidateOf([actOf('corner-worked-over', { ...at, corner })])] : [];
  return [...missed, ...over, candidateOf([actOf('hidden-missed', { ...at, corner })])];
}

const closingsIn = (plan: Plan, at: AtRound): Candidate[] =>
  (at.round === 'foundation' ? foundationClosings : edgingClosings)
    .filter((kind) => closingCanBe(plan, at, kind))
    .map((kind) => candidateOf([actOf(kind, at)]));

function joinsIn(plan: Plan, magnitudes: Magnitudes): Candidate[] {
  const k = plan.edge.sides.length;
  const offsets = magnitudes.ofJoin.flatMap((count) =>
    [count, -count].map((by) => candidateOf([{ kind: 'join-offset', round: 'join', count: by }])),
  );
  const turned = Array.from({ length: k - 1 }, (_, by) =>
    candidateOf([{ kind: 'join-wrong-side', round: 'join', count: by + 1 }]),
  );
  const skipped = plan.edge.corners.map((_, corner) =>
    candidateOf([{ kind: 'join-chain-skipped', round: 'join', corner }]),
  );
  const together = plan.edge.sides.flatMap((stitches, side) => {
    const from = side === plan.choices.joinStart.side ? firstBehindStart(plan) : 0;
    const place = from + Math.floor((stitches - from) / 2);
    return (['back', 'front'] as const).map((of) =>
      candidateOf([{ kind: 'two-with-one', round: 'join', side, place, of }], { anywhere: true }),
    );
  });
  return [...offsets, ...turned, ...skipped, ...together];
}
