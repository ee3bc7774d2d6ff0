/**
 * Proposes where the other Vs of a side are, from a few that the maker marked: the strip is stretched so that the Vs
 * are equally wide for some drift of the distance (perspective), each place is compared with the marked ones, and the
 * best chain of places is taken. The drift whose chain looks most alike wins. Nothing here knows what a V looks like:
 * only the maker's own marks do. Where too little looks like them, the marks only go on at their distance.
 */
import { bestChain, type Chain } from './chain.ts';
import { evened, likeness, type Sample, sampleOf } from './likeness.ts';
import type { Line } from './line.ts';
import { even, type Pixels, type Strip, straightened } from './strip.ts';

export type Asked = {
  pixels: Pixels;
  line: Line;
  /** Marks of the maker, in pixels along the line, in order: at least two. */
  marks: readonly number[];
  /** Up to here all is looked over, in pixels along the line: nothing is proposed before it. */
  lookedTo: number;
};

export type Proposed = {
  /** Pixels along the line, in order. */
  places: number[];
  /** Whether they look like the marked ones; else they only go on at the distance of the last marks. */
  isAlike: boolean;
};

/**
 * Places whose mean likeness is less than this are not proposed as alike. Pictures with no V in them reach up to 0.35.
 * On rendered edges below it, marks at an even distance took fewer taps on nearly one in two, above it on one in ninety:
 * `npm run photos:report` counts them anew.
 */
const leastAlike = 0.35;

/** Columns from V to V, once stretched. */
const columnsEach = 16;
/** How far across is looked, in distances from V to V on each side of the line, and in how many rows. */
const rowsEach = 1;
const rowsHalf = 12;
/** How far beyond the ends of the line is looked, in distances from V to V. */
const margin = 2;
/** How far from the line's ends the outermost Vs may be. */
const slack = 0.45;
/** Distances at the far end of the line, as parts of those at its near end. */
const drifts = [0.5, 0.57, 0.65, 0.74, 0.82, 0.88, 0.94, 1, 1.06, 1.13, 1.22, 1.35, 1.54, 1.75, 2];

type Stretched = { strip: Strip; columnOf(along: number): number; alongOf(column: number): number };

type Tried = { chain: Chain; strip: Stretched; like: Float32Array; score: number; drift: number };

/** Tells how much is done, from 0 to 1, after every part; returns what it proposes, or null from fewer than two marks. */
export function* propose(asked: Asked): Generator<number, Proposed | null> {
  if (asked.marks.length < 2) return null;
  const base = baseOf(asked);
  let best: Tried | null = null;
  let done = 0;
  const all = drifts.length + 4;
  for (const drift of drifts) {
    best = better(best, tryDrift(asked, base, { drift }));
    yield ++done / all;
  }
  // Between the best and its neighbours; then once more with the best places beside the maker's.
  const around = best?.drift ?? 1;
  for (const drift of [around * 0.97, around * 1.03]) {
    best = better(best, tryDrift(asked, base, { drift }));
    yield ++done / all;
  }
  for (let again = 0; best && again < 2; again++) {
    best = tryDrift(asked, base, { drift: best.drift, learnt: best }) ?? best;
    yield ++done / all;
  }
  const found = best && foundIn(best, asked);
  if (found && found.alike >= leastAlike) return { places: found.places, isAlike: true };
  return { places: evenlyOn(asked), isAlike: false };
}

/**
 * On from what is looked over at the distance of the last ten marks, shared out evenly up to the next mark and up to
 * the end of the line. Pixels along the line.
 */
export function evenlyOn({ line, marks, lookedTo }: Pick<Asked, 'line' | 'marks' | 'lookedTo'>): number[] {
  const open = Math.max(
    0,
    marks.findLastIndex((mark) => mark <= lookedTo),
  );
  const ahead = marks.slice(open);
  const pitch = pitchOf(marks.slice(Math.max(0, open - 10), Math.max(open + 1, 3)));
  const between = (from: number, to: number): number[] => {
    const steps = Math.max(1, Math.round((to - from) / pitch));
    return Array.from({ length: steps }, (_, i) => from + ((i + 1) * (to - from)) / steps);
  };
  const places = ahead.slice(1).flatMap((mark, i) => between(ahead[i] as number, mark).slice(0, -1));
  const [first = 0] = marks;
  const before = lookedTo < 0 && first >= pitch / 2 ? [0, ...between(0, first).slice(0, -1)] : [];
  const last = ahead.at(-1) ?? 0;
  const after = line.length - last < pitch / 2 ? [] : between(last, line.length);
  return [...before, ...places, ...after];
}

const better = (one: Tried | null, other: Tried | null): Tried | null =>
  !other || (one && one.score >= other.score) ? one : other;

function tryDrift(
  asked: Asked,
  base: Base,
  { drift, learnt }: { drift: number; learnt?: Tried },
): Tried | null {
  const strip = stretched(asked, base, drift);
  const columns = asked.marks.map((mark) => Math.round(strip.columnOf(mark)));
  const settled = settledOn(strip.strip, columns);
  const sample = learnt
    ? sampleWith(strip.strip, settled, learnt)
    : sampleOf(strip.strip, settled, sampleHalf);
  const like = likeness(strip.strip, sample);
  const chain = bestChain({ likeness: like, pitch: columnsEach, ...endsOf(asked, strip, columns) });
  if (!chain) return null;
  const long = ((chain.columns.at(-1) ?? 0) - (chain.columns[0] ?? 0)) / columnsEach;
  return { chain, strip, like, score: chain.score / Math.max(1, long), drift };
}

