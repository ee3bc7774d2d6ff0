/**
 * Words on the whole panel as it is first seen, in views from a small phone's to a wide screen's: never on yarn, on
 * each other or outside. Places and sizes are measured anew here, from the marks and the letters.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Mishap } from '../../core/index.ts';
import { buildScene } from '../../src/drawing/scene.ts';
import { type Label, type SceneView, Tone } from '../../src/table/draw-list.ts';
import { labelsShown } from '../../src/table/painters/words.ts';
import type { Rect } from '../../src/table/view/camera.ts';
import { middleOf } from '../../src/table/view/hit.ts';
import { wantedCamera } from '../../src/table/view/looking.ts';
import { CHAINS, closeOf, inputOf, makingOf, sceneOf, wholeOf } from '../unit/drawing-making.ts';

type Box = { x0: number; y0: number; x1: number; y1: number };

/** Views of the board: the narrowest phone is 320 px wide and keeps some of that for buttons. */
const regions = fc
  .record({ width: fc.integer({ min: 264, max: 2560 }), height: fc.integer({ min: 150, max: 1300 }) })
  .map((size) => ({ x: 0, y: 0, ...size }));

const mishaps = (sides: number) =>
  fc.oneof<fc.Arbitrary<Mishap[]>[]>(
    fc.constant<Mishap[]>([]),
    fc
      .nat(sides - 1)
      .map((side) => [{ kind: 'stitch-missed' as const, round: 'edging' as const, side, place: 1 }]),
    fc
      .record({ corner: fc.nat(sides - 1), count: fc.constantFrom(-2, 1, 2) })
      .map((moved) => [{ kind: 'corner-moved' as const, then: 'from-total' as const, ...moved }]),
    fc
      .nat(sides - 1)
      .map((corner) => [{ kind: 'join-chain-skipped' as const, round: 'join' as const, corner }]),
    fc.constantFrom<Mishap[]>(
      [{ kind: 'arms-forgotten', round: 'plan' }],
      [{ kind: 'last-hole', round: 'join' }],
      ...(sides > 2
        ? [
            [{ kind: 'order-not-mirrored' as const, round: 'plan' as const }],
            [{ kind: 'corner-forgotten' as const, round: 'foundation' as const, corner: sides - 2 }],
          ]
        : []),
    ),
  );

const panels = fc.array(fc.integer({ min: 6, max: 200 }), { minLength: 1, maxLength: 24 }).chain((sides) =>
  fc.record({
    sides: fc.constant(sides),
    mishaps: mishaps(sides.length),
    manner: fc.constantFrom('corner-to-corner' as const, 'stitch-by-stitch' as const),
    hand: fc.constantFrom('left' as const, 'right' as const),
    arrangement: fc.constantFrom('together' as const, 'apart' as const, 'diagram' as const),
  }),
);

/** Letters take no less room than this, as shares of their height. */
const LETTER = { width: 0.45, height: 0.7 };

function boxOf(label: Label, px: number): Box {
  const width = label.text.length * label.px * LETTER.width;
  const height = label.px * LETTER.height;
  const left = label.align === 'left' ? 0 : label.align === 'right' ? -width : -width / 2;
  const x0 = label.x * px + (label.dx ?? 0) + left;
  const y0 = label.y * px + (label.dy ?? 0) - height / 2;
  return { x0, y0, x1: x0 + width, y1: y0 + height };
}

const overlap = (a: Box, b: Box) => a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1;
const YARN: readonly number[] = [Tone.front, Tone.edging, Tone.foundation];

/** What is wrong with the words of a view, as first seen. */
function faults(view: SceneView, region: { width: number; height: number; x: number; y: number }): string[] {
  const { x, y, px } = wantedCamera(view, region);
  const shown = view.labels.filter(({ minPx = 0, maxPx = Infinity }) => px >= minPx && px <= maxPx);
  const boxes = shown.map((label) => boxOf(label, px));
  const [halfWidth, halfHeight] = [region.width / 2, region.height / 2];
  const frame = {
    x0: x * px - halfWidth,
    x1: x * px + halfWidth,
    y0: y * px - halfHeight,
    y1: y * px + halfHeight,
  };
  const yarn = view.parts.flatMap(({ marks, key }) =>
    key === 'markers'
      ? []
      : Array.from({ length: marks.count }, (_, index) => ({
          ...middleOf(marks, index),
          tone: marks.tone[index]!,
        })),
  );
  return shown.flatMap((label, i) => {
    const box = boxes[i]!;
    const isOutside = box.x0 < frame.x0 || box.x1 > frame.x1 || box.y0 < frame.y0 || box.y1 > frame.y1;
    const covered = boxes.findIndex((other, j) => j > i && overlap(box, other));
    const onYarn = yarn.some(
      (mark) =>
        YARN.includes(mark.tone) &&
        overlap(box, { x0: mark.x * px, x1: mark.x * px, y0: mark.y * px, y1: mark.y * px }),
    );
    return [
      ...(isOutside ? [`outside: ${label.text}`] : []),
      ...(covered >= 0 ? [`${label.text} on ${shown[covered]!.text}`] : []),
      ...(onYarn ? [`on yarn: ${label.text}`] : []),
    ];
  });
}

