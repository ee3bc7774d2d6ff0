import { describe, expect, test } from 'vitest';
import {
  type Choices,
  type EdgeInput,
  type Mishap,
  planBack,
  readEdge,
  type Step,
  steps,
} from '../../core/index.ts';
import type { Dialect } from '../../src/state/snapshot.ts';
import { term, wordsOnlyIn } from '../../src/words/terms.ts';
import { type Said, sayNext, sayStep } from '../../src/words/walk/step.ts';
import type { Told } from '../../src/words/walk/telling.ts';
import type { Speech } from '../../src/words/words.ts';

const two = { made: 'chain', size: 2 } as const;
const one = { made: 'stitch', size: 1 } as const;

function making(input: EdgeInput, choices: Choices = {}, mishaps: Mishap[] = []): Told {
  const edge = readEdge(input);
  if (!edge.ok) throw new Error(JSON.stringify(edge.problems));
  const plan = planBack(edge.value, choices);
  if (!plan.ok) throw new Error(JSON.stringify(plan.problems));
  return { plan: plan.value, steps: steps(plan.value, mishaps), acts: mishaps };
}

const square = (choices: Choices = {}, mishaps: Mishap[] = []): Told =>
  making({ sides: [12, 12, 12, 12], corner: two, counted: 'stitches-only' }, choices, mishaps);

const MAKINGS: [name: string, making: Told][] = [
  ['a square', square()],
  ['a rectangle', making({ sides: [18, 9, 18, 9], corner: two, counted: 'one-corner' })],
  [
    'three stitches in each corner',
    making({ sides: [9, 9, 9, 9], corner: one, counted: 'stitches-only' }, { foundationCorner: one }),
  ],
  ['a round panel', making({ sides: [40], corner: [], counted: 'stitches-only' })],
  [
    'one chain in each corner',
    making({ sides: [7, 7, 7], corner: { made: 'chain', size: 1 }, counted: 'stitches-only' }),
  ],
  [
    'two edging rounds, an uneven arm',
    square({
      edgings: [
        { arm: [2, 1], corner: two },
        { arm: 1, corner: two },
      ],
    }),
  ],
  [
    'closings that add nothing, chains that count',
    square({ foundationStart: { counts: 1 }, foundationClosing: { adds: 0 }, edgingClosing: { adds: 0 } }),
  ],
  [
    'corners gone wrong',
    square({}, [
      { kind: 'corner-chains', round: 'foundation', corner: 0, count: 5 },
      { kind: 'hidden-missed', round: 'edging', corner: 1 },
      { kind: 'arm-missed', round: 'edging', corner: 2, end: 'before' },
    ]),
  ],
  ['a bag with side 3 open', square({ open: 2 })],
  ['a corner forgotten', square({}, [{ kind: 'corner-forgotten', round: 'foundation', corner: 2 }])],
  ['a stitch missed', square({}, [{ kind: 'stitch-missed', round: 'foundation', side: 1, place: 3 }])],
];

const speech = (dialect: Dialect, hand: Speech['hand'] = 'right'): Speech => ({ dialect, hand, units: 'cm' });

const everyStep = (told: Told): Step[] =>
  Array.from({ length: told.steps.length }, (_, i) => told.steps.at(i));

const sentences = (said: Said): string[] =>
  [said.act, said.where, said.check, said.caution, said.ask].filter((text) => text !== undefined);

const all = (told: Told, spoken: Speech): string[] =>
  everyStep(told).flatMap((step) => sentences(sayStep(step, told, spoken)));

const holds = (text: string, word: string): boolean => new RegExp(`\\b${word}\\b`, 'i').test(text);

/** The act of the first step that fits. */
function act(told: Told, fits: (step: Step) => boolean, spoken = speech('uk')): string {
  const step = everyStep(told).find(fits);
  if (step === undefined) throw new Error('no such step');
  return sayStep(step, told, spoken).act;
}

