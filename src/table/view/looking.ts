/**
 * Where a view looks: by itself it follows the scene; moved by hand it stays until the scene looks elsewhere.
 * A zoom chosen by hand outlasts that, until the view is fitted again.
 */

import { type Box, reachOf, type SceneView } from '../draw-list.ts';
import { type Camera, fitBounds, keepOver, type Rect, type Zoom, zoomAbout } from './camera.ts';
import { showsAt } from './detail.ts';

export type Looking = { camera: Camera; panned: boolean; zoomed: boolean };

/** Room around the drawing where a view shows all of it, in CSS px. */
export const FIT_MARGIN_PX = 18;

/** The close-up cannot be zoomed out so far that it turns into a second whole. */
const LEAST_CLOSE_PX = 6;

/** Free room beyond words at the edge of a view, in CSS px. */
const WORDS_MARGIN_PX = 6;
/** Tried zooms lie this close; below the least the words must give way. */
const ZOOM_STEP = 0.97;
const LEAST_SHARE = 0.05;

/** Bounds and all words that show with a stitch `px` CSS px wide, in CSS px from the world's origin. */
export function extentAt({ bounds, labels }: SceneView, px: number, marginPx: number): Box {
  const box = {
    x0: bounds.x0 * px - marginPx,
    y0: bounds.y0 * px - marginPx,
    x1: bounds.x1 * px + marginPx,
    y1: bounds.y1 * px + marginPx,
  };
  for (const label of labels) {
    if (label.pin !== undefined || !showsAt(label, px)) continue;
    const { left, right, up, down } = reachOf(label);
    box.x0 = Math.min(box.x0, label.x * px + left - WORDS_MARGIN_PX);
    box.x1 = Math.max(box.x1, label.x * px + right + WORDS_MARGIN_PX);
    box.y0 = Math.min(box.y0, label.y * px + up - WORDS_MARGIN_PX);
    box.y1 = Math.max(box.y1, label.y * px + down + WORDS_MARGIN_PX);
  }
  return box;
}

const fitted = new WeakMap<SceneView['labels'], { view: SceneView; region: Rect; camera: Camera }>();

/** The camera that shows all of a view's bounds, and every word that shows at that zoom. */
function fitWords(view: SceneView, region: Rect): Camera {
  const known = fitted.get(view.labels);
  if (known?.region === region && sameBounds(known.view, view)) return known.camera;
  const camera = searchFit(view, region);
  fitted.set(view.labels, { view, region, camera });
  return camera;
}

function searchFit(view: SceneView, region: Rect): Camera {
  const most = fitBounds(view.bounds, region, WORDS_MARGIN_PX);
  for (let px = most.px; px > most.px * LEAST_SHARE; px *= ZOOM_STEP) {
    const box = extentAt(view, px, WORDS_MARGIN_PX);
    if (box.x1 - box.x0 <= region.width && box.y1 - box.y0 <= region.height)
      return { x: (box.x0 + box.x1) / 2 / px, y: (box.y0 + box.y1) / 2 / px, px };
  }
  return fitBounds(view.bounds, region, FIT_MARGIN_PX);
}

/** The camera a view asks for. */
export function wantedCamera(view: SceneView, region: Rect): Camera {
  const whole = view.id === 'whole' ? fitWords(view, region) : fitBounds(view.bounds, region, FIT_MARGIN_PX);
  return { x: view.centre?.x ?? whole.x, y: view.centre?.y ?? whole.y, px: view.px ?? whole.px };
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

/** Zoomed by hand. */
export function zoomed(looking: Looking, view: SceneView, region: Rect, zoom: Zoom): Looking {
  const { camera } = looking;
  const nearer = zoomAbout({ camera, region }, zoom, leastPx(view, region));
  const kept = keepOver(nearer, view.bounds);
  return {
    camera: view.id === 'close' ? { ...kept, y: camera.y } : kept,
    panned: true,
    zoomed: true,
  };
}
