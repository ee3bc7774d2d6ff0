/**
 * Finding places for words so that none covers another, whatever the zoom.
 *
 * Words keep their size in CSS px while their places move apart as the view zooms in. Two labels overlap in one
 * range of zooms at most; a label that finds no free place shows from the zoom at which it has one.
 */
import type { Box, Label, Sign } from '../../table/draw-list.ts';

/** Words that stand or fall together, with the places they may take, best first: the next where zoomed out further. */
export type Item = {
  /** Taken from here on: words that belong to a sign come before it. */
  keepOff?: readonly Taken[];
  places: readonly Label[][];
  /** Shown where the zoom is too small for the words: shorter ones, or the same elsewhere, and so on. */
  otherwise?: readonly Label[];
};

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

/** Widths of a letter as shares of its height, on the generous side. */
const REGULAR = 0.53;
const BOLD = 0.57;
/** A phone's view under a tall verdict, in CSS px: smaller than this nobody sees a whole panel. */
const SMALL_VIEW = { width: 270, height: 160 };

/** CSS px that a view leaves free around its bounds. */
const VIEW_MARGIN = 16;

function boxOfLabel(label: Label): Taken {
  const room = label.plate === undefined ? { x: 2, y: 0 } : { x: label.px * 0.5 + 2, y: label.px * 0.28 + 2 };
  const width = label.text.length * label.px * (label.bold ? BOLD : REGULAR);
  const before = label.align === 'left' ? 0 : label.align === 'right' ? width : width / 2;
  const [dx, dy] = [label.dx ?? 0, label.dy ?? 0];
  const half = label.px * 0.55 + room.y;
  return {
    x: label.x,
    y: label.y,
    left: dx - before - room.x,
    right: dx + width - before + room.x,
    up: dy - half,
    down: dy + half,
    from: label.minPx ?? 0,
    to: label.maxPx ?? Number.POSITIVE_INFINITY,
  };
}

/** Boxes of signs that words must keep off. */
export function boxesOfSigns(signs: readonly Sign[]): Taken[] {
  return signs.flatMap((sign) => {
    const size = sign.kind === 'ring' ? [sign.px, sign.px] : sign.kind === 'arrow' ? [16, 9] : undefined;
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
function clearFrom(box: Taken, other: Taken): number {
  // They overlap while other - box lies between these, in CSS px.
  const across = zoomsBetween(other.x - box.x, box.left - other.right, box.right - other.left);
  const down = zoomsBetween(other.y - box.y, box.up - other.down, box.down - other.up);
  const first = Math.max(across[0], down[0], box.from, other.from);
  const last = Math.min(across[1], down[1], box.to, other.to);
  return first < last ? last + 1e-4 : box.from;
}

/** Labels of the items, earlier items first to choose; those that never find room are left out. */
export function placeLabels(items: readonly Item[], bounds: Box, signs: readonly Taken[] = []): Label[] {
  const usual = Math.min(
    SMALL_VIEW.width / Math.max(1e-6, bounds.x1 - bounds.x0),
    SMALL_VIEW.height / Math.max(1e-6, bounds.y1 - bounds.y0),
  );
  const taken = [...signs];
  const placed: Label[] = [];
  const leastZoom = (labels: readonly Label[]) => {
    let least = 0;
    for (const label of labels) {
      const box = boxOfLabel(label);
      least = Math.max(least, box.from);
      // A box cleared of one may meet the next at a larger zoom; ranges are few, so twice is enough.
      for (let turn = 0; turn < 2; turn++) {
        for (const other of taken) least = Math.max(least, clearFrom({ ...box, from: least }, other));
      }
    }
    return least;
  };
  const put = (labels: readonly Label[], least: number) => {
    for (const label of labels) {
      if (!Number.isFinite(least) || least >= (label.maxPx ?? Number.POSITIVE_INFINITY)) continue;
      const shown = least > (label.minPx ?? 0) ? { ...label, minPx: least } : label;
      placed.push(shown);
      taken.push(boxOfLabel(shown));
    }
  };
  for (const { places, otherwise, keepOff } of items) {
    taken.push(...(keepOff ?? []));
    let below = Number.POSITIVE_INFINITY;
    places.forEach((labels, turn) => {
      if (below <= usual) return;
      const limited = turn === 0 ? labels : labels.map((label) => nextPlace(label, turn, below));
      const zoom = Math.max(leastZoom(limited), turn === 0 ? 0 : insideFrom(limited, bounds));
      if (zoom >= below) return;
      put(limited, zoom);
      below = zoom;
    });
    for (const label of otherwise ?? []) {
      const rest = Number.isFinite(below) ? { ...label, maxPx: below - 1e-4 } : label;
      const zoom = leastZoom([rest]);
      if (zoom >= below) continue;
      put([rest], zoom);
      below = zoom;
    }
  }
  return placed;
}

function nextPlace(label: Label, turn: number, below: number): Label {
  const maxPx = Math.min(label.maxPx ?? Number.POSITIVE_INFINITY, below - 1e-4);
  return { ...label, key: `${label.key}.${turn}`, ...(Number.isFinite(maxPx) ? { maxPx } : {}) };
}

/** The zoom from which labels lie within what a view of the usual shape shows. */
function insideFrom(labels: readonly Label[], bounds: Box): number {
  const { width, height } = SMALL_VIEW;
  const half = Math.max(bounds.x1 - bounds.x0, ((bounds.y1 - bounds.y0) * width) / height) / 2;
  const middle = (bounds.x0 + bounds.x1) / 2;
  const zooms = labels.map((label) => {
    const { x, left, right } = boxOfLabel(label);
    const [before, after] = [x - middle + half, middle + half - x];
    const need = (by: number, room: number) =>
      by <= 0 ? 0 : room <= 0 ? Number.POSITIVE_INFINITY : by / room;
    return Math.max(need(-left - VIEW_MARGIN, before), need(right - VIEW_MARGIN, after));
  });
  return Math.max(0, ...zooms);
}
