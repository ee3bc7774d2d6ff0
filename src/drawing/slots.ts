/**
 * The ring of slots: every place of the join once, in the front's order from the first stitch of side 0.
 *
 * A slot holds a front position, a back node, or both. Slots lie in cells: side 0, corner 0, side 1, …
 * A surplus on one lane makes a slot that is empty on the other: that is where the gap is drawn.
 * Nothing is stored per slot: the runs of the pairing are searched, so a ring of a million costs nothing.
 */
import { lastNotAbove, type Pairing, type PairRun, type Shape } from '../../core/index.ts';

export type Slots = {
  /** Slots on the ring. */
  count: number;
  front: number;
  back: number;
  /** Cell 2i is front side i, cell 2i + 1 the corner after it. `from` is its first slot. */
  cells: { from: number; count: number }[];
  runs: readonly PairRun[];
  /** Join-order index at which each run begins, and the total. */
  starts: Float64Array;
  /** Joined pairs before each run, and in all. */
  joined: Float64Array;
  /** Slot of the first place joined. */
  shift: number;
};

/** What lies in a slot; -1 where a lane is empty. `run` is an index into the pairing's runs. */
export type Slot = { front: number; back: number; run: number };

const wrap = (value: number, size: number) => ((value % size) + size) % size;

/** First front position of every cell, and the total. */
function cellStarts(shape: Shape): number[] {
  const starts = [0];
  for (let i = 0; i < shape.sides.length; i++) {
    const afterSide = starts[2 * i]! + shape.sides[i]!;
    starts.push(afterSide, afterSide + (shape.corners[i]?.size ?? 0));
  }
  return starts;
}

/** Index of the stretch in which a position lies; before all of them it is the first. */
export const stretchAt = (starts: ArrayLike<number>, position: number): number =>
  Math.max(0, lastNotAbove(starts, position));

/** The slots of a pairing on a front of this shape. */
export function ringOf(front: Shape, pairing: Pairing): Slots {
  const { runs } = pairing;
  const starts = new Float64Array(runs.length + 1);
  const joined = new Float64Array(runs.length + 1);
  runs.forEach((run, i) => {
    starts[i + 1] = starts[i]! + run.count;
    joined[i + 1] = joined[i]! + (run.kind === 'joined' ? run.count : 0);
  });
  const count = starts[runs.length]!;
  const positions = cellStarts(front);
  const cells = positions.slice(0, -1).map(() => ({ from: 0, count: 0 }));
  const cellOfGap = new Map(
    pairing.gaps.map((gap) => [
      gap.run,
      gap.frontCorner === undefined ? 2 * gap.frontSide : 2 * gap.frontCorner + 1,
    ]),
  );
  const cellOfRun = (index: number) =>
    cellOfGap.get(index) ?? stretchAt(positions, wrap(runs[index]!.front, pairing.front));
  let zero = 0;
  runs.forEach((run, index) => {
    if (run.kind === 'back-alone') {
      cells[Math.min(cellOfRun(index), cells.length - 1)]!.count += run.count;
      return;
    }
    for (let done = 0; done < run.count; ) {
      const position = wrap(run.front + done, pairing.front);
      const cell = Math.min(stretchAt(positions, position), cells.length - 1);
      const taken = Math.min(run.count - done, positions[cell + 1]! - position);
      if (position === 0) zero = starts[index]! + done;
      cells[cell]!.count += taken;
      done += taken;
    }
  });
  // A place without partner that belongs to side 0 may lie before its first stitch.
  const before = stretchAt(starts.subarray(0, runs.length), wrap(zero - 1, count));
  if (count > 0 && runs[before]!.kind === 'back-alone' && cells.length > 1 && cellOfRun(before) === 0) {
    zero = starts[before]!;
  }
  let from = 0;
  for (const cell of cells) {
    cell.from = from;
    from += cell.count;
  }
  const shift = wrap(-zero, Math.max(1, count));
  return { count, front: pairing.front, back: pairing.back, cells, runs, starts, joined, shift };
}

/** What lies in a slot. */
export function slotAt(ring: Slots, slot: number): Slot {
  const order = wrap(slot - ring.shift, ring.count);
  const run = stretchAt(ring.starts.subarray(0, ring.runs.length), order);
  const { kind, front, back } = ring.runs[run]!;
  const along = order - ring.starts[run]!;
  return {
    front: kind === 'back-alone' ? -1 : wrap(front + along, ring.front),
    back: kind === 'front-alone' ? -1 : wrap(back - along, ring.back),
    run,
  };
}

/**
 * When the pair in a slot is joined, counted from 0; -1 where none is. The pair where the yarn was
 * attached is joined last of all.
 */
export function joinOrderOf(ring: Slots, slot: number): number {
  const order = wrap(slot - ring.shift, ring.count);
  const run = stretchAt(ring.starts.subarray(0, ring.runs.length), order);
  if (ring.runs[run]!.kind !== 'joined') return -1;
  const pair = ring.joined[run]! + order - ring.starts[run]!;
  if (ring.runs[0]!.kind !== 'joined') return pair;
  return pair === 0 ? ring.joined[ring.runs.length]! - 1 : pair - 1;
}

/** The slot of the pair joined as the `order`-th, counted from 0; the join's start where there is none. */
export function slotOfJoin(ring: Slots, order: number): number {
  const pairs = ring.joined[ring.runs.length]!;
  if (pairs === 0) return ring.shift;
  const within = Math.max(0, Math.min(pairs - 1, order));
  const pair = ring.runs[0]!.kind === 'joined' ? (within + 1) % pairs : within;
  const run = stretchAt(ring.joined.subarray(0, ring.runs.length), pair);
  return wrap(ring.starts[run]! + pair - ring.joined[run]! + ring.shift, ring.count);
}

/** The slot of every front position. */
export function frontSlots(ring: Slots): Float32Array {
  const slots = new Float32Array(ring.front);
  ring.runs.forEach((run, index) => {
    if (run.kind === 'back-alone') return;
    for (let i = 0; i < run.count; i++) {
      slots[wrap(run.front + i, ring.front)] = wrap(ring.starts[index]! + i + ring.shift, ring.count);
    }
  });
  return slots;
}

/** The slot of every node of the back's last round. */
export function backSlots(ring: Slots): Float32Array {
  const slots = new Float32Array(ring.back);
  ring.runs.forEach((run, index) => {
    if (run.kind === 'front-alone') return;
    for (let i = 0; i < run.count; i++) {
      slots[wrap(run.back - i, ring.back)] = wrap(ring.starts[index]! + i + ring.shift, ring.count);
    }
  });
  return slots;
}

/** The runs where one lane is empty, as slots: where on the ring, and which lane lacks a stitch. */
export function emptySlots(ring: Slots): { slot: number; lacks: 'front' | 'back'; run: number }[] {
  const empty: { slot: number; lacks: 'front' | 'back'; run: number }[] = [];
  ring.runs.forEach((run, index) => {
    if (run.kind === 'joined' || run.kind === 'open' || run.together) return;
    const lacks = run.kind === 'back-alone' ? 'front' : 'back';
    for (let i = 0; i < run.count; i++) {
      empty.push({ slot: wrap(ring.starts[index]! + i + ring.shift, ring.count), lacks, run: index });
    }
  });
  return empty;
}
