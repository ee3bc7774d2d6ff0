/** The sentences of a written pattern, as a magazine prints them. */
import type { Arm } from '../../../core/index.ts';
import type { PatternHeading, PatternMessages, WrittenLeg } from '../pattern/messages.ts';
import type { Counts, Writer, WrittenCorner } from '../pattern/writing.ts';
import { counted } from '../speaker.ts';

const number = (index: number): string => `${index + 1}`;

type Piece = 'panel' | 'foundation' | 'edging';

/** What the places of a corner are. The panel's stitches may be any. */
const cornerUnit = (made: WrittenCorner['made'], of: Piece, { short }: Writer): string => {
  if (made === 'chain') return short('chain');
  return of === 'panel' ? 'st' : short(of === 'foundation' ? 'foundation-treble' : 'double-crochet');
};

/** "2 ch", "1 dc". */
const corner = ({ made, size }: WrittenCorner, of: Piece, writer: Writer): string =>
  `${size} ${cornerUnit(made, of, writer)}`;

/** "4 corners of 2 ch", "corners 2, 2, 1, 2 ch"; each with its unit where they differ. */
function listed(all: readonly WrittenCorner[], of: Piece, writer: Writer): string {
  const [first] = all;
  if (!first || all.some(({ made }) => made !== first.made))
    return `corners ${all.map((one) => corner(one, of, writer)).join(', ')}`;
  const areAlike = all.length > 1 && all.every(({ size }) => size === first.size);
  if (areAlike && first.size === 0)
    return `${all.length} corners without ${first.made === 'chain' ? 'chains' : 'stitches'}`;
  if (areAlike) return `${all.length} corners of ${corner(first, of, writer)}`;
  return `corners ${all.map(({ size }) => size).join(', ')} ${cornerUnit(first.made, of, writer)}`;
}

/** "6 sides of 30", "sides 62, 38, 62, 38" */
function sidesOf(sides: Counts['sides'], writer: Writer): string {
  const all = sides.map((side) => writer.amount(side));
  const [first] = all;
  return all.length > 1 && all.every((side) => side === first)
    ? `${all.length} sides of ${first}`
    : `sides ${all.join(', ')}`;
}

const leg = ({ count, corner: after, times }: WrittenLeg, writer: Writer): string => {
  const stitches = `${writer.amount(count)} ${writer.short('foundation-treble')}`;
  const turn = after && (after.size > 0 ? corner(after, 'foundation', writer) : 'turn the corner');
  const once = turn ? `${stitches}, ${turn}` : stitches;
  return times > 1 ? `[${once}] ${times === 2 ? 'twice' : `${times} times`}` : once;
};

/** "sides 60, 36, 60, 36; 4 corners of 2 ch; 200 in all" */
const counts = ({ sides, corners: all, total }: Counts, of: Piece, writer: Writer): string => {
  const inAll = `${writer.amount(total)} in all`;
  if (all.length === 0) return inAll;
  return `${sidesOf(sides, writer)}; ${listed(all, of, writer)}; ${inAll}`;
};

const corners = ([before, after]: Arm, made: WrittenCorner, writer: Writer): string => {
  const dc = writer.short('double-crochet');
  const stitches = (count: number): string[] => (count > 0 ? [`${count} ${dc}`] : []);
  return [...stitches(before), middle(made, writer), ...stitches(after)].join(', ');
};

/** Stitches of the corner look like those beside it: they are named. */
const middle = (made: WrittenCorner, writer: Writer): string => {
  if (made.size === 0) return 'turn the corner';
  const places = corner(made, 'edging', writer);
  return made.made === 'chain' ? places : `${places} (the corner)`;
};

const start = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

const headings: Record<Exclude<PatternHeading, 'tension'>, string> = {
  sizes: 'Sizes',
  panel: 'The panel',
  materials: 'Materials',
  abbreviations: 'Abbreviations',
  special: 'Special stitch',
  counting: 'Notes on counting',
  foundation: 'Foundation',
  edging: 'Edging',
  'front-strip': 'Strip for the front',
  sewing: 'Cloth and sewing',
  join: 'Joining',
  notes: 'Notes',
};

