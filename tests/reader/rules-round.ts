/** Counting the front, and working the foundation and the edging rounds. */
import { ONWARDS, ordinalOf } from './glossary.ts';
import {
  at,
  beginRound,
  cornerAt,
  doing,
  endRound,
  type Hands,
  makeCorner,
  makeStitch,
  must,
  putAway,
} from './hands.ts';
import { cornersOf, countPlaces } from './piece.ts';
import { number, type RuleFor, rule } from './rules.ts';

const last = (hands: Hands) => hands.round.at(-1)?.kind ?? null;

function count(hands: Hands, kind: 'stitch' | 'corner', which: number): void {
  const place = hands.frontPlaces[hands.counted];
  must(place?.kind === kind, 'something else comes next on the front');
  hands.counted += 1;
  hands.leg = hands.frontPlaces[hands.counted - 2]?.kind === kind ? hands.leg + 1 : 1;
  must(hands.leg === which, 'the count has jumped');
}

const countCorner = (hands: Hands, which: number, made: 'chain' | 'stitch'): void => {
  must(hands.frontPlaces[hands.counted]?.made === made, 'the corner is made otherwise');
  count(hands, 'corner', which);
};

const FRONT: RuleFor[] = [
  rule('Count (\\d+): 1 V, going (left|right)\\.', (hands, [which, way]) => {
    must(way === ONWARDS[hands.hand], 'the front runs the other way');
    count(hands, 'stitch', number(which));
  }),
  rule("Count the corner's chain\\.", (hands) => countCorner(hands, 1, 'chain')),
  rule("Count the corner's (\\w+) chain\\.", (hands, [which]) =>
    countCorner(hands, ordinalOf(which ?? ''), 'chain'),
  ),
  rule('Count the stitch that is the corner\\.', (hands) => countCorner(hands, 1, 'stitch')),
  rule('A V is the 2 loops on top of a stitch\\.'),
  rule('The first V can hide under the corner\\.'),
  rule('Put a marker in this V\\.'),
  rule('Put a marker in this V, so that you know where to stop\\.'),
  rule('Corner chains are counted apart from the stitches\\.'),
  rule('It is counted apart from the sides\\.'),
];

const foundationStitch = (hands: Hands): void => {
  must(hands.stage === 'foundation', 'this is no foundation');
  makeStitch(hands);
};

