/** How problems are said: in plain words, with the field's own name, and numbers that can be typed back. */
import { describe, expect, it } from 'vitest';
import type { AppProblem, AppProblemCode } from '../../src/state/problem.ts';
import { example, standardSettings } from '../../src/state/project.ts';
import { openStore } from '../../src/state/store.ts';
import { sayProblem } from '../../src/words/catalogue.ts';
import { english } from '../../src/words/english/index.ts';
import { sayInApp } from '../../src/words/problems-view.ts';
import { speakerOf } from '../../src/words/speaker.ts';
import { wordsOnlyIn } from '../../src/words/terms.ts';

const uk = speakerOf({ dialect: 'uk' });
const us = speakerOf({ dialect: 'us' });

/** One problem of each code, and its sentence. */
const said: {
  [Code in AppProblemCode]: [params: Extract<AppProblem, { code: Code }>['params'], says: string];
} = {
  empty: [{}, 'Enter side 3'],
  'not-a-number': [{ like: 58 }, 'Side 3 must be a number, like 58'],
  'not-whole': [{ like: 58 }, 'Side 3 must be a whole number, like 58'],
  grouped: [{ like: 100000 }, 'Side 3 must be typed without a comma or a point, like 100000'],
  several: [{ like: 58 }, 'Side 3 must be one number, like 58'],
  'too-low': [{ min: 1 }, 'Side 3 must be 1 or more'],
  'too-high': [{ max: 100_000 }, 'Side 3 must be 100000 or fewer'],
  between: [{ min: 2, max: 30 }, 'Side 3 must be between 2 and 30'],
  'corners-take-all': [
    { min: 5, taken: 4 },
    'Side 3 must be 5 or more: its count takes in 4 from the corners',
  ],
  'corner-count': [{ corners: 4 }, 'Side 3 must be given once for every side: 4 in all'],
  'no-corners': [
    {},
    'A panel without corners has 1 side: add the counts up, or say how its corners are made',
  ],
  'corner-must-match': [
    { corner: 1, size: 2 },
    "The last edging round's corners must match the front's: make corner 2 of size 2, as on the front",
  ],
  'no-foundation-stitch': [
    { stitches: 20, growth: 24, rounds: 12, fitting: 9, cornered: true },
    'Side 3 has 20 stitches and the 12 edging rounds add 24, which leaves none for the foundation: 9 edging rounds of this kind would fit',
  ],
  'increase-with-corners': [
    {},
    'Side 3 must be 0: a round with corners grows at its corners, and spread stitches are for round panels',
  ],
  'increase-too-big': [
    { adds: 5, to: 5, max: 4 },
    'Side 3 must be 4 or fewer, one to each stitch but the first: 5 are added to 5',
  ],
  'start-side-too-short': [
    {},
    'The front side to start against leaves 1 foundation stitch, and the starting chains and the closing would make 2: begin on a longer side, or let only one of them count',
  ],
  'lead-too-long': [{ max: 57 }, 'Side 3 must be 57 or fewer: that is all this side has to work'],
  mishaps: [{ max: 1000 }, 'Give between 0 and 1000 mishaps'],
  'mishap-sum': [{ max: 2_400_000 }, 'The mishaps must add 2,400,000 stitches or fewer in all'],
  'mishap-kind': [{ mishap: 0 }, 'Mishap 1: choose one that is known'],
  'mishap-round': [
    { mishap: 1, rounds: ['foundation', 'edging'] },
    'Mishap 2: it can happen in the foundation or the edging only',
  ],
  'mishap-edging': [{ mishap: 0 }, 'Mishap 1: it names an edging round that is not there'],
  'mishap-side': [{ mishap: 0, sides: 4 }, 'Mishap 1: its side must be between 1 and 4'],
  'mishap-corner': [{ mishap: 0, corners: 0 }, 'Mishap 1: there are no corners here'],
  'mishap-place': [{ mishap: 0 }, 'Mishap 1: its stitch must be on the side'],
  'mishap-count': [{ mishap: 0 }, 'Mishap 1: its number must be a whole number'],
  'mishap-end': [{ mishap: 0 }, 'Mishap 1: say whether it was before or after the corner'],
  'no-kind': [{}, 'Choose a mishap'],
  'as-planned': [{ count: 2 }, '2 is what the recipe asks for'],
  'back-empty': [{}, 'There is nothing to join: one of the rounds has no stitches'],
  'printed-side': [
    { round: 1, given: 9, printed: 8 },
    'Round 2: the recipe gives 9 to a side where 8 is printed',
  ],
  'printed-total': [{ round: 1, given: 68, printed: 64 }, 'Round 2: the recipe gives 68 where 64 is printed'],
  'rounds-named': [{ named: 5, printed: 6, of: 'totals' }, '5 rounds are named, 6 totals are printed'],
  'printed-rounds': [{ of: 'sides', max: 200 }, 'Give the counts of 200 rounds or fewer'],
  'first-uneven': [{ total: 13, sides: 4 }, 'Round 1: 13 does not make 4 equal sides'],
};

