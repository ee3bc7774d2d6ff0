import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Manner,
  type Mishap,
  type Plan,
  pair,
  type Step,
  type Steps,
  steps,
  work,
} from '../../../core/index.ts';
import { type Act, actsOf } from '../../oracle/acts.ts';
import { mishapsOn } from './panel-mishaps.ts';
import { expectSame, planOf, runs, smallPanels, workOf } from './panels.ts';

type Making = { plan: Plan; mishaps: Mishap[]; manner: Manner };

const makings: fc.Arbitrary<Making> = smallPanels.chain((panel) => {
  const plan = planOf(panel);
  return fc.record({
    plan: fc.constant(plan),
    mishaps: mishapsOn(plan),
    manner: fc.constantFrom<Manner>('stitch-by-stitch', 'corner-to-corner'),
  });
});

const stepsIn = ({ plan, mishaps, manner }: Making): Steps => steps(plan, mishaps, { manner });

function actsIn({ plan, mishaps, manner }: Making): Act[] {
  const worked = workOf(plan, mishaps);
  const paired = pair(plan.edge, worked.edgings.at(-1)!, { start: worked.join, manner });
  return actsOf(plan, worked, paired.runs);
}

/** A step in the words of the list of acts. */
function actOf(step: Step | Act, like: Act): Act {
  const { stage, kind, edging, node, backNode, side, corner, place, mishap } = step;
  return {
    stage,
    kind,
    edging,
    node,
    backNode,
    ...('into' in like ? { into: 'target' in step ? step.target.node : (step.into as number) } : {}),
    ...('place' in like ? { side, corner, place } : {}),
    ...(mishap === undefined ? {} : { mishap }),
  };
}

const all = (making: Steps): Step[] => Array.from({ length: making.length }, (_, i) => making.at(i));
/** Single acts that make or join something, but stand apart from the run of stitches. */
const acts = new Set(['start-chains', 'last-hole', 'close-tops', 'close-round']);
const makesSomething = ({ node, stage }: Step): boolean => node >= 0 && stage !== 'front';

