/**
 * The lessons, each a stretch of the same steps that the walk uses, on a small piece of its own. Nothing of a
 * stitch is told twice here: what is right is read off the step, the plan or the worked rounds.
 */
import {
  type Choices,
  type EdgeInput,
  type Mishap,
  planBack,
  type Result,
  readEdge,
  type Step,
  type StepKind,
  steps,
} from '../../core/index.ts';
import { clothOf } from '../state/cloth.ts';
import { clothFields } from '../state/cloth-fields.ts';
import type { Cloth } from '../state/cloth-types.ts';
import type { LessonId, Level } from '../state/lesson-progress.ts';
import { example } from '../state/project.ts';
import type { Project } from '../state/snapshot.ts';
import type { PairId } from '../stitch/pairs.ts';
import { type Said, sayStep } from '../words/walk/step.ts';
import type { Told } from '../words/walk/telling.ts';
import type { Speech } from '../words/words.ts';
import type { ChoiceId } from './choices.ts';
import { choiceQuestion, gapQuestion, type Question, questionsOf, sideQuestion } from './questions.ts';

export { LESSON_IDS, LEVELS, type LessonId, type Level } from '../state/lesson-progress.ts';

/** One thing shown and, where it is hidden, asked. */
export type Item = {
  step: Step;
  making: Told;
  question: Question | null;
  /** The cloth as measured, where the lesson's piece has one. */
  cloth?: Cloth;
  /** Right and wrong are shown side by side instead of the step's own picture. */
  pair?: PairId;
};

/** What the walk says at an item's step. */
export const sayItem = ({ step, making, cloth }: Item, speech: Speech): Said =>
  sayStep(step, making, speech, cloth ?? null);

export type Lesson = { id: LessonId; items: readonly Item[] };

const two = { made: 'chain', size: 2 } as const;
/** Six trebles a side, so that a corner is never far. */
const SQUARE: EdgeInput = { sides: [8, 8, 8, 8], corner: two, counted: 'stitches-only' };
/** One side of its own length: here the order of the sides shows. */
const ODD: EdgeInput = { sides: [10, 8, 6, 8], corner: two, counted: 'stitches-only' };
/** Long enough for a marker. */
const COUNTED: EdgeInput = { sides: [12, 12, 12, 12], corner: two, counted: 'stitches-only' };
/** 5 mm a stitch on the cloth below. */
const OBLONG: EdgeInput = { sides: [36, 28, 36, 28], corner: two, counted: 'stitches-only' };
const CHOICES: Choices = { start: { side: 0, lead: 3 }, joinStart: { side: 0, fromCorner: 4 } };

function must<T>(result: Result<T>): T {
  if (result.ok) return result.value;
  throw new Error(`A lesson's own piece must be readable: ${JSON.stringify(result.problems)}`);
}

function make(edge: EdgeInput, choices: Choices = CHOICES, mishaps: Mishap[] = []): Told {
  const plan = must(planBack(must(readEdge(edge)), choices));
  return { plan, steps: steps(plan, mishaps), acts: mishaps };
}

const allSteps = ({ steps }: Told): Step[] => Array.from({ length: steps.length }, (_, i) => steps.at(i));

/** Steps from the first that fits `from`, `count` of them. */
function stretch(making: Told, from: (step: Step) => boolean, count: number): Item[] {
  const { length } = making.steps;
  let start = 0;
  while (start < length - 1 && !from(making.steps.at(start))) start++;
  return Array.from({ length: Math.min(count, length - start) }, (_, i) =>
    making.steps.at(start + i),
  ).flatMap((step) => itemsOf(step, making));
}

/** A step gives one item for each question it holds, or one that is only shown. */
function itemsOf(step: Step, making: Told): Item[] {
  const questions = questionsOf(step, making);
  return questions.length === 0
    ? [{ step, making, question: null }]
    : questions.map((question) => ({ step, making, question }));
}

type Asked = readonly [kind: StepKind, about: ChoiceId][];

/** The first step of each kind is asked about in words as well. */
function asking(items: readonly Item[], choices: Asked): Item[] {
  const left = new Map(choices);
  return items.flatMap((item) => {
    const about = left.get(item.step.kind);
    if (about === undefined) return [item];
    left.delete(item.step.kind);
    const asked = { ...item, question: choiceQuestion(about, item.step) };
    return item.question === null ? [asked] : [asked, item];
  });
}

