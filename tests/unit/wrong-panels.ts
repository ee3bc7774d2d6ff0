/** Panels and causes for the tests of the tab that finds out what went wrong. */
import {
  actOf,
  type Cause,
  type Choices,
  countRound,
  type EdgeInput,
  type Explanation,
  type FrontMiscount,
  type Mishap,
  type Plan,
  planBack,
  type Result,
  readEdge,
  type Seen,
  work,
} from '../../core/index.ts';
import { CAUSE_KINDS } from '../../src/words/wrong/causes.ts';

export const given = <T>(result: Result<T>): T => {
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
};

const chains = { made: 'chain', size: 2 } as const;

export const planOf = (sides: number[], choices: Choices = {}, corner: EdgeInput['corner'] = chains): Plan =>
  given(planBack(given(readEdge({ sides, corner, counted: 'stitches-only' })), choices));

export const roundPlan = (stitches: number): Plan =>
  planOf(
    [stitches],
    { edgings: [{ arm: 0, corner: [], increase: 6 }] as unknown as NonNullable<Choices['edgings']> },
    [],
  );

const round = (arm: number) => ({ arm, corner: chains });

export const PANELS: [name: string, plan: Plan][] = [
  ['a rectangle', planOf([62, 38, 62, 38])],
  ['four sides that differ', planOf([48, 31, 45, 34])],
  ['one stitch in each corner', planOf([30, 30, 30, 30], {}, { made: 'stitch', size: 1 })],
  ['three edging rounds', planOf([40, 30, 40, 30], { edgings: [round(1), round(1), round(1)] })],
  ['two sides', planOf([30, 20])],
  ['a round panel', roundPlan(60)],
];

/** Each kind as a single mishap, as a habit, and the front's three ways. */
export function causesOn(plan: Plan): Cause[] {
  const common = { rarity: 1, source: 'judgement' } as const;
  const cause = (kind: Cause['kind'], mishaps: Mishap[], more: Partial<Cause> = {}): Cause => ({
    kind,
    habit: false,
    anywhere: false,
    mishaps,
    front: [],
    ...common,
    ...more,
  });
  const last = plan.edge.sides.length - 1;
  const all: FrontMiscount[] = plan.edge.sides.map((_, side) => ({ side, by: 1 }));
  return CAUSE_KINDS.flatMap((kind): Cause[] => {
    if (kind === 'front-miscounted')
      return [
        ...(['front', 'recipe', 'neither'] as const).map((backMadeFor) =>
          cause(kind, [], { front: [{ side: last, by: -1 }], backMadeFor }),
        ),
        cause(kind, [], { front: all, backMadeFor: 'front', habit: true }),
      ];
    const edging = { round: 'edging', edging: 0 } as const;
    const count = kind.startsWith('join') || kind === 'corner-moved' ? -2 : 3;
    const one = {
      side: last,
      corner: last,
      place: 4,
      count,
      end: 'after',
      then: 'from-total',
      of: 'back',
    } as const;
    return [
      cause(kind, [actOf(kind, { ...one, round: 'foundation' })]),
      cause(kind, [actOf(kind, { ...one, ...edging, count: 1, then: 'from-corner', end: 'before' })], {
        anywhere: true,
      }),
      cause(
        kind,
        plan.edge.sides.map((_, corner) =>
          actOf(kind, {
            ...edging,
            corner,
            count: 1,
            end: 'after',
            ...(kind === 'two-with-one' && { side: corner, place: 4, of: 'back' }),
          }),
        ),
        { habit: true },
      ),
    ];
  });
}

/** The counts of a making, all of them. */
export function seenOf(
  plan: Plan,
  mishaps: readonly Mishap[],
): Required<Pick<Seen, 'foundation' | 'edgings'>> {
  const { foundation, edgings } = work(plan, mishaps);
  const read = (made: typeof foundation) => {
    const { sides, corners } = countRound(made);
    return { sides, corners: corners.map(({ size }) => size) };
  };
  return { foundation: read(foundation), edgings: edgings.map(read) };
}

/** An explanation of the mishaps given, as far as the words need one. */
export function explanationOf(plan: Plan, mishaps: Mishap[]): Explanation {
  const seen = seenOf(plan, mishaps);
  return {
    mishaps,
    causes: [],
    sure: 'likely',
    rank: 1,
    score: { causes: 1, rarity: 1 },
    gives: { ...(seen as Explanation['gives']), front: plan.edge.sides },
    tell: [],
    cures: [],
  };
}
