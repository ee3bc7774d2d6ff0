/**
 * Steps of the join: attach, slip stitch pair by pair, three sides, the pad, the last side, the last hole.
 *
 * Common practice, no source: the pair where the yarn is attached is joined last; the pad goes in when all sides
 * but one are joined (on a round panel, and with one corner, when a quarter is left).
 */

import type { PairRun, Plan, Stage, Step, StepKind } from '../types.ts';
import { isWhole, lastNotAbove, mod, sum } from '../whole.ts';
import { type CarriedOut, carriedOut } from './layout.ts';
import { actsSection, bareStep, markerAhead, type Section } from './sections.ts';

type Seam = {
  plan: Plan;
  runs: PairRun[];
  /** Pairs that take two of a piece, and what asks for it. */
  pinched: Map<number, CarriedOut>;
  /** Joined pairs before each run. */
  before: number[];
  pairs: number;
  /** Positions of the back's last round. */
  backTotal: number;
  /** Join index of the first front position of every side and corner, ascending, with what it is. */
  partStarts: number[];
  parts: { at: number; side: number; corner: number; from: number; of: number }[];
};

export function joinSections(plan: Plan, allRuns: PairRun[], backTotal: number): Section[] {
  const seam = seamOf(plan, allRuns, Math.max(1, backTotal));
  const breakAt = padPair(seam);
  const beforePad = Math.max(0, breakAt - 1);
  const first = seam.runs[0];
  const lastHoleOpen = allRuns[0]?.kind === 'open';
  const act = (stage: Stage, kind: StepKind, given: Partial<Step> = {}): Step =>
    bareStep(stage, kind, { yarn: 'join', ofRound: seam.pairs, ...given });
  const attached = first ? partOf(seam, first.front) : { side: 0, corner: -1, place: 0, of: 0 };
  const rest = Math.max(0, seam.pairs - 1);
  const at = { side: attached.side, corner: attached.corner, place: attached.place, of: attached.of };
  const hole = {
    ...at,
    node: first?.front ?? -1,
    backNode: first?.back ?? -1,
    target: targetOf(first?.front ?? -1, first?.back ?? -1),
    ...seam.pinched.get(0),
  };
  if (plan.choices.open !== undefined) return openSections(seam, act, hole);
  return [
    actsSection('join', 0, [
      act('join', 'wrong-sides', { yarn: 'none', loopsBefore: 0, loopsAfter: 0 }),
      act('join', 'join-marker', { ...at, loopsBefore: 0, loopsAfter: 0 }),
      act('join', 'join-attach', { ...at, loopsBefore: 0, target: hole.target }),
    ]),
    slipStitches(seam, 1, Math.max(1, breakAt), rest + 1),
    actsSection('join', 0, [
      act('join', 'long-loop', { done: beforePad }),
      act('join', 'pad-in', { done: beforePad, asks: 'pad' }),
      act('join', 'pin-last', { done: beforePad }),
      act('join', 'take-loop', { done: beforePad }),
    ]),
    slipStitches(seam, Math.max(1, breakAt), rest + 1, rest + 1),
    actsSection('join', 0, [
      act('join', 'look-for-holes', { done: rest }),
      ...(lastHoleOpen || seam.pairs === 0 ? [] : [act('join', 'last-hole', { ...hole, done: seam.pairs })]),
    ]),
    actsSection('join-closing', 0, [
      act('join-closing', 'fasten-off', { done: seam.pairs, loopsAfter: 0 }),
      act('join-closing', 'join-close', { done: seam.pairs, loopsBefore: 0, loopsAfter: 0 }),
      act('join-closing', 'ends-inside', { done: seam.pairs, loopsBefore: 0, loopsAfter: 0 }),
    ]),
  ];
}

type Acting = (stage: Stage, kind: StepKind, given?: Partial<Step>) => Step;

/** The join of a bag: from one corner of the open side round to the other; no pad, no last hole. */
function openSections(seam: Seam, act: Acting, attach: Partial<Step>): Section[] {
  const done = joinedBeside(seam);
  const { side = 0, corner = -1, place = 0, of = 0, target = targetOf(-1, -1) } = attach;
  const at = { side, corner, place, of };
  return [
    actsSection('join', 0, [
      act('join', 'wrong-sides', { yarn: 'none', loopsBefore: 0, loopsAfter: 0 }),
      act('join', 'join-marker', { ...at, loopsBefore: 0, loopsAfter: 0 }),
      act('join', 'join-attach', { ...at, loopsBefore: 0, target }),
    ]),
    slipStitches(seam, 1, done + 1, done + 1),
    actsSection('join', 0, [act('join', 'look-for-holes', { done })]),
    actsSection('join-closing', 0, [
      act('join-closing', 'fasten-off', { done, loopsAfter: 0 }),
      act('join-closing', 'ends-inside', { done, loopsBefore: 0, loopsAfter: 0 }),
    ]),
  ];
}

/** Pairs that do not lie on the open side. */
function joinedBeside({ plan, runs, partStarts, parts }: Seam): number {
  const which = parts.findIndex(({ side, corner }) => side === plan.choices.open && corner < 0);
  const from = partStarts[which] ?? 0;
  const to = from + (parts[which]?.of ?? 0);
  const { total } = plan.edge;
  const within = (first: number, count: number): number =>
    Math.max(0, Math.min(first + count, to) - Math.max(first, from));
  return sum(runs.map(({ front, count }) => count - within(front, count) - within(front - total, count)));
}

