/** The recipe for the back as numbers with words beside them, and the sums behind them on request. */
import {
  type ActRound,
  type Arm,
  type Corner,
  countRound,
  type EdgingPlan,
  type Plan,
  planFrontStrip,
  type Round,
} from '../../core/index.ts';
import type { Making } from '../state/snapshot.ts';
import { adjustmentsIn, sayAdjustments } from './adjustments.ts';
import { many, ordinal } from './numbers.ts';
import { term } from './terms.ts';
import { STARTING_CHAINS } from './walk/acts-round.ts';
import { sayNearest } from './walk/nearest.ts';
import type { Speech } from './words.ts';

/** A run of foundation trebles and what follows it. */
export type SaidLeg = {
  count: number;
  /** "ftr", beside the first number only. */
  unit: string;
  /** The corner after this leg; absent after the last. */
  corner?: { says: string };
  /** How often this leg is worked, one after the other. */
  times: number;
};

/** `asked`: what is worked otherwise than first planned. */
export type SaidEdging = { title: string; lines: string[]; asked: string[]; legs: SaidLeg[] };

export type SaidRecipe = {
  start: string;
  /** The starting chains and the markers. */
  begin: string[];
  legs: SaidLeg[];
  /** First and last part of the start side are one side. Empty where there are no sides. */
  parts: string;
  closing: string;
  /** What must be seen before the ring is closed. */
  twist: string;
  corner: string;
  /** Why the foundation's corner is not the front's; empty where it is. */
  why: string;
  /** What is worked otherwise than first planned, on the foundation and in the join. */
  asked: string[];
  edgings: SaidEdging[];
  join: string[];
  joinAsked: string[];
};

/** What there is of a making beside its plan: where it is worked otherwise, the recipe has the counts that come of it. */
type Adjusted = Pick<Making, 'plan'> & Partial<Pick<Making, 'acts' | 'worked' | 'pairing' | 'becomes'>>;

export function sayRecipe(making: Adjusted, speech: Speech): SaidRecipe {
  const { plan, acts = [], worked } = making;
  const asked = (round: ActRound, edging: number, made: Round | undefined): string[] => {
    const sides = made ? countRound(made).sides : [];
    return adjustmentsIn(acts, round, edging).map((some) => sayAdjustments(some, plan, sides, speech));
  };
  const joinAsked = asked('join', 0, undefined);
  return {
    asked: asked('foundation', 0, worked?.foundation),
    joinAsked,
    start: sayStart(plan),
    begin: [sayChains(plan, speech), sayMarkers(plan)],
    legs: legsOf(plan, speech),
    parts: sayParts(plan),
    twist: 'Before you close it: cut the yarn, tape both ends down, and see that the ring is not twisted.',
    why: sayWhyCorner(plan, speech),
    closing: sayClosing(plan),
    corner:
      plan.foundation.corners.length > 0
        ? `corner = ${sayCorners(plan.foundation.corners, 'foundation-treble', speech)}`
        : '',
    edgings: plan.edgings.map((edging, index) => {
      const made = worked?.edgings[index];
      const own = asked('edging', index, made);
      const said = sayEdging(plan, edging, index, speech);
      return { ...said, asked: own, ...(made && own.length > 0 ? { legs: legsMade(made) } : {}) };
    }),
    join: sayJoin(making, speech, joinAsked.length > 0 ? making.pairing?.pairs : undefined),
  };
}

/** The legs as they come out, where something is worked otherwise. */
const legsMade = (made: Round): SaidLeg[] => grouped(edgingLegs(countRound(made)));

function sayStart(plan: Plan): string {
  if (plan.edge.corners.length === 0) return 'Start anywhere. The ring has no corners.';
  return sayStartOn(plan, `the side that faces front side ${(plan.faces[0] ?? 0) + 1}`);
}