const sampleHalf = Math.round(columnsEach * 0.7);

/** Where the chain must begin, end and pass. */
function endsOf(
  { line, marks, lookedTo }: Asked,
  strip: Stretched,
  columns: readonly number[],
): { fixed: number[]; first: [number, number]; last: [number, number] } {
  const near = (along: number): [number, number] => {
    const at = strip.columnOf(along);
    return [Math.round(at - slack * columnsEach), Math.round(at + slack * columnsEach)];
  };
  const last = near(line.length);
  const open = marks.findLastIndex((mark) => mark <= lookedTo);
  const fixed = [...new Set(columns.slice(Math.max(0, open)))];
  last[1] = Math.max(last[1], fixed.at(-1) ?? 0);
  const begun = fixed[0] ?? 0;
  return {
    fixed,
    first: open >= 0 ? [begun, begun] : [Math.min(begun, near(0)[0]), Math.min(begun, near(0)[1])],
    last,
  };
}

/** The marks, each moved by a few columns to where it looks most like the others: a finger is not exact. */
function settledOn(strip: Strip, columns: readonly number[]): number[] {
  const reach = Math.round(columnsEach * 0.18);
  const few = columns.slice(-24);
  const sample = sampleOf(strip, few, sampleHalf);
  const like = likeness(strip, sample);
  return few.map((column) => {
    let best = column;
    for (let x = column - reach; x <= column + reach; x++) if ((like[x] ?? -1) > (like[best] ?? -1)) best = x;
    return best;
  });
}

/** The maker's marks, and those proposed before that looked most like them. */
function sampleWith(strip: Strip, marked: readonly number[], { chain, like }: Tried): Sample {
  const ranked = [...chain.columns].sort((a, b) => (like[b] ?? 0) - (like[a] ?? 0));
  return sampleOf(
    strip,
    [...marked, ...marked, ...ranked.slice(0, Math.ceil(ranked.length * 0.6))],
    sampleHalf,
  );
}

/** The strip with columns that grow along it, so that a distance drifting evenly to `drift` times becomes constant. */
function stretched({ line, marks }: Asked, base: Base, drift: number): Stretched {
  const pitch = pitchOf(marks);
  const middle = ((marks[0] ?? 0) + (marks.at(-1) ?? 0)) / 2;
  const rate = Math.log(drift) / Math.max(1, line.length);
  const isEven = Math.abs(rate) < 1e-9;
  // The distance at `along` is pitch · e^(rate · (along - middle)); columns are the sum of one over it.
  const countOf = (along: number): number =>
    isEven ? (along - middle) / pitch : (1 - Math.exp(-rate * (along - middle))) / (rate * pitch);
  const alongAt = (count: number): number =>
    isEven ? middle + count * pitch : middle - Math.log(Math.max(1e-6, 1 - count * rate * pitch)) / rate;
  const start = countOf(0) - margin;
  const width = Math.ceil((countOf(line.length) + margin - start) * columnsEach);
  const columnOf = (along: number): number => (countOf(along) - start) * columnsEach;
  const alongOf = (column: number): number => alongAt(column / columnsEach + start);
  const places = Float64Array.from({ length: width }, (_, column) => alongOf(column));
  const strip = evened(resampled(base, places), columnsEach);
  return { strip, columnOf, alongOf };
}

/** The strip in even columns, fine enough for every drift. */
type Base = { strip: Strip; from: number; step: number };

function baseOf({ pixels, line, marks }: Asked): Base {
  const pitch = pitchOf(marks);
  const step = pitch / columnsEach / 1.25;
  const from = -margin * 2 * pitch;
  const places = even(from, step, Math.ceil((line.length - 2 * from) / step));
  const rows = even(-rowsEach * pitch, (pitch * rowsEach) / rowsHalf, 2 * rowsHalf + 1);
  return { strip: straightened(pixels, line, { places, rows }), from, step };
}

function resampled({ strip, from, step }: Base, places: Float64Array): Strip {
  const width = places.length;
  const light = new Float32Array(width * strip.height);
  for (let column = 0; column < width; column++) {
    const at = Math.min(strip.width - 1.001, Math.max(0, ((places[column] as number) - from) / step));
    const left = Math.floor(at);
    for (let row = 0; row < strip.height; row++) {
      const i = row * strip.width + left;
      light[row * width + column] =
        (strip.light[i] as number) * (1 - at + left) + (strip.light[i + 1] as number) * (at - left);
    }
  }
  return { width, height: strip.height, light };
}

/** The middle one of the distances between marks that are neighbours. */
export function pitchOf(marks: readonly number[]): number {
  const steps = marks.slice(1).map((mark, i) => mark - (marks[i] as number));
  steps.sort((a, b) => a - b);
  return steps[Math.floor(steps.length / 2)] ?? 1;
}

/** The chain without the maker's own marks, and its mean likeness with them, from -1 to 1. */
function foundIn({ chain, strip, like }: Tried, { marks }: Asked): { places: number[]; alike: number } {
  const own = new Set(marks.map((mark) => Math.round(strip.columnOf(mark))));
  const columns = chain.columns.filter((column) => !own.has(column));
  const sum = columns.reduce((all, column) => all + (like[column] ?? 0), 0);
  return {
    places: columns.map((column) => strip.alongOf(column)),
    alike: columns.length > 0 ? sum / columns.length : 1,
  };
}
