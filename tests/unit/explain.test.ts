/** What is found for counts that makers report, and what an explanation always holds to. */
import { describe, expect, it } from 'vitest';
import { type Explained, explain, type Mishap, type Plan, type Seen } from '../../core/index.ts';
import { chainCorner, countsOf, matches, planOf, seenOf } from '../property/explain-panels.ts';
import { joinSeen } from '../property/explain-random.ts';

const oblong = planOf([60, 42, 60, 42], chainCorner(2));
const square = planOf([50, 50, 50, 50], chainCorner(2));

function explained(plan: Plan, seen: Seen, options: object = {}): Explained {
  return explain(plan, seen, options);
}

const full = (plan: Plan, mishaps: Mishap[]): Seen => seenOf(countsOf(plan, mishaps));
const blank = (sides: (number | null)[]): Seen => ({ edgings: [{ sides }] });

/** The first explanation's causes: kind, habit or not, and where. */
const firstOf = ({ explanations }: Explained): string[] =>
  (explanations[0]?.causes ?? []).map(({ kind, habit, mishaps, front }) => {
    const [mishap] = mishaps;
    if (front.length > 0 && !habit) return `${kind} ${front.map(({ side, by }) => `${side} ${by}`).join()}`;
    return habit ? `${kind} everywhere` : [kind, mishap?.round, mishap?.side ?? mishap?.corner].join(' ');
  });

/** Symptoms in published reports (facts, "Reported miscounts"), and what they are told to look for. */
const reported: [symptom: string, plan: Plan, seen: Seen, causes: string[]][] = [
  ['every edging side 1 short', square, blank([49, 49, 49, 49]), ['hidden-missed everywhere']],
  [
    'one edging side 1 short, foundation right',
    square,
    { foundation: { sides: [48, 48, 48, 48] }, edgings: [{ sides: [50, 50, 49, 50] }] },
    ['hidden-missed edging 1'],
  ],
  [
    'one too many on the start side after closing the ring',
    square,
    { foundation: { sides: [49, 48, 48, 48] } },
    ['closing-forgotten foundation '],
  ],
  [
    'one too few on the start side of the ring',
    square,
    { foundation: { sides: [47, 48, 48, 48] } },
    ['start-counted foundation '],
  ],
  [
    'every side 2 too many: the chains were counted',
    square,
    blank([52, 52, 52, 52]),
    ['chains-as-stitches plan '],
  ],
  [
    'sides unequal, the sum right: a corner misplaced',
    square,
    { foundation: { sides: [48, 50, 46, 48] } },
    ['corner-moved foundation 1'],
  ],
  [
    'two sides changed places: worked in the order of the front',
    planOf([60, 42, 55, 42], chainCorner(2)),
    { foundation: { sides: [58, 40, 53, 40] } },
    [],
  ],
  [
    '3 chains in a corner',
    square,
    { edgings: [{ sides: [50, 50, 50, 50], corners: [2, 3, 2, 2] }] },
    ['corner-chains edging 1'],
  ],
  [
    'one side counted, as long as two: the corner between them',
    square,
    { foundation: { sides: [null, 96, null, null] } },
    ['corner-forgotten foundation 1'],
  ],
  [
    'one short in all, no side counted',
    planOf([62, 62, 62, 62], chainCorner(2)),
    { edgings: [{ sides: [null, null, null, null], total: 255 }] },
    ['hidden-missed edging 0'],
  ],
  ['a corner too few', square, { foundation: { sides: [48, 96, 48] } }, ['corner-forgotten foundation 1']],
];

