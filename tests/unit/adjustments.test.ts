import { afterEach, describe, expect, test } from 'vitest';
import {
  type Adjustment,
  actKinds,
  asked,
  entryOf,
  explain,
  type Plan,
  type Seen,
  type Step,
} from '../../core/index.ts';
import { readProject } from '../../src/input/project.ts';
import { example, standardSettings } from '../../src/state/project.ts';
import type { Project } from '../../src/state/snapshot.ts';
import { openStore, type Store } from '../../src/state/store.ts';
import { sayRecipe } from '../../src/words/recipe.ts';
import { wordsOnlyIn } from '../../src/words/terms.ts';
import { sayStep } from '../../src/words/walk/step.ts';
import type { Speech } from '../../src/words/words.ts';
import { curedProject } from '../../src/wrong/cured.ts';

const uk: Speech = { dialect: 'uk', hand: 'right', units: 'cm' };
const us: Speech = { ...uk, dialect: 'us' };

const opened: Store[] = [];
afterEach(() => {
  for (const store of opened.splice(0)) store.stop();
});

/** Four sides of as many stitches, two chains in each corner. */
function open(side: number, project: Partial<Project> = {}): Store {
  const texts = Object.fromEntries([0, 1, 2, 3].map((i) => [`side.${i}`, `${side}`]));
  const store = openStore({
    project: { ...example, counted: 'stitches-only', texts: { ...texts, corner: '2' }, ...project },
    settings: standardSettings,
    tab: 'walk',
    place: 0,
    answered: [],
  });
  opened.push(store);
  return store;
}

const stepsOf = (store: Store): Step[] => {
  const { steps } = store.snapshot().making;
  return Array.from({ length: steps.length }, (_, i) => steps.at(i));
};

/** What the walk says where something is worked otherwise: act and where. */
const told = (store: Store, speech: Speech = uk): string[][] =>
  stepsOf(store)
    .filter(({ adjustments }) => adjustments)
    .map((step) => {
      const { act, where } = sayStep(step, store.snapshot().making, speech);
      return [act, where];
    });

const missed = asked({ kind: 'stitch-missed', round: 'edging', edging: 0, side: 1, place: 6 });
const doubled = asked({ kind: 'stitch-doubled', round: 'edging', edging: 0, side: 2, place: 5 });
const chains = asked({ kind: 'corner-chains', round: 'edging', edging: 0, corner: 1, count: 3 });
const moved = asked({
  kind: 'corner-moved',
  round: 'edging',
  edging: 0,
  corner: 1,
  count: -2,
  then: 'from-total',
});
const back = asked({ kind: 'two-with-one', side: 2, place: 6, of: 'back' });
const front = asked({ kind: 'two-with-one', side: 2, place: 6, of: 'front' });

const CASES: [name: string, adjustments: Adjustment[], acts: string[][], recipe: string[]][] = [
  [
    'miss one',
    [missed],
    [
      [
        'Miss the next stitch, then 1 double crochet, back loop only.',
        'Edging · side 2 · stitch 7 of 13 · 3 to the next marker',
      ],
    ],
    ['Side 2: 13, miss the 7th.'],
  ],
  [
    'work two in one',
    [doubled],
    [
      [
        'Work 2 in this stitch. The first: 1 double crochet.',
        'Edging · side 3 · stitch 6 of 15 · 4 to the next marker',
      ],
    ],
    ['Side 3: 15, work 2 in the 6th.'],
  ],
  [
    'one chain more',
    [chains],
    [['Chain 1: first of 3 for the corner.', 'Edging · corner 2 · chain 1 of 3']],
    ['Corner 2: 3 chains.'],
  ],
  [
    'two of the back with one of the front',
    [back],
    [['Take 2 of the back with 1 of the front.', 'Join · side 3 · pair 7 of 14 · 3 to the next marker']],
    ['Front side 3: take 2 of the back with 1 of the front, at the 7th.'],
  ],
  [
    'two of the front with one of the back',
    [front],
    [['Take 2 of the front with 1 of the back.', 'Join · side 3 · pair 7 of 14 · 3 to the next marker']],
    ['Front side 3: take 2 of the front with 1 of the back, at the 7th.'],
  ],
];

const linesOf = (store: Store): string[] => {
  const { edgings, asked: onFoundation, joinAsked } = sayRecipe(store.snapshot().making, uk);
  return [...onFoundation, ...edgings.flatMap((one) => one.asked), ...joinAsked];
};

