/** What a search for causes carries along, found once and looked up from then on. */
import { type Candidate, movesTwice } from './candidate.ts';
import { effectsOf, isShadow } from './effects.ts';
import { follows, type Reach } from './reach.ts';
import { sumOf } from './sums.ts';
import { interactsFrom, never, onwards, type Touching, touchingOf } from './touch.ts';
import type { Rest, Trying } from './trying.ts';
import type { Wanted } from './wanted.ts';

export type Searching = {
  /**
   * A corner followed around an edging hides what lies beyond it: with one, a single cause more is looked for, not two;
   * and none where fewer causes explain it.
   */
  followsBarred: boolean;
  /** Sets without causes that run all round are looked for first. */
  allRoundBarred: boolean;
  trying: Trying;
  candidates: Candidate[];
  /** What each changes by itself; null where it changes the shape. */
  effects: (Int32Array | null)[];
  /** The sum of what each changes; 0 for nothing. */
  sums: Int32Array;
  /** Candidates by that sum. */
  bySum: Map<number, number[]>;
  touching: Touching;
  /** Candidates that can touch each spot by themselves; found when asked for. */
  bySpot: (number[] | undefined)[];
  /** The most stitches by which any one cause can change a number, and the next most. */
  biggest: [number, number];
  /** Sides each can touch by itself, and beside a corner worked elsewhere, as bits. */
  ownSides: Int32Array;
  nearSides: Int32Array;
  /** And all that come after those. */
  onSides: Int32Array;
  /** Every candidate's index. */
  everyone: number[];
  /** Those that may be used at all, this time round; and of these, those that can interact where there is room. */
  allowed: number[];
  interacting: number[];
  /** Those that each candidate interacts with and that may stand beside it, this time round; found when asked for. */
  partners: (number[] | undefined)[];
  /** Whether two can stand in one set. */
  fits: (a: number, b: number) => boolean;
  interactsFrom: (a: number, b: number) => number;
  interactsWith: (a: number, b: number) => boolean;
  /** Candidates that give nothing of their own: the same mishap at another place of a roomy side. */
  shadows: Uint8Array;
  /** Causes that run all round the work: habits, errors in the plan, a corner followed by the later ones. */
  isAllRound: boolean[];
  allRound: number[];
  /** Corners forgotten that the number of sides seen forbids. */
  isBarred: boolean[];
  /** Candidates all of whose sets are found already. */
  spent: Uint8Array;
  found: Map<string, number[]>;
};

export function startSearch(trying: Trying, candidates: Candidate[], asRecipe: Rest): Searching {
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
  const isAllRound = candidates.map(
    ({ cause }, one) => cause.habit || runsRound(touching.reaches[one] as Reach),
  );
  const movesOn = Int8Array.from(candidates, ({ moves }) => (moves ? moves.edging + 1 : 0));
  const bothMove = (a: number, b: number): boolean =>
    movesOn[a] !== 0 && movesOn[a] === movesOn[b] && movesTwice(candidates[a]?.moves, candidates[b]?.moves);
  const slots = numberedSlots(candidates);
  const conflict = (a: number, b: number): boolean =>
    shareSlot(slots[a] as number[], slots[b] as number[]) || bothMove(a, b);
  const from = remembered(n, (a, b) => interactsFrom(touching, a, b));
  const fits = remembered(n, (a, b) => (conflict(a, b) ? 0 : 1));
  return {
    followsBarred: false,
    allRoundBarred: false,
    trying,
    candidates,
    effects,
    sums: Int32Array.from(effects, (effect) => (effect ? sumOf(effect) : 0)),
    bySum,
    touching,
    bySpot: [],
    biggest: biggestOf(touching),
    ownSides: Int32Array.from(touching.reaches, ({ sides }) => sides),
    nearSides: Int32Array.from(touching.reaches, ({ near }) => near),
    onSides: Int32Array.from(touching.reaches, ({ sides, corners }) => onwards(sides | corners, touching.k)),
    everyone,
    allowed: everyone,
    interacting: everyone,
    partners: [],
    fits: (a, b) => fits(a, b) === 1,
    interactsFrom: from,
    interactsWith: (a, b) => from(a, b) < never,
    shadows: Uint8Array.from(candidates, (candidate) => (isShadow(touching, candidate) ? 1 : 0)),
    isAllRound,
    allRound: everyone.filter((one) => isAllRound[one]),
    isBarred: candidates.map((_, one) => bars(trying.wanted, touching.reaches[one] as Reach, touching.k)),
    spent: new Uint8Array(n),
    found: new Map(),
  };
}

/** Most candidates of which every pair is remembered: 16 MB. With more, pairs are worked out anew. */
const mostRemembered = 4096;

/** A small number for every pair, in either order, worked out once. */
function remembered(n: number, find: (a: number, b: number) => number): (a: number, b: number) => number {
  if (n > mostRemembered) return find;
  const known = new Int8Array(n * n);
  return (a, b) => {
    const pair = a < b ? a * n + b : b * n + a;
    if (known[pair] === 0) known[pair] = find(a, b) + 1;
    return (known[pair] as number) - 1;
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
