/**
 * Where the pins go: centres first, then corners, then from each corner to the centre (common practice; easing
 * goes ends first, then the exact middle, then halves: read, five sources).
 *
 * Rule: a pin between lies at a stitch, and its distance is that stitch's, so that the two never disagree.
 */

export type PinSide = { length: number; stitches: number };

export type Pin = {
  kind: 'centre' | 'corner' | 'quarter' | 'halfway' | 'between';
  side: number;
  /** mm along the cut edge from the corner where the side begins; on a round piece from where the round begins. */
  distance: number;
  /** The stitch pinned, from 1; the pin goes between it and the next where `isBetween`. 0 at a corner. */
  stitch: number;
  isBetween: boolean;
};

/** The place of stitch n (from 1) along a side: the middle of its own length. */
const distanceOf = ({ length, stitches }: PinSide, stitch: number): number =>
  ((stitch - 0.5) * length) / stitches;

/** The middle of n stitches: one of them where n is odd, between two where it is even. */
function centreOf(side: PinSide): Pick<Pin, 'distance' | 'stitch' | 'isBetween'> {
  const { length, stitches } = side;
  return { distance: length / 2, stitch: Math.ceil(stitches / 2), isBetween: stitches % 2 === 0 };
}

/** All pins in the order in which they are put in. Sides in the order given; each begins at the corner before it. */
export function pinsFor(sides: readonly PinSide[], spacing: number): Pin[] {
  const centres = sides.map((side, i): Pin => ({ kind: 'centre', side: i, ...centreOf(side) }));
  const corners = sides.map(
    (_, i): Pin => ({ kind: 'corner', side: i, distance: 0, stitch: 0, isBetween: false }),
  );
  return [...centres, ...corners, ...sides.flatMap((side, i) => betweens(side, i, spacing))];
}

/** From each corner to the centre, the two halves mirrored. */
function betweens(side: PinSide, index: number, spacing: number): Pin[] {
  const { length, stitches } = side;
  const each = length / stitches;
  const pins: Pin[] = [];
  let last = 0;
  for (let reached = spacing; reached < length / 2 - spacing / 2; reached += spacing) {
    const stitch = Math.round(reached / each + 0.5);
    // A middle stitch has its pin already; two pins never share a stitch.
    if (stitch <= last || stitch >= stitches / 2) continue;
    last = stitch;
    const pin = { kind: 'between' as const, side: index, isBetween: false };
    pins.push({ ...pin, stitch, distance: distanceOf(side, stitch) });
    const mirrored = stitches + 1 - stitch;
    pins.push({ ...pin, stitch: mirrored, distance: distanceOf(side, mirrored) });
  }
  return pins;
}

/** A round piece: quarters, then halfway between those, then between at the spacing. */
export function pinsForRound(side: PinSide, spacing: number): Pin[] {
  const { length, stitches } = side;
  const at = (kind: Pin['kind'], part: number): Pin => {
    const exact = stitches * part;
    const isBetween = Number.isInteger(exact);
    const stitch = isBetween ? exact : Math.ceil(exact);
    const place = isBetween ? part * length : distanceOf(side, stitch);
    return { kind, side: 0, distance: place, stitch, isBetween };
  };
  const quarters = [0, 0.25, 0.5, 0.75].map((part) => at('quarter', part));
  const halves = [0.125, 0.375, 0.625, 0.875].map((part) => at('halfway', part));
  const eighth = length / 8;
  const extra = Math.max(0, Math.ceil(eighth / spacing) - 1);
  const between = Array.from({ length: 8 * extra }, (_, i) => {
    const part = Math.floor(i / extra) / 8 + ((i % extra) + 1) / (8 * (extra + 1));
    return at('between', part);
  });
  return [...quarters, ...halves, ...between];
}