function seamOf(plan: Plan, allRuns: PairRun[], backTotal: number): Seam {
  const runs = allRuns.filter((run) => run.kind === 'joined' || run.kind === 'open');
  const before: number[] = [];
  let pairs = 0;
  for (const run of runs) {
    before.push(pairs);
    pairs += run.count;
  }
  const parts = frontParts(plan);
  return {
    plan,
    runs,
    pinched: pinchedPairs(allRuns),
    before,
    pairs,
    backTotal,
    parts,
    partStarts: parts.map(({ at }) => at),
  };
}

/** What lies alone and is taken together belongs to the pair before it. */
function pinchedPairs(allRuns: PairRun[]): Seam['pinched'] {
  const pinched: Seam['pinched'] = new Map();
  let pairs = 0;
  for (const { kind, count, together } of allRuns) {
    if (kind === 'joined' || kind === 'open') pairs += count;
    else if (together) pinched.set(pairs - 1, carriedOut(together.act, together.asked));
  }
  return pinched;
}

function frontParts(plan: Plan): Seam['parts'] {
  const parts: Seam['parts'] = [];
  let at = 0;
  plan.edge.sides.forEach((of, side) => {
    parts.push({ at, side, corner: -1, from: at, of });
    at += of;
    const size = plan.edge.corners[side]?.size ?? 0;
    if (size > 0) parts.push({ at, side, corner: side, from: at, of: size });
    at += size;
  });
  return parts;
}

function partOf(seam: Seam, front: number): { side: number; corner: number; place: number; of: number } {
  const part = seam.parts[Math.max(0, lastNotAbove(seam.partStarts, front))] as Seam['parts'][number];
  return { side: part.side, corner: part.corner, place: front - part.from, of: part.of };
}

/** Index of the first pair of the last side: all sides but one are joined before it. */
function padPair(seam: Seam): number {
  const { edge, choices } = seam.plan;
  const k = edge.sides.length;
  if (k < 2) return Math.floor((seam.pairs * 3) / 4);
  const last = mod(choices.joinStart.side - 1, k);
  const sizes = edge.corners.map((corner) => corner.size);
  const from = sum(edge.sides.slice(0, last)) + sum(sizes.slice(0, last));
  const start = seam.runs[0]?.front ?? 0;
  const around = mod(from - start, edge.total);
  // The pairs joined before that front position.
  let joined = 0;
  for (const run of seam.runs) {
    const distance = mod(run.front - start, edge.total);
    joined += Math.min(run.count, Math.max(0, around - distance));
  }
  return Math.min(seam.pairs, joined);
}

/** Whether the join comes to a corner after a front position: behind the start of its own side it comes to its end. */
function endsInCorner(seam: Seam, front: number): boolean {
  const start = seam.runs[0]?.front ?? 0;
  const { side, corner } = partOf(seam, front);
  const begun = partOf(seam, start);
  const isBehindStart = begun.corner < 0 && side === begun.side && corner < 0 && front < start;
  return seam.plan.edge.corners.length > 0 && !isBehindStart;
}

const targetOf = (node: number, backNode: number): Step['target'] => ({
  on: 'front',
  edging: 0,
  node,
  backNode,
  loop: 'inner-loops',
});

/** The pair that joins a front position, or -1. */
function pairOf(seam: Seam, front: number): number {
  const { total } = seam.plan.edge;
  if (!isWhole(front, 0, total - 1)) return -1;
  const which = seam.runs.findIndex((run) => mod(front - run.front, total) < run.count);
  const run = seam.runs[which];
  return run ? (seam.before[which] as number) + mod(front - run.front, total) : -1;
}

/** Pairs from…to-1 of the join, one slip stitch each; pair 0 is the attach place and comes at the very end. */
function slipStitches(seam: Seam, from: number, to: number, end: number): Section {
  const length = Math.max(0, Math.min(to, end) - from);
  const pairAt = (pair: number): { front: number; back: number } => {
    const which = lastNotAbove(seam.before, pair);
    const run = seam.runs[which] as PairRun;
    const along = pair - (seam.before[which] as number);
    const last = seam.plan.edge.total;
    return { front: mod(run.front + along, last), back: run.back - along };
  };
  return {
    length,
    stage: 'join',
    edging: 0,
    stretches: length > 0 ? joinStretches(seam, from, from + length, pairAt) : [],
    find: (node) => {
      const pair = pairOf(seam, node);
      return isWhole(pair, from, from + length - 1) ? pair - from : -1;
    },
    at: (offset) => {
      const { front, back } = pairAt(from + offset);
      const backNode = mod(back, seam.backTotal);
      const part = partOf(seam, front);
      const every = seam.plan.choices.markerEvery;
      const ahead = part.corner < 0 ? markerAhead(part.place, part.of, every, endsInCorner(seam, front)) : {};
      return bareStep('join', 'slip-stitch', {
        ...part,
        node: front,
        backNode,
        target: targetOf(front, backNode),
        yarn: 'join',
        done: from + offset,
        ofRound: seam.pairs,
        ...ahead,
        ...seam.pinched.get(from + offset),
      });
    },
  };
}

function joinStretches(
  seam: Seam,
  from: number,
  to: number,
  pairAt: (pair: number) => { front: number },
): Section['stretches'] {
  const firstPart = partOf(seam, pairAt(from).front);
  const stretches = [{ offset: 0, side: firstPart.side, corner: firstPart.corner }];
  for (let pair = from; pair < to; ) {
    const { front } = pairAt(pair);
    const part = partOf(seam, front);
    const which = lastNotAbove(seam.before, pair);
    const runEnd = (seam.before[which] as number) + (seam.runs[which] as PairRun).count;
    const next = Math.min(pair + part.of - part.place, runEnd, to);
    const last = stretches.at(-1) as (typeof stretches)[number];
    if (last.side !== part.side || last.corner !== part.corner)
      stretches.push({ offset: pair - from, side: part.side, corner: part.corner });
    pair = Math.max(next, pair + 1);
  }
  return stretches;
}
