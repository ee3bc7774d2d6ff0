/**
 * Taking the numbers really worked for what they are: turning them into mishaps that make just these numbers.
 *
 * Rule: a difference is laid at the end of its side, in the round where it first shows; every later round is
 * compared with what the hand makes of the changed round below. Nothing is taken on trust: each mishap is tried,
 * and kept only as far as it brings the count nearer. What no hand can make is left at the nearest that it can.
 */

import { limits } from '../limits.ts';
import type { Plan, Seen } from '../types.ts';
import { isWhole, sum } from '../whole.ts';
import { type AtRound, actOf, type Mishap } from './acts/acts.ts';
import { settle } from './acts/doing.ts';
import { type Tally, tallyWith } from './tally.ts';

type Counted = NonNullable<Seen['foundation']>;

/** One round being brought to the numbers given. `edging` is -1 for the foundation. */
type Bringing = {
  plan: Plan;
  edging: number;
  made: Mishap[];
  /** The corners that the hand meets here, less those it forgets; by the numbers that mishaps use. */
  kept: number[];
  /** How many corners it meets. */
  met: number;
};

/**
 * Mishaps whose making has the numbers given (`Seen.foundation`, `Seen.edgings`; null = as it comes), for `work`.
 * A list of sides shorter than the plan's means corners forgotten: those that fit best. The recount of the front
 * and the join are no work of this hand and are passed over.
 * `given`: mishaps known already; they stand first in the list given back, and only what they leave is added.
 */
export function mishapsOf(plan: Plan, seen: Seen, given: readonly Mishap[] = []): Mishap[] {
  let made = [...given];
  for (let edging = -1; edging < plan.edgings.length; edging++) {
    const counted = edging < 0 ? seen.foundation : seen.edgings?.[edging];
    if (!counted || counted.sides.length === 0) continue;
    made = bring(plan, edging, made, counted);
  }
  return made;
}

function bring(plan: Plan, edging: number, before: Mishap[], counted: Counted): Mishap[] {
  const met = edging < 0 ? plan.foundation.corners.length : tallyAt(plan, before, edging - 1).corners.length;
  const at = where(edging);
  const isForgotten = (corner: number): boolean =>
    settle(before).some(
      (one) =>
        one.kind === 'corner-forgotten' &&
        one.corner === corner &&
        one.round === at.round &&
        (edging < 0 || one.edging === edging),
    );
  const kept = Array.from({ length: met }, (_, corner) => corner).filter((corner) => !isForgotten(corner));
  const bringing: Bringing = { plan, edging, made: [...before], met, kept };
  forgetCorners(bringing, counted);
  bringCorners(bringing, counted.corners ?? []);
  counted.sides.forEach((count, side) => {
    if (isWhole(count, 0, limits.stitches * 2)) bringSide(bringing, side, count);
  });
  return bringing.made;
}

function tallyAt(plan: Plan, made: readonly Mishap[], edging: number): Tally {
  const tallies = tallyWith(plan, settle(made));
  return edging < 0 ? tallies.foundation : (tallies.edgings[edging] as Tally);
}

/** The round a mishap is in. */
const where = (edging: number): AtRound =>
  edging < 0 ? { round: 'foundation' } : { round: 'edging', edging };

/** Forgets as many corners as the list lacks, each time the one that leaves the least difference. */
function forgetCorners(bringing: Bringing, counted: Counted): void {
  const { plan, edging, met } = bringing;
  const wanted = met === 0 ? 0 : (counted.corners?.length ?? Math.max(1, counted.sides.length));
  while (bringing.kept.length > wanted) {
    let best: { without: Mishap[]; corner: number; off: number } | undefined;
    for (const corner of bringing.kept) {
      const without: Mishap[] = [...bringing.made, { kind: 'corner-forgotten', ...where(edging), corner }];
      const off = difference(tallyAt(plan, without, edging), counted);
      if (!best || off < best.off) best = { without, corner, off };
    }
    if (!best) return;
    const { corner, without } = best;
    bringing.made = without;
    bringing.kept = bringing.kept.filter((one) => one !== corner);
  }
}

/** Stitches and chains by which a round differs from what was counted, where it was. */
function difference(tally: Tally, counted: Counted): number {
  const off = (made: readonly number[], given: readonly (number | null)[]): number =>
    sum(made.map((count, i) => (isWhole(given[i], 0, limits.stitches * 2) ? Math.abs(given[i] - count) : 0)));
  return off(tally.sides, counted.sides) + off(tally.corners, counted.corners ?? []);
}

function bringCorners(bringing: Bringing, sizes: readonly (number | null)[]): void {
  const { plan, edging, kept } = bringing;
  const now = tallyAt(plan, bringing.made, edging).corners;
  kept.forEach((corner, i) => {
    const count = sizes[i];
    if (isWhole(count, 0, limits.stitches) && count !== now[i])
      bringing.made.push({ kind: 'corner-chains', ...where(edging), corner, count });
  });
}

