/**
 * The drawings as they are saved, measured as a person with a ruler would: read from the text of the file, by the
 * lengths on it, against what was typed. The formulas here are the handbook's and none of the program's.
 */
import { describe, expect, it } from 'vitest';
import { fileOf } from '../../../src/cloth/saving.ts';
import { clothOf } from '../../../src/state/cloth.ts';
import { derive } from '../../../src/state/derive.ts';
import { example, standardSettings } from '../../../src/state/project.ts';
import type { Snapshot, Units } from '../../../src/state/snapshot.ts';

type Texts = Record<string, string>;
type Point = { x: number; y: number };
type What = 'laid' | 'turned' | 'layout';

function saved(texts: Texts, what: What, sideCount = 4, units: Units = 'cm'): { text: string; pins: number } {
  const project = { ...example, sideCount, texts: { ...example.texts, ...texts } };
  const settings = { ...standardSettings, units };
  const { making } = derive(project, settings);
  if (!making) throw new Error('no making');
  const cloth = clothOf(project, units, making);
  const file = fileOf({ cloth, snapshot: { project, settings, making } as Snapshot }, what);
  if (!file) throw new Error('nothing to draw');
  return { text: file.text, pins: cloth.pins?.length ?? 0 };
}

/** Every element of a class, with its attributes. */
function elements(text: string, name: string): Record<string, string>[] {
  return [...text.matchAll(/<(?!title|desc)\w+ ([^>]*)>([^<]*)/g)]
    .map(([, attributes = '', inside = '']) => ({
      ...Object.fromEntries(
        [...attributes.matchAll(/([\w-]+)="([^"]*)"/g)].map(([, key, value]) => [key, value]),
      ),
      inside,
    }))
    .filter((one: Record<string, string>) => one.class === name);
}

/** The closed lines of a path, each by its corners; an arc adds its ends. */
const linesOf = (d = ''): Point[][] =>
  d
    .split('M')
    .filter(Boolean)
    .map((line) =>
      [...line.replace(/A[^A]*? (?=-?[\d.]+ -?[\d.]+(?:A|Z))/g, 'L').matchAll(/(-?[\d.]+) (-?[\d.]+)/g)].map(
        ([, x, y]) => ({ x: Number(x), y: Number(y) }),
      ),
    );

const only = (text: string, name: string, line = 0): Point[] => {
  const found = linesOf(elements(text, name)[0]?.d)[line];
  if (!found) throw new Error(`no ${name}`);
  return found;
};

const spans = (points: readonly Point[]): [number, number] => {
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
  return [Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)];
};
const distance = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);
const at = <T>(list: readonly T[], i: number): T => list[(i + list.length) % list.length] as T;
const sides = (points: readonly Point[]): number[] =>
  points.map((point, i) => distance(point, at(points, i - 1)));

/** How far a point lies from the line through two others. */
const fromLine = (p: Point, a: Point, b: Point): number =>
  Math.abs((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x)) / distance(a, b);

/** The distances between two outlines, side by side, at both ends of each. */
const between = (outer: readonly Point[], inner: readonly Point[]): number[] =>
  inner.flatMap((point, i) =>
    [point, at(inner, i - 1)].map((end) => fromLine(end, at(outer, i), at(outer, i - 1))),
  );

/** Corners are written to 0.1 mm. */
const close = (found: readonly number[], wanted: number): void => {
  for (const one of found) expect(Math.abs(one - wanted)).toBeLessThan(0.15);
};

