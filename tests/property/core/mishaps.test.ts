import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  countRound,
  type Mishap,
  type MishapKind,
  mishapKinds,
  type Plan,
  type Round,
  type Worked,
} from '../../../core/index.ts';
import { type Counts, countsAfter } from '../../oracle/effects.ts';
import { corneredPanels, type Panel, planOf, runs, smallPanels, workOf } from './panels.ts';

const countsOf = (round: Round): Counts => {
  const { sides, corners } = countRound(round);
  return { sides, corners: corners.map(({ size }) => size) };
};
const roundsOf = ({ foundation, edgings }: Worked): Round[] => [foundation, ...edgings];

type Case = { plan: Plan; mishap: Mishap };

/** A mishap of one kind, with every parameter it needs, on a panel where it can happen. */
function casesOf(kind: MishapKind, round: 'foundation' | 'edging' | 'plan' | 'join'): fc.Arbitrary<Case> {
  const needsCorner = mishapKinds[kind].needs.includes('corner');
  const panel: fc.Arbitrary<Panel> = needsCorner
    ? corneredPanels({ sides: 6, stitches: 14, edgings: 3 })
    : smallPanels;
  return panel.chain((drawn) => {
    const plan = planOf(drawn);
    const k = plan.foundation.sides.length;
    const index = fc.integer({ min: 0, max: k - 1 });
    const mishap: fc.Arbitrary<Mishap> = fc.record({
      kind: fc.constant(kind),
      round: fc.constant(round),
      edging: fc.integer({ min: 0, max: plan.edgings.length - 1 }),
      side: index,
      place: fc.integer({ min: 0, max: 16 }),
      count: kind.startsWith('stitch') ? fc.integer({ min: 1, max: 4 }) : countOf(kind),
      end: fc.constantFrom('before', 'after'),
      then: fc.constantFrom('from-corner', 'from-total'),
      ...(needsCorner ? { corner: index } : {}),
    });
    return mishap.map((one) => ({ plan, mishap: one }));
  });
}

const countOf = (kind: MishapKind): fc.Arbitrary<number> =>
  kind === 'corner-chains' || kind === 'arm-missed'
    ? fc.integer({ min: 0, max: 9 })
    : fc.integer({ min: -4, max: 4 });

const kindsAndRounds = (Object.keys(mishapKinds) as MishapKind[]).flatMap((kind) =>
  mishapKinds[kind].rounds.map((round) => [kind, round] as const),
);

describe.each(kindsAndRounds)('%s in the %s', (kind, round) => {
  it('changes the counts it must and no others', () => {
    let foretold = 0;
    fc.assert(
      fc.property(casesOf(kind, round), ({ plan, mishap }) => {
        const expected = countsAfter(plan, mishap);
        if (expected === null) return;
        foretold++;
        const worked = workOf(plan, [mishap]);
        expect(roundsOf(worked).map(countsOf)).toEqual(expected);
        const isTwisted = kind === 'twisted';
        expect(roundsOf(worked).map(({ twisted }) => twisted)).toEqual(roundsOf(worked).map(() => isTwisted));
      }),
      runs,
    );
    expect(foretold).toBeGreaterThan(200);
  });

  it('is marked in its own round alone, wherever it changes a count', () => {
    fc.assert(
      fc.property(casesOf(kind, round), ({ plan, mishap }) => {
        const rounds = roundsOf(workOf(plan, [mishap]));
        const asPlanned = roundsOf(workOf(plan)).map(countsOf);
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
