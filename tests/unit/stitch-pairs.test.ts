/** Right and wrong in the same place: what each of the two pictures shows, read off its strands. */
import { describe, expect, test } from 'vitest';
import { PAIRS, type PairId, sayMistake, sayPair, scenesOfPair } from '../../src/stitch/pairs.ts';
import type { Scene } from '../../src/stitch/scene.ts';
import { wordsOnlyIn } from '../../src/words/terms.ts';

/** The strands that the hook takes, or that the closing makes. */
const marked = (scene: Scene): string[] =>
  scene.flatMap((item) => (item.what === 'strand' && item.marked === true ? [item.key] : [])).sort();

const pair = (id: PairId): [right: Scene, wrong: Scene] => scenesOfPair(id, 'right');

describe.each(PAIRS)('%s', (id) => {
  test('shows two different pictures of the same work, mirrored for the left hand', () => {
    const [right, wrong] = pair(id);
    expect(wrong).not.toEqual(right);
    const yarns = (scene: Scene): string[] =>
      [...new Set(scene.flatMap((item) => (item.what === 'strand' ? [item.yarn] : [])))].sort();
    expect(yarns(wrong)).toEqual(yarns(right));
    expect(scenesOfPair(id, 'left')[0]).not.toEqual(right);
  });

  test('is said in both terms, the right one first, without a word of the other', () => {
    for (const [dialect, other] of [
      ['uk', 'us'],
      ['us', 'uk'],
    ] as const) {
      const said = [...sayPair(id, { dialect }), ...Object.values(sayMistake(id, { dialect }))];
      for (const text of said) {
        expect(text).toMatch(/^[A-Z]/);
        for (const word of wordsOnlyIn(other)) expect(text).not.toMatch(new RegExp(`\\b${word}\\b`, 'i'));
      }
      expect(new Set(said).size).toBe(said.length);
    }
  });
});

test('the hook takes the back loop, not both', () => {
  const [right, wrong] = pair('both-loops').map(marked);
  expect(right).toHaveLength(1);
  expect(right?.[0]).toMatch(/back$/);
  expect(wrong?.map((key) => key.replace(/.*-/, ''))).toEqual(['back', 'front']);
});

test('the hidden stitch lies one place nearer the corner than the one taken by mistake', () => {
  const column = (scene: Scene): number => Number.parseInt(marked(scene)[0]?.match(/\d+/)?.[0] ?? '', 10);
  const [right, wrong] = pair('hidden-missed').map(column);
  // Work runs from right to left, one stitch 60 wide.
  expect((right ?? 0) - (wrong ?? 0)).toBe(60);
});

test('the base chain is taken, not the post', () => {
  const [right, wrong] = pair('post-picked').map(marked);
  expect(right?.every((key) => key.startsWith('base'))).toBe(true);
  expect(wrong?.every((key) => key.startsWith('post'))).toBe(true);
});

test('of the four loops the inner two are taken, not the outer', () => {
  // Seen from above the front lies near: its back loop and the front loop of the piece turned away lie inside.
  expect(pair('outer-loops').map((scene) => marked(scene).map((key) => key.replace(/\d+/, '')))).toEqual([
    ['beyond-front', 'near-back'],
    ['beyond-back', 'near-front'],
  ]);
});

test('beside the first stitch the needle makes a V of its own, over it none', () => {
  const tops = (scene: Scene): number =>
    scene.filter(({ key }) => /^(?:top|closing).*-back$/.test(key)).length;
  const place = (scene: Scene): boolean => {
    const at = (key: string) => scene.find((item) => item.key === key);
    const closing = at('closing-back');
    const xs = scene.flatMap((item) =>
      item.what === 'strand' && /^top.*-back$/.test(item.key) ? [item.points[0]?.[0]] : [],
    );
    return closing?.what === 'strand' && xs.includes(closing.points[0]?.[0]);
  };
  const [beside, over] = pair('closing-adds');
  expect(tops(beside)).toBe(tops(over));
  expect([place(beside), place(over)]).toEqual([false, true]);
});

test('a chain passed over is ringed, and not joined', () => {
  const [right, wrong] = pair('chain-skipped');
  const joined = (scene: Scene): number => scene.filter(({ key }) => /^joined.*-back$/.test(key)).length;
  expect(joined(right) - joined(wrong)).toBe(1);
  expect(wrong.some(({ what }) => what === 'place')).toBe(true);
});
