/** Words and signs of the close-up: numbers of stitches, corners, gaps, the pair at hand and the hook's target. */
import type { Step } from '../../../core/index.ts';
import { type Box, type Label, reachOf, type Sign, Tone } from '../../table/draw-list.ts';
import * as say from '../../words/marks.ts';
import { type Focus, targetOf } from '../focus.ts';
import type { Drawn, Ring } from '../ring.ts';
import { nodesWithin, type Stretch } from '../rounds.ts';
import { slotAt } from '../slots.ts';
import { frontStretches, PARTNER } from '../whole/build.ts';
import { POST_LENGTH, type Window, xOf } from './close.ts';

/** Half the width that is asked for, in stitches: some sixteen positions, more where the screen is wide. */
export const HALF_WIDTH = 8.5;
/** Feet of the flags above the front edge. Words above it stand in two rows, so many CSS px away. */
const FLAGS = -0.5;
const NUMBER_ROW = 25;
const NAME_ROW = 43;
/** CSS px a stitch from which a second row of words has room. */
const TWO_ROWS = 22;

/** Words of two gaps stand clear of each other from so many places on. */
const CLOSE_BY = 6;

type Said = { labels: Label[]; signs: Sign[] };

/** A window with what is said in it. */
type Worded = Said & { window: Window };

/** A node, and where it lies. */
type NodeAt = { node: number; slot: number };

/** What the view asks for. Words take some 50 px above and below; the view's own margin gives part of that. */
export function closeBounds(window: Window, slot: number, gaps: boolean): Box {
  const x = xOf(window, slot);
  const [numbers, names] = [1.4, 0.5];
  // What is said of a gap stands beyond the names.
  const [above, below] = window.working < 0 ? [numbers, gaps ? 1.25 : names] : [names, numbers];
  return { x0: x - HALF_WIDTH, x1: x + HALF_WIDTH, y0: FLAGS - above, y1: window.bottom + below };
}

/** Numbers and names that stay in their place while the hook moves on within a window. */
export function closeWords(drawn: Drawn, ring: Ring, window: Window): Said {
  const said: Worded = { labels: [], signs: [], window };
  const stretches = frontStretches(drawn.edge);
  const every = drawn.plan.choices.markerEvery;
  let before = -1;
  let told = Number.NEGATIVE_INFINITY;
  for (let slot = window.from; slot < window.to; slot++) {
    const { front, back, run } = slotAt(ring.slots, slot);
    const stretch = front < 0 ? undefined : stretches.find((one) => front < one.to);
    if (stretch) sayFront(said, stretch, { node: front, slot }, every);
    const isGap = (front < 0 || back < 0) && run !== before && !ring.slots.runs[run]!.together;
    // What is said a few places on would lie on it.
    if (isGap && slot - told > CLOSE_BY) {
      sayGap(said, ring, { slot, run });
      told = slot;
    }
    const { kind, count } = ring.slots.runs[run]!;
    // Clear of the last pair that is joined, where there is room.
    if (kind === 'open' && run !== before) sayOpen(said, slot + Math.min(3, (count - 1) / 2));
    before = run;
  }
  sayBack(said, ring, { every, arms: armsOf(drawn) });
  sayMoved(said, drawn, ring);
  const flags = said.signs.flatMap((sign) => (sign.kind === 'flag' ? [sign.x] : []));
  const labels = said.labels.map((label) =>
    label.key.startsWith('corner.') ? clearOfFlags(label, flags) : label,
  );
  return { labels, signs: said.signs };
}

/** A corner's name moved away from the number beside it: both stand in one row. */
function clearOfFlags(label: Label, flags: readonly number[]): Label {
  const near = flags.find((x) => Math.abs(x - label.x) * LEAST_PITCH < NAME_TO_NUMBER);
  if (near === undefined) return label;
  const away = near < label.x ? 1 : -1;
  return { ...label, dx: away * (NAME_TO_NUMBER - Math.abs(near - label.x) * LEAST_PITCH) };
}

function sayFront(said: Worded, at: Stretch, { node, slot }: NodeAt, every: number): void {
  const { window } = said;
  if (node >= at.cornerFrom) {
    if (node > at.cornerFrom) return;
    const x = xOf(window, slot + (at.to - at.cornerFrom - 1) / 2);
    const place = { x, y: FLAGS, dy: 8 - NUMBER_ROW };
    said.labels.push({ key: `corner.${slot}`, ...place, text: say.sayCorner(at.corner), ...CORNER_TYPE });
    return;
  }
  const stitch = node - at.from + 1;
  // Numbers stand at the piece that is being counted, and at no other.
  if (stitch % every !== 0 || window.working >= 0) return;
  const flag = { kind: 'flag', x: xOf(window, slot), y: FLAGS, angle: 0, tone: Tone.marker } as const;
  said.signs.push({ ...flag, key: `flag.${slot}`, text: `${stitch}` });
}

