/**
 * Finding every set of causes that gives exactly what was seen.
 *
 * Rule: something that is seen otherwise must be touched by one of the causes, so only those that can touch it are
 * taken up; the last cause of a set is looked up by what is still unexplained. Sets whose causes meddle with one
 * another are tried, all others added up; whatever is found is tried once more before it counts.
 */
import { type Candidate, fitsWith } from './candidate.ts';
import type { Magnitudes } from './magnitudes.ts';
import { type Company, meddle, type Touching, touches, touchingOf } from './touch.ts';
import { isExplained, type Rest, restOf, type Trying } from './trying.ts';

type Searching = {
  trying: Trying;
  candidates: Candidate[];
  /** What each changes by itself; null where it changes the shape. */
  effects: (Int32Array | null)[];
  /** Candidates by the sum of what they change. */
  bySum: Map<number, number[]>;
  /** For each company and spot, the candidates that can touch it; and for each candidate, the spots as bits. */
  touching: Record<Company, { bySpot: number[][]; spots: Uint32Array[] }>;
  meddlers: (number[] | undefined)[];
  meddlesWith: (a: number, b: number) => boolean;
  /** Candidates that give nothing of their own: the same mishap at another place of a roomy side. */
  shadows: Uint8Array;
  /** Candidates all of whose sets are found already. */
  spent: Uint8Array;
  found: Map<string, number[]>;
};

const companies: readonly Company[] = ['alone', 'beside-moved', 'uncornered'];

/** Sets of up to `most` causes, none of which holds a smaller one that explains it all as well. */
export function searchSets(
  trying: Trying,
  candidates: Candidate[],
  magnitudes: Magnitudes,
  most: number,
): Candidate[][] {
  const asRecipe = restOf(trying, []);
  if (isExplained(asRecipe)) return [[]];
  if (!canStill(asRecipe)) return [];
  const searching = startSearch(trying, candidates, magnitudes, asRecipe);
  for (let size = 1; size <= most; size++) {
    searching.spent.fill(0);
    extend(searching, [], asRecipe, size);
    const smallest = Math.min(...[...searching.found.values()].map((set) => set.length));
    // One cause explains it: pairs are looked at too, for a rare single cause may be less likely than two common ones.
    if (smallest < size || (smallest === size && size > 1)) break;
  }
  return smallestOf(searching.found, candidates).map((set) => set.map((one) => candidates[one] as Candidate));
}

function startSearch(
  trying: Trying,
  candidates: Candidate[],
  magnitudes: Magnitudes,
  asRecipe: Rest,
): Searching {
  // With corners forgotten nothing adds up: every making is tried.
  const effects = candidates.map((candidate) => {
    if (asRecipe.over !== null) return null;
    const rest = restOf(trying, [candidate]);
    return rest.over === null ? asRecipe.by.map((by, i) => by - (rest.by[i] as number)) : null;
  });
  const touching = touchingOf(trying.plan, trying.wanted, magnitudes);
  const bySum = new Map<number, number[]>();
  effects.forEach((effect, one) => {
    if (!effect || isShadow(touching, candidates[one] as Candidate) || effect.every((by) => by === 0)) return;
    const sum = sumOf(effect);
    bySum.set(sum, [...(bySum.get(sum) ?? []), one]);
  });
  const n = candidates.length;
  const meddling = new Int8Array(n * n);
  return {
    trying,
    candidates,
    effects,
    bySum,
    touching: Object.fromEntries(
      companies.map((company) => [company, spotsTouched(trying, candidates, touching, company)]),
    ) as Searching['touching'],
    meddlers: new Array(n),
    meddlesWith: (a, b) => {
      const pair = a < b ? a * n + b : b * n + a;
      if (meddling[pair] === 0)
        meddling[pair] = meddle(touching, candidates[a] as Candidate, candidates[b] as Candidate) ? 1 : -1;
      return meddling[pair] === 1;
    },
    shadows: Uint8Array.from(candidates, (candidate) => (isShadow(touching, candidate) ? 1 : 0)),
    spent: new Uint8Array(n),
    found: new Map(),
  };
}

const isShadow = ({ tight }: Touching, { elsewhere, settled }: Candidate): boolean =>
  elsewhere && tight[settled[0]?.side ?? 0] !== true;

function spotsTouched(
  trying: Trying,
  candidates: Candidate[],
  touching: Touching,
  company: Company,
): { bySpot: number[][]; spots: Uint32Array[] } {
  const { spots } = trying.wanted;
  const bySpot: number[][] = spots.map(() => []);
  const bits = candidates.map((candidate, one) => {
    const touched = new Uint32Array((spots.length >> 5) + 1);
    spots.forEach((spot, i) => {
      if (!touches(touching, candidate, spot, company)) return;
      touched[i >> 5] = (touched[i >> 5] as number) | (1 << (i & 31));
      bySpot[i]?.push(one);
    });
    return touched;
  });
  return { bySpot, spots: bits };
}

/** A sum of all spots, each with a weight of its own, so that sums of causes are sums of sums. */
function sumOf(by: Int32Array): number {
  let sum = 0;
  for (let i = 0; i < by.length; i++)
    if (by[i] !== 0) sum = (sum + Math.imul(by[i] as number, weightOf(i))) | 0;
  return sum;
}

/** Well mixed and the same every time (the finaliser of a published 32-bit hash). */
function weightOf(spot: number): number {
  let mixed = Math.imul(spot + 1, 0x9e3779b1);
  mixed = Math.imul(mixed ^ (mixed >>> 16), 0x85ebca6b);
  mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35);
  return (mixed ^ (mixed >>> 16)) | 1;
}

