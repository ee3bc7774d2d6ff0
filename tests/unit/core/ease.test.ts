import { describe, expect, it } from 'vitest';
import { ease } from '../../../core/index.ts';

/** Joining unequal pieces: spread, d differences split a side into d + 1 clusters, the odd one in the middle (published). */
describe('ease', () => {
  it.each<[says: string, n: number, d: number, places: number[]]>([
    ['one goes in the middle', 75, 1, [37]],
    ['of an even side the nearer middle', 76, 1, [37]],
    ['two split a side into a half between two quarters', 80, 2, [19, 60]],
    ['three: the odd one in the middle', 77, 3, [12, 38, 64]],
    ['a short side keeps 3 from its corners', 13, 3, [3, 6, 9]],
    ['where they would crowd for that, the spacing comes first', 12, 3, [1, 5, 10]],
    ['a side too short for that does not', 4, 2, [0, 3]],
    ['as many as there are stitches take each once', 5, 5, [0, 1, 2, 3, 4]],
    ['one more takes one of them twice', 3, 4, [0, 1, 1, 2]],
    ['none is none', 40, 0, []],
    ['no side, no places', 0, 2, []],
  ])('%s: %i stitches, %i eased', (_, n, d, places) => {
    expect(ease(n, d)).toEqual(places);
  });
});
