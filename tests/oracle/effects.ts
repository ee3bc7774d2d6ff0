/**
 * What one mishap does to the counts, from the model's words: a table of sums, without working a stitch.
 *
 * Where a hand has no room for the mishap (nothing left to miss, no stitch to move a corner into) nothing is
 * foretold: null.
 */
import type { Mishap, Plan } from '../../core/index.ts';

export type Counts = { sides: number[]; corners: number[] };

const sizes = (corners: readonly { size: number }[]): number[] => corners.map(({ size }) => size);
const total = (numbers: readonly number[]): number => numbers.reduce((all, one) => all + one, 0);

/** A list with `by` added at one index. */
const grown = (list: readonly number[], index: number, by: number): number[] =>
  list.map((value, i) => (i === index ? value + by : value));

const replaced = (list: readonly number[], index: number, value: number): number[] =>
  list.map((old, i) => (i === index ? value : old));

/** Counts when the corner between sides j and j + 1 is not there. */
function merged({ sides, corners }: Counts, j: number): Counts {
  const left = corners.filter((_, i) => i !== j);
  if (sides.length === 1) return { sides, corners: left };
  const next = (j + 1) % sides.length;
  const both = (sides[j] as number) + (sides[next] as number);
  return {
    sides: replaced(sides, Math.min(j, next), both).filter((_, i) => i !== Math.max(j, next)),
    corners: left,
  };
}

/** An edging worked on what is below, by the recipe of edging n. */
function edged(
  plan: Plan,
  below: Counts,
  n: number,
  corners = sizes(plan.edgings[n]?.corners ?? []),
): Counts {
  const { arm, increase } = plan.edgings[n] as Plan['edgings'][number];
  if (plan.edge.corners.length === 0) {
    const count = below.sides[0] as number;
    // Nothing can be worked into the one stitch that the closing covers.
    return { sides: [count > 1 ? count + increase : count], corners: [] };
  }
  if (below.corners.length === 0) return { sides: [...below.sides], corners: [] };
  const grows = total(arm);
  return {
    sides: below.sides.map((count) => count + grows),
    corners: corners.slice(0, below.corners.length),
  };
}

/** Every edging from n on, worked on what is below. */
function edgedFrom(plan: Plan, below: Counts, n: number): Counts[] {
  const rounds: Counts[] = [];
  for (let round = n; round < plan.edgings.length; round++)
    rounds.push(edged(plan, rounds.at(-1) ?? below, round));
  return rounds;
}

const plannedFoundation = (plan: Plan): Counts => ({
  sides: plan.foundation.sides,
  corners: sizes(plan.foundation.corners),
});

/** All rounds after the mishap, foundation first; null where the hand has no room for it. */
export function countsAfter(plan: Plan, mishap: Mishap): Counts[] | null {
  if (mishap.round === 'join') return withFoundation(plan, plannedFoundation(plan));
  if (mishap.round === 'plan') return withPlanning(plan, mishap);
  if (mishap.round === 'foundation') {
    const after = onFoundation(plan, mishap);
    return after && withFoundation(plan, after);
  }
  const n = mishap.edging ?? 0;
  const before = withFoundation(plan, plannedFoundation(plan)).slice(0, n + 1);
  const after = onEdging(plan, before.at(-1) as Counts, n, mishap);
  return after && [...before, after, ...edgedFrom(plan, after, n + 1)];
}

const withFoundation = (plan: Plan, foundation: Counts): Counts[] => [
  foundation,
  ...edgedFrom(plan, foundation, 0),
];

/** The hand reads the front wrongly and then does the same arithmetic. */
function withPlanning(plan: Plan, { kind }: Mishap): Counts[] {
  const { edge, choices } = plan;
  const k = edge.sides.length;
  const s = choices.start.side;
  const isRound = edge.corners.length === 0;
  const arms = total(plan.edgings.map(({ arm, increase }) => (isRound ? increase : total(arm))));
  const chains = (i: number): number => edge.corners[i]?.size ?? 0;
  const taken = { 'chains-as-stitches': 1, 'chains-left-out': -1 }[kind as string] ?? 0;
  const read = edge.sides.map(
    (count, i) => count + taken * chains(i) - (kind === 'arms-forgotten' ? 0 : arms),
  );
  const isMirrored = kind !== 'order-not-mirrored';
  const sides = read.map((_, j) => read[(isMirrored ? s - j + k : s + j) % k] as number);
  // The closing and the counted chains are made, however few stitches were wanted.
  const least = choices.foundationClosing.adds + choices.foundationStart.counts;
  const made = sides.map((count, j) => Math.max(j === 0 ? least : 0, count));
  const rounds = withFoundation(plan, { sides: made, corners: sizes(plan.foundation.corners) });
  const last = rounds.at(-1) as Counts;
  if (!isMirrored) last.corners = edge.corners.map((_, j) => chains((s + j) % k));
  return rounds;
}

