/**
 * What the trade does, with its numbers written out. Common practice, no source, but where a source is named.
 */
import { describe, expect, it } from 'vitest';
import { countRound, NodeKind, pair, type Step } from '../../../core/index.ts';
import { allSteps, planOf, stepsOf, twoChains, workedOf } from './making.ts';

/** A cushion of 79 counted a side, with the two chains of one corner taken in. */
const cushion = planOf([79, 79, 79, 79], {
  counted: 'one-corner',
  choices: { start: { side: 0, lead: 40 } },
});
const making = allSteps(stepsOf(cushion));
const ofKind = (...kinds: Step['kind'][]): Step[] => making.filter(({ kind }) => kinds.includes(kind));

describe('a side counted as 79 with two chains taken in', () => {
  it('has 77 stitches, and a foundation side of 75', () => {
    expect(cushion.edge.sides).toEqual([77, 77, 77, 77]);
    expect(cushion.foundation.sides).toEqual([75, 75, 75, 75]);
    expect(countRound(workedOf(cushion).foundation).sides).toEqual([75, 75, 75, 75]);
  });

  it('is 316 positions around, whatever was counted', () => {
    expect(cushion.edge.total).toBe(316);
    expect(planOf([77, 77, 77, 77]).edge.total).toBe(316);
    expect(planOf([81, 81, 81, 81], { counted: 'both-corners' }).edge.total).toBe(316);
  });

  it('with one chain of either corner counted is the same as both of one', () => {
    // 79 = 77 + 1 + 1: corners of 2 give the same number either way.
    expect(planOf([79, 79, 79, 79], { counted: 'one-corner' })).toEqual(
      planOf([79, 79, 79, 79].map((count) => count - 1 - 1)),
    );
  });
});

describe('the start in mid-side', () => {
  it('is 40 before the first corner and 34 after the last: with the closing 75', () => {
    const { lead, tail, sides } = cushion.foundation;
    expect([lead, tail, sides[0]]).toEqual([40, 34, 75]);
    const { foundation } = workedOf(cushion);
    expect(foundation.turns[0]).toBe(40);
    expect(foundation.kinds.at(-1)).toBe(NodeKind.closing);
    expect(foundation.length - (foundation.turns[3] as number) - 2).toBe(34 + 1);
  });

  it('is in the middle where nothing is said, the odd stitch before the corner', () => {
    const { lead, tail } = planOf([77, 77, 77, 77]).foundation;
    expect([lead, tail]).toEqual([37, 37]);
    const odd = planOf([77, 77, 77, 77], { choices: { foundationClosing: { adds: 0 } } }).foundation;
    expect([odd.lead, odd.tail]).toEqual([38, 37]);
  });

  it('has 35 after the last where the closing adds nothing', () => {
    const choices = { start: { side: 0, lead: 40 }, foundationClosing: { adds: 0 as const } };
    expect(planOf([77, 77, 77, 77], { choices }).foundation.tail).toBe(35);
  });

  it('has 33 after the last where the starting chains count as well', () => {
    const choices = { start: { side: 0, lead: 40 }, foundationStart: { counts: 1 as const } };
    const plan = planOf([77, 77, 77, 77], { choices });
    expect(plan.foundation.tail).toBe(33);
    expect(countRound(workedOf(plan).foundation).sides[0]).toBe(75);
  });

  it('counted out without allowing for the closing gives one too many, the classic one', () => {
    const { foundation } = workedOf(cushion, [{ kind: 'closing-forgotten', round: 'foundation' }]);
    expect(countRound(foundation).sides).toEqual([76, 75, 75, 75]);
  });
});

describe('markers', () => {
  it('hang after every tenth stitch of a leg, counted anew after each corner', () => {
    const trebles = ofKind('foundation-treble').filter(({ marker }) => marker);
    const legs = [40, 75, 75, 75, 34];
    expect(trebles.map(({ place }) => (place + 1) % 10)).toEqual(trebles.map(() => 0));
    expect(trebles).toHaveLength(legs.reduce((all, leg) => all + Math.floor(leg / 10), 0));
  });

  it('are told ahead: 9 after the first stitch, none when fewer than ten are left', () => {
    const side = ofKind('foundation-treble').filter((step) => step.side === 1);
    expect(side[0]).toMatchObject({ place: 0, toMarker: 9, toCorner: 74 });
    expect(side[9]).toMatchObject({ marker: true, toMarker: 0, toCorner: 65 });
    expect(side[70]).toMatchObject({ place: 70, toMarker: -1, toCorner: 4 });
    expect(side[74]).toMatchObject({ toCorner: 0 });
  });
});

