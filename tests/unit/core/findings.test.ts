/** What is wrong between two rounds as a person tells it: small examples written out, 60 a side and two chains. */
import { describe, expect, it } from 'vitest';
import { type Finding, type Manner, type Mishap, pair } from '../../../core/index.ts';
import { planOf, workedOf } from './making.ts';

const big = planOf([60, 60, 60, 60]);
const unequal = planOf([60, 52, 44, 36]);

function found(mishaps: Mishap[], plan = big, manner: Manner = 'corner-to-corner'): Finding[] {
  const { edgings, join } = workedOf(plan, mishaps);
  return pair(plan.edge, edgings.at(-1)!, { start: join, manner }).findings;
}

const missed = (side: number): Mishap => ({ kind: 'stitch-missed', round: 'edging', side, place: 5 });
const codes = (findings: Finding[]) => findings.map(({ code }) => code);

describe('the findings', () => {
  it('are none where all meets', () => expect(found([])).toEqual([]));

  it('name the side of a missed stitch, and no place along it', () => {
    expect(found([missed(2)])).toEqual([
      {
        code: 'side-off',
        frontSide: 2,
        backSide: 2,
        by: -1,
        of: 60,
        taken: 0,
        severity: 'eases-in',
        follows: false,
      },
    ]);
  });

  it('tell a corner worked late as one thing, with the sides beside it in the order they are worked', () => {
    const late: Mishap = { kind: 'corner-moved', corner: 1, count: 2, then: 'from-total' };
    const told = {
      code: 'corner-moved',
      // Back corner 1 lies between back sides 1 and 2, which face front sides 3 and 2.
      corners: [{ frontCorner: 2, backCorner: 1, by: 2 }],
      sides: [
        { frontSide: 3, backSide: 1, by: 2, of: 60, taken: 0 },
        { frontSide: 2, backSide: 2, by: -2, of: 60, taken: 0 },
      ],
    };
    expect(found([late])).toEqual([{ ...told, severity: 'shows', follows: false }]);
    expect(found([late], big, 'stitch-by-stitch')).toEqual([
      { ...told, severity: 'puckers', follows: false },
    ]);
    expect(found([{ ...late, count: -2 }])[0]).toMatchObject({ corners: [{ backCorner: 1, by: -2 }] });
  });

  it('tell neighbouring corners that moved together', () => {
    const moved = found([
      { kind: 'corner-moved', corner: 0, count: 3, then: 'from-total' },
      { kind: 'corner-moved', corner: 1, count: 1, then: 'from-total' },
    ]);
    expect(moved).toMatchObject([
      {
        corners: [
          { backCorner: 0, by: 3 },
          { backCorner: 1, by: 1 },
        ],
        sides: [
          { backSide: 0, by: 3 },
          { backSide: 1, by: -2 },
          { backSide: 2, by: -1 },
        ],
      },
    ]);
  });

  it('tell sides apart that are off by different numbers', () => {
    // Front side 1 faces back side 3: the join comes to it before back side 2.
    expect(found([missed(2), missed(3)]).map((one) => 'backSide' in one && one.backSide)).toEqual([3, 2]);
  });

  it('begin with the cause, and say of the sides that they follow from it', () => {
    const wrongWay = found([{ kind: 'order-not-mirrored', round: 'plan' }], unequal);
    expect(codes(wrongWay)[0]).toBe('wrong-order');
    expect(wrongWay.slice(1).every(({ code, follows }) => code === 'side-off' && follows)).toBe(true);
    const turned = found([{ kind: 'join-wrong-side', round: 'join', count: 1 }], unequal);
    expect(turned[0]).toMatchObject({ code: 'turned', by: 3 });
    expect(turned.slice(1).length).toBeGreaterThan(0);
    expect(codes(found([{ kind: 'corner-forgotten', corner: 1 }]))[0]).toBe('corner-count');
  });

  it('name the corner that was left out, by the number it should have, where the other sides tell it', () => {
    const without = (corner: number, plan = big): Finding | undefined =>
      found([{ kind: 'corner-forgotten', corner }], plan)[0];
    // Back corner 1 should meet front corner 2: side 0 faces front side 0, and the back runs the other way.
    expect(without(1)).toMatchObject({ code: 'corner-count', by: -1, leftOut: [1], frontCorner: 2 });
    expect(without(2, unequal)).toMatchObject({ leftOut: [2], frontCorner: 1 });
    // Among equal sides the start's own side comes out as long without the corner before it as without the one after.
    expect(without(0)).toMatchObject({ leftOut: [0, 3] });
    expect(without(0)).not.toHaveProperty('frontCorner');
  });

  it('say no other side to be off, though the back laid otherwise would differ less', () => {
    const plan = planOf([29, 29, 39, 42, 53]);
    // Without corner 0 the sides run 80, 42, 39, 29: begun on side 1 they would differ by 28 in all, and so by 32.
    const findings = found([{ kind: 'corner-forgotten', corner: 0, round: 'foundation' }], plan);
    expect(findings).toMatchObject([
      { code: 'corner-count', leftOut: [0], frontCorner: 4 },
      { code: 'side-off', frontSide: 4, backSide: 0, by: -4, follows: true },
    ]);
  });

  it('name no corner where more than one is lacking', () => {
    const two = [0, 2].map((corner): Mishap => ({ kind: 'corner-forgotten', corner }));
    expect(found(two)[0]).toMatchObject({ code: 'corner-count', by: -2, leftOut: [] });
  });

  it('tell corners by both their numbers, in the order the join comes to them', () => {
    expect(found([{ kind: 'corner-chains', corner: 1, count: 3, round: 'edging' }, missed(1)])).toMatchObject(
      [
        { code: 'corner-size', frontCorner: 2, backCorner: 1, by: 1 },
        { code: 'side-off', backSide: 1 },
      ],
    );
  });

  it('grade nothing where a hole is open', () => {
    expect(found([{ kind: 'last-hole', round: 'join' }])).toEqual([
      { code: 'last-hole', severity: null, follows: false },
    ]);
  });
});
