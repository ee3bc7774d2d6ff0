/** Which candidates may join a set, and which of them interact with those that are there. */
import { follows, type Reach } from './reach.ts';
import type { Searching } from './searching.ts';
import { isTight, never } from './touch.ts';

/** Two slips that run all round the work are believed of one making, three are not. */
export const mostAllRound = 2;

export function isOpen(searching: Searching, set: readonly number[], one: number): boolean {
  if (searching.spent[one] !== 0 || (searching.allRoundBarred && searching.isAllRound[one])) return false;
  return mayJoin(searching, set, one);
}

function mayJoin(searching: Searching, set: readonly number[], one: number): boolean {
  const { isAllRound, isBarred, followsBarred, touching, fits } = searching;
  if (isBarred[one] || (followsBarred && follows(touching.reaches[one]))) return false;
  if (isAllRound[one] && set.filter((other) => isAllRound[other]).length >= mostAllRound) return false;
  for (const other of set) if (other === one || !fits(other, one)) return false;
  return true;
}

export function allowFor(searching: Searching): void {
  const { everyone, isBarred, followsBarred, touching } = searching;
  searching.allowed = everyone.filter(
    (one) => !isBarred[one] && !(followsBarred && follows(touching.reaches[one])),
  );
  searching.interacting = searching.allowed.filter((one) => touching.reaches[one]?.isPlain === false);
}

export function partnersBeside(searching: Searching, one: number): number[] {
  const known = searching.partners[one];
  if (known) return known;
  const { allowed, interacting, interactsFrom, touching, biggest } = searching;
  const { isPlain, sides, most } = touching.reaches[one] as Reach;
  const hasRoom = isPlain && !isTight(touching, sides, most + biggest[0]);
  const alone = [one];
  const found: number[] = [];
  for (const other of hasRoom ? interacting : allowed)
    if (other !== one && interactsFrom(one, other) < never && mayJoin(searching, alone, other))
      found.push(other);
  searching.partners[one] = found;
  return found;
}

export function partnersOf(searching: Searching, set: readonly number[]): number[] {
  const [first = [], second = []] = set.map((one) => partnersBeside(searching, one));
  const other = set[0] as number;
  return second.length === 0
    ? first
    : [...first, ...second.filter((one) => !searching.interactsWith(one, other))];
}
