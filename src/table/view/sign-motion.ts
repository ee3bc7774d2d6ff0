/** Signs on their way from where they stood to where they stand now. */
import type { Sign } from '../draw-list.ts';

/** Every sign of `to`; those that were in `from` under the same key stand `share` of the way. */
export function signsBetween(from: readonly Sign[], to: readonly Sign[], share: number): readonly Sign[] {
  if (share >= 1 || from === to) return to;
  const before = new Map(from.map((sign) => [sign.key, sign]));
  return to.map((sign) => {
    const old = before.get(sign.key);
    return old === undefined ? sign : between(old, sign, share);
  });
}

const blend = (from: number, to: number, share: number): number => from + (to - from) * share;

/** The short way round between two angles. */
function turn(from: number, to: number, share: number): number {
  const whole = 2 * Math.PI;
  const way = ((((to - from) % whole) + whole + Math.PI) % whole) - Math.PI;
  return from + way * share;
}

function between(from: Sign, to: Sign, share: number): Sign {
  if (from.kind === 'frame' && to.kind === 'frame') {
    return {
      ...to,
      x: blend(from.x, to.x, share),
      y: blend(from.y, to.y, share),
      w: blend(from.w, to.w, share),
      h: blend(from.h, to.h, share),
      angle: turn(from.angle, to.angle, share),
    };
  }
  if ((from.kind === 'ring' && to.kind === 'ring') || (from.kind === 'arrow' && to.kind === 'arrow')) {
    return { ...to, x: blend(from.x, to.x, share), y: blend(from.y, to.y, share) };
  }
  if (from.kind === 'window' && to.kind === 'window' && from.points.length === to.points.length) {
    return { ...to, points: to.points.map((value, index) => blend(from.points[index]!, value, share)) };
  }
  return to;
}

/** Whether any sign has moved from one list to the other; signs made anew in the same place have not. */
export const anyMoved = (from: readonly Sign[], to: readonly Sign[]): boolean =>
  from !== to && to.some((sign) => from.some((old) => old.key === sign.key && !samePlace(old, sign)));

function samePlace(one: Sign, other: Sign): boolean {
  if (one === other) return true;
  if ('points' in one && 'points' in other) {
    return one.points.length === other.points.length && one.points.every((at, i) => at === other.points[i]);
  }
  if (!('x' in one) || !('x' in other)) return false;
  const turned = 'angle' in one && 'angle' in other && one.angle !== other.angle;
  const resized = one.kind === 'frame' && other.kind === 'frame' && (one.w !== other.w || one.h !== other.h);
  return one.x === other.x && one.y === other.y && !turned && !resized;
}