export const pattern: PatternMessages = {
  heading: ({ of }, { term }) => (of === 'tension' ? start(term('tension')) : headings[of]),
  untitled: 'A back for a crocheted panel',
  by: ({ designer }) => `Designed by ${designer}`,
  terms: ({ terms }) =>
    terms === 'both'
      ? 'UK terms before the stroke, US terms after it'
      : terms === 'uk'
        ? 'UK terms'
        : 'US terms',
  hand: ({ hand, term }) =>
    `Written for the ${hand} hand: seen from its right side, a round runs ${hand === 'right' ? term('anticlockwise') : 'clockwise'}.`,
  intro: ({ term }) =>
    `A ring of ${term('foundation-treble', 'many')} with an edging, sewn to cloth and joined to a panel stitch for stitch.`,

  panel: (given, writer) =>
    given.corners.length === 0
      ? `The panel's last round: ${writer.amount(given.total)} stitches, no corners.`
      : `The panel's last round: ${counts(given, 'panel', writer)}.`,
  panelOrder: () => 'Its sides are numbered as they are worked, right side facing. Corner 1 follows side 1.',

  materials: [
    () => 'The panel, its last round worked and its ends woven in',
    () => "Yarn as in the panel's last round, for the foundation and the edging",
    () => "The hook of the panel's last round",
    ({ markers }, { speaker }) =>
      `${counted(speaker, markers, { one: 'stitch marker', other: 'stitch markers' })} or more`,
    () => 'A tapestry needle; a sewing needle, strong thread and pins',
    ({ becomes }, { term }) =>
      becomes === 'bag'
        ? 'Cloth for the back'
        : `Cloth for the back, and ${becomes === 'cover' ? 'the form it goes over' : `a ${term('cushion-pad')}`}`,
  ],
  tension: ({ term }) =>
    `Work at the ${term('tension')} of the panel's last round: the edging must have as many stitches to a side as the panel, and be as long.`,
  abbreviation: ({ id }, writer) => `${writer.term(id, 'short')} – ${writer.term(id)}`,

  // The usual way to make it: common practice, no source.
  special: ({ corner: made }, writer) => {
    const [ftr, ch, yrh] = (['foundation-treble', 'chain', 'yarn-round-hook'] as const).map(writer.short);
    const after =
      made === null || made.size === 0
        ? ''
        : made.made === 'chain'
          ? ` After a corner, that base ${ch} lies below the corner's chains.`
          : ' The stitch of a corner goes in the same place as the one before it.';
    return `${start(writer.term('foundation-treble'))} (${ftr}): ${yrh}, hook under 2 strands of the 4th ${ch} from the hook, draw a loop up; ${yrh}, draw through 1 loop: this is the base ${ch}; [${yrh}, draw through 2 loops] twice. Each one after it goes in the base ${ch} of the ${ftr} before it.${after}`;
  },

  places: () => 'A place is where the hook can go: a stitch, or one chain of a corner.',
  countedApart: ({ made }) =>
    `The ${made === 'chain' ? 'chains' : 'stitches'} of a corner are counted apart from the sides.`,
  startingChains: ({ count }) =>
    count === 1
      ? 'The starting chains of the foundation count as 1 stitch, of side 1.'
      : 'The starting chains of the foundation count as no stitch.',
  closings: ({ foundation, edging }) => {
    if (foundation === 1 && edging === 1)
      return 'The closing of each round makes 1 stitch, which counts with side 1.';
    if (foundation === 0 && edging === 0) return 'The closings make no stitch of their own.';
    return foundation === 1
      ? 'The closing of the foundation makes 1 stitch, which counts with side 1; that of the edging makes none.'
      : 'The closing of the edging makes 1 stitch, which counts with side 1; that of the foundation makes none.';
  },
  faces: ({ faces }) =>
    `The back is worked in the mirrored order of the panel. ${faces.map((front, side) => `${side === 0 ? 'Side' : 'side'} ${number(side)} faces panel side ${number(front)}`).join('; ')}.`,

  begin: ({ front, chains, counts: count }, { short }) =>
    `${front === null ? '' : `Begin on side 1, which faces panel side ${number(front)}. `}Leave an end to sew with: slip knot, ${chains} ${short('chain')}${count === 1 ? `, the last ${chains - 1} for 1 stitch` : ''}.`,
  legs: ({ legs }, writer) => `${legs.map((one) => leg(one, writer)).join(', ')}.`,
  markers: ({ every, cornered }) =>
    `Put a marker in the first stitch and after every ${every}${cornered ? ', counting anew after each corner' : ''}.`,
  closeFoundation: ({ adds, cornered }, { short }) =>
    `Cut the yarn and draw it through the last loop. Lay the ring flat and see that it is not twisted. Close the tops with the needle ${
      adds === 1
        ? `beside the first stitch: this makes the last stitch${cornered ? ' of side 1' : ''}`
        : 'over the first stitch: this makes no stitch'
    }. Sew the last base ${short('chain')} to the first.`,
  counts: ({ counts: given, of }, writer) => `${start(counts(given, of, writer))}.`,

  edgingRound: ({ round, rounds }) => (rounds > 1 ? `Round ${number(round)}` : 'One round'),
  joinYarn: ({ adds, cornered }, { short }) =>
    `Right side facing, join the yarn in a stitch${cornered ? ' of side 1' : ''}, 1 ${short('chain')}, which counts as no stitch. Begin in ${adds === 1 ? 'the next stitch' : 'the same stitch'}.`,
  alongSides: ({ short }) => `1 ${short('double-crochet')} ${short('back-loop-only')} in each stitch.`,
  everyCorner: ({ arm, corner: made }, writer) => `In each corner: ${corners(arm, made, writer)}.`,
  oneCorner: ({ index, arm, corner: made }, writer) =>
    `In corner ${number(index)}: ${corners(arm, made, writer)}.`,
  intoCorner: ({ arm: [before, after], corner: made }, { short }) => {
    const dc = short('double-crochet');
    const told = (count: number, when: string, where: string): string[] =>
      count === 0 ? [] : [`the ${dc} ${when} ${count === 1 ? 'goes' : 'go'} in ${where}`];
    const both = [
      ...told(before, 'before a corner', 'the first place of the corner below'),
      ...told(
        after,
        before === 0 ? 'after a corner' : 'after it',
        `the last${before === 0 ? ' place of the corner below' : ''}`,
      ),
    ];
    return [
      both.length === 0 ? 'Nothing goes in the corner below.' : `${start(both.join(', '))}.`,
      ...(made === 'stitch' ? ['The stitch of the corner goes in the same place as the one before it.'] : []),
      // Common practice, no source.
      'The first stitch beyond it lies hidden against the corner: work that too.',
    ].join(' ');
  },
  increase: ({ count }, writer) =>
    `Work 2 ${writer.short('double-crochet')} in one stitch ${writer.amount(count)} times, spread evenly.`,
  closeEdging: ({ adds, cornered }) =>
    adds === 1
      ? `Cut the yarn and close with the needle over the place where it was joined: this makes the last stitch${cornered ? ' of side 1' : ''}. Weave the ends in.`
      : 'Cut the yarn and close with the needle over the first stitch: this makes no stitch. Weave the ends in.',

  frontSame: () => 'The front is cloth too. Work foundation and edging once more for it, stitch for stitch.',
  frontMirrored: ({ side }) =>
    `The front is cloth too. Its strip is the mirror image of the back's: foundation and edging as above, with these numbers. Its side 1 is panel side ${number(side)}.`,
  frontSewn: () =>
    "Cut 2 pieces, mirror images, and sew a strip to each. The front's piece with its strip is what is called the panel here.",

  cut: ({ cut }) =>
    cut
      ? `Cut the cloth: ${cut.size}. ${cut.allowance}`
      : 'Measure the panel and cut the cloth to it: the raw edge lies along the base of the strip.',

  sewing: [
    () =>
      'Lay the strip face down on the right side of the cloth, base chains on the raw edge, edging inwards.',
    ({ cornered }) =>
      cornered
        ? 'Pin the middle of each side, then the corners, then between them.'
        : 'Pin the 4 quarters, then halfway between them, then all round.',
    () =>
      'Sew with running stitch just below the edging, over 1 stitch and under the next; sew round once more and fill the gaps.',
    () => 'Take the pins out and turn the strip.',
  ],

  layTogether: ({ first }) =>
    first
      ? `Lay panel and back wrong sides together, side ${number(first.back)} of the back against panel side ${number(first.panel)}.`
      : 'Lay panel and back wrong sides together, and mark a stitch of each that lie against each other.',
  beginJoin: ({ side, back, fromCorner, corner: beside }, writer) => {
    if (beside === null) return 'Join the yarn at the marked stitch of both.';
    const nearest =
      beside.size === 0
        ? 'first stitch'
        : beside.made === 'stitch'
          ? 'corner stitch'
          : 'nearest corner chain';
    return `Join the yarn in place ${writer.amount(fromCorner)} of panel side ${number(side)}, counted from its beginning, and in place ${writer.amount(fromCorner)} of back side ${number(back)}, counted from its end; the ${nearest} is place 1.`;
  },
  slipStitches: ({ pairs, cornered }, writer) =>
    `${writer.amount(pairs)} ${writer.short('slip-stitch')} through the inner two of the four loops, place by place${cornered ? ', corners to corners' : ''}.`,
  padIn: ({ last, becomes }, { term }) =>
    `When all is joined but ${last === null ? 'the last quarter' : `panel side ${number(last)}`}, put the ${becomes === 'cover' ? 'form' : term('cushion-pad')} in, pin the opening and go on.`,
  beginOpen: ({ side }) =>
    `Join the yarn in the last stitch of panel side ${number(side)}, which stays open, and begin with the corner after it.`,
  leaveOpen: ({ side }) =>
    `Go on to the other corner of panel side ${number(side)}, and fasten off. That side stays open.`,
  lastHole: () => 'Join the pair where the yarn was joined last of all, and fasten off.',

  sizesKnown: ({ names }) => {
    const [first = '', ...others] = names;
    return `${first} (${others.join(': ')}). Where one number is given, it is for all sizes.`;
  },
  sizeHead: {
    size: 'Size',
    panel: 'Panel, sides',
    foundation: 'Foundation, sides',
    edging: 'Edging, sides',
    total: 'In all',
  },
  sizeName: ({ index }) => `size ${number(index)}`,
};
