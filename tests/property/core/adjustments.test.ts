import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Act,
  type Adjustment,
  asked,
  countRound,
  ease,
  type Plan,
  pair,
  type Round,
  steps,
  takenInJoin,
  type Worked,
  work,
} from '../../../core/index.ts';
import { corneredPanels, planOf, runs } from './panels.ts';

const lastOf = ({ edgings }: Worked): Round => edgings.at(-1) as Round;

/** By how many each side of the last round is longer than the front side it faces. */
const surplusOf = (plan: Plan, worked: Worked): number[] =>
  countRound(lastOf(worked)).sides.map(
    (count, j) => count - (plan.edge.sides[plan.faces[j] as number] as number),
  );

/** One slip of so many stitches on a side of the foundation or of any edging but the last. */
const slips = corneredPanels({ sides: 6, stitches: 30, edgings: 3 })
  .map(planOf)
  .chain((plan) =>
    fc
      .record({
        kind: fc.constantFrom('stitch-missed' as const, 'stitch-doubled' as const),
        round: fc.integer({ min: 0, max: plan.edgings.length - 1 }),
        side: fc.integer({ min: 0, max: plan.foundation.sides.length - 1 }),
        place: fc.integer({ min: 0, max: 30 }),
        count: fc.integer({ min: 1, max: 3 }),
      })
      .map(({ round, ...slip }): { plan: Plan; slip: Act } => ({
        plan,
        slip: {
          ...slip,
          ...(round === 0 ? { round: 'foundation' } : { round: 'edging', edging: round - 1 }),
        },
      })),
  );

/** Every other stitch at most, spread along the side of the last edging: worked twice, or missed. */
function madeUp(plan: Plan, slip: Act): Adjustment[] | null {
  const worked = work(plan, [slip]);
  const edging = plan.edgings.length - 1;
  const below = edging === 0 ? worked.foundation : (worked.edgings[edging - 1] as Round);
  const targets = countRound(below).sides;
  const arm = plan.edgings[edging]?.arm[1] ?? 0;
  const adjustments: Adjustment[] = [];
  for (const [side, by] of surplusOf(plan, worked).entries()) {
    // The place where the yarn is attached is the closing's.
    const lead = below.turns[0] as number;
    const attach = side > 0 ? Number.POSITIVE_INFINITY : (targets[0] as number) - Math.max(1, lead);
    const room = (targets[side] as number) - (side === 0 ? 1 : 0);
    if (Math.abs(by) * 2 > room) return null;
    for (const free of by === 0 ? [] : ease(room, Math.abs(by)))
      adjustments.push(
        asked({
          kind: by < 0 ? 'stitch-doubled' : 'stitch-missed',
          round: 'edging',
          edging,
          side,
          place: arm + (free < attach ? free : free + 1),
        }),
      );
  }
  return adjustments;
}

/** Two of the longer piece with one of the other, on every side that needs it. */
function eased(plan: Plan, slip: Act): Adjustment[] | null {
  const taken = surplusOf(plan, work(plan, [slip])).map((by, j) =>
    by === 0 ? [] : takenInJoin(plan, plan.faces[j] as number, by),
  );
  return taken.every((one) => one !== null) ? taken.flat() : null;
}

const meets = (plan: Plan, worked: Worked, manner: 'corner-to-corner' | 'stitch-by-stitch') =>
  pair(plan.edge, lastOf(worked), { start: worked.join, manner });

describe('a slip made up in the last edging', () => {
  it('leaves two rounds that meet stitch for stitch', () => {
    let tried = 0;
    fc.assert(
      fc.property(slips, ({ plan, slip }) => {
        const adjustments = madeUp(plan, slip);
        fc.pre(adjustments !== null);
        if (adjustments.length > 0) tried++;
        const worked = work(plan, [slip, ...adjustments]);
        expect(surplusOf(plan, worked)).toEqual(plan.faces.map(() => 0));
        for (const manner of ['corner-to-corner', 'stitch-by-stitch'] as const)
          expect(meets(plan, worked, manner)).toMatchObject({
            verdict: { kind: 'meets', reasons: [] },
            gaps: [],
            pairs: plan.pairs,
          });
      }),
      runs,
    );
    expect(tried).toBeGreaterThan(100);
  });
});

describe('a slip taken in two with one', () => {
  it.each(['corner-to-corner', 'stitch-by-stitch'] as const)(
    'leaves no place without partner, %s, and as many pairs as the shorter piece has places',
    (manner) => {
      let tried = 0;
      fc.assert(
        fc.property(slips, ({ plan, slip }) => {
          const adjustments = eased(plan, slip);
          fc.pre(adjustments !== null);
          if (adjustments.length > 0) tried++;
          const worked = work(plan, [slip, ...adjustments]);
          const pairing = meets(plan, worked, manner);
          expect(pairing).toMatchObject({ verdict: { kind: 'meets', reasons: [] }, gaps: [], clashes: [] });
          expect(pairing.leftOver).toBe(0);
          expect(pairing.sides.map(({ surplus, drift }) => [surplus, drift])).toEqual(
            plan.faces.map(() => [0, 0]),
          );
          const taken = pairing.runs.filter(({ together }) => together);
          expect(taken).toHaveLength(adjustments.length);
          expect(pairing.pairs).toBe(Math.min(plan.edge.total, lastOf(worked).length));
        }),
        runs,
      );
      expect(tried).toBeGreaterThan(100);
    },
  );
});

describe('the walk', () => {
  it('carries out every adjustment once, at a step of its own round and side', () => {
    fc.assert(
      fc.property(slips, fc.boolean(), ({ plan, slip }, inJoin) => {
        const adjustments = inJoin ? eased(plan, slip) : madeUp(plan, slip);
        fc.pre(adjustments !== null);
        const acts = [slip, ...adjustments];
        const walk = steps(plan, acts);
        const carried = Array.from({ length: walk.length }, (_, i) => walk.at(i)).flatMap((step) =>
          (step.adjustments ?? []).map((index) => ({ ...step, index })),
        );
        expect(carried.map(({ index }) => index).sort((a, b) => a - b)).toEqual(
          adjustments.map((_, i) => i + 1),
        );
        for (const { stage, side, index } of carried) {
          expect(stage).toMatch(inJoin ? 'join' : 'edging');
          if (inJoin) expect(side).toBe(acts[index]?.side);
        }
      }),
      runs,
    );
  });
});
