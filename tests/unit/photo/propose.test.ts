/** What is proposed, and when nothing is. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bestChain } from '../../../src/photo/chain.ts';
import { lineThrough } from '../../../src/photo/line.ts';
import { evenlyOn, pitchOf, propose } from '../../../src/photo/propose.ts';
import { blur } from '../../photo/camera.ts';
import { chanceOf } from '../../photo/chance.ts';
import { workWith } from '../../photo/person.ts';
import { renderEdge } from '../../photo/render.ts';
import { byLikeness, evenly } from '../../photo/ways.ts';

describe('the chain', () => {
  const pitch = 5;
  /** What a chain is worth, by its definition. */
  function worth(likeness: readonly number[], columns: readonly number[]): number {
    return columns.reduce((sum, x, i) => {
      const like = likeness[x] ?? 0;
      if (i === 0) return like;
      const step = x - (columns[i - 1] ?? 0);
      return sum + (step / pitch) * like - Math.min(0.9, 6 * Math.log(step / pitch) ** 2);
    }, 0);
  }
  /** Every chain there is from the first places to the last. */
  function* everyChain(to: number, begun: number[]): Generator<number[]> {
    const last = begun.at(-1) ?? 0;
    if (last >= to - 2) yield begun;
    for (let step = 3; step <= 10 && last + step < to; step++) yield* everyChain(to, [...begun, last + step]);
  }

  test('is the best of all', () => {
    const likenesses = fc.array(fc.double({ min: -1, max: 1, noNaN: true }), {
      minLength: 14,
      maxLength: 24,
    });
    fc.assert(
      fc.property(likenesses, (likeness) => {
        const width = likeness.length;
        const found = bestChain({
          likeness: Float32Array.from(likeness),
          pitch,
          fixed: [],
          first: [0, 1],
          last: [width - 2, width - 1],
        });
        const rounded = Array.from(Float32Array.from(likeness));
        const all = [[0], [1]].flatMap((begun) => [...everyChain(width, begun)]);
        const best = Math.max(...all.map((columns) => worth(rounded, columns)));
        expect(found?.score).toBeCloseTo(best, 5);
        expect(worth(rounded, found?.columns ?? [])).toBeCloseTo(best, 5);
      }),
      { numRuns: 60 },
    );
  });

  test('passes every fixed place, whatever it looks like', () => {
    const likeness = new Float32Array(60).fill(0.5);
    const found = bestChain({ likeness, pitch, fixed: [11, 13, 40], first: [0, 2], last: [57, 59] });
    for (const column of [11, 13, 40]) expect(found?.columns).toContain(column);
  });

  test('is none where no step leads to the end', () => {
    const likeness = new Float32Array(60);
    expect(bestChain({ likeness, pitch, fixed: [], first: [0, 0], last: [2, 2] })).toBe(null);
  });
});

test('the distance from V to V is the middle one, so that one slip does not count', () => {
  expect(pitchOf([0, 10, 41, 51, 61])).toBe(10);
});

describe('at an even distance', () => {
  const line = lineThrough([
    { x: 0, y: 0 },
    { x: 200, y: 0 },
  ]);
  const rounded = (asked: { marks: number[]; lookedTo: number }): number[] =>
    evenlyOn({ line, ...asked }).map(Math.round);

  test('marks go on to the end of the line, and share out what is over', () =>
    expect(rounded({ marks: [0, 30, 60], lookedTo: 60 })).toEqual([88, 116, 144, 172, 200]));
  test('they fill what is open before and between marks', () =>
    expect(rounded({ marks: [80, 100, 120, 200], lookedTo: -1 })).toEqual([0, 20, 40, 60, 140, 160, 180]));
  test('nothing goes before what is looked over', () =>
    expect(rounded({ marks: [40, 60, 80, 200], lookedTo: 81 })).toEqual([100, 120, 140, 160, 180]));
  test('none are left where the marks reach the end', () =>
    expect(rounded({ marks: [160, 180, 195], lookedTo: -1 }).filter((place) => place > 160)).toEqual([]));
});

describe('proposals', () => {
  test('take fewer taps than marks at an even distance, and those fewer than every V, where it is easy', () => {
    const all = [21, 22, 23].map((seed) => {
      const picture = renderEdge('easy', seed);
      return { alike: workWith(picture, byLikeness, seed), even: workWith(picture, evenly, seed) };
    });
    const sum = (of: (one: (typeof all)[number]) => number): number =>
      all.reduce((taps, one) => taps + of(one), 0);
    expect(sum(({ alike }) => alike.taps)).toBeLessThan(sum(({ even }) => even.taps));
    expect(sum(({ even }) => even.taps)).toBeLessThan(sum(({ even }) => even.byHand));
  });

  /** 60, 80 … 600. */
  const evens = Array.from({ length: 28 }, (_, i) => 60 + 20 * i);

  /** What is proposed on a picture along a level line, with three marks. */
  function proposedOn(light: (x: number, y: number) => number) {
    const [width, height] = [700, 90];
    const data = new Uint8ClampedArray(width * height * 4).fill(255);
    for (let y = 0; y < height; y++)
      for (let x = 0; x < width; x++) data.fill(light(x, y), (y * width + x) * 4, (y * width + x) * 4 + 3);
    const line = lineThrough([
      { x: 50, y: 45 },
      { x: 650, y: 45 },
    ]);
    const work = propose({ pixels: { width, height, data }, line, marks: [0, 20, 40], lookedTo: 40 });
    const told: number[] = [];
    let turn = work.next();
    for (; !turn.done; turn = work.next()) told.push(turn.value);
    return { told, proposed: turn.value };
  }

  test('on a picture of nothing but grain only go on at the distance of the marks, and say so', () => {
    const chance = chanceOf(5);
    const plane = {
      width: 700,
      height: 90,
      light: new Float32Array(700 * 90).map(() => 128 + 60 * chance.normal()),
    };
    blur(plane, 1);
    const { proposed } = proposedOn((x, y) => plane.light[y * 700 + x] ?? 0);
    expect(proposed).toEqual({ isAlike: false, places: evens });
  });

  test('so too on a picture of one colour', () =>
    expect(proposedOn(() => 90).proposed).toEqual({ isAlike: false, places: evens }));

  test('stand on what repeats, follow a distance that grows, and tell how far they are', () => {
    // Spots whose distance grows by a hundredth each time.
    const spots = [0];
    for (let step = 20; (spots.at(-1) ?? 0) + step < 601; step *= 1.01)
      spots.push((spots.at(-1) ?? 0) + step);
    const light = (x: number, y: number): number =>
      Math.min(...spots.map((spot) => Math.hypot(x - 50 - spot, y - 45))) < 6 ? 220 : 40;
    const { told, proposed } = proposedOn(light);
    const last = spots.at(-1) ?? 0;
    expect(last).toBeGreaterThan(585);
    const wanted = spots.slice(3);
    expect(proposed?.isAlike).toBe(true);
    expect(proposed?.places).toHaveLength(wanted.length);
    for (const [i, place] of (proposed?.places ?? []).entries())
      expect(Math.abs(place - (wanted[i] ?? 0))).toBeLessThan(4);
    expect(told).toEqual([...told].sort((a, b) => a - b));
    expect(told.at(-1)).toBe(1);
  });

  test('need two marks', () => {
    const picture = renderEdge('easy', 24);
    const line = lineThrough([
      { x: 10, y: 10 },
      { x: 200, y: 10 },
    ]);
    expect(propose({ pixels: picture, line, marks: [0], lookedTo: 0 }).next()).toEqual({
      done: true,
      value: null,
    });
  });
});
