/** What the reader holds in its hands and remembers. It knows the trade and what it was told, and nothing else. */
import type { Glossary, Hand } from './glossary.ts';
import { type Counts, cornersOf, countPlaces, type FrontPiece, type Place, placesOf } from './piece.ts';

/** The reader cannot go on, and says why. */
export class Stuck extends Error {}

export function must(holds: boolean, why: string): asserts holds {
  if (!holds) throw new Stuck(why);
}

export type Stage = 'front' | 'foundation' | 'edging' | 'cloth' | 'join' | 'finished';

export type Hands = {
  words: Glossary;
  hand: Hand;
  front: FrontPiece;
  frontPlaces: Place[];
  stage: Stage;
  /** Front places counted so far. */
  counted: number;
  loops: 0 | 1;
  /** Loose ends that hang from the work. */
  ends: number;
  startingChains: number;
  startCounts: 0 | 1 | null;
  /** The round being worked, the place with the start marker, and the round below with its marker. */
  round: Place[];
  marker: number;
  below: Place[];
  belowMarker: number;
  /** Corners passed in this round, stitches made since, and the corner under way. */
  passed: number;
  leg: number;
  corner: { made: number; of: number } | null;
  /** On the round below: the next place, where the yarn hangs, the corner being worked into. */
  next: number;
  attached: number | null;
  firstGoes: 'next' | 'same' | null;
  attachChain: boolean;
  /** `moved`: the corner is put into an ordinary stitch. */
  into: { from: number; size: number; last: number; moved?: true } | null;
  /** Acts done that later ones need, by name. */
  done: Set<string>;
  needle: 0 | 1 | null;
  foundation: Counts | null;
  edgings: Counts[];
  back: Place[];
  /** The join: side of the front that faces the back's first, places taken, and where it stands. */
  faces: number | null;
  inFromCorner: number;
  /** The side of the front that stays open, if one does. */
  open: number | null;
  start: { front: number; back: number } | null;
  joined: number;
  skipped: { front: number; back: number };
  lastHole: boolean;
  /** The front's place joined last. */
  at: number;
  /** What this leg must come to, where it was said, and how often its next place is worked into. */
  comesTo: number | null;
  times: { made: number; of: number } | null;
};

export const newHands = (words: Glossary, hand: Hand, front: FrontPiece): Hands => ({
  words,
  hand,
  front,
  frontPlaces: placesOf(front),
  stage: 'front',
  counted: 0,
  loops: 0,
  ends: 0,
  startingChains: 0,
  startCounts: null,
  round: [],
  marker: -1,
  below: [],
  belowMarker: -1,
  passed: 0,
  leg: 0,
  corner: null,
  next: 0,
  attached: null,
  firstGoes: null,
  attachChain: false,
  into: null,
  done: new Set(),
  needle: null,
  foundation: null,
  edgings: [],
  back: [],
  faces: null,
  inFromCorner: 0,
  open: null,
  start: null,
  joined: 0,
  skipped: { front: 0, back: 0 },
  lastHole: false,
  at: 0,
  comesTo: null,
  times: null,
});

/** Does this act, which needs others to have been done before. */
export function doing(hands: Hands, act: string, ...needs: string[]): void {
  must(!hands.done.has(act), `${act}: that is done already`);
  for (const need of needs) must(hands.done.has(need), `${act} needs ${need}`);
  hands.done.add(act);
}

/** A new round is begun on what was made so far. */
export function beginRound(hands: Hands, stage: 'foundation' | 'edging'): void {
  must(hands.loops === 0 && hands.ends === 0, 'yarn still hangs from the round before');
  hands.stage = stage;
  hands.below = hands.round;
  hands.belowMarker = hands.marker;
  Object.assign(hands, { round: [], marker: -1, passed: 0, leg: 0, corner: null, into: null, needle: null });
  Object.assign(hands, { attached: null, firstGoes: null, attachChain: false, next: 0, done: new Set() });
}

/** A leg ends: it must have come to what was said of it. */
function endLeg(hands: Hands): void {
  must(hands.comesTo === null || hands.comesTo === hands.leg, 'it does not come to what was said');
  must(hands.times === null || hands.times.made === hands.times.of, 'a stitch in the same place is missing');
  hands.comesTo = null;
  hands.times = null;
}

/** The hook leaves a corner: it must hold what was said. */
function leaveCorner(hands: Hands): void {
  if (hands.corner === null) return;
  must(hands.corner.made === hands.corner.of, 'the corner does not hold what was said');
  hands.corner = null;
  hands.passed += 1;
  hands.leg = 0;
}

export function makeStitch(hands: Hands): void {
  must(hands.loops === 1, 'there is no loop on the hook');
  leaveCorner(hands);
  hands.round.push({ kind: 'stitch', made: 'stitch' });
  hands.leg += 1;
}

/** One place of a corner, the `which`th of `of`. */
export function makeCorner(hands: Hands, which: number, of: number, made: 'chain' | 'stitch'): void {
  must(hands.loops === 1, 'there is no loop on the hook');
  if (hands.corner === null) endLeg(hands);
  hands.corner ??= { made: 0, of };
  must(hands.corner.made === which - 1 && hands.corner.of === of, 'another place of the corner is due');
  hands.corner.made += 1;
  hands.round.push({ kind: 'corner', made });
}

export function endRound(hands: Hands): void {
  must(hands.loops === 1, 'there is no loop to end');
  leaveCorner(hands);
  if (hands.stage === 'foundation' || (hands.stage === 'edging' && hands.attached !== null)) endLeg(hands);
  hands.loops = 0;
  hands.ends += 1;
}

/** Puts the closed round away. */
export function putAway(hands: Hands): void {
  const counts = countPlaces(hands.round);
  if (hands.stage === 'foundation') hands.foundation = counts;
  else hands.edgings.push(counts);
  hands.back = hands.round;
}

export const at = <T>(places: readonly T[], index: number): T =>
  places[((index % places.length) + places.length) % places.length] as T;

/** The corner that a place of a round belongs to. */
export const cornerAt = (
  places: readonly Place[],
  index: number,
): { from: number; size: number } | undefined => {
  const place = ((index % places.length) + places.length) % places.length;
  return cornersOf(places).find(({ from, size }) => place >= from && place < from + size);
};
