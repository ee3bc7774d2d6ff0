/**
 * Finding every set of causes that gives exactly what was seen.
 *
 * Rule: something that is seen otherwise must be touched by one of the causes, so only those that can touch it are
 * taken up; the last cause of a set is looked up by what is still unexplained. Sets whose causes meddle with one
 * another are tried, all others added up; whatever is found is tried once more before it counts.
 */
import { type Candidate, movesTwice } from './candidate.ts';
import { effectsOf, isShadow } from './effects.ts';
import { type Reach, widened } from './reach.ts';
import type { Searching } from './searching.ts';
import {
  alone,
  type Company,
  companyOf,
  isTight,
  meddlesFrom,
  never,
  onwards,
  type Touching,
  touches,
  touchingOf,
} from './touch.ts';
import { isExplained, type Rest, restOf, type Trying } from './trying.ts';
import type { Spot, Wanted } from './wanted.ts';

/** Sets of up to `most` causes, none of which holds a smaller one that explains it all as well. */
export function searchSets(trying: Trying, candidates: Candidate[], most: number): Candidate[][] {
  const asRecipe = restOf(trying, []);
  if (isExplained(asRecipe)) return [[]];
  if (!canStill(asRecipe)) return [];
  const searching = startSearch(trying, candidates, asRecipe);
  for (let size = 1; size <= most; size++) {
    searching.size = size;
    searching.followsBarred = size > 2 || searching.found.size > 0;
    searching.partners = [];
    allowFor(searching);
    extend(searching, [], asRecipe, size);
    const smallest = Math.min(...[...searching.found.values()].map((set) => set.length));
    // One cause explains it: pairs are looked at too, for a rare single cause may be less likely than two common ones.
    if (smallest < size || (smallest === size && size > 1)) break;
  }
  return smallestOf(searching.found, candidates).map((set) => set.map((one) => candidates[one] as Candidate));
}

function startSearch(trying: Trying, candidates: Candidate[], asRecipe: Rest): Searching {
  const touching = touchingOf(trying.plan, trying.wanted, candidates);
  const effects = effectsOf(trying, candidates, asRecipe, touching);
  const bySum = new Map<number, number[]>();
  effects.forEach((effect, one) => {
    if (!effect || effect.every((by) => by === 0)) return;
    const sum = sumOf(effect);
    bySum.set(sum, [...(bySum.get(sum) ?? []), one]);
  });
  const n = candidates.length;
  const everyone = candidates.map((_, one) => one);
  const isWide = candidates.map(({ cause }, one) => cause.habit || runsRound(touching.reaches[one] as Reach));
  const meddling = new Int8Array(n * n);
  const from = (a: number, b: number): number => {
    const pair = a < b ? a * n + b : b * n + a;
    if (meddling[pair] === 0) meddling[pair] = meddlesFrom(touching, a, b) + 1;
    return (meddling[pair] as number) - 1;
  };
  const movesOn = Int8Array.from(candidates, ({ moves }) => (moves ? moves.edging + 1 : 0));
  const bothMove = (a: number, b: number): boolean =>
    movesOn[a] !== 0 && movesOn[a] === movesOn[b] && movesTwice(candidates[a]?.moves, candidates[b]?.moves);
  const fitting = new Int8Array(n * n);
  const slots = numberedSlots(candidates);
  const fits = (a: number, b: number): boolean => {
    const pair = a < b ? a * n + b : b * n + a;
    if (fitting[pair] === 0)
      fitting[pair] = shareSlot(slots[a] as number[], slots[b] as number[]) || bothMove(a, b) ? -1 : 1;
    return fitting[pair] === 1;
  };
  return {
    size: 1,
    followsBarred: false,
    trying,
    candidates,
    effects,
    sums: Int32Array.from(effects, (effect) => (effect ? sumOf(effect) : 0)),
    bySum,
    touching,
    bySpot: trying.wanted.spots.map((spot) =>
      candidates.map((_, one) => one).filter((one) => touches(touching, one, spot, alone)),
    ),
    biggest: biggestOf(touching),
    ownSides: Int32Array.from(touching.reaches, ({ sides }) => sides),
    nearSides: Int32Array.from(touching.reaches, ({ near }) => near),
    onSides: Int32Array.from(touching.reaches, ({ sides, corners }) => onwards(sides | corners, touching.k)),
    everyone,
    allowed: everyone,
    meddlers: everyone,
    partners: [],
    fits,
    meddlesFrom: from,
    meddlesWith: (a, b) => from(a, b) < never,
    shadows: Uint8Array.from(candidates, (candidate) => (isShadow(touching, candidate) ? 1 : 0)),
    isWide,
    wides: everyone.filter((one) => isWide[one]),
    isBarred: candidates.map((_, one) => bars(trying.wanted, touching.reaches[one] as Reach, touching.k)),
    spent: new Uint8Array(n),
    found: new Map(),
  };
}

