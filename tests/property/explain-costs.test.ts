/**
 * What a cure is said to cost, held against making the work twice: as it was made, up to where it stands, and as it is
 * after the cure. What is told to come off comes off, what is told to be made again is made again, and all before the
 * place named is the same in both.
 */
import { describe, expect, it } from 'vitest';
import {
  type Cure,
  explain,
  type Mishap,
  type Plan,
  pair,
  type Round,
  type Seen,
  type Stand,
  work,
} from '../../core/index.ts';
import { drawFrom, drawMishap, drawPlan, kindsThatCountsShow, seenInFull } from './explain-random.ts';

type Pair = { front: number; back: number };
type Made = { rounds: Round[]; pairs: Pair[] };

const roundsAt = (plan: Plan, stand: Stand): number =>
  stand.at === 'foundation' ? 1 : stand.at === 'edging' ? stand.edging + 2 : plan.edgings.length + 1;

/** Front positions of a side, or of the corner after it. */
function positionsOf(plan: Plan, side: number, part: 'side' | 'corner'): { from: number; to: number } {
  const { sides, corners } = plan.edge;
  let at = 0;
  for (let i = 0; i < side; i++) at += (sides[i] as number) + (corners[i]?.size ?? 0);
  const end = at + (sides[side] as number);
  return part === 'side' ? { from: at, to: end } : { from: end, to: end + (corners[side]?.size ?? 0) };
}

/** The rounds and slip stitches that are there. */
function madeTo(plan: Plan, mishaps: readonly Mishap[], stand: Stand): Made {
  const worked = work(plan, mishaps);
  const { foundation, edgings, join } = worked;
  const rounds = [foundation, ...edgings].slice(0, roundsAt(plan, stand));
  if (stand.at !== 'join' && stand.at !== 'finished') return { rounds, pairs: [] };
  const paired = pair(plan.edge, edgings.at(-1) as Round, { start: join, manner: 'stitch-by-stitch' });
  const frontTotal = paired.front;
  const backTotal = paired.back;
  const pairs = paired.runs
    .filter(({ kind }) => kind === 'joined' || kind === 'open')
    .flatMap(({ front, back, count }) =>
      Array.from({ length: count }, (_, i) => ({
        front: (front + i) % frontTotal,
        back: (back - i + backTotal) % backTotal,
      })),
    );
  if (stand.at !== 'join') return { rounds, pairs };
  // The start side is worked in two parts: its end is where the join first leaves it.
  const { to } = positionsOf(plan, stand.side, 'side');
  const reached = pairs.findIndex(({ front }) => front === to - 1);
  return { rounds, pairs: reached < 0 ? pairs : pairs.slice(0, reached + 1) };
}

const total = (rounds: readonly Round[]): number => rounds.reduce((all, { length }) => all + length, 0);

/** How many slip stitches may stay. */
function staying(plan: Plan, { rounds, pairs }: Made, cure: Cure): number {
  if (cure.kind === 'redo-join' && !cure.to) return 0;
  if (cure.to?.round === 'join') {
    const { from } = positionsOf(plan, plan.cornerFaces[cure.to.corner as number] as number, 'corner');
    const first = pairs.findIndex(({ front }) => front === from);
    return first < 0 ? pairs.length : first;
  }
  if (cure.to) {
    const round = cure.to.round === 'foundation' ? 0 : cure.to.edging + 1;
    if (round < plan.edgings.length || rounds.length <= round) return 0;
    const node = cure.to.node;
    const first = pairs.findIndex(({ back }) => back >= node);
    return first < 0 ? pairs.length : first;
  }
  const eased = cure.at.map(({ round, side, corner }) =>
    positionsOf(
      plan,
      corner !== undefined
        ? (plan.cornerFaces[corner] as number)
        : round === 'front'
          ? side
          : (plan.faces[side] as number),
      corner === undefined ? 'side' : 'corner',
    ),
  );
  const first = pairs.findIndex(({ front }) => eased.some(({ from, to }) => front >= from && front < to));
  return first < 0 ? pairs.length : first;
}

const standsOf = (plan: Plan): Stand[] => [
  { at: 'foundation' },
  { at: 'edging', edging: 0 },
  { at: 'edging', edging: plan.edgings.length - 1 },
  { at: 'sewn' },
  ...plan.edge.sides.map((_, side): Stand => ({ at: 'join', side })),
  { at: 'finished' },
];

