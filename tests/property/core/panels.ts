/**
 * Invented panels for the property tests: every panel here can be worked, over all the model's limits, small ones
 * far more often than big ones.
 */
import fc from 'fast-check';
import { expect } from 'vitest';
import {
  type Choices,
  type Corner,
  type EdgeInput,
  limits,
  type Mishap,
  type Plan,
  planBack,
  type Result,
  readEdge,
  type Worked,
  work,
} from '../../../core/index.ts';

export type Panel = { input: EdgeInput; choices: Choices };

/** How often each property runs, by a new seed every time; fast-check prints the seed of a run that fails. */
export const runs = { numRuns: Number(process.env.RINGTRUE_RUNS ?? 400) };

/** The value, or a test failure that shows the problems. */
export function given<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.problems, null, 1));
  return result.value;
}

export const planOf = ({ input, choices }: Panel): Plan => given(planBack(given(readEdge(input)), choices));

export const workOf = (plan: Plan, mishaps: Mishap[] = []): Worked => work(plan, mishaps);

/** Deep equality of long lists of plain values: told apart by their text, shown by their differences. */
export function expectSame(found: unknown, foretold: unknown): void {
  if (JSON.stringify(found) !== JSON.stringify(foretold)) expect(found).toEqual(foretold);
}

export const total = (numbers: readonly number[]): number => numbers.reduce((all, one) => all + one, 0);

export const cornerOf = fc.record<Corner>({
  made: fc.constantFrom('chain', 'stitch'),
  size: fc.oneof({ weight: 6, arbitrary: fc.integer({ min: 0, max: 3 }) }, fc.integer({ min: 0, max: 9 })),
});

const sideCounts = (most: number): fc.Arbitrary<number> =>
  fc.oneof(
    { weight: 8, arbitrary: fc.integer({ min: 1, max: Math.min(6, most) }) },
    { weight: 2, arbitrary: fc.integer({ min: 1, max: most }) },
  );

/** Stitches of one foundation side. */
const stitches = (most: number): fc.Arbitrary<number> =>
  fc.oneof(
    { weight: 60, arbitrary: fc.integer({ min: 1, max: Math.min(12, most) }) },
    { weight: 30, arbitrary: fc.integer({ min: 1, max: Math.min(120, most) }) },
    { weight: 1, arbitrary: fc.integer({ min: 1, max: most }) },
  );

const armSize = fc.oneof(
  { weight: 5, arbitrary: fc.integer({ min: 0, max: 2 }) },
  fc.integer({ min: 0, max: limits.arm }),
);
const armOf = fc.oneof(
  { weight: 3, arbitrary: fc.constant<number | [number, number]>(1) },
  armSize,
  fc.tuple(armSize, armSize),
);

const edgingCounts = fc.oneof(
  { weight: 6, arbitrary: fc.integer({ min: 1, max: 3 }) },
  fc.integer({ min: 1, max: limits.edgings }),
);

const zeroOrOne = fc.constantFrom<0 | 1>(0, 1);
const countedOf = fc.constantFrom<EdgeInput['counted']>('stitches-only', 'one-corner', 'both-corners');

export const armsOf = (arm: number | [number, number]): [number, number] =>
  typeof arm === 'number' ? [arm, arm] : arm;

/** The choices that fit every panel. */
function commonChoices(sideCount: number, worked: number) {
  return {
    foundationCorner: cornerOf,
    foundationStart: fc.record({ counts: zeroOrOne }),
    foundationClosing: fc.record({ adds: zeroOrOne }),
    edgingClosing: fc.record({ adds: zeroOrOne }),
    markerEvery: fc.integer({ min: 1, max: 30 }),
    share: fc.double({ min: 0, max: 1, noNaN: true }),
    startSide: fc.integer({ min: 0, max: sideCount - 1 }),
    joinSide: fc.integer({ min: 0, max: sideCount - 1 }),
    joinShare: fc.double({ min: 0, max: 1, noNaN: true }),
    leadGiven: fc.boolean(),
    worked: fc.constant(worked),
  };
}

type Size = { sides: number; stitches: number; edgings?: number };

/** Panels with a corner after every side. */
export function corneredPanels(most: Size): fc.Arbitrary<Panel> {
  return fc
    .record({
      k: sideCounts(most.sides),
      edgings: most.edgings ? fc.integer({ min: 1, max: most.edgings }) : edgingCounts,
    })
    .chain(({ k, edgings }) => {
      const growthMost = edgings * 2 * limits.arm;
      const perSide = Math.max(1, Math.min(most.stitches, limits.stitches - growthMost));
      return fc.record({
        foundation: fc.array(stitches(perSide), { minLength: k, maxLength: k }),
        corners: fc.array(cornerOf, { minLength: k, maxLength: k }),
        oneCorner: fc.option(cornerOf, { freq: 3 }),
        arms: fc.array(armOf, { minLength: edgings, maxLength: edgings }),
        between: fc.array(
          fc.oneof(cornerOf, fc.array(cornerOf, { minLength: k, maxLength: k }), fc.constant(undefined)),
          { minLength: edgings, maxLength: edgings },
        ),
        lastSaid: fc.constantFrom('left out', 'said', 'made otherwise'),
        counted: countedOf,
        ...commonChoices(k, 0),
      });
    })
    .map((drawn) => corneredPanel(drawn));
}

