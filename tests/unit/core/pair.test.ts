/** Two rounds laid against each other, in small examples written out. The back of a square of 12 a side, two chains. */
import { describe, expect, it } from 'vitest';
import {
  type Gap,
  type Manner,
  type Mishap,
  type Pairing,
  type PairOptions,
  pair,
  type Verdict,
} from '../../../core/index.ts';
import { planOf, workedOf } from './making.ts';

const square = planOf([12, 12, 12, 12]);
const big = planOf([60, 60, 60, 60]);

function paired(mishaps: Mishap[], manner: Manner, plan = square, easing?: 'end' | 'spread'): Pairing {
  const { edgings, join } = workedOf(plan, mishaps);
  const options: PairOptions = { start: join, manner, ...(easing ? { easing } : {}) };
  return pair(plan.edge, edgings.at(-1)!, options);
}

const missed: Mishap = { kind: 'stitch-missed', round: 'edging', side: 2, place: 5 };
const doubled: Mishap = { kind: 'stitch-doubled', round: 'edging', side: 2, place: 5 };

describe('stitch by stitch', () => {
  it('one stitch too few on back side 2 brings every corner after it one early, and one is left over', () => {
    const { sides, clashes, gaps, leftOver, verdict } = paired([missed], 'stitch-by-stitch');
    // Front side 2 faces back side 2, in join order 0, 1, 2, 3.
    expect(sides.map(({ frontSide, backSide, drift }) => [frontSide, backSide, drift])).toEqual([
      [0, 0, 0],
      [1, 3, 0],
      [2, 2, -1],
      [3, 1, -1],
    ]);
    expect(clashes).toEqual([
      { frontCorner: 2, backCorner: 1, late: -1 },
      { frontCorner: 3, backCorner: 0, late: -1 },
    ]);
    expect(leftOver).toBe(-1);
    // It shows where the join ends: before the third stitch of front side 0, where it began.
    expect(gaps).toEqual([{ short: 'back', frontSide: 0, backSide: 0, at: 55, after: 10, count: 1, run: 1 }]);
    expect(verdict.kind).toBe('does-not-meet');
  });
});

describe('corner to corner', () => {
  it('leaves the gap at the end of its side', () => {
    // One run for each stretch between corners: sides 0, 1, 2 and the two corners between them come before.
    const { gaps, pairs, verdict } = paired([missed], 'corner-to-corner', big);
    expect(gaps).toEqual([
      { short: 'back', frontSide: 2, backSide: 2, at: 4 * 62 - 62 - 2 - 3, after: 0, count: 1, run: 5 },
    ]);
    expect(pairs).toBe(4 * 62 - 1);
    expect(verdict).toEqual({
      kind: 'meets-with-easing',
      reasons: [{ code: 'side-short', frontSide: 2, backSide: 2, by: -1 }],
    });
  });

  it.each<[says: string, mishap: Mishap, gap: Partial<Gap>]>([
    [
      'a surplus lies after the whole front side',
      doubled,
      { short: 'front', frontSide: 2, backSide: 2, after: 12, count: 1 },
    ],
    [
      'a lack lies before the whole back side',
      missed,
      { short: 'back', frontSide: 2, backSide: 2, after: 0, count: 1 },
    ],
    [
      'a chain too many lies in the corner, after the whole front side before it',
      { kind: 'corner-chains', round: 'edging', corner: 1, count: 3 },
      { short: 'front', frontSide: 2, backSide: 2, frontCorner: 2, after: 12, count: 1 },
    ],
    [
      'a chain too few lies in the corner, before the whole back side after it',
      { kind: 'corner-chains', round: 'edging', corner: 1, count: 1 },
      { short: 'back', frontSide: 2, backSide: 2, frontCorner: 2, after: 0, count: 1 },
    ],
    [
      'a chain skipped lies in the corner, and one of the front finds none',
      { kind: 'join-chain-skipped', corner: 1 },
      { short: 'front', frontSide: 2, backSide: 2, frontCorner: 2, after: 12, count: 1 },
    ],
  ])('%s', (_, mishap, gap) => {
    expect(paired([mishap], 'corner-to-corner').gaps[0]).toMatchObject(gap);
  });

  it('spread: the places are those that easing gives, and everything else is joined', () => {
    const three: Mishap = { ...doubled, count: 3 };
    const { gaps, runs, pairs } = paired([three], 'corner-to-corner', big, 'spread');
    // 63 positions of the back to 60 of the front; eased at 10, 31 and 52 of them (see ease).
    const sideStart = 60 - 2 + 2 + 60 + 2;
    expect(gaps.map(({ at }) => at - sideStart)).toEqual([10, 31, 52]);
    expect(gaps.map(({ count, short }) => [count, short])).toEqual(gaps.map(() => [1, 'front']));
    expect(gaps.map(({ after }) => after)).toEqual([10, 30, 50]);
    expect(pairs).toBe(4 * 62);
    expect(runs.reduce((all, run) => all + run.count, 0)).toBe(4 * 62 + 3);
  });
});

