import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Choices,
  type Corner,
  countRound,
  type EdgingChoice,
  type Plan,
  planBack,
  readEdge,
} from '../../../core/index.ts';
import { armsOf, given, type Panel, panels, planOf, runs, total, workOf } from './panels.ts';

/** Ordinary stitches of each front side, whatever was counted (model, section 2). */
function frontStitches({ input }: Panel): number[] {
  const k = input.sides.length;
  const size = (i: number): number =>
    Array.isArray(input.corner) ? (input.corner[(i + k) % k]?.size ?? 0) : input.corner.size;
  return input.sides.map((count, i) => {
    if (input.counted === 'stitches-only') return count;
    return input.counted === 'one-corner' ? count - size(i) : count - size(i) - size(i - 1);
  });
}

const isRound = ({ input }: Panel): boolean => Array.isArray(input.corner) && input.corner.length === 0;
const sizesOf = (corners: readonly Corner[]): number => total(corners.map(({ size }) => size));

describe('plan and simulation', () => {
  it('reach the same counts, read off the graph', () => {
    fc.assert(
      fc.property(panels, (panel) => {
        const plan = planOf(panel);
        const { foundation, edgings } = workOf(plan);
        const counted = (round: typeof foundation) => countRound(round);
        expect(counted(foundation)).toEqual({
          sides: plan.foundation.sides,
          corners: plan.foundation.corners,
        });
        expect(edgings.map(counted)).toEqual(plan.edgings.map(({ sides, corners }) => ({ sides, corners })));
      }),
      runs,
    );
  });

  it('have a length of all sides and all corners together', () => {
    fc.assert(
      fc.property(panels, (panel) => {
        const plan = planOf(panel);
        const worked = workOf(plan);
        [worked.foundation, ...worked.edgings].forEach((round, n) => {
          const planned = [plan.foundation, ...plan.edgings][n] as Plan['foundation'];
          expect(round.length).toBe(total(planned.sides) + sizesOf(planned.corners));
          expect(planned.total).toBe(round.length);
        });
        expect(plan.edge.total).toBe(total(plan.edge.sides) + sizesOf(plan.edge.corners));
        expect(plan.pairs).toBe(plan.edge.total);
      }),
      runs,
    );
  });

  it('agree on where the start side is cut', () => {
    fc.assert(
      fc.property(panels, (panel) => {
        const plan = planOf(panel);
        const { lead, tail, sides } = plan.foundation;
        const { foundationStart, foundationClosing } = plan.choices;
        expect(lead + tail + foundationClosing.adds + foundationStart.counts).toBe(sides[0]);
        expect(Math.min(lead, tail)).toBeGreaterThanOrEqual(0);
        const { turns, length } = workOf(plan).foundation;
        if (isRound(panel)) expect([turns, tail]).toEqual([[], 0]);
        else {
          expect(turns[0]).toBe(lead + foundationStart.counts);
          const last = (turns.at(-1) as number) + (plan.foundation.corners.at(-1) as Corner).size;
          expect(length - last).toBe(tail + foundationClosing.adds);
        }
      }),
      runs,
    );
  });
});

describe('the plan', () => {
  it('is the front less all arms, mirrored', () => {
    fc.assert(
      fc.property(panels, (panel) => {
        const plan = planOf(panel);
        const front = frontStitches(panel);
        const k = front.length;
        const s = panel.choices.start?.side ?? 0;
        const grows = (panel.choices.edgings ?? []).map((edging) =>
          isRound(panel) ? (edging.increase ?? 0) : total(armsOf(edging.arm)),
        );
        const mirrored = front.map((_, j) => front[(s - j + k) % k] as number);
        expect(plan.edge.sides).toEqual(front);
        expect(plan.faces).toEqual(front.map((_, j) => (s - j + k) % k));
        expect(plan.foundation.sides).toEqual(mirrored.map((count) => count - total(grows)));
        plan.edgings.forEach((edging, n) => {
          const still = total(grows.slice(n + 1));
          expect(edging.sides).toEqual(mirrored.map((count) => count - still));
        });
      }),
      runs,
    );
  });

  it('ends in corners of the size of those they face', () => {
    fc.assert(
      fc.property(panels, (panel) => {
        const { edge, edgings, cornerFaces, faces } = planOf(panel);
        const last = edgings.at(-1)?.corners ?? [];
        const k = edge.sides.length;
        last.forEach((corner, j) => {
          const front = cornerFaces[j] as number;
          expect(corner.size).toBe(edge.corners[front]?.size);
          // A corner lies between its sides on both pieces.
          expect([faces[j], faces[(j + 1) % k]]).toEqual([(front + 1) % k, front]);
        });
      }),
      runs,
    );
  });

  it('is the same whether the counts took in corners or not', () => {
    fc.assert(
      fc.property(panels, (panel) => {
        const plain = {
          ...panel,
          input: { ...panel.input, sides: frontStitches(panel), counted: 'stitches-only' as const },
        };
        expect(planOf(plain)).toEqual(planOf(panel));
      }),
      runs,
    );
  });
});

