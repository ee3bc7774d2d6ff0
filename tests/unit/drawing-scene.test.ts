import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { actOf, type Corner } from '../../core/index.ts';
import { positionToSpot, spotToPosition } from '../../src/drawing/scene.ts';
import type { Making } from '../../src/state/snapshot.ts';
import { Glyph, Look, type Marks, type Part } from '../../src/table/draw-list.ts';
import {
  CHAINS,
  closeOf,
  type MakingOptions,
  makingOf,
  ONE_SHORT,
  partnerMark,
  partOf,
  RECTANGLE,
  sceneOf,
  wholeOf,
} from './drawing-making.ts';

const columns = (marks: Marks) => [marks.x, marks.y, marks.angle, marks.scale];
const gapMarks = (parts: readonly Part[]) =>
  parts.flatMap((part) =>
    [...part.marks.look].flatMap((look, i) =>
      look === Look.gap ? [{ key: part.key, glyph: part.marks.glyph[i] }] : [],
    ),
  );

const anyCorner: fc.Arbitrary<Corner> = fc.oneof(
  fc.record({ made: fc.constant('chain' as const), size: fc.integer({ min: 0, max: 4 }) }),
  fc.constant({ made: 'stitch' as const, size: 1 }),
);
/** Shapes that can be planned: sides of at least 12, so that the arms of a few edgings fit. */
const anyMaking = fc
  .record({
    sides: fc.array(fc.integer({ min: 12, max: 60 }), { minLength: 1, maxLength: 9 }),
    corner: anyCorner,
    edgings: fc.integer({ min: 1, max: 3 }),
    manner: fc.constantFrom('corner-to-corner' as const, 'stitch-by-stitch' as const),
    easing: fc.constantFrom('end' as const, 'spread' as const),
    missed: fc.integer({ min: 0, max: 3 }),
  })
  .map(({ sides, corner, edgings, missed, manner, easing }) => {
    const options: MakingOptions = {
      manner,
      easing,
      choices: { edgings: Array.from({ length: edgings }, () => ({ arm: 1, corner })) },
      mishaps: Array.from({ length: missed }, (_, i) => ({
        kind: i % 2 === 0 ? 'stitch-missed' : 'stitch-doubled',
        round: 'foundation',
        side: i % sides.length,
        place: 2,
      })),
    };
    return makingOf({ sides, corner, counted: 'stitches-only' }, options);
  });