describe.each(MAKINGS)('%s', (_, told) => {
  test.each(['uk', 'us'] as const)('acts in %s terms have 12 words at most', (dialect) => {
    const long = everyStep(told)
      .map((step) => sayStep(step, told, speech(dialect)).act)
      .filter((text) => text.split(/\s+/).length > 12);
    expect(long).toEqual([]);
  });

  test.each([
    ['uk', 'us'],
    ['us', 'uk'],
  ] as const)('a sentence in %s terms holds no word of %s terms', (dialect, other) => {
    const foreign = wordsOnlyIn(other);
    const mixed = all(told, speech(dialect)).flatMap((text) => foreign.filter((word) => holds(text, word)));
    expect(mixed).toEqual([]);
  });

  test('a word that both dialects have is only used for its own stitch', () => {
    for (const step of everyStep(told)) {
      const us = sentences(sayStep(step, told, speech('us'))).join(' ');
      const uk = sentences(sayStep(step, told, speech('uk'))).join(' ');
      if (step.stage === 'edging') expect(us, us).not.toContain('double crochet');
      if (step.stage === 'foundation') expect(uk, uk).not.toContain('double crochet');
      expect(holds(us, 'treble') || holds(us, 'dc') || holds(us, 'tr')).toBe(false);
    }
  });

  test('sentences are plain: no exclamation mark, no software word, a full stop where one is due', () => {
    for (const step of everyStep(told)) {
      const said = sayStep(step, told, speech('uk'));
      expect(said.act).toMatch(/^[A-Z0-9].*\.$/);
      if (said.check !== undefined) expect(said.check).toMatch(/^[A-Z0-9].*\.$/);
      if (said.caution !== undefined) expect(said.caution).toMatch(/^[A-Z].*\.$/);
      if (said.ask !== undefined) expect(said.ask).toMatch(/^[A-Z].*\?$/);
      expect(said.where).not.toMatch(/[.]$/);
      expect(sentences(said).join(' ')).not.toMatch(
        /!|\b(please|sorry|invalid|oops|required|undefined|NaN)\b/i,
      );
    }
  });

  test('a step that asks says a question, and no other does', () => {
    for (const step of everyStep(told)) {
      expect(sayStep(step, told, speech('uk')).ask !== undefined).toBe(step.asks !== undefined);
    }
  });
});

