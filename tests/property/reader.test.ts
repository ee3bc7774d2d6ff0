/**
 * Panels of 1, 3, 4 and 7 sides, every choice of start and closings, both terms, both hands: the walk is enough to work
 * by, no page of it can be spared, and no number can be another.
 */
import { describe, expect, test } from 'vitest';
import type { EdgeInput } from '../../core/index.ts';
import type { Page } from '../reader/reader.ts';
import { caseOf, fails, otherNumbers, pagesOf, SPEECHES } from '../unit/reader/cases.ts';

const chains = (size: number) => ({ made: 'chain', size }) as const;
const PANELS: [string, EdgeInput][] = [
  ['1 side', { sides: [11], corner: [], counted: 'stitches-only' }],
  ['3 sides', { sides: [6, 7, 5], corner: chains(2), counted: 'stitches-only' }],
  ['4 sides', { sides: [6, 5, 7, 5], corner: chains(3), counted: 'stitches-only' }],
  ['7 sides', { sides: [6, 4, 5, 4, 6, 4, 5], corner: chains(1), counted: 'stitches-only' }],
];
const EITHER = [0, 1] as const;

const CASES = PANELS.flatMap(([name, input]) =>
  EITHER.flatMap((counts) =>
    EITHER.flatMap((foundation) =>
      EITHER.map((edging) =>
        caseOf(`${name}, chains ${counts}, closings ${foundation} and ${edging}`, input, {
          foundationStart: { counts },
          foundationClosing: { adds: foundation },
          edgingClosing: { adds: edging },
          markerEvery: 3,
        }),
      ),
    ),
  ),
);

const PARTS = ['act', 'check', 'where', 'count', 'ask', 'caution'] as const;

test.each(CASES)('$name: enough in both terms, for both hands', (one) => {
  for (const speech of SPEECHES) expect(fails(pagesOf(one, speech), one, speech)).toBe(false);
});

/** Each choice of start and closings is met once in either terms and once with either hand. */
const speechesOf = (n: number) => (n % 2 === 0 ? [0, 3] : [1, 2]).flatMap((i) => SPEECHES[i] ?? []);

describe.each(CASES.map((one, n) => ({ ...one, n })))('$name', ({ n, ...one }) => {
  test.each(speechesOf(n))('in $dialect terms, $hand hand, nothing can be spared', (speech) => {
    const pages = pagesOf(one, speech);
    const spared: string[] = [];
    let tried = 0;
    pages.forEach((page: Page, i) => {
      if (!fails(pages.toSpliced(i, 1), one, speech)) spared.push(`${i}: ${page.act}`);
      for (const part of PARTS)
        for (const text of otherNumbers(page[part] ?? '')) {
          tried += 1;
          if (!fails(pages.with(i, { ...page, [part]: text }), one, speech)) spared.push(`${i}: ${text}`);
        }
    });
    expect(tried).toBeGreaterThan(150);
    expect(spared).toEqual([]);
  });
});
