/** Sewing the strip to the cloth, and joining front and back. */
import { ordinalOf } from './glossary.ts';
import { at, cornerAt, doing, type Hands, must } from './hands.ts';
import { cornersOf } from './piece.ts';
import { number, type RuleFor, rule } from './rules.ts';

const hasCorners = ({ front }: Hands): boolean => front.corners.length > 0;

const CLOTH: RuleFor[] = [
  rule("Lay the strip face down on the cloth's right side\\.", (hands) => {
    must(hands.stage === 'edging' && hands.done.has('weave'), 'the strip is not finished');
    hands.stage = 'cloth';
    doing(hands, 'lay the strip');
  }),
  rule('Cut the cloth first: the place Cloth says how large\\.'),
  rule('Base chains on the raw edge, edging towards the middle\\.', (hands) =>
    doing(hands, 'turn the base outwards', 'lay the strip'),
  ),
  rule('Base chains still lie on the raw edge\\.'),
  rule('Pin the middle of each side first\\.', (hands) => {
    must(hasCorners(hands), 'there are no sides');
    doing(hands, 'pin middles', 'turn the base outwards');
  }),
  rule('Pin the 4 quarters first\\.', (hands) => {
    must(!hasCorners(hands), 'there are corners');
    doing(hands, 'pin middles', 'turn the base outwards');
  }),
  rule("The strip's middles lie on the cloth's middles\\."),
  rule('Pin the (\\d+) corners?\\.', (hands, [corners]) => {
    must(number(corners) === hands.front.corners.length, 'there are not so many corners');
    doing(hands, 'pin corners', 'pin middles');
  }),
  rule('Pin halfway between the 4 quarters\\.', (hands) => doing(hands, 'pin corners', 'pin middles')),
  rule('Pin halfway between those pins, all the way round\\.', (hands) =>
    doing(hands, 'pin all', 'pin corners'),
  ),
  rule('Pat any looseness flat\\.'),
  rule('Where it still stands up, halve again\\.'),
  rule('Count the pins and write the number down\\.', (hands) =>
    doing(hands, 'write the pins down', 'pin all'),
  ),
  rule('Running stitch all round: over 1 stitch, under the next\\.', (hands) =>
    doing(hands, 'sew', 'pin all'),
  ),
  rule('Strong thread, made fast\\.'),
  rule('Through strip and cloth, just below the edging\\.'),
  rule('Sew back the other way and fill the gaps\\.', (hands) => doing(hands, 'sew back', 'sew')),
  rule('No gap is left on either side\\.'),
  rule("Weave the thread's end through the {tallMany}, and make it fast\\.", (hands) =>
    doing(hands, 'make fast', 'sew back'),
  ),
  rule('Tug at it: it holds\\.'),
  rule('This seam takes the strain\\.'),
  rule('Take all pins out and count them\\.', (hands) => doing(hands, 'take pins out', 'make fast')),
  rule('It is the number you wrote down\\.', (hands) =>
    must(hands.done.has('write the pins down'), 'no number was written down'),
  ),
  rule('Find every pin before you go on\\.'),
  rule('Turn the strip outwards\\.', (hands) => doing(hands, 'turn the strip', 'take pins out')),
  rule('The edging runs round the outside, right side up\\.'),
];

/** The next pair: the front forwards, the back backwards, as two pieces that face each other run. */
const nextFront = ({ start, joined, skipped }: Hands): number =>
  (start?.front ?? 0) + joined + skipped.front + 1;
const nextBack = ({ start, joined, skipped }: Hands): number =>
  (start?.back ?? 0) - joined - skipped.back - 1;

/** Pairs still to join before the one where the yarn hangs. */
export const pairsLeft = (hands: Hands): number =>
  hands.frontPlaces.length - 1 - hands.joined - hands.skipped.front;

function joinNext(hands: Hands, what: 'stitch' | 'corner', which: number | null): void {
  must(hands.loops === 1 && hands.start !== null, 'there is no loop on the hook');
  must(!hands.done.has('draw the loop long') || hands.done.has('take the loop'), 'the loop is still long');
  must(pairsLeft(hands) > 0, 'all pairs are joined');
  const [front, back] = [nextFront(hands), nextBack(hands)];
  must(at(hands.frontPlaces, front).kind === what, `no ${what} comes next on the front`);
  must(at(hands.back, back).kind === what, `no ${what} comes next on the back`);
  if (what === 'corner') {
    const frontCorner = cornerAt(hands.frontPlaces, front);
    const backCorner = cornerAt(hands.back, back);
    must(frontCorner !== undefined && backCorner !== undefined, 'no corner comes next');
    const place = (index: number, length: number): number => ((index % length) + length) % length;
    const met = place(front, hands.frontPlaces.length) - frontCorner.from + 1;
    const backMet = backCorner.from + backCorner.size - place(back, hands.back.length);
    must(which === null ? frontCorner.size === 1 : which === met, 'another chain of the front is met');
    must(met === backMet, 'another chain of the back is met');
  }
  hands.joined += 1;
  hands.at = front;
}

