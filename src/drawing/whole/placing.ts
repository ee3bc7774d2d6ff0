/**
 * Finding places for words: never on yarn, never on each other, whatever the zoom.
 *
 * Words keep their size in CSS px while their places move apart as the view zooms in. Two labels overlap in one
 * range of zooms at most; a label that finds no free place shows from the zoom at which it has one.
 */
import { type Label, reachOf, type Sign } from '../../table/draw-list.ts';
import { clearOfYarn, type Yarn } from './yarn.ts';

/** Words that stand or fall together, in the ways they may be said, best first: the next where zoomed out further. */
export type Item = { places: readonly (readonly Label[])[] };

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

export const takenBy = (label: Label): Taken => ({
  x: label.x,
  y: label.y,
  ...reachOf(label),
  from: label.minPx ?? 0,
  to: label.maxPx ?? Number.POSITIVE_INFINITY,
});

/** Boxes of signs that words must keep off. */
export function boxesOfSigns(signs: readonly Sign[]): Taken[] {
  return signs.flatMap((sign) => {
    const size = sign.kind === 'ring' ? [sign.px, sign.px] : sign.kind === 'arrow' ? [17, 11] : undefined;
    if (!size || !('x' in sign)) return [];
    const [across, down] = size as [number, number];
    const box = { left: -across, right: across, up: -down, down };
    return [
      { x: sign.x, y: sign.y, ...box, from: sign.minPx ?? 0, to: sign.maxPx ?? Number.POSITIVE_INFINITY },
    ];
  });
}

/** Zooms at which `by * zoom` lies between two numbers. */
function zoomsBetween(by: number, low: number, high: number): [number, number] {
  if (Math.abs(by) < 1e-9) return low < 0 && high > 0 ? [0, Number.POSITIVE_INFINITY] : [1, 0];
  const [a, b] = [low / by, high / by];
  return [Math.min(a, b), Math.max(a, b)];
}

/** The zoom from which a box is clear of one that is taken: its own least if it always is. */
function clearOf(box: Taken, other: Taken): number {
  // They overlap while other - box lies between these, in CSS px.
  const across = zoomsBetween(other.x - box.x, box.left - other.right, box.right - other.left);
  const down = zoomsBetween(other.y - box.y, box.up - other.down, box.down - other.up);
  const first = Math.max(across[0], down[0], box.from, other.from);
  const last = Math.min(across[1], down[1], box.to, other.to);
  return first < last ? last + 1e-4 : box.from;
}

/** Labels of the items, earlier items first to choose; those that never find room are left out. */
export function placeLabels(
  items: readonly Item[],
  yarn: readonly Yarn[],
  signs: readonly Taken[] = [],
): Label[] {
  const taken = [...signs];
  const placed: Label[] = [];
  const leastZoom = (labels: readonly Label[]) => {
    let least = 0;
    const boxes = labels.map(takenBy);
    for (const box of boxes) for (const one of yarn) least = Math.max(least, clearOfYarn(one, box));
    // A box cleared of one may meet the next at a larger zoom: until none is met any more.
    for (let before = -1; before < least && Number.isFinite(least); ) {
      before = least;
      for (const box of boxes)
        for (const other of taken)
          least = Math.max(least, clearOf({ ...box, from: Math.max(box.from, least) }, other));
    }
    return least;
  };
  for (const { places } of items) {
    let below = Number.POSITIVE_INFINITY;
    const own: Label[] = [];
    places.forEach((labels, turn) => {
      const limited = labels.map((label) => limitedTo(label, turn, below));
      const zoom = leastZoom(limited);
      if (!Number.isFinite(zoom) || zoom >= below) return;
      own.push(...limited.map((label) => (zoom > (label.minPx ?? 0) ? { ...label, minPx: zoom } : label)));
      below = Math.max(zoom, ...limited.map(({ minPx }) => minPx ?? 0));
    });
    placed.push(...own);
    taken.push(...own.map(takenBy));
  }
  return placed.filter(({ minPx, maxPx }) => (minPx ?? 0) < (maxPx ?? Number.POSITIVE_INFINITY));
}

/** A way of saying it that shows only below the zoom from which the way before it shows. */
function limitedTo(label: Label, turn: number, below: number): Label {
  const maxPx = Math.min(label.maxPx ?? Number.POSITIVE_INFINITY, below - 1e-4);
  const key = turn === 0 ? label.key : `${label.key}.${turn}`;
  return { ...label, key, ...(Number.isFinite(maxPx) ? { maxPx } : {}) };
}