describe.each(CASES)('%s', (_name, adjustments, acts, lines) => {
  test('is told in the walk as the instruction it is, and stands in the recipe', () => {
    const store = open(14, { adjustments });
    expect(told(store)).toEqual(acts);
    expect(linesOf(store)).toEqual(lines);
  });

  test('is never called a mishap', () => {
    const store = open(14, { adjustments });
    for (const step of stepsOf(store)) {
      const { act, check = '' } = sayStep(step, store.snapshot().making, uk);
      expect(`${act} ${check}`).not.toMatch(/mishap|does not ask/);
    }
  });

  test('has no word of the other dialect', () => {
    const store = open(14, { adjustments });
    for (const [act = ''] of told(store, us))
      for (const word of wordsOnlyIn('uk'))
        expect(act.toLowerCase()).not.toMatch(new RegExp(`\\b${word}\\b`));
  });

  test('is kept, undone and redone', () => {
    const store = open(14);
    const before = store.snapshot().making;
    store.send({ type: 'CHANGE', project: { adjustments } });
    const { project } = store.snapshot();
    expect(readProject(JSON.parse(JSON.stringify(project)))).toEqual(project);
    store.send({ type: 'UNDO' });
    expect(store.snapshot().project.adjustments).toEqual([]);
    expect(store.snapshot().making.worked).toEqual(before.worked);
    store.send({ type: 'REDO' });
    expect(store.snapshot().project.adjustments).toEqual(adjustments);
    expect(told(store)).toEqual(acts);
  });
});

describe('the recipe from here on', () => {
  test('has the counts that come of it', () => {
    const legs = (adjustments: Adjustment[]) =>
      sayRecipe(open(14, { adjustments }).snapshot().making, uk).edgings[0]?.legs.map(({ count, times }) => [
        count,
        times,
      ]);
    expect(legs([])).toEqual([[14, 4]]);
    expect(legs([missed, doubled])).toEqual([
      [14, 1],
      [13, 1],
      [15, 1],
      [14, 1],
    ]);
  });

  test('has as many pairs as are left', () => {
    const pairs = (adjustments: Adjustment[]) =>
      sayRecipe(open(14, { adjustments }).snapshot().making, uk).join.at(-1);
    expect(pairs([])).toMatch(/^64 pairs/);
    expect(pairs([back])).toMatch(/^63 pairs/);
  });
});

test('the second of two in one is told too, and in the same stitch', () => {
  const store = open(14, { adjustments: [doubled] });
  const at = stepsOf(store).findIndex(({ adjustments }) => adjustments);
  const { steps } = store.snapshot().making;
  expect(sayStep(steps.at(at + 1), store.snapshot().making, uk).act).toBe(
    'The second of 2 in the same stitch: 1 double crochet.',
  );
  expect(steps.at(at + 1).target.node).toBe(steps.at(at).target.node);
});

test('a corner moved back is told where it now comes', () => {
  const store = open(14, { adjustments: [moved] });
  expect(told(store).map(([act]) => act)).toEqual([
    'The corner comes here: 1 double crochet in the next stitch.',
  ]);
  expect(linesOf(store)).toEqual(['Corner 2: 2 stitches earlier.']);
});

test('an adjustment that has no place on the panel any more is left out, and said', () => {
  const store = open(14, {
    adjustments: [asked({ kind: 'corner-chains', round: 'edging', corner: 3, count: 3 })],
  });
  expect(store.snapshot().unfit).toEqual([]);
  store.send({ type: 'CHANGE', project: { sideCount: 3 } });
  expect(store.snapshot().making.acts).toEqual([]);
  expect(store.snapshot().unfit.map(({ at }) => at)).toEqual(['adjustments[0].corner']);
});

test('every kind that can be asked for has its line in the recipe', () => {
  const kinds = actKinds.filter((kind) => entryOf(kind).canBeAsked);
  const shown = new Set([missed, doubled, chains, moved, back].map(({ kind }) => kind));
  expect([...shown].sort()).toEqual([...kinds].sort());
});

/** The first cure of a kind for what was counted, taken. */
function cured(store: Store, seen: Seen, kind: string): void {
  const { plan } = store.snapshot().making;
  const cure = cureFor(plan, seen, kind);
  store.send({ type: 'OPEN', project: curedProject(store.snapshot(), cure) });
}

function cureFor(plan: Plan, seen: Seen, kind: string) {
  const [first] = explain(plan, seen).explanations;
  const cure = first?.cures.find((one) => one.kind === kind);
  if (!cure) throw new Error(`no ${kind}`);
  return cure;
}

describe('a cure that is chosen', () => {
  test('is worked: made up on the way, step for step', () => {
    const store = open(14);
    // One side of the foundation is one short, the next has one too few more.
    cured(store, { foundation: { sides: [12, 11, 13, 12] } }, 'make-up');
    const acts = told(store).map(([act]) => act);
    expect(acts).toEqual([
      'Work 2 in this stitch. The first: 1 double crochet.',
      'Miss the next stitch, then 1 double crochet, back loop only.',
    ]);
    expect(store.snapshot().making.pairing.verdict.kind).toBe('meets');
    expect(store.snapshot().project.mishaps.some((one) => one.asked)).toBe(false);
  });

  test('is worked: eased in the join, in the pair that takes two', () => {
    const store = open(32);
    cured(
      store,
      { foundation: { sides: [30, 30, 30, 30] }, edgings: [{ sides: [32, 31, 32, 32] }] },
      'ease-in',
    );
    expect(told(store).map(([act]) => act)).toEqual(['Take 2 of the front with 1 of the back.']);
    const { pairing } = store.snapshot().making;
    expect(pairing.gaps).toEqual([]);
    expect(pairing.verdict.kind).toBe('meets');
    expect(pairing.pairs).toBe(4 * 32 + 4 * 2 - 1);
  });
});