describe('the verdict', () => {
  it.each<[says: string, mishaps: Mishap[], kind: Verdict['kind'], firstReason: string | undefined]>([
    ['nothing done otherwise', [], 'meets', undefined],
    ['one in 60', [missed], 'meets-with-easing', 'side-short'],
    ['three in 60 can be eased', [{ ...missed, count: 3 }], 'meets-with-easing', 'side-short'],
    ['four in 60 cannot', [{ ...missed, count: 4 }], 'does-not-meet', 'side-short'],
    [
      'a missing corner',
      [{ kind: 'corner-forgotten', round: 'edging', corner: 0 }],
      'does-not-meet',
      'corner-count',
    ],
    [
      'a corner of three',
      [{ kind: 'corner-chains', round: 'edging', corner: 0, count: 3 }],
      'does-not-meet',
      'corner-size',
    ],
    ['a twist', [{ kind: 'twisted' }], 'does-not-meet', 'twisted'],
    ['a twist before everything else', [missed, { kind: 'twisted' }], 'does-not-meet', 'twisted'],
    ['the join begun 1 off', [{ kind: 'join-offset', count: 1 }], 'does-not-meet', 'offset'],
    [
      'the join begun on the wrong side of a square',
      [{ kind: 'join-wrong-side', count: 1 }],
      'meets',
      undefined,
    ],
    ['a chain skipped', [{ kind: 'join-chain-skipped', corner: 2 }], 'does-not-meet', 'chain-skipped'],
    ['the last hole left open', [{ kind: 'last-hole' }], 'does-not-meet', 'last-hole'],
    ['the arms forgotten when planning', [{ kind: 'arms-forgotten' }], 'meets-with-easing', 'side-long'],
    ['a corner early, the next side from the corner', [early('from-corner')], 'does-not-meet', 'side-short'],
    [
      'the foundation closed over its first stitch',
      [{ kind: 'closing-over-first' }],
      'meets-with-easing',
      'side-short',
    ],
  ])('corner to corner, %s', (_, mishaps, kind, firstReason) => {
    const { verdict } = paired(mishaps, 'corner-to-corner', big);
    expect(verdict.kind).toBe(kind);
    expect(verdict.reasons[0]?.code).toBe(firstReason);
  });

  it('leaves the pair of the attach place open, and joins all others', () => {
    const { runs, pairs } = paired([{ kind: 'last-hole' }], 'corner-to-corner');
    expect(runs[0]).toMatchObject({ kind: 'open', at: 0, count: 1 });
    expect(pairs).toBe(55);
  });
});

function early(then: 'from-corner' | 'from-total'): Mishap {
  return { kind: 'corner-moved', round: 'foundation', corner: 1, count: -5, then };
}