/** CSS px between the middles of a corner's name and of a number, and CSS px a stitch on the narrowest phone. */
const NAME_TO_NUMBER = 50;
const LEAST_PITCH = 15;
const CORNER_TYPE = { px: 15, tone: Tone.front, bold: true, align: 'centre' } as const;

/** Said once for a stretch of empty places, in its middle; the part of it that lies in this window. */
function sayGap(said: Worded, ring: Ring, { slot, run }: { slot: number; run: number }): void {
  const { window } = said;
  const count = ring.slots.runs[run]!.count;
  const seen = Math.min(count, window.to - slot);
  const x = xOf(window, slot + (Math.min(seen, 4) - 1) / 2);
  const text = say.sayNoPartner(count);
  const type = { px: 15, tone: Tone.gap, bold: true, align: 'centre', plate: Tone.gap } as const;
  // Below all stitches, where nothing else is said.
  said.labels.push({ key: `gap.${slot}`, x, y: window.bottom, dy: 19, text, ...type });
}

/** Nothing pinned, the corners that should meet lie apart: a ruler from the one to the other. */
function sayMoved(said: Worded, { pairing }: Drawn, ring: Ring): void {
  const { window } = said;
  const count = Math.max(1, ring.slots.count);
  for (const { frontCorner, late } of pairing.clashes) {
    const cell = ring.slots.cells[2 * frontCorner + 1]!;
    const first = cell.from + Math.max(0, cell.count - 1) / 2;
    for (let turn = Math.floor(window.from / count); turn * count + first < window.to; turn++) {
      const slot = turn * count + first;
      if (slot < window.from) continue;
      const [from, to] = [xOf(window, slot), xOf(window, slot + late)];
      const points = Float32Array.of(from, 0.1, from, PARTNER / 2, to, PARTNER / 2, to, PARTNER - 0.1);
      said.signs.push({
        kind: 'ruler',
        key: `apart.${slot}`,
        points,
        tone: Tone.gap,
        text: say.sayApart(late),
      });
    }
  }
}

function sayOpen(said: Worded, slot: number): void {
  const type = { px: 14, tone: Tone.gap, bold: true, align: 'centre', plate: Tone.gap } as const;
  said.labels.push({
    key: `open.${slot}`,
    x: xOf(said.window, slot),
    y: PARTNER / 2,
    text: say.sayOpen(),
    ...type,
  });
}

/** Stitches of the edging at a corner that stand over no post. */
const armsOf = ({ plan }: Drawn): number =>
  plan.edgings.reduce((count, { arm: [before, after] }) => count + before + after, 0);

type Counted = { every: number; arms: number };

/** The back's own corners by its own numbers, and numbers below the round being made. */
function sayBack(said: Worded, ring: Ring, counted: Counted): void {
  const { window } = said;
  const index = window.working < 0 ? ring.rounds.length - 1 : window.working;
  const slots = ring.roundSlots(index);
  const count = Math.max(1, ring.slots.count);
  for (let turn = Math.floor(window.from / count); turn * count < window.to; turn++) {
    const base = turn * count;
    const from = Math.max(window.from, base) - base;
    const to = Math.min(window.to, base + count) - base;
    if (to <= from) continue;
    for (const range of nodesWithin(slots, count, from - 0.5, to - 0.5)) {
      for (let node = range.from; node < range.to; node++) {
        const stretch = ring.rounds[index]!.stretches.find((one) => node < one.to);
        if (stretch) sayNode(said, stretch, { node, slot: base + slots[node]! }, counted);
      }
    }
  }
}

