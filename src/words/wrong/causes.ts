/** What went wrong, in words: the title of a cause, where it happened, and how it comes to the numbers. */
import {
  type ActKind,
  type Cause,
  type CauseKind,
  type Explanation,
  entryOf,
  type Mishap,
  type Plan,
  type Sure,
} from '../../../core/index.ts';
import { many, manyOf } from '../numbers.ts';
import { term } from '../terms.ts';
import type { Speech } from '../words.ts';
import { mishapTitle, sayMishapPlace } from './mishaps.ts';

const SURE: Record<Sure, string> = { 'most likely': 'most likely', likely: 'likely', possible: 'possible' };

export const saySure = (sure: Sure): string => SURE[sure];

/** What is still being looked for, once sets of so many were. */
export const sayLooking = (causes: number): string =>
  ['One moment.', 'Now looking for 2 slips together.', 'Now looking for 3 slips together.'][causes] ?? '';

/** How much the counts tell: by how many slips they come about, and how many ways there are. */
export function sayWays(explanations: readonly Pick<Explanation, 'causes'>[]): string {
  const [first] = explanations;
  if (first?.causes.every(({ kind }) => kind !== 'front-miscounted' && entryOf(kind).seenAs))
    return 'You saw it. No count tells of it.';
  const fewest = Math.min(...explanations.map(({ causes }) => causes.length));
  const ways = explanations.filter(({ causes }) => causes.length === fewest).length;
  const more = explanations.length > ways ? ` ${fewest + 1} together could as well.` : '';
  if (fewest > 1)
    return `No single slip gives this. ${ways === 1 ? `1 set of ${fewest} does.` : `${ways} sets of ${fewest} do.`}${more}`;
  if (ways === 1) return `1 slip gives exactly this.${more}`;
  return `${ways} slips each give exactly this.${more} The counts alone do not tell which.`;
}

export const sayMore = (count: number): string => `${count} more, less likely`;
export const sayLess = 'Only the likeliest';
export const sayElsewhere = (count: number): string => `The same in ${many(count, 'other place')}`;
export const sayOthers = (count: number): string => `${many(count, 'other')} that the same look tells apart`;
export const sayTogether = (count: number, causes: number): string =>
  `${causes} slips together: ${many(count, 'way')}`;

/** "The hidden stitch missed, at every corner". */
export function causeTitle(cause: Cause, plan: Plan, speech: Speech): string {
  const habit = cause.habit ? sayHabit(cause) : '';
  return [causeName(cause, plan, speech), habit].filter(Boolean).join(', ');
}

/** Several causes at once are joined by "and". */
export function explanationTitle(causes: readonly Cause[], plan: Plan, speech: Speech): string {
  const titles = causes.map((cause) => causeTitle(cause, plan, speech));
  const and = titles.some((title) => title.includes(',')) ? ', and ' : ' and ';
  return titles
    .map((title, i) => (i === 0 ? title : title.charAt(0).toLowerCase() + title.slice(1)))
    .join(and);
}

function causeName({ kind, mishaps }: Cause, plan: Plan, speech: Speech): string {
  const [first] = mishaps;
  return kind === 'front-miscounted' || !first ? 'The front miscounted' : mishapTitle(first, plan, speech);
}

function sayHabit({ mishaps, front, kind }: Cause): string {
  if (kind === 'front-miscounted')
    return front.length > 2 ? 'on every side' : `on ${many(front.length, 'side')}`;
  const rounds = new Set(mishaps.map(({ round, edging }) => `${round} ${edging ?? 0}`)).size;
  const inRounds = rounds > 1 ? ' of every round' : '';
  if (mishaps[0]?.corner !== undefined) return `at every corner${inRounds}`;
  return mishaps[0]?.side !== undefined ? `on every side${inRounds}` : 'in every round';
}

/** Where it happened, told from 1: "Edging · back side 3". */
export function causePlace(cause: Cause, plan: Plan, speech: Speech): string {
  const { kind, mishaps, front, habit, anywhere } = cause;
  if (kind === 'front-miscounted')
    return sayFrontSides(
      front.map(({ side }) => side),
      plan,
    );
  const [first] = mishaps;
  if (!first) return '';
  if (habit) {
    const { side: _side, corner: _corner, place: _place, ...round } = first;
    const rounds = new Set(mishaps.map((one) => one.round)).size;
    const where = rounds > 1 ? 'Foundation and edging' : sayMishapPlace(round, plan, speech);
    return `${where} · ${sayHabit(cause).replace(/^(at|on|in) /, '')}`;
  }
  if (!anywhere) return sayMishapPlace(first, plan, speech);
  const { place: _place, ...open } = first;
  return `${sayMishapPlace(open, plan, speech)} · anywhere on it`;
}

