import { describe, expect, it } from 'vitest';
import {
  type Cure,
  explain,
  type Mishap,
  type Plan,
  pair,
  type Seen,
  type Stand,
  work,
} from '../../core/index.ts';
import { countsOf } from './explain-panels.ts';
import { drawFrom, drawMishap, drawPlan, kindsThatCountsShow, seenInFull } from './explain-random.ts';

type Case = { plan: Plan; mishaps: Mishap[]; seen: Seen };

const cases: Case[] = (() => {
  const draw = drawFrom(21);
  return Array.from({ length: 60 }, () => {
    const plan = drawPlan(draw);
    const kind = kindsThatCountsShow[draw(kindsThatCountsShow.length)] as Mishap['kind'];
    const mishaps = [drawMishap(draw, plan, kind)];
    return { plan, mishaps, seen: seenInFull(plan, mishaps) };
  });
})();

/** Everything `explain` advises for a case, with what was seen of the edgings or without. */
function curesOf({ plan, seen }: Case, stands?: Stand): { cure: Cure; front: number[]; isFirst: boolean }[] {
  const found = explain(plan, seen, { causes: 1, most: 8, ...(stands ? { stands } : {}) });
  return found.explanations.flatMap(({ cures, gives }) =>
    cures.map((cure, i) => ({ cure, front: gives.front, isFirst: i === 0 })),
  );
}

/** The foundation alone is made and counted. */
const withFoundation = (one: Case) =>
  curesOf(
    { ...one, seen: one.seen.foundation ? { foundation: one.seen.foundation } : {} },
    { at: 'foundation' },
  );

/** The verdict of `pair`, corners pinned, on the back as it is after a cure. */
function verdictAfter(plan: Plan, cure: Cure, front: number[]): string {
  const worked = work(plan, [...cure.mishaps, ...cure.adjustments]);
  const edge = { sides: front, corners: plan.edge.corners };
  const paired = pair(edge, worked.edgings.at(-1)!, {
    start: worked.join,
    manner: 'corner-to-corner',
  });
  return paired.verdict.kind;
}

/** The front is miscounted: what is carried out then is another recipe. */
const isOfFront = (cure: Cure, plan: Plan, front: number[]): boolean =>
  cure.kind === 'correct-the-number' || front.some((count, side) => count !== plan.edge.sides[side]);

describe('a cure', () => {
  it('leads to what it says, by carrying it out and pairing the rounds', () => {
    let checked = 0;
    for (const one of cases)
      for (const { cure, front } of [...curesOf(one), ...withFoundation(one)]) {
        if (isOfFront(cure, one.plan, front)) continue;
        expect(verdictAfter(one.plan, cure, front), JSON.stringify([one.mishaps, cure])).toBe(
          // Joined as it is asked for, two with one, every place has its partner.
          cure.kind === 'ease-in' ? 'meets' : cure.then,
        );
        checked++;
      }
    expect(checked).toBeGreaterThan(300);
  });

  it('says what counts are there afterwards', () => {
    for (const one of cases)
      for (const { cure, front } of curesOf(one)) {
        if (isOfFront(cure, one.plan, front)) continue;
        const { foundation, edgings } = countsOf(one.plan, [...cure.mishaps, ...cure.adjustments]);
        expect(cure.seenAfter).toEqual({ foundation, edgings });
      }
  });

  it('is recommended first, only one of them, and only where it helps', () => {
    for (const one of cases) {
      const cures = curesOf(one);
      for (const { cure, isFirst } of cures) {
        if (cure.recommended) expect(isFirst && cure.then !== 'does-not-meet').toBe(true);
        if (isFirst && cure.then !== 'does-not-meet') expect(cure.recommended).toBe(true);
      }
    }
  });

  it('counts the stitches that come off from the stitch named to the end of what is made', () => {
    for (const one of cases) {
      const made = work(one.plan, one.mishaps);
      const rounds = [made.foundation, ...made.edgings];
      const all = rounds.reduce((sum, { length }) => sum + length, 0);
      for (const { cure } of curesOf(one)) {
        if (!cure.to || cure.to.round === 'join' || one.seen.join) continue;
        const at = cure.to.round === 'foundation' ? 0 : cure.to.edging + 1;
        const before = rounds.slice(0, at).reduce((sum, { length }) => sum + length, 0);
        expect(cure.cost.stitches).toBe(all - before - cure.to.node);
        expect(cure.cost.rounds).toBe(rounds.length - 1 - at);
      }
    }
  });

  it('makes up in the next round, at places `ease` spreads, where that is still to be worked', () => {
    const made = cases.flatMap((one) => withFoundation(one).filter(({ cure }) => cure.kind === 'make-up'));
    expect(made.length).toBeGreaterThan(5);
    for (const { cure } of made) {
      expect(cure.cost).toEqual({ stitches: 0, slips: 0, rounds: 0, sewing: false, again: 0 });
      expect(cure.then).toBe('meets');
      for (const { places } of cure.at) expect(new Set(places).size).toBe(places.length);
    }
  });
});
