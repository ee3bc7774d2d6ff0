/** The rendered edges: what is drawn is where it is said to be, and comes back with its seed. */
import { describe, expect, test } from 'vitest';
import { difficulties, everyDifficulty } from '../../photo/difficulty.ts';
import { type Picture, renderEdge } from '../../photo/render.ts';

const green = ({ data, width }: Picture, x: number, y: number): number =>
  data[(Math.round(y) * width + Math.round(x)) * 4 + 1] ?? 0;

/** How alike two square pieces of the picture are, from -1 to 1. */
function alike(picture: Picture, a: { x: number; y: number }, b: { x: number; y: number }): number {
  const half = Math.round(picture.look.pitch / 2);
  const piece = ({ x, y }: { x: number; y: number }): number[] => {
    const values: number[] = [];
    for (let dy = -half; dy <= half; dy++)
      for (let dx = -half; dx <= half; dx++) values.push(green(picture, x + dx, y + dy));
    const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
    return values.map((value) => value - mean);
  };
  const [one, other] = [piece(a), piece(b)];
  const dot = (p: number[], q: number[]): number => p.reduce((sum, value, i) => sum + value * (q[i] ?? 0), 0);
  return dot(one, other) / Math.sqrt(dot(one, one) * dot(other, other));
}

describe('a rendered edge', () => {
  test('comes back with its seed, and is another with another', () => {
    const [one, again, other] = [renderEdge('fair', 3), renderEdge('fair', 3), renderEdge('fair', 4)];
    expect(Buffer.from(again.data).equals(Buffer.from(one.data))).toBe(true);
    expect(again.vees).toEqual(one.vees);
    expect(other.vees).not.toEqual(one.vees);
  });

  test.each(everyDifficulty)(
    '%s: has its count within the ranges, all in the picture, in order',
    (difficulty) => {
      for (const seed of [11, 12]) {
        const { vees, width, height, look } = renderEdge(difficulty, seed);
        const { count, pitch } = difficulties[difficulty];
        expect(vees).toHaveLength(look.count);
        expect(look.count).toBeGreaterThanOrEqual(count[0]);
        expect(look.count).toBeLessThanOrEqual(count[1]);
        expect(look.pitch).toBeGreaterThanOrEqual(pitch[0]);
        expect(look.pitch).toBeLessThanOrEqual(pitch[1]);
        for (const [i, { x, y }] of vees.entries()) {
          expect(x).toBeGreaterThan(vees[i - 1]?.x ?? 0);
          expect(x).toBeLessThan(width);
          expect(y).toBeGreaterThan(0);
          expect(y).toBeLessThan(height);
        }
      }
    },
  );

  test('shows its Vs where it says they are: neighbours look alike, half a step off they do not', () => {
    const picture = renderEdge('easy', 5);
    const pairs = picture.vees.slice(1).map((there, i) => {
      const here = picture.vees[i] ?? there;
      const between = { x: (here.x + there.x) / 2, y: (here.y + there.y) / 2 };
      return { next: alike(picture, here, there), half: alike(picture, here, between) };
    });
    const mean = (values: number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
    expect(mean(pairs.map(({ next }) => next))).toBeGreaterThan(mean(pairs.map(({ half }) => half)) + 0.2);
  });

  test('is drawn from ranges that grow harder', () => {
    const { easy, fair, hard } = difficulties;
    const up = [
      'tension',
      'perspective',
      'blur',
      'noise',
      'fuzz',
      'dye',
      'missed',
      'split',
      'shade',
      'ground',
    ] as const;
    for (const name of up) {
      expect(easy[name][1]).toBeLessThanOrEqual(fair[name][1]);
      expect(fair[name][1]).toBeLessThan(hard[name][1]);
    }
    for (const name of ['pitch', 'relief', 'jpeg'] as const) {
      expect(easy[name][0]).toBeGreaterThan(fair[name][0]);
      expect(fair[name][0]).toBeGreaterThan(hard[name][0]);
    }
  });
});
