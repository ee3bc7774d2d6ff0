/** Words on the whole panel: each side's counts, the answer in the middle, and which side is seen. */
import { type Box, type Label, Tone } from '../../table/draw-list.ts';
import * as say from '../../words/marks.ts';
import { sayCount, sayFirst } from '../../words/verdict.ts';
import type { Drawn } from '../ring.ts';
import type { Panel } from './build.ts';
import type { Item } from './placing.ts';
import { type Anchor, boxOf, cellMiddle, linePoints } from './shape.ts';

/** Room the words need, in CSS px. */
const SIDE_WIDTH = 78;
const LINE = 22;

/** `answer` chooses its place first, `rest` after what is said of gaps. `roomy`: the panel has a middle for words. */
type Words = { answer: Item[]; rest: Item[]; bounds: Box; roomy: boolean };

export function wordsInside(drawn: Drawn, panel: Panel, mirrored: boolean): Words {
  const outer = mirrorBox(boxOf(linePoints(panel.stretches(0))), mirrored);
  const within = linePoints(panel.stretches(panel.depth));
  const inner = mirrorBox(boxOf(within), mirrored);
  const middleBox = mirrorBox(middleOf(within), mirrored);
  const [width, height] = [outer.x1 - outer.x0, outer.y1 - outer.y0];
  const pad = Math.max(2.6, 0.066 * Math.max(width, height));
  const fits = roomInside(
    middleBox,
    sayCount(drawn.pairing).length,
    besideMiddle(panel, drawn.edge.sides.length),
  );
  const below = fits.beside > 12;
  const middle = middleWords(drawn, middleBox, fits, below ? outer.y1 + pad * 1.6 : undefined);
  const bounds = {
    x0: outer.x0 - 1.8,
    x1: outer.x1 + 1.8,
    y0: outer.y0 - pad,
    y1: outer.y1 + pad * (below ? 2.4 : 1),
  };
  return {
    answer: middle.filter(({ key }) => !isSecond(key) && key !== LEAST).map(alone),
    rest: [
      ...middle.filter(({ key }) => key === LEAST).map(alone),
      ...drawn.edge.sides.flatMap((_, side) => sideWords(drawn, panel, side, mirrored, inner)),
      { places: [middle.filter(({ key }) => key === 'seen')] },
      { places: [middle.filter(({ key }) => key.startsWith('seen.'))] },
      ...cornerWords(drawn, panel, mirrored).map(alone),
    ],
    bounds,
    roomy: !below,
  };
}

const alone = (label: Label): Item => ({ places: [[label]] });

/** Lines that give way where something else must be said: which side is seen. */
const LEAST = 'count.least';
const isSecond = (key: string) => key.startsWith('seen');

function mirrorBox(box: Box, mirrored: boolean): Box {
  return mirrored ? { ...box, x0: -box.x1, x1: -box.x0 } : box;
}

/** The box of a closed line, as wide as it is in the middle of its height: slanted panels are narrow there. */
function middleOf(points: Float32Array): Box {
  const box = boxOf(points);
  const height = box.y1 - box.y0;
  let { x0, x1 } = box;
  for (const share of [0.42, 0.5, 0.58]) {
    const y = box.y0 + share * height;
    const crossings: number[] = [];
    for (let i = 0; i < points.length; i += 2) {
      const j = (i + 2) % points.length;
      const [a, b] = [points[i + 1]!, points[j + 1]!];
      if (a > y === b > y) continue;
      crossings.push(points[i]! + ((points[j]! - points[i]!) * (y - a)) / (b - a));
    }
    if (crossings.length < 2) continue;
    x0 = Math.max(x0, Math.min(...crossings));
    x1 = Math.min(x1, Math.max(...crossings));
  }
  return { ...box, x0, x1: Math.max(x0, x1) };
}

/** `beside`: the answer alone, with room left for the words of upright sides. */
type Room = { large: number; small: number; least: number; beside: number };

/** CSS px a stitch from which the words fit into the middle: whole, in three lines, or the answer alone. */
function roomInside(inner: Box, letters: number, beside: number): Room {
  const width = Math.max(0.1, inner.x1 - inner.x0);
  const height = Math.max(0.1, inner.y1 - inner.y0);
  return {
    large: Math.max((310 + beside) / width, (4 * LINE + 40) / height),
    small: Math.max((150 + beside) / width, (4 * LINE + 10) / height),
    least: Math.max((letters * 10 + 16) / width, (3 * LINE) / height),
    beside: Math.max((90 + beside) / width, (3 * LINE) / height),
  };
}

/** Room that the words of upright sides take away from the middle, in CSS px; many sides are too short for words. */
function besideMiddle(panel: Panel, sides: number): number {
  const stretches = panel.stretches(panel.depth);
  const upright = (side: number) => Math.abs(cellMiddle(stretches, 2 * side)?.outX ?? 0) > 0.6;
  const sideways = Array.from({ length: sides }, (_, side) => side).some(upright);
  return sideways && sides <= 12 ? 2 * SIDE_WIDTH - 36 : 0;
}

