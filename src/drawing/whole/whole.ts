/**
 * The whole panel, joined: wrong sides together, seen from the front.
 * Front braid outermost, then the seam, the edgings, the posts of the foundation; one outline for all.
 */
import type { Gap } from '../../../core/index.ts';
import type { Dialect, Hand } from '../../state/snapshot.ts';
import { type Box, Glyph, type Label, Look, type Part, type Sign, Tone } from '../../table/draw-list.ts';
import * as say from '../../words/marks.ts';
import { mishapTitle } from '../../words/wrong/mishaps.ts';
import { type Mark, makeMarks, makePart, putMark } from '../parts.ts';
import type { Source } from '../progress.ts';
import type { Drawn, Ring } from '../ring.ts';
import { seamParts, seamStretches } from '../seam.ts';
import {
  type Built,
  buildBack,
  buildFront,
  buildGaps,
  frontStretches,
  layPanel,
  PARTNER,
  type Panel,
} from './build.ts';
import { clearOfLouder, findingLanes, findingSigns } from './finding-signs.ts';
import { finder, type Lane, lineBetween } from './lanes.ts';
import { boxesOfSigns, type Item, placeLabels } from './placing.ts';
import { boxOf, type LaneStretch, linePoints } from './shape.ts';
import { type Line, stackBeyond } from './stack.ts';
import {
  answer,
  boundsOf,
  cornerFinding,
  cornerName,
  inwards,
  isAlike,
  type LaidPiece,
  layPiece,
  longSides,
  sideWords,
} from './whole-words.ts';

/** Everything of a view that stays while the walk goes on, and what the moving signs need. */
export type Fixture = {
  parts: Part[];
  sources: Map<string, Source>;
  labels: Label[];
  signs: Sign[];
  bounds: Box;
  /** The frame around a place of the ring as far in as the round being made (-1: the pair), and what the close-up shows. */
  frame(slot: number, working: number): Sign[];
  window(slot: number, half: number): Sign[];
  /** What is wrong, and which of it is in hand (an index of the pairing's findings). */
  findings(inHand: number | undefined): Sign[];
};

/** Outermost lane for words and flags. */
const OUTSIDE = -1.6;
/** Markers on the whole panel at most. */
const MOST_MARKERS = 200;
const MOST_RINGS = 24;
/** Of more than these the places are marked and no words said. */
const MOST_HAPPENED = 6;
/** What happened within so many places is told once. */
const CLOSE_BY = 6;

export function joinBuilt(...all: Built[]): Built {
  return {
    parts: all.flatMap((built) => built.parts),
    sources: new Map(all.flatMap((built) => [...built.sources])),
  };
}