function sayNode(said: Worded, at: Stretch, { node, slot }: NodeAt, { every, arms }: Counted): void {
  const { window } = said;
  if (node >= at.cornerFrom) {
    if (node > at.cornerFrom) return;
    // Slots fall along the back, so the corner lies before its first chain. Below it there are no posts.
    const x = xOf(window, slot - (at.to - at.cornerFrom - 1) / 2);
    const text = say.sayBackCorner(at.corner);
    const isBetweenPosts = window.rows.at(-1)!.round === 0;
    const y = isBetweenPosts ? window.bottom - 0.35 : window.bottom + 0.3;
    const label: Label = {
      key: `back-corner.${slot}`,
      x,
      y,
      text,
      px: 14,
      tone: Tone.muted,
      align: 'centre',
    };
    const { left, right } = reachOf(label);
    const room = at.to - at.cornerFrom + arms;
    said.labels.push(isBetweenPosts ? { ...label, minPx: (right - left) / room } : label);
    return;
  }
  const stitch = node - at.from + 1;
  if (window.working < 0 || stitch % every !== 0) return;
  const place = { x: xOf(window, slot), y: window.bottom + 0.08, angle: Math.PI } as const;
  said.signs.push({ kind: 'flag', key: `back-flag.${slot}`, ...place, text: `${stitch}`, tone: Tone.marker });
}

/** The step at hand, and where it is. */
type AtHand = { focus: Focus; step: Step };

/** Names of the lanes and the side that is seen, at the edges of the view; the frame and the hook's target. */
export function movingWords(ring: Ring, fixed: Worded, { focus, step }: AtHand): Said {
  const { window } = fixed;
  const hasGaps = fixed.labels.some(({ key }) => key.startsWith('gap'));
  const edgings = ring.rounds.length - 1;
  // Nothing being worked, what is wrong has the room.
  const roomy = focus.placed ? {} : { minPx: TWO_ROWS };
  const type = { px: 14, tone: Tone.muted, align: 'left', pin: 'left' } as const;
  const x = xOf(window, focus.slot);
  const counting = window.working >= 0;
  // The row without numbers is next to the stitches: the side that is seen is always told there.
  const single = counting ? { y: FLAGS, dy: -18 } : { y: window.bottom, dy: 18 };
  const second = counting
    ? { y: window.bottom, dy: NAME_ROW, minPx: TWO_ROWS }
    : { y: FLAGS, dy: -NAME_ROW, minPx: TWO_ROWS };
  const [above, below] = counting ? [single, second] : [second, single];
  const labels: Label[] = [
    { ...type, ...above, key: 'lane.front', x, text: say.sayFrontLane() },
    {
      ...type,
      // The row below the stitches is for what is said of gaps.
      ...(hasGaps && !counting ? second : single),
      key: 'seen',
      x,
      text: say.saySeenClose(counting),
      align: 'right',
      pin: 'right',
      ...roomy,
    },
  ];
  if (edgings === 1)
    labels.push({ ...type, ...below, ...roomy, key: 'lane.back', x, text: say.sayBackLane() });
  else {
    for (const { round, y } of window.rows) {
      const text = round === 0 ? say.sayFoundation() : say.sayEdging(round - 1);
      labels.push({ ...type, key: `row.${round}`, x, y, text, plate: Tone.muted });
    }
  }
  return { labels, signs: placeSigns(ring, fixed, { focus, step }) };
}

function placeSigns(ring: Ring, fixed: Worded, { focus, step }: AtHand): Sign[] {
  const { window } = fixed;
  if (!focus.placed) return [];
  const row = window.rows.find(({ round }) => round === focus.working);
  const low = row ? row.y + (row.round === 0 ? POST_LENGTH + 0.12 : 0.6) : PARTNER + 0.6;
  const top = -0.56;
  const x = xOf(window, focus.slot);
  const y = (top + low) / 2;
  const signs: Sign[] = [
    { kind: 'frame', key: 'place', x, y, w: 1.2, h: low - top, angle: 0, tone: Tone.ink },
  ];
  const target = targetOf(ring, step.target);
  if (!target || step.stage === 'front') return signs;
  const into = window.rows.find(({ round }) => round === target.round);
  const at = xOf(window, target.slot);
  // Where a number or a corner's name stands, the frame and the ring must do.
  const taken =
    (target.round < 0 && step.corner >= 0) ||
    fixed.signs.some((sign) => sign.kind === 'flag' && Math.abs(sign.x - at) < 0.6);
  const arrow = { kind: 'arrow', key: 'target', x: at, tone: Tone.ink } as const;
  if (target.round < 0) {
    if (!taken) signs.push({ ...arrow, y: -1.05, angle: Math.PI / 2 });
  } else if (into) {
    // A base chain lies at the foot of its post, a back loop at the top.
    const foot = step.target.loop === 'base-chain' ? into.y + POST_LENGTH - 0.1 : into.y;
    signs.push({ kind: 'ring', key: 'loop', x: at, y: foot, px: 9, tone: Tone.ink });
    if (!taken) signs.push({ ...arrow, y: window.bottom + 0.62, angle: -Math.PI / 2 });
  }
  return signs;
}
