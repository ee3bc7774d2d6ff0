import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Glyph, Look, type Part, Tone } from '../../src/table/draw-list.ts';
import { cellBounds, cellKey, cellLayers, cellPlan } from '../../src/table/glyphs/cells.ts';
import { GLYPHS } from '../../src/table/glyphs/glyphs.ts';
import { mixInks } from '../../src/table/glyphs/inks.ts';
import { stampOf } from '../../src/table/glyphs/stamps.ts';
import { CHUNK_SIZE, chunksWithin, cutChunks } from '../../src/table/painters/chunks.ts';
import { ribbonStrokes, tickStep, tickStrokes } from '../../src/table/painters/ribbons.ts';
import { lengthsAlong, stretch } from '../../src/table/painters/strokes.ts';
import { levelOf, showsAt, sizeStep, swellOf, tellingMarks } from '../../src/table/view/detail.ts';
import { LEAST_REACH_PX, nearestMark } from '../../src/table/view/hit.ts';
import { boxIn, spotIn } from '../../src/table/view/spots.ts';
import { LIGHT } from '../../src/theme/theme.ts';
import { closeView, emptyMarks, lane, rectangleRound, wholeView } from '../bench/browser/scenes.ts';

const inks = mixInks(LIGHT, LIGHT.yarns);

describe('cells', () => {
  test('a key reads back as its plan, for every glyph, tone, look and state', () => {
    const keys = new Set<number>();
    for (const glyph of Object.values(Glyph))
      for (const tone of Object.values(Tone))
        for (const look of Object.values(Look))
          for (const made of [true, false])
            for (const detail of ['small', 'full'] as const) {
              const key = cellKey({ glyph, tone, look, made, detail });
              keys.add(key);
              expect(cellPlan(key)).toEqual({ glyph, tone, look, made, detail });
            }
    expect(keys.size).toBe(11 * 8 * 5 * 2 * 2);
  });

  test('every path is well formed and stays within the bounds of its cell', () => {
    for (const glyph of Object.values(Glyph)) {
      for (const look of Object.values(Look)) {
        const plan = { glyph, tone: Tone.front, look, made: true, detail: 'full' } as const;
        const [x0, y0, x1, y1] = cellBounds(plan);
        for (const layer of cellLayers(plan).layers) {
          expect(layer.d).toMatch(/^M[-\d. MLCAZhvacz]+$/);
          const half = (layer.width ?? 0) / 2;
          for (const [x, y] of endPoints(layer.d)) {
            expect(x - half).toBeGreaterThanOrEqual(x0 - 1e-6);
            expect(x + half).toBeLessThanOrEqual(x1 + 1e-6);
            expect(y - half).toBeGreaterThanOrEqual(y0 - 1e-6);
            expect(y + half).toBeLessThanOrEqual(y1 + 1e-6);
          }
        }
      }
    }
  });

  test('the far loop of a stitch differs from the near one', () => {
    const fills = GLYPHS[Glyph.vee].full.flatMap((layer) => layer.fill ?? []);
    expect(fills).toContain('far');
    expect(fills).toContain('near');
  });
});

/** End points of absolute moves, lines and curves. */
function endPoints(d: string): [number, number][] {
  const points: [number, number][] = [];
  for (const [, command, numbers] of d.matchAll(/([MLC])([-\d. ]+)/g)) {
    const values = numbers!.trim().split(/\s+/).map(Number);
    const last = command === 'C' ? values.slice(-2) : values.slice(0, 2);
    points.push([last[0]!, last[1]!]);
  }
  return points;
}

describe('stamps', () => {
  test('made marks and marks to come take different cells', () => {
    const part = { ...lane('a', 4, 0, Glyph.vee, Tone.front), made: 2 };
    const made = [0, 1, 2, 3].map((index) => cellPlan(stampOf(part, index, 'full').cell).made);
    expect(made).toEqual([true, true, false, false]);
  });

  test('scale is a length for posts and bars and a size for the rest', () => {
    const post = stampOf(lane('a', 1, 0, Glyph.post, Tone.foundation, 3), 0, 'full');
    expect([post.sx, post.sy]).toEqual([1, 2]);
    const vee = stampOf(lane('a', 1, 0, Glyph.vee, Tone.front, 3), 0, 'full');
    expect([vee.sx, vee.sy]).toEqual([3, 3]);
  });

  test('mirrored parts turn over across the way, not along it', () => {
    const part = { ...lane('a', 1, 0, Glyph.vee, Tone.front), mirrored: true };
    const { sx, sy } = stampOf(part, 0, 'full');
    expect([sx, sy]).toEqual([1, -1]);
  });
});