/** Slots as numbers: names are compared once, not for every pair. */
function numberedSlots(candidates: readonly Candidate[]): number[][] {
  const numbers = new Map<string, number>();
  return candidates.map(({ slots }) =>
    slots.map((slot) => {
      const number = numbers.get(slot) ?? numbers.size;
      numbers.set(slot, number);
      return number;
    }),
  );
}

function shareSlot(a: readonly number[], b: readonly number[]): boolean {
  for (const slot of a) for (const other of b) if (slot === other) return true;
  return false;
}

const runsRound = (reach: Reach): boolean => reach.planned || reach.turnsJoin || follows(reach);

/** A corner worked elsewhere on an edging, and the later ones counted on from it. */
const follows = (reach: Reach | undefined): boolean => reach?.moves.some((move) => move.follows) ?? false;

/** No corner was forgotten at or before a round that has all it should. */
const bars = ({ shapes }: Wanted, { forgets, spans }: Reach, k: number): boolean =>
  forgets &&
  shapes.some(
    (shape, round) =>
      shape !== null && (shape.corners ?? shape.sides) >= k && spans.some(({ from }) => from <= round),
  );

/** The two biggest bounds there are, of causes that have one. */
function biggestOf({ reaches }: Touching): [number, number] {
  const most = reaches.filter(({ unbounded }) => !unbounded).map((reach) => reach.most);
  const [first = 0, second = 0] = most.sort((x, y) => y - x);
  return [first, second];
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
  const sum = size === 2 ? sumOf(rest.by) : 0;
  const off = size === 2 ? offSides(searching, rest) : 0;
  const mustBeUnbounded = isBeyond(searching, set, rest, size);
  for (const one of [...wide(searching, set, rest), ...able(searching, set, rest)]) {
    if (isGivenUp(searching.trying)) break;
    if (mustBeUnbounded && !searching.touching.reaches[one]?.unbounded) continue;
    if (!isOpen(searching, set, one) || !leavesEnough(searching, set, rest, one, size)) continue;
    const isSettled = size === 2 && settleQuickly(searching, set, rest, one, { sum, off });
    if (!isSettled) {
      const next = restWith(searching, set, rest, one);
      if (canStill(next)) extend(searching, [...set, one], next, size - 1);
    }
    searching.spent[one] = 1;
    spent.push(one);
  }
  for (const one of spent) searching.spent[one] = 0;
}

export const isGivenUp = ({ tried, limit }: Trying): boolean => tried >= limit;

/**
 * Where this cause adds up with those that are there, the last one is looked up without trying; true if that was all,
 * because none that could meddle with them reaches what would be left.
 */
function settleQuickly(
  searching: Searching,
  set: readonly number[],
  rest: Rest,
  one: number,
  { sum, off }: { sum: number; off: number },
): boolean {
  const { sums, effects, ownSides, nearSides, touching } = searching;
  if (rest.over !== null || effects[one] === null || sums[one] === 0) return false;
  if (set.some((other) => searching.meddlesWith(one, other))) return false;
  if (touching.wanted.usesJoin || [...set, one].some((each) => follows(touching.reaches[each]))) return false;
  const left = off & ~(ownSides[one] as number);
  const isCrowded = touching.crowds[one] === 1 || set.some((each) => touching.crowds[each] === 1);
  const bits = isCrowded ? nearSides : ownSides;
  const reaches = (last: number): boolean => (left & ~(bits[last] as number)) === 0;
  if ([one, ...set].some((each) => partnersBeside(searching, each).some(reaches))) return false;
  lookUp(searching, [...set, one], (sum - (sums[one] as number)) | 0);
  return true;
}

/** The last cause of a set, by the sum of what is left; 0: nothing is. */
function lookUp(searching: Searching, set: number[], sum: number): void {
  if (sum === 0) confirm(searching, set);
  for (const one of searching.bySum.get(sum) ?? [])
    if (isOpen(searching, set, one) && !set.some((other) => searching.meddlesWith(one, other)))
      confirm(searching, [...set, one]);
}

