/**
 * What was kept must go on meaning what it meant. `gives` was written down by the first program that kept work
 * (commit bd316f7) and is never made anew; where a defect was mended since, `since` says which and what it gives now.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { type Gives, madeOf } from './kept-made.ts';

const folder = new URL('../fixtures/kept/', import.meta.url);

type Fixture = { says: string; kept: unknown; gives: Gives; since?: { because: string; gives: Gives } };

const fixtures = readdirSync(folder).map((file): [name: string, fixture: Fixture] => [
  file.replace('.json', ''),
  JSON.parse(readFileSync(new URL(file, folder), 'utf8')),
]);

describe('kept work', () => {
  test('of every kind is there', () => {
    expect(fixtures.length).toBe(102);
  });

  test.each(fixtures)('%s', (_name, { kept, gives, since }) => {
    expect(madeOf(kept)).toEqual({ ...gives, ...since?.gives });
  });

  test('that was mended says so, and differs from what it was', () => {
    for (const [, { gives, since }] of fixtures)
      if (since) {
        expect(since.because.length).toBeGreaterThan(10);
        expect({ ...gives, ...since.gives }).not.toEqual(gives);
      }
  });
});