const sayStartOn = ({ foundation: { lead, tail } }: Plan, side: string): string =>
  Math.abs(lead - tail) <= 2
    ? `Start in the middle of ${side}.`
    : `Start on ${side}, ${lead} before its corner.`;

function sayChains({ choices }: Plan, { dialect }: Speech): string {
  const rest = STARTING_CHAINS - 1;
  return choices.foundationStart.counts === 1
    ? `Chain ${STARTING_CHAINS}. The first will hold your next stitch; the other ${rest} count as 1 stitch.`
    : `Chain ${STARTING_CHAINS}. The first will hold your first ${term('treble', dialect)}; the other ${rest} count as none.`;
}

const sayMarkers = ({ choices, edge }: Plan): string =>
  `Put a marker in the first stitch and after every ${choices.markerEvery}${edge.corners.length > 0 ? ', counting anew after each corner' : ''}.`;

function sayParts({ foundation, choices }: Plan): string {
  const { lead, tail } = foundation;
  if (foundation.corners.length === 0 || tail === 0) return '';
  const whole = foundation.sides[0] ?? 0;
  const more = [
    ...(choices.foundationStart.counts ? ['1 for the starting chains'] : []),
    ...(choices.foundationClosing.adds ? ["the closing's 1"] : []),
  ];
  const together = more.length > 0 ? `with ${more.join(' and ')}` : 'together';
  return `The first ${lead} and the last ${tail} are one side, side 1: ${together} it holds ${whole}.`;
}

/** The foundation's corner only has to hold both arms of the corner above it; that one is as the front's. */
function sayWhyCorner({ foundation, edge }: Plan, { dialect }: Speech): string {
  const [own] = foundation.corners;
  const unlike = edge.corners.find(({ made, size }) => made !== own?.made || size !== own.size);
  if (own === undefined || unlike === undefined || own.made !== 'chain') return '';
  const front = `${unlike.size} ${unlike.made === 'chain' ? term('chain', dialect, 'short') : `corner ${unlike.size === 1 ? 'stitch' : 'stitches'}`}`;
  return `The front's corners have ${front}. The edging makes the same; down here ${own.size} ${term('chain', dialect, 'short')} are enough to turn and to work into.`;
}

function legsOf({ foundation }: Plan, speech: Speech): SaidLeg[] {
  const unit = term('foundation-treble', speech.dialect, 'short');
  if (foundation.corners.length === 0) return [{ count: foundation.lead, unit, times: 1 }];
  const counts = [foundation.lead, ...foundation.sides.slice(1), foundation.tail];
  const legs = counts.map((count, index) => {
    const corner = foundation.corners[index];
    const leg: SaidLeg = { count, unit: index === 0 ? unit : '', times: 1 };
    if (index < counts.length - 1 && corner) leg.corner = { says: 'corner' };
    return leg;
  });
  return grouped(legs);
}

const edgingLegs = ({ sides, corners }: Pick<EdgingPlan, 'sides' | 'corners'>): SaidLeg[] =>
  sides.map((count, index) => ({
    count,
    unit: '',
    times: 1,
    ...(corners[index] ? { corner: { says: 'corner' } } : {}),
  }));

/** This many equal legs on end are said once, with how often. */
const LEAST_GROUP = 3;

function grouped(legs: readonly SaidLeg[]): SaidLeg[] {
  const runs: SaidLeg[] = [];
  for (const leg of legs) {
    const last = runs.at(-1);
    const alike =
      last && last.count === leg.count && last.unit === leg.unit && !!last.corner === !!leg.corner;
    if (alike) last.times += 1;
    else runs.push({ ...leg });
  }
  return runs.flatMap((run) =>
    run.times >= LEAST_GROUP ? [run] : Array.from({ length: run.times }, () => ({ ...run, times: 1 })),
  );
}

