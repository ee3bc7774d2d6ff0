import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { positionToSpot } from '../../src/drawing/scene.ts';
import type { Making } from '../../src/state/snapshot.ts';
import type { Label, Part, Scene } from '../../src/table/draw-list.ts';
import { makingOf, sceneOf, wholeOf } from './drawing-making.ts';

type Point = { x: number; y: number };

/** Middles of all positions of a round as drawn, in working order. */
function places(scene: Scene, name: 'front' | 'foundation' | 'edging', length: number, edging = 0): Point[] {
  const parts = new Map<string, Part>(wholeOf(scene).parts.map((part) => [part.key, part]));
  return Array.from({ length }, (_, node) => {
    const spot = positionToSpot(scene, { round: name, edging, node })!;
    const { marks } = parts.get(spot.part)!;
    return { x: marks.x[spot.index]!, y: marks.y[spot.index]! };
  });
}

const apart = (a: Point, b: Point) => Math.hypot(a.x - b.x, a.y - b.y);
const steps = (points: Point[]) => points.map((point, i) => apart(point, points[(i + 1) % points.length]!));

/** The nearest that any two of them lie, found in squares of one stitch. */
function nearest(points: Point[]): number {
  const squares = new Map<string, Point[]>();
  let least = Number.POSITIVE_INFINITY;
  for (const point of points) {
    const [column, row] = [Math.floor(point.x), Math.floor(point.y)];
    for (let i = -1; i <= 1; i++) {
      for (let j = -1; j <= 1; j++) {
        for (const other of squares.get(`${column + i},${row + j}`) ?? []) {
          least = Math.min(least, apart(point, other));
        }
      }
    }
    const own = squares.get(`${column},${row}`) ?? [];
    squares.set(`${column},${row}`, [...own, point]);
  }
  return least;
}

const lanesOf = (making: Making, scene: Scene) => {
  const last = making.worked.edgings.length - 1;
  return {
    front: places(scene, 'front', making.edge.total),
    edging: places(scene, 'edging', making.worked.edgings[last]!.length, last),
    foundation: places(scene, 'foundation', making.worked.foundation.length),
  };
};

const anyPanel = fc
  .record({
    sides: fc.array(fc.integer({ min: 6, max: 80 }), { minLength: 3, maxLength: 12 }),
    size: fc.integer({ min: 1, max: 4 }),
    edgings: fc.integer({ min: 1, max: 2 }),
    arrangement: fc.constantFrom('together' as const, 'apart' as const),
  })
  .map(({ sides, size, edgings, arrangement }) => {
    const corner = { made: 'chain' as const, size };
    const choices = { edgings: Array.from({ length: edgings }, () => ({ arm: 1, corner })) };
    const input = { sides, corner, counted: 'stitches-only' as const };
    return { sides, making: makingOf(input, { choices }), arrangement };
  });

describe('the lanes of the whole panel', () => {
  it('have their positions neither too far apart nor on top of each other, round every corner', () => {
    fc.assert(
      fc.property(anyPanel, ({ making, arrangement }) => {
        const lanes = lanesOf(making, sceneOf(making, 0, { arrangement }));
        for (const points of [lanes.front, lanes.edging]) {
          expect(Math.max(...steps(points))).toBeLessThan(1.8);
          expect(Math.min(...steps(points))).toBeGreaterThan(0.3);
          expect(nearest(points)).toBeGreaterThan(0.3);
        }
        expect(nearest(lanes.foundation)).toBeGreaterThan(0.15);
      }),
      { numRuns: 60 },
    );
  });
});

describe('words on the whole panel', () => {
  /** Half of what a line of words takes, in CSS px, somewhat less than it really is. */
  const halfSize = ({ text, px }: Label) => [(text.length * px * 0.45) / 2, px * 0.4] as const;
  const middleOf = (label: Label, zoom: number) => {
    const [half] = halfSize(label);
    const before = label.align === 'left' ? half : label.align === 'right' ? -half : 0;
    return { x: label.x * zoom + (label.dx ?? 0) + before, y: label.y * zoom + (label.dy ?? 0) };
  };

  it('never cover each other, whatever the zoom', () => {
    fc.assert(
      fc.property(anyPanel, fc.double({ min: 1, max: 40, noNaN: true }), ({ making, arrangement }, zoom) => {
        const { labels } = wholeOf(sceneOf(making, 0, { arrangement }));
        const shown = labels.filter(
          ({ minPx = 0, maxPx = Number.POSITIVE_INFINITY }) => zoom >= minPx && zoom <= maxPx,
        );
        const covered = shown.flatMap((label, i) =>
          shown.slice(i + 1).filter((other) => {
            const [a, b] = [middleOf(label, zoom), middleOf(other, zoom)];
            const [own, its] = [halfSize(label), halfSize(other)];
            return Math.abs(a.x - b.x) < own[0] + its[0] && Math.abs(a.y - b.y) < own[1] + its[1];
          }),
        );
        expect(covered.map(({ key }) => key)).toEqual([]);
      }),
      { numRuns: 80 },
    );
  });
});
