/**
 * The base line of a panel, from the lengths of its sides: what its lanes are laid around.
 *
 * Panels without corners are circles, one corner makes a teardrop; two or more sides have their corners on a circle
 * (`cyclic.ts`), with straight sides wherever these close without corners too sharp for the lanes.
 * Lengths in stitches, y down, anticlockwise from the start of side 0, which lies on top.
 */
import { type Cyclic, closeSides } from './cyclic.ts';

export type Point = { x: number; y: number };

/** A stretch of the base line in one side: `from`–`to` are fractions of that side. Normals point outwards. */
export type Line = { side: number; from: number; to: number; a: Point; b: Point; normal: Point };
export type Arc = {
  side: number;
  from: number;
  to: number;
  centre: Point;
  radius: number;
  angle: number;
  sweep: number;
};
type Bend = { corner: number; at: Point; angle: number; sweep: number };

export type Base = {
  stretches: (Line | Arc)[];
  bends: Bend[];
  /** How far the base line can be moved inwards without its sides getting much shorter. */
  room: number;
};

/** Inner lanes may lose this share of a side before corners are rounded more. */
const SHRINK = 0.28;
const TAU = 2 * Math.PI;

/** A rounded corner can hold no more than so many of its positions; the rest lengthens the sides beside it. */
const CORNER_ROOM = 5;

function onCircle(radius: number, turn: number): Point {
  return { x: radius * Math.cos(turn), y: -radius * Math.sin(turn) };
}

export const lengthOf = (stretch: Line | Arc) =>
  'a' in stretch
    ? Math.hypot(stretch.b.x - stretch.a.x, stretch.b.y - stretch.a.y)
    : Math.abs(stretch.sweep) * stretch.radius;

/** Sides and bends of a closed outline. */
function cyclicBase(lengths: readonly number[], { radius, angles, bow }: Cyclic): Base {
  let turn = Math.PI / 2 - angles[0]! / 2;
  const sides = angles.map((angle) => {
    const [start, middle] = [turn, turn + angle / 2];
    turn += angle;
    return { start, middle, end: turn, bowed: bow * angle };
  });
  const stretches = sides.map(({ start, middle, end, bowed }, side): Line | Arc => {
    const [a, b] = [onCircle(radius, start), onCircle(radius, end)];
    const normal = onCircle(1, middle);
    if (bow === 0) return { side, from: 0, to: 1, a, b, normal };
    const own = lengths[side]! / bowed;
    const back = own * Math.cos(bowed / 2);
    const centre = { x: (a.x + b.x) / 2 - normal.x * back, y: (a.y + b.y) / 2 - normal.y * back };
    return { side, from: 0, to: 1, centre, radius: own, angle: bowed / 2 - middle, sweep: -bowed };
  });
  const bends = sides.map(({ middle, end, bowed }, corner): Bend => {
    const next = angles[(corner + 1) % angles.length]!;
    const sweep = (-(1 - bow) * (angles[corner]! + next)) / 2;
    return { corner, at: onCircle(radius, end), angle: -middle - bowed / 2, sweep };
  });
  return { stretches, bends, room: 0 };
}

function straightRoom({ stretches, bends }: Base): number {
  const tangent = bends.map((bend) => Math.tan(Math.min(Math.abs(bend.sweep), 3.1) / 2));
  const rooms = stretches.map((line, i) => {
    const before = tangent[(i + tangent.length - 1) % tangent.length]!;
    return (SHRINK * lengthOf(line)) / (tangent[i]! + before);
  });
  return Math.min(...rooms);
}