function extend(searching: Searching, set: number[], rest: Rest, size: number): void {
  if (isExplained(rest)) {
    keep(searching, set);
    return;
  }
  if (size === 0) return;
  if (size === 1) {
    complete(searching, set, rest);
    return;
  }
  const spent: number[] = [];
  for (const one of able(searching, set, rest)) {
    if (!isOpen(searching, set, one)) continue;
    const next = restWith(searching, set, rest, one);
    if (canStill(next)) extend(searching, [...set, one], next, size - 1);
    searching.spent[one] = 1;
    spent.push(one);
  }
  for (const one of spent) searching.spent[one] = 0;
}

/** A corner too few cannot be made good; one too many must be forgotten. */
const canStill = ({ over }: Rest): boolean => over === null || over.over > 0;

function isOpen({ spent, candidates }: Searching, set: readonly number[], one: number): boolean {
  if (spent[one] === 1) return false;
  return set.every(
    (other) => other !== one && fitsWith(candidates[other] as Candidate, candidates[one] as Candidate),
  );
}

function restWith(searching: Searching, set: readonly number[], rest: Rest, one: number): Rest {
  const effect = searching.effects[one];
  const adds = effect && rest.over === null && !set.some((other) => searching.meddlesWith(one, other));
  if (adds) return { over: null, by: rest.by.map((by, i) => by - (effect[i] as number)) };
  return restOf(
    searching.trying,
    [...set, one].map((other) => searching.candidates[other] as Candidate),
  );
}

/** The company a further cause would be in. */
function companyOf({ candidates }: Searching, set: readonly number[]): Company {
  const kinds = set.map((one) => candidates[one]?.cause.mishaps[0]);
  if (kinds.some((mishap) => mishap?.kind === 'corner-forgotten')) return 'uncornered';
  const isMoved = kinds.some((mishap) => mishap?.kind === 'corner-moved' && mishap.round === 'edging');
  return isMoved ? 'beside-moved' : 'alone';
}

/** Causes of which any explaining set must hold one: those that can touch the spot fewest can touch. */
function able(searching: Searching, set: number[], rest: Rest): number[] {
  const { candidates, touching } = searching;
  const isUseful = (one: number): boolean =>
    searching.shadows[one] === 0 || set.some((other) => searching.meddlesWith(one, other));
  if (rest.over !== null) {
    const { round } = rest.over;
    return candidates.flatMap(({ settled }, one) => {
      const mishap = settled[0];
      const from = mishap?.round === 'edging' ? mishap.edging + 1 : 0;
      return mishap?.kind === 'corner-forgotten' && from <= round ? [one] : [];
    });
  }
  const { bySpot } = touching[companyOf(searching, set)];
  let least: number[] | undefined;
  for (let spot = 0; spot < rest.by.length; spot++) {
    if (rest.by[spot] === 0) continue;
    const those = bySpot[spot] as number[];
    if (!least || those.length < least.length) least = those;
  }
  return (least ?? []).filter(isUseful);
}

/** The last cause of a set: looked up, or tried where it meddles with one that is there. */
function complete(searching: Searching, set: number[], rest: Rest): void {
  if (rest.over === null)
    for (const one of searching.bySum.get(sumOf(rest.by)) ?? [])
      if (isOpen(searching, set, one) && !set.some((other) => searching.meddlesWith(one, other)))
        confirm(searching, [...set, one]);
  if (set.length === 0 && rest.over === null) return;
  const touched = bitsOf(rest.by);
  const { spots } = searching.touching[companyOf(searching, set)];
  for (const one of meddlersOf(searching, set, rest))
    if ((rest.over !== null || isWithin(touched, spots[one] as Uint32Array)) && isOpen(searching, set, one))
      confirm(searching, [...set, one]);
}

function bitsOf(by: Int32Array): Uint32Array {
  const bits = new Uint32Array((by.length >> 5) + 1);
  for (let i = 0; i < by.length; i++)
    if (by[i] !== 0) bits[i >> 5] = (bits[i >> 5] as number) | (1 << (i & 31));
  return bits;
}

function isWithin(bits: Uint32Array, all: Uint32Array): boolean {
  for (let i = 0; i < bits.length; i++) if (((bits[i] as number) & ~(all[i] as number)) !== 0) return false;
  return true;
}

function meddlersOf(searching: Searching, set: readonly number[], rest: Rest): number[] {
  if (rest.over !== null) return able(searching, [...set], rest);
  const { candidates, meddlers } = searching;
  const all = set.map((one) => {
    meddlers[one] ??= candidates
      .map((_, other) => other)
      .filter((other) => searching.meddlesWith(one, other));
    return meddlers[one];
  });
  return all.length === 1 ? (all[0] as number[]) : [...new Set(all.flat())];
}

function confirm(searching: Searching, set: number[]): void {
  const those = set.map((one) => searching.candidates[one] as Candidate);
  if (isExplained(restOf(searching.trying, those))) keep(searching, set);
}

/** Sets that tell the same story at another of several like places are one. */
function keep({ found, candidates }: Searching, set: readonly number[]): void {
  const name = nameOf(set, candidates);
  if (!found.has(name)) found.set(name, [...set]);
}

const nameOf = (set: readonly number[], candidates: readonly Candidate[]): string =>
  set
    .map((one) => candidates[one]?.key)
    .sort()
    .join(' + ');

/** Leaves out every set that holds a smaller one. */
function smallestOf(found: ReadonlyMap<string, number[]>, candidates: readonly Candidate[]): number[][] {
  const holdsFound = (set: readonly number[]): boolean =>
    set.some((_, i) => {
      const less = set.toSpliced(i, 1);
      return less.length > 0 && (found.has(nameOf(less, candidates)) || holdsFound(less));
    });
  return [...found.values()].filter((set) => !holdsFound(set));
}
