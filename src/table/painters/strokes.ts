/**
 * Lines in the world whose thickness is in CSS px: ribbons, frames, rulers. Every painter takes these.
 */
import type { Point } from '../view/camera.ts';

export type Stroke = {
  /** x, y, x, y … in world units. */
  points: ArrayLike<number>;
  /** Thickness in CSS px. */
  widthPx: number;
  colour: string;
  closed?: boolean;
  /** Filled inside instead of drawn along. */
  filled?: boolean;
};

export const count = (points: ArrayLike<number>): number => points.length >> 1;
export const at = (points: ArrayLike<number>, index: number): Point => ({
  x: points[2 * index]!,
  y: points[2 * index + 1]!,
});

/** Length of each point from the start along the path. */
export function lengthsAlong(points: ArrayLike<number>): number[] {
  const lengths = [0];
  for (let index = 1; index < count(points); index++) {
    const [a, b] = [at(points, index - 1), at(points, index)];
    lengths.push(lengths[index - 1]! + Math.hypot(b.x - a.x, b.y - a.y));
  }
  return lengths;
}

/** The stretch of a path between two shares 0–1 of its length; empty where there is none. */
export function stretch(points: ArrayLike<number>, from: number, to: number): number[] {
  if (to <= from || count(points) < 2) return [];
  const lengths = lengthsAlong(points);
  const total = lengths.at(-1)!;
  const [start, end] = [from * total, to * total];
  const cut = [...coordinates(points, lengths, start)];
  for (let index = 0; index < count(points); index++) {
    if (lengths[index]! > start && lengths[index]! < end)
      cut.push(points[2 * index]!, points[2 * index + 1]!);
  }
  cut.push(...coordinates(points, lengths, end));
  return cut;
}

function coordinates(points: ArrayLike<number>, lengths: readonly number[], along: number): [number, number] {
  let index = 1;
  while (index < lengths.length - 1 && lengths[index]! < along) index++;
  const [a, b] = [at(points, index - 1), at(points, index)];
  const span = lengths[index]! - lengths[index - 1]!;
  const share = span > 0 ? Math.min(1, Math.max(0, (along - lengths[index - 1]!) / span)) : 0;
  return [a.x + (b.x - a.x) * share, a.y + (b.y - a.y) * share];
}

export type Circle = Point & { radius: number };

/** Points of an arc of a circle, in order, radians clockwise; `steps` straight pieces. */
export function arc({ x, y, radius }: Circle, from: number, to: number, steps: number): number[] {
  const points: number[] = [];
  for (let step = 0; step <= steps; step++) {
    const angle = from + ((to - from) * step) / steps;
    points.push(x + radius * Math.cos(angle), y + radius * Math.sin(angle));
  }
  return points;
}

/** Turns points about the origin and moves them. */
export function placed(points: readonly number[], { x, y }: Point, angle: number): number[] {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const out: number[] = [];
  for (let index = 0; index < points.length; index += 2) {
    const [px, py] = [points[index]!, points[index + 1]!];
    out.push(x + px * cos - py * sin, y + px * sin + py * cos);
  }
  return out;
}
