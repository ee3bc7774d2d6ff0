/** What each mishap is called, its story in a line, why it cannot happen on a panel, and where one was put in. */
import {
  type ActKind,
  type ActParts,
  type ActRound,
  entryOf,
  type Mishap,
  type Plan,
  roundsOf,
  type WhyNot,
} from '../../../core/index.ts';
import { many, manyOf } from '../numbers.ts';
import { term } from '../terms.ts';
import type { Speech } from '../words.ts';

/** The four times at which a hand can do otherwise, in the order of the making. */
export const TIMES: Readonly<Record<ActRound, string>> = {
  plan: 'planning',
  foundation: 'foundation',
  edging: 'edging',
  join: 'join',
};

export type MishapStory = { title: string; story: string };

type Telling = { plan: Plan; dialect: Speech['dialect']; round: ActRound };

/** Title and story of a kind, as it happens in one round. */
export function mishapStory(kind: ActKind, round: ActRound, plan: Plan, speech: Speech): MishapStory {
  const [title, story] = STORIES[kind]({ plan, dialect: speech.dialect, round });
  return { title, story };
}

/** The title of one mishap: sharper than its kind's where its number is known. */
export function mishapTitle(mishap: Mishap, plan: Plan, speech: Pick<Speech, 'dialect'>): string {
  const { kind, round = 'foundation', edging = 0, corner = 0, count = 0 } = mishap;
  const telling: Telling = { plan, dialect: speech.dialect, round };
  if (kind === 'corner-moved')
    return `A corner ${many(Math.abs(count), 'stitch', 'stitches')} ${count < 0 ? 'early' : 'late'}`;
  if (kind === 'corner-chains') {
    const { corners } = (round === 'edging' && plan.edgings[edging]) || plan.foundation;
    return `Too ${count < (corners[corner]?.size ?? 0) ? 'few' : 'many'} corner ${things(telling)}`;
  }
  return STORIES[kind](telling)[0];
}

const things = ({ plan }: Telling): 'chains' | 'stitches' =>
  plan.edge.corners[0]?.made === 'stitch' ? 'stitches' : 'chains';

const stitch = ({ round, dialect }: Telling): string =>
  term(round === 'foundation' ? 'treble' : 'double-crochet', dialect);

const two = ({ round, dialect }: Telling): string =>
  manyOf(2, round === 'foundation' ? 'treble' : 'double-crochet', dialect);

const missed = ({ dialect }: Telling): string => term('miss', dialect, 'done');

type Story = (telling: Telling) => [title: string, story: string];

const STORIES: Record<ActKind, Story> = {
  'chains-as-stitches': (t) => [
    `Corner ${things(t)} taken for side stitches`,
    'You plan each side longer by its corner.',
  ],
  'chains-left-out': (t) => [
    `Corner ${things(t)} taken off twice`,
    'You take the corner off a number it was not in.',
  ],
  'arms-forgotten': ({ plan }) => [
    "The edging's own stitches forgotten",
    plan.edge.corners.length > 0
      ? 'You plan the foundation as long as the front. The edging still grows at its corners.'
      : 'You plan the foundation as long as the front. The edging still grows.',
  ],
  'order-not-mirrored': () => [
    "The sides in the front's order",
    'You work the sides as the front has them. The back runs the other way round.',
  ],
  'start-counted': (t) =>
    t.round === 'foundation'
      ? ['The starting chains counted', `You count them as the first ${stitch(t)}. No stitch stands there.`]
      : ['The attaching chain counted', `You count it as the first ${stitch(t)}, and pass the next stitch.`],
  'closing-forgotten': (t) => [
    'The closing not allowed for',
    t.round === 'foundation'
      ? `You work every ${stitch(t)} of the start side. The closing makes one more.`
      : 'You work into the last place as well. The closing makes one more.',
  ],
  'closing-over-first': () => [
    'Closed over the first stitch',
    'The needle covers the first stitch, and makes none of its own.',
  ],
  'closing-beside-first': () => [
    'Closed beside the first stitch',
    'The needle lies beside the first stitch, and makes one more.',
  ],
  'stitch-missed': (t) => [
    `A stitch ${missed(t)}`,
    t.round === 'foundation'
      ? `You count a ${stitch(t)} that you have not made.`
      : 'You pass a stitch, and go on in the next.',
  ],
  'stitch-doubled': (t) => [
    'A stitch worked twice',
    t.round === 'foundation'
      ? `${two(t)} stand in one base chain. You count one.`
      : `${two(t)} go into one stitch.`,
  ],
  'stitch-between': (t) => [
    'A stitch between two',
    `You work a ${stitch(t)} between two stitches, into no stitch at all.`,
  ],
  'marker-miscounted': () => [
    'A marker miscounted',
    'You count by markers, and take one too many or too few.',
  ],
  'corner-moved': () => ['A corner early or late', 'You work the corner before the side is full, or after.'],
  'corner-forgotten': () => ['A corner forgotten', 'You work straight on where a corner belongs.'],
  'corner-chains': (t) => [`Too many or too few corner ${things(t)}`, 'One corner gets another size.'],
  'arm-missed': (t) => [
    `A stitch of the corner ${missed(t)}`,
    `You leave out what goes into the corner, before its ${things(t)} or after.`,
  ],
  'corner-worked-over': (t) => [
    'A corner worked over',
    `You work the corner’s ${things(t)} and put no stitch into the corner below.`,
  ],
  'hidden-missed': (t) => [
    `The hidden stitch ${missed(t)}`,
    'The first stitch after a corner lies under it. You pass it.',
  ],
  'both-loops': () => [
    'A round in both loops',
    'Your hook goes under both loops of every stitch, all round.',
  ],
  'front-loops': () => [
    'A round in the front loops',
    'Your hook goes under the front loop of every stitch, and not the back one.',
  ],
  'attach-doubled': () => [
    'A stitch at the attach place',
    'You begin where the yarn is attached. The closing covers that place again.',
  ],
  'closing-worked': () => ['A stitch into the closing', 'You work once more, into the closing below.'],
  'join-offset': () => ['Begun some stitches off', 'You begin too soon on the back, or too far on.'],
  'join-wrong-side': () => [
    'Begun on another side',
    'You lay a side of the back where the next one belongs.',
  ],
  'join-chain-skipped': (t) => [
    `A corner ${things(t) === 'chains' ? 'chain' : 'stitch'} ${missed(t)}`,
    'You join past one place of a corner.',
  ],
  'two-with-one': () => ['Two taken with one', 'You take two stitches of one piece with one of the other.'],
  'last-hole': () => ['The last hole left open', 'You do not join the pair where the yarn is attached.'],
  twisted: () => ['The ring twisted', 'You close it with a turn in it. No count shows that.'],
};

