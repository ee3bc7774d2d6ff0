/**
 * The band that the yarn of a panel takes, and whether words stand clear of it.
 *
 * Words keep their size in CSS px, so in the world they shrink towards their place as the view zooms in: the zooms
 * are tried from the largest down.
 */
/** A box of CSS px about a place in the world, shown within a range of zooms (CSS px a stitch). */
export type Taken = {
  x: number;
  y: number;
  left: number;
  right: number;
  up: number;
  down: number;
  from: number;
  to: number;
};

/** Closed lines, x, y pairs: no yarn lies outside the one, nor inside the other. */
export type Yarn = { outer: Float32Array; inner: Float32Array };

type Box = { x0: number; y0: number; x1: number; y1: number };

/** Zooms between which words are tried, CSS px a stitch, and how close to each other. */
const ZOOMS = { least: 0.02, most: 96, step: 1.3 };

/** The zoom from which a box stands clear of the yarn; Infinity where it never does. */
export function clearOfYarn(yarn: Yarn, box: Taken): number {
  const isClear = (zoom: number) => standsClear(yarn, boxAt(box, zoom));
  const least = Math.max(box.from, ZOOMS.least);
  if (!isClear(ZOOMS.most)) return Number.POSITIVE_INFINITY;
  let high = ZOOMS.most;
  while (high > least && isClear(Math.max(least, high / ZOOMS.step))) high /= ZOOMS.step;
  if (high <= least) return box.from;
  let low = Math.max(least, high / ZOOMS.step);
  for (let turn = 0; turn < 6; turn++) {
    const middle = (low + high) / 2;
    if (isClear(middle)) high = middle;
    else low = middle;
  }
  return high;
}

const boxAt = ({ x, y, left, right, up, down }: Taken, zoom: number): Box => ({
  x0: x + left / zoom,
  x1: x + right / zoom,
  y0: y + up / zoom,
  y1: y + down / zoom,
});

function standsClear({ outer, inner }: Yarn, box: Box): boolean {
  const x = (box.x0 + box.x1) / 2;
  const y = (box.y0 + box.y1) / 2;
  if (!isWithin(outer, x, y)) return !crosses(outer, box);
  return isWithin(inner, x, y) && !crosses(inner, box);
}

function isWithin(line: ArrayLike<number>, x: number, y: number): boolean {
  let within = false;
  for (let i = 0, j = line.length - 2; i < line.length; j = i, i += 2) {
    const ax = line[j]!;
    const ay = line[j + 1]!;
    const bx = line[i]!;
    const by = line[i + 1]!;
    if (ay > y !== by > y && x < ax + ((bx - ax) * (y - ay)) / (by - ay)) within = !within;
  }
  return within;
}

/** Whether any piece of a closed line comes into a box. */
function crosses(line: ArrayLike<number>, box: Box): boolean {
  for (let i = 0, j = line.length - 2; i < line.length; j = i, i += 2)
    if (pieceCrosses(box, line, j, i)) return true;
  return false;
}

/**
 * Whether the piece of a line from the point at index `start` to the one at `end` comes into a box. Liang and Barsky:
 * the share of it that lies in the box is not empty. No lists are made here: it is asked often.
 */
function pieceCrosses(box: Box, line: ArrayLike<number>, start: number, end: number): boolean {
  const x = line[start]!;
  const y = line[start + 1]!;
  const dx = line[end]! - x;
  const dy = line[end + 1]! - y;
  let [from, to] = [0, 1];
  for (let edge = 0; edge < 4; edge++) {
    const way = edge === 0 ? -dx : edge === 1 ? dx : edge === 2 ? -dy : dy;
    const room = edge === 0 ? x - box.x0 : edge === 1 ? box.x1 - x : edge === 2 ? y - box.y0 : box.y1 - y;
    if (way === 0) {
      if (room < 0) return false;
    } else if (way < 0) from = Math.max(from, room / way);
    else to = Math.min(to, room / way);
    if (from > to) return false;
  }
  return true;
}
