/**
 * The close-up: the ring unrolled around the place being worked. Front edge on top, bars, the back's rounds below.
 *
 * The work runs as the hand does: right-handed from right to left. While the back is being made it is seen from
 * the back's right side, from the join on from the front; so the close-up is turned over between the two.
 * Only a window around the place is built, in blocks: stepping inside a block changes nothing but `made`.
 * x = slots from `origin`, y = 0 on the front edge.
 */
import { type Edge, NodeKind } from '../../../core/index.ts';
import type { Hand } from '../../state/snapshot.ts';
import {
  Glyph,
  type GlyphCode,
  Look,
  type LookCode,
  type Part,
  Tone,
  type ToneCode,
} from '../../table/draw-list.ts';
import { makeMarks, makePart, putMark } from '../parts.ts';
import type { Source } from '../progress.ts';
import type { Drawn, Ring } from '../ring.ts';
import { nodesWithin } from '../rounds.ts';
import { joinOrderOf, slotAt } from '../slots.ts';
import { frontStretches, looksOf, markLooks, PARTNER } from '../whole/build.ts';

/** Slots built on each side of a block, and slots of a block. */
const MARGIN = 80;
const BLOCK = 64;
/** x stays exact this far from `origin`; beyond, the window moves to another one. */
const ORIGIN_STEP = 16_384;
const ROW_STEP = 1.05;
const TO_POSTS = 0.62;
export const POST_LENGTH = 1.45;
/** More rows would make stitches too small to work from. */
const MOST_ROWS = 4;
const PROUD = 0.42;

/** A row of the back in the close-up: index into `ring.rounds`, and where its stitches (tops of its posts) lie. */
export type Row = { round: number; y: number };

export type Window = {
  /** First slot and the one after the last, unwrapped: may lie outside the ring. */
  from: number;
  to: number;
  origin: number;
  /** Index in `ring.rounds` of the round being made, -1 on the front and in the join. */
  working: number;
  /** 1: slots run to the right, -1: to the left. */
  way: 1 | -1;
  rows: Row[];
  /** Lower end of the lowest row. */
  bottom: number;
};

export type CloseBuilt = { parts: Part[]; sources: Map<string, Source>; window: Window };

export const xOf = (window: Window, slot: number): number => window.way * (slot - window.origin);

/** The window that shows a slot; `working` is the index in `ring.rounds` of the round being made, or -1. */
export function windowFor(ring: Ring, slot: number, hand: Hand, working: number): Window {
  const block = Math.floor(slot / BLOCK) * BLOCK;
  const rows = rowsFor(ring, working);
  const lowest = rows.at(-1)!;
  return {
    from: block - MARGIN,
    to: block + BLOCK + MARGIN,
    origin: Math.round(slot / ORIGIN_STEP) * ORIGIN_STEP,
    working,
    way: (hand === 'left') === working < 0 ? 1 : -1,
    rows,
    bottom: lowest.y + (lowest.round === 0 ? POST_LENGTH : 0.5),
  };
}

export const sameWindow = (a: Window, b: Window): boolean =>
  a.from === b.from &&
  a.to === b.to &&
  a.origin === b.origin &&
  a.way === b.way &&
  a.working === b.working &&
  a.rows.length === b.rows.length &&
  a.rows.every((row, i) => row.round === b.rows[i]!.round);

/** The last round always, then the one being made and what it is worked into, then what lies below. */
function rowsFor(ring: Ring, working: number): Row[] {
  const last = ring.rounds.length - 1;
  const from = working < 0 ? last : working;
  const wanted = new Set([last, from, Math.max(0, from - 1)]);
  for (let round = from - 1; round >= 0 && wanted.size < MOST_ROWS; round--) wanted.add(round);
  for (let round = last; round >= 0 && wanted.size < Math.min(MOST_ROWS, last + 1); round--)
    wanted.add(round);
  const shown = [...wanted].sort((a, b) => b - a);
  return shown.map((round, i) => ({
    round,
    y: PARTNER + i * ROW_STEP + (round === 0 ? TO_POSTS - ROW_STEP : 0),
  }));
}

