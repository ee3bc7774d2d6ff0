/**
 * The pieces apart, before they are joined: the front on the left, the back on the right, both right side up.
 * Laid like two pages of a book, so that closing it puts wrong sides together: each side of the back tells
 * which front side it meets, and one sees that the back runs through them the other way.
 */
import type { Hand } from '../../state/snapshot.ts';
import { Tone } from '../../table/draw-list.ts';
import * as say from '../../words/marks.ts';
import type { Drawn, Ring } from '../ring.ts';
import { buildBack, buildFront, buildGaps, layPanel } from './build.ts';
import { findingLanes, findingSigns } from './finding-signs.ts';
import { boxesOfSigns, type Item, placeLabels } from './placing.ts';
import { type Line, stackAt, stackBeyond } from './stack.ts';
import { type Fixture, gapRings, joinBuilt, laneBox, movingSigns } from './whole.ts';
import { anchorOf, boundsOf, centreOf, inwards, type LaidPiece, layPiece } from './whole-words.ts';

export function buildApart(drawn: Drawn, ring: Ring, hand: Hand): Fixture {
  const panel = layPanel(drawn, ring, 0);
  const box = laneBox(panel.stretches(0), false);
  const pad = Math.max(3, 0.15 * Math.max(box.x1 - box.x0, box.y1 - box.y0));
  const aside = (box.x1 - box.x0) / 2 + pad;
  const left = hand === 'left';
  // Lying flat, the far loop of every stitch is the outer one.
  const front = { mirrored: left, aside: -aside, vees: !left };
  const back = { mirrored: !left, aside, vees: !left };
  const frontLane = panel.lane(0, front.mirrored, front.aside);
  const backLane = panel.lane(panel.edging(ring.rounds.length - 2), back.mirrored, back.aside);
  const built = joinBuilt(
    buildBack(panel, back),
    buildFront(drawn, panel, front),
    buildGaps(drawn, panel, { front: frontLane, back: backLane }),
  );
  const moving = {
    front: movingSigns(panel, frontLane, front.mirrored, front.aside),
    back: movingSigns(panel, backLane, back.mirrored, back.aside),
  };
  const pieces = {
    front: layPiece(drawn, panel, { ...front, depth: 0.6 }),
    back: layPiece(drawn, panel, back),
  };
  const signs = gapRings(drawn.pairing.gaps, panel, { front: frontLane, back: backLane });
  const sides = drawn.edge.sides.map((_, side) => side);
  const items = [
    seenWords(pieces.front, say.saySeenFront(), 'front'),
    seenWords(pieces.back, say.saySeenBack(), 'back'),
    ...sides.map((side) => sideWords(pieces.front, 'front', side)),
    ...sides.map((side) => sideWords(pieces.back, 'back', side)),
  ];
  const lanes = findingLanes(panel, back.mirrored, back.aside);
  const [left0, right0] = [boundsOf(pieces.front), boundsOf(pieces.back)];
  return {
    ...built,
    labels: placeLabels(items, [pieces.front.yarn, pieces.back.yarn], boxesOfSigns(signs)),
    signs,
    bounds: { ...left0, x0: Math.min(left0.x0, right0.x0), x1: Math.max(left0.x1, right0.x1) },
    findings: (inHand) =>
      findingSigns(drawn, ring, lanes, inHand).filter(({ kind }) => kind === 'band' || kind === 'ruler'),
    frame: (slot, round) => (round < 0 ? moving.front : moving.back).frame(slot, round),
    window: (slot, half) => [
      ...moving.front.window(slot, half),
      ...moving.back.window(slot, half).map((sign) => ({ ...sign, key: 'window.back' })),
    ],
  };
}

/** Which piece lies there: in its middle where there is room, below it where there is none. */
function seenWords(piece: LaidPiece, text: string, key: string): Item {
  const { x, y } = centreOf(piece.yarn.inner);
  const { y1 } = boundsOf(piece);
  const line = (words: string, px: number): Line => ({
    key: `seen.${key}`,
    text: words,
    px,
    tone: Tone.muted,
  });
  const bottom = { x, y: y1, outX: 0, outY: 1 };
  const [short = ''] = text.split(',');
  return {
    places: [
      stackAt([line(text, 15)], x, y),
      stackAt([line(short, 15)], x, y),
      stackBeyond([line(short, 13)], bottom, 4),
    ],
  };
}

/** Each side's own number and count, and which front side the back's meets; inside where there is room. */
function sideWords(piece: LaidPiece, which: 'front' | 'back', side: number): Item {
  const { drawn, panel } = piece;
  const meeting = drawn.pairing.sides.find(({ frontSide }) => frontSide === side);
  const inside = anchorOf(piece, which === 'front' ? 0.7 : panel.depth + 0.2, 2 * side);
  const outside = anchorOf(piece, -1.9, 2 * side);
  const count = which === 'front' ? drawn.edge.sides[side] : meeting?.back;
  if (!inside || !outside || count === undefined) return { places: [] };
  const isOff = which === 'back' && meeting?.surplus !== 0;
  const tone = isOff ? Tone.gap : which === 'front' ? Tone.front : Tone.edging;
  const own = which === 'front' ? side : (meeting?.backSide ?? side);
  const plate = (text: string, px: number): Line => ({
    key: `${which}.${side}`,
    text,
    px,
    tone,
    bold: true,
    plate: tone,
  });
  const meets: Line = { key: `meets.${side}`, text: say.sayMeets(side), px: 14, tone: Tone.muted };
  const full = [plate(say.sayNumbered(own, count), 16), ...(which === 'back' ? [meets] : [])];
  const short = [plate(say.sayNumbered(own, count), 14)];
  const least = [{ ...plate(`${own + 1}`, 13) }];
  const minPx = 260 / piece.size;
  const straight = (lines: readonly Line[], limits = {}) => {
    const [, away] = inwards(piece, inside, lines, { gap: 6, ...limits });
    return away ?? [];
  };
  return {
    places: [
      straight(full, { minPx }),
      stackBeyond(full, outside, 6, { minPx }),
      straight(short),
      stackBeyond(short, outside, 6),
      straight(least),
    ],
  };
}
