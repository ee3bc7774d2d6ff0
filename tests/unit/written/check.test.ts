/** A written pattern against itself: every contradiction is named, and the smallest change that mends it. Invented patterns. */
import { describe, expect, test } from 'vitest';
import { readWrittenRounds } from '../../../src/input/written-rounds.ts';
import { checkWritten, type Worked } from '../../../src/take-along/check.ts';

const square: Worked = { sideCount: 4, corner: 2, arm: 1, takesCorners: false };
const lines = (...counts: (number | string)[]): string =>
  counts.map((count, i) => `Round ${i + 1}: dc around. (${count} dc)`).join('\n');
const check = (text: string, worked: Partial<Worked> = {}) =>
  checkWritten(readWrittenRounds(text), { ...square, ...worked });

describe('a written pattern', () => {
  test('that agrees with itself has nothing named', () => {
    expect(check(lines(8, 16, 24, 32))).toMatchObject({ compared: 4, problems: [], mend: null });
  });

  test('with one count wrong is mended by that count', () => {
    const checked = check(lines(8, 16, 26, 32));
    expect(checked?.problems).toEqual([
      { at: 'totals[2]', code: 'printed-total', params: { round: 2, given: 24, printed: 26 } },
    ]);
    expect(checked?.mend).toEqual({ kind: 'count', round: 3, to: 24 });
  });

  test('with its first count wrong is mended by the first, not by all others', () => {
    const checked = check(lines(12, 16, 24, 32));
    expect(checked?.problems).toHaveLength(3);
    expect(checked?.mend).toEqual({ kind: 'count', round: 1, to: 8 });
  });

  test('whose corners take more stitches than said is mended by the corners', () => {
    const checked = check(lines(8, 24, 40, 56));
    expect(checked?.problems).toHaveLength(3);
    expect(checked?.mend).toEqual({ kind: 'arm', to: 2 });
  });

  test('that begins at a later round keeps its own numbers', () => {
    const text = 'Round 4: 32 dc in all\nRound 5: 40 dc in all\nRound 6: 50 dc in all';
    expect(check(text)?.mend).toEqual({ kind: 'count', round: 6, to: 48 });
  });

  test('of which a round says two things leaves that round open', () => {
    const text = `${lines(8, 16)}\nRound 2: 20 dc in all\nRound 3: 24 dc in all`;
    expect(check(text)).toMatchObject({ problems: [], mend: null });
  });

  test('that no single change mends is told so', () => {
    const checked = check(lines(8, 17, 24, 35));
    expect(checked?.problems.length).toBe(2);
    expect(checked?.mend).toBeNull();
  });

  test.each(['', 'Round 1: 8 dc in all', 'Chain 6.\nJoin.'])('%j has too little to compare', (text) => {
    expect(check(text)).toBeNull();
  });
});
