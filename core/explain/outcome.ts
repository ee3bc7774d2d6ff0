/** What comes of a making: its rounds, and whether they meet. */

import type { Mishap } from '../hand/acts/acts.ts';
import { type Settled, settle } from '../hand/acts/doing.ts';
import type { Making } from '../hand/graph.ts';
import { makingsWith, type Tally, tallyOf } from '../hand/tally.ts';
import type { Plan } from '../types.ts';

export type Done = {
  mishaps: Settled[];
  makings: Making[];
  rounds: Tally[];
  /** The front's sides as they really are. */
  front: readonly number[];
};

export function doneWith(plan: Plan, mishaps: readonly Mishap[], front: readonly number[]): Done {
  const settled = settle(mishaps);
  const makings = makingsWith(plan, settled);
  return { mishaps: settled, makings, rounds: makings.map(tallyOf), front };
}

export type Meets = {
  kind: 'meets' | 'meets-with-easing' | 'does-not-meet';
  /** Back − front, by back side; and by back corner. */
  sides: number[];
  corners: number[];
  cornersOff: number;
  /** Another number of sides than the front's: nothing can be said side by side. */
  reshaped: boolean;
  /** No side is off by more than one stitch in so many. */
  slight: boolean;
  front: readonly number[];
  back: readonly number[];
};

/** Half of the textbook upper example for easing cloth (11 in into 10 in); our own band. */
const oneIn = 20;

/** Whether the last round meets the front, side by side. */
export function meetingOf(plan: Plan, { rounds, front, mishaps }: Done): Meets {
  const last = rounds.at(-1) as Tally;
  const reshaped = last.sides.length !== plan.faces.length || last.corners.length !== plan.cornerFaces.length;
  const sides = reshaped
    ? []
    : plan.faces.map((side, j) => (last.sides[j] as number) - (front[side] as number));
  const corners = reshaped
    ? []
    : plan.cornerFaces.map(
        (corner, j) => (last.corners[j] as number) - (plan.edge.corners[corner]?.size ?? 0),
      );
  const cornersOff = corners.filter((by) => by !== 0).length;
  const joinOff =
    mishaps.some(({ round, asked }) => round === 'join' && !asked) ||
    mishaps.some(({ kind }) => kind === 'twisted');
  const slight =
    !reshaped && sides.every((by, j) => Math.abs(by) * oneIn <= (front[plan.faces[j] as number] as number));
  const isEven = !reshaped && cornersOff === 0 && sides.every((by) => by === 0);
  const kind =
    joinOff || reshaped || cornersOff > 0 || !slight
      ? 'does-not-meet'
      : isEven
        ? 'meets'
        : 'meets-with-easing';
  return { kind, sides, corners, cornersOff, reshaped, slight, front, back: last.sides };
}
