/** Mishaps as hands have them, drawn by a seed: the same ones every time. */
import {
  type ActKind,
  actKinds,
  actOf,
  type Corner,
  type Edge,
  entryOf,
  has,
  type Mishap,
  needs,
  type Plan,
  pair,
  type Round,
  roundsOf,
  type Seen,
  work,
} from '../../core/index.ts';
import { countsOf, planOf, seenOf } from './explain-panels.ts';

/** Numbers below `n`, one after another (mulberry32, public domain). */
export type Draw = (n: number) => number;

export function drawFrom(seed: number): Draw {
  let state = seed >>> 0;
  return (n) => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) % n;
  };
}

const pick = <T>(draw: Draw, list: readonly T[]): T => list[draw(list.length)] as T;

/** A panel of 3 to 12 sides of 20 to 80 stitches, half of them with equal sides, mostly with one edging. */
export function drawPlan(draw: Draw): Plan {
  const sideCount = 3 + draw(10);
  const even = draw(2) === 0;
  const side = 20 + draw(61);
  const corner: Corner = { made: 'chain', size: 1 + draw(3) };
  return planOf(
    Array.from({ length: sideCount }, () => (even ? side : 20 + draw(61))),
    corner,
    {
      edgings: Array.from({ length: draw(4) === 0 ? 2 : 1 }, () => ({
        arm: pick(draw, [1, 1, 1, 2, [2, 1]] as const) as number,
        corner,
      })),
      start: { side: draw(sideCount) },
      foundationStart: { counts: draw(4) === 0 ? 1 : 0 },
      foundationClosing: { adds: draw(4) === 0 ? 0 : 1 },
      edgingClosing: { adds: draw(4) === 0 ? 0 : 1 },
    },
  );
}

export const kindsThatCountsShow = actKinds.filter((kind) => entryOf(kind).seenAs === undefined);

export function drawMishap(draw: Draw, plan: Plan, kind: ActKind): Mishap {
  const k = plan.foundation.corners.length;
  const rounds = roundsOf(kind);
  const round = pick(draw, rounds);
  const edging = draw(plan.edgings.length);
  const side = draw(plan.foundation.sides.length);
  const corner = draw(k);
  const sign = draw(2) === 0 ? 1 : -1;
  const of = round === 'foundation' ? plan.foundation : (plan.edgings[edging] as Plan['edgings'][number]);
  const planned = (of.corners[corner] as Corner).size;
  const counts: Partial<Record<ActKind, number>> = {
    'corner-moved': sign * (1 + draw(4)),
    'corner-chains': Math.max(0, planned + pick(draw, [-1, 1, 2])),
    'stitch-missed': pick(draw, [1, 1, 1, 2, 3, 10]),
    'stitch-doubled': pick(draw, [1, 1, 1, 2, 3]),
    'marker-miscounted': sign * plan.choices.markerEvery,
    'join-offset': sign * (1 + draw(3)),
    'join-wrong-side': 1 + draw(k - 1),
  };
  const end = pick(draw, ['before', 'after'] as const);
  const arm = plan.edgings[edging]?.arm[end === 'before' ? 0 : 1] ?? 0;
  const count = kind === 'arm-missed' ? arm : counts[kind];
  // No corner follows the last of an edging: counted from it or from the total is the same.
  const isLast = round === 'edging' && corner === k - 1;
  const then = has(kind, 'then') && (isLast || draw(2) === 0) ? 'from-total' : 'from-corner';
  const place = needs(kind, 'place') ? 3 + draw(Math.max(1, (of.sides[side] as number) - 6)) : 0;
  return actOf(kind, {
    round,
    ...(round === 'edging' ? { edging } : {}),
    side,
    place,
    corner,
    ...(count === undefined ? {} : { count }),
    end,
    then,
    ...(has(kind, 'of') ? { of: pick(draw, ['back', 'front'] as const) } : {}),
  });
}

/** What the join shows, by `pair`, stitch by stitch. */
export function joinSeen(plan: Plan, mishaps: readonly Mishap[], front: Edge = plan.edge): Seen['join'] {
  const worked = work(plan, mishaps);
  const back = worked.edgings.at(-1) as Round;
  if (back.length === 0) return {};
  const paired = pair(front, back, { start: worked.join, manner: 'stitch-by-stitch' });
  return { drift: paired.sides.map(({ drift }) => drift), leftOver: paired.leftOver };
}

/** Every count of the back; of the join too, where something was amiss in the join. */
export function seenInFull(plan: Plan, mishaps: readonly Mishap[]): Seen {
  const seen = seenOf(countsOf(plan, mishaps));
  const isJoined = mishaps.some(({ kind }) => roundsOf(kind)[0] === 'join');
  return isJoined ? { ...seen, join: joinSeen(plan, mishaps) ?? {} } : seen;
}

/** The same with `share` of the counts left out. */
export function leaveOut(draw: Draw, seen: Seen, oneIn: number): Seen {
  const mask = (list: readonly (number | null)[] = []): (number | null)[] =>
    list.map((count) => (draw(oneIn) === 0 ? null : count));
  const round = (of: NonNullable<Seen['foundation']>) => ({
    sides: mask(of.sides),
    corners: mask(of.corners),
  });
  return {
    ...seen,
    ...(seen.foundation ? { foundation: round(seen.foundation) } : {}),
    ...(seen.edgings ? { edgings: seen.edgings.map(round) } : {}),
  };
}

/** The mishaps by name: all but which stitch of a side it was, which no count can tell. */
const nameOf = ({ kind, round, edging, side, corner, count, end, then, of }: Mishap): string =>
  JSON.stringify([
    kind,
    round,
    round === 'edging' ? (edging ?? 0) : 0,
    side,
    corner,
    end,
    kind.startsWith('stitch') ? (count ?? 1) : count,
    then,
    of,
  ]);
export const namesOf = (mishaps: readonly Mishap[]): string => mishaps.map(nameOf).sort().join();
