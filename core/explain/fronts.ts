/**
 * The front itself miscounted.
 *
 * Three ways: the number given is wrong, and the back was rightly made for the front as it is (`front`); the front
 * is really another than the recipe was made for (`recipe`: the back is as the recipe has it, and does not meet);
 * or the back was made from another number than the one given since (`neither`). What the back then has more or
 * fewer is told to `work` as stitches doubled or missed on the foundation side that faces the front's.
 */
import type { Mishap } from '../hand/acts/acts.ts';
import type { Plan } from '../types.ts';
import { type Candidate, candidateOf } from './candidate.ts';
import { type Magnitudes, smallest } from './magnitudes.ts';
import { placeOnSide } from './places.ts';
import type { BackMadeFor, FrontMiscount } from './types.ts';
import type { Wanted } from './wanted.ts';

export function frontCandidates(plan: Plan, wanted: Wanted, magnitudes: Magnitudes): Candidate[] {
  const recounted = new Map(
    wanted.spots.flatMap((spot, i) =>
      spot.part === 'front' ? [[spot.index, wanted.values[i] as number] as const] : [],
    ),
  );
  const of = (side: number): { given: number; backSide: number } => ({
    given: plan.edge.sides[side] as number,
    backSide: plan.faces.indexOf(side),
  });
  const single = plan.edge.sides.flatMap((_, side) => {
    const { given, backSide } = of(side);
    const recount = recounted.get(side);
    const sizes = new Set([...(magnitudes.ofSide[backSide] ?? smallest)]);
    if (recount !== undefined && recount !== given) sizes.add(Math.abs(recount - given));
    return [...sizes]
      .flatMap((by) => [by, -by])
      .flatMap((by) =>
        waysOf(recount, given, by, wanted).map((madeFor) => miscounted(plan, [{ side, by }], madeFor)),
      );
  });
  const off = [...recounted].flatMap(([side, recount]) => {
    const by = recount - of(side).given;
    return by === 0 ? [] : [{ side, by }];
  });
  return [
    ...single,
    ...everySide(plan, wanted, magnitudes),
    ...(off.length > 1 ? asRecounted(plan, off) : []),
  ];
}

/** Several sides recounted, and all of them wrong: the one who counted made one mistake. */
const asRecounted = (plan: Plan, front: FrontMiscount[]): Candidate[] =>
  (['front', 'recipe'] as const).map((madeFor) => miscounted(plan, front, madeFor, true));

/** Which of the three ways the recount and the join leave open, and can tell apart. */
function waysOf(recount: number | undefined, given: number, by: number, wanted: Wanted): BackMadeFor[] {
  if (recount === undefined) return wanted.usesJoin ? ['front', 'recipe', 'neither'] : ['front'];
  if (recount === given) return ['neither'];
  return recount - given === by ? ['front', 'recipe'] : ['neither'];
}

/** Whoever follows the recipe makes the back for the number given; our own judgement. */
const rarer: Record<BackMadeFor, number> = { recipe: 0, front: 0.1, neither: 0.5 };

function miscounted(plan: Plan, front: FrontMiscount[], backMadeFor: BackMadeFor, habit = false): Candidate {
  const mishaps = backMadeFor === 'recipe' ? [] : front.map(({ side, by }) => onBack(plan, side, by, habit));
  return candidateOf(mishaps, {
    kind: 'front-miscounted',
    front,
    backMadeFor,
    habit,
    size: front[0]?.by ?? 1,
    rarer: rarer[backMadeFor],
  });
}

function onBack(plan: Plan, frontSide: number, by: number, habit: boolean): Mishap {
  const side = plan.faces.indexOf(frontSide);
  return {
    kind: by < 0 ? 'stitch-missed' : 'stitch-doubled',
    round: 'foundation',
    side,
    place: placeOnSide(plan, 0, side, habit ? 0.25 : 0.5),
    count: Math.abs(by),
  };
}

/** The same mistake on every side, like the stitch beside each corner left out of the count. */
function everySide(plan: Plan, wanted: Wanted, magnitudes: Magnitudes): Candidate[] {
  const { sides } = plan.edge;
  if (sides.length < 2 || wanted.usesFront) return [];
  const common = (magnitudes.ofSide[0] ?? []).filter((by) =>
    magnitudes.ofSide.every((list) => list.includes(by)),
  );
  const ways: BackMadeFor[] = wanted.usesJoin ? ['front', 'recipe', 'neither'] : ['front'];
  return common
    .flatMap((by) => [by, -by])
    .flatMap((by) =>
      ways.map((way) =>
        miscounted(
          plan,
          sides.map((_, side) => ({ side, by })),
          way,
          true,
        ),
      ),
    );
}