export function buildWhole(drawn: Drawn, ring: Ring, hand: Hand, dialect: Dialect): Fixture {
  const panel = layPanel(drawn, ring, PARTNER);
  const mirrored = hand === 'left';
  const placing = { mirrored, aside: 0, vees: mirrored };
  const front = panel.lane(0, mirrored);
  const partner = panel.lane(panel.edging(ring.rounds.length - 2), mirrored);
  const seam = seamStretches(ring.slots);
  const joined = { outer: front, inner: partner, middle: panel.lane(panel.partner / 2, mirrored) };
  const bars = seamParts(seam, joined, panel.tight);
  const barSources = new Map<string, Source>(
    seam.map(({ key, from, slots }) => [key, { of: 'seam', first: from, slots }]),
  );
  const built = joinBuilt(
    buildBack(panel, placing),
    { parts: bars, sources: barSources },
    buildFront(drawn, panel, placing),
    buildGaps(drawn, panel, { front, back: partner }),
  );
  const piece = layPiece(drawn, panel, { mirrored });
  const marker = markers(drawn, panel, mirrored);
  const happened = happenedAt(piece, dialect);
  const lanes = findingLanes(panel, mirrored);
  const { findings } = drawn.pairing;
  // Where the last hole is open its ring lies where the join began, and says so.
  const isHoleOpen = findings.some(({ code }) => code === 'last-hole');
  const arrows = startSigns(panel, mirrored).filter(({ key }) => !(isHoleOpen && key === JOIN_START));
  const sides = drawn.edge.sides.map((_, side) => side);
  const isOff = (side: number) =>
    findings.some((finding) => finding.code === 'side-off' && finding.frontSide === side);
  const items = [
    ...findings.map((finding) => cornerFinding(piece, finding)),
    ...longSides(piece),
    ...[...sides.filter(isOff), ...sides.filter((side) => !isOff(side))].map((side) =>
      sideWords(piece, side),
    ),
    answer(piece),
    ...happened.words,
    ...gapWords(drawn, piece),
    ...drawn.edge.corners.map((_, corner) => cornerName(piece, corner)),
    ...startWords(piece),
    ...marker.labels.map((label): Item => ({ places: [[label]] })),
  ];
  const loud = findingSigns(drawn, ring, lanes, undefined);
  const gaps = gapRings(gapsToTell(drawn), panel, { front, back: partner });
  const rings = clearOfLouder(gaps, loud);
  const told = new Set(
    findings
      .flatMap((one) => (one.code === 'corner-moved' ? one.corners : []))
      .map(({ frontCorner }) => frontCorner),
  );
  const clashes = clashRulers(drawn, panel, mirrored).filter(
    (_, i) => !told.has(drawn.pairing.clashes[i]!.frontCorner),
  );
  return {
    parts: [...built.parts, marker.part],
    sources: built.sources,
    labels: placeLabels(items, [piece.yarn], boxesOfSigns([...rings, ...arrows, ...loud, ...happened.signs])),
    signs: [...rings, ...clashes, ...happened.signs, ...arrows],
    bounds: boundsOf(piece),
    findings: (inHand) => (inHand === undefined ? loud : findingSigns(drawn, ring, lanes, inHand)),
    ...movingSigns(panel, front, mirrored),
  };
}

/** Frame and window, found anew for each step. */
export function movingSigns(
  panel: Panel,
  front: Lane,
  mirrored: boolean,
  aside = 0,
): Pick<Fixture, 'frame' | 'window'> {
  const findFront = finder(front);
  const posts = panel.lane(panel.depth, mirrored, aside);
  const last = panel.lane(panel.edging(panel.ring.rounds.length - 2), mirrored, aside);
  const [findPosts, findLast] = [finder(posts), finder(last)];
  const windowOut = panel.lane(-0.8, mirrored, aside);
  return {
    frame(slot, working) {
      const deep = working === 0;
      const { x, y } = findFront(slot);
      const inner = deep ? findPosts(slot) : findLast(slot);
      const [dx, dy] = [inner.x - x, inner.y - y];
      const h = Math.hypot(dx, dy) + (deep ? 0.7 : 1.3);
      const angle = Math.atan2(-dx, dy);
      const centre = { x: x + dx / 2, y: y + dy / 2 };
      return [{ kind: 'frame', key: 'place', ...centre, w: 1.35, h, angle, tone: Tone.ink }];
    },
    window(slot, half) {
      const reach = half;
      // On a small ring the close-up shows nearly all of it: an outline would tell nothing.
      if (panel.ring.slots.count < 5 * half) return [];
      const outside = lineBetween(windowOut, slot - reach, slot + reach, 24);
      const inside = straightAcross(outside, findPosts(slot), panel.depth + 0.9);
      const points = new Float32Array(outside.length + inside.length);
      points.set(outside);
      points.set(inside, outside.length);
      return [{ kind: 'window', key: 'window', points, tone: Tone.muted }];
    },
  };
}

/** A line as far from another as told, on the side of a point, and run the other way. */
function straightAcross(line: Float32Array, towards: { x: number; y: number }, far: number): number[] {
  const count = line.length / 2;
  return Array.from({ length: count }, (_, n) => {
    const i = count - 1 - n;
    const [before, after] = [Math.max(0, i - 1), Math.min(count - 1, i + 1)];
    const along = Math.atan2(
      line[2 * after + 1]! - line[2 * before + 1]!,
      line[2 * after]! - line[2 * before]!,
    );
    const [x, y] = [line[2 * i]!, line[2 * i + 1]!];
    const [acrossX, acrossY] = [-Math.sin(along), Math.cos(along)];
    const side = Math.sign(acrossX * (towards.x - x) + acrossY * (towards.y - y)) || 1;
    return [x + side * far * acrossX, y + side * far * acrossY];
  }).flat();
}

