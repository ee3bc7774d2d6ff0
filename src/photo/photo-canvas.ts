/** The photo with the line on it: its ends, its bends, where the strip shows it, and a magnifier under the finger. */
import { lineOf } from './counting.ts';
import { nearestOn, type Point, pointAt } from './line.ts';
import { gapOn } from './number.ts';
import { outlined, type Paper, paperOf } from './paper.ts';
import { type Acts, heldLeft, type View, zoomOf } from './view.ts';

type Placed = { scale: number; x: number; y: number };

/** How near a finger must be to a point to take it in hand, and to the line to bend it, in pixels of the screen. */
const nearPoint = 24;
const nearLine = 36;
/** A point that is in hand moves slower than the finger: finer than a thumb can. */
const slow = 0.5;
const magnifier = { radius: 58, times: 5 };

/** Where a drag is: the point it moves, or null for a new one. */
type Drag = { id: number; at: Point; point: number | null; from: Point; isMoved: boolean };

export type PhotoCanvas = {
  draw(canvas: HTMLCanvasElement, view: View): void;
  down(event: PointerEvent, view: View): void;
  move(event: PointerEvent, view: View): void;
  up(event: PointerEvent, view: View, acts: Acts): void;
  cancel(): void;
  key(event: KeyboardEvent, view: View, acts: Acts): void;
};

function placedOn({ width, height }: { width: number; height: number }, view: View): Placed {
  const photo = view.photo ?? { width: 1, height: 1 };
  const scale = Math.min(width / photo.width, height / photo.height);
  return { scale, x: (width - photo.width * scale) / 2, y: (height - photo.height * scale) / 2 };
}

/** @param redraw draws the canvas anew while a finger is down */
export function photoCanvas(redraw: () => void): PhotoCanvas {
  let drag: Drag | null = null;

  const pointOf = (event: PointerEvent, view: View): Point => {
    const canvas = event.currentTarget as HTMLCanvasElement;
    const box = canvas.getBoundingClientRect();
    const { scale, x, y } = placedOn({ width: canvas.clientWidth, height: canvas.clientHeight }, view);
    return { x: (event.clientX - box.left - x) / scale, y: (event.clientY - box.top - y) / scale };
  };
  const scaleAt = (event: Event, view: View): number => {
    const { clientWidth: width, clientHeight: height } = event.currentTarget as HTMLCanvasElement;
    return placedOn({ width, height }, view).scale;
  };
  /** The points with the one that is being dragged where the finger has it. */
  const throughNow = (view: View): readonly Point[] => {
    const { through } = view.counting.now;
    if (!drag) return through;
    if (drag.point !== null) return through.map((point, i) => (i === drag?.point ? drag.at : point));
    return through.length < 2 ? [...through, drag.at] : through;
  };

  return {
    draw: (canvas, view) => {
      const paper = paperOf(canvas);
      if (!paper || !view.photo) return;
      const placed = placedOn(paper, view);
      paint(paper, view, { placed, through: throughNow(view) });
      if (drag) magnify(paper, view, { placed, at: drag.at });
    },
    down: (event, view) => {
      if (!view.photo || drag) return;
      const canvas = event.currentTarget as HTMLCanvasElement;
      canvas.setPointerCapture(event.pointerId);
      const finger = pointOf(event, view);
      const { through } = view.counting.now;
      const far = through.map((point) => Math.hypot(point.x - finger.x, point.y - finger.y));
      const least = Math.min(...far);
      const isNear = least * scaleAt(event, view) <= nearPoint;
      const point = isNear ? far.indexOf(least) : null;
      const at = point === null ? finger : (through[point] as Point);
      drag = { id: event.pointerId, at, point, from: finger, isMoved: false };
      redraw();
    },
    move: (event, view) => {
      if (drag?.id !== event.pointerId) return;
      const finger = pointOf(event, view);
      const by = { x: finger.x - drag.from.x, y: finger.y - drag.from.y };
      const isMoved = drag.isMoved || Math.hypot(by.x, by.y) * scaleAt(event, view) > 3;
      const rate = drag.point === null ? 1 : slow;
      const at = isMoved ? { x: drag.at.x + by.x * rate, y: drag.at.y + by.y * rate } : drag.at;
      drag = { ...drag, at: inside(at, view), from: isMoved ? finger : drag.from, isMoved };
      redraw();
    },
    up: (event, view, acts) => {
      if (drag?.id !== event.pointerId) return;
      const { at, point, isMoved, from } = drag;
      const scale = scaleAt(event, view);
      drag = null;
      const line = lineOf(view.counting.now);
      if (point !== null) {
        if (isMoved) acts.act({ type: 'MOVE_POINT', point, at });
        acts.change({ inHand: point });
      } else if (!line) acts.act({ type: 'ADD_POINT', at: inside(at, view) });
      else if (nearestOn(line, from).off * scale <= nearLine || nearestOn(line, at).off * scale <= nearLine)
        acts.act({ type: 'ADD_POINT', at: inside(at, view) });
      else redraw();
    },
    cancel: () => {
      drag = null;
      redraw();
    },
    key: (event, view, acts) => pressed(event, view, acts),
  };
}

const inside = ({ x, y }: Point, { photo }: View): Point => ({
  x: Math.min(photo?.width ?? 0, Math.max(0, x)),
  y: Math.min(photo?.height ?? 0, Math.max(0, y)),
});

