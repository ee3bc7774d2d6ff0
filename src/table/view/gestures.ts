/**
 * What a hand does on a view: drag, pinch, wheel, tap, hover and keys. Everything acts when the hand lifts
 * or can be taken back: a tap that moves is none, Escape undoes a drag.
 */

import type { SceneView } from '../draw-list.ts';
import { contains, middleOf, type Point, type Rect, type Zoom } from './camera.ts';

type ViewId = SceneView['id'];

/** What each gesture on a view does. */
export type Gestures = {
  pan(view: ViewId, dx: number, dy: number): void;
  /** False where it is zoomed as far as it goes. */
  zoom(view: ViewId, zoom: Zoom): boolean;
  fit(view: ViewId): void;
  /** A tap, in CSS px within the host. */
  choose(view: ViewId, at: Point): void;
  /** Null when the pointer has left. */
  point(view: ViewId, at: Point | null): void;
  /** A drag begins; what `cancel` goes back to. */
  begin(view: ViewId): void;
  cancel(view: ViewId): void;
};

/** CSS px a pointer may wander and still tap. */
const TAP_SLACK_PX = 7;
/** `deltaMode` of a wheel that counts lines, and what a line is taken for. */
const LINES = 1;
const LINE_PX = 16;
const KEY_PAN_PX = 72;
const KEY_ZOOM = 1.25;

/** Keys on a focused view, and what they do; a list of keys for people reads from here. */
const TABLE_KEYS = {
  ArrowLeft: [KEY_PAN_PX, 0],
  ArrowRight: [-KEY_PAN_PX, 0],
  ArrowUp: [0, KEY_PAN_PX],
  ArrowDown: [0, -KEY_PAN_PX],
} as const satisfies Record<string, readonly [dx: number, dy: number]>;

/** Listens on one pad; returns what stops it. `region` tells where the pad lies within the host. */
export function listen(pad: HTMLElement, view: ViewId, region: () => Rect, gestures: Gestures): () => void {
  const stop = new AbortController();
  const { signal } = stop;
  const fingers = new Map<number, Point>();
  let start: Point | null = null;
  let moved = false;

  const pointOf = (event: MouseEvent): Point => {
    const box = pad.getBoundingClientRect();
    const { x, y } = region();
    return { x: event.clientX - box.left + x, y: event.clientY - box.top + y };
  };

  const end = () => {
    start = null;
    moved = false;
  };

  pad.addEventListener(
    'pointerdown',
    (event) => {
      if (event.button !== 0) return;
      pad.setPointerCapture(event.pointerId);
      const at = pointOf(event);
      fingers.set(event.pointerId, at);
      if (fingers.size === 1) {
        start = at;
        moved = false;
        gestures.begin(view);
      } else {
        moved = true;
      }
    },
    { signal },
  );

  pad.addEventListener(
    'pointermove',
    (event) => {
      const at = pointOf(event);
      const last = fingers.get(event.pointerId);
      if (last === undefined) {
        if (event.pointerType !== 'touch') gestures.point(view, at);
        return;
      }
      if (start !== null && !moved && Math.hypot(at.x - start.x, at.y - start.y) > TAP_SLACK_PX) moved = true;
      if (!moved) return;
      const before = spread(fingers);
      fingers.set(event.pointerId, at);
      const after = spread(fingers);
      if (start === null) return;
      gestures.pan(view, after.middle.x - before.middle.x, after.middle.y - before.middle.y);
      if (fingers.size > 1 && before.size > 0)
        gestures.zoom(view, { factor: after.size / before.size, about: after.middle });
    },
    { signal },
  );

  pad.addEventListener(
    'pointerup',
    (event) => {
      if (!fingers.delete(event.pointerId)) return;
      const tapped = start !== null && !moved && fingers.size === 0;
      if (tapped) {
        const at = pointOf(event);
        if (contains(region(), at)) gestures.choose(view, at);
      }
      if (fingers.size === 0) end();
    },
    { signal },
  );

  pad.addEventListener(
    'pointercancel',
    (event) => {
      if (!fingers.delete(event.pointerId)) return;
      // The browser takes the hand for scrolling: what it moved until then was not meant.
      if (start !== null && moved) gestures.cancel(view);
      start = null;
      if (fingers.size === 0) end();
    },
    { signal },
  );

  pad.addEventListener('pointerleave', () => fingers.size === 0 && gestures.point(view, null), { signal });

  pad.addEventListener(
    'wheel',
    (event) => {
      if (!isMeant(event, pad)) return;
      const unit = event.deltaMode === LINES ? LINE_PX : 1;
      const [dx, dy] = [event.deltaX * unit, event.deltaY * unit];
      if (event.shiftKey || Math.abs(dx) > Math.abs(dy)) {
        event.preventDefault();
        gestures.pan(view, -(dx || dy), 0);
        return;
      }
      // A pinch on a trackpad arrives as a wheel with Ctrl and far smaller steps.
      const factor = Math.exp(-dy * (event.ctrlKey ? 0.01 : 0.0016));
      const isZoomed = gestures.zoom(view, { factor, about: pointOf(event) });
      // At its limit the page scrolls on, but it is never the page that is zoomed.
      if (isZoomed || event.ctrlKey || event.metaKey) event.preventDefault();
    },
    { signal, passive: false },
  );

  pad.addEventListener(
    'keydown',
    (event) => {
      if (event.ctrlKey || event.metaKey || event.altKey) return;
      if (event.key === 'Escape' && start !== null) {
        start = null;
        moved = true;
        gestures.cancel(view);
        return;
      }
      if (!pressed(event.key, view, region(), gestures)) return;
      event.preventDefault();
      event.stopPropagation();
    },
    { signal },
  );

  return () => stop.abort();
}

/** Whether a wheel is for the drawing: asked for by key or focus, or there is no page to scroll. */
function isMeant(event: WheelEvent, pad: HTMLElement): boolean {
  if (event.ctrlKey || event.metaKey || pad.matches(':focus')) return true;
  const { scrollHeight, clientHeight } = pad.ownerDocument.documentElement;
  return scrollHeight <= clientHeight;
}

/** Acts on a key; true where it means something. */
function pressed(key: string, view: ViewId, region: Rect, gestures: Gestures): boolean {
  const pan = TABLE_KEYS[key as keyof typeof TABLE_KEYS];
  if (pan !== undefined) {
    gestures.pan(view, pan[0], pan[1]);
    return true;
  }
  const about = middleOf(region);
  if (key === '+' || key === '=') gestures.zoom(view, { factor: KEY_ZOOM, about });
  else if (key === '-' || key === '_') gestures.zoom(view, { factor: 1 / KEY_ZOOM, about });
  else if (key === '0') gestures.fit(view);
  else return false;
  return true;
}

/** Middle of the fingers and how far they are apart. */
function spread(fingers: ReadonlyMap<number, Point>): { middle: Point; size: number } {
  const all = [...fingers.values()];
  const [first, second] = all;
  if (first === undefined) return { middle: { x: 0, y: 0 }, size: 0 };
  if (second === undefined) return { middle: first, size: 0 };
  return {
    middle: { x: (first.x + second.x) / 2, y: (first.y + second.y) / 2 },
    size: Math.hypot(first.x - second.x, first.y - second.y),
  };
}