function onFoundation(plan: Plan, mishap: Mishap): Counts | null {
  const planned = plannedFoundation(plan);
  const { sides, corners } = planned;
  const { lead, tail } = plan.foundation;
  const { counts } = plan.choices.foundationStart;
  const { adds } = plan.choices.foundationClosing;
  const add = (side: number, by: number): Counts => ({ sides: grown(sides, side, by), corners });
  const { side = 0, corner = 0, count = 1, place = 0 } = mishap;
  switch (mishap.kind) {
    case 'start-counted':
      // Counted as planned it is no mishap; with no treble to leave out none is.
      return add(0, counts === 0 && lead + tail > 0 ? -1 : 0);
    case 'closing-forgotten':
      return add(0, adds);
    case 'closing-over-first':
      return add(0, -adds);
    case 'closing-beside-first':
      return add(0, 1 - adds);
    case 'stitch-missed': {
      const left = trebleLeft(plan, side, place);
      return left === null ? null : add(side, -Math.min(count, left));
    }
    case 'marker-miscounted': {
      // No more can be missed than the leg still has.
      const left = trebleLeft(plan, side, place);
      return left === null ? null : add(side, count < 0 ? -Math.min(-count, left) : count);
    }
    case 'stitch-doubled':
      return trebleLeft(plan, side, place) === null ? null : add(side, count);
    case 'corner-moved': {
      const legs = [lead, ...sides.slice(1), tail];
      const [leg, next] = [legs[corner] as number, legs[corner + 1] as number];
      if (leg + count < 0 || (mishap.then === 'from-total' && next - count < 0)) return null;
      const moved = add(corner, count);
      const following = (corner + 1) % sides.length;
      return mishap.then === 'from-total' ? { sides: grown(moved.sides, following, -count), corners } : moved;
    }
    case 'corner-forgotten':
      return merged(planned, corner);
    case 'corner-chains':
      return { sides, corners: replaced(corners, corner, count) };
    case 'twisted':
      return planned;
    default:
      throw new Error(`no such mishap on the foundation: ${mishap.kind}`);
  }
}

/** Trebles from a planned place to the end of its leg; null where the side has none at all. */
function trebleLeft(plan: Plan, side: number, place: number): number | null {
  const { sides, lead, tail } = plan.foundation;
  if (side > 0) return Math.max(1, (sides[side] as number) - place);
  if (lead + tail === 0) return null;
  // Side 0 in its own order: the tail after the last corner, the closing and the counted chains, the lead.
  const beforeLead = (sides[0] as number) - lead;
  const isInLead = (place >= beforeLead || tail === 0) && lead > 0;
  return isInLead ? Math.max(1, lead - Math.max(0, place - beforeLead)) : Math.max(1, tail - place);
}

