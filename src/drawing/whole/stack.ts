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

/** A line, or words beside each other on one. */
export type Row = Line | readonly Line[];

/** CSS px between lines, and between words on one. */
const LEADING = 4;
const SPACE = 10;

type Limits = Pick<Label, 'minPx' | 'maxPx'>;

/** Lines about their own middle, centred on a place. */
export function stackAt(rows: readonly Row[], x: number, y: number, limits: Limits = {}): Label[] {
  let down = 0;
  const labels = rows.flatMap((row) => {
    const set = setRow('text' in row ? [row] : row, x, y, limits);
    const up = Math.min(...set.map((label) => reachOf(label).up));
    const dy = down - up;
    down = dy + Math.max(...set.map((label) => reachOf(label).down)) + LEADING;
    return set.map((label) => ({ ...label, dy }));
  });
  const half = (down - LEADING) / 2;
  return labels.map((label) => ({ ...label, dy: label.dy - half }));
}

/** Words beside each other, centred together. */
function setRow(lines: readonly Line[], x: number, y: number, limits: Limits): Label[] {
  let right = 0;
  const labels = lines.map((line): Label & { dx: number } => {
    const label: Label = { ...line, x, y, align: 'centre', ...limits };
    const reach = reachOf(label);
    const dx = right - reach.left;
    right = dx + reach.right + SPACE;
    return { ...label, dx };
  });
  const half = (right - SPACE) / 2;
  return labels.map((label) => ({ ...label, dx: label.dx - half }));
}

/** The stack with the corner of its box that is nearest to a place so far from it: closer than `stackBeyond` at corners. */
export function stackOffCorner(
  lines: readonly Row[],
  { x, y, outX, outY }: Towards,
  gap: number,
  limits: Limits = {},
): Label[] {
  const stack = stackAt(lines, x, y, limits);
  const { width, height } = sizeOf(stack);
  const across = Math.sign(outX) * (width / 2 + gap * Math.abs(outX));
  const down = Math.sign(outY) * (height / 2 + gap * Math.abs(outY));
  return stack.map((label) => ({ ...label, dx: (label.dx ?? 0) + across, dy: (label.dy ?? 0) + down }));
}

function sizeOf(stack: readonly Label[]): { width: number; height: number } {
  const boxes = stack.map(reachOf);
  return {
    width: Math.max(...boxes.map(({ right }) => right)) - Math.min(...boxes.map(({ left }) => left)),
    height: Math.max(...boxes.map(({ down }) => down)) - Math.min(...boxes.map(({ up }) => up)),
  };
}

/**
 * The stack beyond a place, `gap` CSS px away. It lies wholly behind the line through the place that runs across
 * the way out; so beside a side of a convex panel it touches no yarn, at any zoom.
 */
export function stackBeyond(
  lines: readonly Row[],
  { x, y, outX, outY }: Towards,
  gap: number,
  limits: Limits = {},
): Label[] {
  const stack = stackAt(lines, x, y, limits);
  const { width, height } = sizeOf(stack);
  const far = gap + (Math.abs(outX) * width + Math.abs(outY) * height) / 2;
  return stack.map((label) => ({
    ...label,
    dx: (label.dx ?? 0) + outX * far,
    dy: (label.dy ?? 0) + outY * far,
  }));
}
