/** Points on a lane by slot: which stretch, where, which way out, and how much room a stitch has. */

import type { Slots } from '../slots.ts';
import type { LaneStretch } from './shape.ts';
import { cut, type LaneCorners, spread } from './spread.ts';

/** `outX`, `outY`, `tilt`: the way out and the angle of a glyph where a stretch is straight. */
type LaneCell = LaneStretch & {
  first: number;
  last: number;
  outX: number;
  outY: number;
  tilt: number;
};

/** How a piece lies on the drawing: mirrored or not, and then moved along x. */
export type Placement = { mirrored: boolean; aside: number };

export type Lane = Placement & { cells: LaneCell[]; count: number };

/** A lane with the ring's places laid along its stretches. Slot u covers u - ½ to u + ½. */
export function layLane(
  stretches: readonly LaneStretch[],
  ring: Slots,
  { mirrored, aside }: Placement,
  corners?: LaneCorners,
): Lane {
  const covers = spread(
    stretches,
    ring.cells.map(({ count }) => count),
    corners,
  );
  const around = stretches.reduce((sum, { length }) => sum + length, 0);
  const cells: LaneCell[] = [];
  let start = 0;
  const placed = stretches.map((stretch) => {
    const from = start;
    start += stretch.length;
    return { stretch, from, to: start };
  });
  ring.cells.forEach(({ from: slot, count }, cell) => {
    const cover = covers[cell]!;
    const length = cover.to - cover.from;
    if (count === 0 || length <= 0) return;
    // A side may begin on the arc of the corner before it: for side 0, at the lane's end.
    for (const turn of [-around, 0, around]) {
      for (const { stretch, from, to } of placed) {
        const [a, b] = [Math.max(cover.from, from + turn), Math.min(cover.to, to + turn)];
        if (b - a <= 1e-9 * around) continue;
        const piece = cut(stretch, a - from - turn, b - from - turn);
        const outX = Math.cos(piece.angle) * (mirrored ? -1 : 1);
        const outY = Math.sin(piece.angle);
        const at = (along: number) => slot - 0.5 + ((along - cover.from) / length) * count;
        const covered = { first: at(a), last: at(b) };
        cells.push({ ...piece, cell, ...covered, outX, outY, tilt: Math.atan2(outX, -outY) });
      }
    }
  });
  return { cells, count: ring.count, mirrored, aside };
}

/** A point of a lane, as found; reused by its finder, so read it before asking again. */
export type LanePoint = {
  x: number;
  y: number;
  /** Angle of a glyph whose outer side (-y) looks out of the ring. */
  angle: number;
  outX: number;
  outY: number;
  /** Room for one stitch along the lane. */
  room: number;
};

/** Cuts leave a rounding error between one piece and the next. */
const holds = (cell: LaneCell, u: number) => u >= cell.first - 1e-6 && u <= cell.last + 1e-6;

/** A finder of points on a lane. Neighbouring slots are found without a search. */
export function finder(lane: Lane): (slot: number) => LanePoint {
  const { cells, count, mirrored, aside } = lane;
  const point: LanePoint = { x: 0, y: 0, angle: 0, outX: 0, outY: -1, room: 1 };
  let at = 0;
  return (slot) => {
    const u = ((((slot + 0.5) % count) + count) % count) - 0.5;
    for (let turns = cells.length; turns > 0 && !holds(cells[at]!, u); turns--) {
      at = (at + (u < cells[at]!.first ? cells.length - 1 : 1)) % cells.length;
    }
    const cell = cells[at]!;
    const width = cell.last - cell.first;
    const share = (u - cell.first) / width;
    let x: number;
    if (cell.radius === 0) {
      x = cell.ax + (cell.bx - cell.ax) * share;
      point.y = cell.ay + (cell.by - cell.ay) * share;
      point.outX = cell.outX;
      point.outY = cell.outY;
      point.angle = cell.tilt;
    } else {
      const normal = cell.angle + cell.sweep * share;
      const outX = Math.cos(normal);
      point.outY = Math.sin(normal);
      x = cell.ax + cell.radius * outX;
      point.y = cell.ay + cell.radius * point.outY;
      point.outX = mirrored ? -outX : outX;
      point.angle = Math.atan2(point.outX, -point.outY);
    }
    point.x = aside + (mirrored ? -x : x);
    point.room = cell.length / width;
    return point;
  };
}

/** Turn of an arc that one straight piece of a line may stand for, in radians. */
const PIECE = 0.15;

/** The line along a lane between two places on the ring: no more points than its bends need. */
export function lineAlong(lane: Lane, from: number, to: number): Float32Array {
  const way = Math.sign(to - from) || 1;
  const places = [from, ...bendsOf(lane, Math.min(from, to), Math.max(from, to), way), to];
  const find = finder(lane);
  const points = new Float32Array(2 * places.length);
  places.forEach((place, i) => {
    const { x, y } = find(place);
    points[2 * i] = x;
    points[2 * i + 1] = y;
  });
  return points;
}

/** Places between two others where the lane may turn, in the order they are come to. */
function bendsOf({ cells, count }: Lane, low: number, high: number, way: number): number[] {
  const bends: number[] = [];
  for (let turn = Math.floor(low / count) - 1; turn * count < high; turn++) {
    for (const { first, last, radius, sweep } of cells) {
      if (turn * count + last <= low || turn * count + first >= high) continue;
      const pieces = radius === 0 ? 1 : Math.ceil(Math.abs(sweep) / PIECE);
      for (let piece = 0; piece < pieces; piece++) {
        const place = turn * count + first + ((last - first) * piece) / pieces;
        if (place > low && place < high) bends.push(place);
      }
    }
  }
  return bends.sort((a, b) => way * (a - b));
}

/** The line along a lane between two places on the ring, for ribbons and windows: x, y pairs. */
export function lineBetween(lane: Lane, from: number, to: number, steps: number): Float32Array {
  const find = finder(lane);
  const points = new Float32Array(2 * (steps + 1));
  for (let i = 0; i <= steps; i++) {
    const { x, y } = find(from + ((to - from) * i) / steps);
    points[2 * i] = x;
    points[2 * i + 1] = y;
  }
  return points;
}
