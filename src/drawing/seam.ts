/** The seam: a bar for every joined pair, from one lane to the other, in join order. */
import { Glyph, Look, type Part, Tone } from '../table/draw-list.ts';
import { makeMarks, makePart, putMark } from './parts.ts';
import { type Slots, stretchAt } from './slots.ts';
import { hasMarks, ribbonLine } from './whole/lane-parts.ts';
import { finder, type Lane } from './whole/lanes.ts';

/** Joined pairs that follow each other along one front side and its corner. */
export type SeamStretch = {
  key: string;
  side: number;
  /** Joined pairs before this stretch, and in it. */
  from: number;
  count: number;
  /** Runs of slots, rising: first slot and how many. */
  slots: { slot: number; count: number }[];
};

const wrap = (value: number, size: number) => ((value % size) + size) % size;

/** Runs of slots in the order they are joined: the pair where the yarn was attached comes last. */
function joinOrder(ring: Slots): { slot: number; count: number }[] {
  const order: { slot: number; count: number }[] = [];
  ring.runs.forEach((run, index) => {
    if (run.kind === 'joined') order.push({ slot: ring.starts[index]! + ring.shift, count: run.count });
  });
  const [first] = order;
  if (!first || ring.runs[0]?.kind !== 'joined') return order;
  const rest = first.count > 1 ? [{ slot: first.slot + 1, count: first.count - 1 }] : [];
  return [...rest, ...order.slice(1), { slot: first.slot, count: 1 }];
}

/** The seam in stretches, one a front side; the side where the join begins comes first and last. */
export function seamStretches(ring: Slots): SeamStretch[] {
  const stretches: SeamStretch[] = [];
  const firsts = ring.cells.map((cell) => cell.from);
  let from = 0;
  for (const run of joinOrder(ring)) {
    for (let done = 0; done < run.count; ) {
      const slot = wrap(run.slot + done, ring.count);
      const side = stretchAt(firsts, slot) >> 1;
      const end = ring.cells[2 * side + 2]?.from ?? ring.count;
      const taken = Math.min(run.count - done, end - slot);
      const last = stretches.at(-1);
      if (last?.side === side && slot > last.slots.at(-1)!.slot) {
        last.slots.push({ slot, count: taken });
        last.count += taken;
      } else {
        const again = stretches.some((stretch) => stretch.side === side);
        const key = again ? `bars.${side}.tail` : `bars.${side}`;
        stretches.push({ key, side, from, count: taken, slots: [{ slot, count: taken }] });
      }
      from += taken;
      done += taken;
    }
  }
  return stretches;
}

/** Free room at each end of a bar, in stitches: the braids lie there. */
const CLEAR = 0.46;

/** The two lanes that are joined, and the one midway between them. */
export type JoinedLanes = { outer: Lane; inner: Lane; middle: Lane };

/** Bars between two lanes; `tight` is how much closer together than elsewhere these lie. */
export function seamParts(
  stretches: readonly SeamStretch[],
  { outer, inner, middle }: JoinedLanes,
  tight = 1,
): Part[] {
  const clear = CLEAR * tight;
  return stretches.map((stretch) => {
    const marks = makeMarks(hasMarks(stretch.count, outer) ? stretch.count : 0);
    const findOuter = finder(outer);
    const findInner = finder(inner);
    let index = 0;
    if (marks.count > 0) {
      for (const { slot, count } of stretch.slots) {
        for (let i = 0; i < count; i++) {
          const a = findOuter(slot + i);
          const b = findInner(slot + i);
          const [dx, dy] = [b.x - a.x, b.y - a.y];
          const length = Math.hypot(dx, dy) || 1;
          putMark(marks, index++, {
            x: a.x + (dx / length) * clear,
            y: a.y + (dy / length) * clear,
            angle: Math.atan2(-dx, dy),
            scale: Math.max(0.2, length - 2 * clear),
            glyph: Glyph.bar,
            tone: Tone.ink,
            look: Look.plain,
          });
        }
      }
    }
    const [first, last] = [stretch.slots[0]!, stretch.slots.at(-1)!];
    const points = ribbonLine(middle, first.slot, last.slot + last.count - 1, 1);
    const ribbons = [{ points, width: 0.35, tone: Tone.ink, firstMark: 0, markCount: stretch.count }];
    return makePart({ key: stretch.key, marks, ribbons, layer: 2, solid: true });
  });
}