/** `below`: where the words stand if the panel has no middle to speak of. */
function middleWords({ pairing, edge }: Drawn, inner: Box, fits: Room, below: number | undefined): Label[] {
  const base = { x: (inner.x0 + inner.x1) / 2, y: (inner.y0 + inner.y1) / 2, align: 'centre' as const };
  const text = sayCount(pairing);
  const cause = sayFirst(pairing.findings, edge.sides.length);
  if (below !== undefined) {
    return [{ ...base, key: 'count', y: below, text, px: 18, tone: Tone.ink, bold: true }];
  }
  const seen = say.saySeenTogether();
  const [seenFirst, seenThen] = splitAtComma(seen);
  const large = { ...base, minPx: fits.large };
  const small = { ...base, minPx: fits.small, maxPx: fits.large - 1e-4 };
  const least = { ...base, minPx: Math.min(fits.least, fits.small - 1e-3), maxPx: fits.small - 1e-4 };
  const first = { text: cause, tone: Tone.gap, bold: true } as const;
  const labels: Label[] = [
    { ...large, key: 'count', dy: -14, text, px: 36, tone: Tone.ink },
    { ...large, key: 'seen', dy: 22, text: seen, px: 16, tone: Tone.muted },
    { ...large, key: 'cause', dy: 48, px: 20, ...first },
    { ...small, key: 'count.small', dy: -20, text, px: 21, tone: Tone.ink },
    { ...small, key: 'seen.1', dy: 4, text: seenFirst, px: 14, tone: Tone.muted },
    { ...small, key: 'seen.2', dy: 22, text: seenThen, px: 14, tone: Tone.muted },
    { ...small, key: 'cause.small', dy: 43, px: 15, ...first },
  ];
  labels.push({ ...least, key: LEAST, text, px: 17, tone: Tone.ink, bold: true });
  return labels.filter((label) => label.text !== '');
}

function splitAtComma(text: string): [string, string] {
  const comma = text.indexOf(', ');
  return comma < 0 ? [text, ''] : [text.slice(0, comma + 1), text.slice(comma + 2)];
}

/** Counts at a side: above and below the front's stands outside, on upright sides both stand inside. */
function sideWords(drawn: Drawn, panel: Panel, side: number, mirrored: boolean, inner: Box): Item[] {
  const length = panel.ring.slots.cells[2 * side]!.count;
  const meeting = drawn.pairing.sides.find(({ frontSide }) => frontSide === side);
  const at = (inset: number, along?: number): Anchor | undefined => {
    const anchor = cellMiddle(panel.stretches(inset), 2 * side, along);
    return anchor && mirrored ? { ...anchor, x: -anchor.x, outX: -anchor.outX } : anchor;
  };
  // The arrow of the back's beginning stands in the middle of its side.
  const begins = drawn.plan.faces[0] === side && drawn.edge.corners.length > 0;
  const [outside, inside] = [at(-0.7), at(panel.depth + 0.4, begins ? 0.68 : 0.5)];
  if (!outside || !inside) return [];
  const upright = Math.abs(inside.outX) > 0.6;
  const align = !upright ? 'centre' : inside.outX > 0 ? 'right' : 'left';
  const minPx = upright ? (3 * LINE) / length : SIDE_WIDTH / length;
  // What stands inside needs room for the words of the side across, too.
  const across = upright ? (2 * SIDE_WIDTH) / (inner.x1 - inner.x0) : (2.4 * LINE) / (inner.y1 - inner.y0);
  // Words on upright sides stand between those above and below, and what is said of a gap.
  const between = upright ? (5.5 * LINE) / (inner.y1 - inner.y0) : 0;
  const minInside = Math.max(minPx, across, between);
  const front: Label = {
    key: `front.${side}`,
    ...pointOf(upright ? inside : outside),
    dy: upright ? -LINE / 2 : 13 * Math.sign(outside.outY),
    text: say.sayFrontSide(drawn.edge.sides[side]!),
    px: 15,
    tone: Tone.front,
    bold: true,
    align,
    minPx: upright ? minInside : minPx,
  };
  const short = meeting !== undefined && meeting.surplus !== 0;
  const back: Label | undefined = meeting && {
    key: `back.${side}`,
    ...pointOf(inside),
    ...(upright ? { dy: LINE / 2 } : { dx: -inside.outX * 30, dy: -Math.sign(inside.outY) * 11 }),
    text: say.sayBackSide(meeting.back),
    px: 15,
    tone: short ? Tone.gap : Tone.edging,
    bold: short,
    align,
    minPx: minInside,
  };
  if (!upright) {
    const further = [0.3, 0.7].map((along) => at(panel.depth + 0.4, along) ?? inside);
    return [
      alone(front),
      ...(back
        ? [
            {
              places: [back, ...further.map((there) => ({ ...back, ...pointOf(there) }))].map((one) => [one]),
            },
          ]
        : []),
    ];
  }
  // Side by side, or one below the other outside where there is no room within.
  const pair = back ? [front, back] : [front];
  const clear = at(-1.3) ?? outside;
  const out = {
    ...pointOf(clear),
    dx: (6 + (LINE - 2) * Math.abs(clear.outY / clear.outX)) * Math.sign(clear.outX),
    align: clear.outX > 0 ? 'left' : 'right',
  } as const;
  return [{ places: [pair, pair.map((label) => ({ ...label, ...out, minPx }))] }];
}

const pointOf = ({ x, y }: Anchor) => ({ x, y });

function cornerWords(drawn: Drawn, panel: Panel, mirrored: boolean): Label[] {
  const stretches = panel.stretches(-1.5);
  return drawn.edge.corners.flatMap((_, corner): Label[] => {
    const anchor = cellMiddle(stretches, 2 * corner + 1);
    if (!anchor) return [];
    const x = mirrored ? -anchor.x : anchor.x;
    const outX = mirrored ? -anchor.outX : anchor.outX;
    const align = outX > 0.3 ? 'left' : outX < -0.3 ? 'right' : 'centre';
    const text = say.sayCorner(corner);
    return [{ key: `corner.${corner}`, x, y: anchor.y, text, px: 13, tone: Tone.front, align, minPx: 16 }];
  });
}