const arrows: Record<string, [number, number]> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

function pressed(event: KeyboardEvent, view: View, { act, change }: Acts): void {
  const { photo, inHand, counting } = view;
  if (!photo || event.ctrlKey || event.metaKey || event.altKey) return;
  const { through } = counting.now;
  const cross = view.cross ?? { x: photo.width / 2, y: photo.height / 2 };
  const arrow = arrows[event.key];
  const held = inHand === null ? undefined : through[inHand];
  if (arrow) {
    const step = (Math.max(photo.width, photo.height) / 600) * (event.shiftKey ? 12 : 1);
    const from = held ?? cross;
    const at = inside({ x: from.x + arrow[0] * step, y: from.y + arrow[1] * step }, view);
    if (held && inHand !== null) act({ type: 'MOVE_POINT', point: inHand, at });
    else change({ cross: at });
  } else if (event.key === 'Enter' || event.key === ' ') {
    if (held) change({ inHand: null, cross: held });
    else act({ type: 'ADD_POINT', at: cross });
  } else if (event.key === 'PageDown' || event.key === 'PageUp') {
    const by = event.key === 'PageDown' ? 1 : -1;
    const count = through.length;
    if (count > 0)
      change({ inHand: inHand === null ? (by > 0 ? 0 : count - 1) : (inHand + by + count) % count });
  } else if ((event.key === 'Delete' || event.key === 'Backspace') && inHand !== null) {
    act({ type: 'REMOVE_POINT', point: inHand });
  } else return;
  event.preventDefault();
}

function paint(
  paper: Paper,
  view: View,
  { placed, through }: { placed: Placed; through: readonly Point[] },
): void {
  const { context } = paper;
  const { photo, inHand } = view;
  if (!photo) return;
  const on = ({ x, y }: Point): [number, number] => [
    placed.x + x * placed.scale,
    placed.y + y * placed.scale,
  ];
  context.drawImage(
    photo.picture,
    placed.x,
    placed.y,
    photo.width * placed.scale,
    photo.height * placed.scale,
  );
  const line = lineOf({ through });
  if (line) {
    const every = Math.max(1, Math.round(4 / placed.scale));
    if (gapOn(view) !== 0)
      paintGap(context, () => {
        for (let i = 0; i < line.points.length; i += every) context.lineTo(...on(line.points[i] as Point));
      });
    outlined(context, 2, () => {
      for (let i = 0; i < line.points.length; i += every) context.lineTo(...on(line.points[i] as Point));
      context.lineTo(...on(pointAt(line, line.length)));
    });
    // Where the strip shows it.
    const shown = paper.width / zoomOf(view);
    const from = Math.max(0, heldLeft(view, view.left, paper.width));
    const to = Math.min(line.length, from + shown);
    outlined(context, 6, () => {
      for (let at = from; at <= to; at += every) context.lineTo(...on(pointAt(line, at)));
    });
  }
  through.forEach((point, i) => {
    const isEnd = i === 0 || i === through.length - 1;
    outlined(context, inHand === i ? 5 : 3, () => {
      const [x, y] = on(point);
      if (isEnd) context.rect(x - 8, y - 8, 16, 16);
      else context.arc(x, y, 8, 0, 7);
    });
  });
  if (view.cross && inHand === null) {
    const [x, y] = on(view.cross);
    outlined(context, 2, () => {
      context.moveTo(x - 12, y);
      context.lineTo(x + 12, y);
      context.moveTo(x, y - 12);
      context.lineTo(x, y + 12);
    });
  }
}

/** All along the line, for nobody knows where on it. */
function paintGap(context: CanvasRenderingContext2D, along: () => void): void {
  context.save();
  context.beginPath();
  along();
  context.strokeStyle = getComputedStyle(context.canvas).getPropertyValue('--gap');
  context.globalAlpha = 0.5;
  context.lineWidth = 26;
  context.lineCap = 'round';
  context.stroke();
  context.restore();
}

/** What is under the finger, larger, in the corner that the finger does not cover. */
function magnify(paper: Paper, view: View, { placed, at }: { placed: Placed; at: Point }): void {
  const { context, width } = paper;
  const { photo } = view;
  if (!photo) return;
  const { radius, times } = magnifier;
  const isLeft = placed.x + at.x * placed.scale > width / 2;
  const middle = { x: isLeft ? radius + 8 : width - radius - 8, y: radius + 8 };
  const scale = placed.scale * times;
  context.save();
  context.beginPath();
  context.arc(middle.x, middle.y, radius, 0, 7);
  context.clip();
  context.fillStyle = '#14181b';
  context.fillRect(middle.x - radius, middle.y - radius, radius * 2, radius * 2);
  context.drawImage(
    photo.picture,
    middle.x - at.x * scale,
    middle.y - at.y * scale,
    photo.width * scale,
    photo.height * scale,
  );
  outlined(context, 1.5, () => {
    context.moveTo(middle.x - 14, middle.y);
    context.lineTo(middle.x + 14, middle.y);
    context.moveTo(middle.x, middle.y - 14);
    context.lineTo(middle.x, middle.y + 14);
  });
  context.restore();
  outlined(context, 2, () => context.arc(middle.x, middle.y, radius, 0, 7));
}