const FOUNDATION: RuleFor[] = [
  rule('Make a slip knot on the hook you used for the front\\.', (hands) => {
    must(hands.counted === hands.frontPlaces.length, 'the front is not counted to its end');
    beginRound(hands, 'foundation');
    hands.loops = 1;
    hands.ends = 1;
  }),
  rule('Leave an end a hand long: you sew with it later\\.', (hands) => doing(hands, 'leave a long end')),
  rule("Yarn as thick as the front's\\."),
  rule('Chain (\\d+)\\.', (hands, [chains]) => {
    must(hands.loops === 1 && hands.round.length === 0, 'chains cannot begin here');
    if (hands.stage === 'edging') {
      must(number(chains) === 1 && !hands.attachChain, 'after attaching 1 chain is made');
      hands.attachChain = true;
      return;
    }
    must(hands.startingChains === 0, 'the starting chains are made already');
    hands.startingChains = number(chains);
  }),
  rule('The first will hold your first stitch; the other (\\d+) count as none\\.', (hands, [rest]) => {
    must(number(rest) === hands.startingChains - 1, 'the starting chains do not come to that');
    hands.startCounts = 0;
  }),
  rule('The first will hold your next stitch; the other (\\d+) count as 1 stitch\\.', (hands, [rest]) => {
    must(number(rest) === hands.startingChains - 1, 'the starting chains do not come to that');
    hands.startCounts = 1;
    makeStitch(hands);
  }),
  rule('Put your start marker in the last\\.', (hands) => {
    hands.marker = 0;
  }),
  rule('1 {foundationStitch} in the (\\w+) chain from the hook\\.', (hands, [which]) => {
    must(ordinalOf(which ?? '') === hands.startingChains, 'that is not the chain made first');
    must(hands.startCounts !== null, 'nobody said what the starting chains count as');
    must(hands.round.length === hands.startCounts, 'the first stitch is made already');
    foundationStitch(hands);
  }),
  rule('It is the first chain you made: under 2 strands\\.', (hands) =>
    must(hands.round.length === 1 + (hands.startCounts ?? 0), 'it is not the first stitch'),
  ),
  rule('Put your start marker in this stitch\\.', (hands) => {
    must(hands.round.length === 1, 'the round has begun before');
    hands.marker = 0;
  }),
  rule("1 {foundationStitch} in the chain at the last one's foot\\.", (hands) => {
    must(last(hands) === 'stitch', 'a corner lies between');
    must(hands.round.length > (hands.startCounts ?? 0), 'there is no last one');
    foundationStitch(hands);
  }),
  rule('That is the base chain of the last {tall}: under 2 strands\\.'),
  rule('1 {foundationStitch} in the last base chain, not the post\\.', (hands) => {
    must(last(hands) === 'corner' && hands.round.at(-1)?.made === 'chain', 'no corner of chains was made');
    foundationStitch(hands);
  }),
  rule("The hook goes below the corner chains?, into the base of the last {tall}'s upright post\\."),
  rule("1 {foundationStitch} at the last one's foot: the corner\\.", (hands) => {
    must(last(hands) === 'stitch', 'a corner is made already');
    makeCorner(hands, 1, 1, 'stitch');
  }),
  rule('1 {foundationStitch} in the same chain as the corner\\.', (hands) => {
    must(last(hands) === 'corner' && hands.round.at(-1)?.made === 'stitch', 'no corner stitch was made');
    foundationStitch(hands);
  }),
  rule('Corner and side share this chain, and the row turns\\.'),
  rule('This stitch is the corner\\.', (hands) => must(last(hands) === 'corner', 'it is no corner')),
  rule('Chain 1: (\\w+) of (\\d+) for the corner\\.', (hands, [which, of]) =>
    makeCorner(hands, ordinalOf(which ?? ''), number(of), 'chain'),
  ),
  rule('Chain 1 for the corner\\.', (hands) => makeCorner(hands, 1, 1, 'chain')),
  rule('The next stitch goes in the last base chain\\.'),
  rule('Corner (\\d+) holds (\\d+) chains?\\.', (hands, [which, holds]) => {
    must(hands.passed + 1 === number(which), 'this is another corner');
    must(hands.corner?.made === number(holds), 'the corner holds another number');
  }),
  rule('This middle stitch is the corner\\.', (hands) => must(last(hands) === 'corner', 'it is no corner')),
  rule('Put a marker in it\\.'),
  rule('Put a marker in this stitch\\.'),
];

/** Into the next stitch of the round below. */
function intoNext(hands: Hands, isHidden: boolean): void {
  must(hands.attachChain, 'the chain after attaching is missing');
  must(hands.round.length > 0 || hands.firstGoes === 'next', 'nobody said where the first stitch goes');
  const { into } = hands;
  const lies = into !== null && !into.moved;
  must(isHidden === lies, isHidden ? 'no corner lies before it' : 'a corner lies in the way');
  leaveBelow(hands);
  const lap = hands.next % hands.below.length;
  must(lap !== hands.attached, 'the round has come to its beginning');
  must(at(hands.below, lap).kind === 'stitch', 'a corner comes next, no stitch');
  makeStitch(hands);
  hands.next += 1;
}

/** The hook leaves what it worked its corner into. */
function leaveBelow(hands: Hands): void {
  const { into } = hands;
  if (into === null) return;
  must(into.last === into.size, 'the corner below is not worked to its end');
  must(!into.moved || last(hands) === 'stitch', 'nothing is worked past the corner');
  hands.next = into.from + into.size;
  hands.into = null;
}