function sayClosing({ foundation, choices, edge }: Plan): string {
  const whole = foundation.sides[0] ?? 0;
  const where = edge.corners.length === 0 ? 'of the ring' : 'of this side';
  const said: string[] = [];
  if (choices.foundationStart.counts) said.push('The starting chains count as 1 stitch.');
  if (choices.foundationClosing.adds) said.push(`The closing makes the ${ordinal(whole)} stitch ${where}.`);
  else said.push('The closing lies over the first stitch and adds none.');
  return said.join(' ');
}

/** "2 ch", or "2, 3, 2, 3 ch" where corners differ. */
function sayCorners(
  corners: readonly Corner[],
  stitch: 'foundation-treble' | 'double-crochet',
  speech: Speech,
): string {
  const [first] = corners;
  if (!first) return '';
  const alike = corners.every((corner) => corner.size === first.size && corner.made === first.made);
  const sizes = alike ? `${first.size}` : corners.map((corner) => corner.size).join(', ');
  if (first.made === 'chain') return `${sizes} ${term('chain', speech.dialect, 'short')}`;
  return `${sizes} ${term(stitch, speech.dialect, 'short')}`;
}

const edgingTitle = ({ edgings }: Plan, index: number): string =>
  edgings.length > 1 ? `Edging round ${index + 1}` : 'The edging';

function sayEdging(plan: Plan, edging: EdgingPlan, index: number, speech: Speech): Omit<SaidEdging, 'asked'> {
  const dc = term('double-crochet', speech.dialect, 'short');
  const below = index === 0 ? term('treble', speech.dialect) : term('double-crochet', speech.dialect);
  const first = plan.choices.edgingClosing.adds ? 'next' : 'same';
  const lines = [
    `Attach the yarn in any stitch, right side facing. Chain 1.`,
    `Work the first ${dc} in the ${first} stitch.`,
    `1 ${dc} in the back loop of each ${below}.`,
  ];
  if (edging.corners.length > 0) {
    lines.push(sayCornerWork(edging.arm, edging.corners, speech));
    const holds = sayArmsHeld(edging.arm, dc);
    if (holds !== '') lines.push(holds);
  }
  if (edging.increase > 0) lines.push(`Add ${many(edging.increase, 'stitch', 'stitches')}, spread evenly.`);
  if (plan.choices.edgingClosing.adds)
    lines.push('The closing covers the attach stitch and makes the last one.');
  return { title: edgingTitle(plan, index), lines, legs: grouped(edgingLegs(edging)) };
}

/** What a side's number takes in, so that nobody adds the corners' stitches to it. */
function sayArmsHeld([before, after]: Arm, dc: string): string {
  const held = [
    ...(after > 0 ? [`${after} ${dc} in the corner before it`] : []),
    ...(before > 0 ? [`${before} ${dc} in the corner after it`] : []),
  ];
  return held.length === 0 ? '' : `Each number above takes in ${held.join(' and ')}.`;
}

/** "1 dc, 2 ch, 1 dc into each corner." */
function sayCornerWork([before, after]: Arm, corners: readonly Corner[], speech: Speech): string {
  const dc = term('double-crochet', speech.dialect, 'short');
  const [first] = corners;
  if (
    first?.made === 'stitch' &&
    first.size === 1 &&
    before === after &&
    corners.every(({ size }) => size === 1)
  )
    return `${before + 1 + after} ${dc} into each corner: the middle one is the corner.`;
  const stitches = (count: number): string[] => (count > 0 ? [`${count} ${dc}`] : []);
  const middle = (first?.size ?? 0) > 0 ? [sayCorners(corners, 'double-crochet', speech)] : [];
  const parts = [...stitches(before), ...middle, ...stitches(after)];
  return parts.length === 0 ? 'Turn at each corner.' : `${parts.join(', ')} into each corner.`;
}

