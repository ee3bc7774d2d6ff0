/** The line on the edge, and the photo straightened along it. */
import { describe, expect, test } from 'vitest';
import { acrossAt, lineThrough, nearestOn, pointAt } from '../../../src/photo/line.ts';
import { even, straightened, straightenedInColour } from '../../../src/photo/strip.ts';

const bowed = [
  { x: 20, y: 80 },
  { x: 120, y: 40 },
  { x: 240, y: 90 },
];

describe('the line', () => {
  test('is straight between two ends, and as long as they are apart', () => {
    const line = lineThrough([
      { x: 10, y: 10 },
      { x: 40, y: 50 },
    ]);
    expect(line.length).toBeCloseTo(50, 6);
    expect(pointAt(line, 25)).toEqual({ x: expect.closeTo(25, 6), y: expect.closeTo(30, 6) });
    expect(pointAt(line, -5)).toEqual({ x: expect.closeTo(7, 6), y: expect.closeTo(6, 6) });
    expect(acrossAt(line, 25)).toEqual({ x: expect.closeTo(-0.8, 6), y: expect.closeTo(0.6, 6) });
  });

  test('goes through every point in order, in even steps', () => {
    const line = lineThrough(bowed);
    const places = bowed.map((point) => nearestOn(line, point));
    for (const { off } of places) expect(off).toBeLessThan(1);
    expect(places.map(({ along }) => along)).toEqual(
      [...places.map(({ along }) => along)].sort((a, b) => a - b),
    );
    for (let at = 1; at < line.length - 1; at += 7) {
      const [here, next] = [pointAt(line, at), pointAt(line, at + 1)];
      expect(Math.hypot(next.x - here.x, next.y - here.y)).toBeGreaterThan(0.98);
      expect(Math.hypot(next.x - here.x, next.y - here.y)).toBeLessThan(1.001);
    }
  });

  test('has a place for every point beside it', () => {
    const line = lineThrough(bowed);
    const at = pointAt(line, 100);
    const across = acrossAt(line, 100);
    const beside = nearestOn(line, { x: at.x + across.x * 9, y: at.y + across.y * 9 });
    expect(beside.along).toBeGreaterThan(98);
    expect(beside.along).toBeLessThan(102);
    expect(beside.off).toBeCloseTo(9, 0);
  });

  test.each([
    [
      'two ends at one place',
      [
        { x: 5, y: 5 },
        { x: 5, y: 5 },
      ],
    ],
    [
      'a point put twice',
      [
        { x: 5, y: 5 },
        { x: 50, y: 5 },
        { x: 50, y: 5 },
        { x: 90, y: 9 },
      ],
    ],
  ])('stays finite with %s', (_name, through) => {
    const line = lineThrough(through);
    for (const at of [0, line.length / 2, line.length])
      expect(Object.values(pointAt(line, at)).every(Number.isFinite)).toBe(true);
  });
});

describe('the strip', () => {
  const width = 260;
  const height = 130;
  const line = lineThrough(bowed);
  /** A light spot about a place on the line, some pixels beside it. */
  function spotted(along: number, off: number) {
    const [middle, across] = [pointAt(line, along), acrossAt(line, along)];
    const data = new Uint8ClampedArray(width * height * 4).fill(255);
    for (let y = 0; y < height; y++)
      for (let x = 0; x < width; x++) {
        const far = Math.hypot(x - middle.x - across.x * off, y - middle.y - across.y * off);
        data.fill(far < 2.5 ? 200 : 10, (y * width + x) * 4, (y * width + x) * 4 + 3);
      }
    return { width, height, data };
  }

  test.each([
    [60, 12],
    [130, -7],
    [200, 0],
  ])('shows what lies at %d along and %d across there', (along, off) => {
    const grid = { places: even(0, 1, 240), rows: even(-20, 1, 41) };
    const strip = straightened(spotted(along, off), line, grid);
    const brightest = strip.light.indexOf(Math.max(...strip.light));
    expect(Math.abs((brightest % 240) - along)).toBeLessThanOrEqual(3);
    expect(Math.abs(Math.floor(brightest / 240) - 20 - off)).toBeLessThanOrEqual(3);
    const colour = straightenedInColour(spotted(along, off), line, grid);
    expect(colour.data[((off + 20) * 240 + along) * 4]).toBe(200);
  });
});