describe('the acts', () => {
  const plain = square();
  const rounded = MAKINGS[3]?.[1] as Told;

  test.each<[string, Told, (step: Step) => boolean, string]>([
    [
      'the first treble',
      plain,
      (s) => s.target.loop === 'first-chain',
      '1 foundation treble in the 4th chain from the hook.',
    ],
    [
      'a treble',
      plain,
      (s) => s.kind === 'foundation-treble' && s.place === 3,
      "1 foundation treble in the chain at the last one's foot.",
    ],
    [
      'the treble after a corner',
      plain,
      (s) => s.kind === 'foundation-treble' && s.side === 1,
      '1 foundation treble in the last base chain, not the post.',
    ],
    [
      'a corner chain',
      plain,
      (s) => s.kind === 'corner-chain' && s.place === 1,
      'Chain 1: second of 2 for the corner.',
    ],
    [
      'the closing',
      plain,
      (s) => s.kind === 'close-tops',
      'Thread the cut end: under both loops of the first stitch.',
    ],
    [
      'before the corner',
      plain,
      (s) => s.target.loop === 'corner-chain',
      '1 double crochet in the first chain of the corner below.',
    ],
    [
      'the hidden stitch',
      plain,
      (s) => s.stage === 'edging' && s.side === 1 && s.place === 1,
      '1 double crochet in the hidden first stitch, back loop.',
    ],
    [
      'an edging stitch',
      plain,
      (s) => s.stage === 'edging' && s.side === 1 && s.place === 4,
      '1 double crochet in the next back loop.',
    ],
    [
      'a pair',
      plain,
      (s) => s.kind === 'slip-stitch' && s.corner < 0,
      "1 slip stitch through the next pair's inner 2 loops.",
    ],
    [
      'a corner pair',
      plain,
      (s) => s.kind === 'slip-stitch' && s.corner >= 0,
      '1 slip stitch through the first chain you meet on each piece.',
    ],
    ['pins on a round panel', rounded, (s) => s.kind === 'cloth-centres', 'Pin the 4 quarters first.'],
  ])('%s', (_, told, fits, words) => {
    expect(act(told, fits)).toBe(words);
  });

  test('the second arm goes in the second chain', () => {
    const arms = everyStep(plain).filter(
      (step) => step.target.loop === 'corner-chain' && step.stage === 'edging',
    );
    const said = arms.slice(0, 2).map((step) => sayStep(step, plain, speech('us')).act);
    expect(said).toEqual([
      '1 single crochet in the first chain of the corner below.',
      '1 single crochet in the second chain of the corner below.',
    ]);
  });

  test('arms beside a corner stitch say so, and the stitch after them is the hidden one', () => {
    const told = MAKINGS[2]?.[1] as Told;
    const corner = everyStep(told).find((step) => step.kind === 'corner-stitch' && step.stage === 'edging');
    const around = [-1, 1, 2].map(
      (by) => sayStep(told.steps.at((corner?.index ?? 0) + by), told, speech('uk')).act,
    );
    expect(around).toEqual([
      '1 double crochet in the corner stitch.',
      '1 double crochet in the corner stitch.',
      '1 double crochet in the hidden first stitch, back loop.',
    ]);
  });

  test('the closing says what it does to the count', () => {
    const closing = (told: Told): string | undefined =>
      sayStep(everyStep(told).find((step) => step.kind === 'close-tops') as Step, told, speech('uk')).check;
    const into = 'Then down into the middle of the last V.';
    expect(closing(plain)).toBe(
      `${into} This makes the ${plain.plan.foundation.sides[0]}th stitch of side 1.`,
    );
    expect(closing(rounded)).toBe(`${into} This makes the 40th stitch.`);
    expect(closing(MAKINGS[6]?.[1] as Told)).toBe(
      `${into} It lies over the starting chains and makes none of its own.`,
    );
  });

  // Through the first stitch shows one extra, through the second or over a starting chain none (read, three tutorials).
  test.each([
    [1, 0, 'Thread the cut end: under both loops of the first stitch.'],
    [0, 0, 'Thread the cut end: under both loops of the second stitch.'],
    [1, 1, 'Thread the cut end: under both loops of the top starting chain.'],
    [0, 1, 'Thread the cut end: under both loops of the first treble.'],
  ] as const)('closing that adds %i, chains that count as %i: %s', (adds, counts, words) => {
    const told = square({ foundationClosing: { adds }, foundationStart: { counts } });
    expect(act(told, (s) => s.kind === 'close-tops')).toBe(words);
  });

  test('before the twist is asked about the yarn is cut and both ends are taped down', () => {
    const asked = everyStep(plain).findIndex(({ kind }) => kind === 'check-twist');
    const before = [2, 1].map((by) => sayStep(plain.steps.at(asked - by), plain, speech('uk')).act);
    expect(before).toEqual([
      "Cut the yarn a hand's length from the hook; draw it through.",
      'Tape both ends to the table, all trebles to one side.',
    ]);
    const { answers } = sayStep(plain.steps.at(asked), plain, speech('uk'));
    expect(answers?.no).toBe('No, it is twisted');
    expect(answers?.how).toMatch(/^Lift the tape/);
  });

  test('the yarn of the edging goes where the foundation began, and the number is counted from the corner', () => {
    const { foundation, choices } = plain.plan;
    const check = (told: Told): string | undefined =>
      sayStep(everyStep(told).find(({ kind }) => kind === 'attach') as Step, told, speech('uk')).check;
    expect([foundation.tail, choices.foundationClosing.adds]).toEqual([4, 1]);
    expect(check(plain)).toBe('Of its top 2 loops the one away from you. It is stitch 6 of side 1.');
    expect(check(rounded)).toBe(
      'Of its top 2 loops the one away from you. It is stitch 1; any other will do.',
    );
  });

  test('which corner the join is counted from, and what counts as 1', () => {
    const check = (told: Told): string | undefined =>
      sayStep(everyStep(told).find(({ kind }) => kind === 'join-marker') as Step, told, speech('uk')).check;
    const from = (start: number): Told => square({ joinStart: { side: start, fromCorner: 4 } });
    // The chain is counted, so 4 in is stitch 3.
    expect(check(from(0))).toBe(
      'Its nearest chain is 1: count from corner 4 into front side 1. That is its stitch 3. On the back, mark the one behind it.',
    );
    expect(check(from(2))).toBe(
      'Its nearest chain is 1: count from corner 2 into front side 3. That is its stitch 3. On the back, mark the one behind it.',
    );
    expect(check(MAKINGS[2]?.[1] as Told)).toContain('The corner stitch is 1: count from');
  });

  test('the caution about needles stands once a stage', () => {
    for (const stage of ['foundation-closing', 'edging-closing', 'cloth', 'join-closing']) {
      const cautions = everyStep(plain)
        .filter((step) => step.stage === stage)
        .map((step) => sayStep(step, plain, speech('uk')).caution ?? '');
      expect(
        cautions.filter((text) => /needle/.test(text) && /children/.test(text)),
        stage,
      ).toHaveLength(1);
    }
  });

  test('the button says stitch only where a stitch comes next', () => {
    const next = (fits: (step: Step) => boolean): string =>
      sayNext(everyStep(plain).find(fits) as Step, plain);
    expect(next((s) => s.kind === 'foundation-treble')).toBe('Next stitch');
    expect(next((s) => s.kind === 'cloth-pins')).toBe('Next');
    expect(next((s) => s.kind === 'long-loop')).toBe('Next');
    expect(next((s) => s.kind === 'ends-inside')).toBe('Next');
    expect(next((s) => s.kind === 'take-loop')).toBe('Next stitch');
  });

  test('pins come out before the strip is turned', () => {
    const cloth = everyStep(plain).flatMap(({ stage, kind }) => (stage === 'cloth' ? [kind] : []));
    expect(cloth.slice(-3)).toEqual(['sew-fast', 'pins-out', 'turn-strip']);
  });

  test('only direction words change with the hand', () => {
    const right = all(plain, speech('uk', 'right'));
    const left = all(plain, speech('uk', 'left'));
    const differing = right.filter((text, i) => text !== left[i]);
    expect(differing.length).toBeGreaterThan(0);
    expect(right.map((text) => text.replace(/\bleft\b/g, 'right'))).toEqual(
      left.map((text) => text.replace(/\bleft\b/g, 'right')),
    );
  });

  test('cushion and pad in UK terms, pillow and pillow form in US terms', () => {
    const pad = everyStep(plain).find((step) => step.kind === 'pad-in') as Step;
    expect(sayStep(pad, plain, speech('uk')).act).toContain(term('cushion-pad', 'uk'));
    expect(sayStep(pad, plain, speech('us')).act).toContain(term('cushion-pad', 'us'));
    expect(sayStep(pad, plain, speech('us')).caution).toBe(
      "Keep the finished pillow out of a baby's sleeping place.",
    );
  });
});

