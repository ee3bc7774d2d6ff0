/**
 * The outline of a panel from the lengths of its sides, and the lanes that follow it.
 *
 * The base line is a polygon inscribed in a circle: it exists whenever the longest side is shorter than
 * the others together, is a rectangle for a b a b, regular for equal sides, and convex always. Panels
 * without corners are circles, one corner makes a teardrop, two a lens. A lane is the base line moved
 * outwards with rounded corners, so the straight part of a side keeps its length and partners on two
 * lanes lie side by side; only where a panel is large are the inner lanes let shrink, so that corners stay tight.
 *
 * Lengths in stitches, y down. Right-handed work: anticlockwise, side 0 on top, seen from the right side.
 * Left-handed drawings are the mirror image in x; that is done by whoever reads a lane.
 */
import type { Corner } from '../../core/index.ts';
import type { Hand } from '../state/snapshot.ts';
import type { Box } from '../table/draw-list.ts';

export type Point = { x: number; y: number };

/** A stretch of the base line in one side: `from`–`to` are fractions of that side. Normals point outwards. */
type Line = { side: number; from: number; to: number; a: Point; b: Point; normal: Point };
type Arc = {
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
  /** Polygons only: how far the base line can be moved inwards. */
  room: number;
};

/** A stretch of a lane, concrete: a line (radius 0) or an arc. */
export type LaneStretch = {
  /** 2 × side for a side, 2 × corner + 1 for a corner. */
  cell: number;
  from: number;
  to: number;
  ax: number;
  ay: number;
  bx: number;
  by: number;
  radius: number;
  /** Angle of the outward normal at the start, and how far it turns: negative is anticlockwise. */
  angle: number;
  sweep: number;
  length: number;
};

/** The longest side is at most this share of the others together; shorter ones are stretched to fit. */
const FULLEST = 0.97;
/** Inner lanes may lose this share of a straight side before corners are rounded more. */
const SHRINK = 0.28;
const TAU = 2 * Math.PI;

/** Lengths that close: anything below one stitch counts as one, and short sides stretch if one side outgrows them. */
export function closingLengths(sides: readonly number[]): number[] {
  const lengths = sides.map((side) => (Number.isFinite(side) && side > 1 ? side : 1));
  if (lengths.length < 3) return lengths;
  const longest = Math.max(...lengths);
  const others = lengths.reduce((sum, length) => sum + length, 0) - longest;
  const stretch = longest / FULLEST / others;
  if (stretch <= 1) return lengths;
  const which = lengths.indexOf(longest);
  return lengths.map((length, i) => (i === which ? length : Math.min(longest, length * stretch)));
}

/** Root of an increasing-or-decreasing function between two ends of different sign. */
function bisect(low: number, high: number, value: (x: number) => number): number {
  let [a, b] = [low, high];
  const sign = Math.sign(value(a)) || -Math.sign(value(b)) || 1;
  for (let i = 0; i < 80; i++) {
    const middle = (a + b) / 2;
    if (Math.sign(value(middle)) === sign) a = middle;
    else b = middle;
  }
  return (a + b) / 2;
}

/** Central angles of a polygon inscribed in a circle, and its radius. Lengths must close. */
export function inscribe(lengths: readonly number[]): { radius: number; angles: number[] } {
  const longest = Math.max(...lengths);
  const which = lengths.indexOf(longest);
  const half = (length: number, radius: number) => Math.asin(Math.min(1, length / (2 * radius)));
  const others = (radius: number) =>
    lengths.reduce((sum, length, i) => (i === which ? sum : sum + 2 * half(length, radius)), 0);
  const smallest = longest / 2;
  const centreInside = others(smallest) >= Math.PI;
  let far = smallest;
  const value = centreInside
    ? (radius: number) => others(radius) + 2 * half(longest, radius) - TAU
    : (radius: number) => others(radius) - 2 * half(longest, radius);
  const first = Math.sign(value(smallest));
  do far *= 2;
  while (Math.sign(value(far)) === first && far < 1e9);
  const radius = bisect(smallest, far, value);
  const angles = lengths.map((length) => 2 * half(length, radius));
  // The longest takes what the others leave: the sum is a full turn exactly, so the outline closes.
  angles[which] = TAU - angles.reduce((sum, angle, i) => (i === which ? sum : sum + angle), 0);
  return { radius, angles };
}