/** Whether a difference is bigger than `size` causes with a bound could make it, whatever they move about together. */
function isBeyond(
  { touching, biggest, trying }: Searching,
  set: readonly number[],
  rest: Rest,
  size: number,
): boolean {
  if (rest.over !== null || set.some((one) => touching.reaches[one]?.unbounded)) return false;
  const [first, second] = biggest;
  const bound = size * movedAbout(touching, set) + first + (size > 1 ? first + second : 0);
  return trying.wanted.spots.some((spot, i) => isCount(spot) && Math.abs(rest.by[i] as number) > bound);
}

const isCount = ({ part }: Spot): boolean => part === 'side' || part === 'corner';

/** Beside those it meddles with, a cause can change a number by what they move about together, and a stitch or two. */
const movedAbout = ({ reaches }: Touching, set: readonly number[]): number =>
  set.reduce((total, one) => total + (reaches[one] as Reach).most, 2);

/** Those that run all round come first: with them out of the way, what is left lies close together. */
function wide({ isWide, wides }: Searching, set: readonly number[], rest: Rest): number[] {
  return rest.over !== null || set.filter((one) => isWide[one]).length >= mostWide ? [] : wides;
}

/** Two slips that run all round the work are believed of one making, three are not. */
const mostWide = 2;

/**
 * Whether one more cause could mend what this one cannot reach: it would have to lie within four sides. Asked only
 * where the answer saves a trial.
 */
function leavesEnough(
  searching: Searching,
  set: readonly number[],
  rest: Rest,
  one: number,
  size: number,
): boolean {
  const { touching, candidates, isWide } = searching;
  if (size !== 2 || rest.over !== null || isWide[one]) return true;
  if (!set.some((other) => searching.meddlesWith(one, other))) return true;
  const company = companyOf(touching, set, candidates);
  if (company.forgotten.length > 0) return true;
  const { k, reaches } = touching;
  const reach = reaches[one] as Reach;
  if (reach.forgets) return true;
  if (company.follows) return true;
  const left = offSides(searching, rest) & ~widened(reach.sides, k);
  if (left === 0) return true;
  for (let side = 0; side < k; side++) {
    const pair = (1 << side) | (1 << ((side + 1) % k));
    if ((left & ~widened(pair, k)) === 0) return true;
  }
  return false;
}

/** Sides on which something is still unexplained, as bits. */
function offSides({ trying }: Searching, rest: Rest): number {
  const { spots } = trying.wanted;
  let bits = 0;
  for (let i = 0; i < spots.length; i++)
    if (rest.by[i] !== 0 && spots[i]?.part === 'side') bits |= 1 << (spots[i] as Spot).index;
  return bits;
}

/** A corner too few cannot be made good; one too many must be forgotten. */
const canStill = ({ over }: Rest): boolean => over === null || over.over > 0;

function isOpen(searching: Searching, set: readonly number[], one: number): boolean {
  return searching.spent[one] === 0 && mayJoin(searching, set, one);
}

