/** Words on the whole panel: each side's counts, what is the matter with it, and the answer in the middle. */
import type { Finding, SideMeeting } from '../../../core/index.ts';
import { type Box, type Label, Tone } from '../../table/draw-list.ts';
import * as say from '../../words/marks.ts';
import { EVERY_SIDE, sayCause, sayCount, sayFinding } from '../../words/verdict.ts';
import type { Drawn } from '../ring.ts';
import type { Panel } from './build.ts';
import type { Placement } from './lanes.ts';
import type { Item } from './placing.ts';
import { type Anchor, boxOf, cellMiddle, linePoints } from './shape.ts';
import { sidesMet } from './sides-met.ts';
import { type Line, type Row, stackAt, stackBeyond, stackOffCorner } from './stack.ts';
import type { Yarn } from './yarn.ts';

/** Where words begin outside, in stitches from the front: beyond braid, markers and the band of a side that is off. */
const OUTSIDE = -1.9;
const OFF_GAP = 13;
const PLAIN_GAP = 5;
/** The way out of a side that words lie above or below, not beside. */
const FLAT = 0.9;
/** CSS px the panel is wide or high from which sides are told in full, and from which at all with words. */
const FULL_PX = 430;
const SHORT_PX = 64;
/** Smaller panels have no room for the answer below them. */
const BELOW_PX = 150;

/** Steps along the arcs of a line that words keep off, in radians. */
const FINE = 0.2;

/** A panel as it is laid, with what its words are placed by. */
export type LaidPiece = Placement & { drawn: Drawn; panel: Panel; yarn: Yarn; size: number };

/** `depth`: how far in the yarn of the piece goes. */
export function layPiece(
  drawn: Drawn,
  panel: Panel,
  { mirrored, aside = 0, depth = panel.depth + 0.1 }: { mirrored: boolean; aside?: number; depth?: number },
): LaidPiece {
  const line = (inset: number) => laid(linePoints(panel.stretches(inset), FINE), mirrored, aside);
  const yarn = { outer: line(-1), inner: line(depth) };
  const box = boxOf(yarn.outer);
  return { drawn, panel, mirrored, aside, yarn, size: Math.max(box.x1 - box.x0, box.y1 - box.y0) };
}

/** A closed line so far in, as it is drawn. */
export const lineOf = ({ panel, mirrored, aside }: LaidPiece, inset: number): Float32Array =>
  laid(linePoints(panel.stretches(inset), FINE), mirrored, aside);

const laid = (points: Float32Array, mirrored: boolean, aside: number): Float32Array =>
  points.map((value, index) => (index % 2 === 0 ? aside + (mirrored ? -value : value) : value));

export function boundsOf({ panel, mirrored, aside }: LaidPiece): Box {
  const { x0, x1, y0, y1 } = boxOf(laid(linePoints(panel.stretches(0)), mirrored, aside));
  return { x0: x0 - 1.9, x1: x1 + 1.9, y0: y0 - 1.9, y1: y1 + 1.9 };
}

/** The middle of a side (even) or corner (odd) on a lane, as it is drawn. */
export function anchorOf(
  { panel, mirrored, aside }: LaidPiece,
  inset: number,
  cell: number,
): Anchor | undefined {
  const anchor = cellMiddle(panel.stretches(inset), cell);
  const flip = mirrored ? -1 : 1;
  return anchor && { ...anchor, x: aside + flip * anchor.x, outX: flip * anchor.outX };
}

/** The middle of what lies inside a closed line. */
export function centreOf(line: ArrayLike<number>): { x: number; y: number } {
  let [area, x, y] = [0, 0, 0];
  for (let i = 0, j = line.length - 2; i < line.length; j = i, i += 2) {
    const cross = line[j]! * line[i + 1]! - line[i]! * line[j + 1]!;
    area += cross;
    x += (line[j]! + line[i]!) * cross;
    y += (line[j + 1]! + line[i + 1]!) * cross;
  }
  return Math.abs(area) < 1e-6 ? { x: line[0] ?? 0, y: line[1] ?? 0 } : { x: x / 3 / area, y: y / 3 / area };
}