function onCircle(radius: number, turn: number): Point {
  return { x: radius * Math.cos(turn), y: -radius * Math.sin(turn) };
}

/** Anticlockwise turn from one direction to the next, as a negative screen angle. */
function turnBetween(before: number, after: number): number {
  let sweep = after - before;
  while (sweep > 1e-9) sweep -= TAU;
  while (sweep < -TAU) sweep += TAU;
  return sweep;
}

function polygon(lengths: readonly number[]): Base {
  const { radius, angles } = inscribe(lengths);
  let turn = Math.PI / 2 - angles[0]! / 2;
  const corners = angles.map((angle) => {
    const at = onCircle(radius, turn);
    turn += angle;
    return at;
  });
  const lines = corners.map((a, side): Line => {
    const b = corners[(side + 1) % corners.length]!;
    const length = Math.hypot(b.x - a.x, b.y - a.y) || 1;
    return { side, from: 0, to: 1, a, b, normal: { x: -(b.y - a.y) / length, y: (b.x - a.x) / length } };
  });
  const bends = lines.map((line, corner): Bend => {
    const next = lines[(corner + 1) % lines.length]!;
    const angle = Math.atan2(line.normal.y, line.normal.x);
    const sweep = turnBetween(angle, Math.atan2(next.normal.y, next.normal.x));
    return { corner, at: line.b, angle, sweep };
  });
  const tangent = bends.map((bend) => Math.tan(Math.min(Math.abs(bend.sweep), 3.1) / 2));
  const rooms = lines.map((line, i) => {
    const length = Math.hypot(line.b.x - line.a.x, line.b.y - line.a.y);
    return (SHRINK * length) / (tangent[i]! + tangent[(i + lines.length - 1) % lines.length]!);
  });
  return { stretches: lines, bends, room: Math.min(...rooms) };
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
    bends: [{ corner: 0, at: top, angle: right, sweep: turnBetween(right, left) }],
    room: 0,
  };
}

/** Two sides: two arcs over one chord, the corners at its ends. */
function lens(lengths: readonly number[]): Base {
  const [long, short] = [Math.max(...lengths), Math.min(...lengths)];
  const chordShare = (sweep: number) => (sweep < 1e-6 ? 1 : Math.sin(sweep / 2) / (sweep / 2));
  // Both sweeps together leave two corners of about 70 degrees; unequal sides need more.
  const least = (220 * Math.PI) / 180;
  const together =
    long * chordShare(least) <= short
      ? least
      : bisect(least, TAU - 1e-3, (sweep) => long * chordShare(sweep) - short);
  const difference = (sweep: number) => long * chordShare(sweep) - short * chordShare(together - sweep);
  const longSweep = difference(together) > 0 ? together : bisect(together / 2, together, difference);
  const chord = long * chordShare(longSweep);
  const ends = { right: { x: chord / 2, y: 0 }, left: { x: -chord / 2, y: 0 } };
  const arcs = lengths.map((length, side): Line | Arc => {
    const sweep = length === long ? longSweep : together - longSweep;
    const [a, b] = side === 0 ? [ends.right, ends.left] : [ends.left, ends.right];
    if (sweep < 1e-4) return { side, from: 0, to: 1, a, b, normal: { x: 0, y: side === 0 ? -1 : 1 } };
    const radius = length / sweep;
    const drop = radius * Math.cos(sweep / 2) * (side === 0 ? 1 : -1);
    const middle = side === 0 ? -Math.PI / 2 : Math.PI / 2;
    const centre = { x: 0, y: drop };
    return { side, from: 0, to: 1, centre, radius, angle: middle + sweep / 2, sweep: -sweep };
  });
  const startAngle = (s: Line | Arc) => ('a' in s ? Math.atan2(s.normal.y, s.normal.x) : s.angle);
  const endAngle = (s: Line | Arc) => ('a' in s ? startAngle(s) : s.angle + s.sweep);
  const bends = [0, 1].map((corner): Bend => {
    const angle = endAngle(arcs[corner]!);
    const sweep = turnBetween(angle, startAngle(arcs[1 - corner]!));
    return { corner, at: corner === 0 ? ends.left : ends.right, angle, sweep };
  });
  return { stretches: arcs, bends, room: 0 };
}

