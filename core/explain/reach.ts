/**
 * How far a cause reaches: which sides and corners of which rounds it can change, and by how much at most.
 *
 * Rule: reach is told too widely rather than too narrowly, for the search leans on it to leave nothing out. Sides
 * and corners are kept as bits of one number (there are at most 24).
 */
import type { Settled } from '../hand/acts/doing.ts';
import type { Plan } from '../types.ts';
import { mod } from '../whole.ts';
import type { Candidate } from './candidate.ts';

/** Bits of sides or corners; `from` is the first round changed: 0 the foundation, n + 1 edging n. */
type Span = { from: number; sides: number; corners: number };

export type Reach = {
  spans: Span[];
  /** What of the search's rules it falls under. */
  forgets: boolean;
  planned: boolean;
  /** What it changes, in all or on side 0, is bounded by no number: sides in another order, corners counted on. */
  unbounded: boolean;
  turnsJoin: boolean;
  skipsChain: boolean;
  joins: boolean;
  /** Corners of an edging worked elsewhere; `follows`: and the later ones counted on from there. */
  moves: { round: number; corner: number; sides: number; follows: boolean }[];
  /** Corners right after which something is done, as bits; with it, whatever stands at another place than usual. */
  besides: number;
  elsewhere: boolean;
  chains: { round: number; corners: number }[];
  front: number;
  /** The first round it changes. */
  first: number;
  /** All sides it changes by itself, in any round. */
  sides: number;
  /** Those and the sides beside them, and those beside corners it changes. */
  near: number;
  corners: number;
  /** None of what makes causes meddle, but for a side too short for both. */
  isPlain: boolean;
  /** Most stitches by which one side or corner can change. */
  most: number;
};

export const allBits = (k: number): number => (1 << k) - 1;

/** The sides and those next to them, around the ring. */
export const widened = (bits: number, k: number): number =>
  (bits | (bits << 1) | (bits >>> 1) | (bits >>> (k - 1)) | ((bits & 1) << (k - 1))) & allBits(k);

/** A corner worked elsewhere on an edging, and the later ones counted on from it. */
export const follows = (reach: Reach | undefined): boolean =>
  reach?.moves.some((move) => move.follows) ?? false;

const planKinds: readonly string[] = [
  'chains-as-stitches',
  'chains-left-out',
  'arms-forgotten',
  'order-not-mirrored',
];
const isPlanned = (one: Settled): boolean => planKinds.includes(one.kind);
const isMovedOnEdging = (one: Settled): boolean => one.kind === 'corner-moved' && one.round === 'edging';

export const roundOf = ({ round, edging }: Settled): number => (round === 'edging' ? edging + 1 : 0);

/** Sides that a mishap can change by itself. */
function sidesOf(one: Settled, k: number): number {
  if (isPlanned(one) || one.kind === 'corner-forgotten') return allBits(k);
  if (one.round === 'join' || one.kind === 'corner-chains' || one.kind === 'twisted') return 0;
  if (one.corner === undefined) return 1 << (one.side ?? 0);
  const { corner } = one;
  const next = 1 << mod(corner + 1, k);
  if (one.kind === 'hidden-missed') return next;
  if (one.kind === 'arm-missed') return one.end === 'before' ? 1 << corner : next;
  if (!isMovedOnEdging(one) || one.then === 'from-total') return (1 << corner) | next;
  return (allBits(k) & ~((1 << corner) - 1)) | 1;
}

/** `corner`: the size of the plan's biggest corner, by `biggestCorner`. */
export function reachOf(plan: Plan, { settled, front, cause, elsewhere }: Candidate, corner: number): Reach {
  const k = plan.foundation.sides.length;
  const spans = new Map<number, Span>();
  for (const one of settled) {
    if (one.round === 'join') continue;
    const from = roundOf(one);
    const span = spans.get(from) ?? { from, sides: 0, corners: 0 };
    span.sides |= sidesOf(one, k);
    if (one.kind === 'corner-chains') span.corners |= 1 << (one.corner as number);
    spans.set(from, span);
  }
  if (settled.some(({ kind }) => kind === 'order-not-mirrored'))
    spans.set(-1, { from: plan.edgings.length, sides: 0, corners: allBits(k) });
  const has = (...kinds: Settled['kind'][]): boolean => settled.some(({ kind }) => kinds.includes(kind));
  const moves = settled.filter(isMovedOnEdging);
  const chained = settled.filter(({ kind }) => kind === 'corner-chains');
  const sides = [...spans.values()].reduce((bits, span) => bits | span.sides, 0);
  const corners = [...spans.values()].reduce((bits, span) => bits | span.corners, 0);
  return {
    first: Math.min(...[...spans.values()].map(({ from }) => from)),
    sides,
    corners,
    near: widened(sides | corners, k),
    spans: [...spans.values()],
    forgets: has('corner-forgotten'),
    planned: settled.some(isPlanned),
    unbounded: has('order-not-mirrored') || moves.some(({ then }) => then === 'from-corner'),
    turnsJoin: has('join-wrong-side', 'join-offset'),
    skipsChain: has('join-chain-skipped'),
    joins: settled.some(({ round }) => round === 'join'),
    moves: moves.map((one) => ({
      round: roundOf(one),
      corner: one.corner as number,
      sides: sidesOf(one, k),
      follows: one.then === 'from-corner',
    })),
    besides: settled.reduce(
      (bits, one) => (one.kind === 'hidden-missed' ? bits | (1 << (one.corner as number)) : bits),
      0,
    ),
    elsewhere,
    chains: chained.map((one) => ({ round: roundOf(one), corners: 1 << (one.corner as number) })),
    front: cause.backMadeFor === 'neither' ? 0 : front.length,
    isPlain:
      moves.length === 0 &&
      chained.length === 0 &&
      !has('corner-forgotten') &&
      !settled.some((one) => isPlanned(one) || one.round === 'join'),
    most: mostOf(plan, settled, corner),
  };
}

/** What a habit does in one round it does in the next on top of it. */
function mostOf(plan: Plan, settled: readonly Settled[], corner: number): number {
  const k = plan.foundation.sides.length;
  const most = new Array<number>(k).fill(0);
  for (const one of settled) {
    const by = mostBy(plan, one, corner);
    const sides = sidesOf(one, k) || (one.corner === undefined ? 0 : 1 << one.corner);
    for (let side = 0; side < k; side++)
      if (((sides >>> side) & 1) === 1) most[side] = (most[side] as number) + by;
  }
  return Math.max(...most);
}

export const biggestCorner = (plan: Plan): number =>
  Math.max(
    0,
    ...[plan.foundation, ...plan.edgings].flatMap(({ corners }) => corners.map(({ size }) => size)),
  );

function mostBy(plan: Plan, one: Settled, corner: number): number {
  const count = Math.abs(one.count ?? 1);
  if (isMovedOnEdging(one)) return count + corner;
  if (one.kind === 'corner-chains') return Math.max(corner, count);
  if (one.kind === 'corner-worked-over') return Math.max(...(plan.edgings[one.edging]?.arm ?? [0]));
  if (one.kind === 'order-not-mirrored') return Number.POSITIVE_INFINITY;
  // What becomes of its chains; the sides it lays together are no matter of more or less.
  if (one.kind === 'corner-forgotten') return corner;
  if (one.kind === 'arms-forgotten')
    return plan.edgings.reduce((total, { arm, increase }) => total + arm[0] + arm[1] + increase, 0);
  if (isPlanned(one)) return corner;
  return count;
}