/** The front's corner of that number, and the back's that lies behind it. */
function cornersAt({ front, frontPlaces, back, faces }: Hands, corner: number) {
  const k = front.sides.length;
  const frontCorner = cornersOf(frontPlaces)[corner - 1];
  must(frontCorner !== undefined, 'the front has no such corner');
  must(faces !== null, 'nobody said which sides lie on each other');
  // The side after this corner of the front faces a side of the back, whose own corner follows it.
  const side = corner % k;
  const backCorner = cornersOf(back)[(((faces - side) % k) + k) % k];
  must(backCorner !== undefined, 'the back has no such corner');
  return { frontCorner, backCorner };
}

/** The place so many in from a corner, the corner's nearest place being the first, on both pieces. */
export function startAt(hands: Hands, fromCorner: number, corner: number): void {
  const { frontCorner, backCorner } = cornersAt(hands, corner);
  hands.start = {
    front: frontCorner.from + frontCorner.size - 1 + fromCorner - 1,
    back: backCorner.from - (fromCorner - 1),
  };
}

/** The last stitch of a side, and the one that lies behind it. */
function startBeside(hands: Hands, side: number): void {
  const { frontCorner, backCorner } = cornersAt(hands, side);
  hands.start = { front: frontCorner.from - 1, back: backCorner.from + backCorner.size };
}