/** The base line for sides in stitches. `depth` is the room the lanes need inwards. */
export function baseLine(sides: readonly number[], hasCorners: boolean, depth: number): Base {
  const lengths = closingLengths(sides);
  if (!hasCorners) return circle(lengths, depth + 1);
  if (lengths.length === 1) return teardrop(lengths[0]!);
  if (lengths.length === 2) return lens(lengths);
  return polygon(lengths);
}

export type Rounding = { outer: number; inner: number };

/**
 * Corner radii of the outermost lane and of the innermost, so that `depth` fits inside and corners hold
 * their chains. Between the outermost lane and the one `partner` inside it, places at the end of a side may
 * slide along by less than a stitch: partners stay beside each other.
 */
export function rounding(base: Base, corners: readonly Corner[], depth: number, partner: number): Rounding {
  if (base.bends.length === 0) return { outer: 0, inner: 0 };
  const wanted = base.bends.map((bend, i) => (0.85 * (corners[i]?.size ?? 0)) / Math.abs(bend.sweep || 1));
  const least = corners.some((corner) => corner.size > 0) ? 1.1 : 0.35;
  const inner = Math.min(6, Math.max(least, ...wanted));
  const sharpest = Math.max(...base.bends.map((bend) => Math.tan(Math.min(Math.abs(bend.sweep), 3.1) / 2)));
  const slide = Math.max(0, partner - 0.9 / sharpest);
  return { outer: inner + Math.max(slide, depth - base.room, 0), inner };
}

/** The lane `inset` stitches inside the outermost one, from the start of side 0, cell by cell. */
export function laneStretches(base: Base, radii: Rounding, inset: number): LaneStretch[] {
  const out = Math.max(radii.outer - inset, radii.inner);
  const moved = base.bends.length === 0 ? 0 : Math.max(0, inset - (radii.outer - radii.inner));
  const offset = base.bends.length === 0 ? -inset : out;
  const bends = base.bends.map((bend) => {
    if (moved === 0) return bend.at;
    const middle = bend.angle + bend.sweep / 2;
    const along = moved / Math.cos(bend.sweep / 2);
    return { x: bend.at.x - Math.cos(middle) * along, y: bend.at.y - Math.sin(middle) * along };
  });
  const stretches: LaneStretch[] = [];
  const sides = new Map<number, (Line | Arc)[]>();
  for (const stretch of base.stretches)
    sides.set(stretch.side, [...(sides.get(stretch.side) ?? []), stretch]);
  for (const [side, list] of sides) {
    for (const stretch of list) {
      if ('a' in stretch) {
        const { normal } = stretch;
        const [a, b] =
          moved > 0
            ? [bends[(side + bends.length - 1) % bends.length]!, bends[side]!]
            : [stretch.a, stretch.b];
        const line = { ax: a.x + normal.x * offset, ay: a.y + normal.y * offset };
        const end = { bx: b.x + normal.x * offset, by: b.y + normal.y * offset };
        const length = Math.hypot(end.bx - line.ax, end.by - line.ay);
        const angle = Math.atan2(normal.y, normal.x);
        stretches.push({
          cell: 2 * side,
          ...range(stretch),
          ...line,
          ...end,
          radius: 0,
          angle,
          sweep: 0,
          length,
        });
      } else {
        stretches.push(arcStretch(2 * side, stretch, stretch.centre, stretch.radius + offset));
      }
    }
    const bend = base.bends[side];
    if (bend) stretches.push(arcStretch(2 * side + 1, { from: 0, to: 1, ...bend }, bends[side]!, out));
  }
  return stretches;
}