/** Builds all marks of a window. */
export function buildClose(drawn: Drawn, ring: Ring, window: Window): CloseBuilt {
  const built: CloseBuilt = { parts: [], sources: new Map(), window };
  const count = Math.max(1, ring.slots.count);
  const looks = {
    front: looksOf(ring, 'front'),
    back: looksOf(ring, 'back', ring.rounds.at(-1)!.marks),
  };
  const work: CloseWork = { edge: drawn.edge, ring, looks, built };
  for (let turn = Math.floor(window.from / count); turn * count < window.to; turn++) {
    const from = Math.max(window.from, turn * count);
    const to = Math.min(window.to, (turn + 1) * count);
    if (to <= from) continue;
    addFront(work, { turn, from, to });
    addSeam(work, { turn, from, to });
    for (const row of window.rows) addRow(work, { turn, from, to }, row);
  }
  return built;
}

/** A close-up being built: what it is read from, and what is built so far. */
type CloseWork = {
  edge: Edge;
  ring: Ring;
  /** Of the nodes of the front and of the back's last round that look otherwise. */
  looks: Record<'front' | 'back', ReadonlyMap<number, number>>;
  built: CloseBuilt;
};

/** A stretch of the window within one turn of the ring: slots unwrapped. */
type Turn = { turn: number; from: number; to: number };

type Placed = { slot: number; y: number; glyph: GlyphCode; tone: ToneCode; look: LookCode };

type ClosePart = {
  key: string;
  places: Placed[];
  source: Source;
  layer: number;
  /** 1 where it is worked the way slots rise, -1 where they fall. */
  forward: 1 | -1;
};

function addPart({ built }: CloseWork, { key, places, source, layer, forward }: ClosePart): void {
  if (places.length === 0) return;
  const { window } = built;
  const marks = makeMarks(places.length);
  const onScreen = forward * window.way;
  places.forEach(({ slot, y, glyph, tone, look }, index) => {
    const standing = glyph === Glyph.post || glyph === Glyph.bar || glyph === Glyph.hollow;
    putMark(marks, index, {
      x: xOf(window, slot),
      y: look === Look.surplus ? y - PROUD : y,
      angle: standing || onScreen > 0 ? 0 : Math.PI,
      scale: glyph === Glyph.post ? POST_LENGTH : glyph === Glyph.bar ? PARTNER - 0.94 : 1,
      glyph,
      tone,
      look,
    });
  });
  // Far loops lie towards the seam: where the front runs to the right that takes mirrored stitches.
  const braid = places.every(({ glyph }) => glyph !== Glyph.post && glyph !== Glyph.bar);
  const mirrored = braid && window.way > 0;
  built.parts.push(
    makePart({ key, marks, ribbons: [], layer, solid: true, ...(mirrored ? { mirrored } : {}) }),
  );
  built.sources.set(key, source);
}

function addFront(work: CloseWork, { turn, from, to }: Turn): void {
  const { edge, ring, looks } = work;
  const stretches = frontStretches(edge);
  const places: Placed[] = [];
  const gaps: Placed[] = [];
  const gapSlots: number[] = [];
  let first = -1;
  for (let slot = from; slot < to; slot++) {
    const { front, run } = slotAt(ring.slots, slot);
    if (front < 0) {
      if (ring.slots.runs[run]?.together) continue;
      gaps.push({ slot, y: 0, glyph: Glyph.hollow, tone: Tone.gap, look: Look.gap });
      gapSlots.push(slot);
      continue;
    }
    if (first < 0) first = front;
    const stretch = stretches.find((one) => front >= one.from && front < one.to);
    const corner = stretch !== undefined && front >= stretch.cornerFrom;
    const stitch = corner && edge.corners[stretch.corner]?.made === 'stitch';
    const glyph = !corner ? Glyph.vee : stitch ? Glyph.corner : Glyph.oval;
    const look = (looks.front.get(front) ?? Look.plain) as LookCode;
    places.push({ slot, y: 0, glyph, tone: Tone.front, look });
  }
  const key = `close.front.${turn}`;
  const source = { of: 'front', first: Math.max(0, first) } as const;
  addPart(work, { key, places, source, layer: 4, forward: 1 });
  const gapSource = { of: 'gap', slots: gapSlots } as const;
  addPart(work, { key: `${key}.gaps`, places: gaps, source: gapSource, layer: 6, forward: 1 });
}

