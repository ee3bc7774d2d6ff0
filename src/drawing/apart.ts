/**
 * The pieces apart, before they are joined: the front on the left, the back on the right, both right side up.
 * Laid like two pages of a book, so that closing it puts wrong sides together: facing sides bear the same letter,
 * and one sees that the back runs through them the other way.
 */
import type { Hand } from '../state/snapshot.ts';
import { type Label, type Sign, Tone } from '../table/draw-list.ts';
import * as say from '../words/marks.ts';
import { buildBack, buildFront, buildGaps, layPanel, type Panel } from './build.ts';
import { finder, type Lane } from './lanes.ts';
import type { Drawn, Ring } from './ring.ts';
import { type Anchor, cellMiddle } from './shape.ts';
import { type Fixture, gapSlot, joinBuilt, laneBox, movingSigns } from './whole.ts';

const MOST_RINGS = 24;

export function buildApart(drawn: Drawn, ring: Ring, hand: Hand): Fixture {
  const panel = layPanel(drawn, ring, 0);
  const box = laneBox(panel.stretches(0), false);
  const pad = Math.max(3, 0.06 * Math.max(box.x1 - box.x0, box.y1 - box.y0));
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
  return {
    ...built,
    labels: [
      ...sideWords(drawn, panel, 'front', front),
      ...sideWords(drawn, panel, 'back', back),
      { key: 'seen.front', x: -aside, y: 0, text: say.saySeenFront(), ...SEEN },
      { key: 'seen.back', x: aside, y: 0, text: say.saySeenBack(), ...SEEN },
    ],
    signs: rings(drawn, panel, frontLane, backLane),
    bounds: { x0: -aside + box.x0 - pad, x1: aside + box.x1 + pad, y0: box.y0 - pad, y1: box.y1 + pad },
    frame: (slot, round) => (round < 0 ? moving.front : moving.back).frame(slot, round),
    window: (slot, half) => [
      ...moving.front.window(slot, half),
      ...moving.back.window(slot, half).map((sign) => ({ ...sign, key: 'window.back' })),
    ],
  };
}

const SEEN = { px: 15, tone: Tone.muted, align: 'centre' } as const;

function rings(drawn: Drawn, panel: Panel, front: Lane, back: Lane): Sign[] {
  const finders = { front: finder(front), back: finder(back) };
  return drawn.pairing.gaps.slice(0, MOST_RINGS).map((gap, index) => {
    const { x, y } = finders[gap.short](gapSlot(panel, gap.run));
    return { kind: 'ring', key: `gap.${index}`, x, y, px: 17, tone: Tone.gap };
  });
}

/** Each side's letter outside and its count inside. */
function sideWords(
  drawn: Drawn,
  panel: Panel,
  piece: 'front' | 'back',
  placing: { mirrored: boolean; aside: number },
): Label[] {
  return drawn.edge.sides.flatMap((stitches, side): Label[] => {
    const at = (inset: number): Anchor | undefined => {
      const anchor = cellMiddle(panel.stretches(inset), 2 * side);
      const flip = placing.mirrored ? -1 : 1;
      return anchor && { ...anchor, x: placing.aside + flip * anchor.x, outX: flip * anchor.outX };
    };
    const [outside, inside] = [at(-0.7), at(piece === 'front' ? 1.2 : panel.depth + 0.5)];
    const meeting = drawn.pairing.sides.find(({ frontSide }) => frontSide === side);
    if (!outside || !inside) return [];
    const length = panel.ring.slots.cells[2 * side]!.count;
    const upright = Math.abs(inside.outX) > 0.6;
    const short = piece === 'back' && meeting !== undefined && meeting.surplus !== 0;
    const text =
      piece === 'front' ? say.sayFrontSide(stitches) : meeting ? say.sayBackSide(meeting.back) : '';
    const own = piece === 'front' ? Tone.front : Tone.edging;
    const align = !upright ? 'centre' : inside.outX > 0 ? 'right' : 'left';
    const minPx = (upright ? 44 : 78) / length;
    return [
      {
        key: `letter.${piece}.${side}`,
        x: outside.x,
        y: outside.y,
        dx: 16 * outside.outX,
        dy: 16 * outside.outY,
        text: say.sayFacing(side),
        px: 17,
        tone: own,
        bold: true,
        align: 'centre',
        plate: own,
      },
      {
        key: `${piece}.${side}`,
        x: inside.x,
        y: inside.y,
        dy: upright ? 0 : -Math.sign(inside.outY) * 9,
        text,
        px: 15,
        tone: short ? Tone.gap : own,
        bold: true,
        align,
        minPx,
      },
    ];
  });
}