/** How many meet, and the first cause; below the panel where it has no middle to speak of. */
export function answer(piece: LaidPiece): Item {
  const { drawn, yarn } = piece;
  const centre = centreOf(yarn.inner);
  const count = (px: number, bold = false): Line => ({
    key: 'count',
    text: sayCount(drawn.pairing),
    px,
    tone: Tone.ink,
    bold,
  });
  const said = sayCause(drawn.pairing.findings, drawn.edge.sides.length);
  const told = (key: string, text: string, px: number): Line => ({
    key,
    text,
    px,
    tone: Tone.gap,
    bold: true,
  });
  const cause = (px: number): Line[] => (said ? [told('cause', `${said.place}: ${said.off}`, px)] : []);
  const causeInTwo: Line[] = said
    ? [told('cause.1', `${said.place}:`, 15), told('cause.2', said.off, 15)]
    : [];
  const seen = say.saySeenTogether();
  const [seenFirst = '', seenThen = ''] = seen.split(', ');
  const muted = (key: string, words: string, px: number): Line => ({
    key,
    text: words,
    px,
    tone: Tone.muted,
  });
  const inside = [
    [count(36), ...cause(22), muted('seen', seen, 16)],
    [count(26), ...cause(19), muted('seen.1', `${seenFirst},`, 15), muted('seen.2', seenThen, 15)],
    [count(20, true), ...cause(16)],
    [count(16, true), ...causeInTwo],
    [count(16, true)],
  ];
  const bottom = { x: centre.x, y: boxOf(yarn.outer).y1 + 0.9, outX: 0, outY: 1 };
  return {
    places: [
      ...inside.map((lines) => stackAt(lines, centre.x, centre.y)),
      stackBeyond([count(16, true), ...cause(15)], bottom, 62, { minPx: BELOW_PX / piece.size }),
      stackBeyond([count(15, true)], bottom, 44, { minPx: BELOW_PX / piece.size }),
    ],
  };
}

/** Every side is off by as much: the middle says so once for all. */
export const isAlike = ({ pairing, edge }: Drawn): boolean =>
  sayCause(pairing.findings, edge.sides.length)?.place === EVERY_SIDE;

/** Both counts of a side, and what is the matter with it. */
export function sideWords(piece: LaidPiece, side: number): Item {
  const { drawn, size } = piece;
  const anchor = anchorOf(piece, OUTSIDE, 2 * side);
  const meeting = drawn.pairing.sides.find(({ frontSide }) => frontSide === side);
  if (!anchor) return { places: [] };
  // One side of the back along two of the front is told between them.
  const met = meeting && sidesMet(drawn, side).length === 1 ? meeting : undefined;
  const off = met !== undefined && met.surplus !== 0;
  const finding = drawn.pairing.findings.find(
    (one) => one.code === 'side-off' && one.frontSide === side && !one.follows,
  );
  const said = finding && sayFinding(finding, drawn.edge.sides.length);
  const isRound = drawn.edge.corners.length === 0;
  const stitches = drawn.edge.sides[side]!;
  const front = (text: string, px: number): Line => ({
    key: `front.${side}`,
    text,
    px,
    tone: Tone.front,
    bold: true,
  });
  const back = (text: string, px: number): Line => ({
    key: `back.${side}`,
    text,
    px,
    tone: off ? Tone.gap : Tone.edging,
    bold: off,
  });
  const plate = (text: string, px: number): Line => ({
    key: `off.${side}`,
    text,
    px,
    tone: Tone.gap,
    bold: true,
    plate: Tone.gap,
  });
  const full = [
    front(say.sayFrontSide(isRound ? null : side, stitches), 15),
    ...(met ? [back(say.sayBackSide(isRound ? null : met.backSide, met.back), 15)] : []),
  ];
  const short =
    met?.surplus === 0
      ? [front(say.sayBothSides(stitches), 14)]
      : [
          front(say.sayFrontSide(null, stitches), 14),
          ...(met ? [back(say.sayBackSide(null, met.back), 14)] : []),
        ];
  const least = [front(isRound ? `${stitches}` : `${side + 1}`, 13)];
  const plates = (px: number): Line[] => (said && !isAlike(drawn) ? [plate(said.off, px)] : []);
  const gap = off ? OFF_GAP : PLAIN_GAP;
  // Above and below the panel words lie beside each other, and leave the room to the drawing.
  const isFlat = Math.abs(anchor.outY) > FLAT;
  const told = (counts: readonly Line[], px: number): Row[] => [
    ...(isFlat ? [counts] : counts),
    ...plates(px),
  ];
  const [one, another] = [OFF_GAP, OFF_GAP + 14];
  return {
    must: true,
    places: [
      stackBeyond(told(full, 17), anchor, gap, { minPx: FULL_PX / size }),
      stackBeyond(told(short, 15), anchor, gap, { minPx: SHORT_PX / size }),
      stackBeyond(told(short, 15), anchor, gap + 14, { minPx: SHORT_PX / size }),
      // Narrower: between the arrows of two corners there is room below each other where there is none beside.
      ...(isFlat && off ? [stackBeyond(short, anchor, PLAIN_GAP, { minPx: SHORT_PX / size })] : []),
      ...[one, another].map((away) => stackBeyond(plates(15), anchor, away)),
      stackBeyond(least, anchor, gap),
    ],
  };
}