function sayFrontSides(sides: readonly number[], plan: Plan): string {
  if (plan.edge.sides.length === 1) return 'Front';
  if (sides.length === plan.edge.sides.length) return 'Front · every side';
  return `Front · side ${sides.map((side) => side + 1).join(', ')}`;
}

type Telling = { cause: Cause; mishap: Mishap; plan: Plan; speech: Speech };

/** What the hand did, with its numbers, in one or two short sentences. */
export function causeReason(cause: Cause, plan: Plan, speech: Speech): string {
  const mishap: Mishap = cause.mishaps[0] ?? { kind: 'twisted' };
  return REASONS[cause.kind]({ cause, mishap, plan, speech });
}

const counted = ({ mishap, plan, speech }: Telling, n: number): string =>
  isFoundation(mishap, plan)
    ? manyOf(n, 'treble', speech.dialect)
    : manyOf(n, 'double-crochet', speech.dialect);

const isFoundation = ({ round }: Mishap, _plan: Plan): boolean =>
  round === undefined || round === 'foundation';

const things = (plan: Plan, n: number): string =>
  plan.edge.corners[0]?.made === 'stitch'
    ? many(n, 'corner stitch', 'corner stitches')
    : many(n, 'corner chain');

const thing = (plan: Plan, n: number): string =>
  plan.edge.corners[0]?.made === 'stitch' ? many(n, 'stitch', 'stitches') : many(n, 'chain');

const missed = ({ speech }: Telling): string => term('miss', speech.dialect, 'done');

/** "corner 2", or "each corner" where it is a habit. */
const corner = ({ cause, mishap }: Telling): string =>
  cause.habit ? 'each corner' : `corner ${(mishap.corner ?? 0) + 1}`;

const side = ({ cause, mishap, plan }: Telling): string => {
  if (plan.edge.sides.length === 1) return 'the round';
  return cause.habit ? 'each side' : `side ${(mishap.side ?? 0) + 1}`;
};

/** The size of the front's corners where all are alike. */
const sizeOf = ({ edge }: Plan): number | null => {
  const [first] = edge.corners;
  return first && edge.corners.every(({ size }) => size === first.size) ? first.size : null;
};

const chainsOf = (plan: Plan): string => {
  const size = sizeOf(plan);
  return size === null ? "The corners' own places" : `The ${things(plan, size)} of the front`;
};

/** Stitches that the edging rounds add to each side. */
const growth = ({ edgings, edge }: Plan): number =>
  edgings.reduce((all, { arm, increase }) => all + (edge.corners.length > 0 ? arm[0] + arm[1] : increase), 0);

const plannedSize = ({ mishap, plan }: Telling): number =>
  (mishap.round === 'edging' ? plan.edgings[mishap.edging ?? 0] : plan.foundation)?.corners[
    mishap.corner ?? 0
  ]?.size ?? 0;