describe('explain', () => {
  it.each(reported)('%s', (_, plan, seen, causes) => {
    expect(firstOf(explained(plan, seen))).toEqual(causes);
  });

  it('tells of a rectangle worked in the order of the front', () => {
    const plan = planOf([60, 42, 55, 30], chainCorner(2));
    const seen = full(plan, [{ kind: 'order-not-mirrored', round: 'plan' }]);
    expect(firstOf(explained(plan, seen))).toEqual(['order-not-mirrored plan ']);
  });

  it('gives one explanation without mishaps where all is as the recipe has it', () => {
    const { explanations, nextCount } = explained(oblong, full(oblong, []));
    expect(explanations.map(({ mishaps }) => mishaps)).toEqual([[]]);
    expect(nextCount).toBeUndefined();
    expect(explained(oblong, {}).explanations.map(({ mishaps }) => mishaps)).toEqual([[]]);
  });

  it('takes nulls and blank lists for not counted, and their length for nothing', () => {
    const nothing: Seen = { foundation: { sides: [null, null, null] }, edgings: [{ sides: [] }] };
    expect(explained(oblong, nothing).explanations.map(({ mishaps }) => mishaps)).toEqual([[]]);
  });

  it('keeps the front miscounted among the candidates, and says that the back fits another', () => {
    const { explanations } = explained(oblong, { foundation: { sides: [58, 38, 58, 40] } });
    const front = explanations.find((one) => one.front);
    // Back side 1 faces front side 3.
    expect(front?.front).toEqual([{ side: 3, by: -2 }]);
    expect(front?.causes[0]?.backMadeFor).toBe('front');
    const [cure] = front?.cures ?? [];
    expect(cure).toMatchObject({
      kind: 'correct-the-number',
      recommended: true,
      cost: { again: 0 },
      then: 'meets',
    });
    expect(cure?.frontSides).toEqual([{ side: 3, by: -2 }]);
  });

  it('believes a recount of the front before any hand', () => {
    const seen: Seen = { front: { sides: [60, 41, 60, 42] }, ...full(oblong, []) };
    const { explanations } = explained(oblong, seen);
    expect(explanations[0]).toMatchObject({ mishaps: [], front: [{ side: 1, by: -1 }] });
    expect(explanations[0]?.causes[0]?.backMadeFor).toBe('recipe');
  });

  it('takes a recount with several sides wrong for one miscount', () => {
    const seen: Seen = { front: { sides: [59, 41, 59, 41] }, ...full(oblong, []) };
    const { explanations } = explained(oblong, seen);
    expect(explanations[0]?.causes).toHaveLength(1);
    expect(explanations[0]?.front).toHaveLength(4);
  });

  it('finds what went wrong in the join from its drift', () => {
    const cases: Mishap[] = [
      { kind: 'join-offset', round: 'join', count: 2 },
      { kind: 'join-wrong-side', round: 'join', count: 1 },
      { kind: 'join-chain-skipped', round: 'join', corner: 2 },
    ];
    for (const mishap of cases) {
      const join = joinSeen(oblong, [mishap]) ?? {};
      const { explanations } = explained(oblong, { ...full(oblong, [mishap]), join });
      expect(explanations[0]?.mishaps).toEqual([mishap]);
    }
  });

  it('says how sure it is in words, and is surest of the first', () => {
    const { explanations } = explained(square, blank([49, 49, 49, 49]));
    const words = ['most likely', 'likely', 'possible'];
    const order = explanations.map(({ sure }) => words.indexOf(sure));
    expect(order).toEqual(order.toSorted((a, b) => a - b));
    expect(explanations.filter(({ sure }) => sure === 'most likely').length).toBeLessThanOrEqual(1);
  });

  it('counts a habit as one cause, and lists it before as many single mishaps', () => {
    const { explanations } = explained(
      square,
      full(
        square,
        [0, 1, 2, 3].map((corner) => hidden(corner)),
      ),
    );
    expect(explanations[0]?.causes).toHaveLength(1);
    expect(explanations[0]?.mishaps).toHaveLength(4);
  });

  it('says so where nothing fits, and gives the nearest there is', () => {
    const seen = full(square, [
      { kind: 'stitch-doubled', round: 'foundation', side: 0, place: 20, count: 1 },
      { kind: 'stitch-doubled', round: 'foundation', side: 1, place: 20, count: 3 },
      { kind: 'stitch-missed', round: 'foundation', side: 2, place: 20, count: 5 },
      { kind: 'stitch-doubled', round: 'edging', edging: 0, side: 3, place: 20, count: 7 },
      { kind: 'corner-chains', round: 'edging', edging: 0, corner: 1, count: 5 },
    ]);
    const { explanations, nearest } = explained(square, seen);
    expect(explanations).toEqual([]);
    expect(nearest?.off).toBeGreaterThan(0);
    const made = countsOf(square, nearest?.explanation.mishaps ?? []);
    expect(offBy(made, seen)).toBe(nearest?.off);
    expect(nearest?.off).toBeLessThan(offBy(countsOf(square, []), seen));
  });

  it('takes numbers that no making can have for not counted', () => {
    const odd = {
      foundation: { sides: [Number.NaN, 1.5, -1, 1e9] },
      join: { drift: [Number.NaN], leftOver: 0.5 },
    };
    const numbersOf = (seen: Seen) =>
      explained(oblong, seen, { causes: 1 }).explanations.map(({ mishaps }) => mishaps);
    expect(numbersOf(odd)).toEqual(numbersOf({}));
  });

  it('gives exactly what was seen, every time', () => {
    const seen = blank([52, 41, 60, 43]);
    const { explanations } = explained(oblong, seen);
    expect(explanations.length).toBeGreaterThan(0);
    for (const { mishaps, gives } of explanations) {
      const made = countsOf(oblong, mishaps);
      expect(matches(made, seen)).toBe(true);
      expect(made.foundation).toEqual(gives.foundation);
      expect(made.edgings).toEqual(gives.edgings);
    }
  });
});

const hidden = (corner: number): Mishap => ({ kind: 'hidden-missed', round: 'edging', edging: 0, corner });

function offBy(made: ReturnType<typeof countsOf>, seen: Seen): number {
  const off = (list: readonly number[], wanted: readonly (number | null)[] = []): number =>
    list.reduce((sum, count, i) => sum + Math.abs(count - (wanted[i] ?? count)), 0);
  const rounds = [
    [made.foundation, seen.foundation],
    ...made.edgings.map((one, n) => [one, seen.edgings?.[n]]),
  ] as [typeof made.foundation, Seen['foundation']][];
  return rounds.reduce(
    (sum, [one, given]) => sum + off(one.sides, given?.sides) + off(one.corners, given?.corners),
    0,
  );
}