/** One step of each kind, only to be looked at. */
const seen = (making: Told, kinds: readonly StepKind[]): Item[] =>
  kinds.flatMap((kind) => stretch(making, (step) => step.kind === kind, 1).slice(0, 1)).map(shown);

const shown = (item: Item): Item => ({ ...item, question: null });

/** What will be made: one look at each part, from the end backwards to where it begins, then on. */
function whole(): Item[] {
  return asking(
    seen(make(SQUARE), [
      'finished',
      'count-stitch',
      'foundation-treble',
      'double-crochet',
      'sew-out',
      'slip-stitch',
      'pad-in',
    ]),
    [
      ['count-stitch', 'before-all'],
      ['foundation-treble', 'first-on-back'],
      ['double-crochet', 'edging-is-for'],
      ['slip-stitch', 'joined-by'],
      ['pad-in', 'pad-when'],
    ],
  );
}

/** The end of a side, its corner, and the beginning of the next. */
function counting(): Item[] {
  const making = make(COUNTED);
  const { steps } = making;
  const ten = stretch(making, (step) => step.kind === 'count-stitch' && step.place === 9, 3).map(shown);
  const corner = stretch(making, (step) => step.kind === 'count-corner', 2).map(shown);
  const next = stretch(making, (step) => step.kind === 'count-stitch' && step.side === 1, 1).map(shown);
  const ask = (item: Item | undefined, about: ChoiceId): Item[] =>
    item === undefined ? [] : [{ ...item, question: choiceQuestion(about, item.step) }];
  const first: Item = { step: steps.at(0), making, question: null };
  return [
    first,
    ...ten.slice(0, 2),
    ...ask(ten[2], 'markers'),
    corner[0] as Item,
    ...ask(corner[1], 'chains-apart'),
    ...ask(next[0], 'side-begins'),
  ];
}

function foundation(): Item[] {
  return stretch(make(SQUARE), (step) => step.kind === 'slip-knot', 9);
}

/** Both closings, one after the other: one that makes a stitch and one that makes none. */
function closing(): Item[] {
  const last = (step: Step): boolean =>
    step.stage === 'foundation' && step.side === 0 && step.node > step.of && step.place === step.of - 1;
  const adding = make(SQUARE);
  const plain = make(SQUARE, { ...CHOICES, foundationClosing: { adds: 0 } });
  return [
    ...asking(stretch(adding, last, 6), [['check-twist', 'twist']]),
    ...stretch(plain, last, 5).filter(
      ({ step }) => step.kind === 'foundation-treble' || step.kind === 'close-tops',
    ),
  ];
}

/** Once round the first corner, then how it ends. */
function edging(): Item[] {
  const making = make(SQUARE);
  return [
    ...stretch(making, (step) => step.kind === 'right-side', 12),
    ...asking(
      stretch(making, (step) => step.stage === 'edging-closing', 3),
      [['close-round', 'edging-covers']],
    ),
  ];
}

/** Measured as a maker would type it: all else of the cloth follows. */
const MEASURED: Project['texts'] = {
  [clothFields.width(0)]: '18 cm',
  [clothFields.height(0)]: '14 cm',
  [clothFields.depth]: '1.2 cm',
};

function cloth(): Item[] {
  const making = make(OBLONG);
  const measured = clothOf({ ...example, texts: MEASURED }, 'cm', { ...making, edge: making.plan.edge });
  return asking(
    stretch(making, (step) => step.stage === 'cloth', 9).map((item) => ({ ...item, cloth: measured })),
    [
      ['lay-strip', 'raw-edge'],
      ['cloth-centres', 'pin-first'],
      ['sew-back', 'way-back'],
      ['pins-out', 'before-turning'],
    ],
  );
}

/** From laying together to the first pairs, around a corner, past the pad, and to the end. */
function joining(): Item[] {
  const making = make(SQUARE);
  const isLast = (step: Step): boolean =>
    step.kind === 'slip-stitch' && step.corner < 0 && step.place === step.of - 1;
  return asking(
    [
      ...stretch(making, (step) => step.kind === 'wrong-sides', 5),
      ...stretch(making, isLast, 4),
      ...stretch(making, (step) => step.kind === 'long-loop', 4),
      ...stretch(making, (step) => step.kind === 'look-for-holes', 5),
    ],
    [
      ['long-loop', 'loop-rests'],
      ['last-hole', 'open-pair'],
      ['join-close', 'join-ends'],
    ],
  );
}

