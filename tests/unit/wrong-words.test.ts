import { describe, expect, test } from 'vitest';
import { questionsOf } from '../../core/explain/looks.ts';
import {
  actKinds,
  actOf,
  type Cure,
  type Look,
  type LookAt,
  type Plan,
  type Stand,
} from '../../core/index.ts';
import { wordsOnlyIn } from '../../src/words/terms.ts';
import type { Speech } from '../../src/words/words.ts';
import {
  CAUSE_KINDS,
  causePlace,
  causeReason,
  causeTitle,
  explanationTitle,
} from '../../src/words/wrong/causes.ts';
import { CURE_KINDS, cureAfter, cureCost, cureTitle, cureWhere } from '../../src/words/wrong/cures.ts';
import { sayGives } from '../../src/words/wrong/gives.ts';
import { sayFound, sayLook, sayTell } from '../../src/words/wrong/looks.ts';
import { SIGHT_IDS, STORY_IDS, saySight, sayStory } from '../../src/words/wrong/stories.ts';
import { causesOn, explanationOf, PANELS, planOf } from './wrong-panels.ts';

const speechOf = (dialect: Speech['dialect']): Speech => ({ dialect, hand: 'right', units: 'cm' });
const uk = speechOf('uk');
const us = speechOf('us');

const LOOKS: LookAt[] = [
  'side',
  'corner',
  'front',
  'closing',
  'after-corner',
  'arm',
  'corner-place',
  'along',
  'join-start',
  'join-side',
  'join-corner',
  'join-along',
  'first-corner',
  'loops',
  'twist',
  'hole',
];

const looksOn = (plan: Plan): Look[] => {
  const last = plan.edge.sides.length - 1;
  return LOOKS.flatMap((look) =>
    (['foundation', 'edging', 'join'] as const).map(
      (round): Look => ({
        key: `${look} ${round}`,
        look,
        round,
        edging: 0,
        side: last,
        corner: last,
        end: 'after',
      }),
    ),
  );
};

const curesOn = (plan: Plan): Cure[] =>
  CURE_KINDS.flatMap((kind) =>
    (['as-planned', 'hidden', 'slight', 'shows', 'loose', 'open'] as const).flatMap((looks, i) =>
      (['meets', 'meets-with-easing', 'does-not-meet'] as const).map(
        (then, j): Cure => ({
          kind,
          looks,
          then,
          recommended: false,
          cost: { stitches: i * 40, slips: j, rounds: j, sewing: j === 2, again: i * 40 + j },
          at: (['two-in-one', 'miss-one', 'two-back-with-one', 'two-front-with-one'] as const).map((act) => ({
            round: (['foundation', 'edging', 'front', 'join'] as const)[j] ?? 'join',
            edging: 0,
            side: plan.edge.sides.length - 1,
            act,
            places: [3, 9, 20].slice(0, j + 1),
          })),
          to: { round: 'edging', edging: 0, side: 0, place: 4, node: 4, ...(j === 1 ? { corner: 0 } : {}) },
          frontSides: [{ side: 0, by: j - 1 || 2 }],
          mishaps: [],
          adjustments: [],
          seenAfter: {},
        }),
      ),
    ),
  );

const STANDS: Stand[] = [{ at: 'foundation' }, { at: 'sewn' }, { at: 'join', side: 0 }];

/** Every sentence of the tab that speaks of a panel. */
const sentencesOn = (plan: Plan, speech: Speech): string[] => [
  ...causesOn(plan).flatMap((cause) => [
    causeTitle(cause, plan, speech),
    causePlace(cause, plan, speech),
    causeReason(cause, plan, speech),
    explanationTitle([cause, cause], plan, speech),
  ]),
  ...looksOn(plan).map((look) => sayLook(look, plan, speech)),
  ...looksOn(plan).map((look) => sayTell({ ...look, expect: 3, asRecipe: 2 }, plan, speech)),
  ...curesOn(plan).flatMap((cure) => [
    cureTitle(cure, speech),
    ...STANDS.map((stands) => cureCost(cure, stands)),
    cureAfter(cure),
    ...cureWhere(cure, plan, speech),
  ]),
];