const JOIN: RuleFor[] = [
  rule('Lay front and back wrong sides together\\.', (hands) => {
    must(hands.stage === 'cloth' && hands.done.has('turn the strip'), 'the back is not ready');
    hands.stage = 'join';
    doing(hands, 'lay together');
  }),
  rule('The front faces you\\.'),
  rule('The front faces you, the back looks away\\.'),
  rule('Side 1 of the back lies behind side (\\d+) of the front\\.', (hands, [side]) => {
    must(hands.done.has('lay together'), 'the pieces do not lie together');
    hands.faces = number(side) - 1;
  }),
  rule('Put a marker (\\d+) in from the corner, on both pieces\\.', (hands, [count]) => {
    doing(hands, 'say how far in', 'lay together');
    hands.inFromCorner = number(count);
  }),
  rule(
    '(?:Its nearest chain|The corner stitch) is 1: count from corner (\\d+) into front side (\\d+)\\.',
    (hands, [corner, side]) => {
      must(hands.done.has('say how far in'), 'nobody said how far in');
      must(
        (number(corner) % hands.front.sides.length) + 1 === number(side),
        'that corner leads to another side',
      );
      startAt(hands, hands.inFromCorner, number(corner));
    },
  ),
  rule('That is its stitch (\\d+)\\.', (hands, [which]) => {
    const front = (hands.start?.front ?? -1) % hands.frontPlaces.length;
    const from = cornersOf(hands.frontPlaces)
      .filter((corner) => corner.from + corner.size <= front)
      .at(-1);
    const first = from === undefined ? 0 : from.from + from.size;
    must(front - first + 1 === number(which), 'that is another stitch');
  }),
  rule('On the back, mark the one behind it\\.'),
  rule('Mark the last stitch of side (\\d+), on both pieces\\.', (hands, [side]) => {
    doing(hands, 'mark the start', 'lay together');
    startBeside(hands, number(side));
  }),
  rule('Side (\\d+) stays open\\.', (hands, [side]) => {
    const { front, frontPlaces } = hands;
    const corner = cornersOf(frontPlaces)[number(side) - 1];
    must(corner !== undefined && hands.start?.front === corner.from - 1, 'the join begins elsewhere');
    must(front.sides[number(side) - 1] !== undefined, 'there is no such side');
    hands.open = number(side) - 1;
  }),
  rule('On the back it is the stitch that lies behind\\.'),
  rule('The pair stays open with its side\\.', (hands) => must(hands.open !== null, 'no side stays open')),
  rule('Only side (\\d+) is open, from corner to corner\\.', (hands, [side]) =>
    must(hands.open === number(side) - 1, 'another side is open'),
  ),
  rule('(\\d+) pairs, stitch to stitch\\.', (hands, [pairs]) =>
    must(hands.joined === number(pairs), 'another number of pairs is joined'),
  ),
  rule('Side (\\d+) is the opening\\.', (hands, [side]) =>
    must(hands.open === number(side) - 1, 'another side is open'),
  ),
  rule('Mark stitch (\\d+) of the front and any stitch of the back\\.', (hands, [stitch]) => {
    must(!hasCorners(hands), 'nobody said where the join begins');
    doing(hands, 'mark the start', 'lay together');
    hands.start = { front: number(stitch) - 1, back: 0 };
  }),
  rule('On a round piece the join may begin anywhere\\.'),
  rule("Attach the edging's colour through the marked pair's inner 2 loops\\.", (hands) => {
    must(hands.start !== null, 'no pair is marked');
    must(hands.loops === 0 && hands.ends === 0, 'the yarn hangs there already');
    Object.assign(hands, { loops: 1, ends: 1 });
  }),
  rule('Of its 4 loops these 2 touch\\.'),
  rule('The picture shows another colour\\.'),
  rule('The pair gets its own {slip} at the very end\\.'),
  rule("1 {slip} through the next pair's inner 2 loops\\.", (hands) => joinNext(hands, 'stitch', null)),
  rule('Of the 4 loops side by side, the outer 2 stay free\\.'),
  rule('1 {slip} through the (\\w+) (?:chain|stitch) you meet on each piece\\.', (hands, [which]) =>
    joinNext(hands, 'corner', ordinalOf(which ?? '')),
  ),
  rule('1 {slip} through both corner (?:chains|stitches)\\.', (hands) => joinNext(hands, 'corner', null)),
  rule('Corner lies on corner\\.'),
  // Asked for beyond the recipe.
  rule('1 {slip} goes through the inner loops of all 3\\.'),
  rule('Take 2 of the back with 1 of the front\\.', (hands) => {
    joinNext(hands, 'stitch', null);
    hands.skipped.back += 1;
  }),
  rule('Take 2 of the front with 1 of the back\\.', (hands) => {
    joinNext(hands, 'stitch', null);
    hands.skipped.front += 1;
  }),
  rule('Draw the loop about a hand long and take the hook out\\.', (hands) => {
    must(hands.loops === 1, 'there is no loop');
    doing(hands, 'draw the loop long');
  }),
  rule('A long loop cannot slip out\\.'),
  rule('The last (side|quarter) (?:stays|is still) open\\.', (hands, [part]) => {
    must((part === 'side') === hands.front.sides.length > 1, 'there is no such part');
    if (part === 'side')
      must(pairsLeft(hands) >= at(hands.front.sides, openSide(hands)), 'that side is begun');
  }),
  rule('Put the {pad} in, corner into corner\\.', (hands) => {
    must(hasCorners(hands), 'there are no corners');
    doing(hands, 'put the pad in', 'draw the loop long');
  }),
  rule('Put the {pad} in and spread it evenly\\.', (hands) =>
    doing(hands, 'put the pad in', 'draw the loop long'),
  ),
  rule('Push it into every corner\\.'),
  rule('It reaches the edge all round\\.'),
  rule('Is the {pad} in\\?', (hands) => must(hands.done.has('put the pad in'), 'it is not')),
  rule("Keep the finished {cushion} out of a baby's sleeping place\\."),
  rule('Pin the last (?:side|quarter): ends, middle, then halves\\.', (hands) =>
    doing(hands, 'pin the last side', 'put the pad in'),
  ),
  rule('Both pieces lie stitch to stitch\\.'),
  rule('Take each pin out as you come to it\\.'),
  rule('Count the pins in, and out again\\.'),
  rule('Put the hook back in the loop and draw it small\\.', (hands) =>
    doing(hands, 'take the loop', 'pin the last side'),
  ),
  rule('It is as large as the loops before it\\.'),
  rule('Look along the whole join for holes\\.', (hands) => {
    // The pair where the yarn hangs is one of the open side.
    const open = hands.open === null ? 0 : at(hands.front.sides, hands.open) - 1;
    must(pairsLeft(hands) === open, 'pairs are still open');
    doing(hands, 'look for holes', ...(hands.open === null ? ['take the loop'] : []));
  }),
  rule('Every pair shows 1 {slip}; at a hole, {unravel} to it\\.'),
  rule('Only the first pair is still open\\.', (hands) => must(!hands.lastHole, 'it is closed')),
  rule('1 {slip} in the pair where you attached the yarn\\.', (hands) => {
    must(hands.done.has('look for holes') && !hands.lastHole, 'the last hole is not due');
    hands.lastHole = true;
  }),
  rule('The last hole is closed\\.', (hands) => must(hands.lastHole, 'it is open')),
  rule('Thread the end: under the second {slip}, down into the last\\.', (hands) => {
    must(hands.loops === 0 && hands.ends === 2 && hands.lastHole, 'the join is not ended');
    doing(hands, 'close the join');
  }),
  rule('It lies over the first\\.'),
  rule('The line runs on without a step\\.'),
  rule('Draw both ends inside with the needle\\.', (hands) => {
    must(hands.ends === 2, 'there are not two ends');
    doing(hands, 'draw the ends in', hands.open === null ? 'close the join' : 'look for holes');
    hands.ends = 0;
  }),
  rule('Count the needles and pins before you put them away\\.'),
  rule('(\\d+) pairs, stitch to stitch, all the way round\\.', (hands, [pairs]) =>
    must(hands.joined + 1 === number(pairs), 'another number of pairs is joined'),
  ),
  rule('The cover is on its form\\.'),
  rule('Front and back are one piece\\.', (hands) => {
    must(hands.done.has('draw the ends in'), 'ends still hang out');
    must(hands.stage === 'join', 'that is known already');
    hands.stage = 'finished';
  }),
];

/** The side on which the join began lies after the open one. */
function openSide({ front, start, frontPlaces }: Hands): number {
  const before = cornersOf(frontPlaces).filter(({ from }) => from < (start?.front ?? 0) % frontPlaces.length);
  return (before.length - 1 + front.sides.length) % front.sides.length;
}

export const JOIN_RULES: RuleFor[] = [...CLOTH, ...JOIN];