/** The panel as if its edge were looked at from behind: the last side comes first, the corners with it. */
function mirrored({ input, choices }: Panel): Panel {
  const k = input.sides.length;
  const corner = Array.isArray(input.corner)
    ? input.corner.map((_, i) => (input.corner as Corner[])[(2 * k - i - 2) % k] as Corner)
    : input.corner;
  const sides = frontStitches({ input, choices });
  return {
    input: { sides: sides.toReversed(), corner, counted: 'stitches-only' },
    choices,
  };
}

describe('a panel', () => {
  it('mirrored twice is itself', () => {
    fc.assert(
      fc.property(panels, (panel) => {
        const there = given(readEdge(mirrored(panel).input));
        const back = given(readEdge(mirrored(mirrored(panel)).input));
        expect(back).toEqual(given(readEdge(panel.input)));
        expect(there.total).toBe(back.total);
      }),
      runs,
    );
  });

  it('mirrored by its own back twice is itself', () => {
    fc.assert(
      fc.property(panels, (panel) => {
        const first = planOf(panel);
        const last = first.edgings.at(-1) as Plan['edgings'][number];
        const { sides, corners } = last;
        const edge = given(readEdge({ sides, corner: corners, counted: 'stitches-only' }));
        const again = given(
          planBack(edge, { ...unbegunChoices(panel), start: { side: first.faces[0] as number } }),
        );
        const end = again.edgings.at(-1) as Plan['edgings'][number];
        // Front side i is met by back side s - i, which is met by side s - (s - i) = i of the second back.
        expect(end.sides).toEqual(first.edge.sides);
        expect(end.corners.map(({ size }) => size)).toEqual(first.edge.corners.map(({ size }) => size));
      }),
      runs,
    );
  });

  it('counts the same wherever the back is begun', () => {
    fc.assert(
      fc.property(panels, fc.nat(23), fc.double({ min: 0, max: 1, noNaN: true }), (panel, turn, share) => {
        const plan = planOf(panel);
        const k = plan.edge.sides.length;
        const side = turn % k;
        const begin = (lead?: number) =>
          planBack(plan.edge, {
            ...unbegunChoices(panel),
            start: { side, ...(lead === undefined ? {} : { lead }) },
          });
        const here = given(begin());
        const moved = given(begin(Math.round((here.foundation.sides[0] as number) * share)));
        const byFront = ({ faces, foundation }: Plan): number[] =>
          plan.edge.sides.map((_, i) => foundation.sides[faces.indexOf(i)] as number);
        expect(byFront(here)).toEqual(byFront(plan));
        expect(moved.foundation.sides).toEqual(here.foundation.sides);
        expect(countRound(workOf(moved).foundation)).toEqual(countRound(workOf(here).foundation));
        expect(workOf(moved).edgings.map(countRound)).toEqual(workOf(here).edgings.map(countRound));
        expect(here.foundation.total).toBe(plan.foundation.total);
      }),
      runs,
    );
  });
});

/** The same arms and increases, with corners that fit whichever side comes first and a closing that adds nothing. */
const unbegunChoices = ({ choices }: Panel): Choices => ({
  edgings: (choices.edgings ?? []).map(
    ({ arm, increase }) => ({ arm, ...(increase === undefined ? {} : { increase }) }) as EdgingChoice,
  ),
  foundationCorner: choices.foundationCorner as Corner,
  foundationClosing: { adds: 0 },
});