describe('corners on their way', () => {
  const speech: Speech = { dialect: 'uk', hand: 'right', units: 'cm' };
  const acts = (input: Partial<EdgeInput>, choices: Choices = {}): [string, string | undefined][] => {
    const told = making({ sides: [8, 8, 8, 8], corner: two, counted: 'stitches-only', ...input }, choices);
    const all = Array.from({ length: told.steps.length }, (_, i) => told.steps.at(i));
    const corner = all.filter(
      ({ stage, side, place, of }) =>
        stage === 'edging' && ((side === 0 && place >= of - 1) || (side === 1 && place < 2)),
    );
    return corner
      .filter(({ node }) => node >= 2 && node < 14)
      .map((step) => [sayStep(step, told, speech).act, sayStep(step, told, speech).check]);
  };

  test('of two chains, of one, of a stitch, of none: each is said as it is', () => {
    const hidden = [
      '1 double crochet in the hidden first stitch, back loop.',
      'Look for it tucked against the corner.',
    ];
    const first = '1 double crochet in the first chain of the corner below.';
    const second = '1 double crochet in the second chain of the corner below.';
    expect(acts({})).toEqual([
      [first, 'The corner chains come next.'],
      [second, 'The chains you just made lie before it.'],
      hidden,
    ]);
    expect(acts({ corner: { made: 'chain', size: 1 } })).toEqual([
      [first, 'The corner chain comes next.'],
      [second, 'The chain you just made lies before it.'],
      hidden,
    ]);
    expect(acts({ corner: one })).toEqual([
      [first, 'The corner stitch comes next.'],
      [second, 'The corner stitch stands before it.'],
      hidden,
    ]);
    expect(acts({ corner: { made: 'chain', size: 0 } })).toEqual([
      [first, undefined],
      [second, undefined],
      hidden,
    ]);
  });

  test('the foundation says chains where it makes chains, whatever the front has in its corners', () => {
    const told = making({ sides: [8, 8, 8, 8], corner: one, counted: 'stitches-only' });
    const all = Array.from({ length: told.steps.length }, (_, i) => told.steps.at(i));
    const where = all
      .filter(({ stage, corner }) => stage === 'foundation' && corner === 0)
      .map((step) => sayStep(step, told, speech).where);
    expect(where).toEqual(['Foundation · corner 1 · chain 1 of 2', 'Foundation · corner 1 · chain 2 of 2']);
  });
});