/** As with straight sides at most; less where arcs shrink sooner or no longer meet near their corner. */
function bowedRoom(base: Base): number {
  const fits = (moved: number) => {
    const inner = moveInwards(base, moved);
    const near = inner.bends.every(({ at }, i) => {
      const bend = base.bends[i]!;
      const there = alongBend(bend, moved);
      const way = Math.hypot(there.x - bend.at.x, there.y - bend.at.y);
      return Math.hypot(at.x - there.x, at.y - there.y) <= 0.5 * way + 1e-6;
    });
    return (
      near &&
      inner.stretches.every((side, i) => {
        const turned = 'a' in side || side.sweep < 0;
        return turned && lengthOf(side) >= (1 - SHRINK) * lengthOf(base.stretches[i]!);
      })
    );
  };
  let [low, high] = [0, straightRoom(base)];
  if (fits(high)) return high;
  for (let i = 0; i < 16; i++) {
    const middle = (low + high) / 2;
    if (fits(middle)) low = middle;
    else high = middle;
  }
  return low;
}

/** The base line with its sides moved inwards, corners as sharp as they come out. */
export function moveInwards(base: Base, moved: number): Base {
  const { stretches, bends } = base;
  if (moved === 0 || bends.length < 2) return base;
  const arcs = stretches.every((stretch): stretch is Arc => !('a' in stretch));
  const points = bends.map((bend, i) => {
    const [side, next] = [stretches[i]!, stretches[(i + 1) % stretches.length]!];
    // Arcs that run on almost straight into each other meet nowhere in particular.
    const turns = Math.abs(bend.sweep) > 0.35;
    if (turns && !('a' in side || 'a' in next)) return meetingPoint(side, next, moved, bend);
    return alongBend(bend, moved);
  });
  const before = (i: number) => points[(i + points.length - 1) % points.length]!;
  if (!arcs) {
    return {
      ...base,
      stretches: stretches.map((side, i) => ({ ...side, a: before(i), b: points[i]! })),
      bends: bends.map((bend, i) => ({ ...bend, at: points[i]! })),
    };
  }
  const sides = stretches.map((side, i): Arc => {
    const angleTo = ({ x, y }: Point) => Math.atan2(y - side.centre.y, x - side.centre.x);
    const angle = angleTo(before(i));
    return {
      ...side,
      radius: side.radius - moved,
      angle,
      sweep: turnTo(angle, angleTo(points[i]!), side.sweep),
    };
  });
  return {
    ...base,
    stretches: sides,
    bends: bends.map((bend, i) => {
      const angle = sides[i]!.angle + sides[i]!.sweep;
      const sweep = turnTo(angle, sides[(i + 1) % sides.length]!.angle, bend.sweep);
      return { ...bend, at: points[i]!, angle, sweep };
    }),
  };
}

/** The turn from one direction to another, of those that differ by full turns the one nearest to what it was. */
function turnTo(from: number, to: number, was: number): number {
  return to - from + TAU * Math.round((was - to + from) / TAU);
}

/** Where a corner comes to lie once both its sides have moved inwards. */
function alongBend(bend: Bend, moved: number): Point {
  const middle = bend.angle + bend.sweep / 2;
  const along = moved / Math.cos(bend.sweep / 2);
  return { x: bend.at.x - Math.cos(middle) * along, y: bend.at.y - Math.sin(middle) * along };
}

function meetingPoint(side: Arc, next: Arc, moved: number, bend: Bend): Point {
  const [p, q] = [side.radius - moved, next.radius - moved];
  const [dx, dy] = [next.centre.x - side.centre.x, next.centre.y - side.centre.y];
  const apart = Math.hypot(dx, dy);
  if (apart < 1e-6) return alongBend(bend, moved);
  const along = (p * p - q * q + apart * apart) / (2 * apart);
  const aside = Math.sqrt(Math.max(0, p * p - along * along));
  const point = (sign: number) => ({
    x: side.centre.x + (dx * along - sign * dy * aside) / apart,
    y: side.centre.y + (dy * along + sign * dx * aside) / apart,
  });
  const far = ({ x, y }: Point) => Math.hypot(x - bend.at.x, y - bend.at.y);
  const [one, other] = [point(1), point(-1)];
  return far(one) < far(other) ? one : other;
}

