/**
 * What a step can be asked, and the right answer. The answer is computed: from the step's target, from the
 * plan, or by working the piece and pairing it; never written down beside the question.
 */
import { type Mishap, type Plan, pair, type SideMeeting, type Step, work } from '../../core/index.ts';
import { armOf } from '../words/walk/arms.ts';
import type { Told } from '../words/walk/telling.ts';
import { CHOICES, type ChoiceId } from './choices.ts';

/** Places a hook or needle can go, as answers. */
const PLACE_OPTIONS = {
  'first-treble': ['first-chain', 'next-chain', 'last-chain'],
  foundation: ['base-chain', 'post', 'top'],
  corner: ['base-chain', 'post', 'corner-chain'],
  'chain-or-on': ['loop', 'base-chain', 'top'],
  stitch: ['back-loop', 'front-loop', 'both-loops'],
  arms: ['first-corner-chain', 'second-corner-chain', 'next-stitch'],
  hidden: ['hidden-stitch', 'second-stitch'],
  join: ['inner-loops', 'front-loops', 'back-loops'],
  'corner-pair': ['first-place', 'second-place', 'stitch-before'],
  needle: ['first-stitch', 'second-stitch'],
} as const;
export type PlaceQuestion = keyof typeof PLACE_OPTIONS;
export type PlaceId = (typeof PLACE_OPTIONS)[PlaceQuestion][number];

export type Question =
  /** Answered in words; see `choices.ts`. */
  | { kind: 'choice'; about: ChoiceId; options: readonly string[]; right: readonly string[] }
  | { kind: 'place'; about: PlaceQuestion; options: readonly PlaceId[]; right: readonly PlaceId[] }
  /** How many stitches side 1 holds once the ring is closed. */
  | { kind: 'count'; options: readonly string[]; right: readonly string[] }
  /** Which front side a back side faces; options are front sides from 1. */
  | { kind: 'faces'; side: number; options: readonly string[]; right: readonly string[] }
  /** Which back sides do not meet after a mishap; options are back sides from 1, and `none`. */
  | { kind: 'gap'; mishap: Mishap; options: readonly string[]; right: readonly string[] };

const placed = (about: PlaceQuestion, right: PlaceId, step: Step): Question => ({
  kind: 'place',
  about,
  options: turned(PLACE_OPTIONS[about], step.index),
  right: [right],
});

/** The options begun elsewhere in the list, so that the right one has no place of its own. */
function turned<T>(options: readonly T[], by: number): readonly T[] {
  const first = by % options.length;
  return [...options.slice(first), ...options.slice(0, first)];
}

/** A question of the table, its options begun elsewhere for every step. */
export const choiceQuestion = (about: ChoiceId, { index }: Pick<Step, 'index'>): Question => ({
  kind: 'choice',
  about,
  options: turned(Object.keys(CHOICES[about].options), index),
  right: [CHOICES[about].right],
});

/** What can be asked about a step; empty where it is only shown. */
export function questionsOf(step: Step, making: Told): Question[] {
  switch (step.kind) {
    case 'foundation-treble':
      return [foundationTreble(step)];
    case 'corner-chain':
      return step.stage === 'foundation' ? [placed('chain-or-on', 'loop', step)] : [];
    case 'double-crochet':
      return [doubleCrochet(step, making)];
    case 'slip-stitch':
      if (step.corner >= 0) return [cornerPair(step, making.plan)];
      return [placed('join', step.target.loop === 'inner-loops' ? 'inner-loops' : 'front-loops', step)];
    case 'join-attach':
      return [placed('join', step.target.loop === 'inner-loops' ? 'inner-loops' : 'front-loops', step)];
    case 'close-tops':
      return [needle(step), countAfterClosing(step, making.plan)];
    default:
      return [];
  }
}

function foundationTreble(step: Step): Question {
  if (step.target.loop === 'first-chain') return placed('first-treble', 'first-chain', step);
  const right = step.target.loop === 'base-chain' ? 'base-chain' : 'top';
  return placed(step.place === 0 ? 'corner' : 'foundation', right, step);
}

