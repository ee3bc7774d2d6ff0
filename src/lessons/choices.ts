/**
 * Questions that are answered in words, as data: what is asked, the options, which is right, a nudge towards it,
 * and what each wrong one would lead to. Common practice, no source, unless marked.
 */
import type { TermForm, TermId } from '../words/terms.ts';

type Terms = (id: TermId, form?: TermForm) => string;
type Words = (t: Terms) => string;

export type Option = {
  says: Words;
  /** What it would lead to; none for the right one. */
  leads?: Words;
};

export type Choice = {
  asks: Words;
  options: Readonly<Record<string, Option>>;
  right: string;
  nudge: Words;
  why: Words;
};

const said =
  (text: string): Words =>
  () =>
    text;

const CHOICE_TABLE = {
  'before-all': {
    asks: said('What is needed before the first stitch of the back?'),
    options: {
      counts: { says: said('The counts of the front') },
      cloth: {
        says: said('The cloth, cut'),
        leads: said('The cloth would decide the size, and no stitch would meet.'),
      },
      pad: {
        says: (t) => `The ${t('cushion-pad')}`,
        leads: said('It goes in when all sides but 1 are joined.'),
      },
    },
    right: 'counts',
    nudge: said('Both edges must meet, stitch for stitch.'),
    why: said('The back is worked to meet the front: its counts come from there.'),
  },
  'first-on-back': {
    asks: said('Which part of the back is worked first?'),
    options: {
      edging: { says: said('The edging'), leads: said('There is nothing yet to work it into.') },
      foundation: { says: (t) => `A ring of ${t('foundation-treble', 'many')}` },
      sewing: { says: said('The seam to the cloth'), leads: said('There is no strip to sew on yet.') },
    },
    right: 'foundation',
    nudge: said('The edging stands on it, and the cloth is sewn to it.'),
    why: said('The ring carries the edging above and is sewn to the cloth below.'),
  },
  'edging-is-for': {
    asks: said('What is the edging for?'),
    options: {
      cloth: {
        says: said('It is sewn to the cloth'),
        leads: said('Its Vs would be caught in the seam, and nothing would be left to join.'),
      },
      pad: { says: (t) => `It holds the ${t('cushion-pad')}`, leads: said('Cloth and front do that.') },
      front: { says: said("Its Vs meet the front's") },
    },
    right: 'front',
    nudge: said('It is worked in the colour of the front.'),
    why: said('V lies on V: that is why both rounds must have the same counts.'),
  },
  'joined-by': {
    asks: said('What holds front and back together?'),
    options: {
      slip: { says: (t) => `A round of ${t('slip-stitch', 'many')}` },
      sewing: {
        says: said('The running stitch'),
        leads: said('It holds the strip to the cloth, not to the front.'),
      },
      glue: { says: said('The edging alone'), leads: said('It lies against the front, and opens.') },
    },
    right: 'slip',
    nudge: said('It is made with the hook, through both pieces.'),
    why: (t) => `1 ${t('slip-stitch')} for every pair of stitches.`,
  },
  'pad-when': {
    asks: (t) => `When does the ${t('cushion-pad')} go in?`,
    options: {
      last: {
        says: said('When all sides are joined'),
        leads: said('No way in would be left: a side would have to be undone.'),
      },
      before: { says: said('Before the last side is joined') },
      first: {
        says: said('Before the first side is joined'),
        leads: said('It would push both pieces apart while you join.'),
      },
    },
    right: 'before',
    nudge: said('It needs 1 open side.'),
    why: said('3 sides hold it, and through 1 it goes in.'),
  },
  'side-begins': {
    asks: said('Where does the count of the next side begin?'),
    options: {
      // Exactly one per side is missed there (read, two tutorials).
      tucked: { says: said('At the V tucked under the corner') },
      free: {
        says: said('At the first V that stands free'),
        leads: said('Every side would be counted 1 short: 4 short on a square.'),
      },
      chain: {
        says: said("At the corner's last chain"),
        leads: said('The chain belongs to the corner: the side would be 1 too long.'),
      },
    },
    right: 'tucked',
    nudge: said('Push the corner aside and look again.'),
    why: (t) => `It is the stitch most often ${t('miss', 'done')}: 1 on each side.`,
  },
  'chains-apart': {
    asks: said('You counted 14 with both chains of 1 corner. What has the side?'),
    options: {
      '14': {
        says: said('14 stitches'),
        leads: said('The 2 chains would be worked twice: the side 2 too long.'),
      },
      '12': { says: said('12 stitches') },
      '10': { says: said('10 stitches'), leads: said('That takes away both corners: the side 2 short.') },
    },
    right: '12',
    nudge: said('Take away what belongs to the corner.'),
    why: said('14 less the 2 chains is 12. Say what you took in, and the sum is done for you.'),
  },
  markers: {
    asks: said('You pass 1 marker, and 2 Vs more. Markers hang at every 10. How many?'),
    options: {
      '11': {
        says: said('11 stitches'),
        leads: said('The V with the marker is the 10th, not the 1st: 1 too few.'),
      },
      '13': {
        says: said('13 stitches'),
        leads: said('The V with the marker is counted already: 1 too many.'),
      },
      '12': { says: said('12 stitches') },
    },
    right: '12',
    nudge: said('The marker hangs in the 10th V itself.'),
    why: said('10 at the marker and 2 more. Count in tens, and a slip costs 10 Vs and not the round.'),
  },
  twist: {
    asks: said('What do you do when the ring is twisted?'),
    options: {
      close: {
        says: said('Close it and turn it afterwards'),
        leads: (t) => `Closed twisted, it never lies flat: it must be ${t('unravel', 'done')}.`,
      },
      untwist: { says: said('Turn 1 end over and tape it again') },
      stretch: { says: said('Stretch it flat'), leads: said('It springs back, and the twist stays.') },
    },
    right: 'untwist',
    nudge: said('The ends are not joined yet.'),
    why: said('Before closing a twist is 1 turn of the hand. After it, a round of work.'),
  },
  'edging-covers': {
    asks: said("What does the closing's V cover?"),
    options: {
      first: {
        says: said('The first stitch of the round'),
        leads: said('The side would be 1 short, and the attach place would show.'),
      },
      attach: { says: said('The place where the yarn was attached') },
      corner: {
        says: said('The corner'),
        leads: said('The round begins in a side: the corner is far away.'),
      },
    },
    right: 'attach',
    nudge: said('1 place was left free at the beginning.'),
    why: said('The place had a chain only, and needs a V of its own.'),
  },
  'raw-edge': {
    asks: said('Which edge of the strip lies on the raw edge of the cloth?'),
    options: {
      edging: {
        says: said('The edging'),
        leads: said('Turned over, the edging would lie inside, and nothing could be joined.'),
      },
      base: { says: said('The base chains') },
    },
    right: 'base',
    nudge: said('The strip is turned outwards when it is sewn.'),
    why: said('The edging points to the middle; turned over, it comes outside.'),
  },
  'pin-first': {
    asks: said('Where do the first pins go?'),
    options: {
      along: {
        says: said('Along 1 side, then the next'),
        leads: said('What is loose would gather at the last corner.'),
      },
      middles: { says: said('At the middle of each side') },
      anywhere: { says: said('Anywhere'), leads: said('Corners would slip from corners.') },
    },
    right: 'middles',
    nudge: said('Share what is loose.'),
    // Ends first, then the exact middle, then halves (read, five sources).
    why: said('Fixed places first, then halves of halves.'),
  },
  'way-back': {
    asks: said('What does the way back do?'),
    options: {
      fill: { says: said('It fills the gaps of the way out') },
      double: {
        says: said('It doubles every stitch'),
        leads: said('The gaps would stay open, and the seam gives there.'),
      },
    },
    right: 'fill',
    nudge: said('On the way out every second stitch lies below.'),
    why: said('Over where it went under: the line is whole on both sides.'),
  },
  'before-turning': {
    asks: said('What comes before the strip is turned?'),
    options: {
      turn: {
        says: said('Nothing: turn it'),
        leads: said('The pins would be inside, where nobody sees them.'),
      },
      pins: { says: said('All pins out, and counted') },
    },
    right: 'pins',
    nudge: said('You wrote a number down.'),
    why: said('As many out as went in.'),
  },
  'loop-rests': {
    asks: (t) => `You stop to put the ${t('cushion-pad')} in. What about the loop?`,
    options: {
      cut: { says: said('Cut the yarn'), leads: said('There would be 2 more ends, and a weak place.') },
      leave: { says: said('Leave it as it is'), leads: said('It slips out, and the seam runs back.') },
      long: { says: said('Draw it a hand long') },
    },
    right: 'long',
    nudge: said('It must not slip out while you push.'),
    why: said('What is long does not run back by itself.'),
  },
  'open-pair': {
    asks: said('All round is joined. Which pair is still open?'),
    options: {
      attach: { says: said('The pair where the yarn was attached') },
      corner: { says: said('The last corner'), leads: said('It was joined as you came to it.') },
      none: { says: said('None'), leads: said('A hole would stay where you began.') },
    },
    right: 'attach',
    nudge: said('Where did the yarn come in?'),
    why: said('It held the yarn and got no stitch of its own.'),
  },
  'join-ends': {
    asks: (t) => `The yarn is cut. Under which ${t('slip-stitch')} does the needle go?`,
    options: {
      first: { says: said('Under the first'), leads: said('A stitch too many would lie in the line.') },
      second: { says: said('Under the second') },
    },
    right: 'second',
    nudge: said('No stitch may be added: every pair has its own.'),
    why: said('It lies over the first and makes none of its own.'),
  },
} satisfies Record<string, Choice>;

export type ChoiceId = keyof typeof CHOICE_TABLE;

export const CHOICES: Readonly<Record<ChoiceId, Choice>> = CHOICE_TABLE;

export const CHOICE_IDS = Object.keys(CHOICE_TABLE) as ChoiceId[];