/** Bars in the order they are joined; where the join begins within the window, its end is a part of its own. */
function addSeam(work: CloseWork, { turn, from, to }: Turn): void {
  const { slots: ringSlots } = work.ring;
  let places: Placed[] = [];
  let first = 0;
  let group = 0;
  const flush = () => {
    const slots = places.map(({ slot }) => ({ slot, count: 1 }));
    const source = { of: 'seam', first, slots } as const;
    addPart(work, { key: `close.bars.${turn}.${group++}`, places, source, layer: 2, forward: 1 });
    places = [];
  };
  for (let slot = from; slot < to; slot++) {
    const order = joinOrderOf(ringSlots, slot);
    if (order < 0) continue;
    if (order !== first + places.length) {
      flush();
      first = order;
    }
    places.push({ slot, y: 0.47, glyph: Glyph.bar, tone: Tone.ink, look: Look.plain });
  }
  flush();
}

function addRow(work: CloseWork, { turn, from, to }: Turn, row: Row): void {
  const { ring } = work;
  const laid = ring.rounds[row.round]!;
  const count = Math.max(1, ring.slots.count);
  const slots = ring.roundSlots(row.round);
  const last = row.round === ring.rounds.length - 1;
  const posts = laid.name === 'foundation';
  const looks = last ? work.looks.back : markLooks(laid.marks);
  const base = turn * count;
  const name = posts ? 'foundation' : `edging${laid.edging}`;
  nodesWithin(slots, count, from - base - 0.5, to - base - 0.5).forEach((range, index) => {
    const places: Placed[] = [];
    for (let node = range.from; node < range.to; node++) {
      const own = slots[node]! + 0.5;
      places.push({
        slot: base + (own >= count ? own - count : own) - 0.5,
        // A needle-made stitch has no post: it lies where the tops are, clear of the edging.
        y: posts && laid.round.kinds[node] === NodeKind.closing ? row.y + 0.25 : row.y,
        glyph: glyphOf(laid.round.kinds[node]!, posts),
        tone: posts ? Tone.foundation : Tone.edging,
        look: (looks.get(node) ?? Look.plain) as LookCode,
      });
    }
    const source: Source = { of: laid.name, edging: laid.edging, first: range.from };
    const key = `close.${name}.${turn}.${index}`;
    addPart(work, { key, places, source, layer: posts ? 1 : 3, forward: -1 });
  });
  if (!last) return;
  const gapSlots: number[] = [];
  for (let slot = from; slot < to; slot++) {
    const { back, run } = slotAt(ring.slots, slot);
    if (back < 0 && !ring.slots.runs[run]?.together) gapSlots.push(slot);
  }
  const gaps = gapSlots.map(
    (slot): Placed => ({ slot, y: row.y, glyph: Glyph.hollow, tone: Tone.gap, look: Look.gap }),
  );
  const source = { of: 'gap', slots: gapSlots } as const;
  addPart(work, { key: `close.${name}.${turn}.gaps`, places: gaps, source, layer: 6, forward: 1 });
}

function glyphOf(kind: number, posts: boolean): GlyphCode {
  if (kind === NodeKind.cornerChain) return Glyph.oval;
  if (kind === NodeKind.cornerStitch) return Glyph.corner;
  if (kind === NodeKind.closing) return Glyph.closing;
  return posts ? Glyph.post : Glyph.vee;
}
