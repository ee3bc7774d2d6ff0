/**
 * Finding places for words: never on yarn, never on each other, whatever the zoom.
 *
 * Words keep their size in CSS px while their places move apart as the view zooms in. Two labels overlap in one
 * range of zooms; what they leave free goes to the best way of saying it that has room there.
 */
import { type Label, reachOf, type Sign } from '../../table/draw-list.ts';
import { clearOfYarn, type Taken, type Yarn } from './yarn.ts';

/** Words that stand or fall together, in the ways they may be said, best first: the next where zoomed out further. */
export type Item = {
  places: readonly (readonly Label[])[];
  /** The last way of saying it is kept free by those who choose before. */
  must?: true;
};

const takenBy = (label: Label): Taken => ({
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
    const [tipX, tipY] = tipOf(sign);
    const box = {
      left: Math.min(-across, tipX - HALF_TIP),
      right: Math.max(across, tipX + HALF_TIP),
      up: Math.min(-down, tipY - HALF_TIP),
      down: Math.max(down, tipY + HALF_TIP),
    };
    return [
      { x: sign.x, y: sign.y, ...box, from: sign.minPx ?? 0, to: sign.maxPx ?? Number.POSITIVE_INFINITY },
    ];
  });
}

/** CSS px from a ring's edge to the tip of an arrow that leaves it, and half the breadth of that tip. */
const ARROW = 28;
const HALF_TIP = 10;

/** Where the arrow that leaves a ring ends, in CSS px from the ring's middle. */
function tipOf(sign: Sign): [number, number] {
  if (sign.kind !== 'ring' || sign.towards === undefined) return [0, 0];
  const far = sign.px + ARROW;
  return [far * Math.cos(sign.towards), far * Math.sin(sign.towards)];
}

/** Zooms at which `by * zoom` lies between two numbers. */
function zoomsBetween(by: number, low: number, high: number): [number, number] {
  if (Math.abs(by) < 1e-9) return low < 0 && high > 0 ? [0, Number.POSITIVE_INFINITY] : [1, 0];
  const [a, b] = [low / by, high / by];
  return [Math.min(a, b), Math.max(a, b)];
}

/** Zooms from one to another. */
type Zooms = readonly [from: number, to: number];

/** The zooms at which two boxes overlap; empty where the first is above the last. */
function overlapOf(box: Taken, other: Taken): Zooms {
  // They overlap while other - box lies between these, in CSS px.
  const across = zoomsBetween(other.x - box.x, box.left - other.right, box.right - other.left);
  const down = zoomsBetween(other.y - box.y, box.up - other.down, box.down - other.up);
  return [Math.max(across[0], down[0], other.from), Math.min(across[1], down[1], other.to)];
}

/** What the blocked zooms leave, ascending. */
function freeOf(blocked: readonly Zooms[]): Zooms[] {
  const free: Zooms[] = [];
  let from = 0;
  for (const [low, high] of [...blocked].sort((one, other) => one[0] - other[0])) {
    if (low - HAIR > from) free.push([from, low - HAIR]);
    from = Math.max(from, high + HAIR);
  }
  if (from < MOST_ZOOM) free.push([from, Number.POSITIVE_INFINITY]);
  return free;
}

/** Zooms closer than this are one, and no view is zoomed in further than that. */
const HAIR = 1e-4;
const MOST_ZOOM = 96;

/** Labels of the items, earlier items first to choose; where there is no room for any way of saying it, nothing is said. */
export function placeLabels(
  items: readonly Item[],
  yarn: readonly Yarn[],
  signs: readonly Taken[] = [],
): Label[] {
  const taken = [...signs];
  const placed: Label[] = [];
  const blockedFor = (box: Taken, later: readonly Taken[]): Zooms[] => [
    [0, Math.max(box.from, ...yarn.map((one) => clearOfYarn(one, box)))],
    ...[...taken, ...later].map((other) => overlapOf(box, other)).filter(([from, to]) => from < to),
    ...(Number.isFinite(box.to) ? [[box.to, Number.POSITIVE_INFINITY] as const] : []),
  ];
  items.forEach(({ places }, turnOfItem) => {
    const told: Zooms[] = [];
    const own: Label[] = [];
    places.forEach((labels, turn) => {
      if (labels.length === 0) return;
      // The shortest way asks nobody to give way.
      const later = turn === places.length - 1 ? [] : items.slice(turnOfItem + 1).flatMap(reservedBy);
      const free = freeOf([...told, ...labels.flatMap((label) => blockedFor(takenBy(label), later))]);
      free.forEach((zooms, part) => {
        const suffix = turn + part === 0 ? '' : `.${turn}${part === 0 ? '' : `.${part}`}`;
        own.push(...labels.map((label) => shownAt(label, `${label.key}${suffix}`, zooms)));
        told.push(zooms);
      });
    });
    placed.push(...own);
    taken.push(...own.map(takenBy));
  });
  return placed;
}

const reservedBy = ({ places, must }: Item): Taken[] => (must ? (places.at(-1) ?? []).map(takenBy) : []);

const shownAt = (label: Label, key: string, [from, to]: Zooms): Label => ({
  ...label,
  key,
  ...(from > HAIR ? { minPx: from } : {}),
  ...(Number.isFinite(to) ? { maxPx: to } : {}),
});