/** A corner put into the next stitch, wherever the corner below lies. */
function cornerHere(hands: Hands): void {
  must(hands.attachChain, 'the chain after attaching is missing');
  leaveBelow(hands);
  must(at(hands.below, hands.next).kind === 'stitch', 'a corner comes next, no stitch');
  hands.into = { from: hands.next, size: 1, last: 1, moved: true };
  makeStitch(hands);
}

/** Passes over stitches of the round below. */
function skip(hands: Hands, count: number): void {
  leaveBelow(hands);
  for (let i = 0; i < count; i++) {
    must(at(hands.below, hands.next).kind === 'stitch', 'a corner comes next, no stitch');
    hands.next += 1;
  }
}

/** One of several in the same place. */
function again({ times }: Hands, which: number, of = times?.of): void {
  must(times !== null && times.of === of && times.made === which - 1, 'another one of them is due');
  times.made = which;
}

/** Into the corner of the round below that comes next or is being worked into. */
function intoCorner(hands: Hands, which: number | null, made: 'chain' | 'stitch'): void {
  must(hands.attachChain, 'the chain after attaching is missing');
  if (hands.into?.moved) leaveBelow(hands);
  if (hands.into === null) {
    const corner = cornerAt(hands.below, hands.next);
    must(corner !== undefined, 'no corner comes next');
    must(which === null || which === 1, 'a chain before it would be left out');
    hands.into = { ...corner, last: 1 };
    hands.next = corner.from;
  }
  const { into } = hands;
  must(at(hands.below, into.from).made === made, 'the corner below is made otherwise');
  must(which !== null || into.size === 1, 'nobody said which chain');
  const chain = which ?? 1;
  must(chain >= into.last && chain <= into.size, 'there is no such chain ahead');
  into.last = chain;
  makeStitch(hands);
}

/** Which stitch of the first side (of the round without corners) the yarn hangs in, from its corner. */
function attachNumber({ below, attached }: Hands): number {
  const corners = cornersOf(below);
  const end = corners.at(-1);
  if (!end || attached === null) return (attached ?? 0) + 1;
  const tail = below.length - end.from - end.size;
  return attached >= end.from ? attached - end.from - end.size + 1 : tail + attached + 1;
}

const attach = (hands: Hands, place: number): void => {
  must(hands.done.has('take the colour'), 'nobody said which yarn');
  must(place >= 0 && hands.attached === null, 'there is no such place');
  Object.assign(hands, { attached: place, next: place + 1, loops: 1, ends: 1 });
};

const first = (hands: Hands): void => must(hands.round.length === 1, 'this is not the first stitch');

