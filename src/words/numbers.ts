/** Numbers in sentences: counts before words, places as 1st, 2nd, 3rd. */
import type { Dialect } from '../state/snapshot.ts';
import { type TermId, term } from './terms.ts';

const cardinal = new Intl.PluralRules('en-GB');
const place = new Intl.PluralRules('en-GB', { type: 'ordinal' });
const ENDINGS: Record<string, string> = { one: 'st', two: 'nd', few: 'rd', other: 'th' };
const FIRST_WORDS = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh', 'eighth', 'ninth'];

/** 54 → "54th". */
export const ordinal = (n: number): string => `${n}${ENDINGS[place.select(n)] ?? 'th'}`;

/** 2 → "second"; from 10 on "10th". */
export const ordinalWord = (n: number): string => FIRST_WORDS[n - 1] ?? ordinal(n);

/** One or many of a plain word: (2, "corner") → "2 corners". */
export const many = (n: number, one: string, plural = `${one}s`): string =>
  `${n} ${cardinal.select(n) === 'one' ? one : plural}`;

/** One or many of a term: (74, "treble") → "74 trebles". */
export const manyOf = (n: number, id: TermId, dialect: Dialect): string =>
  many(n, term(id, dialect), term(id, dialect, 'many'));