function onEdging(plan: Plan, below: Counts, n: number, mishap: Mishap): Counts | null {
  const planned = edged(plan, below, n);
  const { sides, corners } = planned;
  const isRound = corners.length === 0;
  const [armBefore, armAfter] = isRound ? [0, 0] : (plan.edgings[n] as Plan['edgings'][number]).arm;
  const k = sides.length;
  const { adds } = plan.choices.edgingClosing;
  const { side = 0, corner = 0, count = 1, place = 0 } = mishap;
  const next = (corner + 1) % k;
  const add = (which: number, by: number): Counts => ({ sides: grown(sides, which, by), corners });
  // The attach place carries no stitch that could be missed or doubled.
  const workable = (which: number): number => (below.sides[which] as number) - (which === 0 ? 1 : 0);
  switch (mishap.kind) {
    case 'start-counted':
      // The chain stands for the next stitch, if there is one before the corner.
      if (isRound && (plan.edgings[n]?.increase ?? 0) > 0) return null;
      return add(0, (isRound ? (below.sides[0] as number) : firstLeg(plan, n)) > 1 ? -1 : 0);
    case 'closing-forgotten':
      return add(0, adds);
    case 'closing-over-first':
      return add(0, -adds);
    case 'closing-beside-first':
      return add(0, 1 - adds);
    case 'attach-doubled':
    case 'closing-worked':
      return add(0, 1);
    case 'stitch-missed': {
      // Enough stitches behind the place, whichever of them is the attach place, and none of them a spread increase.
      const behind = (below.sides[side] as number) - Math.max(0, place - armAfter) - (side === 0 ? 1 : 0);
      const isSpread = isRound && (plan.edgings[n] as Plan['edgings'][number]).increase > 0;
      return behind < count || isSpread ? null : add(side, -count);
    }
    case 'stitch-doubled':
      return workable(side) < 1 ? null : add(side, count);
    case 'stitch-between':
      return workable(side) < 1 ? null : add(side, 1);
    case 'arm-missed': {
      const arm = mishap.end === 'before' ? armBefore : armAfter;
      return add(mishap.end === 'before' ? corner : next, -Math.min(arm, mishap.count ?? arm));
    }
    case 'corner-worked-over':
      return { sides: grown(grown(sides, corner, -armBefore), next, -armAfter), corners };
    case 'both-loops':
    case 'front-loops':
      return planned;
    case 'hidden-missed':
      return below.sides[next] === 1 || next === 0 ? null : add(next, -1);
    case 'corner-chains':
      return { sides, corners: replaced(corners, corner, count) };
    case 'corner-forgotten': {
      const straight = {
        sides: grown(sides, corner, (below.corners[corner] as number) - armBefore - armAfter),
        corners,
      };
      return merged(straight, corner);
    }
    case 'corner-moved': {
      // Early: n stitches of the side are left for the next one, the corner's own place becomes plain stitches.
      const size = below.corners[corner] as number;
      const givesUp = count < 0 ? corner : next;
      const takes = count < 0 ? next : corner;
      const room = givesUp === 0 ? -1 : (below.sides[givesUp] as number);
      if (count === 0) return planned;
      if (mishap.then === 'from-corner') return movedFromCorner(plan, below, n, corner, count);
      if (room < Math.abs(count) || k === 1) return null;
      return {
        sides: grown(grown(sides, givesUp, -Math.abs(count)), takes, Math.abs(count) - 1 + size),
        corners,
      };
    }
    default:
      throw new Error(`no such mishap on an edging: ${mishap.kind}`);
  }
}

/** Stitches before the first corner of the round on which edging n is worked. */
function firstLeg(plan: Plan, n: number): number {
  if (n === 0) return plan.foundation.lead + plan.choices.foundationStart.counts;
  const below = firstLeg(plan, n - 1);
  const [armBefore] = (plan.edgings[n - 1] as Plan['edgings'][number]).arm;
  // The attach place, before the corner or else after the last one, gets its stitch at the beginning or at the end.
  const attached = plan.choices.edgingClosing.adds === 0 ? 1 : 0;
  return Math.max(0, below - 1) + attached + armBefore;
}

/** Targets of the round below in the order the hand comes to them, the attach place first: `S`, or `C2` for corner 2. */
function targetsFrom(plan: Plan, below: Counts, n: number): string[] {
  const lead = firstLeg(plan, n);
  const legs = [lead, ...below.sides.slice(1), (below.sides[0] as number) - lead];
  return legs.flatMap((leg, j) => [
    ...Array.from({ length: leg }, () => 'S'),
    ...Array.from({ length: below.corners[j] ?? 0 }, () => `C${j}`),
  ]);
}

/** A corner made early or late, and after it every side counted out by the recipe. */
function movedFromCorner(plan: Plan, below: Counts, n: number, corner: number, by: number): Counts | null {
  const { arm, sides: asked, corners } = plan.edgings[n] as Plan['edgings'][number];
  if (firstLeg(plan, n) === 0 || below.corners.includes(0)) return null;
  const targets = targetsFrom(plan, below, n);
  const madeAt = new Map<number, number>();
  let last = by < 0 ? targets.indexOf(`C${corner}`) + by : targets.lastIndexOf(`C${corner}`) + by;
  for (let c = corner; c < corners.length; c++) {
    if (c > corner) last += (asked[c] as number) - total(arm) + 1;
    if (targets[last] === `C${c}`) last = targets.lastIndexOf(`C${c}`);
    else {
      const before = c === 0 ? 0 : Math.max(targets.lastIndexOf(`C${c - 1}`), madeAt.get(c - 1) ?? 0);
      const after = c + 1 < corners.length ? targets.indexOf(`C${c + 1}`) : targets.length;
      if (last <= before || last >= after) return null;
      madeAt.set(c, last);
    }
  }
  const sides = asked.map(() => 0);
  let side = 0;
  const stitch = (count: number): void => {
    sides[side] = (sides[side] as number) + count;
  };
  const turn = (): void => {
    stitch(arm[0]);
    side = (side + 1) % sides.length;
    stitch(arm[1]);
  };
  targets.forEach((target, i) => {
    const own = Number(target.slice(1));
    if ([...madeAt.values()].includes(i)) turn();
    else if (target === 'S' || madeAt.has(own)) stitch(1);
    else if (targets[i - 1] !== target) turn();
  });
  return { sides, corners: sizes(corners) };
}