test('a round panel is told of no corner, and of no side but right and wrong', () => {
  const told = making({ sides: [40], corner: [], counted: 'stitches-only' });
  for (let i = 0; i < told.steps.length; i++) {
    const {
      act,
      check = '',
      caution = '',
      ask = '',
      where,
    } = sayStep(told.steps.at(i), told, {
      dialect: 'uk',
      hand: 'right',
      units: 'cm',
    });
    const all = [act, check, caution, ask, where].join(' ');
    expect(all).not.toMatch(/corner/i);
    expect(all.replace(/\b(right|wrong|one|either) sides?\b/g, '').replace(/side by side/, '')).not.toMatch(
      /\bsides?\b/,
    );
  }
});

describe('where', () => {
  const told = making({ sides: [60, 40, 60, 40], corner: two, counted: 'stitches-only' });
  const where = (fits: (step: Step) => boolean): string =>
    sayStep(everyStep(told).find(fits) as Step, told, speech('uk')).where;

  test.each<[string, (step: Step) => boolean]>([
    [
      'Edging · side 2 · stitch 31 of 40 · 9 to the next marker',
      (s) => s.stage === 'edging' && s.side === 1 && s.place === 30,
    ],
    [
      'Edging · side 2 · stitch 40 of 40 · marker here',
      (s) => s.stage === 'edging' && s.side === 1 && s.place === 39,
    ],
    [
      'Foundation · side 1, its start · stitch 1 of 29 · 9 to the next marker',
      (s) => s.kind === 'foundation-treble',
    ],
    [
      'Foundation · corner 1 · chain 2 of 2',
      (s) => s.stage === 'foundation' && s.corner === 0 && s.place === 1,
    ],
    [
      'Foundation · side 1, its rest · stitch 25 of 28 · 3 to the closing',
      (s) => s.stage === 'foundation' && s.side === 0 && s.node > s.of && s.place === 24,
    ],
    [
      'Join · side 1 · pair 1 of 60 · 1 to the last hole',
      (s) => s.kind === 'slip-stitch' && s.side === 0 && s.corner < 0 && s.place === 0,
    ],
    ['Join · corner 1 · pair 1 of 2', (s) => s.kind === 'slip-stitch' && s.corner === 0],
    ['Closing the foundation · side 1', (s) => s.kind === 'close-tops'],
    ['Cloth', (s) => s.kind === 'sew-out'],
    ['Finished', (s) => s.kind === 'finished'],
  ])('%s', (words, fits) => {
    expect(where(fits)).toBe(words);
  });

  test('with several edging rounds the stage says which', () => {
    const several = MAKINGS[5]?.[1] as Told;
    const second = everyStep(several).find((step) => step.stage === 'edging' && step.edging === 1) as Step;
    expect(sayStep(second, several, speech('uk')).where).toMatch(/^Edging 2 of 2/);
  });

  test('a step that carries out a mishap says so', () => {
    const mishap = MAKINGS.at(-1)?.[1] as Told;
    const step = everyStep(mishap).find((candidate) => candidate.mishap !== undefined) as Step;
    expect(sayStep(step, mishap, speech('uk')).check).toBe(
      'The recipe does not ask for this: it is a mishap.',
    );
  });
});
