/**
 * How often the true cause is found. A set counts as found in two ways, and both are printed:
 * "itself": the very causes, at the very corner or side (which stitch of a side cannot be told by counting);
 * "its like": as many causes that give the same counts everywhere, so that no count of the back tells them apart.
 * What is held to a share is "its like". Likes are listed by rank; of equal rank, in the order of the candidates.
 */
import { describe, expect, it } from 'vitest';
import {
  type ActKind,
  type Explanation,
  explain,
  type Mishap,
  type Plan,
  type Seen,
} from '../../core/index.ts';
import { countsOf, matches } from './explain-panels.ts';
import {
  type Draw,
  drawFrom,
  drawMishap,
  drawPlan,
  joinSeen,
  kindsThatCountsShow,
  leaveOut,
  namesOf,
  seenInFull,
} from './explain-random.ts';

/** Everything that could be counted of a making. */
function countedOf(plan: Plan, mishaps: readonly Mishap[], withJoin: boolean): string {
  return JSON.stringify([countsOf(plan, mishaps), withJoin ? joinSeen(plan, mishaps) : null]);
}

type Sought = { plan: Plan; mishaps: Mishap[]; seen: Seen };

/** Whether counting shows anything at all, and everything that is amiss. */
function isShown({ plan, mishaps, seen }: Sought): boolean {
  const whole = countedOf(plan, mishaps, !!seen.join);
  return mishaps.every((_, i) => countedOf(plan, mishaps.toSpliced(i, 1), !!seen.join) !== whole);
}

/** Whether what is left of the counts speaks of every mishap: fewer of them do not make just these counts. */
function isStillShown({ plan, mishaps, seen }: Sought): boolean {
  const isEnough = (some: Mishap[]): boolean =>
    matches(countsOf(plan, some), seen) &&
    (!seen.join || JSON.stringify(joinSeen(plan, some)) === JSON.stringify(seen.join));
  return !mishaps.some((_, i) => isEnough(mishaps.toSpliced(i, 1))) && !isEnough([]);
}

/** Places in the list (from 1) of the causes themselves and of the first of their likes; 0: not listed. */
function placesOf({ plan, mishaps, seen }: Sought, explanations: readonly Explanation[]) {
  const own = namesOf(mishaps);
  const counted = countedOf(plan, mishaps, !!seen.join);
  const itself = explanations.findIndex((one) => namesOf(one.mishaps) === own) + 1;
  const like =
    explanations.findIndex(
      (one) => one.causes.length <= mishaps.length && countedOf(plan, one.mishaps, !!seen.join) === counted,
    ) + 1;
  return { itself, like };
}

function search(sought: Sought) {
  const found = explain(sought.plan, sought.seen, { advice: false });
  return { ...placesOf(sought, found.explanations), listed: found.explanations.length };
}

const share = (places: readonly number[], upTo = Number.POSITIVE_INFINITY): number =>
  places.filter((place) => place > 0 && place <= upTo).length / Math.max(1, places.length);
const percent = (part: number): string => `${Math.round(part * 100)} %`.padStart(6);

function draws(seed: number, times: number, mishapsOf: (draw: Draw, plan: Plan) => Mishap[]): Sought[] {
  const draw = drawFrom(seed);
  const sought: Sought[] = [];
  for (let tries = 0; sought.length < times && tries < times * 20; tries++) {
    const plan = drawPlan(draw);
    const mishaps = mishapsOf(draw, plan);
    const one = { plan, mishaps, seen: seenInFull(plan, mishaps) };
    if (isShown(one)) sought.push(one);
  }
  return sought;
}

const pairOf = (draw: Draw, plan: Plan): Mishap[] => {
  const kind = (): ActKind => kindsThatCountsShow[draw(kindsThatCountsShow.length)] as ActKind;
  return [drawMishap(draw, plan, kind()), drawMishap(draw, plan, kind())];
};

describe('causes found', () => {
  it('single mishaps, everything counted: among the first two in 95 of 100', () => {
    const rows = kindsThatCountsShow.map((kind, n) => {
      const places = draws(100 + n, 5, (draw, plan) => [drawMishap(draw, plan, kind)]).map(search);
      return { kind, itself: places.map(({ itself }) => itself), like: places.map(({ like }) => like) };
    });
    console.log(`\n${'single mishap'.padEnd(24)} tried  itself 1st  in 2   in 5 listed | its like in 2`);
    for (const { kind, itself, like } of rows)
      console.log(
        `${kind.padEnd(24)} ${`${itself.length}`.padStart(5)}    ${[1, 2, 5, 99].map((n) => percent(share(itself, n))).join(' ')} | ${percent(share(like, 2))}`,
      );
    const all = rows.flatMap(({ like }) => like);
    expect(rows.every(({ itself }) => itself.length >= 4)).toBe(true);
    expect(share(all, 2)).toBeGreaterThanOrEqual(0.95);
  });

  it('pairs, everything counted: among the first five in 80 of 100', () => {
    const places = draws(7, 40, pairOf).map(search);
    const itself = places.map((place) => place.itself);
    const like = places.map((place) => place.like);
    console.log(
      `\npairs: ${places.length} tried, itself first ${percent(share(itself, 1))}, in five ${percent(share(itself, 5))}, listed ${percent(share(itself))}; its like in five ${percent(share(like, 5))}`,
    );
    expect(share(like, 5)).toBeGreaterThanOrEqual(0.8);
  });

  it('with a third of the counts left out: still listed in 90 of 100', () => {
    const draw = drawFrom(11);
    const kinds = kindsThatCountsShow;
    const singles = draws(12, 40, (d, plan) => [drawMishap(d, plan, kinds[d(kinds.length)] as ActKind)]);
    const pairs = draws(13, 40, pairOf);
    for (const [name, sought] of [
      ['singles', singles],
      ['pairs', pairs],
    ] as const) {
      const partly = sought
        .map((one) => ({ ...one, seen: leaveOut(draw, one.seen, 3) }))
        .filter(isStillShown);
      const places = partly.map(search);
      const like = places.map((place) => place.like);
      console.log(
        `\n${name}, a third not counted: ${places.length} of ${sought.length} still show all that is amiss; its like listed ${percent(share(like))}, in five ${percent(share(like, 5))}, itself listed ${percent(share(places.map(({ itself }) => itself)))}`,
      );
      expect(share(like)).toBeGreaterThanOrEqual(0.9);
    }
  });
});
