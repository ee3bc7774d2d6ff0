/**
 * What the maker did on a photo, with its own undo: the line and the marks. Pure; the page is a function of it.
 * Marks are places on the photo, so that they stay where they are when the line is bent.
 */
import { type Line, lineThrough, nearestOn, type Point, pointAt } from './line.ts';

type Mark = Point & {
  /** Nobody has looked it over yet. */
  isProposed: boolean;
};

export type Marking = {
  /** The points that the line goes through, from end to end. */
  through: readonly Point[];
  /** In the order of the line. */
  marks: readonly Mark[];
  /** Up to here the maker looked over what was proposed. */
  lookedTo: Point | null;
  /** Where the stretch that is looked over now ends. */
  openTo: Point | null;
  /** Taps that put something right since what is open was proposed or the stretch before it looked over. */
  righted: number;
};

export type Counting = { now: Marking; past: readonly Marking[]; future: readonly Marking[] };

export type CountingEvent =
  /** An end, while there are fewer than two; then a bend, between the points it lies between. */
  | { type: 'ADD_POINT'; at: Point }
  | { type: 'MOVE_POINT'; point: number; at: Point }
  /** Ends stay: they can only be moved. */
  | { type: 'REMOVE_POINT'; point: number }
  /** A place along the line: moves the mark that is as near as `reach`, else adds one. */
  | { type: 'MARK'; along: number; reach: number }
  /** Takes the nearest mark away, if it is as near as `reach`. */
  | { type: 'UNMARK'; along: number; reach: number }
  | { type: 'PROPOSE'; places: readonly number[] }
  | { type: 'DROP_PROPOSED' }
  /** The first stretch of what is proposed is right. */
  | { type: 'LOOK_OVER' }
  | { type: 'UNDO' }
  | { type: 'REDO' };

/** Proposals that are looked over at once. */
export const stretchSize = 10;

/** Putting a stretch right took as many taps as marking it by hand: the rest is not proposed. */
export const savesNothing = (righted: number, stretch: number): boolean => righted > 0 && righted >= stretch;

const nothingMarked: Marking = { through: [], marks: [], lookedTo: null, openTo: null, righted: 0 };
export const begun = (now: Marking = nothingMarked): Counting => ({ now, past: [], future: [] });

const lines = new WeakMap<readonly Point[], Line>();

/** The line through the points; null until there are two. */
export function lineOf({ through }: Pick<Marking, 'through'>): Line | null {
  if (through.length < 2) return null;
  const known = lines.get(through) ?? lineThrough(through);
  lines.set(through, known);
  return known;
}

const places = new WeakMap<readonly Mark[], { line: Line; along: number[] }>();

/** Where the marks lie along the line, in pixels from its first end. */
export function alongOf(marking: Pick<Marking, 'through' | 'marks'>): readonly number[] {
  const line = lineOf(marking);
  if (!line) return [];
  const known = places.get(marking.marks);
  if (known?.line === line) return known.along;
  const along = marking.marks.map((mark) => nearestOn(line, mark).along);
  places.set(marking.marks, { line, along });
  return along;
}

/** How far it is looked over, in pixels along the line; -1 where it is not. */
export function lookedAlong(marking: Marking): number {
  const line = lineOf(marking);
  return line && marking.lookedTo ? nearestOn(line, marking.lookedTo).along : -1;
}

export type Stretch = {
  /** Indices of its first and its last mark. */
  from: number;
  to: number;
  /** Proposals in it that are still open; what was put right is none any more. */
  open: number;
  /** Marks in it. */
  size: number;
};

/** The stretch that is looked over now; null where nothing is proposed. It stays while marks in it are put right. */
export function openStretch(marking: Marking): Stretch | null {
  const { marks, openTo } = marking;
  const line = lineOf(marking);
  if (!line || !openTo || !marks.some(({ isProposed }) => isProposed)) return null;
  const end = nearestOn(line, openTo).along + 0.5;
  const begin = lookedAlong(marking) + 0.5;
  const along = alongOf(marking);
  const to = along.findLastIndex((place) => place <= end);
  const from = along.findIndex((place) => place > begin);
  if (from < 0 || to < from) return null;
  const inside = marks.slice(from, to + 1);
  return { from, to, open: inside.filter(({ isProposed }) => isProposed).length, size: inside.length };
}

/** Where the next stretch ends, so many proposals on. */
const endOfNext = (marks: readonly Mark[]): Point | null => {
  const proposed = marks.filter(({ isProposed }) => isProposed);
  return proposed[stretchSize - 1] ?? proposed.at(-1) ?? null;
};

