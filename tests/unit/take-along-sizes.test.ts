import { describe, expect, it } from 'vitest';
import { readSizes, sizesByRule } from '../../src/take-along/sizes.ts';
import { planOf } from './core/making.ts';

const plan = planOf([62, 38, 62, 38]);
const panel = { plan, project: { counted: 'one-corner' as const } };
const read = (text: string) => readSizes(text, panel);

describe('several sizes', () => {
  it('are planned as any panel is, by what the count takes in', () => {
    const [small, large] = read('small: 64, 40, 64, 40\nlarge: 72; 48; 72; 48');
    expect(small).toMatchObject({ name: 'small', plan: { edge: { sides: [62, 38, 62, 38] }, pairs: 208 } });
    expect(large).toMatchObject({ name: 'large', plan: { foundation: { sides: [68, 44, 68, 44] } } });
  });

  it('take one count for all sides', () => {
    expect(read('baby: 40')[0]).toMatchObject({
      counts: [40, 40, 40, 40],
      plan: { edge: { sides: [38, 38, 38, 38] } },
    });
  });

  it.each([
    ['tiny: 3', 'sides[0]', 'no-foundation-stitch'],
    ['none: 2', 'sides[0]', 'corners-take-all'],
    ['huge: 200000', 'sides[0]', 'too-high'],
  ])('that cannot be worked are named with the reason: %s', (line, at, code) => {
    const [size] = read(line);
    expect(size).toMatchObject({ problem: { code } });
    if (size && 'problem' in size) expect(size.problem.at.endsWith(at)).toBe(true);
  });

  it.each(['no counts', 'a: 1, 2', 'b: 62, 38, x, 38', ': 40', 'c: 62-63', 'd: 6,200,38,1,2'])(
    'are not guessed: %s',
    (line) => {
      expect(read(line)[0]).toEqual(expect.objectContaining({ line }));
    },
  );

  it('follow a rule, which can give sizes that cannot be worked', () => {
    const lines = sizesByRule([20, 10, 20, 10], -4, 3);
    expect(lines).toBe('1: 20, 10, 20, 10\n2: 16, 6, 16, 6\n3: 12, 2, 12, 2');
    expect(read(lines).map((size) => ('plan' in size ? 'works' : 'fails'))).toEqual([
      'works',
      'works',
      'fails',
    ]);
  });

  it('are six at most', () => {
    expect(read(sizesByRule([40, 40, 40, 40], 8, 9))).toHaveLength(6);
  });
});
