/**
 * The stitch graph of a round, and reading counts off it.
 *
 * Rule: a count is never remembered, it is counted: node by node, as an eye and a finger would.
 * The graph is kept in columns (5 bytes a stitch) because a blanket edge has a million of them.
 */
import {
  type Corner,
  type CornerMade,
  type NodeCode,
  NodeKind,
  type Round,
  type RoundName,
} from '../types.ts';

/**
 * A round being worked: columns that grow with every stitch. One that only tallies keeps no columns, only lengths:
 * the same acts, without the graph.
 */
export type Making = {
  kinds: Uint8Array;
  into: Int32Array;
  tallies: boolean;
  length: number;
  turns: number[];
  /** Positions made so far of the corner at each turn. */
  sizes: number[];
  made: CornerMade[];
  marks: { node: number; mishap: number }[];
};

export const startMaking = (capacity: number): Making => ({
  kinds: new Uint8Array(capacity),
  into: new Int32Array(capacity),
  tallies: false,
  length: 0,
  turns: [],
  sizes: [],
  made: [],
  marks: [],
});

/** A round of which only the counts are wanted. */
export const startTally = (): Making => ({
  kinds: noKinds,
  into: noTargets,
  tallies: true,
  length: 0,
  turns: [],
  sizes: [],
  made: [],
  marks: [],
});
const noKinds = new Uint8Array(0);
const noTargets = new Int32Array(0);

function makeRoom(making: Making, more: number): void {
  const needed = making.length + more;
  if (needed <= making.kinds.length) return;
  const capacity = Math.max(needed, making.kinds.length * 2, 16);
  const { kinds, into } = making;
  making.kinds = new Uint8Array(capacity);
  making.into = new Int32Array(capacity);
  making.kinds.set(kinds);
  making.into.set(into);
}

/** One act of the hook: one more node, worked into `into`. */
export function makeStitch(making: Making, kind: NodeCode, into: number): void {
  if (isCornerKind(kind)) making.sizes[making.sizes.length - 1] = (making.sizes.at(-1) as number) + 1;
  if (!making.tallies) {
    makeRoom(making, 1);
    making.kinds[making.length] = kind;
    making.into[making.length] = into;
  }
  making.length++;
}

/** The same act `count` times, each into the next place along. */
export function makeAlong(making: Making, count: number, into: number): void {
  if (count <= 0) return;
  if (!making.tallies) {
    makeRoom(making, count);
    const { kinds, into: targets, length } = making;
    kinds.fill(NodeKind.stitch, length, length + count);
    for (let i = 0; i < count; i++) targets[length + i] = into + i;
  }
  making.length += count;
}

/** The round turns a corner here. */
export function turn(making: Making, made: CornerMade): void {
  making.turns.push(making.length);
  making.sizes.push(0);
  making.made.push(made);
}

export const noteMishap = (making: Making, mishap: number): void => {
  making.marks.push({ node: making.length, mishap });
};

export function finishRound(
  making: Making,
  of: { name: RoundName; edging: number; faces: number; twisted: boolean },
): Round {
  return {
    ...of,
    length: making.length,
    kinds: making.kinds.slice(0, making.length),
    into: making.into.slice(0, making.length),
    turns: making.turns,
    made: making.made,
    marks: making.marks,
  };
}

export const isCornerKind = (kind: number | undefined): boolean =>
  kind === NodeKind.cornerChain || kind === NodeKind.cornerStitch;

/** Positions of the corner that begins at a turn, walked off the graph. */
export function cornerSize(round: Pick<Round, 'kinds' | 'turns' | 'length'>, corner: number): number {
  const from = round.turns[corner] as number;
  const limit = round.turns[corner + 1] ?? round.length;
  let node = from;
  while (node < limit && isCornerKind(round.kinds[node])) node++;
  return node - from;
}

/**
 * Counts a round off its graph: ordinary stitches of every side in working order (side 0 is the sum of both its
 * ends), and its corners.
 */
export function countRound(round: Round): { sides: number[]; corners: Corner[] } {
  const { turns, length, made } = round;
  const corners = turns.map((_, j): Corner => ({ made: made[j] ?? 'chain', size: cornerSize(round, j) }));
  const sides = new Array<number>(Math.max(1, turns.length)).fill(0);
  let from = 0;
  for (let j = 0; j <= turns.length; j++) {
    const to = turns[j] ?? length;
    sides[j % sides.length] = (sides[j % sides.length] as number) + countOrdinary(round.kinds, from, to);
    from = to + (corners[j]?.size ?? 0);
  }
  return { sides, corners };
}

function countOrdinary(kinds: Uint8Array, from: number, to: number): number {
  let count = 0;
  for (let node = from; node < to; node++) {
    const kind = kinds[node] as number;
    if (kind !== NodeKind.cornerChain && kind !== NodeKind.cornerStitch) count++;
  }
  return count;
}
