/**
 * A strand of yarn as path data: a spine with a thickness along it. All stitches are built of strands,
 * so that loops, chains and posts look like one yarn.
 */

export type Vertex = readonly [x: number, y: number];
/** A cubic curve: start, two handles, end. */
export type Spine = readonly [Vertex, Vertex, Vertex, Vertex];
/** Half the strand's thickness at a share 0–1 of its length. */
export type Thickness = (share: number) => number;
export type Strand = { spine: Spine; thickness: Thickness };

const round = (value: number): number => Math.round(value * 1e4) / 1e4;
const at = ([x, y]: Vertex): string => `${round(x)} ${round(y)}`;

/** The point of a cubic curve at `share`. */
function pointOn([a, b, c, d]: Spine, share: number): Vertex {
  const rest = 1 - share;
  const weigh = (index: 0 | 1) =>
    rest ** 3 * a[index] +
    3 * rest ** 2 * share * b[index] +
    3 * rest * share ** 2 * c[index] +
    share ** 3 * d[index];
  return [weigh(0), weigh(1)];
}

/** Unit vector to the right-hand side of the curve (towards +y when it runs along +x). */
function sideways([a, b, c, d]: Spine, share: number): Vertex {
  const rest = 1 - share;
  const slope = (index: 0 | 1) =>
    3 * rest ** 2 * (b[index] - a[index]) +
    6 * rest * share * (c[index] - b[index]) +
    3 * share ** 2 * (d[index] - c[index]);
  const [dx, dy] = [slope(0), slope(1)];
  const length = Math.hypot(dx, dy) || 1;
  return [-dy / length, dx / length];
}

/** A point beside the spine: `across` −1 is the left edge, 0 the spine, 1 the right edge. */
export function beside({ spine, thickness }: Strand, share: number, across: number): Vertex {
  const [x, y] = pointOn(spine, share);
  const [nx, ny] = sideways(spine, share);
  const off = thickness(share) * across;
  return [x + nx * off, y + ny * off];
}

/** Smooth closed or open curve through points (Catmull-Rom turned into cubic curves). */
export function smooth(points: readonly Vertex[], closed: boolean): string {
  const count = points.length;
  const pick = (index: number): Vertex =>
    closed ? points[(index + count) % count]! : points[Math.min(count - 1, Math.max(0, index))]!;
  const parts = [`M${at(points[0]!)}`];
  const last = closed ? count : count - 1;
  for (let index = 0; index < last; index++) {
    const [p0, p1, p2, p3] = [pick(index - 1), pick(index), pick(index + 1), pick(index + 2)];
    const handle1: Vertex = [p1[0] + (p2[0] - p0[0]) / 6, p1[1] + (p2[1] - p0[1]) / 6];
    const handle2: Vertex = [p2[0] - (p3[0] - p1[0]) / 6, p2[1] - (p3[1] - p1[1]) / 6];
    parts.push(`C${at(handle1)} ${at(handle2)} ${at(p2)}`);
  }
  return closed ? `${parts.join('')}Z` : parts.join('');
}

/** The strand's outline from share `from` to `to`, as closed path data. */
export function outlineOf(strand: Strand, from = 0, to = 1, steps = 9): string {
  const shares = Array.from({ length: steps + 1 }, (_, step) => from + ((to - from) * step) / steps);
  const left = shares.map((share) => beside(strand, share, -1));
  const right = shares.map((share) => beside(strand, share, 1)).reverse();
  const end = roundEnd(strand, to, 1);
  // Where a strand comes up from below it is cut off plainly; a thick one begins as round as it ends.
  const start = strand.thickness(from) < 0.05 ? [] : roundEnd(strand, from, -1);
  return smooth([...left, ...end, ...right, ...start], true);
}

/** Three points around an end, in the order of the outline: `way` 1 beyond the last point of the spine, -1 before the first. */
function roundEnd(strand: Strand, share: number, way: 1 | -1): Vertex[] {
  const tip = pointOn(strand.spine, share);
  if (strand.thickness(share) <= 0.02) return [tip];
  const [side, otherSide] = [beside(strand, share, -way), beside(strand, share, way)];
  const crown = beyond(strand, share, way);
  return [mid(side, crown, tip), crown, mid(otherSide, crown, tip)];
}

/** The crown of a round end: the end of the spine, half a thickness further on. */
function beyond({ spine, thickness }: Strand, share: number, way: 1 | -1): Vertex {
  const [nx, ny] = sideways(spine, share);
  const [x, y] = pointOn(spine, share);
  const off = thickness(share) * 0.9 * way;
  return [x + ny * off, y - nx * off];
}

/** Point on the round corner between a side's end and the crown. */
function mid(side: Vertex, cap: Vertex, tip: Vertex): Vertex {
  const toward: Vertex = [(side[0] + cap[0]) / 2 - tip[0], (side[1] + cap[1]) / 2 - tip[1]];
  const stretch = Math.SQRT2 * 0.97;
  return [tip[0] + toward[0] * stretch, tip[1] + toward[1] * stretch];
}

/** A line within the strand from one place (`share`, `across`) to another, slightly bent along the yarn. */
export function within(
  strand: Strand,
  from: readonly [share: number, across: number],
  to: readonly [share: number, across: number],
): string {
  const places = [0, 0.33, 0.67, 1].map((step) => {
    // Plies lie flatter at the rims than in the middle: ease the way along, go evenly across.
    const along = step + 0.05 * Math.sin(2 * Math.PI * step);
    return beside(strand, from[0] + (to[0] - from[0]) * along, from[1] + (to[1] - from[1]) * step);
  });
  return smooth(places, false);
}

/** Ellipse as path data. */
export function ellipse(x: number, y: number, rx: number, ry: number): string {
  const [left, right] = [round(x - rx), round(x + rx)];
  const [a, b, c] = [round(rx), round(ry), round(y)];
  return `M${left} ${c}A${a} ${b} 0 1 1 ${right} ${c}A${a} ${b} 0 1 1 ${left} ${c}Z`;
}

/** Rectangle with round corners about the origin. */
export function roundBox(width: number, height: number, radius: number): string {
  const [x0, y0] = [round(-width / 2), round(-height / 2)];
  const r = round(Math.min(radius, width / 2, height / 2));
  const [w, h] = [round(width - 2 * r), round(height - 2 * r)];
  return (
    `M${round(x0 + r)} ${y0}h${w}a${r} ${r} 0 0 1 ${r} ${r}v${h}a${r} ${r} 0 0 1 ${-r} ${r}` +
    `h${-w}a${r} ${r} 0 0 1 ${-r} ${-r}v${-h}a${r} ${r} 0 0 1 ${r} ${-r}Z`
  );
}

/** Straight line as path data. */
export const line = (x0: number, y0: number, x1: number, y1: number): string =>
  `M${round(x0)} ${round(y0)}L${round(x1)} ${round(y1)}`;
