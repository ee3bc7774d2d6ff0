/**
 * The foundation as a teacher draws it by hand: a ring seen on its right side, marked where it begins, an arrow the way
 * it is worked, a number for each leg and each corner.
 */
import type { Hand } from '../../state/snapshot.ts';
import { type Label, type Sign, Tone } from '../../table/draw-list.ts';
import * as say from '../../words/marks.ts';
import type { Drawn, Ring } from '../ring.ts';
import type { Stretch } from '../rounds.ts';
import { layPanel, type Panel } from './build.ts';
import { finder, type Lane } from './lanes.ts';
import { type Item, placeLabels } from './placing.ts';
import { type Line, stackAt, stackBeyond, type Towards } from './stack.ts';
import { type Fixture, movingSigns } from './whole.ts';
import { boundsOf, centreOf, type LaidPiece, layPiece, lineOf } from './whole-words.ts';

/** The ring is one thick line. */
const LINE_PX = 6;
/** CSS px the ring is wide or high from which legs are told with their side. */
const FULL_PX = 120;

export function buildDiagram(drawn: Drawn, ring: Ring, hand: Hand): Fixture {
  const panel = layPanel(drawn, ring, 0);
  const mirrored = hand !== 'left';
  const lane = panel.lane(0, mirrored);
  const piece = layPiece(drawn, panel, { mirrored, depth: 0.6 });
  const outline = lineOf(piece, 0);
  const closed = Float32Array.of(...outline, outline[0] ?? 0, outline[1] ?? 0);
  return {
    parts: [],
    sources: new Map(),
    labels: words(piece, lane),
    signs: [
      { kind: 'band', key: 'ring', points: closed, px: LINE_PX, tone: Tone.foundation },
      ...start(panel, lane, mirrored),
    ],
    bounds: boundsOf(piece),
    findings: () => [],
    frame: movingSigns(panel, lane, mirrored).frame,
    window: () => [],
  };
}

/** Where the foundation begins, and the way it is worked from there. */
function start(panel: Panel, lane: Lane, mirrored: boolean): Sign[] {
  const slot = panel.ring.roundSlots(0)[0] ?? 0;
  const dot = finder(lane)(slot);
  const { x, y, angle } = finder(panel.lane(2.6, mirrored))(slot);
  const turn = mirrored ? Math.PI : 0;
  return [
    { kind: 'ring', key: 'start', x: dot.x, y: dot.y, px: 6, tone: Tone.ink, strong: true },
    { kind: 'arrow', key: 'way', x, y, angle: angle + turn, tone: Tone.ink },
  ];
}

/** A number for each leg outside the ring, one for each corner, and what the whole is. */
function words(piece: LaidPiece, lane: Lane): Label[] {
  const { drawn, panel } = piece;
  const { ring } = panel;
  const slots = ring.roundSlots(0);
  const stretches = ring.rounds[0]?.stretches ?? [];
  const outward = towards(lane, panel.lane(-1.9, piece.mirrored));
  const line = (key: string, text: string, px: number, bold = false): Line => ({
    key,
    text,
    px,
    tone: bold ? Tone.foundation : Tone.muted,
    bold,
  });
  const isRound = drawn.edge.corners.length === 0;
  const tail = stretches.find(({ corner, to, from }) => corner < 0 && to > from);
  // The start side is worked in two parts: they are no two sides.
  const partOf = (leg: Stretch) => (!tail || leg.side !== tail.side ? null : leg === tail ? 'last' : 'first');
  const legs = stretches.map((leg): Item => {
    const { key, side, from, cornerFrom } = leg;
    const count = cornerFrom - from;
    if (count === 0) return { places: [] };
    const at = outward(slots[Math.floor((from + cornerFrom - 1) / 2)] ?? 0);
    const full = [
      line(key, `${count}`, 20, true),
      line(`${key}.side`, say.sayLeg(isRound ? null : side, isRound ? null : partOf(leg)), 14),
    ];
    return {
      must: true,
      places: [
        stackBeyond(full, at, 8, { minPx: FULL_PX / piece.size }),
        stackBeyond(full.slice(0, 1), at, 6),
      ],
    };
  });
  const corners = stretches.map(({ key, cornerFrom, to }): Item => {
    const at = outward(slots[Math.floor((cornerFrom + to - 1) / 2)] ?? 0);
    const size = line(`${key}.corner`, say.sayCornerSize(to - cornerFrom, drawn.edge), 14);
    return { places: to > cornerFrom ? [stackBeyond([size], at, 4)] : [] };
  });
  const { x, y } = centreOf(piece.yarn.inner);
  const title = [
    line('total', say.sayFoundationTotal(drawn.worked.foundation.length), 24, true),
    line('seen', say.saySeenFoundation(), 15),
  ];
  return placeLabels(
    [...legs, { places: [stackAt(title, x, y), stackAt(title.slice(0, 1), x, y)] }, ...corners],
    [piece.yarn],
    [],
  );
}

/** From a slot of the ring to the place beside it on a lane further out. */
function towards(lane: Lane, further: Lane): (slot: number) => Towards {
  const [near, far] = [finder(lane), finder(further)];
  return (slot) => {
    const [from, to] = [near(slot), far(slot)];
    const length = Math.hypot(to.x - from.x, to.y - from.y) || 1;
    return { x: to.x, y: to.y, outX: (to.x - from.x) / length, outY: (to.y - from.y) / length };
  };
}
