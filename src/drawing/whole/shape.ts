/**
 * The lanes of a panel: its base line (`base.ts`) moved outwards with rounded corners, so that the straight part of
 * a side keeps its length and partners on two lanes lie side by side; only where a panel is large are the inner
 * lanes let shrink, so that corners stay tight.
 *
 * Lengths in stitches, y down. Right-handed work: anticlockwise, side 0 on top, seen from the right side.
 * Left-handed drawings are the mirror image in x; that is done by whoever reads a lane.
 */
import type { Corner } from '../../../core/index.ts';
import type { Hand } from '../../state/snapshot.ts';
import type { Box } from '../../table/draw-list.ts';
import {
  type Arc,
  type Base,
  baseLine,
  closePanel,
  type Line,
  moveInwards,
  type Point,
  lengthOf as stretchLength,
} from './base.ts';

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

/** 12 degrees. */
const LEAST_TURN = 0.21;

export type Rounding = { outer: number; inner: number };

/** How far inside the outermost lane the innermost lies and the one that meets it; `scale` is the length of a stitch. */
export type LaneDepths = { depth: number; partner: number; scale: number };

/**
 * Corner radii of the outermost lane and of the innermost, so that all lanes fit inside and corners hold
 * their chains. Between the two lanes that meet, places at the end of a side may slide along by less than a stitch:
 * partners stay beside each other.
 */
export function rounding(
  base: Base,
  corners: readonly Corner[],
  { depth, partner, scale }: LaneDepths,
): Rounding {
  if (base.bends.length === 0) return { outer: 0, inner: 0 };
  // A corner that hardly turns holds nothing, however round: its places lie on its sides.
  const wanted = base.bends.map(({ sweep }, i) =>
    Math.abs(sweep) < LEAST_TURN ? 0 : (0.85 * (corners[i]?.size ?? 0)) / Math.abs(sweep),
  );
  const least = scale * (corners.some((corner) => corner.size > 0) ? 1.1 : 0.35);
  const around = laneLength(base) + corners.reduce((sum, corner) => sum + corner.size, 0);
  const most = Math.min(6 * scale * scale, Math.max(least, around / 4 / Math.PI));
  const inner = Math.min(most, Math.max(least, ...wanted));
  const sharpest = Math.max(...base.bends.map((bend) => Math.tan(Math.min(Math.abs(bend.sweep), 3.1) / 2)));
  const slide = Math.max(0, partner - 0.9 / sharpest);
  return { outer: inner + Math.max(slide, depth - base.room, 0), inner };
}

const laneLength = (base: Base) => base.stretches.reduce((sum, stretch) => sum + stretchLength(stretch), 0);

/** The lane `inset` stitches inside the outermost one, from the start of side 0, cell by cell. */
export function laneStretches(base: Base, radii: Rounding, inset: number): LaneStretch[] {
  const cornered = base.bends.length > 0;
  const out = Math.max(radii.outer - inset, radii.inner);
  const moved = cornered ? Math.max(0, inset - (radii.outer - radii.inner)) : 0;
  const offset = cornered ? out : -inset;
  const inner = moveInwards(base, moved);
  const stretches: LaneStretch[] = [];
  inner.stretches.forEach((stretch, i) => {
    const cell = 2 * stretch.side;
    stretches.push(
      'a' in stretch
        ? lineStretch(cell, stretch, offset)
        : arcStretch(cell, stretch, stretch.centre, stretch.radius + offset),
    );
    const bend = inner.stretches[i + 1]?.side === stretch.side ? undefined : inner.bends[stretch.side];
    if (bend) stretches.push(arcStretch(cell + 1, { from: 0, to: 1, ...bend }, bend.at, out));
  });
  return stretches;
}

function lineStretch(cell: number, line: Line, offset: number): LaneStretch {
  const { a, b, normal } = line;
  const [x, y] = [normal.x * offset, normal.y * offset];
  return {
    cell,
    ...range(line),
    ax: a.x + x,
    ay: a.y + y,
    bx: b.x + x,
    by: b.y + y,
    radius: 0,
    angle: Math.atan2(normal.y, normal.x),
    sweep: 0,
    length: Math.hypot(b.x - a.x, b.y - a.y),
  };
}

function range(stretch: { from: number; to: number }): { from: number; to: number } {
  return { from: stretch.from, to: stretch.to };
}

function arcStretch(
  cell: number,
  arc: Pick<Arc, 'from' | 'to' | 'angle' | 'sweep'>,
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
  const sizes = corners.map(({ size }) => size);
  const base = baseLine(closePanel(sides, sizes), 0);
  const stretches = laneStretches(base, rounding(base, corners, { depth: 0, partner: 0, scale: 1 }), 0);
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
