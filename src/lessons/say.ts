/** What the lessons say: titles, questions, options, and what was right and why. */
import type { Mishap, Plan } from '../../core/index.ts';
import { many } from '../words/numbers.ts';
import { type TermForm, type TermId, term } from '../words/terms.ts';
import type { Speech } from '../words/words.ts';
import { mishapStory, sayMishapPlace } from '../words/wrong/mishaps.ts';
import { CHOICES } from './choices.ts';
import { sayLeads } from './leads.ts';
import { type Item, type LessonId, type Level, sayItem } from './lesson.ts';
import { isRight, type PlaceId, type PlaceQuestion, type Question, surpluses } from './questions.ts';

const words =
  ({ dialect }: Speech) =>
  (id: TermId, form?: TermForm) =>
    term(id, dialect, form);

/** Title and what it is about, one sentence each. */
export function sayLesson(id: LessonId, speech: Speech): { title: string; about: string } {
  const t = words(speech);
  switch (id) {
    case 'whole':
      return {
        title: 'What you will make',
        about: `A front and a back of cloth, joined without a zip around a ${t('cushion-pad')}.`,
      };
    case 'counting':
      return { title: 'Count an edge', about: 'Where a side begins, what the corner takes, and markers.' };
    case 'foundation':
      return {
        title: `The ${t('foundation-treble')} and its corner`,
        about: 'Where the hook goes, and how the row turns.',
      };
    case 'closing':
      return {
        title: 'Twist and closing',
        about: 'What must be seen first, and what a closing does to the count.',
      };
    case 'edging':
      return {
        title: 'The edging and its corner',
        about: `${sentence(t('double-crochet', 'many'))} in the back loop, from attaching to closing.`,
      };
    case 'mirrored':
      return { title: 'Why the back runs mirrored', about: 'Which back side faces which front side.' };
    case 'cloth':
      return {
        title: 'Strip and cloth',
        about: 'How it lies, where the pins go, and the seam out and back.',
      };
    case 'joining':
      return {
        title: 'The join',
        about: `Inner loops, corner, long loop, ${t('cushion-pad')}, and the last hole.`,
      };
    case 'miscounts':
      return { title: 'How counts go wrong', about: '1 mishap each. Say first which side it shows on.' };
  }
}

const LEVEL_NAMES: Record<Level, string> = {
  show: 'Watch',
  'last-hidden': 'Finish it',
  'all-hidden': 'Do it all',
  memory: 'From memory',
};

export const sayLevel = (level: Level): string => LEVEL_NAMES[level];

const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** The question, one sentence. */
export function sayQuestion(item: Item, speech: Speech): string {
  const { question } = item;
  if (question === null) return '';
  switch (question.kind) {
    case 'place':
      return placeAsks(item, question.about, speech);
    case 'count':
      return 'How many stitches has side 1 now?';
    case 'faces':
      return `Back side ${question.side + 1} faces which front side?`;
    case 'gap':
      return 'Which back side does not meet?';
    case 'choice':
      return CHOICES[question.about].asks(words(speech));
  }
}

function placeAsks(item: Item, about: PlaceQuestion, speech: Speech): string {
  if (about === 'needle') return needleAsks(item, speech);
  if (about !== 'corner-pair') return 'Where does the hook go now?';
  return `Seen from the front, the hook is at chain ${item.step.place + 1} of the front's corner. What lies behind it?`;
}

function needleAsks({ step, making }: Item, { dialect }: Speech): string {
  const side = making.plan.foundation.sides[0] ?? 0;
  const worked = side - (step.node >= 0 ? 1 : 0);
  const name = many(worked, term('treble', dialect), term('treble', dialect, 'many'));
  return `Side 1 has ${name} of ${side}. The needle goes under which stitch?`;
}

/** What the person reads on an option. */
export function sayOption(question: Question, option: string, speech: Speech): string {
  if (question.kind === 'place') return sentence(placeName(option as PlaceId, speech));
  if (question.kind === 'choice') return CHOICES[question.about].options[option]?.says(words(speech)) ?? '';
  if (question.kind === 'count') return many(Number.parseInt(option, 10), 'stitch', 'stitches');
  if (question.kind === 'faces') return `Front side ${option}`;
  return option === 'none' ? 'All sides meet' : `Back side ${option}`;
}

function placeName(place: PlaceId, speech: Speech): string {
  const t = words(speech);
  const names: Record<PlaceId, string> = {
    'first-chain': 'the first chain',
    'next-chain': 'the second chain',
    'last-chain': 'the last chain',
    'base-chain': `the base chain of the last ${t('treble')}`,
    post: `the post of the last ${t('treble')}`,
    top: `the top of the last ${t('treble')}`,
    'corner-chain': 'the corner chain',
    loop: 'the loop on the hook: 1 chain',
    'back-loop': 'the back loop',
    'front-loop': 'the front loop',
    'both-loops': 'both loops',
    'first-corner-chain': 'the first chain of the corner',
    'second-corner-chain': 'the second chain of the corner',
    'next-stitch': 'the stitch after the corner',
    'hidden-stitch': 'the stitch tucked against the corner',
    'second-stitch': 'the second stitch',
    'inner-loops': 'the inner 2 loops',
    'front-loops': 'both loops of the front',
    'back-loops': 'both loops of the back',
    'first-stitch': 'the first stitch',
    'first-place': "the chain of the back's corner that you meet first",
    'second-place': "the chain of the back's corner that you meet second",
    'stitch-before': "the back's last stitch before the corner",
  };
  return names[place];
}