const EDGING: RuleFor[] = [
  rule("Take the colour of the front's last round, right side to you\\.", (hands) => {
    must(hands.back.length > 0, 'there is no round to work on');
    beginRound(hands, 'edging');
    doing(hands, 'take the colour');
  }),
  rule('The Vs face you\\.'),
  rule('On the wrong side you see bars\\.'),
  rule('Attach the yarn in the back loop under your start marker\\.', (hands) =>
    attach(hands, hands.belowMarker),
  ),
  rule('Attach the yarn in the back loop of the last stitch\\.', (hands) =>
    attach(hands, hands.below.length - 1),
  ),
  rule('Of its top 2 loops the one away from you\\.'),
  rule('It is stitch (\\d+) of side 1\\.', (hands, [which]) => {
    must(cornersOf(hands.below).length > 0, 'there are no sides');
    must(attachNumber(hands) === number(which), 'the yarn hangs in another stitch');
  }),
  rule('It is stitch (\\d+); any other will do\\.', (hands, [which]) => {
    must(cornersOf(hands.below).length === 0, 'there are sides');
    must(attachNumber(hands) === number(which), 'the yarn hangs in another stitch');
  }),
  rule('It counts as no stitch\\.', (hands) => must(hands.attachChain, 'there is no chain')),
  rule('The first stitch goes in the next place\\.', (hands) => {
    hands.firstGoes = 'next';
  }),
  rule('The closing covers this one\\.', (hands) => must(hands.firstGoes === 'next', 'it is worked into')),
  rule('The first stitch goes in this same place\\.', (hands) => {
    hands.firstGoes = 'same';
  }),
  rule('1 {short} in the next back loop\\.', (hands) => intoNext(hands, false)),
  rule('1 {short} in the hidden first stitch, back loop\\.', (hands) => intoNext(hands, true)),
  rule('1 {short} in the attach place, back loop\\.', (hands) => {
    must(hands.attachChain && hands.firstGoes === 'same', 'the attach place stays free');
    must(hands.round.length === 0, 'the round has begun already');
    makeStitch(hands);
  }),
  rule('Leave the attach place free\\.', (hands) => {
    first(hands);
    must(hands.firstGoes === 'next', 'the attach place is worked into');
  }),
  rule('Put your start marker in this stitch, and go on to the (left|right)\\.', (hands, [way]) => {
    first(hands);
    must(way === ONWARDS[hands.hand], 'the round runs the other way');
    hands.marker = 0;
  }),
  rule('The front loops stay free in a line\\.'),
  rule('Look for it tucked against the corner\\.'),
  rule('1 {short} in the chain of the corner below\\.', (hands) => intoCorner(hands, null, 'chain')),
  rule('1 {short} in the (\\w+) chain of the corner below\\.', (hands, [which]) =>
    intoCorner(hands, ordinalOf(which ?? ''), 'chain'),
  ),
  rule('1 {short} in the corner stitch\\.', (hands) => intoCorner(hands, 1, 'stitch')),
  rule('1 {short} in the same place: the corner\\.', (hands) => makeCorner(hands, 1, 1, 'stitch')),
  rule('The corner (?:chains come|chain comes|stitch comes) next\\.'),
  rule('The corner stitch stands before it\\.'),
  rule('The (?:chains you just made lie|chain you just made lies) before it\\.'),
  // Asked for beyond the recipe.
  rule('The corner comes here\\.', (hands) => must(last(hands) === 'corner', 'no corner comes here')),
  rule('The corner comes here: 1 {short} in the next stitch\\.', cornerHere),
  rule('The corner goes into this same stitch\\.', (hands) =>
    must(hands.into?.moved === true, 'the corner does not come here'),
  ),
  rule('1 {short} in the same stitch\\.', (hands) => {
    must(hands.into?.moved === true && last(hands) === 'corner', 'no corner was put into a stitch');
    makeStitch(hands);
  }),
  rule('Go straight on: the corner is not here\\.', (hands) =>
    must(last(hands) === 'stitch', 'a corner was made here'),
  ),
  rule('{miss} the next stitch\\.', (hands) => skip(hands, 1)),
  rule('{miss} the next stitch, then 1 {short}, back loop only\\.', (hands) => {
    skip(hands, 1);
    intoNext(hands, false);
  }),
  rule('{miss} the next (\\d+) stitches, then 1 {short}, back loop only\\.', (hands, [count]) => {
    skip(hands, number(count));
    intoNext(hands, false);
  }),
  rule('{miss} the next stitch, then 1 {short} into the corner\\.', (hands) => {
    skip(hands, 1);
    intoCorner(hands, 1, at(hands.below, hands.next).made);
  }),
  rule('Work (\\d+) in this (?:stitch|base chain)\\.', (hands, [count]) => {
    must(hands.times === null || hands.times.made === hands.times.of, 'the last place is not done');
    hands.times = { made: 0, of: number(count) };
  }),
  rule('The first: 1 {short}\\.', (hands) => {
    intoNext(hands, hands.into !== null);
    again(hands, 1);
  }),
  rule('The first: 1 {foundationStitch}\\.', (hands) => {
    foundationStitch(hands);
    again(hands, 1);
  }),
  rule('The (\\w+) of (\\d+) in the same stitch: 1 {short}\\.', (hands, [which, of]) => {
    makeStitch(hands);
    again(hands, ordinalOf(which ?? ''), number(of));
  }),
  rule('The (\\w+) of (\\d+) in the same base chain: 1 {foundationStitch}\\.', (hands, [which, of]) => {
    foundationStitch(hands);
    again(hands, ordinalOf(which ?? ''), number(of));
  }),
  rule('This (?:side|part) comes to (\\d+)\\.', (hands, [count]) => {
    must(hands.comesTo === null || hands.comesTo === number(count), 'another number was said');
    hands.comesTo = number(count);
  }),
  rule('This corner gets (\\d+) (?:chains?|stitch|stitches)\\.', (hands, [count]) =>
    must(hands.corner?.of === number(count), 'another number was said'),
  ),
];

