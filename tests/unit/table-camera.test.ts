import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { SceneView } from '../../src/table/draw-list.ts';
import {
  between,
  clampPx,
  fitBounds,
  LEAST_PX,
  MOST_PX,
  shownBox,
  toScreen,
  toWorld,
  zoomAbout,
} from '../../src/table/view/camera.ts';
import { follow, leastPx, panned, wantedCamera, zoomed } from '../../src/table/view/looking.ts';

const region = { x: 20, y: 60, width: 800, height: 400 };
const cameras = fc.record({
  x: fc.double({ min: -1e4, max: 1e4, noNaN: true }),
  y: fc.double({ min: -1e4, max: 1e4, noNaN: true }),
  px: fc.double({ min: 0.01, max: 90, noNaN: true }),
});
const places = fc.record({
  x: fc.double({ min: 0, max: 900, noNaN: true }),
  y: fc.double({ min: 0, max: 500, noNaN: true }),
});

describe('camera', () => {
  test('a point goes to the screen and back', () => {
    fc.assert(
      fc.property(cameras, places, (camera, { x, y }) => {
        const world = toWorld({ camera, region }, { x, y });
        const back = toScreen({ camera, region }, world);
        expect(back.x).toBeCloseTo(x, 5);
        expect(back.y).toBeCloseTo(y, 5);
      }),
    );
  });

  test('zooming leaves what is under the pointer where it is', () => {
    fc.assert(
      fc.property(
        cameras,
        places,
        fc.double({ min: 0.2, max: 5, noNaN: true }),
        (camera, { x, y }, factor) => {
          const held = toWorld({ camera, region }, { x, y });
          const after = zoomAbout({ camera, region }, { factor, about: { x, y } });
          const now = toScreen({ camera: after, region }, held);
          expect(now.x).toBeCloseTo(x, 4);
          expect(now.y).toBeCloseTo(y, 4);
        },
      ),
    );
  });

  test('fitting shows all of the bounds inside the region', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.5, max: 3e4, noNaN: true }),
        fc.double({ min: 0.5, max: 3e4, noNaN: true }),
        (width, height) => {
          const bounds = { x0: -3, y0: 5, x1: -3 + width, y1: 5 + height };
          const shown = shownBox({ camera: fitBounds(bounds, region, 20), region });
          const slack = 1e-6 * Math.max(width, height);
          expect(shown.x0).toBeLessThanOrEqual(bounds.x0 + slack);
          expect(shown.y0).toBeLessThanOrEqual(bounds.y0 + slack);
          expect(shown.x1).toBeGreaterThanOrEqual(bounds.x1 - slack);
          expect(shown.y1).toBeGreaterThanOrEqual(bounds.y1 - slack);
        },
      ),
    );
  });

  test('the size of a stitch stays within its limits, whatever is asked', () => {
    expect(clampPx(Number.NaN)).toBe(1);
    expect(clampPx(1e9)).toBe(MOST_PX);
    expect(clampPx(0)).toBe(LEAST_PX);
  });

  test('a motion begins and ends where it should', () => {
    const [a, b] = [
      { x: 0, y: 0, px: 4 },
      { x: 10, y: -2, px: 16 },
    ];
    expect(between(a, b, 0)).toEqual(a);
    expect(between(a, b, 1)).toEqual(b);
    expect(between(a, b, 0.5).px).toBeCloseTo(8);
  });
});

function view(id: SceneView['id'], more: Partial<SceneView> = {}): SceneView {
  return { id, bounds: { x0: 0, y0: 0, x1: 60, y1: 30 }, parts: [], labels: [], signs: [], ...more };
}

describe('where a view looks', () => {
  const close = (x: number) => view('close', { centre: { x, y: 12 }, px: 30 });

  test('by itself it looks where the scene asks', () => {
    expect(wantedCamera(close(7), region)).toEqual({ x: 7, y: 12, px: 30 });
    const first = follow(null, null, close(7), region);
    expect(follow(first, close(7), close(8), region).camera).toEqual({ x: 8, y: 12, px: 30 });
  });

  test('moved by hand it stays until the scene looks elsewhere', () => {
    const moved = panned(follow(null, null, close(7), region), close(7), -300, 50);
    expect(moved.camera).toEqual({ x: 17, y: 12, px: 30 });
    expect(follow(moved, close(7), close(7), region).camera.x).toBe(17);
    expect(follow(moved, close(7), close(8), region).camera.x).toBe(8);
  });

  test('a zoom by hand outlasts a step', () => {
    const first = follow(null, null, close(7), region);
    const nearer = zoomed(first, close(7), region, { factor: 2, about: { x: 420, y: 260 } });
    expect(nearer.camera.px).toBe(60);
    expect(follow(nearer, close(7), close(8), region).camera).toEqual({ x: 8, y: 12, px: 60 });
  });

  test('the close-up never moves along y', () => {
    const first = follow(null, null, close(7), region);
    expect(panned(first, close(7), 0, 400).camera.y).toBe(12);
    expect(zoomed(first, close(7), region, { factor: 1.5, about: { x: 30, y: 70 } }).camera.y).toBe(12);
  });

  test('the whole is fitted anew when the panel changes its shape', () => {
    const first = zoomed(follow(null, null, view('whole'), region), view('whole'), region, {
      factor: 3,
      about: { x: 100, y: 100 },
    });
    const same = follow(first, view('whole'), view('whole'), region);
    expect(same.camera).toEqual(first.camera);
    const other = view('whole', { bounds: { x0: 0, y0: 0, x1: 90, y1: 30 } });
    const reshaped = follow(first, view('whole'), other, region);
    expect(reshaped).toEqual({ camera: wantedCamera(other, region), panned: false, zoomed: false });
  });

  test('the drawing cannot be lost', () => {
    let looking = follow(null, null, view('whole'), region);
    for (let turn = 0; turn < 50; turn++) looking = panned(looking, view('whole'), 900, -900);
    expect(looking.camera).toMatchObject({ x: 0, y: 30 });
    for (let turn = 0; turn < 50; turn++)
      looking = zoomed(looking, view('whole'), region, { factor: 0.5, about: { x: 400, y: 200 } });
    expect(looking.camera.px).toBeCloseTo(leastPx(view('whole'), region));
  });
});
