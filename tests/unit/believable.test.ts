/**
 * First guesses that a crocheter would make too, on a panel of four sides of 64 with two-chain corners.
 * The counts are invented; that markers are lost by tens and corners forgotten is common practice, no source.
 */
import { describe, expect, test } from 'vitest';
import {
  countRound,
  explain,
  type Mishap,
  planBack,
  type Round,
  readEdge,
  type Seen,
  work,
} from '../../core/index.ts';
import { explanationTitle } from '../../src/words/wrong/causes.ts';

const uk = { dialect: 'uk', hand: 'right', units: 'cm' } as const;

function plan() {
  const edge = readEdge({
    sides: [64, 64, 64, 64],
    corner: { made: 'chain', size: 2 },
    counted: 'stitches-only',
  });
  if (!edge.ok) throw new Error('The edge must be readable');
  const planned = planBack(edge.value, {});
  if (!planned.ok) throw new Error('The back must be possible');
  return planned.value;
}

/** What is offered, best first. */
const titles = (seen: Seen): string[] =>
  explain(plan(), seen).explanations.map(({ causes }) => explanationTitle(causes, plan(), uk));

const sides = (...counts: (number | null)[]) => ({ sides: counts });
const countsWith = (...mishaps: Mishap[]): Seen => {
  const made = work(plan(), mishaps);
  const counted = (round: Round) => ({ sides: countRound(round).sides });
  return { foundation: counted(made.foundation), edgings: made.edgings.map(counted) };
};

describe('the first guess', () => {
  test.each<[string, Seen, string]>([
    ['124 where 62 is due, and a side fewer', { foundation: sides(62, 124, 62) }, 'A corner forgotten'],
    [
      '124 where 62 is due, nothing else counted',
      { foundation: sides(null, 124, null, null) },
      'A corner forgotten',
    ],
    ['52 where 62 is due', { foundation: sides(62, 52, 62, 62) }, 'A marker miscounted'],
    [
      '52 where 62 is due, nothing else counted',
      { foundation: sides(null, 52, null, null) },
      'A marker miscounted',
    ],
    ['72 where 62 is due', { foundation: sides(62, 72, 62, 62) }, 'A marker miscounted'],
    [
      'an edging of 62 on a foundation of 62',
      { foundation: sides(62, 62, 62, 62), edgings: [sides(62, 62, 62, 62)] },
      'A corner worked over, at every corner',
    ],
    [
      'an edging of 62 on a foundation of 62, two sides counted',
      { foundation: sides(62, null, null, null), edgings: [sides(62, 62, null, null)] },
      'A corner worked over, at every corner',
    ],
  ])('of %s', (_name, seen, first) => {
    expect(titles(seen)[0]).toBe(first);
  });

  test('is no certainty where a treble missed and one worked twice make up for each other', () => {
    const seen = countsWith(
      { kind: 'stitch-missed', round: 'foundation', side: 1, place: 20, count: 1 },
      { kind: 'stitch-doubled', round: 'edging', edging: 0, side: 1, place: 30, count: 1 },
    );
    const offered = titles(seen);
    expect(offered.length).toBeGreaterThan(1);
    expect(offered).toContain('A stitch missed and a stitch worked twice');
  });
});
