/**
 * Sewing the strip on by hand: running stitch (ISO 4915 class 209, read by description) over one crochet stitch at a
 * time, out and back, so that the second pass fills the gaps of the first; or by machine just below the edging.
 *
 * Rule: a pass goes over a place and under the next, and a corner is one place. Thread for a pass of length L
 * through a thickness t with stitches s long is L(1 + t/s) (worked out here; with s = t both passes take four times the
 * seam, the rule in print).
 */

type SewnSide = { stitches: number; seam: number };

export type SewingInput = {
  /** In the order in which they are sewn; the sewing begins in the middle of the first. */
  sides: SewnSide[];
  hasCorners: boolean;
  /** mm of cloth and crochet together, lying loose. */
  thickness: number;
  /** mm of thread that a hand works with at a time. */
  working: number;
  /** mm left at each end of a thread to make it fast. */
  tail: number;
};

/** Where one thread ends and the next begins: so many stitches into a side, as the sewing goes. */
type ThreadChange = { side: number; stitch: number };

export type SewingPlan = {
  seam: number;
  /** Crochet stitches that the thread goes over, side by side: on the way out, and on the way back. */
  over: { out: number[]; back: number[] };
  /** Whether the needle comes out before or after each corner on the way out; the other on the way back. */
  corners: ('before' | 'after')[];
  /** mm: the seam's share of one pass, both passes, and what the lengths come to with their ends. */
  pass: number;
  both: number;
  cut: number;
  /** Working lengths a pass, and where they change on the way out. */
  lengths: number;
  changes: ThreadChange[];
};

/** mm kept between a change of thread and a corner: our own choice. */
const clearOfCorner = 30;

export function sewByHand(input: SewingInput): SewingPlan {
  const { sides, hasCorners, working, tail } = input;
  const seam = sides.reduce((sum, side) => sum + side.seam, 0);
  const stitches = sides.reduce((sum, side) => sum + side.stitches, 0);
  const sewn = stitchesOf(sides, hasCorners);
  const pitch = seam / stitches;
  const take = 1 + input.thickness / pitch;
  const pass = seam * take;
  const changes = changesOf(sewn, pitch, (working - 2 * tail) / take, hasCorners);
  const over = { out: sides.map(() => 0), back: sides.map(() => 0) };
  const corners: ('before' | 'after')[] = [];
  sewn.forEach(({ side, isCorner }, i) => {
    const isOver = i % 2 === 0;
    // Over a corner's chains the thread is on top, so the needle has come out before them.
    if (isCorner) corners[side] = isOver ? 'before' : 'after';
    else (isOver ? over.out : over.back)[side] = ((isOver ? over.out : over.back)[side] as number) + 1;
  });
  const lengths = changes.length + 1;
  return {
    seam,
    over,
    corners,
    pass,
    both: 2 * pass,
    cut: 2 * (pass + lengths * 2 * tail),
    lengths,
    changes,
  };
}

/** A stitch, or a corner, that a pass of thread goes along. */
type SewnStitch = { side: number; stitch: number; isCorner: boolean };

/** All that a pass goes along, in order, from the middle of the first side round to it again. Corner i follows side i. */
function stitchesOf(sides: readonly SewnSide[], hasCorners: boolean): SewnStitch[] {
  const run = (side: number, from: number, to: number): SewnStitch[] =>
    Array.from({ length: to - from }, (_, i) => ({ side, stitch: from + i, isCorner: false }));
  const corner = (side: number): SewnStitch[] => (hasCorners ? [{ side, stitch: 0, isCorner: true }] : []);
  const first = (sides[0] as SewnSide).stitches;
  const middle = hasCorners ? Math.floor(first / 2) : 0;
  return [
    ...run(0, middle, first),
    ...corner(0),
    ...sides.flatMap((side, i) => (i === 0 ? [] : [...run(i, 0, side.stitches), ...corner(i)])),
    ...run(0, 0, middle),
  ];
}

/** Changes as far apart as a working length reaches, drawn back where one would come near a corner. */
function changesOf(sewn: SewnStitch[], pitch: number, reach: number, hasCorners: boolean): ThreadChange[] {
  const most = Math.max(1, Math.floor(reach / pitch));
  const clear = Math.ceil(clearOfCorner / pitch);
  const isNear = (at: number): boolean =>
    hasCorners && sewn.slice(Math.max(0, at - clear), at + clear + 1).some(({ isCorner }) => isCorner);
  const changes: ThreadChange[] = [];
  let from = 0;
  while (sewn.length - from > most) {
    let at = from + most;
    while (at > from + most / 2 && isNear(at)) at--;
    const { side, stitch } = sewn[at] as SewnStitch;
    changes.push({ side, stitch });
    from = at;
  }
  return changes;
}

/** Lockstitch 301 takes 2.5 times the seam (read); 10–15 % more for waste (read). mm, as a band. */
export const machineThread = (seam: number, rows = 1): [least: number, most: number] => [
  seam * rows * 2.5 * 1.1,
  seam * rows * 2.5 * 1.15,
];
