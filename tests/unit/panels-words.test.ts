import { describe, expect, test } from 'vitest';
import {
  type Choices,
  type EdgeInput,
  type Manner,
  type Mishap,
  pair,
  planBack,
  type Result,
  readEdge,
  work,
} from '../../core/index.ts';
import { sayRecipe, saySums } from '../../src/words/recipe.ts';
import { sayVerdict } from '../../src/words/verdict.ts';
import type { Speech } from '../../src/words/words.ts';

const UK: Speech = { dialect: 'uk', hand: 'right', units: 'cm' };
const US: Speech = { ...UK, dialect: 'us' };

const given = <T>(result: Result<T>): T => {
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
};

const chains = { made: 'chain', size: 2 } as const;

function made(
  sides: number[],
  mishaps: Mishap[] = [],
  choices: Choices = {},
  corner: EdgeInput['corner'] = chains,
  manner: Manner = 'stitch-by-stitch',
) {
  const edge = given(readEdge({ sides, corner, counted: 'one-corner' }));
  const plan = given(planBack(edge, choices));
  const worked = work(plan, mishaps);
  const back = worked.edgings.at(-1)!;
  const pairing = pair(edge, back, { start: worked.join, manner });
  return { edge, plan, pairing };
}

describe('the recipe', () => {
  test('58, 36, 58, 36 with two chains in each corner: 27, 32, 54, 32, 26, and the closing makes the 54th', () => {
    const said = sayRecipe(made([58, 36, 58, 36]), UK);
    expect(said.legs.map(({ count, times }) => [count, times])).toEqual([
      [27, 1],
      [32, 1],
      [54, 1],
      [32, 1],
      [26, 1],
    ]);
    expect(said.legs.map(({ corner }) => !!corner)).toEqual([true, true, true, true, false]);
    expect(said.legs[0]?.unit).toBe('ftr');
    expect(said.closing).toBe('The closing makes the 54th stitch of this side.');
    expect(said.edgings[0]?.lines).toContain('1 dc, 2 ch, 1 dc into each corner.');
    expect(said.edgings[0]?.legs.map(({ count }) => count)).toEqual([56, 34, 56, 34]);
    expect(said.edgings[0]?.lines).toContain(
      'Each number above takes in 1 dc in the corner before it and 1 dc in the corner after it.',
    );
    expect(said.parts).toBe(
      "The first 27 and the last 26 are one side, side 1: with the closing's 1 it holds 54.",
    );
    expect(said.begin).toEqual([
      'Chain 4. The first will hold your first treble; the other 3 count as none.',
      'Put a marker in the first stitch and after every 10, counting anew after each corner.',
    ]);
    expect(said.join).toContain('Begin on front side 1, 4 in from corner 4: its nearest chain is 1.');
    expect(said.join).toContain('Leave the last side open, put the cushion pad in, pin it, and go on.');
    expect(said.why).toBe('');
  });

  test('a front with 3 chains in its corners gets 2 on the foundation, and is told why', () => {
    const said = sayRecipe(made([58, 36, 58, 36], [], {}, { made: 'chain', size: 3 }), UK);
    expect(said.corner).toBe('corner = 2 ch');
    expect(said.edgings[0]?.lines).toContain('1 dc, 3 ch, 1 dc into each corner.');
    expect(said.why).toBe(
      "The front's corners have 3 ch. The edging makes the same; down here 2 ch are enough to turn and to work into.",
    );
  });

  test('in US terms no UK word is left', () => {
    const said = sayRecipe(made([58, 36, 58, 36]), US);
    expect(said.legs[0]?.unit).toBe('fdc');
    expect(said.edgings[0]?.lines).toContain('1 sc in the back loop of each double crochet.');
    expect(JSON.stringify(said)).not.toMatch(/\btr(eble)?\b|ftr/);
  });

  test('equal sides are said once, with how often', () => {
    const said = sayRecipe(made([40, 40, 40, 40, 40, 40]), UK);
    expect(said.legs.map(({ count, times }) => [count, times])).toEqual([
      [18, 1],
      [36, 5],
      [17, 1],
    ]);
    const all = said.legs.reduce((sum, { count, times }) => sum + count * times, 0);
    expect(all + 1).toBe(6 * 36);
  });

  test('a closing that adds none leaves the whole side to be worked', () => {
    const said = sayRecipe(made([58, 36, 58, 36], [], { foundationClosing: { adds: 0 } }), UK);
    expect((said.legs[0]?.count ?? 0) + (said.legs.at(-1)?.count ?? 0)).toBe(54);
    expect(said.closing).toBe('The closing lies over the first stitch and adds none.');
  });

  test('corners made of one stitch are worked as such', () => {
    const said = sayRecipe(made([30, 30, 30, 30], [], {}, { made: 'stitch', size: 1 }), UK);
    expect(said.edgings[0]?.lines).toContain('3 dc into each corner: the middle one is the corner.');
  });
});