const REASONS: Record<CauseKind, (telling: Telling) => string> = {
  'chains-as-stitches': ({ plan }) => `${chainsOf(plan)} count as stitches of each side.`,
  'chains-left-out': ({ plan }) => `${chainsOf(plan)} come off each side twice.`,
  'arms-forgotten': ({ plan }) =>
    `The edging adds ${growth(plan)} to each side. The foundation leaves no room for them.`,
  'order-not-mirrored': ({ plan }) => {
    const facing = (plan.faces[1] ?? 0) + 1;
    const taken = ((plan.choices.start.side + 1) % plan.edge.sides.length) + 1;
    return `Back side 2 takes the count of front side ${taken}. It faces front side ${facing}.`;
  },
  'start-counted': (t) =>
    isFoundation(t.mishap, t.plan)
      ? `The starting chains count as ${counted(t, 1)}. None stands there.`
      : `The attaching chain counts as ${counted(t, 1)}. The next stitch is passed.`,
  'closing-forgotten': () => 'The closing makes 1 stitch. You worked that one as well.',
  'closing-over-first': () => 'The closing lies over the first stitch. It makes 0, and the recipe counts 1.',
  'closing-beside-first': () =>
    'The closing lies beside the first stitch. It makes 1, and the recipe counts 0.',
  'stitch-missed': (t) =>
    `${counted(t, t.mishap.count ?? 1)} of ${side(t)} are ${missed(t)}.`.replace(/^(1 .*) are /, '$1 is '),
  'stitch-doubled': (t) => `${counted(t, t.mishap.count ?? 1)} too many on ${side(t)}, where one belongs.`,
  'stitch-between': (t) => `${counted(t, 1)} of ${side(t)} stands between two stitches, where none belongs.`,
  'marker-miscounted': (t) => {
    const by = t.mishap.count ?? 0;
    const markers = Math.abs(by) / t.plan.choices.markerEvery;
    const were = `${many(markers, 'marker')} too ${by < 0 ? 'many' : 'few'} ${markers === 1 ? 'was' : 'were'} counted`;
    return `On ${side(t)}, ${were}: ${counted(t, Math.abs(by))} ${by < 0 ? 'short' : 'too many'}.`;
  },
  'corner-moved': (t) => {
    const by = t.mishap.count ?? 0;
    const turn = `${capital(corner(t))} comes ${many(Math.abs(by), 'stitch', 'stitches')} ${by < 0 ? 'early' : 'late'}.`;
    return t.mishap.then === 'from-total'
      ? `${turn} The next side takes what is left.`
      : `${turn} The next side is counted from there, in full.`;
  },
  'corner-forgotten': (t) => `${capital(corner(t))} is not turned. Two sides run on as one.`,
  'corner-chains': (t) =>
    `${capital(corner(t))} has ${thing(t.plan, t.mishap.count ?? 0)}. The recipe has ${plannedSize(t)}.`,
  'arm-missed': (t) => {
    const n =
      t.mishap.count ?? t.plan.edgings[t.mishap.edging ?? 0]?.arm[t.mishap.end === 'after' ? 1 : 0] ?? 1;
    return `${counted(t, n)} ${t.mishap.end ?? 'before'} ${corner(t)} ${n === 1 ? 'is' : 'are'} left out.`;
  },
  'corner-worked-over': (t) => `${capital(corner(t))} is worked, and nothing goes into the corner below it.`,
  'hidden-missed': (t) => `1 stitch after ${corner(t)} lies under it, and is ${missed(t)}.`,
  'attach-doubled': () => '1 stitch goes into the attach place. The closing covers that place again.',
  'closing-worked': () => '1 stitch goes into the closing below. Nothing belongs there.',
  'both-loops': () =>
    'No line of loops stays free along it, and the strip turns over less well. Every count stays as it is.',
  'front-loops': () => 'The line of free loops lies on the wrong side. Every count stays as it is.',
  'join-offset': ({ mishap: { count = 0 } }) =>
    `The back is begun ${many(Math.abs(count), 'stitch', 'stitches')} ${count < 0 ? 'too soon' : 'too far on'}.`,
  'join-wrong-side': ({ mishap: { count = 0 } }) => `The back is turned by ${many(Math.abs(count), 'side')}.`,
  'join-chain-skipped': (t) => `1 place of ${corner(t)} is ${missed(t)} in the join.`,
  'two-with-one': ({ mishap: { of = 'back', side = 0 } }) =>
    `Along front side ${side + 1}, 2 of the ${of} are taken with 1 of the ${of === 'back' ? 'front' : 'back'}.`,
  'last-hole': () => '1 pair is not joined: the one where the yarn is attached.',
  twisted: () => 'The ring has a turn in it. Every count stays as it is.',
  'front-miscounted': sayMiscount,
};

function sayMiscount({ cause: { front, backMadeFor, habit }, plan }: Telling): string {
  const [first] = front;
  if (!first) return 'The front has another number than the one entered.';
  const given = plan.edge.sides[first.side] ?? 0;
  const really = given + first.by;
  const where = plan.edge.sides.length === 1 ? 'The front' : `Front side ${first.side + 1}`;
  const alike = front.every(({ by }) => by === first.by);
  if (habit && front.length > 1) {
    const by = `${Math.abs(first.by)} ${first.by < 0 ? 'fewer' : 'more'}`;
    const each = front.length === plan.edge.sides.length ? 'Every front side' : `${front.length} front sides`;
    return `${each} ${front.length === plan.edge.sides.length ? 'has' : 'have'} ${alike ? by : 'another number'} than entered. ${MADE_FOR[backMadeFor ?? 'front']}`;
  }
  if (backMadeFor === 'neither')
    return `The back is made for ${really} on ${where.toLowerCase()}. You entered ${given}.`;
  return `${where} has ${really}, not ${given}, corners apart. ${MADE_FOR[backMadeFor ?? 'front']}`;
}

const MADE_FOR = {
  front: 'The back fits the front as it is.',
  recipe: 'The back fits the number you entered.',
  neither: 'The back fits neither.',
} as const;

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** All kinds there are, for a test that none lacks its words. */
export const CAUSE_KINDS = Object.keys(REASONS) as (ActKind | 'front-miscounted')[];
