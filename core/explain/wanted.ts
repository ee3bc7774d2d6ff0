/** What was seen, as a list of spots with a number each: one place to compare a making with. */

import type { Tallies, Tally } from '../hand/tally.ts';
import { limits } from '../limits.ts';
import type { Plan, Seen } from '../types.ts';
import { isWhole, sum } from '../whole.ts';
import type { JoinSeen } from './types.ts';

/** One number that can be counted. `round`: 0 is the foundation, n + 1 edging n. */
export type Spot = {
  part: 'side' | 'corner' | 'total' | 'drift' | 'front' | 'left-over';
  /** 0 where the part belongs to no round of the back, or there is but one of it. */
  round: number;
  index: number;
};

/** How many corners a round was seen to have; null where it was not looked at. `sides` only where corners are open. */
type Shape = { sides: number; corners: number | null };

export type Wanted = {
  spots: Spot[];
  values: Int32Array;
  shapes: (Shape | null)[];
  usesJoin: boolean;
  usesFront: boolean;
};

/** A making as it can be seen. `join` is null where there is nothing to join, or nobody looked at the join. */
export type Outcome = { rounds: Tally[]; join: JoinSeen | null; front: readonly number[] };

export const roundsOf = ({ foundation, edgings }: Tallies): Tally[] => [foundation, ...edgings];

type Lists = NonNullable<Seen['foundation']>;

/** All positions of a round: stitches and those of its corners. */
export const totalOf = ({ sides, corners }: Tally): number => sum(sides) + sum(corners);

/** The numbers of a `Seen`; one that no making can have counts as not counted. */
export function readWanted(plan: Plan, seen: Seen): Wanted {
  const rounds = [seen.foundation, ...plan.edgings.map((_, n) => seen.edgings?.[n])];
  const spots: Spot[] = [];
  const values: number[] = [];
  const add = (spot: Spot, value: number | null | undefined, least = 0): void => {
    if (!isWhole(value, least, limits.stitches * limits.sides * 2)) return;
    spots.push(spot);
    values.push(value);
  };
  rounds.forEach((lists, round) => {
    lists?.sides.forEach((value, index) => {
      add({ part: 'side', round, index }, value);
    });
    lists?.corners?.forEach((value, index) => {
      add({ part: 'corner', round, index }, value);
    });
    add({ part: 'total', round, index: 0 }, lists?.total);
  });
  seen.front?.sides.slice(0, plan.edge.sides.length).forEach((value, index) => {
    add({ part: 'front', round: 0, index }, value);
  });
  const lowest = -limits.stitches * limits.sides * 2;
  seen.join?.drift?.slice(0, plan.edge.sides.length).forEach((value, index) => {
    add({ part: 'drift', round: 0, index }, value, lowest);
  });
  add({ part: 'left-over', round: 0, index: 0 }, seen.join?.leftOver, lowest);
  const has = (...parts: Spot['part'][]): boolean => spots.some(({ part }) => parts.includes(part));
  return {
    spots,
    values: Int32Array.from(values),
    shapes: rounds.map(shapeOf),
    usesJoin: has('drift', 'left-over'),
    usesFront: has('front'),
  };
}

/** A list in which nothing was counted says nothing about how many sides there are. */
function shapeOf(lists: Lists | undefined): Shape | null {
  if (!lists) return null;
  const counted = [...lists.sides, ...(lists.corners ?? [])].some((value) => typeof value === 'number');
  return counted ? { sides: lists.sides.length, corners: lists.corners?.length ?? null } : null;
}

/** The first round whose sides or corners are not as many as were seen, and by how many; null where all fit. */
export function misshapen(wanted: Wanted, rounds: readonly Tally[]): { round: number; over: number } | null {
  for (let round = 0; round < rounds.length; round++) {
    const shape = wanted.shapes[round];
    if (!shape) continue;
    const { sides, corners } = rounds[round] as Tally;
    const over =
      shape.corners === null ? sides.length - Math.max(1, shape.sides) : corners.length - shape.corners;
    if (over !== 0 || sides.length !== Math.max(1, shape.sides)) return { round, over };
  }
  return null;
}

/** The numbers of a making at all the spots; to be asked only of a making with the shape seen. */
export function readAt(wanted: Wanted, { rounds, join, front }: Outcome): Int32Array {
  const { spots } = wanted;
  const values = new Int32Array(spots.length);
  for (let i = 0; i < spots.length; i++) {
    const spot = spots[i] as Spot;
    if (spot.part === 'side') values[i] = (rounds[spot.round] as Tally).sides[spot.index] ?? nothingThere;
    else if (spot.part === 'corner')
      values[i] = (rounds[spot.round] as Tally).corners[spot.index] ?? nothingThere;
    else if (spot.part === 'total') values[i] = totalOf(rounds[spot.round] as Tally);
    else if (spot.part === 'front') values[i] = front[spot.index] as number;
    else if (spot.part === 'drift') values[i] = join?.drift[spot.index] ?? nothingThere;
    else values[i] = join?.leftOver ?? nothingThere;
  }
  return values;
}

/** No count is as low as this. */
const nothingThere = -(2 ** 30);
