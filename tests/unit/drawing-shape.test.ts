import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { closeSides, inscribe } from '../../src/drawing/whole/cyclic.ts';
import { outline } from '../../src/drawing/whole/shape.ts';
import { CHAINS } from './drawing-making.ts';

const corners = (count: number) => Array.from({ length: count }, () => CHAINS);
const lengths = (points: Float32Array) => {
  const total: number[] = [];
  for (let i = 2; i < points.length; i += 2) {
    total.push(Math.hypot(points[i]! - points[i - 2]!, points[i + 1]! - points[i - 1]!));
  }
  return total;
};
const area = (points: Float32Array) => {
  let twice = 0;
  for (let i = 0; i < points.length; i += 2) {
    const j = (i + 2) % points.length;
    twice += points[i]! * points[j + 1]! - points[j]! * points[i + 1]!;
  }
  return twice / 2;
};
const anySides = fc.array(fc.integer({ min: 1, max: 200 }), { minLength: 1, maxLength: 24 });

describe('a polygon inscribed in a circle', () => {
  it.each([
    ['equal triangle', [10, 10, 10], [120, 120, 120]],
    ['square', [7, 7, 7, 7], [90, 90, 90, 90]],
    ['3-4-5: the longest is the diameter', [3, 4, 5], [73.74, 106.26, 180]],
    ['hexagon', [2, 2, 2, 2, 2, 2], [60, 60, 60, 60, 60, 60]],
  ])('has the right angles at the centre: %s', (_name, sides, degrees) => {
    const { angles } = inscribe(sides);
    angles.forEach((angle, i) => {
      expect((angle * 180) / Math.PI).toBeCloseTo(degrees[i]!, 2);
    });
  });

  it('has sides as long as asked, whatever they are and however far they bow', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 500 }), { minLength: 2, maxLength: 24 }), (sides) => {
        const { radius, angles, bow } = closeSides(sides);
        angles.forEach((angle, i) => {
          const chord = 2 * radius * Math.sin(angle / 2);
          const turn = (bow * angle) / 2;
          const length = bow === 0 ? chord : (chord * turn) / Math.sin(turn);
          expect(length / sides[i]!).toBeCloseTo(1, 4);
        });
        expect(angles.reduce((sum, angle) => sum + angle, 0)).toBeCloseTo(2 * Math.PI, 9);
      }),
    );
  });

  it('has no corner too sharp for its lanes, and straight sides wherever these will do', () => {
    const turns = (sides: number[]) => {
      const { angles, bow } = closeSides(sides);
      return angles.map((angle, i) => ((1 - bow) * (angle + angles[(i + 1) % angles.length]!)) / 2);
    };
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 200 }), { minLength: 3, maxLength: 12 }), (sides) => {
        expect((Math.max(...turns(sides)) * 180) / Math.PI).toBeLessThan(150);
      }),
    );
    for (const sides of [
      [58, 36, 58, 36],
      [28, 38, 48],
      [10, 10, 10],
      [18, 19, 20, 21, 22, 23],
    ]) {
      expect(closeSides(sides).bow).toBe(0);
    }
    expect(closeSides([58, 8, 28, 8, 18]).bow).toBeGreaterThan(0);
  });
});

describe('an outline', () => {
  it('closes, is finite, and runs anticlockwise for the right hand, whatever the sides', () => {
    fc.assert(
      fc.property(anySides, fc.boolean(), (sides, cornered) => {
        const { points } = outline(sides, cornered ? corners(sides.length) : [], 'right');
        expect(points.every(Number.isFinite)).toBe(true);
        const span = Math.max(...points) - Math.min(...points);
        expect(Math.hypot(points[0]! - points.at(-2)!, points[1]! - points.at(-1)!)).toBeLessThan(
          1e-3 * span + 1e-3,
        );
        // y points down: anticlockwise on the screen has a negative area.
        expect(area(points)).toBeLessThan(0);
      }),
    );
  });

  it('has a place for every side and every corner', () => {
    fc.assert(
      fc.property(anySides, (sides) => {
        const shape = outline(sides, corners(sides.length), 'right');
        expect(shape.sides).toHaveLength(sides.length);
        expect(shape.corners).toHaveLength(sides.length);
        for (const { x, y, outX, outY } of [...shape.sides, ...shape.corners]) {
          expect([x, y].every(Number.isFinite)).toBe(true);
          expect(Math.hypot(outX, outY)).toBeCloseTo(1);
        }
      }),
    );
  });

  it('looks like a rectangle where opposite sides match', () => {
    const { bounds, sides } = outline([58, 36, 58, 36], corners(4), 'right');
    const round = 2 * 1.1; // rounded corners add their radius on both sides
    expect(bounds.x1 - bounds.x0).toBeCloseTo(58 + round, 3);
    expect(bounds.y1 - bounds.y0).toBeCloseTo(36 + round, 3);
    expect(sides.map(({ outX, outY }) => [Math.round(outX) + 0, Math.round(outY) + 0])).toEqual([
      [0, -1],
      [-1, 0],
      [0, 1],
      [1, 0],
    ]);
  });

  it('is mirrored for the left hand and otherwise the same', () => {
    fc.assert(
      fc.property(anySides, (sides) => {
        const right = outline(sides, corners(sides.length), 'right');
        const left = outline(sides, corners(sides.length), 'left');
        expect([...left.points]).toEqual([...right.points].map((value, i) => (i % 2 === 0 ? -value : value)));
        left.sides.forEach(({ x, y }, i) => {
          expect(x).toBeCloseTo(-right.sides[i]!.x);
          expect(y).toBe(right.sides[i]!.y);
        });
      }),
    );
  });

  it('is a circle without corners, a drop with one, a lens with two', () => {
    const circle = outline([90], [], 'right');
    const around = lengths(circle.points).reduce((sum, length) => sum + length, 0);
    expect(around).toBeGreaterThan(89);
    expect(around).toBeLessThan(91);
    const drop = outline([90], corners(1), 'right');
    expect(drop.corners[0]!.y).toBeCloseTo(drop.bounds.y0, 3);
    const lens = outline([40, 40], corners(2), 'right');
    expect(lens.corners[0]!.x).toBeCloseTo(lens.bounds.x0, 1);
    expect(lens.corners[1]!.x).toBeCloseTo(lens.bounds.x1, 1);
  });
});