function doubleCrochet(step: Step, making: Told): Question {
  const arm = armOf({ step, making });
  if (arm !== null && step.target.loop === 'corner-chain')
    return placed('arms', arm === 'before' ? 'first-corner-chain' : 'second-corner-chain', step);
  if (armOf({ step, making }, -1) === 'after') return placed('hidden', 'hidden-stitch', step);
  return placed('stitch', step.target.loop === 'back-loop' ? 'back-loop' : 'both-loops', step);
}

/** A closing that makes a stitch goes under the first, one that makes none under the second (read, both published). */
const needle = (step: Step): Question =>
  placed('needle', step.node >= 0 ? 'first-stitch' : 'second-stitch', step);

/** Which place of the back's corner lies opposite: its corner is met from the end it was worked last. */
function cornerPair(step: Step, plan: Plan): Question {
  const back = work(plan).edgings.at(-1);
  const last = plan.edgings.at(-1);
  const corner = back?.turns.findIndex((turn, i) => {
    const size = last?.corners[i]?.size ?? 0;
    return step.backNode >= turn && step.backNode < turn + size;
  });
  if (back === undefined || corner === undefined || corner < 0)
    return placed('corner-pair', 'stitch-before', step);
  const end = (back.turns[corner] ?? 0) + (last?.corners[corner]?.size ?? 0) - 1;
  return placed('corner-pair', end - step.backNode === 0 ? 'first-place' : 'second-place', step);
}

function countAfterClosing(step: Step, { foundation }: Plan): Question {
  const side = foundation.sides[0] ?? 0;
  const worked = side - (step.node >= 0 ? 1 : 0);
  return { kind: 'count', options: [`${worked}`, `${worked + 1}`], right: [`${side}`] };
}

/** Which front side does this side of the back face? */
export function sideQuestion({ faces }: Plan, side: number): Question {
  return {
    kind: 'faces',
    side,
    options: faces.map((_, i) => `${i + 1}`),
    right: [`${(faces[side] ?? 0) + 1}`],
  };
}

/** What meets what when this mishap is worked and the corners are pinned first. */
function sidesMade(plan: Plan, mishap: Mishap): SideMeeting[] {
  const { edgings, join, foundation } = work(plan, [mishap]);
  const back = edgings.at(-1) ?? foundation;
  return pair(plan.edge, back, { start: join, manner: 'corner-to-corner' }).sides;
}

/** Back sides, from 1, that do not meet. */
const sidesThatGap = (plan: Plan, mishap: Mishap): string[] =>
  sidesMade(plan, mishap)
    .filter(({ surplus }) => surplus !== 0)
    .map(({ backSide }) => `${backSide + 1}`)
    .sort();

/** How many stitches each back side has too many (+) or too few (−), in the back's order. */
export function surpluses(plan: Plan, mishap: Mishap): number[] {
  const found = plan.faces.map(() => 0);
  for (const { backSide, surplus } of sidesMade(plan, mishap)) found[backSide] = surplus;
  return found;
}

export function gapQuestion(plan: Plan, mishap: Mishap): Question {
  const gaps = sidesThatGap(plan, mishap);
  return {
    kind: 'gap',
    mishap,
    options: [...plan.faces.map((_, i) => `${i + 1}`), 'none'],
    right: gaps.length === 0 ? ['none'] : gaps,
  };
}

/** Is this answer right? Where several sides do not meet, each of them is. */
export const isRight = ({ right }: Question, answer: string): boolean =>
  (right as readonly string[]).includes(answer);

/** How many of the answers given are right; skipped and shown steps are not. */
export function countRight(
  questions: readonly (Question | null)[],
  answers: readonly (string | null)[],
): number {
  return questions.filter((question, i) => {
    const answer = answers[i] ?? null;
    return question !== null && answer !== null && isRight(question, answer);
  }).length;
}
