/**
 * Finding every set of causes that gives exactly what was seen.
 *
 * Rule: something that is seen otherwise must be touched by one of the causes, so only those that can touch it are
 * taken up; the last cause of a set is looked up by what is still unexplained. Sets whose causes interact with one
 * another are tried, all others added up; whatever is found is tried once more before it counts.
 */
import type { Candidate } from './candidate.ts';
import { allowFor, isOpen, mostAllRound } from './joining.ts';
import {
  candidatesFor,
  complete,
  isCount,
  isGivenUp,
  keep,
  movedAbout,
  type Node,
  nameOf,
  nodeOf,
  settleQuickly,
} from './last-cause.ts';
import { type Reach, widened } from './reach.ts';
import { type Searching, startSearch } from './searching.ts';
import { interactionOf } from './touch.ts';
import { isExplained, type Rest, restOf, type Trying } from './trying.ts';

/** Sets of up to `most` causes, none of which holds a smaller one that explains it all as well. */
export function searchSets(trying: Trying, candidates: Candidate[], most: number): Candidate[][] {
  const asRecipe = restOf(trying, []);
  if (isExplained(asRecipe)) return [[]];
  if (!canStill(asRecipe)) return [];
  const searching = startSearch(trying, candidates, asRecipe);
  for (let size = 1; size <= most; size++) {
    searching.followsBarred = size > 2 || searching.found.size > 0;
    searching.partners = [];
    allowFor(searching);
    extend(searching, nodeOf(searching, [], asRecipe), size);
    const smallest = Math.min(...[...searching.found.values()].map((set) => set.length));
    // One cause explains it: pairs are looked at too, for a rare single cause may be less likely than two common ones.
    if (smallest < size || (smallest === size && size > 1)) break;
  }
  return smallestOf(searching.found, candidates).map((set) => set.map((one) => candidates[one] as Candidate));
}

function extend(searching: Searching, node: Node, size: number): void {
  const { set, rest } = node;
  if (isExplained(rest)) {
    keep(searching, set);
    return;
  }
  if (size === 0) return;
  if (size === 1) {
    complete(searching, node);
    return;
  }
  if (rest.over !== null) {
    extendBy(searching, node, size, candidatesFor(searching, set, rest));
    return;
  }
  const wereBarred = searching.allRoundBarred;
  searching.allRoundBarred = true;
  extendBy(searching, node, size, candidatesFor(searching, set, rest));
  searching.allRoundBarred = wereBarred;
  if (!wereBarred) extendBy(searching, node, size, allRoundFor(searching, set, rest));
}

/** Takes up each of some causes in turn; all sets that hold one are found once it is done. */
function extendBy(searching: Searching, node: Node, size: number, those: readonly number[]): void {
  const { set } = node;
  const spent: number[] = [];
  const mustBeUnbounded = isBeyond(searching, node, size);
  for (const one of those) {
    if (isGivenUp(searching.trying)) break;
    if (mustBeUnbounded && !searching.touching.reaches[one]?.unbounded) continue;
    if (!isOpen(searching, set, one) || (size === 2 && !leavesEnough(searching, node, one))) continue;
    const isSettled = size === 2 && settleQuickly(searching, node, one);
    if (!isSettled) {
      const left = restWith(searching, node, one);
      if (canStill(left)) extend(searching, nodeOf(searching, [...set, one], left), size - 1);
    }
    searching.spent[one] = 1;
    spent.push(one);
  }
  for (const one of spent) searching.spent[one] = 0;
}

/** Whether a difference is bigger than `size` causes with a bound could make it, whatever they move about together. */
function isBeyond({ touching, biggest, trying }: Searching, { set, rest }: Node, size: number): boolean {
  if (rest.over !== null || set.some((one) => touching.reaches[one]?.unbounded)) return false;
  const [first, second] = biggest;
  const runTogether = 1 + set.filter((one) => touching.reaches[one]?.forgets).length;
  const bound = size * movedAbout(touching, set) + runTogether * (first + (size > 1 ? first + second : 0));
  return trying.wanted.spots.some((spot, i) => isCount(spot) && Math.abs(rest.by[i] as number) > bound);
}

/**
 * Those that run all round are taken up by themselves, after sets without any: with none of them about, what is left
 * lies close together.
 */
function allRoundFor({ isAllRound, allRound }: Searching, set: readonly number[], rest: Rest): number[] {
  return rest.over !== null || set.filter((one) => isAllRound[one]).length >= mostAllRound ? [] : allRound;
}

/**
 * Whether one more cause could mend what this one cannot reach: it would have to lie within four sides. Asked only
 * where the answer saves a trial.
 */
function leavesEnough(searching: Searching, { set, rest, off }: Node, one: number): boolean {
  const { touching, candidates, isAllRound } = searching;
  if (rest.over !== null || isAllRound[one]) return true;
  if (!set.some((other) => searching.interactsWith(one, other))) return true;
  const interaction = interactionOf(touching, set, candidates);
  if (interaction.forgotten.length > 0) return true;
  const { k, reaches } = touching;
  const reach = reaches[one] as Reach;
  if (reach.forgets) return true;
  if (interaction.follows) return true;
  const left = off & ~widened(reach.sides, k);
  if (left === 0) return true;
  for (let side = 0; side < k; side++) {
    const pair = (1 << side) | (1 << ((side + 1) % k));
    if ((left & ~widened(pair, k)) === 0) return true;
  }
  return false;
}

/** A corner too few cannot be made good; one too many must be forgotten. */
const canStill = ({ over }: Rest): boolean => over === null || over.over > 0;

function restWith(searching: Searching, { set, rest }: Node, one: number): Rest {
  const effect = searching.effects[one];
  const adds = effect && rest.over === null && !set.some((other) => searching.interactsWith(one, other));
  if (adds) return { over: null, by: rest.by.map((by, i) => by - (effect[i] as number)) };
  return restOf(
    searching.trying,
    [...set, one].map((other) => searching.candidates[other] as Candidate),
  );
}

/** Leaves out every set that holds a smaller one. */
function smallestOf(found: ReadonlyMap<string, number[]>, candidates: readonly Candidate[]): number[][] {
  const holdsFound = (set: readonly number[]): boolean =>
    set.some((_, i) => {
      const less = set.toSpliced(i, 1);
      return less.length > 0 && (found.has(nameOf(less, candidates)) || holdsFound(less));
    });
  return [...found.values()].filter((set) => !holdsFound(set));
}