describe('the words of every cause', () => {
  test('there are, for every kind of mishap and for the front', () => {
    expect([...CAUSE_KINDS].sort()).toEqual([...actKinds, 'front-miscounted'].sort());
  });

  test.each(PANELS)('on %s: whole sentences without jargon, blame or holes', (_name, plan) => {
    for (const speech of [uk, us])
      for (const sentence of sentencesOn(plan, speech)) {
        expect(sentence.trim()).not.toBe('');
        expect(sentence).not.toMatch(
          /!|undefined|NaN|null|\[object|\b(please|sorry|invalid|oops|required|error|simulation|mishap)\b/i,
        );
        expect(sentence, 'no hole where a word belongs').not.toMatch(/ {2}| [.,]|^[a-z]|-\d/);
      }
    for (const cause of causesOn(plan)) expect(causeReason(cause, plan, uk)).toMatch(/\.$/);
    for (const cause of causesOn(plan))
      for (const sentence of causeReason(cause, plan, uk).split(/(?<=\.) /))
        expect(sentence.split(' ').length, sentence).toBeLessThanOrEqual(16);
  });

  test.each(PANELS)('on %s: UK words in UK terms only, US words in US terms only', (_name, plan) => {
    const whole = (word: string) => new RegExp(`\\b${word}\\b`, 'i');
    const inUk = sentencesOn(plan, uk);
    const inUs = sentencesOn(plan, us);
    for (const word of wordsOnlyIn('us'))
      expect(
        inUk.filter((one) => whole(word).test(one)),
        word,
      ).toEqual([]);
    for (const word of wordsOnlyIn('uk'))
      expect(
        inUs.filter((one) => whole(word).test(one)),
        word,
      ).toEqual([]);
    // There is something to tell apart.
    expect(inUk).not.toEqual(inUs);
  });

  test('numbers come from the plan: a corner of another size is told with both sizes', () => {
    const plan = planOf([62, 38, 62, 38]);
    const [cause] = causesOn(plan).filter(({ kind }) => kind === 'corner-chains');
    expect(cause && causeReason(cause, plan, uk)).toBe('Corner 4 has 3 chains. The recipe has 2.');
    expect(cause && causeTitle(cause, plan, uk)).toBe('Too many corner chains');
  });

  test('a habit is told as one', () => {
    const plan = planOf([62, 38, 62, 38]);
    const habit = causesOn(plan).find(({ kind, habit: is }) => kind === 'hidden-missed' && is);
    expect(habit && causeTitle(habit, plan, uk)).toBe('The hidden stitch missed, at every corner');
    expect(habit && causeTitle(habit, plan, us)).toBe('The hidden stitch skipped, at every corner');
    expect(habit && causePlace(habit, plan, uk)).toBe('Edging · every corner');
  });

  test('several causes are joined by "and"', () => {
    const plan = planOf([62, 38, 62, 38]);
    const of = (kind: string) =>
      causesOn(plan)
        .filter((cause) => cause.kind === kind)
        .slice(0, 1);
    expect(explanationTitle([...of('closing-over-first'), ...of('last-hole')], plan, uk)).toBe(
      'Closed over the first stitch and the last hole left open',
    );
  });
});

describe('what a cause comes to', () => {
  const plan = planOf([62, 38, 62, 38]);
  test.each([
    [
      'chains-as-stitches',
      {},
      'Every side of the edging has 2 more. Every side of the foundation has 2 more.',
    ],
    ['stitch-missed', { round: 'edging', side: 2, place: 9 }, 'Side 3 of the edging has 61, not 62.'],
    ['corner-forgotten', { round: 'edging', corner: 1 }, 'The edging has 3 corners, not 4.'],
    ['corner-chains', { round: 'edging', corner: 1, count: 3 }, 'Corner 2 of the edging has 3, not 2.'],
  ] as const)('%s is read off its making', (kind, where, says) => {
    expect(sayGives(explanationOf(plan, [actOf(kind, where)]), plan, {})).toBe(says);
  });

  test('the join is told only where somebody looked at it', () => {
    const explanation = explanationOf(plan, []);
    explanation.gives.join = { drift: [-2, -2, -2, -2], leftOver: -3 };
    expect(sayGives(explanation, plan, {})).toBe('');
    expect(sayGives(explanation, plan, { join: { leftOver: -3 } })).toBe(
      'Every corner comes 2 early. 3 stitches are left over on the front.',
    );
  });
});

describe('an answer on a button', () => {
  const at = (look: LookAt, round: Look['round'] = 'edging'): Look => ({ key: '', look, round });
  test.each([
    ['side', 38, '38'],
    ['corner-place', 0, 'in its place'],
    ['corner-place', -2, '2 early'],
    ['corner-place', 1, '1 late'],
    ['join-start', -2, '2 too soon'],
    ['join-side', 1, '1 side off'],
    ['join-corner', 'passed over', 'missed'],
    ['closing', 'as asked', 'as in the recipe'],
    ['closing', 'start-counted + closing-forgotten', 'the first stitch missed, the last place worked too'],
    ['along', 'stitch-missed 2', '2 missed'],
    ['along', 'stitch-doubled 1', '1 too many in 1 place'],
    ['side', 'not there', 'not there'],
  ] as const)('%s %s is "%s"', (look, found, says) => {
    expect(sayFound(at(look), found, uk)).toBe(says);
  });

  test('speaks US terms', () => {
    expect(sayFound(at('along'), 'stitch-missed 2', us)).toBe('2 skipped');
  });

  test('is never a code, whatever can be found on a panel', () => {
    const plan = planOf([62, 38, 62, 38]);
    const { foundation, edgings } = explanationOf(plan, []).gives;
    const gives = { foundation, edgings, front: plan.edge.sides };
    const told = causesOn(plan).map((cause) => ({ mishaps: cause.mishaps, causes: [cause], gives }));
    const found = questionsOf(plan, true).flatMap((question) =>
      told.map((one) => ({ question, found: question.expects(one) })),
    );
    expect(found.length).toBeGreaterThan(100);
    for (const { question, found: answer } of found) {
      expect(sayFound(question, answer, uk), `${answer}`).toMatch(/^[a-z0-9][a-z0-9 ,]*$/);
      expect(sayTell({ ...question, expect: answer, asRecipe: 2 }, plan, uk)).toMatch(/\.$/);
    }
  });

  test('tells the recipe’s own number apart from another', () => {
    const plan = planOf([62, 38, 62, 38]);
    const look: Look = { key: '', look: 'side', round: 'foundation', side: 1 };
    expect(sayTell({ ...look, expect: 38, asRecipe: 36 }, plan, uk)).toBe(
      'Count side 2 of the foundation. 38 means this, 36 does not.',
    );
    expect(sayTell({ ...look, expect: 36, asRecipe: 36 }, plan, uk)).toBe(
      'Count side 2 of the foundation. It is 36, as in the recipe.',
    );
  });
});

test('every story is one a beginner could tell, in numbers first', () => {
  const seen = SIGHT_IDS.map((id) => saySight(id, 0, 1));
  const told = [...STORY_IDS.map(sayStory), ...seen, ...SIGHT_IDS.map((id) => saySight(id, 1, 2))];
  expect(new Set([...STORY_IDS.map(sayStory), ...seen]).size).toBe(STORY_IDS.length + SIGHT_IDS.length);
  for (const story of told) expect(story).toMatch(/^[A-Z0-9].*\.$/);
});