function mayJoin(searching: Searching, set: readonly number[], one: number): boolean {
  const { isWide, isBarred, followsBarred, touching, fits } = searching;
  if (isBarred[one] || (followsBarred && follows(touching.reaches[one]))) return false;
  if (isWide[one] && set.filter((other) => isWide[other]).length >= mostWide) return false;
  for (const other of set) if (other === one || !fits(other, one)) return false;
  return true;
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

/** Causes of which any explaining set must hold one: those that can touch the spot fewest can touch. */
function able(searching: Searching, set: number[], rest: Rest): number[] {
  const { candidates, touching, bySpot, trying } = searching;
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
  const company = companyOf(touching, set, candidates);
  let least: number = -1;
  for (let spot = 0; spot < rest.by.length; spot++)
    if (rest.by[spot] !== 0 && (least < 0 || sizeAt(bySpot, spot) < sizeAt(bySpot, least))) least = spot;
  if (company === alone) return (bySpot[least] ?? []).filter(isUseful);
  const spot = trying.wanted.spots[least] as Spot;
  return candidates
    .map((_, one) => one)
    .filter((one) => touches(touching, one, spot, company) && isUseful(one));
}

/** The last cause of a set: looked up, or tried where it meddles with one that is there. */
function complete(searching: Searching, set: number[], rest: Rest): void {
  if (rest.over === null) lookUp(searching, set, sumOf(rest.by));
  if (set.length > 0 || rest.over !== null) completeBeside(searching, set, rest);
}

/** The last cause, where it meddles with one that is there: tried, if it can mend all that is left. */
function completeBeside(searching: Searching, set: number[], rest: Rest): void {
  const { touching, trying, candidates } = searching;
  if (rest.over !== null) {
    for (const one of able(searching, set, rest))
      if (isOpen(searching, set, one)) confirm(searching, [...set, one]);
    return;
  }
  const company = companyOf(touching, set, candidates);
  const sides = company.forgotten.length > 0 ? 0 : offSides(searching, rest);
  const bits = bitsIn(searching, company);
  const partners = partnersOf(searching, set).filter(
    (one) => (sides & ~(bits[one] as number)) === 0 && searching.spent[one] === 0,
  );
  if (partners.length === 0) return;
  const { spots } = trying.wanted;
  const off = spots.flatMap((spot, i) =>
    rest.by[i] === 0 ? [] : [{ spot, by: Math.abs(rest.by[i] as number) }],
  );
  const about = movedAbout(touching, set);
  for (const one of partners) {
    if (isGivenUp(trying)) break;
    const reach = touching.reaches[one] as Reach;
    const bound = reach.most + about;
    const mends = off.every(
      ({ spot, by }) => (by <= bound || !isCount(spot)) && touches(touching, one, spot, company),
    );
    if (
      mends &&
      addsBelow(searching, set, rest, one) &&
      addsInAll(searching, set, rest, one) &&
      isOpen(searching, set, one)
    )
      confirm(searching, [...set, one]);
  }
}

/** In the rounds below the one in which they meddle, what is left must be just what this cause changes there. */
function addsBelow(searching: Searching, set: readonly number[], rest: Rest, one: number): boolean {
  const effect = searching.effects[one];
  if (!effect) return true;
  const first = Math.min(...set.map((other) => searching.meddlesFrom(one, other)));
  const { spots } = searching.trying.wanted;
  for (let i = 0; i < spots.length; i++) {
    const spot = spots[i] as Spot;
    if (isCount(spot) && spot.round < first && rest.by[i] !== effect[i]) return false;
  }
  return true;
}

/**
 * Beside one corner worked elsewhere a single slip may fall to another side, but it is still one slip: what is left in
 * the round, over all its sides, must be just what it changes. (One that falls where the corner is worked is none.)
 */
function addsInAll(searching: Searching, set: readonly number[], rest: Rest, one: number): boolean {
  const { touching, trying, effects, candidates, isWide } = searching;
  const effect = effects[one];
  const [move, more] = (touching.reaches[set[0] as number] as Reach).moves;
  const isSlip = touching.reaches[one]?.isPlain && !isWide[one] && !candidates[one]?.elsewhere;
  if (set.length > 1 || !effect || !move || more || !isSlip) return true;
  if (searching.meddlesFrom(one, set[0] as number) !== move.round) return true;
  let left = 0;
  let sides = 0;
  trying.wanted.spots.forEach((spot, i) => {
    if (spot.part !== 'side' || spot.round !== move.round) return;
    left += (rest.by[i] as number) - (effect[i] as number);
    sides++;
  });
  return sides < touching.k || left === 0;
}

function allowFor(searching: Searching): void {
  const { everyone, isBarred, followsBarred, touching } = searching;
  searching.allowed = everyone.filter(
    (one) => !isBarred[one] && !(followsBarred && follows(touching.reaches[one])),
  );
  searching.meddlers = searching.allowed.filter((one) => touching.reaches[one]?.isPlain === false);
}

function partnersBeside(searching: Searching, one: number): number[] {
  const known = searching.partners[one];
  if (known) return known;
  const { allowed, meddlers, meddlesFrom, touching, biggest } = searching;
  const { isPlain, sides, most } = touching.reaches[one] as Reach;
  const hasRoom = isPlain && !isTight(touching, sides, most + biggest[0]);
  const alone = [one];
  const found: number[] = [];
  for (const other of hasRoom ? meddlers : allowed)
    if (other !== one && meddlesFrom(one, other) < never && mayJoin(searching, alone, other))
      found.push(other);
  searching.partners[one] = found;
  return found;
}

function partnersOf(searching: Searching, set: readonly number[]): number[] {
  const [first = [], second = []] = set.map((one) => partnersBeside(searching, one));
  const other = set[0] as number;
  return second.length === 0
    ? first
    : [...first, ...second.filter((one) => !searching.meddlesWith(one, other))];
}

function bitsIn({ ownSides, nearSides, onSides }: Searching, company: Company): Int32Array {
  if (company === alone) return ownSides;
  return company.follows ? onSides : nearSides;
}

const sizeAt = (bySpot: number[][], spot: number): number => bySpot[spot]?.length ?? 0;

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
