/** The lanes of a whole panel and their parts; shared by the panel joined and by the pieces apart. */
import type { Corner, PairRun, Round } from '../../../core/index.ts';
import { Glyph, Look, type LookCode, type Part, Tone } from '../../table/draw-list.ts';
import { makeMarks, makePart, putMark } from '../parts.ts';
import type { Source } from '../progress.ts';
import type { Drawn, Ring } from '../ring.ts';
import type { Stretch } from '../rounds.ts';
import { emptySlots } from '../slots.ts';
import { type Base, baseLine, type Closed, closePanel } from './base.ts';
import { type LaneContent, laneParts } from './lane-parts.ts';
import { finder, type Lane, layLane, type Placement } from './lanes.ts';
import { type LaneStretch, laneStretches, type Rounding, rounding } from './shape.ts';
import { cornerMiddles, spread } from './spread.ts';

/** From the front edge to the edging that meets it: two braids and the seam between, in stitches. */
export const PARTNER = 1.9;
const EDGING_STEP = 1.05;
/** From the middle of a braid to the tops of the posts below it, and how long those are. */
const TO_POSTS = 0.6;
const POST = 1.45;

/** The outermost lane of a small panel may be this loose, in stitches; lanes lie closer together sooner than that. */
const LOOSEST = 1.45;
/** How close together lanes may lie, as a share of what they have on panels with room. */
const CLOSEST_LANES = 0.4;

export type Panel = {
  ring: Ring;
  base: Base;
  radii: Rounding;
  /** Distances between lanes as a share of what they are where there is room: 1 on all but small or sharp panels. */
  tight: number;
  /** From the front to the edging that meets it. */
  partner: number;
  /** Insets: the front at 0, edgings by index, tops and middle of the posts, all. */
  edging: (edging: number) => number;
  posts: number;
  /** Length of a post. */
  post: number;
  depth: number;
  stretches: (inset: number) => LaneStretch[];
  lane: (inset: number, mirrored: boolean, aside?: number) => Lane;
};

type Laid = Omit<Panel, 'ring' | 'lane'>;

/** What lanes are laid around, and which: `partner` is the distance between the two that meet where there is room. */
type PanelShape = { closed: Closed; corners: readonly Corner[]; edgings: number; partner: number };

/**
 * The outline and lanes of a panel; `partner` is how far inside the front the last edging lies where there is room.
 * Where the front would be too loose around all lanes within it, these are laid closer together.
 */
export function layPanel({ edge }: Pick<Drawn, 'edge'>, ring: Ring, partner: number): Panel {
  const laid = layLoosely(edge, ring, partner);
  const stretches = laid.stretches;
  const counts = ring.slots.cells.map(({ count }) => count);
  const middles = cornerMiddles(stretches(0), counts);
  const lane = (inset: number, mirrored: boolean, aside = 0) => {
    // Outside the panel corners grow, and what stands there keeps to the place it belongs to.
    const wide = inset < 0 && laid.radii.outer > 0 ? 1 - inset / laid.radii.outer : 1;
    return layLane(stretches(inset), ring.slots, { mirrored, aside }, { wide, middles });
  };
  return { ...laid, ring, lane };
}

function layLoosely(edge: Drawn['edge'], ring: Ring, partner: number): Laid {
  const cells = (odd: number) => edge.sides.map((_, i) => ring.slots.cells[2 * i + odd]?.count ?? 0);
  const { corners } = edge;
  const closed = closePanel(cells(0), corners.length > 0 ? cells(1) : []);
  const shape = { closed, corners, edgings: ring.rounds.length - 1, partner };
  const roomy = layTight(shape, 1);
  if (looseness(ring, roomy) <= LOOSEST) return roomy;
  let [low, high] = [CLOSEST_LANES, 1];
  for (let i = 0; i < 7; i++) {
    const middle = (low + high) / 2;
    if (looseness(ring, layTight(shape, middle)) <= LOOSEST) low = middle;
    else high = middle;
  }
  return layTight(shape, low);
}