export const setCount = ({ marks }: Pick<Marking, 'marks'>): number =>
  marks.filter(({ isProposed }) => !isProposed).length;

/** What an event makes of the counting; the same one where it changes nothing. */
export function afterCounting(counting: Counting, event: CountingEvent): Counting {
  const { now, past, future } = counting;
  if (event.type === 'UNDO') {
    const last = past.at(-1);
    return last ? { now: last, past: past.slice(0, -1), future: [now, ...future] } : counting;
  }
  if (event.type === 'REDO') {
    const [next, ...rest] = future;
    return next ? { now: next, past: [...past, now], future: rest } : counting;
  }
  const next = changed(now, event);
  return next === now ? counting : { now: next, past: [...past, now].slice(-200), future: [] };
}

function changed(now: Marking, event: Exclude<CountingEvent, { type: 'UNDO' | 'REDO' }>): Marking {
  switch (event.type) {
    case 'ADD_POINT':
      return { ...now, through: withPoint(now, event.at) };
    case 'MOVE_POINT':
      return { ...now, through: now.through.map((point, i) => (i === event.point ? event.at : point)) };
    case 'REMOVE_POINT': {
      const isBend = event.point > 0 && event.point < now.through.length - 1;
      return isBend ? { ...now, through: now.through.filter((_, i) => i !== event.point) } : now;
    }
    case 'MARK':
      return marked(now, event);
    case 'UNMARK': {
      const near = nearestMark(now, event);
      return near < 0
        ? now
        : { ...now, marks: now.marks.filter((_, i) => i !== near), righted: now.righted + 1 };
    }
    case 'PROPOSE':
      return proposed(now, event.places);
    case 'DROP_PROPOSED': {
      const set = now.marks.filter(({ isProposed }) => !isProposed);
      return set.length === now.marks.length ? now : { ...now, marks: set, openTo: null, righted: 0 };
    }
    case 'LOOK_OVER':
      return lookedOver(now);
  }
}

function withPoint({ through }: Marking, at: Point): readonly Point[] {
  const line = lineOf({ through });
  if (!line) return [...through, at];
  const { along } = nearestOn(line, at);
  const before = through.findLastIndex((point, i) => i === 0 || nearestOn(line, point).along <= along);
  const next = Math.min(before + 1, through.length - 1);
  return [...through.slice(0, next), at, ...through.slice(next)];
}

/** Index of the nearest mark within reach, or -1. */
export function nearestMark(
  marking: Pick<Marking, 'through' | 'marks'>,
  { along, reach }: { along: number; reach: number },
): number {
  const far = alongOf(marking).map((place) => Math.abs(place - along));
  const least = Math.min(...far);
  return least <= reach ? far.indexOf(least) : -1;
}

/** In the order of the line. */
function sorted(marking: Marking, marks: readonly Mark[]): readonly Mark[] {
  const along = alongOf({ through: marking.through, marks });
  return marks
    .map((mark, i) => ({ mark, at: along[i] ?? 0 }))
    .sort((a, b) => a.at - b.at)
    .map(({ mark }) => mark);
}

function marked(now: Marking, event: { along: number; reach: number }): Marking {
  const line = lineOf(now);
  if (!line) return now;
  const near = nearestMark(now, event);
  const mark: Mark = { ...pointAt(line, Math.min(line.length, Math.max(0, event.along))), isProposed: false };
  return {
    ...now,
    marks: sorted(now, [...now.marks.filter((_, i) => i !== near), mark]),
    righted: now.righted + 1,
  };
}

function proposed(now: Marking, places: readonly number[]): Marking {
  const line = lineOf(now);
  if (!line) return now;
  const set = now.marks.filter(({ isProposed }) => !isProposed);
  const more = places.map((place): Mark => ({ ...pointAt(line, place), isProposed: true }));
  const marks = sorted(now, [...set, ...more]);
  // The maker's own marks from the first on need no look.
  const first = marks.findIndex(({ isProposed }) => isProposed);
  const lookedTo = now.lookedTo ?? marks[first - 1] ?? null;
  return { ...now, marks, lookedTo, openTo: endOfNext(marks), righted: 0 };
}

function lookedOver(now: Marking): Marking {
  const stretch = openStretch(now);
  if (!stretch) return now;
  const marks = now.marks.map((mark, i) => (i <= stretch.to ? { ...mark, isProposed: false } : mark));
  return { ...now, marks, lookedTo: marks[stretch.to] ?? null, openTo: endOfNext(marks), righted: 0 };
}