describe('steps', () => {
  it('are the acts of the simulation, one by one', () => {
    fc.assert(
      fc.property(makings, (making) => {
        const foretold = actsIn(making);
        const taken = all(stepsIn(making));
        expectSame(
          taken.map((step, i) => actOf(step, foretold[i] ?? (foretold[0] as Act))),
          foretold.map((one) => actOf(one, one)),
        );
        expect(taken.findIndex(({ index }, i) => index !== i)).toBe(-1);
      }),
      runs,
    );
  });

  it('are the same from the plan alone as from the worked rounds', () => {
    fc.assert(
      fc.property(
        smallPanels,
        fc.constantFrom<Manner>('stitch-by-stitch', 'corner-to-corner'),
        (panel, manner) => {
          const plan = planOf(panel);
          // Counting the chains as planned is no mishap, but has the rounds worked and read.
          const noMishap: Mishap = plan.choices.foundationClosing.adds
            ? { kind: 'closing-beside-first', round: 'foundation' }
            : { kind: 'closing-over-first', round: 'foundation' };
          const planned = steps(plan, [], { manner });
          const worked = steps(plan, [noMishap], { manner });
          expectSame(all(worked), all(planned));
          expect(worked.stretches).toEqual(planned.stretches);
        },
      ),
      runs,
    );
  });

  it('are found again by what they make', () => {
    fc.assert(
      fc.property(makings, (making) => {
        const taken = stepsIn(making);
        const lost = all(taken).filter((step) => {
          const round = step.stage.replace('-closing', '') as 'front' | 'foundation' | 'edging' | 'join';
          return step.node >= 0 && taken.stepOf(round, step.node, step.edging) !== step.index;
        });
        expect(lost).toEqual([]);
      }),
      runs,
    );
  });

  it('exist for every node of every round, and for no other', () => {
    fc.assert(
      fc.property(makings, (making) => {
        const taken = stepsIn(making);
        const { foundation, edgings } = work(making.plan, making.mishaps);
        [foundation, ...edgings].forEach((round, i) => {
          const name = i === 0 ? 'foundation' : 'edging';
          const edging = Math.max(0, i - 1);
          const lost = Array.from(round.kinds, (_, node) => node).filter((node) => {
            const step = taken.at(taken.stepOf(name, node, edging));
            return step.node !== node || step.edging !== edging || !step.stage.startsWith(name);
          });
          expect(lost).toEqual([]);
          expect(taken.stepOf(name, round.length, edging)).toBe(-1);
          expect(taken.stepOf(name, -1, edging)).toBe(-1);
        });
        expect(taken.stepOf('edging', 0, edgings.length)).toBe(-1);
        expect(taken.stepOf('front', making.plan.edge.total)).toBe(-1);
      }),
      runs,
    );
  });

  it('lie in the stretch that says where they are', () => {
    fc.assert(
      fc.property(makings, (making) => {
        const taken = stepsIn(making);
        const starts = taken.stretches.map(({ from }) => from);
        expect(starts[0]).toBe(0);
        expect(starts.every((from, i) => i === 0 || from > (starts[i - 1] as number))).toBe(true);
        let last: Step | undefined;
        const wrong = all(taken).filter((step) => {
          const stretch = taken.stretches.findLast(({ from }) => from <= step.index);
          if (stretch?.stage !== step.stage || stretch.edging !== step.edging) return true;
          const isStitch = makesSomething(step) && !acts.has(step.kind);
          const side = step.corner >= 0 && step.stage !== 'join' ? -1 : step.side;
          const isMoved = isStitch && last && (last.side !== step.side || last.corner !== step.corner);
          last = isStitch ? step : undefined;
          if (isMoved && stretch.from !== step.index) return true;
          return isStitch && (stretch.side !== side || stretch.corner !== step.corner);
        });
        expect(wrong).toEqual([]);
      }),
      runs,
    );
  });

  it('count up, keep the loops, and look ahead truly', () => {
    fc.assert(
      fc.property(makings, (making) => {
        const every = making.plan.choices.markerEvery;
        const taken = all(stepsIn(making));
        const isWrong = (step: Step, i: number): boolean => {
          if (step.place >= Math.max(1, step.of) || step.done > step.ofRound) return true;
          if (step.marker && (step.place + 1) % every !== 0) return true;
          const before = taken[i - 1];
          const isOneRound = before?.stage === step.stage && before.edging === step.edging;
          if (before && isOneRound && before.done > step.done) return true;
          // On one leg: so many stitches on, the marker or the corner is there. A join may begin within a leg.
          if (step.stage === 'join') return false;
          const marked = taken[i + step.toMarker] as Step;
          if (step.toMarker >= 0 && !(marked.marker && marked.side === step.side)) return true;
          const end = taken[i + step.toCorner] as Step;
          return (
            step.toCorner >= 0 && !(end.side === step.side && end.corner < 0 && end.place + 1 === step.of)
          );
        };
        expect(taken.filter(isWrong)).toEqual([]);
      }),
      runs,
    );
  });

  it('say no corner lies ahead where the round closes first', () => {
    fc.assert(
      fc.property(makings, (making) => {
        const rounds = work(making.plan, making.mishaps);
        const wrong = all(stepsIn(making)).filter((step) => {
          if (step.stage !== 'foundation' && step.stage !== 'edging') return false;
          if (step.node < 0 || step.corner >= 0 || acts.has(step.kind)) return false;
          const round = step.stage === 'foundation' ? rounds.foundation : rounds.edgings[step.edging];
          return step.toCorner >= 0 !== round?.turns.some((turn) => turn > step.node);
        });
        expect(wrong).toEqual([]);
      }),
      runs,
    );
  });

  it('say in the join that a corner lies ahead, unless the join comes to its end first', () => {
    fc.assert(
      fc.property(makings, (making) => {
        const { plan } = making;
        const taken = all(stepsIn(making));
        const start = taken.find(({ kind }) => kind === 'join-attach')?.target.node ?? 0;
        const around = (from: number): number => (start - from + plan.edge.total - 1) % plan.edge.total;
        const wrong = taken.filter((step) => {
          if (step.kind !== 'slip-stitch' || step.corner >= 0) return false;
          const left = step.of - 1 - step.place;
          const isAhead = plan.edge.corners.length > 0 && left <= around(step.node);
          return step.toCorner !== (isAhead ? left : -1);
        });
        expect(wrong).toEqual([]);
      }),
      runs,
    );
  });

  it('end at their ends, whatever index is asked for', () => {
    fc.assert(
      fc.property(smallPanels, fc.oneof(fc.integer(), fc.double()), (panel, index) => {
        const taken = steps(planOf(panel));
        const { index: found } = taken.at(index);
        const nearest = Number.isNaN(index) ? 0 : Math.min(Math.max(0, Math.trunc(index)), taken.length - 1);
        expect(found).toBe(nearest + 0);
        expect(found).toBeGreaterThanOrEqual(0);
        expect(found).toBeLessThan(taken.length);
      }),
      runs,
    );
  });
});