function bringSide(bringing: Bringing, side: number, wanted: number): void {
  const sideOf = (made: Mishap[]): number =>
    tallyAt(bringing.plan, made, bringing.edging).sides[side] ?? Number.NaN;
  let now = sideOf(bringing.made);
  if (Number.isNaN(now)) return;
  for (const means of now < wanted ? waysToAdd(bringing, side) : waysToLose(bringing, side)) {
    const ways = means(Math.abs(wanted - now));
    const exact = ways.find((mishap) => sideOf([...bringing.made, mishap]) === wanted);
    for (const mishap of exact ? [exact] : ways) {
      const tried = [...bringing.made, mishap];
      const then = sideOf(tried);
      const nearer = now < wanted ? then > now && then <= wanted : then < now && then >= wanted;
      if (!nearer) continue;
      bringing.made = tried;
      now = then;
      if (now === wanted) return;
    }
  }
}

/** Mishaps that each change a side by `by` stitches or fewer, to be tried in turn. */
type Means = (by: number) => Mishap[];

function waysToAdd(bringing: Bringing, side: number): Means[] {
  const at = where(bringing.edging);
  const doubled = partsOf(bringing, side).map(
    ({ id, from, count }): Means =>
      (by) =>
        count > 0 ? [{ kind: 'stitch-doubled', ...at, side: id, place: from + count - 1, count: by }] : [],
  );
  if (side > 0) return doubled;
  const closing: Mishap['kind'][] =
    bringing.edging < 0
      ? ['closing-beside-first', 'closing-forgotten']
      : ['closing-worked', 'attach-doubled', 'closing-forgotten', 'closing-beside-first'];
  return [...doubled, ...closing.map((kind) => () => [actOf(kind, at)])];
}

function waysToLose(bringing: Bringing, side: number): Means[] {
  const { plan, edging, kept } = bringing;
  const at = where(edging);
  const missed = partsOf(bringing, side).map(
    (part): Means =>
      (by) =>
        missesAt(at, part, by),
  );
  const armMissed = (corner: number | undefined, end: 'before' | 'after'): Means => {
    const arm = plan.edgings[edging]?.arm[end === 'before' ? 0 : 1] ?? 0;
    return (by) =>
      corner === undefined || arm === 0
        ? []
        : [actOf('arm-missed', { ...at, corner, end, count: Math.min(by, arm) })];
  };
  const arms = [armMissed(kept[side], 'before'), armMissed(kept.at(side - 1), 'after')];
  const over: Means[] = side === 0 ? [() => [{ kind: 'closing-over-first', ...at }]] : [];
  return [...missed, ...arms, ...over];
}

/** At the end of the run; where the yarn is attached there, one stitch further in, for that one cannot be missed. */
function missesAt(at: AtRound, { id, from, count }: Part, by: number): Mishap[] {
  const miss = Math.min(by, count);
  const missFrom = (place: number, some: number): Mishap => ({
    kind: 'stitch-missed',
    ...at,
    side: id,
    place,
    count: some,
  });
  if (miss === 0) return [];
  const last = from + count - miss;
  if (at.round === 'foundation') return [missFrom(last, miss)];
  return [
    missFrom(last, miss),
    missFrom(Math.max(0, last - 1), miss),
    ...(miss > 1 ? [missFrom(last, miss - 1)] : []),
  ];
}

/** A run of stitches of a side that can be missed or doubled: places from…from+count-1 of the side `id`. */
type Part = { id: number; from: number; count: number };

/**
 * The runs of which a side as it now is consists, the last first. Where corners are forgotten a side is several of
 * those that mishaps name.
 */
function partsOf(bringing: Bringing, side: number): Part[] {
  const { kept, met } = bringing;
  const ids: number[] = [];
  if (kept.length === 0) for (let id = Math.max(1, met) - 1; id >= 0; id--) ids.push(id);
  else {
    const end = kept[side] as number;
    const begin = side === 0 ? (kept.at(-1) as number) - met : (kept[side - 1] as number);
    for (let id = end; id > begin; id--) ids.push((id + met) % met);
  }
  return ids.flatMap((id) =>
    bringing.edging < 0 ? foundationParts(bringing, id) : edgingParts(bringing, id),
  );
}

/** The start side is worked as two legs, with the closing's and the start's own places between them. */
function foundationParts({ plan, met }: Bringing, id: number): Part[] {
  const { foundation, choices } = plan;
  const count = foundation.sides[id] ?? 0;
  if (id > 0) return [{ id, from: 0, count }];
  const leadFrom = foundation.tail + choices.foundationClosing.adds + choices.foundationStart.counts;
  if (met === 0) return [{ id, from: 0, count: foundation.lead }];
  return [
    { id, from: leadFrom, count: foundation.lead },
    { id, from: 0, count: foundation.tail },
  ];
}

function edgingParts({ plan, edging, made, met }: Bringing, id: number): Part[] {
  const below = tallyAt(plan, made, edging - 1);
  const from = met > 0 ? (plan.edgings[edging]?.arm[1] ?? 0) : 0;
  return [{ id, from, count: below.sides[id] ?? 0 }];
}