/** Slot of the first place of a gap, in the middle of its stretch. */
function gapSlot(panel: Panel, run: number): number {
  const { starts, shift, count, runs } = panel.ring.slots;
  return (starts[run]! + (runs[run]!.count - 1) / 2 + shift) % Math.max(1, count);
}

/** Gaps that nothing louder tells of: not a cause they follow from, nor a ring about the corner they lie at, nor all sides. */
function gapsToTell(drawn: Drawn): Gap[] {
  const { findings, gaps } = drawn.pairing;
  if (isAlike(drawn)) return [];
  return gaps.filter(
    (gap) =>
      !findings.some((finding) =>
        finding.code === 'side-off'
          ? finding.follows && finding.frontSide === gap.frontSide && gap.frontCorner === undefined
          : gap.frontCorner !== undefined &&
            'frontCorner' in finding &&
            finding.frontCorner === gap.frontCorner,
      ),
  );
}

/** A ring about each gap, on the lane that lacks stitches there. */
export function gapRings(gaps: readonly Gap[], panel: Panel, lanes: { front: Lane; back: Lane }): Sign[] {
  const finders = { front: finder(lanes.front), back: finder(lanes.back) };
  return gaps.slice(0, MOST_RINGS).map((gap) => {
    const { x, y } = finders[gap.short](gapSlot(panel, gap.run));
    return { kind: 'ring', key: `gap.${gap.run}`, x, y, px: 17, tone: Tone.gap };
  });
}

/** Where the hand is known to have done otherwise, first the foundation: rings in ink, and inside what it did. */
function happenedAt(piece: LaidPiece, dialect: Dialect): { signs: Sign[]; words: Item[] } {
  const { drawn, panel, mirrored } = piece;
  const within = finder(panel.lane(panel.depth + 0.3, mirrored));
  const signs: Sign[] = [];
  const words: Item[] = [];
  panel.ring.rounds.forEach(({ name, edging, marks }, index) => {
    const lane = panel.lane(
      name === 'foundation' ? panel.posts + panel.post / 2 : panel.edging(edging),
      mirrored,
    );
    const find = finder(lane);
    let told = Number.NaN;
    for (const { node, mishap, asked } of marks) {
      const slot = panel.ring.roundSlots(index)[node];
      if (asked || slot === undefined || signs.length === MOST_HAPPENED) continue;
      const { x, y } = find(slot);
      const key = `happened.${name}.${edging}.${node}`;
      signs.push({ kind: 'ring', key, x, y, px: 10, tone: Tone.ink });
      if (Math.abs(slot - told) < CLOSE_BY) continue;
      told = slot;
      const act = drawn.acts[mishap];
      const texts = [...(act ? [mishapTitle(act, drawn.plan, { dialect })] : []), say.sayHappened()];
      const lines = texts.map((text): Line => ({ key, text, px: 14, tone: Tone.ink, bold: true }));
      words.push({ places: lines.flatMap((line) => inwards(piece, within(slot), [line])) });
    }
  });
  return { signs, words };
}

/** "no partner" inside the first few gaps, where there is room. */
function gapWords(drawn: Drawn, piece: LaidPiece): Item[] {
  const within = finder(piece.panel.lane(piece.panel.depth + 0.3, piece.mirrored));
  return gapsToTell(drawn)
    .slice(0, 6)
    .map((gap, index) => {
      const slot = gapSlot(piece.panel, gap.run);
      const line: Line = {
        key: `gap.${index}`,
        text: say.sayNoPartner(gap.count),
        px: 14,
        tone: Tone.gap,
        bold: true,
        plate: Tone.gap,
      };
      return { places: inwards(piece, within(slot), [line]) };
    });
}

