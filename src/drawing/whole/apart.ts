/**
 * The pieces apart, before they are joined: the front on the left, the back on the right, both right side up.
 * Laid like two pages of a book, so that closing it puts wrong sides together: facing sides bear the same letter,
 * and one sees that the back runs through them the other way.
 */
import type { Hand } from '../../state/snapshot.ts';
import { type Box, type Label, type Sign, Tone } from '../../table/draw-list.ts';
import * as say from '../../words/marks.ts';
import type { Drawn, Ring } from '../ring.ts';
import { buildBack, buildFront, buildGaps, layPanel, type Panel } from './build.ts';
import { finder, type Lane } from './lanes.ts';
import { type Item, placeLabels } from './placing.ts';
import { cellMiddle } from './shape.ts';
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
  const bounds = { x0: -aside + box.x0 - pad, x1: aside + box.x1 + pad, y0: box.y0 - pad, y1: box.y1 + pad };
  const items = [
    ...sideWords(drawn, panel, 'front', front),
    ...sideWords(drawn, panel, 'back', back),
    seenWords(box, -aside, say.saySeenFront(), 'front'),
    seenWords(box, aside, say.saySeenBack(), 'back'),
  ];
  return {
    ...built,
    labels: placeLabels(items, bounds),
    signs: rings(drawn, panel, frontLane, backLane),
    bounds,
    frame: (slot, round) => (round < 0 ? moving.front : moving.back).frame(slot, round),
    window: (slot, half) => [
      ...moving.front.window(slot, half),
      ...moving.back.window(slot, half).map((sign) => ({ ...sign, key: 'window.back' })),
    ],
  };
}

/** Which piece lies there: in its middle where there is room, below it where there is none. */
function seenWords(box: Box, x: number, text: string, key: string): Item {
  const roomy = Math.max(300 / (box.x1 - box.x0), 110 / (box.y1 - box.y0));
  const type = { x, text, tone: Tone.muted, align: 'centre' } as const;
  const below = { y: box.y1, dy: 18, px: 13 };
  const short = text.split(',', 1)[0] ?? text;
  return {
    places: [[{ ...type, key: `seen.${key}`, y: 0, px: 15, minPx: roomy }]],
    otherwise: [
      { ...type, ...below, key: `seen.${key}.below` },
      { ...type, ...below, key: `seen.${key}.short`, text: short },
    ],
  };
}

function rings(drawn: Drawn, panel: Panel, front: Lane, back: Lane): Sign[] {
  const finders = { front: finder(front), back: finder(back) };
  return drawn.pairing.gaps.slice(0, MOST_RINGS).map((gap, index) => {
    const { x, y } = finders[gap.short](gapSlot(panel, gap.run));
    return { kind: 'ring', key: `gap.${index}`, x, y, px: 17, tone: Tone.gap };
  });
}

/** Each side's letter and count, inside it or, where that is taken, outside; the letter alone from further off. */
function sideWords(
  drawn: Drawn,
  panel: Panel,
  piece: 'front' | 'back',
  placing: { mirrored: boolean; aside: number },
): Item[] {
  const stretches = panel.stretches(piece === 'front' ? 0.6 : panel.depth);
  const outer = panel.stretches(-0.8);
  const flip = placing.mirrored ? -1 : 1;
  const inside = laneBox(stretches, false);
  const [width, height] = [inside.x1 - inside.x0, inside.y1 - inside.y0];
  return drawn.edge.sides.flatMap((stitches, side): Item[] => {
    const anchor = cellMiddle(stretches, 2 * side);
    const meeting = drawn.pairing.sides.find(({ frontSide }) => frontSide === side);
    const count = piece === 'front' ? stitches : meeting?.back;
    if (!anchor || count === undefined) return [];
    const length = panel.ring.slots.cells[2 * side]!.count;
    const outX = flip * anchor.outX;
    const upright = Math.abs(outX) > 0.6;
    const short = piece === 'back' && meeting?.surplus !== 0;
    const tone = short ? Tone.gap : piece === 'front' ? Tone.front : Tone.edging;
    const roomy = Math.max(170 / width, 110 / height, (upright ? 34 : 70) / length);
    const place = { x: placing.aside + flip * anchor.x, y: anchor.y, tone, bold: true } as const;
    const align = !upright ? 'centre' : outX > 0 ? 'right' : 'left';
    const inwards = (by: number) =>
      upright ? { dx: -Math.sign(outX) * 6 } : { dy: -Math.sign(anchor.outY) * by };
    const [letter, both] = [say.sayFacing(side), say.sayFacingCount(side, count)];
    const plate: Label = {
      ...place,
      ...inwards(19),
      key: `${piece}.${side}`,
      text: both,
      px: 16,
      align,
      plate: tone,
      minPx: roomy,
    };
    const edge = cellMiddle(outer, 2 * side) ?? anchor;
    const outside: Label = {
      ...plate,
      x: placing.aside + flip * edge.x,
      y: edge.y,
      dx: upright ? (14 + 11 * Math.abs(edge.outY / outX)) * Math.sign(outX) : 0,
      dy: upright ? 0 : 16 * Math.sign(edge.outY),
      align: !upright ? 'centre' : outX > 0 ? 'left' : 'right',
    };
    return [
      {
        places: [[plate], [outside]],
        otherwise: [{ ...place, ...inwards(10), key: `${plate.key}.letter`, text: letter, px: 13, align }],
      },
    ];
  });
}
