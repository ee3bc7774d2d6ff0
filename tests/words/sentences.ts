/** Every sentence that the walk, the lessons, the recipe and the causes can say, in UK and US terms side by side. */
import {
  type Act,
  actKinds,
  asked,
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
import { clothOf } from '../../src/state/cloth.ts';
import { clothFields } from '../../src/state/cloth-fields.ts';
import { example } from '../../src/state/project.ts';
import type { Project } from '../../src/state/snapshot.ts';
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

const told = (input: EdgeInput, choices: Choices, acts: readonly Act[] = []): Told => {
  const plan = must(planBack(must(readEdge(input)), choices));
  return { plan, steps: steps(plan, acts), acts };
};

const MAKINGS: Told[] = GIVEN.map(([input, choices]) => told(input, choices));

/** What is worked otherwise than the recipe has it, because it was asked for. */
const ASKED: Told[] = [
  [
    asked({ kind: 'stitch-doubled', round: 'foundation', side: 1, place: 3 }),
    asked({ kind: 'stitch-missed', round: 'edging', edging: 0, side: 1, place: 5 }),
  ],
  [
    asked({ kind: 'stitch-missed', round: 'foundation', side: 1, place: 3 }),
    asked({ kind: 'stitch-doubled', round: 'edging', edging: 0, side: 1, place: 5, count: 2 }),
  ],
  [
    asked({ kind: 'corner-moved', round: 'foundation', corner: 1, count: 1, then: 'from-total' }),
    asked({ kind: 'corner-moved', round: 'edging', edging: 0, corner: 1, count: -1, then: 'from-total' }),
  ],
  [asked({ kind: 'corner-chains', round: 'edging', edging: 0, corner: 1, count: 1 })],
  [asked({ kind: 'two-with-one', round: 'join', side: 2, place: 4, of: 'back' })],
  [asked({ kind: 'two-with-one', round: 'join', side: 2, place: 4, of: 'front' })],
].map((acts) => told(stitches([12, 9, 12, 9]), {}, acts));

/** The cloth measured, as a maker types it: sewn by hand, by machine, round, and too short for more pins. */
const MEASURED: [Told, Project['texts']][] = [
  [told(stitches([36, 28, 36, 28]), {}), sized('18 cm', '14 cm')],
  [told(stitches([36, 28, 36, 28]), {}), { ...sized('18 cm', '14 cm'), [clothFields.sewing]: 'machine' }],
  [told(stitches([9, 9, 9, 9]), {}), sized('5 cm', '5 cm')],
  [
    told(stitches([60], []), {}),
    { [clothFields.diameter(0)]: '20 cm', [clothFields.outline]: 'round', [clothFields.depth]: '1.2 cm' },
  ],
];

function sized(width: string, height: string): Project['texts'] {
  return { [clothFields.width(0)]: width, [clothFields.height(0)]: height, [clothFields.depth]: '1.2 cm' };
}

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
  for (const making of ASKED)
    for (let i = 0; i < making.steps.length; i++) {
      const step = making.steps.at(i);
      collect(into, `Walk: ${stageName(step, making)}, as asked for`, (speech) => {
        const { act, check } = sayStep(step, making, speech);
        const plainly = sayStep(step, { ...making, acts: [] }, speech);
        return act === plainly.act && check === plainly.check ? [] : [act, check];
      });
    }
  for (const [making, texts] of MEASURED)
    for (const units of ['cm', 'inch'] as const) {
      const cloth = clothOf({ ...example, texts }, units, { ...making, edge: making.plan.edge });
      for (let i = 0; i < making.steps.length; i++) {
        const step = making.steps.at(i);
        if (step.stage !== 'cloth') continue;
        collect(into, `Walk: Cloth, measured, in ${units}`, (speech) => {
          const { act, check, caution } = sayStep(step, making, { ...speech, units }, cloth);
          return [act, check, caution];
        });
      }
    }
  for (const becomes of ['bag', 'cover'] as const) {
    const [making] = MAKINGS;
    for (let i = 0; making !== undefined && i < making.steps.length; i++)
      collect(into, `Walk: a ${becomes}`, (speech) => {
        const { act, check, ask, answers } = sayStep(making.steps.at(i), { ...making, becomes }, speech);
        const cushion = sayStep(making.steps.at(i), making, speech);
        return act === cushion.act && check === cushion.check
          ? []
          : [act, check, ask, answers?.no, answers?.how];
      });
  }
  const [first] = MAKINGS;
  for (let i = 0; first !== undefined && i < first.steps.length; i++)
    collect(into, 'Walk: left-handed', (speech) => {
      const left = sayStep(first.steps.at(i), first, { ...speech, hand: 'left' });
      const right = sayStep(first.steps.at(i), first, speech);
      return left.act === right.act && left.check === right.check ? [] : [left.act, left.check];
    });
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
    for (const becomes of ['cushion', 'cover'] as const)
      collect(into, 'Recipe', (speech) => recipeLines(sayRecipe({ plan, becomes }, speech)));
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