export type Feedback = {
  right: boolean;
  /** "Yes." or "Not there." */
  head: string;
  /** What was expected, and what was chosen where that is another. */
  body: string;
  /** Why, and how to tell. */
  why: string;
  /** What a wrong answer would have led to; empty for a right one. */
  leads: string;
};

/** Told at once after an answer: the place, what was expected, what was got, and why. */
export function sayFeedback(item: Item, answer: string, speech: Speech): Feedback | null {
  const { question } = item;
  if (question === null) return null;
  const right = isRight(question, answer);
  const expected = listed(question.right.map((option) => lower(sayOption(question, option, speech))));
  const got = lower(sayOption(question, answer, speech));
  return {
    right,
    head: right ? 'Yes.' : question.kind === 'place' ? 'Not there.' : 'Not quite.',
    body:
      right && question.right.length === 1
        ? `${sentence(expected)}.`
        : right
          ? `It shows on ${expected}.`
          : question.kind === 'choice'
            ? `You chose: ${got}. It is: ${expected}.`
            : chosen(got, expected),
    why: sayWhy(item, speech),
    leads: right ? '' : sayLeads(item, answer, speech),
  };
}

const chosen = (got: string, expected: string): string =>
  got.startsWith('all ')
    ? `You said: ${got}. It shows on ${expected}.`
    : `You chose ${got}. It is ${expected}.`;

const lower = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

const listed = (names: readonly string[]): string =>
  names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;

/** One sentence of reason. */
export function sayWhy(item: Item, speech: Speech): string {
  const { question, making } = item;
  if (question === null) return '';
  if (question.kind === 'count') return sayItem(item, speech).check ?? '';
  if (question.kind === 'faces')
    return 'The back lies behind the front, so its sides run the other way round.';
  if (question.kind === 'gap') return saySurplus(making.plan, question.mishap);
  if (question.kind === 'choice') return CHOICES[question.about].why(words(speech));
  return placeWhy(item, speech);
}

function placeWhy(item: Item, speech: Speech): string {
  const { question, step } = item;
  const t = words(speech);
  if (question?.kind !== 'place') return '';
  switch (question.about) {
    case 'corner':
      return 'The post is closed already. The base chain carries the next stitch around the corner.';
    case 'foundation':
      return `Each ${t('foundation-treble')} makes the chain for the next one.`;
    case 'chain-or-on':
      return `${many(step.of, 'chain')} make this corner before the next side begins.`;
    case 'stitch':
      return 'The front loops stay free in a line.';
    case 'arms':
      return 'The corner sits between its 2 chains, with a stitch on each side.';
    case 'hidden':
      return `It hides under the corner and is the one most often ${t('miss', 'done')}.`;
    case 'corner-pair':
      return 'Chain joins chain, so the corners meet.';
    case 'join':
      return 'Then the outer loops of front and back stay as a fine line.';
    default:
      return sayItem(item, speech).check ?? '';
  }
}

/** "Back side 2 is 1 stitch short." for every side that does not meet. */
function saySurplus(plan: Plan, mishap: Mishap): string {
  const said = surpluses(plan, mishap).flatMap((surplus, side) =>
    surplus === 0
      ? []
      : [
          `Back side ${side + 1} is ${many(Math.abs(surplus), 'stitch', 'stitches')} ${surplus < 0 ? 'short' : 'too long'}.`,
        ],
  );
  return said.length === 0 ? 'All sides meet.' : said.join(' ');
}

/** Said where a step does not follow the one before: another piece, or further along the same. */
export function sayJump(item: Item, before: Item | null): string {
  const isApart = item.question?.kind === 'gap' || item.question?.kind === 'faces' || item.pair !== undefined;
  if (before === null || isApart) return '';
  if (before.making !== item.making) return 'Now the other closing, on a ring of its own.';
  const by = item.step.index - before.step.index;
  return by === 0 || by === 1 ? '' : 'Further on.';
}

/** What the hand does otherwise; where it does it is `sayItemWhere`. */
export function sayMishap(mishap: Mishap, plan: Plan, speech: Speech): string {
  return mishapStory(mishap.kind, mishap.round ?? 'foundation', plan, speech).story;
}

/** Where an item stands: the step's place, or where its mishap happens. */
export function sayItemWhere(item: Item, speech: Speech): string {
  const { question, making } = item;
  return question?.kind === 'gap'
    ? sayMishapPlace(question.mishap, making.plan, speech)
    : sayItem(item, speech).where;
}