const REASONS: Record<WhyNot, string> = {
  'no-corners': 'Your panel has no corners.',
  'start-counts': 'Your starting chains do count as a stitch.',
  'closing-adds-none': 'Your closing makes no stitch here.',
  'closing-adds-one': 'Your closing lies there as planned.',
  'corners-empty': 'Your corners have nothing in them.',
  'nothing-in-corners': 'Your edging works nothing beside its corners.',
  'edging-adds-none': 'Your edging adds no stitches.',
  'one-side': 'Your panel has one side only.',
  'one-order': 'Two sides have the same order both ways.',
};

export const sayWhyNot = (why: WhyNot): string => REASONS[why];

/** What is taken as answered on the way to a later step. */
export function sayPassed(asks: readonly ('twist' | 'pad')[]): string {
  const taken = asks.map((one) => (one === 'twist' ? 'the ring as untwisted' : 'the pad as in'));
  return `This takes ${taken.join(' and ')}.`;
}

/** Where and how a mishap happens, told from 1: "Edging · back side 3 · stitch 12". */
export function sayMishapPlace(mishap: SomeAct, plan: Plan, { dialect }: Speech): string {
  const { side, corner, place, count, end, then, of } = mishap;
  const parts = [sayTime(mishap, plan)];
  const piece = entryOf(mishap.kind).onFront ? 'front' : 'back';
  if (side !== undefined && plan.edge.sides.length > 1) parts.push(`${piece} side ${side + 1}`);
  if (corner !== undefined) parts.push(end ? `${end} corner ${corner + 1}` : `corner ${corner + 1}`);
  if (place !== undefined) parts.push(`stitch ${place + 1}`);
  if (count !== undefined) parts.push(HOW_MUCH[mishap.kind]?.(count, plan, dialect) ?? '');
  if (then !== undefined) parts.push(then === 'from-corner' ? 'the next side in full' : 'the total kept');
  if (of !== undefined) parts.push(`2 of the ${of}`);
  return parts.filter(Boolean).join(' · ');
}

/** "And 2 mishaps more." */
export const sayMoreHappened = (count: number): string => `And ${many(count, 'mishap')} more.`;

/** A mishap of which not everything need be known. */
export type SomeAct = ActParts & { kind: ActKind };

/** "Edging round 2", "While planning". */
function sayTime({ kind, round = roundsOf(kind)[0], edging = 0 }: SomeAct, plan: Plan): string {
  if (round === 'edging') return plan.edgings.length > 1 ? `Edging round ${edging + 1}` : 'Edging';
  return { plan: 'While planning', foundation: 'Foundation', join: 'Join' }[round];
}

type HowMuch = (count: number, plan: Plan, dialect: Speech['dialect']) => string;

const HOW_MUCH: Partial<Record<ActKind, HowMuch>> = {
  'stitch-missed': (by, _plan, dialect) => (by === 1 ? '' : `${by} ${term('miss', dialect, 'done')}`),
  'stitch-doubled': (by) => (by === 1 ? '' : `${by} more`),
  'marker-miscounted': sayDirection('marker-miscounted'),
  'corner-moved': sayDirection('corner-moved'),
  'corner-chains': (by, plan) =>
    plan.edge.corners[0]?.made === 'stitch' ? many(by, 'stitch', 'stitches') : many(by, 'chain'),
  'join-offset': sayDirection('join-offset'),
  'join-wrong-side': (by) => `${many(Math.abs(by), 'side')} on`,
};

function sayDirection(kind: ActKind): HowMuch {
  return (count) => {
    const { early, late } = directionWords(kind);
    return `${many(Math.abs(count), 'stitch', 'stitches')} ${count < 0 ? early : late}`;
  };
}

/** Both ways in which a signed number goes. */
export function directionWords(kind: ActKind): { early: string; late: string } {
  if (kind === 'join-offset') return { early: 'too soon', late: 'too far on' };
  if (kind === 'marker-miscounted') return { early: 'short', late: 'too many' };
  return { early: 'early', late: 'late' };
}

/** What the number of a kind counts. */
export function countLabel(kind: ActKind, plan: Plan): string {
  switch (kind) {
    case 'corner-chains':
      return plan.edge.corners[0]?.made === 'stitch' ? 'stitches in the corner' : 'chains in the corner';
    case 'join-wrong-side':
      return 'sides further on';
    default:
      return 'how many stitches';
  }
}
