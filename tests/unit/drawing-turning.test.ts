/** The back turned over lies on the front, pair by pair: that its sides run mirrored is seen, and not said. */
import { describe, expect, it } from 'vitest';
import { turnBack } from '../../src/drawing/whole/turning.ts';
import type { SceneView } from '../../src/table/draw-list.ts';
import { makingOf, sceneOf, wholeOf } from './drawing-making.ts';

/** Four sides of four lengths: laid on another side none would fit. */
const making = makingOf({
  sides: [50, 40, 34, 26],
  corner: { made: 'chain', size: 2 },
  counted: 'stitches-only',
});
const apart = wholeOf(sceneOf(making, 0, { arrangement: 'apart' }));

const frontParts = /^front\.\d+$/;
const edgingParts = /^edging0\.(?!.*gaps)/;

type Point = { x: number; y: number };
const placesOf = (view: SceneView, of: RegExp): Point[] =>
  view.parts
    .filter(({ key }) => of.test(key))
    .flatMap(({ marks }) => Array.from(marks.x, (x, i) => ({ x, y: marks.y[i] as number })));
const nearest = (to: Point, all: readonly Point[]): number =>
  Math.min(...all.map(({ x, y }) => Math.hypot(x - to.x, y - to.y)));

describe('the back turned over', () => {
  it('lies beside the front before, and on it after: every stitch on the one it is joined to', () => {
    const [before, after] = [turnBack(apart, 0), turnBack(apart, 1)];
    const front = placesOf(after, frontParts);
    expect(front.length).toBeGreaterThan(150);
    expect(placesOf(before, frontParts)).toEqual(front);
    for (const place of placesOf(before, edgingParts)) expect(place.x).toBeGreaterThan(0);
    const back = placesOf(after, edgingParts);
    expect(back.length).toBe(front.length);
    for (const place of back) expect(nearest(place, front)).toBeLessThan(0.75);
  });

  it('stands on edge halfway', () => {
    for (const { x } of placesOf(turnBack(apart, 0.5), /^(edging0|foundation)\.\d+$/))
      expect(Math.abs(x)).toBeLessThan(1e-3);
  });

  it('lies on no stitch of its own where it is not turned over but slid', () => {
    const front = placesOf(apart, frontParts);
    const xs = front.map(({ x }) => x);
    const own = placesOf(apart, edgingParts);
    const shift = Math.min(...own.map(({ x }) => x)) - Math.min(...xs);
    const far = own.filter(({ x, y }) => nearest({ x: x - shift, y }, front) > 1.5);
    expect(far.length).toBeGreaterThan(20);
  });
});