describe('chunks', () => {
  test('every mark lies in exactly one chunk, within its bounds', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 3000 }), (count) => {
        const { marks } = lane('a', count, 0, Glyph.vee, Tone.front);
        const chunks = cutChunks(marks);
        expect(chunks.reduce((sum, chunk) => sum + chunk.count, 0)).toBe(count);
        chunks.forEach((chunk, number) => {
          expect(chunk.first).toBe(number * CHUNK_SIZE);
          const places = marks.x.subarray(chunk.first, chunk.first + chunk.count);
          expect(places.every((x) => x >= chunk.bounds.x0 && x <= chunk.bounds.x1)).toBe(true);
        });
      }),
      { numRuns: 25 },
    );
  });

  test('a view holds no more than what it shows', () => {
    const { marks } = lane('a', 100_000, 0, Glyph.vee, Tone.front);
    const chunks = cutChunks(marks);
    const seen = chunksWithin(chunks, { x0: 50_000, y0: -3, x1: 50_030, y1: 3 });
    expect(seen.length).toBeLessThanOrEqual(2);
    expect(seen.length).toBeGreaterThan(0);
  });
});

describe('levels of detail', () => {
  const part = rectangleRound({ key: 'a', wide: 10, high: 5, inset: 0, tone: Tone.front, layer: 0 });

  test.each([
    ['far out', 3.9, 'ribbon'],
    ['nearer', 4, 'small'],
    ['nearer still', 13.9, 'small'],
    ['close', 14, 'full'],
  ])('%s, %f px a stitch: %s', (_name, px, level) => {
    expect(levelOf(part, px, 1)).toBe(level);
  });

  test('a dense screen shows stitches at a smaller size, but not without end', () => {
    expect(levelOf(part, 2.5, 1)).toBe('ribbon');
    expect(levelOf(part, 2.5, 2)).toBe('small');
    expect(levelOf(part, 2.4, 4)).toBe('ribbon');
  });

  test('without marks there are ribbons at any size, without ribbons marks', () => {
    expect(levelOf({ ...part, marks: emptyMarks(0) }, 40, 1)).toBe('ribbon');
    expect(levelOf({ ...part, ribbons: [] }, 1, 1)).toBe('small');
  });

  test('limits of size are kept at both ends', () => {
    expect(showsAt({ minPx: 4, maxPx: 10 }, 4)).toBe(true);
    expect(showsAt({ minPx: 4, maxPx: 10 }, 10)).toBe(true);
    expect(showsAt({ minPx: 4 }, 3.99)).toBe(false);
    expect(showsAt({ maxPx: 4 }, 4.01)).toBe(false);
  });

  test('marks that tell something never get too small to see, nor much larger than need be', () => {
    const { marks } = lane('a', 4, 0, Glyph.vee, Tone.front);
    marks.look.set([Look.plain, Look.gap, Look.surplus, Look.mishap]);
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 60, noNaN: true }), (px) => {
        const sizes = [0, 1, 2, 3].map((index) => px * swellOf(marks, index, sizeStep(px), false));
        for (const [index, least] of [0, 13, 9, 9].entries()) {
          expect(sizes[index]).toBeGreaterThanOrEqual(Math.max(px, least) - 1e-9);
          expect(sizes[index]).toBeLessThanOrEqual(Math.max(px, least) * 2 ** 0.25 + 1e-9);
        }
      }),
    );
  });

  test('gaps, surplus, mishaps and corners stay on a ribbon', () => {
    const { marks } = rectangleRound({ key: 'a', wide: 10, high: 5, inset: 0, tone: Tone.front, layer: 0 });
    marks.look[3] = Look.gap;
    marks.look[7] = Look.surplus;
    marks.look[8] = Look.mishap;
    const { looks, corners } = tellingMarks(marks);
    expect(looks).toEqual([3, 7, 8]);
    expect(corners.length).toBe(8);
  });
});