const square = { 'cloth.width.0': '41', 'cloth.height.0': '41', 'cloth.depth': '1.5', 'cloth.edging': '0.6' };
const bag: Texts = { ...square, 'cloth.height.0': '30.5', 'cloth.rule': 'own', 'cloth.allowance': '1.1' };
const hexagon = {
  ...Object.fromEntries(Array.from({ length: 6 }, (_, i) => [`side.${i}`, '40'])),
  'cloth.side.0': '21',
  'cloth.depth': '1.5',
  'cloth.edging': '0.5',
};
const uneven: Texts = {
  'cloth.outline': 'sides',
  'cloth.side.0': '40',
  'cloth.side.1': '31',
  'cloth.side.2': '45',
  'cloth.side.3': '28',
  'cloth.diagonal.0': '49',
  'cloth.depth': '1.6',
  'cloth.edging': '0.6',
};
const round = { 'side.0': '150', 'cloth.diameter.0': '36', 'cloth.depth': '1.6', 'cloth.edging': '0.6' };

describe('a saved drawing', () => {
  it.each([
    ['a square', square, 4, 'laid'],
    ['a hexagon', hexagon, 6, 'turned'],
    ['a round', round, 0, 'laid'],
    ['a layout', { ...square, 'cloth.cloth-width': '140' }, 4, 'layout'],
  ] as const)('%s has 1 mm for every unit', (_, texts, sideCount, what) => {
    const head = /viewBox="(\S+) (\S+) (\S+) (\S+)" width="(\S+)mm" height="(\S+)mm"/.exec(
      saved(texts, what, sideCount).text,
    );
    expect(head?.slice(5, 7)).toEqual(head?.slice(3, 5));
    expect(Number(head?.[3])).toBeGreaterThan(300);
  });

  // 41 cm with a foundation of 1.5 cm is cut 42.5 cm both ways: common practice, no source.
  it.each([
    ['snug', square, [425, 425]],
    ['exact', { ...square, 'cloth.rule': 'exact' }, [440, 440]],
    ['with an allowance of 1.1 cm', bag, [432, 327]],
    [
      'typed in inches',
      { ...square, 'cloth.width.0': '16 1/8 in', 'cloth.depth': '5/8 in' },
      [425.45, 425.875],
    ],
  ] as const)('is as wide and as high as the cut, %s', (_, texts, [width, height]) => {
    const [wide, high] = spans(only(saved(texts, 'laid').text, 'cloth'));
    close([wide - width, high - height], 0);
  });

  it('has a hexagon’s sides grown by the handbook’s 2·x·tan(π/k)', () => {
    // Snug with half of 1.5 cm outside the panel: x = 7.5 mm.
    close(sides(only(saved(hexagon, 'laid', 6).text, 'cloth')), 210 + 2 * 7.5 * Math.tan(Math.PI / 6));
  });

  it.each([
    ['a square', square, 4, 15, 6],
    ['a hexagon', hexagon, 6, 15, 5],
    ['4 unlike sides', uneven, 4, 16, 6],
  ] as const)('has seam and strip of %s where they are stated', (_, texts, sideCount, depth, edging) => {
    const { text } = saved(texts, 'laid', sideCount);
    const cut = only(text, 'cloth');
    expect(cut).toHaveLength(sideCount);
    close(between(cut, only(text, 'seam')), depth);
    // The strip is the band from the raw edge to the seam, its base on that edge; the edging lies inside it.
    close(between(cut, only(text, 'strip')), 0);
    close(between(cut, only(text, 'base')), 0);
    close(between(cut, only(text, 'strip', 1)), depth);
    close(between(cut, only(text, 'edging', 1)), depth + edging);
    const turned = saved(texts, 'turned', sideCount).text;
    close(between(only(turned, 'outline'), only(turned, 'cloth')), edging);
    close(
      sides(only(turned, 'cloth')).map((side, i) => side - at(sides(only(text, 'seam')), i)),
      0,
    );
  });

  it('of a round panel has circles as large as stated', () => {
    const { text } = saved(round, 'laid', 0);
    const across = (name: string, line = 0): number => spans(only(text, name, line))[0];
    // 36 cm, snug: half of 1.6 cm outside the panel on both sides, the seam 1.6 cm inside the cut.
    close([across('cloth') - 376, across('seam') - 344, across('strip', 1) - 344], 0);
    close([across('edging', 1)], 344 - 12);
    for (const [, radius, other] of text.matchAll(/A(\S+) (\S+) /g)) expect(radius).toBe(other);
    const pins = elements(text, 'pin-head').map(({ cx, cy }) => Math.hypot(Number(cx), Number(cy)));
    expect(pins.length).toBeGreaterThan(8);
    for (const out of pins) expect(Math.abs(out - (pins[0] as number))).toBeLessThan(0.01);
  });

  it('has every pin of the list across the raw edge, and in pairs from both corners of a side', () => {
    const { text, pins } = saved({ ...bag, 'cloth.spacing': '4' }, 'laid');
    const cut = only(text, 'cloth');
    const drawn = elements(text, 'pin').map(({ d }) => linesOf(d)[0] as Point[]);
    expect(drawn).toHaveLength(pins);
    for (const [from, to] of drawn as [Point, Point][]) {
      const side = cut.findIndex((corner, i) => {
        const before = at(cut, i - 1);
        const sign = (p: Point) =>
          Math.sign((corner.x - before.x) * (p.y - before.y) - (corner.y - before.y) * (p.x - before.x));
        return sign(from) !== sign(to);
      });
      expect(side).toBeGreaterThanOrEqual(0);
    }
    // 4 corners, 4 centres: a corner's pin crosses at the corner itself.
    const corners = drawn.filter(([from, to]) =>
      cut.some(
        (corner) =>
          fromLine(corner, from as Point, to as Point) < 0.2 && distance(corner, from as Point) < 12,
      ),
    );
    expect(corners).toHaveLength(4);
  });

  it('says at each side how long that side is drawn', () => {
    const { text } = saved(uneven, 'laid');
    const cut = only(text, 'cloth');
    const said = elements(text, 'length').map(({ x, y, inside = '' }) => ({
      place: { x: Number(x), y: Number(y) },
      length: Number.parseFloat(inside) * 10,
    }));
    expect(said).toHaveLength(4);
    for (const { place, length } of said) {
      const nearest = cut
        .map((corner, i) => {
          const before = at(cut, i - 1);
          const middle = { x: (corner.x + before.x) / 2, y: (corner.y + before.y) / 2 };
          return { off: distance(middle, place), drawn: distance(corner, before) };
        })
        .sort((a, b) => a.off - b.off)[0];
      // A cut is told up to the next mm.
      expect(length - (nearest?.drawn ?? 0)).toBeGreaterThan(-0.2);
      expect(length - (nearest?.drawn ?? 0)).toBeLessThan(1.05);
    }
  });

  it('of a layout has every piece as large as the cut, apart from the others and from both selvedges', () => {
    const { text } = saved({ ...bag, 'cloth.cloth-width': '140', 'cloth.pieces': '5' }, 'layout');
    const width = Number(/H(\d+)V/.exec(elements(text, 'cloth')[0]?.d ?? '')?.[1]);
    expect(width).toBe(1400);
    const pieces = elements(text, 'piece').map(({ d = '' }) => {
      const [x = 0, y = 0, wide = 0, high = 0] = (/M(\S+) (\S+)h(\S+)v([^h]+)h/.exec(d) ?? [])
        .slice(1)
        .map(Number);
      return { x, y, wide, high };
    });
    expect(pieces).toHaveLength(5);
    for (const { x, wide, high } of pieces) {
      expect([wide, high].sort()).toEqual([327, 432]);
      expect(x).toBeGreaterThanOrEqual(10);
      expect(x + wide).toBeLessThanOrEqual(1390);
    }
    for (const [i, one] of pieces.entries())
      for (const other of pieces.slice(i + 1)) {
        const beside = one.x + one.wide <= other.x + 1e-6 || other.x + other.wide <= one.x + 1e-6;
        const below = one.y + one.high <= other.y + 1e-6 || other.y + other.high <= one.y + 1e-6;
        expect(beside || below).toBe(true);
      }
  });
});