/** The widest that the positions of a side lie apart on the outermost lane. */
function looseness(ring: Ring, laid: Laid): number {
  const counts = ring.slots.cells.map(({ count }) => count);
  const covers = spread(laid.stretches(0), counts);
  const pitches = covers.map(({ from, to }, i) =>
    i % 2 === 0 && counts[i]! > 0 ? (to - from) / counts[i]! : 0,
  );
  return Math.max(...pitches);
}

function layTight({ closed, corners, edgings, partner: roomyPartner }: PanelShape, tight: number): Laid {
  const partner = tight * roomyPartner;
  const edging = (index: number) => partner + (edgings - 1 - index) * EDGING_STEP * tight;
  const posts = edging(0) + TO_POSTS * tight;
  const post = POST * tight;
  const depth = posts + post + 0.3 * tight;
  // The outline itself gives way too, but less: the innermost lane needs its places.
  const scale = Math.min(1, 0.6 + tight / 2);
  const base = baseLine(closed, depth, scale);
  const radii = rounding(base, corners, { depth, partner, scale });
  const stretches = (inset: number) => laneStretches(base, radii, inset);
  return { base, radii, tight, partner, edging, posts, post, depth, stretches };
}

export type Built = { parts: Part[]; sources: Map<string, Source> };

/** How a piece lies, and whether its vees are drawn mirrored. */
export type Placing = Placement & { vees: boolean };

/** The front edge's stretches: positions from the first stitch of side 0, each side with the corner after it. */
export function frontStretches(edge: { sides: number[]; corners: Corner[] }): Stretch[] {
  let from = 0;
  return edge.sides.map((stitches, side) => {
    const cornerFrom = from + stitches;
    const to = cornerFrom + (edge.corners[side]?.size ?? 0);
    const stretch = { key: `front.${side}`, side, corner: side, from, to, cornerFrom };
    from = to;
    return stretch;
  });
}

/** Looks of the places where a hand did otherwise, or is asked to. */
export const markLooks = (marks: Round['marks']): Map<number, number> =>
  new Map(marks.map((mark) => [mark.node, lookOf(mark)]));

const lookOf = ({ asked }: { asked?: true | undefined }): LookCode => (asked ? Look.asked : Look.mishap);

/** A place that lies alone stands proud, unless it is taken with the pair before it. */
const lookAlone = ({ together }: PairRun): LookCode => (together ? lookOf(together) : Look.surplus);

/** Looks of positions on a lane: what has no partner stands proud, what a hand did otherwise is marked. */
export function looksOf(
  ring: Ring,
  lane: 'front' | 'back' | 'none',
  marks: Round['marks'] = [],
): Map<number, number> {
  const looks = markLooks(marks);
  const size = lane === 'front' ? ring.slots.front : ring.slots.back;
  for (const run of ring.slots.runs) {
    if (run.kind !== `${lane}-alone`) continue;
    for (let i = 0; i < run.count; i++) {
      const index = lane === 'front' ? run.front + i : run.back - i;
      looks.set(((index % size) + size) % size, lookAlone(run));
    }
  }
  return looks;
}

export function buildFront(drawn: Drawn, panel: Panel, placing: Placing): Built {
  const content: LaneContent = {
    stretches: frontStretches(drawn.edge),
    slots: panel.ring.frontSlots(),
    cornerIsStitch: (corner) => drawn.edge.corners[corner]?.made === 'stitch',
    looks: looksOf(panel.ring, 'front'),
  };
  const lane = panel.lane(0, placing.mirrored, placing.aside);
  const parts = laneParts(lane, lane, content, {
    tone: Tone.front,
    layer: 4,
    posts: false,
    anticlockwise: !placing.mirrored,
    mirrored: placing.vees,
    way: 1,
    tight: panel.tight,
  });
  const first = new Map(content.stretches.map(({ key, from }) => [key, from]));
  return {
    parts,
    sources: new Map(parts.map(({ key }) => [key, { of: 'front', first: first.get(key) ?? 0 }])),
  };
}

const NO_LOOKS: ReadonlyMap<number, number> = new Map();

