/**
 * Taking up a piece that is made in part: the rounds that stand, and the one under way, unravelled to the place that
 * the page names. What stands is told by counts, as its maker has them, and found again on the piece.
 */
import { at, type Hands, must } from './hands.ts';
import { type Counts, cornersOf, type FrontPiece, type Place, placesOf } from './piece.ts';
import { number } from './rules.ts';
import { startAt } from './rules-join.ts';

export type Laid = {
  /** Rounds made, the foundation first. The last may be one that is unravelled to the place named. */
  rounds: Counts[];
  /** Stitches of the foundation before its first corner. */
  lead: number;
  /** The strip is sewn on and turned. */
  sewn: boolean;
  /** Where the work goes on, as it is told: what stands there and after it was unravelled. */
  where: string;
  /** The place on its side of the stitch that was named as the first to go. */
  firstToGo?: number;
  /** Stitches of the round below that the round under way has passed over on the side it stands on. */
  passedOver?: number;
  /** Where a join that is unravelled in part began: so many in from the last corner, on back side 1's own. */
  joinedFrom?: number;
};

/** Stitches that an edging works into each corner, on either side of the new one. */
const arm = 1;

export function takeUp(hands: Hands, told: Laid): void {
  const [stage = '', ...parts] = told.where.split(' · ');
  const laid = { ...told, rounds: told.rounds.slice(0, roundsTo(stage)) };
  Object.assign(hands, { counted: hands.frontPlaces.length, startCounts: 0, startingChains: 3 });
  const underway = underwayIn(hands, laid, stage, parts);
  const whole = underway === null ? laid.rounds : laid.rounds.slice(0, -1);
  whole.forEach((counts, n) => {
    if (n === 0) hands.foundation = counts;
    else hands.edgings.push(counts);
    hands.round = worked(hands.front, counts, leadOf(laid, n));
  });
  Object.assign(hands, { marker: 0, back: hands.round, below: hands.round, belowMarker: 0 });
  hands.stage = whole.length > 1 ? 'edging' : 'foundation';
  hands.done = new Set(['weave']);
  if (laid.sewn) Object.assign(hands, { stage: 'cloth', done: new Set(['turn the strip']) });
  if (stage === 'Join' && parts.length > 0) onJoin(hands, laid, parts);
  if (underway !== null) onRound(hands, laid, underway);
}

/** Rounds up to the one that a stage names: all, where it names none. */
function roundsTo(stage: string): number {
  if (stage === 'Foundation') return 1;
  const edging = stage.match(/^Edging(?: (\d+) of \d+)?$/);
  return edging ? 1 + number(edging[1] ?? '1') : Number.POSITIVE_INFINITY;
}

const leadOf = ({ lead }: Laid, round: number): number => lead + round * (arm - 1);

/** A round in working order: it begins within its first side. */
function worked({ corners }: FrontPiece, { sides, corners: sizes }: Counts, lead: number): Place[] {
  const made = sizes.map((size) => ({ made: corners[0]?.made ?? 'chain', size }) as const);
  const [first = 0, ...others] = sides;
  const places = placesOf({ sides: [lead, ...others], corners: made });
  const tail = Array.from({ length: first - lead }, (): Place => ({ kind: 'stitch', made: 'stitch' }));
  return [...places, ...tail];
}

/** Legs passed, and stitches and corner places that stand on the one under way. */
type Underway = { legs: number[]; corner: number };

function underwayIn({ front }: Hands, laid: Laid, stage: string, parts: string[]): Underway | null {
  if (!/^(?:Foundation|Edging)/.test(stage) || parts.length < 2) return null;
  const { sides } = laid.rounds.at(-1) as Counts;
  const lead = leadOf(laid, laid.rounds.length - 1);
  const legs = [lead, ...sides.slice(1), (sides[0] ?? 0) - lead];
  const made = number(parts[1]?.match(/^(?:stitch|chain) (\d+) of/)?.[1]) - 1;
  const corner = parts[0]?.match(/^corner (\d+)$/);
  if (corner) {
    const passed = legs.slice(0, number(corner[1]));
    // A side that ran on past its corner ends where it was unravelled to.
    const last = Math.min(passed.at(-1) ?? 0, (laid.firstToGo ?? Number.POSITIVE_INFINITY) - 1);
    return { legs: made === 0 ? passed.with(-1, last) : passed, corner: made };
  }
  const side = parts[0]?.match(/^side (\d+)(, its rest)?/);
  must(side !== null && side !== undefined, 'nobody can tell where the work stands');
  const passed = side[2] ? front.corners.length : number(side[1]) - 1;
  return { legs: [...legs.slice(0, passed), made], corner: 0 };
}

function onRound(hands: Hands, laid: Laid, { legs, corner }: Underway): void {
  const { rounds, passedOver = 0 } = laid;
  const size = hands.front.corners[0]?.size ?? 0;
  const passed = legs.length - 1;
  const leg = legs.at(-1) ?? 0;
  const whole = { sides: legs, corners: legs.slice(0, -1).map(() => ({ made: 'chain' as const, size })) };
  const round = placesOf(whole);
  for (let i = 0; i < corner; i++) round.push({ kind: 'corner', made: 'chain' });
  Object.assign(hands, { round, passed, leg, loops: 1, ends: 1 });
  if (corner > 0) hands.corner = { made: corner, of: size };
  if (rounds.length === 1) {
    Object.assign(hands, { stage: 'foundation', below: [], done: new Set(['leave a long end']) });
    return;
  }
  Object.assign(hands, { stage: 'edging', attached: 0, attachChain: true, firstGoes: 'next' });
  hands.done = new Set(['take the colour']);
  const before = cornersOf(hands.below)[passed - 1];
  const used = passed === 0 ? leg + 1 : leg - arm + passedOver;
  hands.next = (before ? before.from + before.size : 0) + used;
  // Nothing of the side stands: the corner below has only what went into it before the new corner.
  if (before && leg < arm) Object.assign(hands, { into: { ...before, last: 1 }, next: before.from });
  const ahead = cornersOf(hands.below)[passed];
  if (ahead && hands.next > ahead.from)
    Object.assign(hands, { into: { ...ahead, last: 1 }, next: ahead.from });
}

/** The join as far as it stands: up to the pair before the one named. */
function onJoin(hands: Hands, { joinedFrom = 4 }: Laid, parts: string[]): void {
  const { front, frontPlaces } = hands;
  Object.assign(hands, { stage: 'join', faces: 0, inFromCorner: joinedFrom, loops: 1, ends: 1 });
  hands.done = new Set(['lay together', 'say how far in', 'turn the strip']);
  startAt(hands, joinedFrom, front.corners.length);
  const spot = parts[0]?.match(/^(side|corner) (\d+)$/);
  const pair = number(parts[1]?.match(/^pair (\d+) of/)?.[1]);
  must(spot !== null && spot !== undefined, 'nobody can tell where the join stands');
  const corner = cornersOf(frontPlaces)[number(spot[2]) - (spot[1] === 'side' ? 2 : 1)];
  const from = spot[1] === 'side' ? (corner ? corner.from + corner.size : 0) : (corner?.from ?? 0);
  const start = hands.start?.front ?? 0;
  const total = frontPlaces.length;
  const next = (((from + pair - 1 - start) % total) + total) % total;
  hands.joined = next - 1;
  hands.at = start + hands.joined;
  must(at(frontPlaces, hands.at) !== undefined, 'there is no such pair');
}
