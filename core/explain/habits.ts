/** One slip of the mind repeated at every corner, on every side or in every round: one cause, not as many. */
import { type ActKind, type AtRound, actOf, type Mishap } from '../hand/acts/acts.ts';
import type { Plan } from '../types.ts';
import { type Candidate, candidateOf } from './candidate.ts';
import { closingCanBe, edgingClosings } from './closings.ts';
import type { Magnitudes } from './magnitudes.ts';
import { placeOnSide } from './places.ts';
import type { Wanted } from './wanted.ts';

export function habitCandidates(plan: Plan, wanted: Wanted, magnitudes: Magnitudes): Candidate[] {
  const edgings = plan.edgings.map((_, edging): AtRound => ({ round: 'edging', edging }));
  const all: AtRound[] = [{ round: 'foundation' }, ...edgings];
  const manySides = plan.foundation.sides.length > 1;
  return [
    ...all.flatMap((at, round) => (manySides ? everySide(plan, magnitudes, at, round) : [])),
    ...all.flatMap((at) => (manySides ? everyCorner(plan, wanted, magnitudes, at) : [])),
    ...(manySides && edgings.length > 1 ? everyRoundsCorners(plan, edgings) : []),
    ...everyRound(plan, all, edgings),
    ...(manySides && wanted.usesJoin ? [everyCornerSkipped(plan)] : []),
  ];
}

const habit = (mishaps: Mishap[], size?: number): Candidate =>
  candidateOf(mishaps, { habit: true, ...(size === undefined ? {} : { size }) });

/** The same stitch missed or doubled on every side, like the gap filled at its beginning. */
function everySide(plan: Plan, magnitudes: Magnitudes, at: AtRound, round: number): Candidate[] {
  const common = commonTo(magnitudes.ofSide);
  return (['stitch-missed', 'stitch-doubled'] as const).flatMap((kind) =>
    common.map((count) =>
      candidateOf(
        plan.foundation.sides.map((_, side) => ({
          kind,
          ...at,
          side,
          place: placeOnSide(plan, round, side, 0.25),
          count,
        })),
        { habit: true, anywhere: true },
      ),
    ),
  );
}

const commonTo = (lists: readonly number[][]): number[] =>
  (lists[0] ?? []).filter((count) => lists.every((list) => list.includes(count)));

function everyCorner(plan: Plan, wanted: Wanted, magnitudes: Magnitudes, at: AtRound): Candidate[] {
  const round = at.round === 'edging' ? (at.edging ?? 0) + 1 : 0;
  const corners = plan.foundation.corners.map((_, corner) => corner);
  const sizes = new Set(corners.flatMap((corner) => magnitudes.ofCorner(round, corner)));
  for (const [i, spot] of wanted.spots.entries())
    if (spot.part === 'corner' && spot.round === round) sizes.add(wanted.values[i] as number);
  const chains = [...sizes].map((count) =>
    habit(
      corners.map((corner) => ({ kind: 'corner-chains', ...at, corner, count })),
      1,
    ),
  );
  if (round === 0) return chains;
  const { arm } = plan.edgings[round - 1] as Plan['edgings'][number];
  const armsMissed = (['before', 'after'] as const).flatMap((end, i) =>
    (arm[i] as number) === 0
      ? []
      : [
          habit(
            corners.map((corner) => actOf('arm-missed', { ...at, corner, end, count: arm[i] as number })),
          ),
        ],
  );
  const over =
    arm[0] + arm[1] === 0
      ? []
      : [habit(corners.map((corner) => actOf('corner-worked-over', { ...at, corner })))];
  return [...chains, ...armsMissed, ...over, habit(hiddenAt(corners, at))];
}

const hiddenAt = (corners: number[], at: AtRound): Mishap[] =>
  corners.map((corner) => actOf('hidden-missed', { ...at, corner }));

function everyRoundsCorners(plan: Plan, edgings: AtRound[]): Candidate[] {
  const corners = plan.foundation.corners.map((_, corner) => corner);
  return [habit(edgings.flatMap((at) => hiddenAt(corners, at)))];
}

/** The same at the beginning or end of every round that can have it. */
function everyRound(plan: Plan, all: AtRound[], edgings: AtRound[]): Candidate[] {
  return edgingClosings.flatMap((kind: ActKind) => {
    const inAll = kind === 'attach-doubled' || kind === 'closing-worked' ? edgings : all;
    const groups = inAll.length > edgings.length && edgings.length > 1 ? [inAll, edgings] : [inAll];
    return groups
      .map((group) => group.filter((at) => closingCanBe(plan, at, kind)))
      .filter((group) => group.length > 1)
      .map((group) => habit(group.map((at) => actOf(kind, at))));
  });
}

const everyCornerSkipped = (plan: Plan): Candidate =>
  habit(plan.edge.corners.map((_, corner) => ({ kind: 'join-chain-skipped', round: 'join', corner })));
