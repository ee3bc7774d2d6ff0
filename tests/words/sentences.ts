/** Every sentence that the walk, the lessons, the recipe and the causes can say, in UK and US terms side by side. */
import {
  actKinds,
  type Choices,
  type EdgeInput,
  planBack,
  type Result,
  readEdge,
  roundsOf,
  steps,
} from '../../core/index.ts';
import { sayNudge } from '../../src/lessons/leads.ts';
import { LESSON_IDS, lessonOf } from '../../src/lessons/lesson.ts';
import { sayFeedback, sayJump, sayLesson, sayOption, sayQuestion, sayWhy } from '../../src/lessons/say.ts';
import { sayReason } from '../../src/lessons/why.ts';
import { movesOf, STITCH_KINDS } from '../../src/stitch/moves.ts';
import { PAIRS, sayMistake, sayPair } from '../../src/stitch/pairs.ts';
import { sayMove } from '../../src/stitch/say.ts';
import { plain } from '../../src/stitch/variant.ts';
import { type SaidRecipe, sayRecipe, saySums } from '../../src/words/recipe.ts';
import { sayHeldBack, sayNext, sayStep } from '../../src/words/walk/step.ts';
import type { Told } from '../../src/words/walk/telling.ts';
import { stageName } from '../../src/words/walk/where.ts';
import type { Speech } from '../../src/words/words.ts';
import { CURE_KINDS, cureTitle } from '../../src/words/wrong/cures.ts';
import { mishapStory } from '../../src/words/wrong/mishaps.ts';
import { SIGHT_IDS, STORY_IDS, saySight, sayStory } from '../../src/words/wrong/stories.ts';

export type Sentence = { stage: string; uk: string; us: string };

const UK: Speech = { dialect: 'uk', hand: 'right', units: 'cm' };
const US: Speech = { ...UK, dialect: 'us' };

const must = <T>(result: Result<T>): T => {
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
};

const two = { made: 'chain', size: 2 } as const;
const one = { made: 'stitch', size: 1 } as const;
const stitches = (sides: number[], corner: EdgeInput['corner'] = two): EdgeInput => ({
  sides,
  corner,
  counted: 'stitches-only',
});
const none: Choices = {
  foundationStart: { counts: 1 },
  foundationClosing: { adds: 0 },
  edgingClosing: { adds: 0 },
};

/** Makings that between them take every turn a sentence can take. */
const GIVEN: [EdgeInput, Choices][] = [
  [stitches([12, 9, 12, 9]), {}],
  [stitches([12, 9, 12, 9]), none],
  [stitches([12, 9, 12, 9]), { foundationStart: { counts: 1 } }],
  [stitches([12, 9, 12, 9]), { foundationClosing: { adds: 0 } }],
  [
    stitches([9, 9, 9], { made: 'chain', size: 3 }),
    {
      edgings: [
        { arm: [2, 1], corner: two },
        { arm: 1, corner: { made: 'chain', size: 3 } },
      ],
    },
  ],
  [stitches([9, 9, 9], { made: 'chain', size: 1 }), {}],
  [stitches([9, 9, 9, 9], one), { foundationCorner: one }],
  [stitches([30], []), {}],
  [stitches([12, 9, 12, 9]), { open: 3 }],
];

const MAKINGS: Told[] = GIVEN.map(([input, choices]) => {
  const plan = must(planBack(must(readEdge(input)), choices));
  return { plan, steps: steps(plan) };
});

type Saying = (speech: Speech) => readonly (string | undefined)[];

/** What is said in both terms, sentence by sentence; numbers alone make no other sentence. */
function collect(into: Map<string, Sentence>, stage: string, saying: Saying): void {
  const [uk, us] = [saying(UK), saying(US)];
  uk.forEach((text, i) => {
    if (text === undefined || text === '') return;
    const key = `${stage} ${text.replace(/\d+/g, '#')}`;
    if (!into.has(key)) into.set(key, { stage, uk: text, us: us[i] ?? '' });
  });
}

const recipeLines = (said: SaidRecipe): string[] => [
  said.start,
  ...said.begin,
  said.corner,
  said.parts,
  said.closing,
  said.twist,
  said.why,
  ...said.edgings.flatMap(({ title, lines }) => [title, ...lines]),
  ...said.join,
];

function walk(into: Map<string, Sentence>): void {
  for (const told of MAKINGS) {
    for (let i = 0; i < told.steps.length; i++) {
      const step = told.steps.at(i);
      collect(into, `Walk: ${stageName(step, told)}`, (speech) => {
        const { act, check, caution, ask, answers, where } = sayStep(step, told, speech);
        return [
          act,
          check,
          caution,
          ask,
          answers?.yes,
          answers?.no,
          answers?.how,
          where,
          sayNext(step, told),
        ];
      });
    }
  }
  collect(into, 'Walk', () => [sayHeldBack()]);
  for (const kind of STITCH_KINDS)
    for (const adds of [0, 1] as const)
      collect(into, 'Walk: inside a stitch', (speech) =>
        movesOf(kind).map((_, i) => sayMove({ ...plain(kind), adds }, i, speech)),
      );
}

function lessons(into: Map<string, Sentence>): void {
  for (const id of LESSON_IDS) {
    const { items } = lessonOf(id);
    const stage = `Lesson: ${sayLesson(id, UK).title}`;
    collect(into, stage, (speech) => Object.values(sayLesson(id, speech)));
    items.forEach((item, i) => {
      collect(into, stage, (speech) => [
        sayJump(item, items[i - 1] ?? null),
        sayReason(item, speech),
        sayQuestion(item, speech),
        ...(item.question === null ? [] : [sayNudge(item, speech), sayWhy(item, speech)]),
        ...(item.question?.options ?? []).flatMap((option) => [
          item.question === null ? '' : sayOption(item.question, option, speech),
          sayFeedback(item, option, speech)?.leads,
        ]),
      ]);
    });
  }
  for (const id of PAIRS)
    collect(into, 'Right and wrong', (speech) => [
      ...Object.values(sayMistake(id, speech)),
      ...sayPair(id, speech),
    ]);
}

function causes(into: Map<string, Sentence>): void {
  const plan = MAKINGS[0]?.plan;
  if (plan === undefined) return;
  collect(into, 'What went wrong: stories', () => [
    ...STORY_IDS.map(sayStory),
    ...SIGHT_IDS.map((id) => saySight(id, 0, 1)),
  ]);
  for (const kind of actKinds)
    for (const round of roundsOf(kind))
      collect(into, 'What went wrong: causes', (speech) =>
        Object.values(mishapStory(kind, round, plan, speech)),
      );
  collect(into, 'What went wrong: cures', (speech) => CURE_KINDS.map((kind) => cureTitle({ kind }, speech)));
}

/** Every sentence, by stage in the order of the making. */
export function everySentence(): Sentence[] {
  const into = new Map<string, Sentence>();
  for (const { plan } of MAKINGS) {
    collect(into, 'Recipe', (speech) => recipeLines(sayRecipe({ plan }, speech)));
    collect(into, 'Recipe: the sums', () =>
      saySums({ plan, edge: plan.edge }, plan.edge.sides).flatMap(({ whose, steps: lines }) => [
        whose,
        ...lines,
      ]),
    );
  }
  walk(into);
  lessons(into);
  causes(into);
  const all = [...into.values()];
  const stages = [...new Set(all.map(({ stage }) => stage))];
  return stages.flatMap((stage) => all.filter((one) => one.stage === stage));
}
