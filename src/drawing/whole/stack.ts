/** Lines of words set below each other, and moved so far from a place that they stand wholly on one side of it. */
import { type Label, reachOf, type ToneCode } from '../../table/draw-list.ts';

export type Line = {
  key: string;
  text: string;
  px: number;
  tone: ToneCode;
  bold?: boolean;
  plate?: ToneCode;
};

/** `out`: the way to move, of length 1. */
export type Towards = { x: number; y: number; outX: number; outY: number };

/** CSS px between lines. */
const LEADING = 4;

type Limits = Pick<Label, 'minPx' | 'maxPx'>;

/** Lines about their own middle, centred on a place. */
export function stackAt(lines: readonly Line[], x: number, y: number, limits: Limits = {}): Label[] {
  let down = 0;
  const labels = lines.map((line): Label => {
    const label: Label = { ...line, x, y, align: 'centre', ...limits };
    const { up, down: below } = reachOf(label);
    const dy = down - up;
    down = dy + below + LEADING;
    return { ...label, dy };
  });
  const half = (down - LEADING) / 2;
  return labels.map((label) => ({ ...label, dy: (label.dy ?? 0) - half }));
}

/** The stack with the corner of its box that is nearest to a place so far from it: closer than `stackBeyond` at corners. */
export function stackOffCorner(
  lines: readonly Line[],
  { x, y, outX, outY }: Towards,
  gap: number,
  limits: Limits = {},
): Label[] {
  const stack = stackAt(lines, x, y, limits);
  const { width, height } = sizeOf(stack);
  const across = Math.sign(outX) * (width / 2 + gap * Math.abs(outX));
  const down = Math.sign(outY) * (height / 2 + gap * Math.abs(outY));
  return stack.map((label) => ({ ...label, dx: across, dy: (label.dy ?? 0) + down }));
}

function sizeOf(stack: readonly Label[]): { width: number; height: number } {
  const boxes = stack.map(reachOf);
  return {
    width: Math.max(...boxes.map(({ left, right }) => right - left)),
    height: Math.max(...boxes.map(({ down }) => down)) - Math.min(...boxes.map(({ up }) => up)),
  };
}

/**
 * The stack beyond a place, `gap` CSS px away. It lies wholly behind the line through the place that runs across
 * the way out; so beside a side of a convex panel it touches no yarn, at any zoom.
 */
export function stackBeyond(
  lines: readonly Line[],
  { x, y, outX, outY }: Towards,
  gap: number,
  limits: Limits = {},
): Label[] {
  const stack = stackAt(lines, x, y, limits);
  const { width, height } = sizeOf(stack);
  const far = gap + (Math.abs(outX) * width + Math.abs(outY) * height) / 2;
  return stack.map((label) => ({ ...label, dx: outX * far, dy: (label.dy ?? 0) + outY * far }));
}