/** A circle, shared among the sides in proportion. The first stitch lies at the top. */
function circle(lengths: readonly number[], least: number): Base {
  const around = lengths.reduce((sum, length) => sum + length, 0);
  const radius = Math.max(around / TAU, least);
  let angle = -Math.PI / 2;
  const stretches = lengths.map((length, side): Arc => {
    const sweep = (-TAU * length) / around;
    const arc = { side, from: 0, to: 1, centre: { x: 0, y: 0 }, radius, angle, sweep };
    angle += sweep;
    return arc;
  });
  return { stretches, bends: [], room: 0 };
}

/** One side, one corner: two straight flanks from a tip at the top, and a round foot. */
function teardrop(length: number): Base {
  const tip = Math.PI / 2; // inner angle at the tip
  const flankPerRadius = 1 / Math.tan(tip / 2);
  const footSweep = Math.PI + tip;
  const radius = length / (2 * flankPerRadius + footSweep);
  const flank = radius * flankPerRadius;
  const top = { x: 0, y: -radius / Math.sin(tip / 2) };
  const left = Math.PI + tip / 2; // screen angle of the left flank's normal: up and to the left
  const touch = (angle: number) => ({ x: radius * Math.cos(angle), y: radius * Math.sin(angle) });
  const normal = (angle: number) => ({ x: Math.cos(angle), y: Math.sin(angle) });
  const right = left - footSweep;
  const share = flank / length;
  return {
    stretches: [
      { side: 0, from: 0, to: share, a: top, b: touch(left), normal: normal(left) },
      { side: 0, from: share, to: 1 - share, centre: { x: 0, y: 0 }, radius, angle: left, sweep: -footSweep },
      { side: 0, from: 1 - share, to: 1, a: touch(right), b: top, normal: normal(right) },
    ],
    bends: [{ corner: 0, at: top, angle: right, sweep: tip - Math.PI }],
    room: 0,
  };
}

/** Lengths of the sides in stitches and the circle they close on; absent with fewer than two sides or no corners. */
export type Closed = { lengths: number[]; corners: readonly number[]; cyclic?: Cyclic; room: number };

/** Closes sides with corners of these sizes (none on a round panel). The costly part of a base line: do it once. */
export function closePanel(sides: readonly number[], corners: readonly number[]): Closed {
  const lengths = sides.map((side) => (Number.isFinite(side) && side > 1 ? side : 1));
  if (corners.length === 0 || lengths.length < 2) return { lengths, corners, room: 0 };
  const cyclic = closeSides(lengths);
  const over = cyclicBase(lengths, cyclic).bends.map(({ sweep }, i) =>
    Math.max(0, 0.85 * corners[i]! - CORNER_ROOM * Math.abs(sweep)),
  );
  if (!over.some((more) => more > 0.5)) return withRoom(lengths, corners, cyclic);
  const longer = lengths.map(
    (length, i) => length + (over[i]! + over[(i + over.length - 1) % over.length]!) / 2,
  );
  return withRoom(longer, corners, closeSides(longer));
}

function withRoom(lengths: number[], corners: readonly number[], cyclic: Cyclic): Closed {
  const base = cyclicBase(lengths, cyclic);
  return { lengths, corners, cyclic, room: cyclic.bow === 0 ? straightRoom(base) : bowedRoom(base) };
}

/** The base line. `depth` is the room the lanes need inwards, `scale` the length of a stitch. */
export function baseLine(closed: Closed, depth: number, scale = 1): Base {
  const lengths = closed.lengths.map((length) => scale * length);
  const { cyclic } = closed;
  if (closed.corners.length === 0) return circle(lengths, depth + 1);
  if (!cyclic) return teardrop(lengths[0]!);
  return { ...cyclicBase(lengths, { ...cyclic, radius: scale * cyclic.radius }), room: scale * closed.room };
}