describe('every scene', () => {
  it('is finite in every mark, ribbon, label, sign and bound', () => {
    fc.assert(
      fc.property(
        anyMaking,
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.constantFrom('right' as const, 'left' as const),
        fc.constantFrom('together' as const, 'apart' as const),
        (making, share, hand, arrangement) => {
          const scene = sceneOf(making, Math.floor(share * making.steps.length), { hand, arrangement });
          const strange = scene.views.flatMap((view) => [
            ...Object.values(view.bounds).filter((value) => !Number.isFinite(value)),
            ...view.parts.filter(({ marks, made, ribbons }) => {
              const whole = columns(marks).every((column) => column.length === marks.count);
              const numbers = [...columns(marks), ...ribbons.map(({ points }) => points)];
              return !whole || made < 0 || !numbers.every((column) => column.every(Number.isFinite));
            }),
            ...view.labels.filter(({ x, y, text }) => !Number.isFinite(x + y) || text === ''),
            ...view.signs.filter((sign) =>
              'points' in sign ? !sign.points.every(Number.isFinite) : !Number.isFinite(sign.x + sign.y),
            ),
          ]);
          expect(strange).toEqual([]);
        },
      ),
      { numRuns: 40 },
    );
  });

  it('draws every position of every round once on the whole panel', () => {
    fc.assert(
      fc.property(anyMaking, (making) => {
        const { parts } = wholeOf(sceneOf(making, 0));
        const count = (name: string) =>
          parts
            .filter(({ key }) => key.startsWith(name) && !key.endsWith('.gaps'))
            .reduce((sum, part) => sum + part.marks.count, 0);
        expect(count('front.')).toBe(making.pairing.front);
        expect(count('bars.')).toBe(making.pairing.pairs);
        expect(count('foundation.')).toBe(making.worked.foundation.length);
        making.worked.edgings.forEach((round, i) => {
          expect(count(`edging${i}.`)).toBe(round.length);
        });
        const empty = making.pairing.runs
          .filter(({ kind }) => kind.endsWith('alone'))
          .reduce((sum, run) => sum + run.count, 0);
        expect(gapMarks(parts)).toHaveLength(empty);
      }),
      { numRuns: 40 },
    );
  });

  it('gives every spot a position and every position its spot', () => {
    fc.assert(
      fc.property(anyMaking, fc.double({ min: 0, max: 1, noNaN: true }), (making, share) => {
        const scene = sceneOf(making, Math.floor(share * making.steps.length));
        for (const part of wholeOf(scene).parts) {
          if (!part.solid || part.key.startsWith('bars') || part.key.endsWith('.gaps')) continue;
          for (const index of [0, part.marks.count - 1]) {
            const spot = { view: 'whole' as const, part: part.key, index };
            expect(positionToSpot(scene, spotToPosition(scene, spot)!)).toEqual(spot);
          }
        }
        for (const part of closeOf(scene).parts) {
          const last = spotToPosition(scene, { view: 'close', part: part.key, index: part.marks.count - 1 });
          expect(last).not.toBeNull();
          expect(
            spotToPosition(scene, { view: 'close', part: part.key, index: part.marks.count }),
          ).toBeNull();
        }
      }),
      { numRuns: 40 },
    );
  });
});