/** The first treble of each side of the back: which front side will it face? */
function mirrored(): Item[] {
  const making = make(ODD);
  return making.plan.faces.flatMap((_, side): Item[] => {
    const starts = (step: Step): boolean =>
      step.kind === 'foundation-treble' && step.side === side && step.place === 0;
    return stretch(making, starts, 1).map(({ step }) => ({
      step,
      making,
      question: sideQuestion(making.plan, side),
    }));
  });
}

/** Where each mistake happens, so that the step is named beside right and wrong. */
const PAIR_STEPS: readonly [PairId, (step: Step, before: Step | undefined) => boolean][] = [
  ['post-picked', ({ kind }, before) => kind === 'foundation-treble' && before?.kind === 'corner-chain'],
  ['twisted', ({ kind }) => kind === 'check-twist'],
  ['closing-adds', ({ kind }) => kind === 'close-tops'],
  ['both-loops', ({ kind }) => kind === 'double-crochet'],
  // The stitch after the one that goes into the corner.
  ['hidden-missed', ({ kind, side, place }) => kind === 'double-crochet' && side === 1 && place === 1],
  ['outer-loops', ({ kind }) => kind === 'slip-stitch'],
  ['chain-skipped', ({ kind, corner }) => kind === 'slip-stitch' && corner >= 0],
];

/** One mishap each; the sides that do not meet are found by working it. */
const MISHAPS: readonly Mishap[] = [
  { kind: 'stitch-missed', round: 'foundation', side: 1, place: 2 },
  { kind: 'hidden-missed', round: 'edging', corner: 1 },
  { kind: 'closing-over-first', round: 'foundation' },
  { kind: 'attach-doubled', round: 'edging' },
  { kind: 'corner-moved', round: 'foundation', corner: 1, count: 1, then: 'from-total' },
];

/** First the counts, then what each mistake looks like on the work. */
function miscounts(): Item[] {
  const making = make(SQUARE);
  const all = allSteps(making);
  const looks = PAIR_STEPS.flatMap(([pair, isThere]): Item[] => {
    const step = all.find((one, i) => isThere(one, all[i - 1]));
    return step === undefined ? [] : [{ step, making, question: null, pair }];
  });
  return [...counts(), ...looks];
}

function counts(): Item[] {
  return MISHAPS.flatMap((mishap): Item[] => {
    const making = make(SQUARE, CHOICES, [mishap]);
    const all = allSteps(making);
    const marked = all.find((step) => step.mishap !== undefined);
    const close = all.find((step) => step.kind === 'close-tops');
    const step = marked ?? close ?? making.steps.at(0);
    return [{ step, making, question: gapQuestion(making.plan, mishap) }];
  });
}

const BUILD: Record<LessonId, () => Item[]> = {
  whole,
  counting,
  foundation,
  closing,
  edging,
  mirrored,
  cloth,
  joining,
  miscounts,
};

const built = new Map<LessonId, Lesson>();

/** The lesson with its items, worked out once. */
export function lessonOf(id: LessonId): Lesson {
  const lesson = built.get(id) ?? { id, items: BUILD[id]() };
  built.set(id, lesson);
  return lesson;
}

/** A step that is asked about twice is looked at once. */
export const itemsAt = ({ items }: Lesson, level: Level): readonly Item[] =>
  level === 'show'
    ? items.filter(({ step, making, pair }, i) => {
        const before = items[i - 1];
        return pair !== undefined || before?.step !== step || before.making !== making;
      })
    : items;

/** Is item `index` asked at this level? At `last-hidden` the last half of what can be asked. */
export function isAsked({ items }: Lesson, index: number, level: Level): boolean {
  if (level === 'show' || items[index]?.question == null) return false;
  if (level !== 'last-hidden') return true;
  const askable = items.flatMap((item, i) => (item.question === null ? [] : [i]));
  return askable.indexOf(index) >= Math.floor(askable.length / 2);
}