type Drawn = {
  foundation: number[];
  corners: Corner[];
  oneCorner: Corner | null;
  arms: (number | [number, number])[];
  between: (Corner | Corner[] | undefined)[];
  lastSaid: string;
  counted: EdgeInput['counted'];
  foundationCorner: Corner;
  foundationStart: { counts: 0 | 1 };
  foundationClosing: { adds: 0 | 1 };
  edgingClosing: { adds: 0 | 1 };
  markerEvery: number;
  share: number;
  startSide: number;
  joinSide: number;
  joinShare: number;
  leadGiven: boolean;
};

function corneredPanel(drawn: Drawn): Panel {
  const k = drawn.foundation.length;
  const corners = drawn.oneCorner ? drawn.corners.map(() => drawn.oneCorner as Corner) : drawn.corners;
  const growth = total(drawn.arms.flatMap(armsOf));
  const stitchesOf = drawn.foundation.map((count) => count + growth);
  const taken = { 'stitches-only': () => 0, 'one-corner': sizeAfter, 'both-corners': bothSizes }[
    drawn.counted
  ];
  function sizeAfter(i: number): number {
    return (corners[i] as Corner).size;
  }
  function bothSizes(i: number): number {
    return sizeAfter(i) + sizeAfter((i + k - 1) % k);
  }
  const startSide = drawn.startSide;
  // The back's first side is the front's start side.
  const foundationStart = fitting(drawn.foundation[startSide] as number, drawn);
  const worked = (drawn.foundation[startSide] as number) - foundationStart.counts - foundationStart.adds;
  // Back corner j lies between back sides j and j + 1, so between front sides s - j and s - j - 1.
  const facing = Array.from({ length: k }, (_, j) => corners[(startSide - j - 1 + 2 * k) % k] as Corner);
  const lastCorners =
    drawn.lastSaid === 'made otherwise'
      ? facing.map(({ size }): Corner => ({ size, made: size % 2 ? 'chain' : 'stitch' }))
      : facing;
  const joinPlaces =
    (stitchesOf[drawn.joinSide] as number) +
    ((corners[(drawn.joinSide + k - 1) % k] as Corner).size > 0 ? 1 : 0);
  return {
    input: {
      sides: stitchesOf.map((count, i) => count + taken(i)),
      corner: drawn.oneCorner ?? drawn.corners,
      counted: drawn.counted,
    },
    choices: {
      edgings: drawn.arms.map((arm, n) => {
        const isLast = n === drawn.arms.length - 1;
        const corner = isLast ? (drawn.lastSaid === 'left out' ? undefined : lastCorners) : drawn.between[n];
        return { arm, ...(corner ? { corner } : {}) } as NonNullable<Choices['edgings']>[number];
      }),
      foundationCorner: drawn.foundationCorner,
      foundationStart: { counts: foundationStart.counts },
      foundationClosing: { adds: foundationStart.adds },
      edgingClosing: drawn.edgingClosing,
      start: { side: startSide, ...(drawn.leadGiven ? { lead: Math.round(worked * drawn.share) } : {}) },
      joinStart: {
        side: drawn.joinSide,
        fromCorner: 1 + Math.round((Math.min(joinPlaces, 12) - 1) * drawn.joinShare),
      },
      markerEvery: drawn.markerEvery,
    },
  };
}

/** A start side of one stitch cannot hold both the starting chains and the closing. */
function fitting(startStitches: number, drawn: Pick<Drawn, 'foundationStart' | 'foundationClosing'>) {
  const { counts } = drawn.foundationStart;
  const { adds } = drawn.foundationClosing;
  return counts + adds > startStitches ? { counts: 0 as const, adds } : { counts, adds };
}

/** Round panels: one side, no corners, stitches added in the edging rounds. */
export function roundPanels(most: Size): fc.Arbitrary<Panel> {
  return fc
    .record({
      foundation: stitches(Math.min(most.stitches, 10_000)),
      wishes: fc.array(fc.double({ min: 0, max: 1, noNaN: true }), {
        minLength: 1,
        maxLength: most.edgings ?? 4,
      }),
      ...commonChoices(1, 0),
    })
    .map((drawn) => {
      let count = drawn.foundation;
      const increases = drawn.wishes.map((wish) => {
        const room = Math.max(0, Math.min(count - 1, limits.stitches - count));
        const increase = wish < 0.3 ? 0 : Math.round(wish * room);
        count += increase;
        return increase;
      });
      const { counts, adds } = fitting(drawn.foundation, drawn);
      return {
        input: { sides: [count], corner: [], counted: 'stitches-only' as const },
        choices: {
          edgings: increases.map((increase) => ({
            arm: 1,
            corner: { made: 'chain' as const, size: 2 },
            increase,
          })),
          foundationStart: { counts },
          foundationClosing: { adds },
          edgingClosing: drawn.edgingClosing,
          joinStart: { side: 0, fromCorner: 1 + Math.round((Math.min(count, 12) - 1) * drawn.joinShare) },
          markerEvery: drawn.markerEvery,
        },
      };
    });
}

const everything: Size = { sides: limits.sides, stitches: limits.stitches };

export const panels: fc.Arbitrary<Panel> = fc.oneof(
  { weight: 5, arbitrary: corneredPanels(everything) },
  { weight: 1, arbitrary: roundPanels(everything) },
);

/** Panels on which every stitch can be looked at. */
export const smallPanels: fc.Arbitrary<Panel> = fc.oneof(
  { weight: 5, arbitrary: corneredPanels({ sides: 6, stitches: 14, edgings: 3 }) },
  { weight: 1, arbitrary: roundPanels({ sides: 1, stitches: 20, edgings: 3 }) },
);