describe('the whole panel', () => {
  const meets = makingOf(RECTANGLE);

  /** How far partners lie apart, and how much of that along the lane, stitch by stitch of each side. */
  function waysBetween(sides: number[]) {
    const making = makingOf({ sides, corner: CHAINS, counted: 'stitches-only' });
    expect(making.pairing.verdict.kind).toBe('meets');
    const scene = sceneOf(making);
    return sides.flatMap((stitches, side) => {
      const { marks } = partOf(scene, `front.${side}`);
      return Array.from({ length: stitches }, (_, i) => {
        const back = partnerMark(making, scene, side, i);
        const [dx, dy] = [back.x - marks.x[i]!, back.y - marks.y[i]!];
        const along = Math.abs(dx * Math.cos(marks.angle[i]!) + dy * Math.sin(marks.angle[i]!));
        return { across: Math.hypot(dx, dy), along, toEnd: Math.min(i, stitches - 1 - i) / stitches };
      });
    });
  }
  const anyCount = fc.integer({ min: 8, max: 80 });

  it('lays partners side by side on any rectangle', () => {
    fc.assert(
      fc.property(anyCount, anyCount, (long, short) => {
        // Narrow ones have rounder corners, so that the lanes fit: there partners slide a little.
        const narrow = Math.min(long, short) < 24;
        for (const { across, along } of waysBetween([long, short, long, short])) {
          expect(along).toBeLessThan(narrow ? 1.7 : 1);
          expect(across).toBeLessThan(narrow ? 2.6 : 2.2);
        }
      }),
      { numRuns: 15 },
    );
  });

  it('lays partners beside each other on any panel, a little askew only towards sharp corners', () => {
    fc.assert(
      fc.property(fc.array(anyCount, { minLength: 3, maxLength: 8 }), (sides) => {
        for (const { across, along, toEnd } of waysBetween(sides)) {
          // The way round a sharp corner is longer outside than inside by up to five stitches.
          expect(across).toBeLessThan(4.2);
          if (toEnd > 0.4) expect(along).toBeLessThan(2);
        }
      }),
      { numRuns: 30 },
    );
  });

  it('has one gap mark in the lane of the short side, and none elsewhere', () => {
    const short = makingOf(RECTANGLE, { mishaps: [ONE_SHORT] });
    expect(gapMarks(wholeOf(sceneOf(short)).parts)).toEqual([{ key: 'edging0.2.gaps', glyph: Glyph.hollow }]);
    expect(gapMarks(wholeOf(sceneOf(meets)).parts)).toEqual([]);
    const surplus = wholeOf(sceneOf(short)).parts.filter(({ marks }) => marks.look.includes(Look.surplus));
    expect(surplus.map(({ key }) => key)).toEqual(['front.2']);
  });

  it('has the gap in the front where the back is one too long', () => {
    const long = makingOf(RECTANGLE, { mishaps: [actOf('stitch-doubled', ONE_SHORT)] });
    expect(gapMarks(wholeOf(sceneOf(long)).parts).map(({ key }) => key)).toEqual(['front.2.gaps']);
  });

  it('says the answer, both counts of each side, and which side is seen', () => {
    const texts = (making: Making) => wholeOf(sceneOf(making)).labels.map(({ text }) => text);
    expect(texts(meets)).toEqual(
      expect.arrayContaining(['196 meet', 'front 1 \u00b7 58', 'back 1 \u00b7 58']),
    );
    expect(texts(meets).some((text) => text.includes('seen from the front'))).toBe(true);
    const short = texts(makingOf(RECTANGLE, { mishaps: [ONE_SHORT] }));
    expect(short).toEqual(
      expect.arrayContaining(['195 of 196 meet', 'back 3 \u00b7 57', '1 short', 'no partner']),
    );
  });

  it('draws a ruler with the number where corners clash, stitch by stitch', () => {
    const drifted = makingOf(RECTANGLE, { mishaps: [ONE_SHORT], manner: 'stitch-by-stitch' });
    expect(drifted.pairing.clashes.length).toBeGreaterThan(0);
    const rulers = wholeOf(sceneOf(drifted)).signs.filter(({ kind }) => kind === 'ruler');
    expect(rulers).toHaveLength(drifted.pairing.clashes.length);
    expect(rulers[0]).toMatchObject({ text: '1 apart' });
  });

  it.each([
    ['a rectangle', RECTANGLE],
    ['a circle', { sides: [90], corner: [], counted: 'stitches-only' as const }],
    ['a lens', { sides: [50, 40], corner: CHAINS, counted: 'stitches-only' as const }],
  ])('is mirrored for the left hand, places and ways, and no word: %s', (_name, input) => {
    const making = makingOf(input);
    const right = wholeOf(sceneOf(making, 500));
    const left = wholeOf(sceneOf(making, 500, { hand: 'left' }));
    expect(left.parts.map(({ key, made }) => [key, made])).toEqual(
      right.parts.map(({ key, made }) => [key, made]),
    );
    expect(left.labels.map(({ text }) => text)).toEqual(right.labels.map(({ text }) => text));
    left.parts.forEach((part, p) => {
      const twin = right.parts[p]!;
      for (let i = 0; i < part.marks.count; i++) {
        expect(part.marks.x[i]).toBeCloseTo(-twin.marks.x[i]!, 3);
        expect(part.marks.y[i]).toBeCloseTo(twin.marks.y[i]!, 3);
        const across = Math.cos(part.marks.angle[i]!) + Math.cos(twin.marks.angle[i]!);
        const turned = Math.cos(part.marks.angle[i]!) - Math.cos(twin.marks.angle[i]!);
        // A stitch points the other way; a post, bar or tick is the same seen in a mirror.
        const standing = [Glyph.post, Glyph.bar, Glyph.tick].includes(part.marks.glyph[i] as 2);
        expect(standing ? turned : across).toBeCloseTo(0, 3);
      }
    });
  });

  it('runs anticlockwise on the front for the right hand, and the back against it', () => {
    const scene = sceneOf(meets);
    const top = partOf(scene, 'front.0').marks;
    expect(top.x[10]!).toBeLessThan(top.x[0]!);
    const back = partOf(scene, 'edging0.0').marks;
    expect(back.x[10]!).toBeGreaterThan(back.x[0]!);
  });
});
