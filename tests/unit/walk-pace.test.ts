import { describe, expect, test } from 'vitest';
import { addTap, ENOUGH, paceOf, sayAhead, sayDuration, type Tap } from '../../src/making/pace.ts';

/** Taps on consecutive places, so many milliseconds after one another. */
function taps(times: readonly number[], from = 0): Tap[] {
  const made: Tap[] = [{ place: from, ms: 1000 }];
  for (const time of times) {
    const last = made.at(-1) as Tap;
    made.push({ place: last.place + 1, ms: last.ms + time });
  }
  return made;
}

const even = (n: number, ms: number): number[] => Array.from({ length: n }, () => ms);

describe('the pace', () => {
  test.each<[string, Tap[], number | null]>([
    ['nothing tapped', [], null],
    ['one tap', taps([]), null],
    ['one stitch too few', taps(even(ENOUGH - 1, 20_000)), null],
    ['enough', taps(even(ENOUGH, 20_000)), 20_000],
    ['a break of an hour is left out', taps([...even(8, 20_000), 3_600_000, ...even(8, 20_000)]), 20_000],
    ['a short break beside quick stitches too', taps([...even(8, 6000), 90_000, ...even(8, 6000)]), 6000],
    ['leafing through tells nothing', taps(even(40, 200)), null],
    [
      'leafing between stitches changes nothing',
      taps([...even(6, 15_000), ...even(9, 150), ...even(6, 15_000)]),
      15_000,
    ],
    [
      'two slow corners do not move the median',
      taps([...even(10, 10_000), 30_000, 30_000, ...even(5, 10_000)]),
      10_000,
    ],
  ])('%s', (_, given, pace) => {
    expect(paceOf(given)).toBe(pace);
  });

  test('a jump is no stitch', () => {
    const jumped = taps(even(ENOUGH, 20_000)).map((tap, i) =>
      i > 5 ? { ...tap, place: tap.place + 40 } : tap,
    );
    expect(paceOf(jumped)).toBeNull();
  });

  test('shifting the clock or the places changes nothing', () => {
    const given = taps([4000, 9000, 7000, ...even(12, 8000)]);
    const shifted = given.map(({ place, ms }) => ({ place: place + 500, ms: ms + 1e9 }));
    expect(paceOf(shifted)).toBe(paceOf(given));
  });

  test('a step back starts over, and only the newest taps are kept', () => {
    const many = taps(even(500, 9000)).reduce<readonly Tap[]>(addTap, []);
    expect(many.length).toBe(61);
    expect(addTap(many, { place: 3, ms: 1e9 })).toEqual([{ place: 3, ms: 1e9 }]);
    expect(paceOf(many)).toBe(9000);
  });
});

describe('what is said', () => {
  test.each([
    [20_000, 'less than a minute'],
    [60_000, 'about 1 minute'],
    [9 * 60_000, 'about 9 minutes'],
    [39 * 60_000, 'about 40 minutes'],
    [58 * 60_000, 'about 1 hour'],
    [92 * 60_000, 'about 1½ hours'],
    [200 * 60_000, 'about 3½ hours'],
  ])('%i ms is %s', (ms, says) => {
    expect(sayDuration(ms)).toBe(says);
  });

  test('to the corner, only once there is enough to know and a corner ahead', () => {
    const known = taps(even(ENOUGH, 40_000));
    expect(sayAhead({ toCorner: 60 }, known)).toBe('about 40 minutes to the corner');
    expect(sayAhead({ toCorner: 60 }, known.slice(1))).toBeNull();
    expect(sayAhead({ toCorner: 0 }, known)).toBeNull();
    expect(sayAhead({ toCorner: -1 }, known)).toBeNull();
  });
});
