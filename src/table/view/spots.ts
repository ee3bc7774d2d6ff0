/** Spots: places on the drawing found from a point, and rectangles found from a place. */

import type { SceneView, Spot } from '../draw-list.ts';
import { cellBounds, cellPlan } from '../glyphs/cells.ts';
import { stampOf } from '../glyphs/stamps.ts';
import { chunksOf } from '../painters/chunks.ts';
import { type Point, type Rect, toScreen, toWorld, type Viewport } from './camera.ts';
import { showsAt } from './detail.ts';
import { LEAST_REACH_PX, nearestMark } from './hit.ts';

/** The mark nearest to a point (CSS px within the host) among the parts that can be pointed at. */
export function spotIn(view: SceneView, viewport: Viewport, point: Point): Spot | null {
  const { camera } = viewport;
  const at = toWorld(viewport, point);
  const reach = Math.max(LEAST_REACH_PX / camera.px, 0.75);
  let best: Spot | null = null;
  let least = Infinity;
  for (const part of view.parts) {
    if (!part.solid || !showsAt(part, camera.px)) continue;
    const found = nearestMark(part.marks, chunksOf(part.marks), at, Math.min(reach, least));
    if (found === null) continue;
    least = found.distance;
    best = { view: view.id, part: part.key, index: found.index };
  }
  return best;
}

/** The upright rectangle around a mark in CSS px within the host; null where there is no such mark. */
export function boxIn(view: SceneView, viewport: Viewport, spot: Spot): Rect | null {
  const part = view.parts.find((one) => one.key === spot.part);
  if (part === undefined || spot.index < 0 || spot.index >= part.marks.count) return null;
  const stamp = stampOf(part, spot.index, 'full');
  const [x0, y0, x1, y1] = cellBounds(cellPlan(stamp.cell));
  const [cos, sin] = [Math.cos(stamp.angle), Math.sin(stamp.angle)];
  const corners = [
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ].map(([cx, cy]) => {
    const [px, py] = [cx! * stamp.sx, cy! * stamp.sy];
    return toScreen(viewport, { x: stamp.x + px * cos - py * sin, y: stamp.y + px * sin + py * cos });
  });
  const [xs, ys] = [corners.map((corner) => corner.x), corners.map((corner) => corner.y)];
  const [left, top] = [Math.min(...xs), Math.min(...ys)];
  return { x: left, y: top, width: Math.max(...xs) - left, height: Math.max(...ys) - top };
}