/** From where the front turns to where the back turns. */
function clashRulers(drawn: Drawn, panel: Panel, mirrored: boolean): Sign[] {
  const { pairing } = drawn;
  const middle = panel.lane(panel.partner / 2, mirrored);
  const { cells, count } = panel.ring.slots;
  return pairing.clashes.slice(0, MOST_RINGS).map(({ frontCorner, late }) => {
    const cell = cells[2 * frontCorner + 1]!;
    const from = cell.from + (cell.count - 1) / 2;
    const steps = Math.min(48, Math.max(2, Math.abs(late) * 2));
    const points = lineBetween(middle, from, from + Math.max(-count / 2, Math.min(count / 2, late)), steps);
    return { kind: 'ruler', key: `drift.${frontCorner}`, points, tone: Tone.gap, text: say.sayApart(late) };
  });
}

/**
 * A tick every so many stitches of the front, counted in each side, thinned where there would be too many;
 * near enough it bears its number. Flags with their poles would be a fence here: those are for the close-up.
 */
function markers(drawn: Drawn, panel: Panel, mirrored: boolean): { part: Part; labels: Label[] } {
  const every = drawn.plan.choices.markerEvery;
  const stitches = drawn.edge.sides.reduce((sum, side) => sum + side, 0);
  const step = every * Math.max(1, Math.ceil(stitches / every / MOST_MARKERS));
  const find = finder(panel.lane(-0.95, mirrored));
  const slots = panel.ring.frontSlots();
  const ticks: Mark[] = [];
  const labels: Label[] = [];
  frontStretches(drawn.edge).forEach(({ side, from, cornerFrom }) => {
    const count = cornerFrom - from;
    for (let stitch = step; stitch <= count; stitch += step) {
      const { x, y, angle, outX, outY } = find(slots[from + stitch - 1]!);
      ticks.push({ x, y, angle, scale: 0.6, glyph: Glyph.tick, tone: Tone.marker, look: Look.plain });
      // The side's own number stands outside, in the middle of flat sides.
      if (Math.abs(outY) > 0.6 && Math.abs(stitch - count / 2) < 5) continue;
      const line: Line = { key: `marker.${side}.${stitch}`, text: `${stitch}`, px: 13, tone: Tone.marker };
      const beyond = { x: x + outX * 0.4, y: y + outY * 0.4, outX, outY };
      labels.push(...stackBeyond([line], beyond, 2, { minPx: 9 }));
    }
  });
  const marks = makeMarks(ticks.length);
  ticks.forEach((tick, index) => {
    putMark(marks, index, tick);
  });
  return { part: makePart({ key: 'markers', marks, ribbons: [], layer: 5, solid: false, minPx: 4 }), labels };
}

const JOIN_START = 'start.join';

/** Where the foundation begins and where the join begins, with the way they run. */
function startSigns(panel: Panel, mirrored: boolean): Sign[] {
  const inside = finder(panel.lane(panel.depth + 0.5, mirrored));
  const { angle, x, y } = inside(panel.ring.roundSlots(0)[0] ?? 0);
  const backWay = mirrored ? Math.PI : 0;
  const outside = finder(panel.lane(OUTSIDE + 0.4, mirrored))(panel.ring.slots.shift);
  return [
    { kind: 'arrow', key: 'start.back', x, y, angle: angle + backWay, tone: Tone.foundation, minPx: 5 },
    {
      kind: 'arrow',
      key: JOIN_START,
      x: outside.x,
      y: outside.y,
      angle: outside.angle + Math.PI - backWay,
      tone: Tone.ink,
      minPx: 5,
    },
  ];
}

function startWords(piece: LaidPiece): Item[] {
  const { panel, mirrored } = piece;
  const limits = { minPx: 13 };
  const line = (key: string, text: string): Line => ({ key, text, px: 13, tone: Tone.muted });
  const begin = finder(panel.lane(panel.depth + 1.2, mirrored))(panel.ring.roundSlots(0)[0] ?? 0);
  const join = finder(panel.lane(OUTSIDE - 0.2, mirrored))(panel.ring.slots.shift);
  return [
    { places: inwards(piece, begin, [line('start.back', say.sayFoundationStart())], limits) },
    { places: [stackBeyond([line('start.join', say.sayJoinStart())], join, 4, limits)] },
  ];
}

/** Bounds of a lane, mirrored or not. */
export function laneBox(stretches: readonly LaneStretch[], mirrored: boolean): Box {
  const box = boxOf(linePoints(stretches));
  return mirrored ? { ...box, x0: -box.x1, x1: -box.x0 } : box;
}