describe('ribbons', () => {
  const part = rectangleRound({ key: 'a', wide: 100, high: 50, inset: 0, tone: Tone.front, layer: 0 });
  const length = (points: ArrayLike<number>) => lengthsAlong(points).at(-1)!;

  test('what is made and what is to come make up the whole band', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: part.marks.count }), (made) => {
        const strokes = ribbonStrokes({ ...part, made }, inks, 2);
        const total = strokes.reduce((sum, stroke) => sum + length(stroke.points), 0);
        expect(total).toBeCloseTo(length(part.ribbons[0]!.points), 3);
      }),
    );
  });

  test('a stretch begins and ends at its shares', () => {
    const line = [0, 0, 10, 0, 10, 10];
    expect(stretch(line, 0.25, 0.75)).toEqual([5, 0, 10, 0, 10, 5]);
    expect(stretch(line, 0.5, 0.5)).toEqual([]);
    expect(stretch(line, 0, 1)).toEqual([0, 0, 10, 0, 10, 10]);
  });

  test('ticks stand on the line, far enough apart to be told', () => {
    for (const px of [0.01, 0.1, 0.5, 1, 2, 3.9]) expect(tickStep(px) * px).toBeGreaterThanOrEqual(7);
    const ticks = tickStrokes(part, inks, 2);
    expect(ticks.length).toBe(Math.ceil(part.marks.count / tickStep(2)) - 1);
  });

  test('the seam is a ladder: rungs where it is joined, short ones where it is to come', () => {
    const ribbon = {
      ...part.ribbons[0]!,
      tone: Tone.ink,
      points: Float32Array.of(0, 0, 20, 0),
      markCount: 20,
    };
    const rungs = ribbonStrokes({ ...part, ribbons: [ribbon], made: 5 }, inks, 4);
    expect(rungs.length).toBe(20);
    const lengths = rungs.map((rung) => length(rung.points));
    expect(Math.min(...lengths.slice(0, 5))).toBeGreaterThan(Math.max(...lengths.slice(5)));
  });

  test('the number of strokes does not grow with the number of stitches', () => {
    const large = rectangleRound({
      key: 'b',
      wide: 30_000,
      high: 20_000,
      inset: 0,
      tone: Tone.front,
      layer: 0,
    });
    const px = 700 / 30_000;
    expect(tickStrokes(large, inks, px).length).toBeLessThan(400);
    expect(ribbonStrokes(large, inks, px).length).toBeLessThan(5);
  });
});

describe('pointing', () => {
  const region = { x: 0, y: 0, width: 900, height: 300 };
  const camera = { x: 20, y: 1.4, px: 30 };

  test('the nearest mark is found, like by measuring all of them', () => {
    const view = wholeView(40, 20);
    const { marks } = view.parts[0]!;
    const chunks = cutChunks(marks, 16);
    fc.assert(
      fc.property(
        fc.double({ min: -22, max: 22, noNaN: true }),
        fc.double({ min: -12, max: 12, noNaN: true }),
        (x, y) => {
          const found = nearestMark(marks, chunks, { x, y }, 2);
          let best = -1;
          let least = 2;
          for (let index = 0; index < marks.count; index++) {
            const distance = Math.hypot(marks.x[index]! - x, marks.y[index]! - y);
            if (distance < least) [least, best] = [distance, index];
          }
          expect(found?.index ?? -1).toBe(best);
        },
      ),
    );
  });

  test('a target is at least 24 px wide however far out', () => {
    const view = wholeView(40, 20);
    const far = { x: 0, y: 0, px: 2 };
    const { marks } = view.parts[0]!;
    const at = { x: 450 + marks.x[5]! * 2, y: 150 + marks.y[5]! * 2 };
    expect(spotIn(view, { camera: far, region }, { x: at.x, y: at.y + LEAST_REACH_PX - 0.5 })).not.toBeNull();
    expect(spotIn(view, { camera: far, region }, { x: at.x, y: at.y + 40 })).toBeNull();
  });

  test('what cannot be pointed at is passed over', () => {
    const view = closeView(60, 20);
    const silent = { ...view, parts: view.parts.map((part): Part => ({ ...part, solid: false })) };
    expect(spotIn(view, { camera, region }, { x: 450, y: 150 })).not.toBeNull();
    expect(spotIn(silent, { camera, region }, { x: 450, y: 150 })).toBeNull();
  });

  test('a spot has a box around its middle', () => {
    const view = closeView(60, 20);
    const spot = { view: 'close', part: 'front-lane', index: 22 } as const;
    const box = boxIn(view, { camera, region }, spot)!;
    const middle = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
    expect(spotIn(view, { camera, region }, middle)).toEqual(spot);
    expect(boxIn(view, { camera, region }, { ...spot, index: 60 })).toBeNull();
    expect(boxIn(view, { camera, region }, { ...spot, part: 'none' })).toBeNull();
  });
});
