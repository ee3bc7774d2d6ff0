/** Help with a question: a nudge before the answer, and what a wrong answer would lead to, in words and pictures. */
import type { PairId } from '../stitch/pairs.ts';
import { type TermForm, type TermId, term } from '../words/terms.ts';
import type { Speech } from '../words/words.ts';
import { CHOICES } from './choices.ts';
import type { Item } from './lesson.ts';
import type { PlaceId, PlaceQuestion } from './questions.ts';

type Terms = (id: TermId, form?: TermForm) => string;

const NUDGES: Record<PlaceQuestion, (t: Terms) => string> = {
  'first-treble': () => 'All the chains but 1 stand up beside it.',
  foundation: (t) => `Each ${t('treble')} made a chain at its foot.`,
  corner: () => 'The row goes on along its base.',
  'chain-or-on': () => 'The side is full up to here: the corner is only chains.',
  stitch: () => 'A line of loops must stay free towards you.',
  arms: () => 'The corner must lie in the middle of its chains.',
  hidden: () => 'Push the corner aside.',
  join: () => 'A fine line stays free on each side of the seam.',
  'corner-pair': () => 'Corner lies on corner: look straight behind the front.',
  needle: () => 'How many stitches does the side still need?',
};

type Leads = Partial<Record<PlaceId, (t: Terms) => string>>;

const LEADS: Record<PlaceQuestion, Leads> = {
  'first-treble': {
    'next-chain': (t) => `The chains left would be too short beside a ${t('treble')}.`,
    'last-chain': () => 'No chain would stand up beside the stitch.',
  },
  foundation: {
    post: () => 'The post would be pulled aside, and the base would end there.',
    top: () => 'It would stand on the last one: the row would climb and not grow.',
  },
  corner: {
    post: () => 'The corner would have no base, and pull to a point.',
    'corner-chain': () => 'It would hang from the chain: the ring would open at the corner.',
  },
  'chain-or-on': {
    'base-chain': () => 'A stitch there would make the side 1 too long.',
    top: () => 'A stitch there would climb over the corner.',
  },
  stitch: {
    'front-loop': () => 'The free line would lie behind, and the strip would turn the wrong way.',
    'both-loops': () => 'No line of loops would stay free, and the strip would not turn over.',
  },
  arms: {
    'first-corner-chain': () => 'Both stitches in 1 chain: the corner would lean.',
    'second-corner-chain': () => 'The first chain would be left over: the corner would lean.',
    'next-stitch': () => 'The corner would come 1 stitch late.',
  },
  hidden: { 'second-stitch': () => 'This side would be 1 short, and the join would show a gap.' },
  join: {
    'front-loops': () => 'Only the front would be caught: the seam would hold nothing.',
    'back-loops': () => 'Only the back would be caught: the seam would hold nothing.',
  },
  'corner-pair': {
    'first-place': () => 'It is joined already.',
    'second-place': () => 'The chain behind would be passed over: a hole, and 1 left over at the end.',
    'stitch-before': () => 'The corner of the back would come 1 late, and all after it.',
  },
  needle: {
    'first-stitch': () => 'It would make a stitch: the side 1 too long.',
    'second-stitch': () => 'It would make none: the side 1 short.',
  },
};

/** The pictures that show what a wrong answer leads to, by question and option. */
const SHOWN: Partial<Record<PlaceQuestion, Partial<Record<PlaceId, PairId>>>> = {
  corner: { post: 'post-picked' },
  foundation: { post: 'post-picked' },
  stitch: { 'both-loops': 'both-loops' },
  hidden: { 'second-stitch': 'hidden-missed' },
  join: { 'front-loops': 'outer-loops', 'back-loops': 'outer-loops' },
  'corner-pair': { 'second-place': 'chain-skipped' },
  needle: { 'second-stitch': 'closing-adds', 'first-stitch': 'closing-over' },
};

const terms =
  ({ dialect }: Speech): Terms =>
  (id, form) =>
    term(id, dialect, form);

/** A first help that does not say the answer. */
export function sayNudge({ question }: Item, speech: Speech): string {
  if (question === null) return '';
  const t = terms(speech);
  switch (question.kind) {
    case 'place':
      return NUDGES[question.about](t);
    case 'choice':
      return CHOICES[question.about].nudge(t);
    case 'count':
      return 'Does this closing make a stitch of its own?';
    case 'faces':
      return "They run opposite ways: count the front's sides backwards.";
    case 'gap':
      return 'Count along the round from where the hand does otherwise.';
  }
}

/** What a wrong answer would have led to; empty where nothing is to be said. */
export function sayLeads({ question }: Item, option: string, speech: Speech): string {
  if (question === null) return '';
  const t = terms(speech);
  if (question.kind === 'place') return LEADS[question.about][option as PlaceId]?.(t) ?? '';
  if (question.kind === 'choice') return CHOICES[question.about].options[option]?.leads?.(t) ?? '';
  return question.kind === 'faces' ? 'A side would lie against one of another length.' : '';
}

/** The pair of pictures for a wrong answer, or null. */
export function pairFor({ question }: Item, option: string): PairId | null {
  if (question?.kind === 'choice') return question.about === 'twist' ? 'twisted' : null;
  return question?.kind === 'place' ? (SHOWN[question.about]?.[option as PlaceId] ?? null) : null;
}
