/**
 * The last cause of a set.
 *
 * Rule: one that interacts with none of the others is looked up by the sum of what is still unexplained; one that does
 * is tried, where nothing that is known about it forbids that it mends all that is left.
 */
import type { Candidate } from './candidate.ts';
import { isOpen, partnersBeside, partnersOf } from './joining.ts';
import { follows, type Reach } from './reach.ts';
import type { Searching } from './searching.ts';
import { sumOf } from './sums.ts';
import { alone, type Interaction, interactionOf, type Touching, touches } from './touch.ts';
import { isExplained, type Rest, restOf, type Trying } from './trying.ts';
import type { Spot } from './wanted.ts';

/** A set of causes taken up, what it leaves unexplained, the sum of that, and the sides it lies on, as bits. */
export type Node = { set: readonly number[]; rest: Rest; sum: number; off: number };

export const nodeOf = (searching: Searching, set: readonly number[], rest: Rest): Node => ({
  set,
  rest,
  sum: sumOf(rest.by),
  off: offSides(searching, rest),
});

/**
 * Where this cause adds up with those that are there, the last one is looked up without trying; true if that was all,
 * because none that could interact with them reaches what would be left.
 */
export function settleQuickly(searching: Searching, { set, rest, sum, off }: Node, one: number): boolean {
  const { sums, effects, ownSides, nearSides, touching } = searching;
  if (rest.over !== null || effects[one] === null || sums[one] === 0) return false;
  if (set.some((other) => searching.interactsWith(one, other))) return false;
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
function lookUp(searching: Searching, set: readonly number[], sum: number): void {
  if (sum === 0) confirm(searching, set);
  for (const one of searching.bySum.get(sum) ?? [])
    if (isOpen(searching, set, one) && !set.some((other) => searching.interactsWith(one, other)))
      confirm(searching, [...set, one]);
}

/** The last cause of a set: looked up, or tried where it interacts with one that is there. */
export function complete(searching: Searching, node: Node): void {
  const { set, rest, sum } = node;
  if (rest.over === null) lookUp(searching, set, sum);
  if (set.length > 0 || rest.over !== null) completeBeside(searching, node);
}

/** The last cause, where it interacts with one that is there: tried, if it can mend all that is left. */
function completeBeside(searching: Searching, { set, rest, off: offBits }: Node): void {
  const { touching, trying, candidates } = searching;
  if (rest.over !== null) {
    for (const one of candidatesFor(searching, set, rest))
      if (isOpen(searching, set, one)) confirm(searching, [...set, one]);
    return;
  }
  const interaction = interactionOf(touching, set, candidates);
  const sides = interaction.forgotten.length > 0 ? 0 : offBits;
  const bits = bitsIn(searching, interaction);
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
    // Sides that run on as one, their corner forgotten, have on them what was done on each.
    const bound = reach.most * (1 + interaction.forgotten.length) + about;
    // What later corners counted on from one leave over or lack comes to lie on side 0.
    const isBounded = (spot: Spot): boolean =>
      isCount(spot) && !reach.unbounded && !(interaction.follows && spot.index === 0);
    const mends = off.every(
      ({ spot, by }) => (by <= bound || !isBounded(spot)) && touches(touching, one, spot, interaction),
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

/** In the rounds below the one in which they interact, what is left must be just what this cause changes there. */
function addsBelow(searching: Searching, set: readonly number[], rest: Rest, one: number): boolean {
  const effect = searching.effects[one];
  if (!effect) return true;
  const first = Math.min(...set.map((other) => searching.interactsFrom(one, other)));
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
  const { touching, trying, effects, candidates, isAllRound } = searching;
  const effect = effects[one];
  const [move, more] = (touching.reaches[set[0] as number] as Reach).moves;
  const isSlip = touching.reaches[one]?.isPlain && !isAllRound[one] && !candidates[one]?.elsewhere;
  if (set.length > 1 || !effect || !move || more || !isSlip) return true;
  if (searching.interactsFrom(one, set[0] as number) !== move.round) return true;
  let left = 0;
  let sides = 0;
  trying.wanted.spots.forEach((spot, i) => {
    if (spot.part !== 'side' || spot.round !== move.round) return;
    left += (rest.by[i] as number) - (effect[i] as number);
    sides++;
  });
  return sides < touching.k || left === 0;
}

function bitsIn({ ownSides, nearSides, onSides }: Searching, interaction: Interaction): Int32Array {
  if (interaction === alone) return ownSides;
  return interaction.follows ? onSides : nearSides;
}

function confirm(searching: Searching, set: readonly number[]): void {
  const those = set.map((one) => searching.candidates[one] as Candidate);
  if (isExplained(restOf(searching.trying, those))) keep(searching, set);
}

/** Causes of which any explaining set must hold one: those that can touch the spot fewest can touch. */
export function candidatesFor(searching: Searching, set: readonly number[], rest: Rest): number[] {
  const { candidates, touching, trying } = searching;
  const isUseful = (one: number): boolean =>
    searching.shadows[one] === 0 || set.some((other) => searching.interactsWith(one, other));
  if (rest.over !== null) {
    const { round } = rest.over;
    return candidates.flatMap(({ settled }, one) => {
      const mishap = settled[0];
      const from = mishap?.round === 'edging' ? mishap.edging + 1 : 0;
      return mishap?.kind === 'corner-forgotten' && from <= round ? [one] : [];
    });
  }
  const interaction = interactionOf(touching, set, candidates);
  let least: number = -1;
  for (let spot = 0; spot < rest.by.length; spot++)
    if (
      rest.by[spot] !== 0 &&
      (least < 0 || ableAt(searching, spot).length < ableAt(searching, least).length)
    )
      least = spot;
  if (interaction === alone) return ableAt(searching, least).filter(isUseful);
  const spot = trying.wanted.spots[least] as Spot;
  return candidates
    .map((_, one) => one)
    .filter((one) => touches(touching, one, spot, interaction) && isUseful(one));
}

function ableAt({ bySpot, touching, trying, everyone }: Searching, spot: number): number[] {
  const where = trying.wanted.spots[spot];
  if (!where) return [];
  bySpot[spot] ??= everyone.filter((one) => touches(touching, one, where, alone));
  return bySpot[spot];
}

export const isCount = ({ part }: Spot): boolean => part === 'side' || part === 'corner';

/** Beside those it interacts with, a cause can change a number by what they move about together, and a stitch or two. */
export const movedAbout = ({ reaches }: Touching, set: readonly number[]): number =>
  set.reduce((total, one) => total + (reaches[one] as Reach).most, 2);

/** Sides on which something is still unexplained, as bits. */
function offSides({ trying }: Searching, rest: Rest): number {
  const { spots } = trying.wanted;
  let bits = 0;
  for (let i = 0; i < spots.length; i++)
    if (rest.by[i] !== 0 && spots[i]?.part === 'side') bits |= 1 << (spots[i] as Spot).index;
  return bits;
}

export const isGivenUp = ({ tried, limit }: Trying): boolean => tried >= limit;

/** Sets that tell the same story at another of several like places are one. */
export function keep({ found, candidates }: Searching, set: readonly number[]): void {
  const name = nameOf(set, candidates);
  if (!found.has(name)) found.set(name, [...set]);
}

export const nameOf = (set: readonly number[], candidates: readonly Candidate[]): string =>
  set
    .map((one) => candidates[one]?.key)
    .sort()
    .join(' + ');