/** Only rounds that are made were counted. */
function seenTo({ foundation, edgings = [], join }: Seen, plan: Plan, stands: Stand): Seen {
  const made = roundsAt(plan, stands);
  return {
    ...(foundation ? { foundation } : {}),
    ...(made > 1 ? { edgings: edgings.slice(0, made - 1) } : {}),
    ...(join && (stands.at === 'join' || stands.at === 'finished') ? { join } : {}),
  };
}

type Case = { plan: Plan; mishaps: Mishap[]; cure: Cure; stand: Stand };

/** Cures of what was found for one mishap, from wherever the work may stand. */
const cases: Case[] = (() => {
  const draw = drawFrom(76);
  return Array.from({ length: 90 }, () => {
    const plan = drawPlan(draw);
    const kind = kindsThatCountsShow[draw(kindsThatCountsShow.length)] as Mishap['kind'];
    const full = seenInFull(plan, [drawMishap(draw, plan, kind)]);
    const all = standsOf(plan);
    const stands = all[draw(all.length)] as Stand;
    const found = explain(plan, seenTo(full, plan, stands), { causes: 1, most: 4, stands });
    const { explanations, stands: stand } = found;
    return explanations
      .filter(({ front }) => !front)
      .flatMap(({ mishaps, cures }) => cures.map((cure) => ({ plan, mishaps, cure, stand })));
  }).flat();
})();

const nodesOf = (round: Round, count: number): string =>
  JSON.stringify([
    [...round.kinds.slice(0, count)],
    // On a foundation it makes no difference to the count which base chain was used twice.
    round.name === 'foundation' ? [] : [...round.into.slice(0, count)],
  ]);

describe('the cost of a cure', () => {
  it('is what comes off and what is made again, carried out', () => {
    let checked = 0;
    for (const { plan, mishaps, cure, stand } of cases) {
      if (cure.kind === 'close-hole') continue;
      const about = JSON.stringify([mishaps, stand, { ...cure, seenAfter: null }, plan.edge.sides]);
      const before = madeTo(plan, mishaps, stand);
      const after = madeTo(plan, [...cure.mishaps, ...cure.adjustments], stand);
      const stays =
        cure.cost.slips + cure.cost.stitches === 0 ? before.pairs.length : staying(plan, before, cure);
      const isRipped = cure.to !== undefined && cure.to.round !== 'join';
      const round = cure.to?.round === 'edging' ? cure.to.edging + 1 : 0;
      const node = cure.to?.node ?? 0;
      const off = isRipped ? total(before.rounds.slice(round)) - node : 0;
      const on = isRipped ? total(after.rounds.slice(round)) - node : 0;
      expect(cure.cost.stitches, about).toBe(off);
      expect(cure.cost.slips, about).toBe(before.pairs.length - stays);
      if (cure.cost.slips + cure.cost.stitches > 0)
        expect(cure.cost.again, about).toBe(on + Math.max(0, after.pairs.length - stays));
      expect(cure.cost.sewing, about).toBe(
        isRipped && round === 0 && stand.at !== 'foundation' && stand.at !== 'edging',
      );
      expect(cure.cost.rounds, about).toBe(isRipped ? before.rounds.length - 1 - round : 0);
      checked++;
    }
    expect(checked).toBeGreaterThan(150);
  });

  it('leaves what lies before the place named as it was', () => {
    for (const { plan, mishaps, cure, stand } of cases) {
      if (!cure.to || cure.to.round === 'join') continue;
      const before = madeTo(plan, mishaps, stand);
      const after = madeTo(plan, [...cure.mishaps, ...cure.adjustments], stand);
      const round = cure.to.round === 'edging' ? cure.to.edging + 1 : 0;
      const about = JSON.stringify([mishaps, stand, { ...cure, seenAfter: null }]);
      for (let n = 0; n <= round; n++) {
        const count = n < round ? (before.rounds[n]?.length ?? 0) : cure.to.node;
        expect(nodesOf(after.rounds[n] as Round, count), about).toBe(
          nodesOf(before.rounds[n] as Round, count),
        );
      }
    }
  });

  it('is never nothing where a round that is made is worked otherwise', () => {
    for (const { cure, stand, plan } of cases) {
      const isMade = cure.at.some(
        ({ round, edging }) => round === 'edging' && edging + 2 <= roundsAt(plan, stand),
      );
      if (cure.kind === 'make-up') expect(isMade).toBe(false);
      if (cure.kind === 'rip-back') expect(cure.cost.stitches).toBeGreaterThan(0);
    }
  });
});
