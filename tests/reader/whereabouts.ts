/** Checks the line that says where the work stands against what lies in the reader's hands. */
import { type Hands, must, Stuck } from './hands.ts';
import { number } from './rules.ts';
import { pairsLeft } from './rules-join.ts';

type Place = { side: number; corner: number; made: number; of: number | null; part: string };

/** Side and corner, from 1, and how many of how many; what is not known beforehand is null. */
function here(hands: Hands): Place {
  const k = hands.front.sides.length;
  if (hands.stage === 'front') return onFront(hands, hands.counted - 1);
  if (hands.stage === 'join') {
    const start = hands.start?.front ?? 0;
    return onFront(hands, hands.lastHole || hands.joined === 0 ? start : hands.at);
  }
  if (hands.corner !== null)
    return { side: -1, corner: hands.passed + 1, made: hands.corner.made, of: hands.corner.of, part: '' };
  const isLast = hands.passed === hands.front.corners.length;
  const isFirst = hands.passed === 0;
  const part = isFirst ? ', its start' : isLast ? ', its rest' : '';
  return { side: (hands.passed % k) + 1, corner: -1, made: hands.leg, of: null, part };
}

function onFront({ front, frontPlaces }: Hands, index: number): Place {
  let left = ((index % frontPlaces.length) + frontPlaces.length) % frontPlaces.length;
  for (const [side, of] of front.sides.entries()) {
    if (left < of) return { side: side + 1, corner: -1, made: left + 1, of, part: '' };
    left -= of;
    const size = front.corners[side]?.size ?? 0;
    if (left < size) return { side: -1, corner: side + 1, made: left + 1, of: size, part: '' };
    left -= size;
  }
  return { side: -1, corner: -1, made: 0, of: null, part: '' };
}

const STAGES: [RegExp, Hands['stage'][]][] = [
  [/^Front$/, ['front']],
  [/^(?:Closing the f|F)oundation$/, ['foundation']],
  [/^(?:Closing the e|E)dging(?: \d+ of \d+)?$/, ['edging']],
  [/^Cloth$/, ['cloth']],
  [/^(?:Closing the j|J)oin$/, ['join']],
  [/^Finished$/, ['finished']],
];

/** What earlier lines said of lengths that only the end shows. */
export type Promises = { every: number | null; legs: Map<string, number>; rounds: number | null };

export const noPromises = (): Promises => ({ every: null, legs: new Map(), rounds: null });

export function checkWhere(hands: Hands, where: string, promises: Promises): void {
  const [stage = '', ...parts] = where.split(' · ');
  const known = STAGES.find(([name]) => name.test(stage));
  must(known?.[1].includes(hands.stage) === true, `the work is not at ${stage}`);
  const rounds = stage.match(/(\d+) of (\d+)$/);
  if (rounds) {
    const round = hands.edgings.length + (hands.stage === 'edging' && !hands.done.has('weave') ? 1 : 0);
    must(number(rounds[1]) === round, 'this is another round');
    promises.rounds ??= number(rounds[2]);
    must(promises.rounds === number(rounds[2]), 'the rounds have changed');
  }
  for (const part of parts) checkPart(hands, part, promises);
}

/** A part of the line, and what must hold where it is read. */
type Reads = (given: string[], place: Place, read: { hands: Hands; promises: Promises; leg: string }) => void;

const PARTS: [RegExp, Reads][] = [
  [
    /^side (\d+)(, (?:its start|its rest))?$/,
    ([side, part], place, { hands }) => {
      // Single acts that begin or end a round lie on the first side.
      const isAct =
        hands.stage !== 'join' && (place.made === 0 || hands.loops === 0) && hands.stage !== 'front';
      must(number(side) === (isAct ? 1 : place.side), 'this is another side');
      if (part !== undefined) must(part === place.part, 'this is another part');
    },
  ],
  [/^corner (\d+)$/, ([corner], place) => must(number(corner) === place.corner, 'this is another corner')],
  [
    /^(?:stitch|chain|pair) (\d+) of (\d+)$/,
    ([made, of], place, { promises, leg }) => {
      must(number(made) === place.made, `this is place ${place.made}`);
      const known = place.of ?? promises.legs.get(leg);
      if (known !== undefined) must(number(of) === known, `there are ${known}`);
      promises.legs.set(leg, number(of));
    },
  ],
  [
    /^marker here$/,
    (_, place, { promises }) =>
      must(place.made % (promises.every ?? place.made) === 0, 'no marker hangs here'),
  ],
  [
    /^(\d+) to the next marker$/,
    ([ahead], place, { promises }) => {
      promises.every ??= place.made + number(ahead);
      must((place.made + number(ahead)) % promises.every === 0, 'the next marker hangs elsewhere');
    },
  ],
  [
    /^(\d+) to the last hole$/,
    ([ahead], _, { hands }) => must(number(ahead) === pairsLeft(hands), 'the last hole is elsewhere'),
  ],
  [
    /^(\d+) to the (?:corner|closing|end)$/,
    ([ahead], place, { promises, leg }) => {
      const of = place.of ?? promises.legs.get(leg);
      must(place.made + number(ahead) === of, 'the end of this side is elsewhere');
    },
  ],
];

function checkPart(hands: Hands, part: string, promises: Promises): void {
  const leg = `${hands.stage} ${hands.edgings.length} ${hands.passed} ${hands.corner !== null}`;
  for (const [known, reads] of PARTS) {
    const match = part.match(known);
    if (match) {
      reads(match.slice(1), here(hands), { hands, promises, leg });
      return;
    }
  }
  throw new Stuck(`nobody knows what "${part}" means`);
}

/** Every leg must come to what was said of it. */
export function checkPromise(hands: Hands, promises: Promises, passed: number, made: number): void {
  const of = promises.legs.get(`${hands.stage} ${hands.edgings.length} ${passed} false`);
  must(of === undefined || of === made, 'the side has another number of stitches than was said');
}

/** The large number beside the sentence. */
export const checkCount = (hands: Hands, count: string): void =>
  must(number(count) === here(hands).made, `this is place ${here(hands).made}`);
