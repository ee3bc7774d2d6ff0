/**
 * What is wrong, as signs that are seen from across the room. Along a side that is off lies a band from corner to
 * corner, for the count tells no more; a corner that moved shows where it is and where it belongs.
 */
import type { Finding } from '../../../core/index.ts';
import { type Sign, Tone } from '../../table/draw-list.ts';
import type { Drawn, Ring } from '../ring.ts';
import type { Panel } from './build.ts';
import { type Lane, lineBetween } from './lanes.ts';
import { sidesMet } from './sides-met.ts';
import { cornerOf } from './whole-words.ts';

const BAND = -1.35;
/** Thickness of a band in CSS px, and of the one in hand. */
const BAND_PX = { plain: 5, inHand: 9 };
const RING_PX = { plain: 13, inHand: 18 };
/** What the lines of two rings and their halos take, in CSS px. */
const HALO = 10;
const MOST_STEPS = 64;

export type FindingLanes = { band: Lane; front: Lane; seam: Lane; back: Lane };

export const findingLanes = (panel: Panel, mirrored: boolean, aside = 0): FindingLanes => ({
  band: panel.lane(BAND, mirrored, aside),
  front: panel.lane(0, mirrored, aside),
  seam: panel.lane(panel.partner / 2, mirrored, aside),
  back: panel.lane(panel.edging(panel.ring.rounds.length - 2), mirrored, aside),
});

/** A ring shows from the zoom at which it lies clear of all louder ones. */
export function clearOfLouder(rings: readonly Sign[], louder: readonly Sign[]): Sign[] {
  return rings.map((ring) => {
    if (ring.kind !== 'ring') return ring;
    const clear = louder.map((other) =>
      other.kind === 'ring'
        ? (ring.px + other.px + HALO) / Math.hypot(ring.x - other.x, ring.y - other.y)
        : 0,
    );
    return { ...ring, minPx: Math.max(ring.minPx ?? 0, ...clear) };
  });
}

/** Where a finding is drawn, as a slot; undefined where it is about the whole. */
export function slotOfFinding(drawn: Drawn, ring: Ring, finding: Finding): number | undefined {
  const { cells, count, starts, shift, runs } = ring.slots;
  const corner = cornerOf(finding);
  if (corner !== undefined) return middleOf(cells[2 * corner + 1]);
  switch (finding.code) {
    case 'side-off': {
      const { frontSide, backSide } = finding;
      const gap = drawn.pairing.gaps.find((one) => one.frontSide === frontSide && one.backSide === backSide);
      if (!gap || drawn.pairing.manner === 'stitch-by-stitch') return middleOf(cells[2 * frontSide]);
      return (starts[gap.run]! + (runs[gap.run]!.count - 1) / 2 + shift) % Math.max(1, count);
    }
    case 'offset':
    case 'last-hole':
      return shift;
    default:
      return undefined;
  }
}

const middleOf = (cell?: { from: number; count: number }): number | undefined =>
  cell && cell.from + Math.max(0, cell.count - 1) / 2;

/** Bands along what is off, thicker where it is in hand; rings and a ruler where corners should meet. */
export function findingSigns(
  drawn: Drawn,
  ring: Ring,
  lanes: FindingLanes,
  inHand: number | undefined,
): Sign[] {
  return drawn.pairing.findings.flatMap((finding, index): Sign[] => {
    const held = index === inHand;
    const key = `finding.${index}`;
    if (finding.code === 'side-off') {
      const sides = sidesMet(drawn, finding.frontSide);
      return [sideBand(ring, lanes, sides, { key, held })];
    }
    if (finding.code === 'corner-moved')
      return finding.corners.flatMap(({ frontCorner, by }) => {
        // Stitch by stitch the corner falls where all that came before brings it.
        const late = drawn.pairing.clashes.find((clash) => clash.frontCorner === frontCorner)?.late ?? -by;
        return cornersApart(ring, lanes, { corner: frontCorner, late, key: `${key}.${frontCorner}`, held });
      });
    if (finding.code === 'offset') {
      // Where the join should begin on the back, and from there the way to where it does.
      const { shift } = ring.slots;
      return [ringTowards(lanes.back, shift - finding.by, shift, { key, held })];
    }
    const slot = slotOfFinding(drawn, ring, finding);
    return slot === undefined ? [] : [ringAt(lanes.seam, slot, { key, held })];
  });
}

type Shown = { key: string; held: boolean };

function sideBand(ring: Ring, { band }: FindingLanes, sides: readonly number[], { key, held }: Shown): Sign {
  const { from } = ring.slots.cells[2 * sides[0]!]!;
  const last = ring.slots.cells[2 * sides.at(-1)!]!;
  const around = ring.slots.count;
  const count = ((last.from + last.count - from + around - 1) % around) + 1;
  const steps = Math.max(2, Math.min(MOST_STEPS, count));
  const points = lineBetween(band, from, from + Math.max(1, count - 1), steps);
  return { kind: 'band', key, points, px: held ? BAND_PX.inHand : BAND_PX.plain, tone: Tone.gap };
}

/** `late`: how many places further along the join the back's corner lies. */
type Apart = Shown & { corner: number; late: number };

function cornersApart(ring: Ring, lanes: FindingLanes, { corner, late, key, held }: Apart): Sign[] {
  const cell = ring.slots.cells[2 * corner + 1]!;
  const from = middleOf(cell)!;
  const half = ring.slots.count / 2;
  const to = from + Math.max(-half, Math.min(half, late));
  const steps = Math.min(MOST_STEPS, Math.max(2, Math.abs(late) * 2));
  const [front, back] = [
    ringAt(lanes.front, from, { key: `${key}.front`, held }),
    ringAt(lanes.back, to, { key: `${key}.back`, held }),
  ];
  // Nearer to each other than this they would lie on one another: one ring, and an arrow from where it should be.
  const apartPx = (2.4 * ringPx(held)) / Math.hypot(front.x - back.x, front.y - back.y);
  return [
    { kind: 'ruler', key, points: lineBetween(lanes.seam, from, to, steps), tone: Tone.gap, text: '' },
    { ...front, minPx: apartPx },
    { ...back, minPx: apartPx },
    { ...ringTowards(lanes.seam, from, to, { key: `${key}.both`, held }), maxPx: apartPx },
  ];
}

const ringPx = (held: boolean): number => (held ? RING_PX.inHand : RING_PX.plain);

/** A ring about where something should be, with an arrow the way it went. */
function ringTowards(lane: Lane, from: number, to: number, shown: Shown): Ringed {
  const points = lineBetween(lane, from, to, MOST_STEPS);
  const towards = Math.atan2(points[3]! - points[1]!, points[2]! - points[0]!);
  return { ...ringAt(lane, from, shown), towards };
}

type Ringed = Extract<Sign, { kind: 'ring' }>;

function ringAt(lane: Lane, slot: number, { key, held }: Shown): Ringed {
  const points = lineBetween(lane, slot, slot, 1);
  return { kind: 'ring', key, x: points[0]!, y: points[1]!, px: ringPx(held), tone: Tone.gap, strong: true };
}
