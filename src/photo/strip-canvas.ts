/** The edge straightened and enlarged, with its marks: a tap on a V marks it, a tap below takes its mark away. */
import { alongOf, lineOf, nearestMark, openStretch } from './counting.ts';
import { outlined, type Paper, paperOf } from './paper.ts';
import { type Acts, heldLeft, pitchIn, reachOf, type View, zoomOf } from './view.ts';

/** Height of the row below the strip, in which marks are taken away. */
const flagRow = 44;

type Drag = { id: number; x: number; left: number; isMoved: boolean };

export type StripCanvas = {
  draw(canvas: HTMLCanvasElement, view: View, colours: { flag: string; ground: string; ink: string }): void;
  down(event: PointerEvent, view: View): void;
  move(event: PointerEvent, view: View, acts: Acts): void;
  up(event: PointerEvent, view: View, acts: Acts): void;
  cancel(): void;
  key(event: KeyboardEvent, view: View, acts: Acts): void;
};

export function stripCanvas(): StripCanvas {
  let drag: Drag | null = null;
  return {
    draw: (canvas, view, colours) => {
      const paper = paperOf(canvas);
      if (paper && lineOf(view.counting.now)) paint(paper, view, colours);
    },
    down: (event, view) => {
      if (drag) return;
      const canvas = event.currentTarget as HTMLCanvasElement;
      canvas.setPointerCapture(event.pointerId);
      drag = {
        id: event.pointerId,
        x: event.clientX,
        left: heldLeft(view, view.left, canvas.clientWidth),
        isMoved: false,
      };
    },
    move: (event, view, { change }) => {
      if (drag?.id !== event.pointerId) return;
      const by = event.clientX - drag.x;
      drag.isMoved ||= Math.abs(by) > 8;
      const { clientWidth } = event.currentTarget as HTMLCanvasElement;
      if (drag.isMoved) change({ left: heldLeft(view, drag.left - by / zoomOf(view), clientWidth) });
    },
    up: (event, view, { act, change }) => {
      if (drag?.id !== event.pointerId) return;
      const { isMoved, left } = drag;
      drag = null;
      if (isMoved) return;
      const canvas = event.currentTarget as HTMLCanvasElement;
      const box = canvas.getBoundingClientRect();
      const along = left + (event.clientX - box.left) / zoomOf(view);
      const isBelow = event.clientY - box.top > canvas.clientHeight - flagRow;
      change({ place: along, left });
      act(
        isBelow
          ? { type: 'UNMARK', along, reach: pitchIn(view) / 2 }
          : { type: 'MARK', along, reach: reachOf(view) },
      );
    },
    cancel: () => {
      drag = null;
    },
    key: pressed,
  };
}

function pressed(event: KeyboardEvent, view: View, { act, change }: Acts): void {
  if (event.ctrlKey || event.metaKey || event.altKey) return;
  const { now } = view.counting;
  const length = lineOf(now)?.length ?? 0;
  const { clientWidth } = event.currentTarget as HTMLCanvasElement;
  const go = (to: number): void => {
    const place = Math.min(length, Math.max(0, to));
    const shown = clientWidth / zoomOf(view);
    const left = heldLeft(view, view.left, clientWidth);
    const isSeen = place > left + shown * 0.15 && place < left + shown * 0.85;
    change({ place, left: heldLeft(view, isSeen ? left : place - shown / 2, clientWidth) });
  };
  const marks = alongOf(now);
  switch (event.key) {
    case 'ArrowLeft':
    case 'ArrowRight': {
      const isOn = event.key === 'ArrowRight';
      const near = pitchIn(view) / 50;
      const next = isOn
        ? marks.find((mark) => mark > view.place + near)
        : marks.findLast((mark) => mark < view.place - near);
      if (event.shiftKey) go(next ?? (isOn ? length : 0));
      else go(view.place + (pitchIn(view) / 8) * (isOn ? 1 : -1));
      break;
    }
    case 'Home':
      go(0);
      break;
    case 'End':
      go(length);
      break;
    case 'Enter':
    case ' ':
      act({ type: 'MARK', along: view.place, reach: reachOf(view) });
      break;
    case 'Delete':
    case 'Backspace':
      act({ type: 'UNMARK', along: view.place, reach: pitchIn(view) / 2 });
      break;
    default:
      return;
  }
  event.preventDefault();
}

/** The mark at the place that keys are at: its number from 1. */
export function markAtPlace(view: View): { number: number; isProposed: boolean } | null {
  const near = nearestMark(view.counting.now, { along: view.place, reach: pitchIn(view) / 4 });
  const mark = view.counting.now.marks[near];
  return mark ? { number: near + 1, isProposed: mark.isProposed } : null;
}

function paint(paper: Paper, view: View, colours: { flag: string; ground: string; ink: string }): void {
  const { context, width, height } = paper;
  const zoom = zoomOf(view);
  const left = heldLeft(view, view.left, width);
  const tall = height - flagRow;
  context.fillStyle = colours.ground;
  context.fillRect(0, 0, width, height);
  const { strip } = view;
  if (strip) {
    const from = strip.half - tall / zoom / 2;
    context.imageSmoothingQuality = 'high';
    context.drawImage(
      strip.picture,
      left / strip.step,
      from,
      width / zoom / strip.step,
      tall / zoom,
      0,
      0,
      width,
      tall,
    );
  }
  const at = (along: number): number => (along - left) * zoom;
  const stretch = openStretch(view.counting.now);
  const places = alongOf(view.counting.now);
  if (stretch) {
    const [from, to] = [
      at(places[stretch.from] ?? 0) - pitchIn(view) * zoom * 0.5,
      at(places[stretch.to] ?? 0) + pitchIn(view) * zoom * 0.5,
    ];
    outlined(context, 2, () => context.rect(from, 2, to - from, tall - 4));
  }
  context.textAlign = 'center';
  context.textBaseline = 'middle';
  view.counting.now.marks.forEach((mark, i) => {
    const x = at(places[i] ?? 0);
    if (x < -30 || x > width + 30) return;
    if (mark.isProposed) context.setLineDash([4, 4]);
    outlined(context, mark.isProposed ? 2 : 3, () => {
      context.moveTo(x, tall * 0.62);
      context.lineTo(x, tall);
    });
    context.setLineDash([]);
    paintFlag(paper, { x, y: tall + flagRow / 2, number: i + 1, isProposed: mark.isProposed }, colours);
  });
  const x = at(view.place);
  outlined(context, 1.5, () => {
    context.moveTo(x, 0);
    context.lineTo(x, 14);
  });
}

/** A full disc for a mark, a ring of dashes for a proposal; every tenth with its number. */
function paintFlag(
  { context }: Paper,
  { x, y, number, isProposed }: { x: number; y: number; number: number; isProposed: boolean },
  { flag, ground, ink }: { flag: string; ground: string; ink: string },
): void {
  const isTenth = number % 10 === 0;
  context.beginPath();
  context.arc(x, y, isTenth ? 17 : 8, 0, 7);
  context.fillStyle = isProposed ? ground : flag;
  context.fill();
  context.strokeStyle = isProposed ? ink : flag;
  context.lineWidth = 2;
  context.setLineDash(isProposed ? [3, 3] : []);
  context.stroke();
  context.setLineDash([]);
  if (!isTenth) return;
  context.font = `600 16px ${getComputedStyle(context.canvas).fontFamily}`;
  context.fillStyle = isProposed ? ink : ground;
  context.fillText(`${number}`, x, y + 1);
}