/** Views of the close-up: on a phone a strip, on a wide screen half of the board. */
const strips = fc
  .record({ width: fc.integer({ min: 300, max: 2560 }), height: fc.integer({ min: 190, max: 420 }) })
  .map((size) => ({ x: 0, y: 0, ...size }));

/** CSS px from the edge of a view to words that stand at it, and from a flag's foot to the middle of its number. */
const PINNED = 14;
const NUMBER = 25;

/** Words of the close-up where they stand on the screen, its flags' numbers and rulers' lengths among them. */
function closeTexts(view: SceneView, region: Rect): { text: string; box: Box }[] {
  const camera = wantedCamera(view, region);
  const { x: centre, px } = camera;
  const half = region.width / 2;
  const placed = labelsShown(view.labels, { region, camera }).map((label) => {
    if (label.pin === undefined) return { text: label.text, box: boxOf(label, px) };
    const x = (centre * px + (label.pin === 'left' ? PINNED - half : half - PINNED)) / px;
    return { text: label.text, box: boxOf({ ...label, x, dx: 0 }, px) };
  });
  const type = { key: '', px: 14, tone: Tone.marker, align: 'centre' } as const;
  const signs = view.signs.flatMap((sign) => {
    if (sign.kind === 'flag') {
      const dy = sign.angle === 0 ? -NUMBER : NUMBER;
      return [{ text: sign.text, box: boxOf({ ...type, text: sign.text, x: sign.x, y: sign.y, dy }, px) }];
    }
    return [];
  });
  // What slides in at the edges is not yet all there.
  return [...placed, ...signs].filter(
    ({ box }) => box.x1 > centre * px - half && box.x0 < centre * px + half,
  );
}

/** What is wrong with the words of a close-up. */
function closeFaults(view: SceneView, region: Rect): string[] {
  const { y, px } = wantedCamera(view, region);
  const texts = closeTexts(view, region);
  const [top, bottom] = [y * px - region.height / 2, y * px + region.height / 2];
  const yarn = view.parts.flatMap(({ marks }) =>
    Array.from({ length: marks.count }, (_, index) => ({
      ...middleOf(marks, index),
      tone: marks.tone[index]!,
    })).filter(({ tone }) => YARN.includes(tone)),
  );
  return texts.flatMap(({ text, box }, i) => {
    const other = texts.find((one, j) => j > i && overlap(box, one.box));
    const isOnYarn = yarn.some(({ x, y }) =>
      overlap(box, { x0: x * px, x1: x * px, y0: y * px, y1: y * px }),
    );
    return [
      ...(box.y0 < top || box.y1 > bottom ? [`outside: ${text}`] : []),
      ...(other ? [`${text} on ${other.text}`] : []),
      ...(isOnYarn ? [`on yarn: ${text}`] : []),
    ];
  });
}

describe('words in the close-up', () => {
  test('stand clear of yarn, of each other and of the upper and lower edge, wherever the work or what is wrong is', () => {
    fc.assert(
      fc.property(
        panels,
        strips,
        fc.nat(),
        fc.boolean(),
        ({ sides, hand, ...options }, region, at, preview) => {
          const making = makingOf({ sides, corner: CHAINS, counted: 'stitches-only' }, options);
          const place = at % making.steps.length;
          const finding = at % Math.max(1, making.pairing.findings.length);
          const input = inputOf(making, place, { hand });
          const scene = buildScene(preview ? { ...input, preview, finding } : input);
          expect(closeFaults(closeOf(scene), region)).toEqual([]);
        },
      ),
      { numRuns: 150 },
    );
  });
});

describe('words on the whole panel', () => {
  test('stand clear of yarn, of each other and of the edge of the view', () => {
    fc.assert(
      fc.property(panels, regions, ({ sides, hand, arrangement, ...options }, region) => {
        const making = makingOf({ sides, corner: CHAINS, counted: 'stitches-only' }, options);
        expect(faults(wholeOf(sceneOf(making, 0, { hand, arrangement })), region)).toEqual([]);
      }),
      { numRuns: 300 },
    );
  });

  test('tell every side of a panel whose sides are much alike', () => {
    const alike = fc.array(fc.integer({ min: 20, max: 50 }), { minLength: 3, maxLength: 12 });
    fc.assert(
      fc.property(alike, regions, (sides, region) => {
        const making = makingOf({ sides, corner: CHAINS, counted: 'stitches-only' });
        const view = wholeOf(sceneOf(making));
        const { px } = wantedCamera(view, region);
        const told = view.labels.filter(({ minPx = 0, maxPx = Infinity }) => px >= minPx && px <= maxPx);
        const silent = sides.filter(
          (_, side) => !told.some(({ key }) => key.split('.')[1] === `${side}` && key.startsWith('front.')),
        );
        expect(silent).toEqual([]);
      }),
      { numRuns: 150 },
    );
  });
});