const cases = Object.entries(said).map(([code, [params, says]]): [string, AppProblem, string] => [
  code,
  { at: 'side.2', code, params } as AppProblem,
  says,
]);

describe.each(cases)('%s', (_, problem, says) => {
  it('is said in plain words', () => {
    expect(sayProblem(problem, uk, 'side 3')).toBe(says);
    expect(says).not.toMatch(
      /please|sorry|valid|oops|forbidden|illegal|required|error|fail|!|undefined|NaN|null/i,
    );
    expect(says).toMatch(/^[A-Z0-9].*[^.]$/);
  });

  it('mixes no words of the other terms', () => {
    const other = new Set(wordsOnlyIn('uk'));
    const words = sayProblem(problem, us, 'side 3')
      .toLowerCase()
      .split(/[^a-z]+/);
    expect(words.filter((word) => other.has(word) || other.has(word.replace(/s$/, '')))).toEqual([]);
  });
});

it('has a sentence for every code, and no other', () => {
  expect(Object.keys(english.problems).sort()).toEqual(Object.keys(said).sort());
});

it('counts one and many by the rules of the language', () => {
  const leaves = (stitches: number, fitting: number, rounds: number): string =>
    sayProblem(
      {
        at: 'side.0',
        code: 'no-foundation-stitch',
        params: { stitches, growth: 2, rounds, fitting, cornered: true },
      },
      uk,
      'side 1',
    );
  expect(leaves(1, 0, 1)).toBe(
    'Side 1 has 1 stitch and the edging round adds 2, which leaves none for the foundation: with smaller corners it would fit, or with 3 stitches on this side',
  );
  expect(leaves(2, 1, 2)).toContain('1 edging round of this kind would fit');
});

describe('in the app', () => {
  const tell = (texts: Record<string, string>, project = {}): string[] => {
    const store = openStore({
      project: example,
      settings: standardSettings,
      tab: 'edge',
      place: 0,
      answered: [],
    });
    store.send({ type: 'CHANGE', project });
    for (const [field, text] of Object.entries(texts)) store.send({ type: 'TYPE', field, text });
    const snapshot = store.snapshot();
    store.stop();
    return snapshot.problems.map((problem) => sayInApp(problem, snapshot));
  };

  it.each<[name: string, texts: Record<string, string>, project: object, says: string]>([
    [
      'a round panel by its own limit',
      { 'side.0': '100001' },
      { sideCount: 0 },
      'Stitches in the round must be 100000 or fewer',
    ],
    [
      'what both corners take in',
      { 'side.0': '100005' },
      { counted: 'both-corners' },
      'Side 1 must be 100004 or fewer',
    ],
    [
      'a number of any length',
      { 'side.0': '9'.repeat(400) },
      { counted: 'stitches-only' },
      'Side 1 must be 100000 or fewer',
    ],
    [
      'a corner that the join comes to by the name of its field',
      { 'join-side': '3', 'seen.drift.0': 'x' },
      {},
      'Front corner 3 in the join must be a number, like 2',
    ],
    [
      'how far a corner is off without a sign',
      { 'seen.drift.1': '-100001' },
      {},
      'Front corner 2 in the join must be 100000 or fewer',
    ],
    [
      'a side of the foundation by its piece',
      { 'worked.foundation.1': '-1' },
      {},
      'Foundation side 2 must be 0 or more',
    ],
    [
      'stitches before the corner in words of either terms',
      { lead: '99999' },
      {},
      'Stitches before the first corner must be 59 or fewer: that is all this side has to work',
    ],
  ])('tells %s', (_, texts, project, says) => {
    expect(tell(texts, project)).toEqual([says]);
  });
});