describe('the join', () => {
  const order = ofKind('slip-stitch', 'pad-in', 'last-hole', 'join-attach', 'pin-last');
  const sides = (steps: Step[]): number[] => [
    ...new Set(steps.filter(({ corner }) => corner < 0).map(({ side }) => side)),
  ];

  it('starts at the fourth position from a corner: two chains in, it is the third stitch', () => {
    expect(cushion.choices.joinStart).toEqual({ side: 0, fromCorner: 4 });
    // The nearer chain is the first, so the stitches of the side are second, third and fourth.
    expect(ofKind('join-attach')[0]).toMatchObject({ side: 0, corner: -1, place: 2 });
    const { edgings, join } = workedOf(cushion);
    const { runs } = pair(cushion.edge, edgings[0]!, { start: join, manner: 'stitch-by-stitch' });
    expect(runs).toHaveLength(1);
    // On the back as well: two stitches of side 0 lie between it and the corner that follows them.
    expect((edgings[0]?.turns[0] as number) - 1 - (runs[0]?.back as number)).toBe(2);
  });

  it('goes along three sides, then comes the pad, then the fourth side', () => {
    const pad = order.findIndex(({ kind }) => kind === 'pad-in');
    expect(sides(order.slice(0, pad).filter(({ kind }) => kind === 'slip-stitch'))).toEqual([0, 1, 2]);
    const [pin, ...after] = order.slice(pad + 1);
    expect(pin?.kind).toBe('pin-last');
    // The rest of the first side is what lies between its corner and the start.
    expect(sides(after.filter(({ kind }) => kind === 'slip-stitch'))).toEqual([3, 0]);
  });

  it('closes the last hole where the yarn was attached', () => {
    const [attach] = ofKind('join-attach');
    const [hole] = ofKind('last-hole');
    expect(hole?.target).toEqual(attach?.target);
    expect(hole?.done).toBe(316);
    expect(order.at(-1)?.kind).toBe('last-hole');
  });

  it('takes every position of both pieces once', () => {
    const taken = order.filter(({ kind }) => kind === 'slip-stitch' || kind === 'last-hole');
    expect(new Set(taken.map(({ node }) => node)).size).toBe(316);
    expect(new Set(taken.map(({ backNode }) => backNode)).size).toBe(316);
    expect(taken).toHaveLength(316);
  });

  it('holds the inner two of the four loops', () => {
    expect(new Set(ofKind('slip-stitch').map(({ target }) => target.loop))).toEqual(new Set(['inner-loops']));
  });
});

describe('the edging', () => {
  it('attaches in a stitch that carries a chain only, and the closing covers it', () => {
    const [attach] = ofKind('attach');
    const [first] = ofKind('double-crochet');
    const [close] = ofKind('close-round');
    expect([attach?.target.node, first?.target.node, close?.target.node]).toEqual([0, 1, 0]);
    expect(attach?.target.loop).toBe('back-loop');
  });

  it('with the first one in the attach stitch as well is one too many', () => {
    const { edgings } = workedOf(cushion, [{ kind: 'attach-doubled', round: 'edging' }]);
    expect(edgings.map((round) => countRound(round).sides)).toEqual([[78, 77, 77, 77]]);
  });

  it('grows a square by 8 with dc, ch 2, dc in every corner (published, six patterns)', () => {
    const [foundation, edging] = [cushion.foundation, cushion.edgings[0]];
    expect((edging?.total ?? 0) - foundation.total).toBe(8);
    const chains = (size: number) =>
      planOf([20, 20, 20, 20], { corner: { made: 'chain', size } }).foundation.sides;
    expect([1, 2, 3, 4].map(chains)).toEqual([1, 2, 3, 4].map(() => [18, 18, 18, 18]));
  });

  it('gains 3 a side with 2, ch 2, 1 in every corner (published, block count adjustment)', () => {
    const plan = planOf([20, 20, 20, 20], { choices: { edgings: [{ arm: [2, 1], corner: twoChains }] } });
    expect(plan.foundation.sides).toEqual([17, 17, 17, 17]);
  });
});

describe('a rectangle with one odd side', () => {
  const front = [40, 25, 40, 24];
  const plan = planOf(front);

  it('is worked in the mirrored order: back side j faces front side s - j', () => {
    expect(plan.faces).toEqual([0, 3, 2, 1]);
    expect(plan.edgings[0]?.sides).toEqual([40, 24, 40, 25]);
  });

  it('worked in the order of the front does not meet, and that is said first', () => {
    const worked = workedOf(plan, [{ kind: 'order-not-mirrored' }]);
    const met = pair(plan.edge, worked.edgings[0]!, { start: worked.join, manner: 'corner-to-corner' });
    expect(met.verdict.kind).toBe('does-not-meet');
    // Two sides are alike, so turned by half a round it would meet after all.
    expect(met.verdict.reasons[0]).toEqual({ code: 'turned', by: 2 });
  });

  it('with all sides different meets in no position, and the order is named as the cause', () => {
    const uneven = planOf([40, 25, 38, 24]);
    const worked = workedOf(uneven, [{ kind: 'order-not-mirrored' }]);
    const met = pair(uneven.edge, worked.edgings[0]!, { start: worked.join, manner: 'corner-to-corner' });
    expect(met.verdict.kind).toBe('does-not-meet');
    expect(met.verdict.reasons.map(({ code }) => code)).toContain('wrong-order');
    expect(met.verdict.reasons[0]).toEqual({ code: 'wrong-order' });
  });

  it('of equal sides nobody notices', () => {
    const square = planOf([40, 40, 40, 40]);
    const worked = workedOf(square, [{ kind: 'order-not-mirrored' }]);
    const met = pair(square.edge, worked.edgings[0]!, { start: worked.join, manner: 'corner-to-corner' });
    expect(met.verdict.kind).toBe('meets');
  });
});
