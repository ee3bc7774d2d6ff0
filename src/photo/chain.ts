/**
 * The chain of places along a strip that look most like the marked ones and keep their distance. Every step adds the
 * likeness of its place, weighted by its width, less what its width is off: so neither many nor few places are
 * favoured. Found exactly, by going through all places in order (dynamic programming).
 */

export type Chaining = {
  /** Likeness of every column, from -1 to 1. */
  likeness: Float32Array;
  /** Columns from V to V. */
  pitch: number;
  /** Columns that must be in it, in order. */
  fixed: readonly number[];
  /** Where its first and its last place may be. */
  first: readonly [number, number];
  last: readonly [number, number];
};

export type Chain = { columns: number[]; score: number };

/** Steps from V to V, in pitches. */
const shortest = 0.6;
const longest = 1.9;
/** What a step of another width costs: so much times the square of its logarithm, and at most so much. */
const strictness = 6;
const mostCost = 0.9;

const stepCost = (width: number, pitch: number): number =>
  Math.min(mostCost, strictness * Math.log(width / pitch) ** 2);

/** The best chain, or null where none leads from the first place to the last. */
export function bestChain({ likeness, pitch, fixed, first, last }: Chaining): Chain | null {
  const width = likeness.length;
  const score = new Float64Array(width).fill(Number.NEGATIVE_INFINITY);
  const from = new Int32Array(width).fill(-1);
  const isFixed = new Set(fixed);
  // The last fixed place before each column: no step may leap over one.
  const barrier = new Int32Array(width).fill(-1);
  let passed = -1;
  for (let x = 0; x < width; x++) {
    barrier[x] = passed;
    if (isFixed.has(x)) passed = x;
  }
  const begin = fixed[0] === undefined ? first[1] : Math.min(first[1], fixed[0]);
  for (let x = Math.max(0, first[0]); x < width && x <= last[1]; x++) {
    const like = likeness[x] as number;
    if (x <= begin) score[x] = like;
    const wall = barrier[x] as number;
    const nearest = x - Math.round(shortest * pitch);
    const furthest = Math.max(wall, x - Math.round(longest * pitch), 0);
    for (let before = furthest; before <= nearest; before++) {
      const step = x - before;
      const sum = (score[before] as number) + (step / pitch) * like - stepCost(step, pitch);
      if (sum > (score[x] as number)) {
        score[x] = sum;
        from[x] = before;
      }
    }
    // Two places that the maker set are neighbours, however far or near.
    if (isFixed.has(x) && wall >= 0) {
      const sum = (score[wall] as number) + ((x - wall) / pitch) * like - mostCost;
      if (sum > (score[x] as number)) {
        score[x] = sum;
        from[x] = wall;
      }
    }
  }
  return backFrom(score, from, [Math.max(last[0], fixed.at(-1) ?? 0), last[1]]);
}

function backFrom(
  score: Float64Array,
  from: Int32Array,
  [least, most]: readonly [number, number],
): Chain | null {
  let end = -1;
  for (let x = Math.max(0, least); x <= Math.min(most, score.length - 1); x++)
    if (end < 0 || (score[x] as number) > (score[end] as number)) end = x;
  if (end < 0 || score[end] === Number.NEGATIVE_INFINITY) return null;
  const columns: number[] = [];
  for (let x = end; x >= 0; x = from[x] as number) columns.push(x);
  return { columns: columns.reverse(), score: score[end] as number };
}
