/** All sentences at once: what no sentence may hold, in whichever stage it stands. */
import { describe, expect, test } from 'vitest';
import { wordsOnlyIn } from '../../src/words/terms.ts';
import { everySentence } from '../words/sentences.ts';

const all = everySentence();

/** Words that blame or frighten, or that say nothing (GOV.UK Design System, error messages). */
const BANNED =
  /\b(?:please|sorry|valid|invalid|oops|forbidden|illegal|you forgot|prohibited|required|an error occurred)\b/i;

describe('every sentence', () => {
  test('of every stage is there', () => {
    const stages = new Set(all.map(({ stage }) => stage.split(':')[0]));
    expect([...stages]).toEqual(['Recipe', 'Walk', 'Lesson', 'Right and wrong', 'What went wrong']);
    expect(all.length).toBeGreaterThan(300);
  });

  test('holds no banned word and no exclamation mark', () => {
    const found = all
      .flatMap(({ uk, us }) => [uk, us])
      .filter((text) => BANNED.test(text) || text.includes('!'));
    expect(found).toEqual([]);
  });

  test('in one dialect holds no word of the other', () => {
    const mixed = all.flatMap(({ uk, us }) => [
      ...wordsOnlyIn('us')
        .filter((word) => holds(uk, word))
        .map((word) => `${uk}: ${word}`),
      ...wordsOnlyIn('uk')
        .filter((word) => holds(us, word))
        .map((word) => `${us}: ${word}`),
    ]);
    expect(mixed).toEqual([]);
  });

  test('has no value left out', () => {
    expect(all.filter(({ uk, us }) => /undefined|NaN|null|\[object/.test(uk + us))).toEqual([]);
  });
});

const holds = (text: string, word: string): boolean => new RegExp(`\\b${word}\\b`, 'i').test(text);
