/** Small pictures drawn from the two shapes a counted edge is made of: Vs and chains. */
import { type SVGTemplateResult, svg } from 'lit-html';
import type { Point } from './around.ts';

/** Where a stitch lies, the way it looks in radians clockwise from +x, and how large it is. */
export type LaidStitch = Point & { angle: number; size: number };

type Circle = Point & { radius: number };
type Segment = { from: Point; to: Point };

const fixed = (value: number): string => value.toFixed(1);

/** A V as seen from above: two loops that meet where the work goes on. Drawn about its middle. */
export function vee({ x, y, angle, size }: LaidStitch, tone: string): SVGTemplateResult {
  const half = size / 2;
  const loop = (side: 1 | -1): string =>
    `M${fixed(half)} 0C${fixed(half * 0.4)} ${fixed(side * half * 0.05)} ${fixed(-half * 0.5)} ${fixed(side * half * 0.35)} ${fixed(-half)} ${fixed(side * half * 0.95)}` +
    `C${fixed(-half * 0.1)} ${fixed(side * half * 1.05)} ${fixed(half * 0.75)} ${fixed(side * half * 0.6)} ${fixed(half)} 0Z`;
  const degrees = fixed((angle * 180) / Math.PI);
  return svg`<path class="stitch ${tone}" transform="translate(${fixed(x)} ${fixed(y)}) rotate(${degrees})" d="${loop(1)}${loop(-1)}"/>`;
}

export function chain({ x, y, angle, size }: LaidStitch, tone: string): SVGTemplateResult {
  const degrees = fixed((angle * 180) / Math.PI);
  return svg`<ellipse class="chain ${tone}" rx=${fixed(size * 0.42)} ry=${fixed(size * 0.25)} transform="translate(${fixed(x)} ${fixed(y)}) rotate(${degrees})"/>`;
}

/** Vs from one point to another, evenly, leaving room for a corner at both ends. */
function braid({ from, to }: Segment, size: number, tone: string, room = size): SVGTemplateResult[] {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const angle = Math.atan2(to.y - from.y, to.x - from.x);
  const count = Math.max(1, Math.floor((length - room) / size));
  const step = (length - room) / count;
  return Array.from({ length: count }, (_, index) => {
    const along = room / 2 + step * (index + 0.5);
    const [x, y] = [from.x + Math.cos(angle) * along, from.y + Math.sin(angle) * along];
    return vee({ x, y, angle, size: step * 0.95 }, tone);
  });
}

/** A closed braid around a figure, with a chain at each corner: one tone for each side. */
export function braidRing(
  corners: readonly Point[],
  size: number,
  toneOf: (side: number) => string,
): SVGTemplateResult[] {
  const count = corners.length;
  return corners.flatMap((corner, side) => {
    const before = corners[(side + count - 1) % count] as Point;
    const after = corners[(side + 1) % count] as Point;
    const turn = Math.atan2(after.y - before.y, after.x - before.x);
    return [
      ...braid({ from: before, to: corner }, size, toneOf(side), size * 1.3),
      chain({ ...corner, angle: turn, size }, toneOf(side)),
    ];
  });
}

/** A ring of Vs without corners. */
export function roundBraid(
  { x, y, radius }: Circle,
  count: number,
  tone: string,
  way: 1 | -1,
): SVGTemplateResult[] {
  const size = (2 * Math.PI * radius) / count;
  return Array.from({ length: count }, (_, index) => {
    const at = (2 * Math.PI * index) / count;
    const place = { x: x + radius * Math.cos(at), y: y + radius * Math.sin(at) };
    return vee({ ...place, angle: at + (way * Math.PI) / 2, size: size * 0.92 }, tone);
  });
}