const needle =
  (adds: 0 | 1, startCounts: 0 | 1) =>
  (hands: Hands): void => {
    must(hands.loops === 0 && hands.ends === 2, 'the yarn is not cut');
    if (hands.stage === 'foundation') {
      must(hands.startCounts === startCounts, 'the round begins otherwise');
      must(hands.done.has('look for a twist'), 'the ring may be twisted');
    } else {
      must(startCounts === 0, 'this round has no starting chains');
      must(
        hands.into === null && hands.next % hands.below.length === hands.attached,
        'stitches are left over',
      );
      must((adds === 1) === (hands.firstGoes === 'next'), 'the attach place is covered twice, or not at all');
    }
    hands.needle = adds;
  };

const CLOSING: RuleFor[] = [
  rule("Cut the yarn a hand's length from the hook; draw it through\\.", endRound),
  rule('The last loop is closed\\.'),
  rule('You sew with this end: have a blunt needle ready\\.'),
  rule('Tape both ends to the table, all {tallMany} to one side\\.', (hands) => {
    must(hands.ends === 2, 'there are not two ends');
    doing(hands, 'tape the ends');
  }),
  rule('It lies as a ring: base chains inside, tops outside\\.'),
  rule('Lay the ring flat and follow the base once round\\.', (hands) =>
    doing(hands, 'follow the base', 'tape the ends'),
  ),
  rule('All base chains look the same way, from start to end\\.'),
  rule('Does the base stay on one side, all the way round\\?', (hands) =>
    doing(hands, 'look for a twist', 'follow the base'),
  ),
  rule('Once the ring is closed, a twist stays\\.'),
  rule('The slider stops here until you answer\\.'),
  rule('Thread the cut end: under both loops of the first stitch\\.', needle(1, 0)),
  rule('Thread the cut end: under both loops of the second stitch\\.', needle(0, 0)),
  rule('Thread the cut end: under both loops of the top starting chain\\.', needle(1, 1)),
  rule('Thread the cut end: under both loops of the first {tall}\\.', needle(0, 1)),
  rule('Then down into the middle of the last V\\.', (hands) => {
    must(hands.needle !== null, 'the needle is not under a stitch');
    doing(hands, 'close the round');
    if (hands.needle === 1) hands.round.push({ kind: 'stitch', made: 'stitch' });
  }),
  rule('This makes the (\\w+) stitch(?: of side 1)?\\.', (hands, [which]) => {
    must(hands.needle === 1, 'it makes none');
    must(countPlaces(hands.round).sides[0] === ordinalOf(which ?? ''), 'it makes another stitch');
  }),
  rule('It lies over the (?:first stitch|starting chains) and makes none of its own\\.', (hands) =>
    must(hands.needle === 0, 'it makes one'),
  ),
  rule('With the starting end, sew the last base chain to the first\\.', (hands) =>
    doing(hands, 'close the base', 'close the round', 'leave a long end'),
  ),
  rule('The base runs on without a step\\.'),
  rule('Weave both ends in on the wrong side\\.', (hands) => {
    doing(hands, 'weave', 'close the round', ...(hands.stage === 'foundation' ? ['close the base'] : []));
    must(hands.ends === 2, 'there are not two ends');
    hands.ends = 0;
    putAway(hands);
  }),
  rule('Run each end one way, then back\\.'),
  rule('Keep needles and blades away from small children\\.'),
];

export const ROUND_RULES: RuleFor[] = [...FRONT, ...FOUNDATION, ...EDGING, ...CLOSING];
