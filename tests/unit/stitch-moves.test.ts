import { describe, expect, test } from 'vitest';
import { kindOf, type Move, movesOf, STITCH_KINDS, type StitchKind } from '../../src/stitch/moves.ts';
import { sayLoops, sayMove, stitchName } from '../../src/stitch/say.ts';
import { plain } from '../../src/stitch/variant.ts';
import { wordsOnlyIn } from '../../src/words/terms.ts';

const loops = (kind: StitchKind): number[] => [
  movesOf(kind)[0]?.loopsBefore ?? -1,
  ...movesOf(kind).map(({ loopsAfter }) => loopsAfter),
];

// [kind, loops on the hook before and after every move, source]
const ROWS: [StitchKind, number[], string][] = [
  ['chain', [1, 1], 'Craft Yarn Council terms'],
  ['slip-stitch', [1, 1, 1], 'Craft Yarn Council terms'],
  ['double-crochet', [1, 1, 2, 1], 'Craft Yarn Council terms'],
  ['treble', [1, 2, 2, 3, 2, 1], 'Craft Yarn Council terms'],
  ['foundation-start', [1, 2, 2, 3, 3, 2, 1], 'chainless foundation tutorials'],
  ['foundation-treble', [1, 2, 2, 3, 3, 2, 1], 'chainless foundation tutorials'],
  ['fasten-off', [1, 0], 'needle-made join tutorials'],
  ['needle-closing', [0, 0, 0, 0], 'needle-made join tutorials'],
  ['running-stitch', [0, 0, 0, 0], 'common practice'],
];

describe('moves', () => {
  test('every kind has its row', () => {
    expect(ROWS.map(([kind]) => kind)).toEqual([...STITCH_KINDS]);
  });

  test.each(ROWS)('%s has %j loops on the hook', (kind, expected, source) => {
    expect(source).not.toBe('');
    expect(loops(kind)).toEqual(expected);
  });

  test.each(STITCH_KINDS)('%s: each move begins with the loops the last one left', (kind) => {
    const moves = movesOf(kind);
    moves.slice(1).forEach((move, i) => {
      expect(move.loopsBefore).toBe(moves[i]?.loopsAfter);
    });
  });

  test.each(STITCH_KINDS)('%s: never draws through more loops than lie on the hook', (kind) => {
    for (const { through = 0, loopsBefore } of movesOf(kind))
      expect(through).toBeLessThanOrEqual(loopsBefore);
  });

  const ends: readonly string[] = ['fasten-off', 'needle-closing', 'running-stitch'];
  test.each(STITCH_KINDS.filter((kind) => !ends.includes(kind)))(
    '%s begins and ends with one loop',
    (kind) => {
      expect([loops(kind)[0], loops(kind).at(-1)]).toEqual([1, 1]);
    },
  );

  test('a foundation treble is a treble with a chain of its own, into the base chain', () => {
    const names = (moves: readonly Move[]): string[] =>
      moves.map(({ move, through = '' }) => `${move}${through}`);
    const foundation = names(movesOf('foundation-treble'));
    foundation.splice(3, 1);
    expect(foundation).toEqual(names(movesOf('treble')));
    expect(movesOf('foundation-treble')[1]?.target).toBe('base-chain');
    expect(movesOf('foundation-start')[1]?.target).toBe('first-chain');
  });
});

describe('which stitch a step makes', () => {
  const target = { on: 'foundation', edging: 0, node: 0, loop: 'base-chain' } as const;
  test.each([
    ['foundation-treble', 'base-chain', 'foundation-treble'],
    ['foundation-treble', 'first-chain', 'foundation-start'],
    ['corner-stitch', 'base-chain', 'foundation-treble'],
    ['corner-stitch', 'back-loop', 'double-crochet'],
    ['double-crochet', 'corner-chain', 'double-crochet'],
    ['corner-chain', 'none', 'chain'],
    ['last-hole', 'inner-loops', 'slip-stitch'],
    ['fasten-off', 'none', 'fasten-off'],
    ['close-tops', 'both-loops', 'needle-closing'],
    ['sew-back', 'none', 'running-stitch'],
    ['check-twist', 'none', null],
    ['pad-in', 'none', null],
  ] as const)('%s into %s is %s', (kind, loop, expected) => {
    expect(kindOf({ kind, target: { ...target, loop } })).toBe(expected);
  });
});

describe('captions', () => {
  const speeches = [
    { dialect: 'uk', hand: 'right', units: 'cm' },
    { dialect: 'us', hand: 'left', units: 'inch' },
  ] as const;

  test.each(speeches)('have 12 words at most and no word of the other terms: $dialect', (speech) => {
    const foreign = wordsOnlyIn(speech.dialect === 'uk' ? 'us' : 'uk');
    for (const kind of STITCH_KINDS) {
      movesOf(kind).forEach((_, i) => {
        for (const adds of [0, 1] as const) {
          const says = sayMove({ ...plain(kind), adds }, i, speech);
          expect(says, `${kind} ${i}`).toMatch(/^[A-Z].*\.$/);
          expect(says.split(' ').length, says).toBeLessThanOrEqual(12);
          const name = stitchName(kind, speech);
          for (const word of foreign) expect(`${says} ${name}`).not.toMatch(new RegExp(`\\b${word}\\b`, 'i'));
        }
      });
    }
  });

  test('say the loops', () => {
    expect(sayLoops(plain('treble'), 0)).toBe('1 loop on the hook');
    expect(sayLoops(plain('treble'), 3)).toBe('3 loops on the hook');
    expect(sayLoops(plain('running-stitch'), 1)).toBe('');
  });

  test('a closing that adds nothing goes under the second stitch', () => {
    const closing = (adds: 0 | 1): string => sayMove({ ...plain('needle-closing'), adds }, 0, speeches[0]);
    expect(closing(1)).toBe('Needle under both loops of the first stitch.');
    expect(closing(0)).toBe('Needle under both loops of the second stitch.');
  });
});
