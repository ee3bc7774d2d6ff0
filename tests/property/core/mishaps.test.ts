import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type ActKind,
  type ActRound,
  actKinds,
  actOf,
  countRound,
  type Mishap,
  NodeKind,
  needs,
  type Plan,
  type Round,
  roundsOf,
  type Worked,
} from '../../../core/index.ts';
import { type Counts, countsAfter } from '../../oracle/effects.ts';
import { corneredPanels, type Panel, planOf, runs, smallPanels, workOf } from './panels.ts';

const countsOf = (round: Round): Counts => {
  const { sides, corners } = countRound(round);
  return { sides, corners: corners.map(({ size }) => size) };
};
const madeBy = ({ foundation, edgings }: Worked): Round[] => [foundation, ...edgings];

type Case = { plan: Plan; mishap: Mishap };

/** A mishap of one kind, with every parameter it needs, on a panel where it can happen. */
function casesOf(kind: ActKind, round: ActRound): fc.Arbitrary<Case> {
  const needsCorner = needs(kind, 'corner');
  const panel: fc.Arbitrary<Panel> = needsCorner
    ? corneredPanels({ sides: 6, stitches: 14, edgings: 3 })
    : smallPanels;
  return panel.chain((drawn) => {
    const plan = planOf(drawn);
    const k = plan.foundation.sides.length;
    const index = fc.integer({ min: 0, max: k - 1 });
    const mishap = fc.record({
      round: fc.constant(round),
      edging: fc.integer({ min: 0, max: plan.edgings.length - 1 }),
      side: index,
      place: fc.integer({ min: 0, max: 16 }),
      count: kind.startsWith('stitch') ? fc.integer({ min: 1, max: 4 }) : countOf(kind),
      end: fc.constantFrom('before' as const, 'after' as const),
      then: fc.constantFrom('from-corner' as const, 'from-total' as const),
      corner: index,
    });
    return mishap.map((one) => ({ plan, mishap: actOf(kind, one) }));
  });
}

const countOf = (kind: ActKind): fc.Arbitrary<number> =>
  kind === 'corner-chains' || kind === 'arm-missed'
    ? fc.integer({ min: 0, max: 9 })
    : fc.integer({ min: -4, max: 4 });

const kindsAndRounds = actKinds.flatMap((kind) => roundsOf(kind).map((round) => [kind, round] as const));

describe.each(kindsAndRounds)('%s in the %s', (kind, round) => {
  it('changes the counts it must and no others', () => {
    let foretold = 0;
    fc.assert(
      fc.property(casesOf(kind, round), ({ plan, mishap }) => {
        const expected = countsAfter(plan, mishap);
        if (expected === null) return;
        foretold++;
        const worked = workOf(plan, [mishap]);
        expect(madeBy(worked).map(countsOf)).toEqual(expected);
        const isTwisted = kind === 'twisted';
        expect(madeBy(worked).map(({ twisted }) => twisted)).toEqual(madeBy(worked).map(() => isTwisted));
      }),
      runs,
    );
    expect(foretold).toBeGreaterThan(runs.numRuns / 5);
  });

  it('is marked in its own round alone, wherever it changes a count', () => {
    fc.assert(
      fc.property(casesOf(kind, round), ({ plan, mishap }) => {
        const rounds = madeBy(workOf(plan, [mishap]));
        const asPlanned = madeBy(workOf(plan)).map(countsOf);
        const own = round === 'foundation' ? 0 : round === 'edging' ? 1 + (mishap.edging ?? 0) : -1;
        rounds.forEach((made, i) => {
          expect(
            made.marks.every((mark) => mark.mishap === 0 && mark.node >= 0 && mark.node <= made.length),
          ).toBe(true);
          if (i !== own) expect(made.marks).toEqual([]);
          else if (JSON.stringify(countsOf(made)) !== JSON.stringify(asPlanned[i]))
            expect(made.marks.length).toBeGreaterThan(0);
        });
      }),
      runs,
    );
  });
});

/** Nodes of a round between the corners on either side of side j, for a side that is not the first. */
function nodesOfSide(round: Round, side: number): number[] {
  const { corners } = countRound(round);
  const from = (round.turns[side - 1] as number) + (corners[side - 1]?.size ?? 0);
  const to = round.turns[side] as number;
  return Array.from({ length: to - from }, (_, i) => from + i);
}

/** A stitch missed or doubled at a place of a side that is worked in one go. */
function placedCases(kind: 'stitch-missed' | 'stitch-doubled', round: 'foundation' | 'edging') {
  return corneredPanels({ sides: 6, stitches: 14, edgings: 3 })
    .map(planOf)
    .filter((plan) => plan.foundation.sides.length > 1)
    .chain((plan) =>
      fc.record({
        plan: fc.constant(plan),
        edging: fc.integer({ min: 0, max: plan.edgings.length - 1 }),
        side: fc.integer({ min: 1, max: plan.foundation.sides.length - 1 }),
        share: fc.double({ min: 0, max: 0.999, noNaN: true }),
      }),
    )
    .map(({ plan, edging, side, share }) => {
      const below = edging === 0 ? plan.foundation : plan.edgings[edging - 1];
      const length = (round === 'foundation' ? plan.foundation : below)?.sides[side] as number;
      const along = Math.floor(length * share);
      const after = round === 'edging' ? (plan.edgings[edging]?.arm[1] as number) : 0;
      const mishap: Mishap = { kind, round, edging, side, place: after + along };
      return { plan, edging, side, along, mishap };
    });
}

describe('a stitch missed or doubled', () => {
  it('on an edging is the one in the place that was said', () => {
    fc.assert(
      fc.property(fc.constantFrom(0, 2), placedCases('stitch-missed', 'edging'), (times, drawn) => {
        const { plan, edging, side, along } = drawn;
        const kind = times === 0 ? 'stitch-missed' : 'stitch-doubled';
        const worked = workOf(plan, [actOf(kind, drawn.mishap)]);
        const below = edging === 0 ? worked.foundation : (worked.edgings[edging - 1] as Round);
        const target = nodesOfSide(below, side)[along] as number;
        const { into, kinds } = worked.edgings[edging] as Round;
        const stitchesInto = (node: number): number =>
          [...into].filter((found, i) => found === node && kinds[i] === NodeKind.stitch).length;
        expect(stitchesInto(target)).toBe(times);
        const others = nodesOfSide(below, side).filter((node) => node !== target);
        expect(others.filter((node) => stitchesInto(node) !== 1)).toEqual([]);
      }),
      runs,
    );
  });

  it('on the foundation is noted after so many trebles of its side', () => {
    fc.assert(
      fc.property(placedCases('stitch-missed', 'foundation'), fc.boolean(), (drawn, isDoubled) => {
        const { plan, side, along, mishap } = drawn;
        const kind = isDoubled ? 'stitch-doubled' : 'stitch-missed';
        const { foundation } = workOf(plan, [actOf(kind, mishap)]);
        const nodes = nodesOfSide(foundation, side);
        const from = (foundation.turns[side - 1] as number) + (plan.foundation.corners[side - 1]?.size ?? 0);
        expect(foundation.marks).toEqual([{ node: from + along, mishap: 0 }]);
        const bases = nodes.map((node) => foundation.into[node] as number);
        const shared = bases.filter((base, i) => i > 0 && base === bases[i - 1]);
        expect(shared).toHaveLength(isDoubled ? 1 : 0);
        if (isDoubled) expect(bases[along]).toBe(bases[along + 1]);
      }),
      runs,
    );
  });
});