describe('the sums', () => {
  test('from what was counted to what is worked', () => {
    const making = made([58, 36, 58, 36]);
    const [first] = saySums(making, [58, 36, 58, 36]);
    expect(first?.whose).toBe('Back side 1, facing front side 1');
    expect(first?.steps).toEqual([
      '58 − 2 in the corners = 56 stitches',
      '56 − 2 worked into the corners = 54',
      '27 + 26 + 1 closing = 54',
    ]);
  });

  test('every sum comes out', () => {
    for (const sides of [
      [58, 36, 58, 36],
      [21, 22, 23],
      [40, 41, 42, 43, 44],
    ])
      for (const { steps } of saySums(made(sides), sides))
        for (const step of steps) {
          const [left, right] = step.split(' = ');
          const numbers = (left ?? '').match(/[−+]?\s*\d+/g) ?? [];
          const sum = numbers.reduce(
            (all, number) => all + Number(number.replace('−', '-').replaceAll(/[+\s]/g, '')),
            0,
          );
          expect(sum).toBe(Number.parseInt(right ?? '', 10));
        }
  });
});

describe('the verdict', () => {
  test('a back as planned meets, and the number says so', () => {
    const said = sayVerdict(made([58, 36, 58, 36]), UK);
    expect(said).toEqual({ kind: 'meets', head: 'All 188 meet.', body: '', count: '188 meet' });
  });

  test('a missed stitch is told with its side', () => {
    const said = sayVerdict(
      made([58, 36, 58, 36], [{ kind: 'stitch-missed', round: 'edging', side: 2, place: 40 }]),
      UK,
    );
    expect(said.kind).not.toBe('meets');
    expect(said.head).toBe('Back side 3 is 1 stitch short.');
    expect(said.count).toMatch(/^\d+ of 188 meet$/);
  });

  test('a stitch that can be eased in does not meet all the same, and the sentence says both', () => {
    const short: Mishap[] = [{ kind: 'stitch-missed', round: 'edging', side: 2, place: 40 }];
    const said = sayVerdict(made([58, 36, 58, 36], short, {}, chains, 'corner-to-corner'), UK);
    expect(said.kind).toBe('meets-with-easing');
    expect(said.head).toBe('Back side 3 is 1 stitch short.');
    expect(said.body).toMatch(/It meets with easing\.$/);
    expect(said.count).toBe('187 of 188 meet');
  });

  test('no sentence shouts, excuses itself or says a word of software', () => {
    const cases: Mishap[] = [
      { kind: 'twisted', round: 'foundation' },
      { kind: 'order-not-mirrored', round: 'plan' },
      { kind: 'corner-chains', round: 'edging', corner: 1, count: 3 },
      { kind: 'corner-forgotten', round: 'edging', corner: 1 },
      { kind: 'join-offset', round: 'join', count: 2 },
      { kind: 'join-wrong-side', round: 'join', count: 1 },
      { kind: 'last-hole', round: 'join' },
    ];
    for (const mishap of cases) {
      const said = sayVerdict(made([58, 36, 57, 36], [mishap]), UK);
      expect(`${said.head} ${said.body}`, mishap.kind).not.toMatch(
        /!|sorry|please|invalid|error|undefined|NaN/i,
      );
      expect(said.head.endsWith('.'), mishap.kind).toBe(true);
    }
  });
});

test('every side off by as much is told as one thing; a turn by the shorter way', () => {
  const told = (sides: number[], mishap: Mishap) => sayVerdict(made(sides, [mishap]), UK);
  expect(told([40, 34, 28, 22], { kind: 'arms-forgotten', round: 'plan' })).toMatchObject({
    head: 'Every side of the back is 2 stitches too long.',
    body: 'A count tells the side, not the stitch. It does not meet.',
  });
  expect(told([40, 34, 28, 22], { kind: 'join-wrong-side', round: 'join', count: 1 }).head).toBe(
    'The back is turned by 1 side.',
  );
});

test('a corner left out is named where the counts tell it, and where they do not, that is said', () => {
  const without = (corner: number, sides: number[]) =>
    sayVerdict(made(sides, [{ kind: 'corner-forgotten', round: 'foundation', corner }]), UK);
  expect(without(1, [34, 71, 34, 71])).toMatchObject({
    head: 'Back corner 2 is left out.',
    body: 'So the two sides beside it are one. It does not meet.',
  });
  expect(without(0, [60, 60, 60, 60])).toMatchObject({
    head: 'The back has 1 corner too few.',
    body: 'It is corner 1 or 4: the counts do not tell which. It does not meet.',
  });
});
