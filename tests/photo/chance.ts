/** Chance that comes back: the same seed draws the same picture. */
export type Chance = {
  /** From 0 to 1, evenly. */
  next(): number;
  between(range: readonly [number, number]): number;
  whole(range: readonly [number, number]): number;
  /** About 0, with a spread of 1. */
  normal(): number;
};

/** @param seed a whole number. The generator is mulberry32, by its usual published form (from memory). */
export function chanceOf(seed: number): Chance {
  let state = seed >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  const between = ([from, to]: readonly [number, number]): number => from + next() * (to - from);
  return {
    next,
    between,
    whole: ([from, to]) => from + Math.floor(next() * (to - from + 1)),
    normal: () => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next()),
  };
}
