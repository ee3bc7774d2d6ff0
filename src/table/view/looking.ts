/**
 * Where a view looks: by itself it follows the scene; moved by hand it stays until the scene looks elsewhere.
 * A zoom chosen by hand outlasts that, until the view is fitted again.
 */

import type { SceneView } from '../draw-list.ts';
import { type Camera, fitBounds, keepOver, type Rect, zoomAbout } from './camera.ts';

export type Looking = { camera: Camera; panned: boolean; zoomed: boolean };

/** Room around the drawing where a view shows all of it, in CSS px. */
export const FIT_MARGIN_PX = 18;

/** The close-up cannot be zoomed out so far that it turns into a second whole. */
const LEAST_CLOSE_PX = 6;

/** The camera a view asks for. */
export function wantedCamera(view: SceneView, region: Rect): Camera {
  const fitted = fitBounds(view.bounds, region, FIT_MARGIN_PX);
  return { x: view.centre?.x ?? fitted.x, y: view.centre?.y ?? fitted.y, px: view.px ?? fitted.px };
}

/** Where to look at `view`, having looked at `before`. */
export function follow(
  looking: Looking | null,
  before: SceneView | null,
  view: SceneView,
  region: Rect,
): Looking {
  const wanted = wantedCamera(view, region);
  if (looking === null || before === null) return { camera: wanted, panned: false, zoomed: false };
  const reshaped = view.id === 'whole' && !sameBounds(before, view);
  const zoomed = looking.zoomed && !reshaped;
  const panned = looking.panned && !reshaped && sameCentre(before, view);
  const px = zoomed ? looking.camera.px : wanted.px;
  // Zoomed in by hand, a view without a centre of its own stays where it was put.
  const held = panned || (zoomed && view.centre === undefined);
  const at = held ? looking.camera : wanted;
  return { camera: { x: at.x, y: view.id === 'close' ? wanted.y : at.y, px }, panned, zoomed };
}

const sameBounds = ({ bounds: a }: SceneView, { bounds: b }: SceneView): boolean =>
  a.x0 === b.x0 && a.y0 === b.y0 && a.x1 === b.x1 && a.y1 === b.y1;

const sameCentre = ({ centre: a }: SceneView, { centre: b }: SceneView): boolean =>
  a?.x === b?.x && a?.y === b?.y;

/** Smallest CSS px a stitch by hand: a little beyond all of it, or the close-up's own limit. */
export function leastPx(view: SceneView, region: Rect): number {
  return view.id === 'close' ? LEAST_CLOSE_PX : fitBounds(view.bounds, region, FIT_MARGIN_PX).px * 0.8;
}

/** Moved by hand by CSS px: the drawing goes with the hand. The close-up moves along x only. */
export function panned(looking: Looking, view: SceneView, dx: number, dy: number): Looking {
  const { camera } = looking;
  const y = view.id === 'close' ? camera.y : camera.y - dy / camera.px;
  const moved = keepOver({ x: camera.x - dx / camera.px, y, px: camera.px }, view.bounds);
  return { ...looking, camera: view.id === 'close' ? { ...moved, y: camera.y } : moved, panned: true };
}

/** Zoomed by hand about a place in CSS px within the host. */
export function zoomed(
  looking: Looking,
  view: SceneView,
  region: Rect,
  factor: number,
  x: number,
  y: number,
): Looking {
  const { camera } = looking;
  const about = zoomAbout(camera, region, factor, x, y, leastPx(view, region));
  const kept = keepOver(about, view.bounds);
  return {
    camera: view.id === 'close' ? { ...kept, y: camera.y } : kept,
    panned: true,
    zoomed: true,
  };
}
