import { describe, expect, test } from 'vitest';
import { planBack, readEdge, type Step, steps } from '../../core/index.ts';
import { movingScene, stepScene, stillScene } from '../../src/stitch/drawing.ts';
import { movesOf, STITCH_KINDS } from '../../src/stitch/moves.ts';
import type { Point } from '../../src/stitch/point.ts';
import { HIGH, type Item, mirror, type Scene, WIDE } from '../../src/stitch/scene.ts';
import { plain, type Variant, variantOf } from '../../src/stitch/variant.ts';
import { sayStep } from '../../src/words/walk/step.ts';

const VARIANTS: Variant[] = [
  ...STITCH_KINDS.map(plain),
  { ...plain('double-crochet'), intoCorner: true, where: 'before-corner' },
  { ...plain('double-crochet'), intoCorner: true, where: 'past-corner', made: 2 },
  { ...plain('double-crochet'), where: 'hidden', made: 1 },
  { ...plain('double-crochet'), where: 'first' },
  { ...plain('double-crochet'), where: 'attach-place' },
  { ...plain('double-crochet'), where: 'same-place' },
  { ...plain('slip-stitch'), joins: 'first' },
  { ...plain('slip-stitch'), joins: 'corner', made: 1 },
  { ...plain('slip-stitch'), joins: 'last-hole' },
  { ...plain('needle-closing'), adds: 1, yarn: 'edging' },
  { ...plain('needle-closing'), adds: 0, yarn: 'join' },
  { ...plain('running-stitch'), back: true },
  { ...plain('chain'), after: 'edging', made: 1 },
  { ...plain('chain'), after: 'knot' },
  { ...plain('chain'), after: 'attach' },
];

const named = VARIANTS.map((variant): [string, Variant] => [JSON.stringify(variant), variant]);

const points = (scene: Scene): number[] =>
  scene.flatMap((item) => {
    if ('points' in item) return item.points.flat();
    if ('tip' in item) return [...item.tip, item.angle];
    return 'centre' in item ? [...item.centre] : [...item.where];
  });

const loopsOnHook = (scene: Scene): number =>
  new Set(
    scene
      .filter((item) => item.what === 'strand' && /^(live|wrap|up|chained|half)-front$/.test(item.key))
      .map(({ key }) => key),
  ).size;

/** Where the eye is led: the loops that the hook takes, and rings around a place. */
const lit = (scene: Scene): Point[] =>
  scene.flatMap((item): Point[] => {
    if (item.what === 'place') return [item.centre];
    if (item.what !== 'strand' || item.marked !== true) return [];
    const sum = item.points.reduce<Point>(([x, y], [dx, dy]) => [x + dx, y + dy], [0, 0]);
    return [[sum[0] / item.points.length, sum[1] / item.points.length]];
  });

/** Loops of one stitch, or of a pair laid together, lie this near each other; the next stitch lies 60 off. */
const ONE_PLACE = 40;

const spread = (spots: readonly Point[]): number =>
  Math.max(0, ...spots.flatMap(([x, y]) => spots.map(([a, b]) => Math.hypot(x - a, y - b))));

const rounded = (scene: Scene): unknown =>
  JSON.parse(
    JSON.stringify(scene, (_, value) => (typeof value === 'number' ? Math.round(value * 1e6) / 1e6 : value)),
  );

describe.each(named)('%s', (_, variant) => {
  const of = movesOf(variant.kind).length;

  test('every picture is made of numbers, and no two items share a key', () => {
    for (let done = 0; done <= of; done++) {
      const scene = stillScene(variant, done, 'right');
      expect(scene.length).toBeGreaterThan(5);
      expect(points(scene).every(Number.isFinite)).toBe(true);
      const keys = scene.map(({ key }) => key);
      expect(keys.filter((key, i) => keys.indexOf(key) !== i)).toEqual([]);
    }
  });

  test('the loops drawn on the hook are the loops the moves say', () => {
    for (let done = 0; done <= of; done++) {
      const moves = movesOf(variant.kind);
      const expected = done === 0 ? moves[0]?.loopsBefore : moves[done - 1]?.loopsAfter;
      expect(loopsOnHook(stillScene(variant, done, 'right')), `after move ${done}`).toBe(expected);
    }
  });

  test('a movement starts at the still before and ends at the still after', () => {
    for (let i = 0; i < of; i++) {
      expect(movingScene(variant, i, 0, 'right')).toEqual(stillScene(variant, i, 'right'));
      expect(movingScene(variant, i, 1, 'right')).toEqual(stillScene(variant, i + 1, 'right'));
      expect(points(movingScene(variant, i, 0.37, 'left')).every(Number.isFinite)).toBe(true);
    }
  });

  test('one place at a time is lit, never two', () => {
    for (let done = 0; done <= of; done++)
      expect(spread(lit(stillScene(variant, done, 'right'))), `after move ${done}`).toBeLessThan(ONE_PLACE);
  });

  test('mirrored twice it is itself; once it is not', () => {
    for (let done = 0; done <= of; done++) {
      const scene = stillScene(variant, done, 'right');
      expect(rounded(mirror(mirror(scene)))).toEqual(rounded(scene));
      expect(rounded(stillScene(variant, done, 'left'))).toEqual(rounded(mirror(scene)));
      expect(rounded(mirror(scene))).not.toEqual(rounded(scene));
    }
  });
});