/** A side of the back that lies along several of the front, the back lacking a corner: told where the first two meet. */
export function longSides(piece: LaidPiece): Item[] {
  const { pairing } = piece.drawn;
  const told = pairing.findings.map(cornerOf);
  return pairing.sides.flatMap((side): Item[] => {
    const anchor = anchorOf(piece, OUTSIDE, 2 * side.frontSide + 1);
    if (!anchor || told.includes(side.frontSide) || sidesMet(piece.drawn, side.frontSide).length < 2)
      return [];
    const lines = [longSide(side, false)];
    return [
      {
        places: [
          stackOffCorner(lines, anchor, OFF_GAP, { minPx: FULL_PX / piece.size }),
          stackOffCorner([longSide(side, true)], anchor, OFF_GAP),
        ],
      },
    ];
  });
}

const longSide = ({ frontSide, backSide, back }: SideMeeting, isShort: boolean): Line => ({
  key: `back.${frontSide}`,
  text: say.sayAlongBoth(isShort ? null : backSide, back),
  px: 14,
  tone: Tone.gap,
  bold: true,
});

/** What is the matter with a corner, outside it. */
export function cornerFinding(piece: LaidPiece, finding: Finding): Item {
  const corner = cornerOf(finding);
  const anchor = corner === undefined ? undefined : anchorOf(piece, OUTSIDE, 2 * corner + 1);
  if (!anchor) return { places: [] };
  const { edge, pairing } = piece.drawn;
  const { place: where, off } = sayFinding(finding, edge.sides.length);
  const long = pairing.sides.find(
    ({ frontSide }) => frontSide === corner && sidesMet(piece.drawn, frontSide).length > 1,
  );
  const along = (isShort: boolean): Line[] => (long ? [longSide(long, isShort)] : []);
  const plate = (text: string, px: number): Line => ({
    key: `off.corner.${corner}`,
    text,
    px,
    tone: Tone.gap,
    bold: true,
    plate: Tone.gap,
  });
  return {
    places: [
      stackOffCorner([plate(`${where}: ${off}`, 17), ...along(false)], anchor, OFF_GAP, {
        minPx: FULL_PX / piece.size,
      }),
      ...(long ? [stackOffCorner([plate(off, 15), ...along(true)], anchor, OFF_GAP)] : []),
      stackOffCorner([plate(off, 15)], anchor, OFF_GAP),
      stackBeyond([plate(off, 15)], anchor, OFF_GAP),
    ],
  };
}

/** The front corner that a finding is told at, if any. */
export function cornerOf(finding: Finding): number | undefined {
  if (finding.code === 'corner-moved') return finding.corners[0]?.frontCorner;
  return 'frontCorner' in finding ? finding.frontCorner : undefined;
}

export function cornerName(piece: LaidPiece, corner: number): Item {
  const anchor = anchorOf(piece, -1.5, 2 * corner + 1);
  if (!anchor) return { places: [] };
  const name: Line = { key: `corner.${corner}`, text: say.sayCorner(corner), px: 13, tone: Tone.front };
  return { places: [stackBeyond([name], anchor, PLAIN_GAP, { minPx: 16 })] };
}

/** Words inside the panel at a place on its inner lane: towards the middle, or straight away from the lane. */
export function inwards(
  { yarn }: LaidPiece,
  at: Anchor,
  lines: readonly Line[],
  { gap = 14, minPx = 0 }: { gap?: number; minPx?: number } = {},
): Label[][] {
  const centre = centreOf(yarn.inner);
  const [dx, dy] = [centre.x - at.x, centre.y - at.y];
  const far = Math.hypot(dx, dy) || 1;
  const ways = [
    { outX: dx / far, outY: dy / far },
    { outX: -at.outX, outY: -at.outY },
  ];
  return ways.map((way) => stackBeyond(lines, { x: at.x, y: at.y, ...way }, gap, { minPx }));
}
