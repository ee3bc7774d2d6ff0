/**
 * The parts of one lane: a braid of stitches, or a row of posts, in stretches of a side and its corner.
 *
 * A stretch of more than `MOST_MARKS` stitches, and every stretch of a ring of more than `MOST_ON_RING` (of a back of
 * many rounds, of fewer), has no marks of its own, only ribbons: a whole panel that large is never seen so near that one stitch could be told.
 * The close-up shows them one by one. `made` and `markCount` count stitches all the same.
 */
import { NodeKind } from '../../../core/index.ts';
import { Glyph, type GlyphCode, Look, type Part, type Ribbon, type ToneCode } from '../../table/draw-list.ts';
import { makeMarks, makePart, putMark } from '../parts.ts';
import type { Stretch } from '../rounds.ts';
import { finder, type Lane, lineAlong } from './lanes.ts';

/** Stitches of a side above which the whole panel draws ribbons only. */
const MOST_MARKS = 5000;
/** Places on a ring above which it draws ribbons only: four lanes of so many marks are built in some 50 ms. */
const MOST_ON_RING = 30_000;
/** Rounds of the back that may hold so many each; more rounds share what these two may hold. */
const ROUNDS = 2;

/** `rounds`: lanes that are drawn alike, one in the other. */
export const hasMarks = (count: number, lane: Lane, rounds = ROUNDS): boolean =>
  count <= MOST_MARKS && lane.count * Math.max(ROUNDS, rounds) <= MOST_ON_RING * ROUNDS;

/** A stitch without partner stands out of the braid by this much, in stitches. */
const PROUD = 0.42;
const POST = 1.45;
const BRAID_WIDTH = 0.78;

export type LaneLook = {
  tone: ToneCode;
  layer: number;
  /** Posts grow inwards; the rest is a braid. */
  posts: boolean;
  /** The round runs anticlockwise on the screen. */
  anticlockwise: boolean;
  mirrored: boolean;
  /** 1 where slots rise along the lane in working order, -1 where they fall: the front and the back. */
  way: 1 | -1;
  /** Lanes lie closer together by this factor; stitches and posts are drawn smaller to fit. */
  tight: number;
};

export type LaneContent = {
  stretches: readonly Stretch[];
  slots: Float32Array;
  /** Codes of `NodeKind`; absent on the front, where what lies in `cornerFrom`–`to` is corner. */
  kinds?: Uint8Array;
  cornerIsStitch: (corner: number) => boolean;
  /** Nodes that look otherwise: surplus, mishap. */
  looks: ReadonlyMap<number, number>;
  /** Rounds of the back; absent on the front. */
  rounds?: number;
};

function glyphOf(kind: number, posts: boolean): GlyphCode {
  if (kind === NodeKind.cornerChain) return Glyph.oval;
  if (kind === NodeKind.cornerStitch) return Glyph.corner;
  if (kind === NodeKind.closing) return Glyph.closing;
  return posts ? Glyph.post : Glyph.vee;
}

/** The parts of a lane, one for each stretch. `inner` is the lane through the middle of the posts, for ribbons. */
export function laneParts(lane: Lane, inner: Lane, content: LaneContent, look: LaneLook): Part[] {
  return content.stretches
    .filter((stretch) => stretch.to > stretch.from)
    .map((stretch) =>
      makePart({
        key: stretch.key,
        marks: hasMarks(stretch.to - stretch.from, lane, content.rounds)
          ? marksOf(lane, stretch, content, look)
          : makeMarks(0),
        ribbons: ribbonsOf(look.posts ? inner : lane, stretch, content, look),
        layer: look.layer,
        solid: true,
        ...(look.mirrored && !look.posts ? { mirrored: true } : {}),
      }),
    );
}

function kindAt(content: LaneContent, stretch: Stretch, node: number): number {
  if (content.kinds) return content.kinds[node]!;
  if (node < stretch.cornerFrom) return NodeKind.stitch;
  return content.cornerIsStitch(stretch.corner) ? NodeKind.cornerStitch : NodeKind.cornerChain;
}

function marksOf(lane: Lane, stretch: Stretch, content: LaneContent, look: LaneLook) {
  const marks = makeMarks(stretch.to - stretch.from);
  const find = finder(lane);
  const turn = look.anticlockwise ? Math.PI : 0;
  const largest = 1.15 * Math.min(1, 0.4 + 0.6 * look.tight);
  for (let node = stretch.from; node < stretch.to; node++) {
    const point = find(content.slots[node]!);
    const glyph = glyphOf(kindAt(content, stretch, node), look.posts);
    const own = content.looks.get(node) ?? Look.plain;
    const proud = own === Look.surplus ? PROUD : 0;
    const post = glyph === Glyph.post;
    putMark(marks, node - stretch.from, {
      x: point.x + point.outX * proud,
      y: point.y + point.outY * proud,
      angle: post ? point.angle : point.angle + turn,
      scale: post ? POST * look.tight : Math.min(largest, Math.max(0.3, point.room)),
      glyph,
      tone: look.tone,
      look: own as typeof Look.plain,
    });
  }
  return marks;
}

/** One ribbon for the side, one for its corner, each along the part of the lane its stitches cover. */
function ribbonsOf(lane: Lane, stretch: Stretch, content: LaneContent, look: LaneLook): Ribbon[] {
  const ranges = [
    [stretch.from, Math.min(stretch.cornerFrom, stretch.to)],
    [Math.min(stretch.cornerFrom, stretch.to), stretch.to],
  ] as const;
  return ranges
    .filter(([from, to]) => to > from)
    .map(([from, to]) => ({
      points: ribbonLine(lane, content.slots[from]!, content.slots[to - 1]!, look.way),
      width: look.tight * (look.posts && from < stretch.cornerFrom ? POST : BRAID_WIDTH),
      tone: look.tone,
      firstMark: from - stretch.from,
      markCount: to - from,
    }));
}

/** The line over the slots of some marks, half a slot beyond each end. `way`: 1 where slots rise, -1 where they fall. */
export function ribbonLine(lane: Lane, first: number, last: number, way: 1 | -1): Float32Array {
  const count = Math.max(1, lane.count);
  const span = ((((last - first) * way) % count) + count) % count;
  return lineAlong(lane, first - way * 0.49, first + way * (span + 0.49));
}