describe('the picture of a step', () => {
  const edge = readEdge({
    sides: [8, 6, 8, 6],
    corner: { made: 'chain', size: 2 },
    counted: 'stitches-only',
  });
  if (!edge.ok) throw new Error('edge');
  const plan = planBack(edge.value);
  if (!plan.ok) throw new Error('plan');
  const made = steps(plan.value);
  const all: Step[] = Array.from({ length: made.length }, (_, i) => made.at(i));
  const told = { plan: plan.value, steps: made };
  const speech = { dialect: 'uk', hand: 'right', units: 'cm' } as const;
  const words = (scene: Scene): string[] =>
    scene.flatMap((item: Item) => (item.what === 'words' ? [item.words] : []));

  test('there is one for every step, with something of it in view', () => {
    for (const step of all) {
      const scene = stepScene(step, told, speech);
      expect(scene.length, step.kind).toBeGreaterThan(2);
      const inView = scene.some(
        (item) => 'points' in item && item.points.some(([x, y]) => x > 0 && x < WIDE && y > 0 && y < HIGH),
      );
      expect(inView, step.kind).toBe(true);
    }
  });

  test('where hook or needle goes in, one place is marked', () => {
    for (const step of all.filter(({ kind }) =>
      ['foundation-treble', 'double-crochet', 'slip-stitch', 'attach'].includes(kind),
    )) {
      const marked = stepScene(step, told, speech).filter(
        (item) => item.what === 'strand' && item.marked === true,
      );
      expect(marked.length, `${step.kind} ${step.target.loop}`).toBeGreaterThan(0);
    }
  });

  test('only words change with the terms, and they stay as they are read for the other hand', () => {
    const pad = all.find(({ kind }) => kind === 'pad-in') as Step;
    const uk = stepScene(pad, told, speech);
    const us = stepScene(pad, told, { ...speech, dialect: 'us' });
    expect(words(uk)).toEqual(['cushion pad']);
    expect(words(us)).toEqual(['pillow form']);
    const shapes = (scene: Scene): Scene => scene.filter((item) => item.what !== 'words');
    expect(shapes(us)).toEqual(shapes(uk));
    expect(words(stepScene(pad, told, { ...speech, hand: 'left' }))).toEqual(['cushion pad']);
  });

  test('the treble after a corner shows the corner chains, the one after that does not', () => {
    const [first, second] = all.filter(({ kind, side }) => kind === 'foundation-treble' && side === 1);
    const corner = (step: Step | undefined): number =>
      stepScene(step as Step, told, speech).filter(({ key }) => key.startsWith('corner')).length;
    expect([corner(first), corner(second)]).toEqual([4, 0]);
  });

  test('every place of a round has a picture of its own', () => {
    const at = (index: number): Step | undefined =>
      all.filter(({ kind }) => kind === 'double-crochet')[index];
    const of = (step: Step | undefined): string => variantOf(step as Step, told)?.where ?? '';
    const side = plan.value.edgings[0]?.sides[1] ?? 0;
    const lead = all.filter(
      ({ kind, side: one, node }) => kind === 'double-crochet' && one === 0 && node < side,
    );
    expect(of(at(0))).toBe('first');
    expect(of(at(1))).toBe('along');
    expect(of(lead.at(-1))).toBe('before-corner');
    const second = all.filter(({ kind, side: one }) => kind === 'double-crochet' && one === 1);
    expect(second.slice(0, 3).map(of)).toEqual(['past-corner', 'hidden', 'along']);
    expect(of(second.at(-1))).toBe('before-corner');
  });

  test('the join begins with nothing behind it, passes chains without posts, and ends in one hole', () => {
    const slips = all.filter(({ kind }) => kind === 'slip-stitch' || kind === 'last-hole');
    const joins = slips.map((step) => variantOf(step, told)?.joins);
    expect([joins[0], joins.at(-1)]).toEqual(['first', 'last-hole']);
    expect(joins.filter((one) => one === 'corner')).toHaveLength(8);
    const joined = (step: Step | undefined): number =>
      stepScene(step as Step, told, speech).filter(({ key }) => key.startsWith('joined')).length / 2;
    expect([joined(slips[0]), joined(slips.at(-1))]).toEqual([0, 6]);
  });

  test('double crochet and join are closed on their own stitches, never on trebles of their yarn', () => {
    for (const kind of ['close-round', 'join-close'] as const) {
      const closing = all.find((step) => step.kind === kind) as Step;
      const bars = stepScene(closing, told, speech).filter(
        (item) => item.what === 'strand' && item.key.endsWith('-bar') && item.yarn === closing.yarn,
      );
      expect(bars, kind).toEqual([]);
    }
  });

  test('wherever hook or needle goes into the work, that one place is lit', () => {
    const into = new Set<Step['kind']>([
      'foundation-treble',
      'double-crochet',
      'slip-stitch',
      'last-hole',
      'attach',
    ]);
    for (const kind of ['close-tops', 'close-round', 'count-stitch', 'count-corner', 'join-attach'] as const)
      into.add(kind);
    for (const step of all) {
      const spots = lit(stepScene(step, told, speech));
      expect(spread(spots), step.kind).toBeLessThan(ONE_PLACE);
      if (into.has(step.kind)) expect(spots.length, step.kind).toBeGreaterThan(0);
    }
  });

  test.each([{ sides: [12, 21, 12, 21] }, { sides: [24] }])(
    'a marker hangs in the front exactly where the walk says to put one: $sides',
    ({ sides }) => {
      const corner = sides.length === 1 ? [] : { made: 'chain' as const, size: 2 };
      const panel = readEdge({ sides, corner, counted: 'stitches-only' });
      const back = panel.ok ? planBack(panel.value) : panel;
      if (!back.ok) throw new Error('panel');
      const walk = { plan: back.value, steps: steps(back.value) };
      const counted = Array.from({ length: walk.steps.length }, (_, i) => walk.steps.at(i)).filter(
        ({ kind }) => kind === 'count-stitch',
      );
      const isDrawn = (step: Step): boolean =>
        stepScene(step, walk, speech).some(({ key }) => key === 'marker');
      const isSaid = (step: Step): boolean => /marker/.test(sayStep(step, walk, speech).check ?? '');
      expect(counted.filter(isSaid).length).toBeGreaterThan(1);
      expect(counted.filter(isDrawn)).toEqual(counted.filter(isSaid));
    },
  );

  test('a round panel is drawn round wherever it is seen whole', () => {
    const roundEdge = readEdge({ sides: [24], corner: [], counted: 'stitches-only' });
    const roundPlan = roundEdge.ok ? planBack(roundEdge.value) : roundEdge;
    if (!roundPlan.ok) throw new Error('round');
    const roundSteps = steps(roundPlan.value);
    const round = { plan: roundPlan.value, steps: roundSteps };
    const wholes = ['check-twist', 'cloth-centres', 'cloth-corners', 'cloth-pins', 'turn-strip'].concat([
      'wrong-sides',
      'pad-in',
      'pin-last',
      'finished',
    ]);
    const from = (of: typeof round, kind: string): Scene =>
      stepScene(
        Array.from({ length: of.steps.length }, (_, i) => of.steps.at(i)).find(
          (step) => step.kind === kind,
        ) as Step,
        of,
        speech,
      );
    for (const kind of wholes) {
      const scene = from(round, kind);
      expect(scene, kind).not.toEqual(from(told, kind));
      // All areas are bounded by a smooth line.
      for (const item of scene)
        if (item.what === 'area') expect(item.smooth, `${kind} ${item.key}`).toBe(true);
      const keys = scene.map(({ key }) => key);
      expect(new Set(keys).size, kind).toBe(keys.length);
    }
  });
});
