import { describe, expect, test } from 'vitest';
import { many, manyOf, ordinal } from '../../src/words/numbers.ts';
import {
  dialectName,
  falseFriend,
  hasForm,
  sharedWords,
  TERM_IDS,
  type TermId,
  term,
  wordsOnlyIn,
} from '../../src/words/terms.ts';

// [id, UK, US, UK short, US short, source]
const ROWS: [TermId, string, string, string, string, string][] = [
  ['chain', 'chain', 'chain', 'ch', 'ch', 'Craft Yarn Council terms, reprinted'],
  ['slip-stitch', 'slip stitch', 'slip stitch', 'ss', 'sl st', 'Craft Yarn Council terms, reprinted'],
  ['double-crochet', 'double crochet', 'single crochet', 'dc', 'sc', 'Craft Yarn Council terms, reprinted'],
  ['half-treble', 'half treble', 'half double crochet', 'htr', 'hdc', 'Craft Yarn Council terms, reprinted'],
  ['treble', 'treble', 'double crochet', 'tr', 'dc', 'Craft Yarn Council terms, reprinted'],
  ['double-treble', 'double treble', 'treble', 'dtr', 'tr', 'Craft Yarn Council terms, reprinted'],
  ['foundation-treble', 'foundation treble', 'foundation double crochet', 'ftr', 'fdc', 'facts, fdc row'],
  [
    'foundation-double-crochet',
    'foundation double crochet',
    'foundation single crochet',
    'fdc',
    'fsc',
    'facts, fdc row',
  ],
  ['back-loop-only', 'back loop only', 'back loop only', 'blo', 'BLO', 'words table'],
  ['yarn-round-hook', 'yarn round hook', 'yarn over', 'yrh', 'yo', 'words table'],
];

describe('terms', () => {
  test.each(ROWS)('%s is "%s" in the UK and "%s" in the US', (id, uk, us, ukShort, usShort, source) => {
    expect(source).not.toBe('');
    expect(term(id, 'uk')).toBe(uk);
    expect(term(id, 'us')).toBe(us);
    expect(term(id, 'uk', 'short')).toBe(ukShort);
    expect(term(id, 'us', 'short')).toBe(usShort);
  });

  test.each([
    ['tension', 'tension', 'gauge'],
    ['miss', 'miss', 'skip'],
    ['unravel', 'unravel', 'rip back'],
    ['cushion', 'cushion', 'pillow'],
    ['cushion-pad', 'cushion pad', 'pillow form'],
  ] as const)('%s is "%s" or "%s"', (id, uk, us) => {
    expect([term(id, 'uk'), term(id, 'us')]).toEqual([uk, us]);
  });

  test('every word of a dialect leads back to one id only', () => {
    for (const dialect of ['uk', 'us'] as const) {
      for (const form of ['one', 'many', 'short', 'doing', 'done'] as const) {
        const words = TERM_IDS.filter((id) => hasForm(id, dialect, form)).map((id) =>
          term(id, dialect, form),
        );
        expect(new Set(words).size, `${dialect} ${form}`).toBe(words.length);
      }
    }
  });

  test('both dialects have the same forms of every term', () => {
    for (const id of TERM_IDS) {
      for (const form of ['many', 'short', 'doing', 'done'] as const) {
        expect(hasForm(id, 'uk', form), `${id} ${form}`).toBe(hasForm(id, 'us', form));
      }
    }
  });

  test('a form that a term has not falls back to the plain word', () => {
    expect(term('tension', 'uk', 'short')).toBe('tension');
    expect(term('slip-stitch', 'us', 'many')).toBe('slip stitches');
  });
});

describe('false friends', () => {
  test('the words that mean another stitch elsewhere are found in the table', () => {
    const words = new Set(sharedWords().map(({ word }) => word));
    expect(words).toEqual(
      new Set([
        'double crochet',
        'dc',
        'treble',
        'tr',
        'double treble',
        'dtr',
        'foundation double crochet',
        'fdc',
      ]),
    );
  });

  test.each([
    ['double-crochet', 'UK double crochet is US single crochet. US double crochet is UK treble.'],
    [
      'foundation-treble',
      'UK foundation treble is US foundation double crochet. UK foundation double crochet is US foundation single crochet.',
    ],
    [
      'treble',
      'UK treble is US double crochet. US treble is UK double treble. UK double crochet is US single crochet.',
    ],
  ] as const)('the note for %s names both meanings', (id, meaning) => {
    expect(falseFriend(id)).toBe(`Same word, different meaning. ${meaning}`);
  });

  test.each(['chain', 'slip-stitch', 'half-treble', 'cushion'] as const)('%s needs no note', (id) => {
    expect(falseFriend(id)).toBeNull();
  });

  test('words of one dialect only never hold a word of both', () => {
    expect(wordsOnlyIn('uk')).toContain('foundation treble');
    expect(wordsOnlyIn('us')).toContain('single crochet');
    expect(wordsOnlyIn('uk')).not.toContain('double crochet');
    expect(wordsOnlyIn('us')).not.toContain('slip stitch');
    expect([dialectName('uk'), dialectName('us')]).toEqual(['UK terms', 'US terms']);
  });
});

test.each([
  [1, '1st', '1 corner', '1 treble'],
  [2, '2nd', '2 corners', '2 trebles'],
  [11, '11th', '11 corners', '11 trebles'],
  [23, '23rd', '23 corners', '23 trebles'],
  [54, '54th', '54 corners', '54 trebles'],
])('%i is said %s, %s, %s', (n, place, corners, trebles) => {
  expect(ordinal(n)).toBe(place);
  expect(many(n, 'corner')).toBe(corners);
  expect(manyOf(n, 'treble', 'uk')).toBe(trebles);
});
