/**
 * Where the stitches of the back lie on the ring of slots.
 *
 * The last round's nodes have slots by the pairing. A round below lies under what is worked into it:
 * a treble under its double crochet. What nothing is worked into lies evenly between its neighbours;
 * corner chains stay together in the middle of their corner. Slots fall along a back round: it runs
 * against the front.
 */
import { NodeKind, type Round } from '../../core/index.ts';

const wrap = (value: number, size: number) => ((value % size) + size) % size;

/** The shorter way from one place on the ring to another, signed. */
function ringStep(from: number, to: number, count: number): number {
  const step = wrap(to - from, count);
  return step > count / 2 ? step - count : step;
}

export function isCorner(kind: number): boolean {
  return kind === NodeKind.cornerChain || kind === NodeKind.cornerStitch;
}

/** Slots of a round from the slots of the round worked into it; fractions where they lie between. */
export function slotsBelow(
  upper: Round,
  upperSlots: Float32Array,
  lower: Round,
  count: number,
): Float32Array {
  const slots = new Float32Array(lower.length).fill(Number.NaN);
  for (let node = 0; node < upper.length; node++) {
    const below = upper.into[node]!;
    if (below < 0 || below >= lower.length || isCorner(lower.kinds[below]!)) continue;
    const own = upperSlots[node]!;
    const there = slots[below]!;
    slots[below] = Number.isNaN(there) ? own : wrap(there + ringStep(there, own, count) / 2, count);
  }
  fillBetween(slots, lower, count);
  return slots;
}

function fillBetween(slots: Float32Array, round: Round, count: number): void {
  const length = slots.length;
  const first = slots.findIndex((slot) => !Number.isNaN(slot));
  if (first < 0) {
    for (let node = 0; node < length; node++) slots[node] = wrap(count - (node * count) / length, count);
    return;
  }
  for (let turn = 0, node = first; turn < length; ) {
    let blank = 1;
    while (blank <= length && Number.isNaN(slots[(node + blank) % length]!)) blank++;
    if (blank > 1) fillStretch(slots, round, count, { before: node, blank: blank - 1 });
    node = (node + blank) % length;
    turn += blank;
  }
}

/** Nodes in a row that have no slot yet: the node before them, and how many they are. */
type Blanks = { before: number; blank: number };

function fillStretch(slots: Float32Array, round: Round, count: number, { before, blank }: Blanks): void {
  const length = slots.length;
  const from = slots[before]!;
  const fall = wrap(from - slots[(before + blank + 1) % length]!, count) || count;
  let chains = 0;
  for (let i = 1; i <= blank; i++) if (isCorner(round.kinds[(before + i) % length]!)) chains++;
  const together = chains === blank && fall > blank + 1;
  for (let i = 1; i <= blank; i++) {
    const down = together ? fall / 2 + i - (blank + 1) / 2 : (fall * i) / (blank + 1);
    slots[(before + i) % length] = wrap(from - down, count);
  }
}

/** A stretch of a round in working order: a side and the corner that ends it, or the tail of side 0. */
export type Stretch = {
  key: string;
  side: number;
  corner: number;
  from: number;
  to: number;
  cornerFrom: number;
};

/** A round in stretches, first node first. Side 0 begins in mid-side, so it lies at both ends. */
export function stretchesOf(round: Round, name: string): Stretch[] {
  const stretches: Stretch[] = [];
  let from = 0;
  round.turns.forEach((turn, corner) => {
    let to = turn;
    const next = round.turns[corner + 1] ?? round.length;
    while (to < next && isCorner(round.kinds[to]!)) to++;
    stretches.push({ key: `${name}.${corner}`, side: corner, corner, from, to, cornerFrom: turn });
    from = to;
  });
  const key = round.turns.length === 0 ? `${name}.0` : `${name}.0.tail`;
  if (from < round.length || stretches.length === 0) {
    stretches.push({ key, side: 0, corner: -1, from, to: round.length, cornerFrom: round.length });
  }
  return stretches;
}

/**
 * The nodes whose slots lie in `from`–`to` (slots, `to` not included), as ranges in working order.
 * At most two: the window may hold the place where the round begins and ends.
 */
export function nodesWithin(
  slots: Float32Array,
  count: number,
  from: number,
  to: number,
): { from: number; to: number }[] {
  const length = slots.length;
  if (length === 0) return [];
  const origin = slots[0]!;
  // Neighbours of the round's beginning may share its slot: they belong to its end all the same.
  const fallen = (node: number) => {
    const fall = wrap(origin - slots[node]!, count);
    if (node > length / 2 && fall < count / 4) return fall + count;
    return node < length / 2 && fall > (3 * count) / 4 ? fall - count : fall;
  };
  /** First node that has fallen at least so far. */
  const firstAt = (fall: number) => {
    let [low, high] = [0, length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if (fallen(middle) < fall) low = middle + 1;
      else high = middle;
    }
    return low;
  };
  if (to - from >= count) return [{ from: 0, to: length }];
  // Slots in [from, to) have fallen by (origin - to, origin - from].
  const least = wrap(origin - to, count);
  const most = wrap(origin - from, count);
  const after = (fall: number) => {
    const node = firstAt(fall);
    return node < length && fallen(node) === fall ? node + 1 : node;
  };
  const ranges =
    least <= most
      ? [{ from: after(least), to: after(most) }]
      : [
          { from: 0, to: after(most) },
          { from: after(least), to: length },
        ];
  return ranges.filter((range) => range.to > range.from);
}
