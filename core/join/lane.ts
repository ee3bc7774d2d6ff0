/**
 * A round laid out as one lane of the join: stretches of ordinary stitches and corners, from the first stitch of
 * side 0. An edge (given as counts) and a worked round (read off its graph) become the same thing here.
 */
import { countRound } from '../hand/graph.ts';
import type { Round, Shape } from '../types.ts';
import { mod, sum } from '../whole.ts';

export type Lane = {
  sides: number[];
  /** Size of the corner after each side; empty on a round panel. */
  sizes: number[];
  total: number;
  /** Lane index at which each side and each corner begins. */
  sideFrom: number[];
  cornerFrom: number[];
  /** Index in the round of lane index 0. */
  offset: number;
};

export function laneOf(sides: number[], sizes: number[], offset = 0): Lane {
  const sideFrom: number[] = [];
  const cornerFrom: number[] = [];
  let at = 0;
  sides.forEach((count, i) => {
    sideFrom.push(at);
    at += count;
    if (i >= sizes.length) return;
    cornerFrom.push(at);
    at += sizes[i] as number;
  });
  return { sides, sizes, total: sum(sides) + sum(sizes), sideFrom, cornerFrom, offset };
}

const laneOfShape = (edge: Shape): Lane =>
  laneOf(
    edge.sides,
    edge.corners.map((corner) => corner.size),
    0,
  );

export function laneOfRound(round: Round): Lane {
  const { sides, corners } = countRound(round);
  const sizes = corners.map((corner) => corner.size);
  const lastTurn = round.turns.at(-1);
  return laneOf(
    sides,
    sizes,
    lastTurn === undefined ? 0 : mod(lastTurn + (sizes.at(-1) as number), round.length || 1),
  );
}

export const laneOfEither = (value: Shape | Round): Lane =>
  'kinds' in value ? laneOfRound(value) : laneOfShape(value);

/** Index in the round of a lane index. */
export const nodeAt = (lane: Lane, index: number): number => mod(index + lane.offset, lane.total || 1);