function range(stretch: { from: number; to: number }): { from: number; to: number } {
  return { from: stretch.from, to: stretch.to };
}

function arcStretch(
  cell: number,
  arc: { from: number; to: number; angle: number; sweep: number },
  centre: Point,
  radius: number,
): LaneStretch {
  const { angle, sweep } = arc;
  const length = Math.abs(sweep) * radius;
  return { cell, ...range(arc), ax: centre.x, ay: centre.y, bx: 0, by: 0, radius, angle, sweep, length };
}

/** A closed line along a lane, as x, y pairs; arcs in steps of about `fine` radians. */
export function linePoints(stretches: readonly LaneStretch[], fine = 0.12): Float32Array {
  const points: number[] = [];
  for (const s of stretches) {
    if (s.radius === 0) points.push(s.ax, s.ay, s.bx, s.by);
    else {
      const pieces = Math.max(2, Math.ceil(Math.abs(s.sweep) / fine));
      for (let i = 0; i <= pieces; i++) {
        const angle = s.angle + (s.sweep * i) / pieces;
        points.push(s.ax + s.radius * Math.cos(angle), s.ay + s.radius * Math.sin(angle));
      }
    }
  }
  return Float32Array.from(points);
}

export function boxOf(points: ArrayLike<number>): Box {
  const box = { x0: Infinity, y0: Infinity, x1: -Infinity, y1: -Infinity };
  for (let i = 0; i + 1 < points.length; i += 2) {
    box.x0 = Math.min(box.x0, points[i]!);
    box.x1 = Math.max(box.x1, points[i]!);
    box.y0 = Math.min(box.y0, points[i + 1]!);
    box.y1 = Math.max(box.y1, points[i + 1]!);
  }
  return box;
}

/** Middle of a side or corner on a lane, and the way out from there. */
export type Anchor = { x: number; y: number; outX: number; outY: number };

/** A place in a cell of a lane, as a share of its length: the middle if not told otherwise. */
export function cellMiddle(stretches: readonly LaneStretch[], cell: number, along = 0.5): Anchor | undefined {
  const s = stretches.find((one) => one.cell === cell && one.from <= along && one.to >= along);
  if (!s) return undefined;
  const share = (along - s.from) / (s.to - s.from);
  const angle = s.angle + s.sweep * share;
  const out = { outX: Math.cos(angle), outY: Math.sin(angle) };
  if (s.radius === 0) return { x: s.ax + (s.bx - s.ax) * share, y: s.ay + (s.by - s.ay) * share, ...out };
  return { x: s.ax + s.radius * out.outX, y: s.ay + s.radius * out.outY, ...out };
}

/** The same outline the drawing follows, for small pictures: y down, lengths in stitches. */
export type Outline = {
  /** x, y pairs, closed: the last point meets the first. */
  points: Float32Array;
  /** Tip of each corner, in working order; none on a round panel. */
  corners: Anchor[];
  /** Middle of each side, where its number stands. */
  sides: Anchor[];
  bounds: Box;
};

/**
 * The outline of a panel with these sides (in stitches) as its maker sees it, right side facing.
 * Side 0 is on top; right-handed work runs anticlockwise from there, left-handed clockwise.
 */
export function outline(sides: readonly number[], corners: readonly Corner[], hand: Hand): Outline {
  const base = baseLine(sides, corners.length > 0, 0);
  const stretches = laneStretches(base, rounding(base, corners, 0, 0), 0);
  const flip = hand === 'left' ? -1 : 1;
  const mirror = (anchor: Anchor) => ({ ...anchor, x: anchor.x * flip, outX: anchor.outX * flip });
  const points = linePoints(stretches).map((value, i) => (i % 2 === 0 ? value * flip : value));
  const middles = (odd: number, count: number) =>
    Array.from({ length: count }, (_, i) => cellMiddle(stretches, 2 * i + odd))
      .filter((anchor) => anchor !== undefined)
      .map(mirror);
  return {
    points,
    corners: middles(1, corners.length),
    sides: middles(0, sides.length),
    bounds: boxOf(points),
  };
}