function sayJoin({ plan, becomes }: Adjusted, { dialect }: Speech, pairs = plan.pairs): string[] {
  const { edge } = plan;
  const inside = becomes === 'cover' ? 'form' : term('cushion-pad', dialect);
  const open = edge.sides.length > 1 ? 'side' : 'quarter';
  return [
    'Wrong sides together. Slip stitch through the inner loops.',
    edge.corners.length === 0 ? 'Begin at any stitch, and mark it on both rounds.' : sayJoinStart(plan),
    ...(plan.choices.open === undefined
      ? [
          `Leave the last ${open} open, put the ${inside} in, pin it, and go on.`,
          `${pairs} pairs, the pair where you attached the yarn last of all.`,
        ]
      : [
          `Join round to the other corner of side ${plan.choices.open + 1}, and fasten off. It stays open.`,
          `${pairs} pairs.`,
        ]),
  ];
}

function sayJoinStart({ choices, edge }: Plan): string {
  if (choices.open !== undefined)
    return `Attach the yarn in the last stitch of front side ${choices.open + 1}, and begin with its corner.`;
  const { side, fromCorner } = choices.joinStart;
  const before = (side - 1 + edge.corners.length) % edge.corners.length;
  return `Begin on front side ${side + 1}, ${fromCorner} in from corner ${before + 1}: ${sayNearest(edge.corners[before])} is 1.`;
}

/** The second strip, where the front is cloth too. Only what differs from the back's is told: nothing where all is alike. */
export type SaidFrontStrip = {
  heading: string;
  how: string[];
  legs: SaidLeg[];
  edgings: Pick<SaidEdging, 'title' | 'legs'>[];
};

export function sayFrontStrip({ plan }: Pick<Making, 'plan'>, speech: Speech): SaidFrontStrip {
  const made = planFrontStrip(plan);
  const heading = 'Strip for the front';
  if (!made.ok || isSameStrip(made.value, plan))
    return { heading, how: ['The same once more, stitch for stitch.'], legs: [], edgings: [] };
  const front = made.value;
  const from = plan.choices.start.side;
  return {
    heading,
    how: [
      'The mirror image: its sides come in the order of the front. All else is worked as above.',
      sayStartOn(front, `front side ${from + 1}`),
    ],
    legs: legsOf(front, speech),
    edgings: front.edgings.map((edging, index) => ({
      title: edgingTitle(front, index),
      legs: grouped(edgingLegs(edging)),
    })),
  };
}

/** Whether two strips are worked alike from beginning to end. */
export const isSameStrip = (one: Plan, other: Plan): boolean =>
  JSON.stringify([one.foundation, one.edgings]) === JSON.stringify([other.foundation, other.edgings]);

/** One line of the sums: whose, and the working. */
export type SaidSum = { whose: string; steps: string[] };

/** How each number comes about: counted − corners = stitches − arms = foundation. */
export function saySums(making: Pick<Making, 'plan' | 'edge'>, counted: readonly number[]): SaidSum[] {
  const { plan, edge } = making;
  return plan.foundation.sides.map((foundation, back) => {
    const front = plan.faces[back] ?? 0;
    const stitches = edge.sides[front] ?? 0;
    const typed = counted[front] ?? stitches;
    const steps: string[] = [];
    if (typed !== stitches)
      steps.push(`${typed} − ${typed - stitches} in the corners = ${stitches} stitches`);
    const arms = stitches - foundation;
    if (arms > 0) steps.push(`${stitches} − ${arms} worked into the corners = ${foundation}`);
    else if (steps.length === 0) steps.push(`${stitches} stitches`);
    if (back === 0) steps.push(sayStartSide(plan));
    return {
      whose: edge.corners.length === 0 ? 'The ring' : `Back side ${back + 1}, facing front side ${front + 1}`,
      steps,
    };
  });
}

function sayStartSide({ foundation, choices }: Plan): string {
  const parts = [`${foundation.lead}`];
  if (foundation.tail > 0) parts.push(`${foundation.tail}`);
  if (choices.foundationStart.counts) parts.push('1 start');
  if (choices.foundationClosing.adds) parts.push('1 closing');
  return `${parts.join(' + ')} = ${foundation.sides[0] ?? 0}`;
}
