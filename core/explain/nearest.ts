/**
 * The nearest that can be said where nothing fits: least difference in all, over every number seen.
 *
 * Trade-off: only the best few of each size are built upon, so a nearer set may be missed; what is told about the
 * one given is true all the same, for it is carried out like any other.
 */
import { type Candidate, fitsWith } from './candidate.ts';
import { type Rest, restOf, type Trying } from './trying.ts';

type Held = { set: Candidate[]; off: number; by: Int32Array };

const kept = 24;

const offOf = (by: Int32Array): number => by.reduce((total, one) => total + Math.abs(one), 0);

export function nearestOf(
  trying: Trying,
  candidates: readonly Candidate[],
  most: number,
): { set: Candidate[]; off: number } | null {
  const start = shapedStart(trying, candidates, most);
  if (start.length === 0) return null;
  const effects = effectsOn(trying, candidates, start[0] as Held);
  let held = start;
  let best = held[0] as Held;
  for (let size = best.set.length + 1; size <= most; size++) {
    held = extendAll(held, candidates, effects);
    const tried = held.slice(0, kept).flatMap(({ set }) => heldOf(trying, set) ?? []);
    for (const one of tried) if (one.off < best.off) best = one;
    if (tried.length === 0) break;
  }
  return { set: best.set, off: best.off };
}

function heldOf(trying: Trying, set: Candidate[]): Held[] | null {
  const rest: Rest = restOf(trying, set);
  return rest.over === null ? [{ set, by: rest.by, off: offOf(rest.by) }] : null;
}

/** The recipe, or, where corners are missing, the sets of forgotten corners that have as many as were seen. */
function shapedStart(trying: Trying, candidates: readonly Candidate[], most: number): Held[] {
  const asRecipe = heldOf(trying, []);
  if (asRecipe) return asRecipe;
  const forgotten = candidates.filter(({ cause }) => cause.kind === 'corner-forgotten');
  let sets: Candidate[][] = [[]];
  for (let size = 1; size <= most; size++) {
    sets = sets.flatMap((set) => forgotten.filter((one) => !set.includes(one)).map((one) => [...set, one]));
    const shaped = sets.flatMap((set) => heldOf(trying, set) ?? []).sort((a, b) => a.off - b.off);
    if (shaped.length > 0) return shaped.slice(0, kept);
    sets = sets.slice(0, kept * kept);
  }
  return [];
}

/** What each changes on top of a start, where it does not change the shape. */
const effectsOn = (trying: Trying, candidates: readonly Candidate[], start: Held): (Int32Array | null)[] =>
  candidates.map((candidate) => {
    if (candidate.elsewhere || start.set.includes(candidate)) return null;
    const rest = restOf(trying, [...start.set, candidate]);
    return rest.over === null ? start.by.map((by, i) => by - (rest.by[i] as number)) : null;
  });

function extendAll(
  held: readonly Held[],
  candidates: readonly Candidate[],
  effects: readonly (Int32Array | null)[],
): Held[] {
  const longer: Held[] = [];
  for (const { set, by } of held.slice(0, kept))
    candidates.forEach((candidate, one) => {
      const effect = effects[one];
      if (!effect || !set.every((other) => other !== candidate && fitsWith(other, candidate))) return;
      const next = by.map((value, i) => value - (effect[i] as number));
      longer.push({ set: [...set, candidate], by: next, off: offOf(next) });
    });
  return longer.sort((a, b) => a.off - b.off).slice(0, kept);
}
