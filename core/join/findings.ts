/**
 * The reasons of a verdict as findings: first what concerns the whole piece, then place by place in join order.
 *
 * Rule: where sides that lie beside each other have together what they should, the corners between them have moved;
 * that is told as one thing. The cut into such runs that leaves the fewest findings is taken.
 */
import type { CornerCount, CornerMoved, Finding, FindingOf, Severity, SideOff } from '../finding.ts';
import type { Gap, Manner, Reason, SideMeeting, Verdict } from '../types.ts';
import { mod } from '../whole.ts';

type Found = {
  sides: SideMeeting[];
  gaps: Gap[];
  manner: Manner;
  /** See `CornerCount`. */
  leftOut: Pick<CornerCount, 'leftOut' | 'frontCorner'>;
};

/** A finding with its place in join order: 2n for the n-th side, 2n + 1 for the corner after it, -1 for the whole. */
type Placed = { order: number; of: FindingOf };

export function findingsOf(reasons: Reason[], kind: Verdict['kind'], found: Found): Finding[] {
  const { sides } = found;
  const wholes = reasons.flatMap((reason) => ofWhole(reason, found));
  const isMisplaced = wholes.some(({ code }) => code !== 'offset' && code !== 'twisted');
  const ofSides = isMisplaced ? sides.flatMap(sideAlone) : ofRuns(sides);
  const placed = [
    ...wholes.map((of) => ({ order: -1, of })),
    ...ofSides,
    ...reasons.flatMap((reason) => ofCorner(reason, sides)),
    ...reasons.flatMap(({ code }): Placed[] =>
      code === 'last-hole' ? [{ order: 2 * sides.length, of: { code } }] : [],
    ),
  ];
  const follows = (of: FindingOf) => isMisplaced && of.code === 'side-off';
  return placed
    .sort((one, other) => one.order - other.order)
    .map(({ of }) => ({ ...of, severity: severityOf(of, kind, found), follows: follows(of) }));
}

function ofWhole({ code, by = 0 }: Reason, { leftOut }: Found): FindingOf[] {
  switch (code) {
    case 'twisted':
    case 'wrong-order':
      return [{ code }];
    case 'corner-count':
      return [{ code, by, ...leftOut }];
    case 'turned':
    case 'offset':
      return [{ code, by }];
    default:
      return [];
  }
}

function ofCorner({ code, backCorner = 0, by = 0 }: Reason, sides: SideMeeting[]): Placed[] {
  if (code !== 'corner-size' && code !== 'chain-skipped') return [];
  // The join comes to back corner c at the end of back side c + 1.
  const met = sides.findIndex(({ backSide }) => mod(backSide - 1, sides.length) === backCorner);
  const frontCorner = sides[met]?.frontSide ?? 0;
  const corner = { frontCorner, backCorner };
  return [{ order: 2 * met + 1, of: code === 'corner-size' ? { code, ...corner, by } : { code, ...corner } }];
}

const offOf = ({ frontSide, backSide, surplus, front, back }: SideMeeting): SideOff => ({
  frontSide,
  backSide,
  by: surplus,
  of: front,
  taken: back - front - surplus,
});

const sideAlone = (side: SideMeeting, n: number): Placed[] =>
  side.surplus === 0 ? [] : [{ order: 2 * n, of: { code: 'side-off', ...offOf(side) } }];

/** The sides cut into runs, begun where that leaves the fewest findings. */
function ofRuns(sides: SideMeeting[]): Placed[] {
  const cuts = sides.map((_, from) => runsFrom(sides, from));
  return cuts.reduce((best, cut) => (cut.length < best.length ? cut : best));
}

function runsFrom(sides: SideMeeting[], from: number): Placed[] {
  const k = sides.length;
  const at = (n: number) => sides[mod(n, k)] as SideMeeting;
  // Where both have the same count no corner was moved: the join took two with one.
  const counted = (n: number) => (at(n).back === at(n).front ? 0 : at(n).surplus);
  const placed: Placed[] = [];
  for (let n = from; n < from + k; ) {
    const end = evenAt(n, from + k, counted);
    if (end === null) placed.push(...sideAlone(at(n), mod(n, k)));
    else {
      const run = Array.from({ length: end - n + 1 }, (_, i) => at(n + i));
      placed.push({ order: 2 * mod(n, k) + 1, of: movedIn(run, k) });
    }
    n = (end ?? n) + 1;
  }
  return placed;
}

/** The last of the sides from `n` on that have together what they should, none of them as it should be alone. */
function evenAt(n: number, to: number, surplus: (n: number) => number): number | null {
  let all = 0;
  for (let i = n; i < to && surplus(i) !== 0; i++) {
    all += surplus(i);
    if (all === 0) return i;
  }
  return null;
}

function movedIn(run: SideMeeting[], k: number): FindingOf {
  let drift = 0;
  const corners = run.slice(0, -1).map(({ frontSide, backSide, surplus }): CornerMoved => {
    drift += surplus;
    // The join runs against the back: what comes early there was worked late.
    return { frontCorner: frontSide, backCorner: mod(backSide - 1, k), by: -drift };
  });
  return { code: 'corner-moved', corners: corners.reverse(), sides: run.map(offOf).reverse() };
}

/** Our own bands: a side that is off by one in forty or less eases in unseen, by one in eight or more cannot be joined. */
const UNSEEN_ONE_IN = 40;
const JOINED_ONE_IN = 8;

function severityOf(of: FindingOf, kind: Verdict['kind'], found: Found): Severity | null {
  switch (of.code) {
    case 'twisted':
    case 'wrong-order':
    case 'corner-count':
    case 'turned':
      return 'cannot-join';
    case 'last-hole':
      return null;
    case 'offset':
    case 'chain-skipped':
      return 'puckers';
    case 'corner-size':
      return Math.abs(of.by) > 2 ? 'cannot-join' : 'puckers';
    case 'corner-moved':
      // A corner beside its place shows, however little it is.
      return worse('shows', ...of.sides.map((side) => sideSeverity(side, kind, found)));
    case 'side-off':
      return sideSeverity(of, kind, found);
  }
}

function sideSeverity(
  { by, of, frontSide, backSide }: SideOff,
  kind: Verdict['kind'],
  found: Found,
): Severity {
  const off = Math.abs(by);
  if (off * JOINED_ONE_IN > of) return 'cannot-join';
  if (kind === 'does-not-meet' && (found.manner === 'stitch-by-stitch' || off * 20 > of)) return 'puckers';
  const together = found.gaps
    .filter((gap) => gap.frontSide === frontSide && gap.backSide === backSide)
    .some(({ count }) => count > 1);
  return off * UNSEEN_ONE_IN <= of && !together ? 'eases-in' : 'shows';
}

const SCALE: Severity[] = ['eases-in', 'shows', 'puckers', 'cannot-join'];

const worse = (...all: Severity[]): Severity =>
  all.reduce((worst, one) => (SCALE.indexOf(one) > SCALE.indexOf(worst) ? one : worst));