/** Where a hand did otherwise on the foundation: a dot with the mark, since a marked post would grow from far. */
function mishapPart(nodes: Round['marks'], slots: Float32Array, lane: Lane): Part {
  const marks = makeMarks(nodes.length);
  const find = finder(lane);
  nodes.forEach((mark, index) => {
    const { x, y, angle } = find(slots[mark.node]!);
    const tone = mark.asked ? Tone.ink : Tone.gap;
    const dot = { x, y, angle, scale: 0.5, glyph: Glyph.dot, tone, look: lookOf(mark) };
    putMark(marks, index, dot);
  });
  return makePart({ key: 'mishaps', marks, ribbons: [], layer: 5, solid: false });
}

/** All rounds of the back. Seen from the front it runs against the front; turned over, with it. */
export function buildBack(panel: Panel, placing: Placing): Built {
  const parts: Part[] = [];
  const sources = new Map<string, Source>();
  panel.ring.rounds.forEach((laid, index) => {
    const posts = laid.name === 'foundation';
    const last = index === panel.ring.rounds.length - 1;
    const inset = posts ? panel.posts : panel.edging(laid.edging);
    const content: LaneContent = {
      stretches: laid.stretches,
      slots: panel.ring.roundSlots(index),
      kinds: laid.round.kinds,
      cornerIsStitch: () => false,
      looks: posts ? NO_LOOKS : looksOf(panel.ring, last ? 'back' : 'none', laid.marks),
      rounds: panel.ring.rounds.length,
    };
    const lane = panel.lane(inset, placing.mirrored, placing.aside);
    const middle = posts ? panel.lane(inset + panel.post / 2, placing.mirrored, placing.aside) : lane;
    const built = laneParts(lane, middle, content, {
      tone: posts ? Tone.foundation : Tone.edging,
      layer: posts ? 1 : 3,
      posts,
      anticlockwise: placing.mirrored,
      mirrored: placing.vees,
      way: -1,
      tight: panel.tight,
    });
    parts.push(...built);
    if (posts && laid.marks.length > 0) parts.push(mishapPart(laid.marks, content.slots, middle));
    for (const { key, from } of laid.stretches) {
      sources.set(key, { of: laid.name, edging: laid.edging, first: from });
    }
  });
  return { parts, sources };
}

/** Places where a lane lacks a stitch, a part for each side of that lane: `front.2.gaps`, `edging0.1.gaps`. */
export function buildGaps(drawn: Drawn, panel: Panel, lanes: { front?: Lane; back?: Lane }): Built {
  const groups = new Map<string, { lane: Lane; slots: number[] }>();
  const { pairing } = drawn;
  const gapOfRun = new Map(pairing.gaps.map((gap) => [gap.run, gap]));
  const lastEdging = panel.ring.rounds.length - 2;
  for (const { slot, lacks, run } of emptySlots(panel.ring.slots)) {
    const lane = lanes[lacks];
    if (!lane) continue;
    const gap = gapOfRun.get(run);
    const key =
      lacks === 'front' ? `front.${gap?.frontSide ?? 0}` : `edging${lastEdging}.${gap?.backSide ?? 0}`;
    const group = groups.get(key) ?? { lane, slots: [] };
    group.slots.push(slot);
    groups.set(key, group);
  }
  const parts: Part[] = [];
  const sources = new Map<string, Source>();
  for (const [side, { lane, slots }] of groups) {
    const key = `${side}.gaps`;
    const marks = makeMarks(slots.length);
    const find = finder(lane);
    slots.forEach((slot, index) => {
      const { x, y, angle, room } = find(slot);
      const scale = Math.min(1.1 * Math.min(1, 0.4 + 0.6 * panel.tight), Math.max(0.4, room));
      putMark(marks, index, { x, y, angle, scale, glyph: Glyph.hollow, tone: Tone.gap, look: Look.gap });
    });
    parts.push(makePart({ key, marks, ribbons: [], layer: 6, solid: true }));
    sources.set(key, { of: 'gap', slots });
  }
  return { parts, sources };
}
