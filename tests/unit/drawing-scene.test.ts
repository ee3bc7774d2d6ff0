import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Corner } from '../../core/index.ts';
import { buildScene, positionToSpot, type SceneInput, spotToPosition } from '../../src/drawing/scene.ts';
import type { Making, Settings } from '../../src/state/snapshot.ts';
import { Glyph, Look, type Marks, type Part, type Scene } from '../../src/table/draw-list.ts';
import { CHAINS, type MakingOptions, makingOf, ONE_SHORT, RECTANGLE } from './drawing-making.ts';

type Given = Partial<Pick<Settings, 'hand' | 'arrangement'>>;

function inputOf(making: Making, place: number, given: Given = {}): SceneInput {
  const settings = { hand: 'right', arrangement: 'together', ...given } as const;
  return { making, settings, step: making.steps.at(place), pointed: null };
}

const sceneOf = (making: Making, place = 0, given: Given = {}) => buildScene(inputOf(making, place, given));
const wholeOf = (scene: Scene) => scene.views.find(({ id }) => id === 'whole')!;
const closeOf = (scene: Scene) => scene.views.find(({ id }) => id === 'close')!;
const partOf = (scene: Scene, key: string) => wholeOf(scene).parts.find((part) => part.key === key)!;
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
          for (const view of scene.views) {
            expect(Object.values(view.bounds).every(Number.isFinite)).toBe(true);
            for (const part of view.parts) {
              const { marks } = part;
              for (const column of columns(marks)) {
                expect(column).toHaveLength(marks.count);
                expect(column.every(Number.isFinite)).toBe(true);
              }
              expect(part.made).toBeGreaterThanOrEqual(0);
              for (const { points } of part.ribbons) expect(points.every(Number.isFinite)).toBe(true);
            }
            for (const { x, y } of view.labels) expect(Number.isFinite(x) && Number.isFinite(y)).toBe(true);
            for (const sign of view.signs) {
              const numbers = 'points' in sign ? [...sign.points] : [sign.x, sign.y];
              expect(numbers.every(Number.isFinite)).toBe(true);
            }
          }
        },
      ),
      { numRuns: 60 },
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
      { numRuns: 60 },
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

  it('lays partners beside each other when everything meets', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 8, max: 80 }), { minLength: 3, maxLength: 8 }), (sides) => {
        const making = makingOf({ sides, corner: CHAINS, counted: 'stitches-only' });
        expect(making.pairing.verdict.kind).toBe('meets');
        const scene = sceneOf(making);
        for (const side of sides.keys()) {
          const { marks } = partOf(scene, `front.${side}`);
          for (let i = 0; i < sides[side]!; i++) {
            const back = partnerMark(making, scene, side, i);
            const [dx, dy] = [back.x - marks.x[i]!, back.y - marks.y[i]!];
            // Along the lane: what is left of the way once the way across is taken off.
            const along = Math.abs(dx * Math.cos(marks.angle[i]!) + dy * Math.sin(marks.angle[i]!));
            expect(along).toBeLessThan(1);
            expect(Math.hypot(dx, dy)).toBeLessThan(2.2);
          }
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
    const long = makingOf(RECTANGLE, { mishaps: [{ ...ONE_SHORT, kind: 'stitch-doubled' }] });
    expect(gapMarks(wholeOf(sceneOf(long)).parts).map(({ key }) => key)).toEqual(['front.2.gaps']);
  });

  it('says the answer, both counts of each side, and which side is seen', () => {
    const texts = (making: Making) => wholeOf(sceneOf(making)).labels.map(({ text }) => text);
    expect(texts(meets)).toEqual(expect.arrayContaining(['196 meet', 'front 58', 'back 58']));
    expect(texts(meets).some((text) => text.includes('seen from the front'))).toBe(true);
    const short = texts(makingOf(RECTANGLE, { mishaps: [ONE_SHORT] }));
    expect(short).toEqual(expect.arrayContaining(['195 of 196 meet', 'back 57', 'no partner']));
  });

  it('draws a ruler with the number where corners clash, stitch by stitch', () => {
    const drifted = makingOf(RECTANGLE, { mishaps: [ONE_SHORT], manner: 'stitch-by-stitch' });
    expect(drifted.pairing.clashes.length).toBeGreaterThan(0);
    const rulers = wholeOf(sceneOf(drifted)).signs.filter(({ kind }) => kind === 'ruler');
    expect(rulers).toHaveLength(drifted.pairing.clashes.length);
    expect(rulers[0]).toMatchObject({ text: '\u22121' });
  });

  it('is mirrored for the left hand: places and ways, and no word', () => {
    const right = wholeOf(sceneOf(meets, 500));
    const left = wholeOf(sceneOf(meets, 500, { hand: 'left' }));
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

/** The place of the back's mark that meets a front stitch. */
function partnerMark(making: Making, scene: Scene, side: number, index: number): { x: number; y: number } {
  let front = index;
  for (let i = 0; i < side; i++) front += making.edge.sides[i]! + making.edge.corners[i]!.size;
  const run = making.pairing.runs.find(({ kind, front: from, count }) => {
    const along = (front - from + making.pairing.front) % making.pairing.front;
    return kind === 'joined' && along < count;
  })!;
  const along = (front - run.front + making.pairing.front) % making.pairing.front;
  const node = (run.back - along + 2 * making.pairing.back) % making.pairing.back;
  const spot = positionToSpot(scene, { round: 'edging', edging: making.worked.edgings.length - 1, node })!;
  const { marks } = partOf(scene, spot.part);
  return { x: marks.x[spot.index]!, y: marks.y[spot.index]! };
}

describe('a step', () => {
  const making = makingOf(RECTANGLE, { mishaps: [ONE_SHORT] });
  const stages = new Map(making.steps.stretches.toReversed().map(({ stage, from }) => [stage, from]));

  it('leaves every typed array of the whole panel as it is, and changes `made` of two parts at most', () => {
    let scene = sceneOf(making, 0);
    for (let place = 1; place < making.steps.length; place++) {
      const next = buildScene(inputOf(making, place), scene);
      const changed = wholeOf(next).parts.filter((part, i) => {
        const old = wholeOf(scene).parts[i]!;
        expect(part.key).toBe(old.key);
        expect(part.revision).toBe(old.revision);
        expect(part.marks).toBe(old.marks);
        expect(part.ribbons).toBe(old.ribbons);
        return part !== old;
      });
      const jump = making.steps.at(place).stage !== making.steps.at(place - 1).stage;
      if (!jump) expect(changed.length).toBeLessThanOrEqual(2);
      scene = next;
    }
  });

  it('keeps the close-up while the hook stays within a block', () => {
    const from = (stages.get('edging') ?? 0) + 10;
    let scene = sceneOf(making, from);
    let rebuilt = 0;
    for (let place = from + 1; place < from + 100; place++) {
      const next = buildScene(inputOf(making, place), scene);
      const same = closeOf(next).parts.every((part, i) => part.marks === closeOf(scene).parts[i]?.marks);
      if (!same) rebuilt++;
      expect(closeOf(next).centre!.x).not.toBe(closeOf(scene).centre!.x);
      scene = next;
    }
    expect(rebuilt).toBeGreaterThan(0);
    expect(rebuilt).toBeLessThanOrEqual(3);
  });

  it('has made exactly what the step says', () => {
    const made = (place: number, name: string) =>
      wholeOf(sceneOf(making, place))
        .parts.filter(({ key }) => key.startsWith(name) && !key.endsWith('.gaps'))
        .reduce((sum, part) => sum + part.made, 0);
    for (const [stage, from] of stages) {
      const place = Math.min(from + 7, making.steps.length - 1);
      const step = making.steps.at(place);
      if (step.stage === 'foundation') expect(made(place, 'foundation.')).toBe(step.done);
      if (step.stage === 'edging') expect(made(place, 'edging0.')).toBe(step.done);
      if (step.stage === 'join') expect(made(place, 'bars.')).toBe(step.done);
      if (stage === 'finished') expect(made(from, 'bars.')).toBe(making.pairing.pairs);
      expect(made(place, 'front.')).toBe(196);
    }
  });

  it('joins the bar of the pair at hand', () => {
    for (const node of [10, 60, 150]) {
      const place = making.steps.stepOf('join', node);
      const scene = sceneOf(making, place);
      const made = wholeOf(scene).parts.find(({ key, made: count, marks }) => {
        return key.startsWith('bars.') && count > 0 && count < marks.count;
      })!;
      const last = spotToPosition(scene, { view: 'whole', part: made.key, index: made.made - 1 });
      expect(last).toEqual({ round: 'front', edging: 0, node });
    }
  });

  it('rebuilds what another making changes, and says so by the revision', () => {
    const before = sceneOf(makingOf(RECTANGLE), 10);
    const after = buildScene(inputOf(making, 10), before);
    const changed = wholeOf(after).parts.filter((part) => {
      const old = wholeOf(before).parts.find(({ key }) => key === part.key);
      expect(part.marks === old?.marks).toBe(part.revision === old?.revision);
      return part.revision !== old?.revision;
    });
    expect(changed.map(({ key }) => key)).toEqual(expect.arrayContaining(['front.2', 'edging0.2']));
  });
});

describe('the close-up', () => {
  const making = makingOf(RECTANGLE, { mishaps: [ONE_SHORT] });

  it('frames the pair being joined, both marks in it', () => {
    for (const node of [3, 59, 61, 120]) {
      const view = closeOf(sceneOf(making, making.steps.stepOf('join', node)));
      const frame = view.signs.find((sign) => sign.kind === 'frame' && sign.key === 'place')!;
      if (frame.kind !== 'frame') throw new Error('no frame');
      expect(frame.x).toBe(view.centre!.x);
      const inside = view.parts.filter(
        ({ key, marks }) =>
          key.startsWith('close.') && !key.includes('bars') && [...marks.x].includes(frame.x),
      );
      const names = inside.map(({ key }) => key.split('.')[1]);
      expect(names).toContain('front');
      expect(names).toContain('edging0');
    }
  });

  it('runs as the hand does: the round in work goes to the left for the right hand', () => {
    for (const [stage, name] of [
      ['join', 'front'],
      ['edging', 'edging0'],
      ['foundation', 'foundation'],
    ] as const) {
      for (const [hand, sign] of [
        ['right', -1],
        ['left', 1],
      ] as const) {
        const place = making.steps.stretches.find((stretch) => stretch.stage === stage)!.from + 40;
        const part = closeOf(sceneOf(making, place, { hand })).parts.find(({ key }) =>
          key.startsWith(`close.${name}.0`),
        )!;
        expect(Math.sign(part.marks.x[1]! - part.marks.x[0]!)).toBe(sign);
      }
    }
  });

  it('builds a window only, and the same one for a panel of a million', () => {
    const large = makingOf({
      sides: [99_000, 99_000, 99_000, 99_000],
      corner: CHAINS,
      counted: 'stitches-only',
    });
    const close = closeOf(sceneOf(large, large.steps.stepOf('edging', 200_000)));
    const marks = close.parts.reduce((sum, part) => sum + part.marks.count, 0);
    expect(marks).toBeGreaterThan(300);
    expect(marks).toBeLessThan(2000);
    const whole = wholeOf(sceneOf(large));
    expect(whole.parts.reduce((sum, part) => sum + part.marks.count, 0)).toBeLessThan(1000);
    expect(whole.parts.some((part) => part.ribbons.length > 0)).toBe(true);
  });
});

describe('the pieces apart', () => {
  it('lay the back turned over: facing sides bear the same letter, mirrored', () => {
    const view = wholeOf(sceneOf(makingOf(RECTANGLE), 0, { arrangement: 'apart' }));
    const letters = (piece: string) =>
      [0, 1, 2, 3].map((side) => view.labels.find(({ key }) => key === `${piece}.${side}`)!);
    const [front, back] = [letters('front'), letters('back')];
    expect(front.map(({ text }) => text)).toEqual([
      'A \u00b7 58',
      'B \u00b7 36',
      'C \u00b7 58',
      'D \u00b7 36',
    ]);
    expect(back.map(({ text }) => text)).toEqual(front.map(({ text }) => text));
    expect(front[1]!.x).toBeLessThan(front[3]!.x);
    expect(back[1]!.x).toBeGreaterThan(back[3]!.x);
  });

  it('run both anticlockwise for the right hand: each is seen from its right side', () => {
    const scene = sceneOf(makingOf(RECTANGLE), 0, { arrangement: 'apart' });
    const top = partOf(scene, 'front.0').marks;
    const back = partOf(scene, 'edging0.0').marks;
    expect(top.x[5]!).toBeLessThan(top.x[0]!);
    expect(back.x[5]!).toBeLessThan(back.x[0]!);
  });
});
