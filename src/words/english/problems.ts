/**
 * What is wrong with what was given, and what to do.
 * Source of the wording: GOV.UK Design System, error messages ("Enter …", "… must be … or more").
 */
import type { ActRound } from '../../../core/index.ts';
import type { ProblemMessages } from '../messages.ts';
import { counted } from '../speaker.ts';

const start = (label: string): string => label.charAt(0).toUpperCase() + label.slice(1);
const number = (index: number): string => `${index + 1}`;
const stitches = { one: 'stitch', other: 'stitches' };
const edgingRounds = { one: 'edging round', other: 'edging rounds' };

const roundNames: Record<ActRound, string> = {
  foundation: 'foundation',
  edging: 'edging',
  plan: 'planning',
  join: 'join',
};

const mishap = (index: number, says: string): string => `Mishap ${number(index)}: ${says}`;

export const problems: ProblemMessages = {
  empty: (_, __, label) => `Enter ${label}`,
  'not-a-number': ({ like }, { formatting }, label) =>
    `${start(label)} must be a number, like ${formatting.plain(like)}`,
  'not-whole': ({ like }, { formatting }, label) =>
    `${start(label)} must be a whole number, like ${formatting.plain(like)}`,
  several: ({ like }, { formatting }, label) =>
    `${start(label)} must be one number, like ${formatting.plain(like)}`,
  grouped: ({ like }, { formatting }, label) =>
    `${start(label)} must be typed without a comma or a point, like ${formatting.plain(like)}`,
  'too-low': ({ min }, { formatting }, label) => `${start(label)} must be ${formatting.plain(min)} or more`,
  'too-high': ({ max }, { formatting }, label) => `${start(label)} must be ${formatting.plain(max)} or fewer`,
  between: ({ min, max }, { formatting }, label) =>
    `${start(label)} must be between ${formatting.plain(min)} and ${formatting.plain(max)}`,

  'corners-take-all': ({ min, taken }, { formatting }, label) =>
    `${start(label)} must be ${formatting.plain(min)} or more: its count takes in ${formatting.plain(taken)} from the corners`,
  'corner-count': ({ corners }, { formatting }, label) =>
    `${start(label)} must be given once for every side: ${formatting.plain(corners)} in all`,
  'no-corners': () =>
    'A panel without corners has 1 side: add the counts up, or say how its corners are made',

  'corner-must-match': ({ corner, size }, { formatting }) =>
    `The last edging round's corners must match the front's: make corner ${number(corner)} of size ${formatting.plain(size)}, as on the front`,
  'no-foundation-stitch': (params, speaker, label) => {
    const { stitches: count, growth, rounds, fitting, cornered } = params;
    const { plain } = speaker.formatting;
    const subject = cornered ? start(label) : 'The round';
    const adds = rounds === 1 ? 'the edging round adds' : `the ${counted(speaker, rounds, edgingRounds)} add`;
    const change =
      fitting > 0
        ? `${counted(speaker, fitting, edgingRounds)} of this kind would fit`
        : cornered
          ? `with smaller corners it would fit, or with ${plain(growth + 1)} stitches on this side`
          : `with fewer stitches added it would fit, or with ${plain(growth + 1)} stitches in the round`;
    return `${subject} has ${counted(speaker, count, stitches)} and ${adds} ${plain(growth)}, which leaves none for the foundation: ${change}`;
  },
  'increase-with-corners': (_, __, label) =>
    `${start(label)} must be 0: a round with corners grows at its corners, and spread stitches are for round panels`,
  'increase-too-big': ({ adds, to, max }, { formatting: { plain } }, label) =>
    `${start(label)} must be ${plain(max)} or fewer, one to each stitch but the first: ${plain(adds)} are added to ${plain(to)}`,
  'start-side-too-short': () =>
    'The front side to start against leaves 1 foundation stitch, and the starting chains and the closing would make 2: begin on a longer side, or let only one of them count',
  'lead-too-long': ({ max }, { formatting }, label) =>
    `${start(label)} must be ${formatting.plain(max)} or fewer: that is all this side has to work`,

  mishaps: ({ max }, { formatting }) => `Give between 0 and ${formatting.plain(max)} mishaps`,
  'mishap-sum': ({ max }, { formatting }) =>
    `The mishaps must add ${formatting.grouped(max)} stitches or fewer in all`,
  'mishap-kind': ({ mishap: index }) => mishap(index, 'choose one that is known'),
  'mishap-round': ({ mishap: index, rounds }) =>
    mishap(index, `it can happen in the ${rounds.map((round) => roundNames[round]).join(' or the ')} only`),
  'mishap-edging': ({ mishap: index }) => mishap(index, 'it names an edging round that is not there'),
  'mishap-side': ({ mishap: index, sides }) => mishap(index, `its side must be between 1 and ${sides}`),
  'mishap-corner': ({ mishap: index, corners }) =>
    mishap(index, corners > 0 ? `its corner must be between 1 and ${corners}` : 'there are no corners here'),
  'mishap-place': ({ mishap: index }) => mishap(index, 'its stitch must be on the side'),
  'mishap-count': ({ mishap: index }) => mishap(index, 'its number must be a whole number'),
  'mishap-end': ({ mishap: index }) => mishap(index, 'say whether it was before or after the corner'),
  'no-kind': () => 'Choose a mishap',
  'as-planned': ({ count }, { formatting }) => `${formatting.plain(count)} is what the recipe asks for`,

  'back-empty': () => 'There is nothing to join: one of the rounds has no stitches',

  'printed-side': ({ round, given, printed }, { formatting: { plain } }) =>
    `Round ${number(round)}: the recipe gives ${plain(given)} to a side where ${plain(printed)} is printed`,
  'printed-total': ({ round, given, printed }, { formatting: { plain } }) =>
    `Round ${number(round)}: the recipe gives ${plain(given)} where ${plain(printed)} is printed`,
  'rounds-named': ({ named, printed, of }, { formatting: { plain } }) =>
    `${plain(named)} rounds are named, ${plain(printed)} ${of === 'totals' ? 'totals' : 'counts'} are printed`,
  'printed-rounds': ({ of, max }, { formatting }) =>
    `Give the ${of === 'totals' ? 'totals' : 'counts'} of ${formatting.plain(max)} rounds or fewer`,
  'first-uneven': ({ total, sides }, { formatting: { plain } }) =>
    `Round 1: ${plain(total)} does not make ${plain(sides)} equal sides`,
};
