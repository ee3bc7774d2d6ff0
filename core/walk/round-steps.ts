/** Steps along the front edge, the foundation and the edging rounds, and of closing them. */

import { NodeKind, type Plan, type Stage, type Step, type StepKind, type StepTarget } from '../types.ts';
import { isWhole, lastNotAbove } from '../whole.ts';
import { attachedOn, type CarriedOut, locate, type RoundsSeen, type RoundView } from './layout.ts';
import { actsSection, bareStep, markerAhead, nowhere, type Section } from './sections.ts';

/** The front is there already: the maker counts along it, from the first stitch of side 1. */
export function frontSection(plan: Plan): Section {
  const { edge, choices } = plan;
  const starts: number[] = [];
  const parts: { side: number; corner: number; count: number }[] = [];
  let at = 0;
  edge.sides.forEach((count, side) => {
    for (const part of [
      { side, corner: -1, count },
      { side, corner: side, count: edge.corners[side]?.size ?? 0 },
    ]) {
      if (part.count === 0) continue;
      starts.push(at);
      parts.push(part);
      at += part.count;
    }
  });
  return {
    length: edge.total,
    stage: 'front',
    edging: 0,
    stretches: parts.map(({ side, corner }, i) => ({ offset: starts[i] as number, side, corner })),
    find: (node) => (isWhole(node, 0, edge.total - 1) ? node : -1),
    at: (node) => {
      const which = lastNotAbove(starts, node);
      const { side, corner, count } = parts[which] as (typeof parts)[number];
      const place = node - (starts[which] as number);
      const counted =
        corner < 0 ? markerAhead(place, count, choices.markerEvery, edge.corners.length > 0) : {};
      return bareStep('front', corner < 0 ? 'count-stitch' : 'count-corner', {
        side,
        corner,
        place,
        of: count,
        node,
        target: { on: 'front', edging: 0, node, loop: 'none' },
        yarn: 'front',
        loopsBefore: 0,
        loopsAfter: 0,
        done: node + 1,
        ofRound: edge.total,
        ...counted,
      });
    },
  };
}

/** A round being walked: the foundation, or an edging and the round it is worked on. */
type Walked = {
  plan: Plan;
  seen: RoundsSeen;
  name: 'foundation' | 'edging';
  edging: number;
  view: RoundView;
  below: RoundView;
};

/** Everything of the foundation: its beginning, its stitches, its closing. */
export const foundationSections = (plan: Plan, seen: RoundsSeen): Section[] =>
  sectionsOf({ plan, seen, name: 'foundation', edging: 0, view: seen.foundation, below: seen.foundation });

export const edgingSections = (plan: Plan, seen: RoundsSeen, edging: number): Section[] =>
  sectionsOf({
    plan,
    seen,
    name: 'edging',
    edging,
    view: seen.edgings[edging] as RoundView,
    below: roundBelow(seen, edging),
  });

const sectionsOf = (round: Walked): Section[] => [
  beginning(round),
  stitches(round),
  ...closingSections(round),
];

/** The round an edging is worked on. */
const roundBelow = (seen: RoundsSeen, edging: number): RoundView =>
  edging === 0 ? seen.foundation : (seen.edgings[edging - 1] as RoundView);

/** The attach place: a stitch of the round below, through its back loop. */
const attachTarget = (seen: RoundsSeen, edging: number, loop: StepTarget['loop']): StepTarget => ({
  on: edging === 0 ? 'foundation' : 'edging',
  edging: Math.max(0, edging - 1),
  node: attachedOn(roundBelow(seen, edging)),
  loop,
});

function beginning({ plan, seen, name, edging, view }: Walked): Section {
  const ofRound = view.length;
  const counts = plan.choices.foundationStart.counts;
  if (name === 'foundation')
    return actsSection('foundation', 0, [
      bareStep('foundation', 'slip-knot', { yarn: 'foundation', loopsBefore: 0, ofRound }),
      bareStep('foundation', 'start-chains', {
        yarn: 'foundation',
        side: 0,
        ofRound,
        done: counts,
        node: counts === 1 ? 0 : -1,
      }),
    ]);
  const target = attachTarget(seen, edging, 'back-loop');
  return actsSection('edging', edging, [
    bareStep('edging', 'right-side', { edging, loopsBefore: 0, loopsAfter: 0, ofRound }),
    bareStep('edging', 'attach', { edging, side: 0, yarn: 'edging', loopsBefore: 0, target, ofRound }),
    bareStep('edging', 'attach-chain', { edging, side: 0, yarn: 'edging', ofRound }),
  ]);
}

function stitches(round: Walked): Section {
  const { plan, seen, name, edging, view } = round;
  // Starting chains that count as the first stitch have their step already.
  const first = name === 'foundation' && plan.choices.foundationStart.counts === 1 ? 1 : 0;
  return {
    length: view.worked - first,
    stage: name,
    edging,
    stretches: legStretches(view, first),
    find: (node) => (isWhole(node, first, view.worked - 1) ? node - first : -1),
    at: (offset) => {
      const node = offset + first;
      const step = stitchStep(round, node);
      return { ...step, ...actAt(seen, name, edging, node) };
    },
  };
}

const actAt = (seen: RoundsSeen, name: string, edging: number, node: number): CarriedOut =>
  seen.marks.get(`${name} ${edging} ${node}`) ?? {};

function legStretches(view: RoundView, first: number): Section['stretches'] {
  const legs = [{ offset: 0, side: 0, corner: -1 }];
  view.turns.forEach((turn, corner) => {
    const after = turn + (view.sizes[corner] as number);
    if ((view.sizes[corner] as number) > 0) legs.push({ offset: turn - first, side: -1, corner });
    const next = view.turns[corner + 1] ?? view.worked;
    if (next > after)
      legs.push({ offset: after - first, side: (corner + 1) % view.turns.length, corner: -1 });
  });
  const seenOffsets = new Set<number>();
  return legs
    .reverse()
    .filter(({ offset }) => offset >= 0 && !seenOffsets.has(offset) && seenOffsets.add(offset))
    .reverse();
}

const kindOfStep = (name: 'foundation' | 'edging', code: number): StepKind => {
  if (code === NodeKind.cornerChain) return 'corner-chain';
  if (code === NodeKind.cornerStitch) return 'corner-stitch';
  return name === 'foundation' ? 'foundation-treble' : 'double-crochet';
};

function stitchStep(round: Walked, node: number): Step {
  const { plan, view, name, edging } = round;
  const { side, corner, place, of } = locate(view, node);
  const kind = kindOfStep(name, view.kindAt(node));
  const endsInCorner = node < (view.turns.at(-1) ?? 0);
  const ahead = corner < 0 ? markerAhead(place, of, plan.choices.markerEvery, endsInCorner) : {};
  return bareStep(name, kind, {
    edging,
    side,
    corner,
    place,
    of,
    node,
    target: targetOf(round, kind, view.intoAt(node)),
    yarn: name,
    done: node + 1,
    ofRound: view.length,
    ...ahead,
  });
}

function targetOf({ name, edging, below }: Walked, kind: StepKind, node: number): StepTarget {
  if (kind === 'corner-chain') return nowhere;
  if (name === 'foundation')
    return { on: 'foundation', edging: 0, node, loop: node < 0 ? 'first-chain' : 'base-chain' };
  const on = edging === 0 ? 'foundation' : 'edging';
  const intoCorner = below.kindAt(node) === NodeKind.cornerChain;
  return { on, edging: Math.max(0, edging - 1), node, loop: intoCorner ? 'corner-chain' : 'back-loop' };
}

/** What ends a round: the ring's check and two closings, or the edging's closing over the attach place. */
function closingSections({ seen, name, edging, view }: Walked): Section[] {
  const stage: Stage = name === 'foundation' ? 'foundation-closing' : 'edging-closing';
  const adds = view.length - view.worked;
  const common = { edging, ofRound: view.length, done: view.worked, side: 0 };
  // A stitch of the closing's own covers the attach place; without one the closing lies over the round's first stitch.
  const target: StepTarget =
    name === 'edging' && adds === 1
      ? attachTarget(seen, edging, 'both-loops')
      : { on: name, edging, node: 0, loop: 'both-loops' };
  const closing = {
    ...common,
    yarn: name,
    loopsBefore: 0,
    loopsAfter: 0,
    done: view.length,
    node: adds === 1 ? view.length - 1 : -1,
    target,
    ...actAt(seen, name, edging, view.worked),
  };
  const cut = { ...common, yarn: name, loopsAfter: 0 };
  const after = { ...common, done: view.length, loopsBefore: 0, loopsAfter: 0, yarn: name };
  if (name === 'edging')
    return [
      actsSection(stage, edging, [
        bareStep(stage, 'fasten-off', cut),
        bareStep(stage, 'close-round', closing),
        bareStep(stage, 'weave-ends', after),
      ]),
    ];
  return [
    actsSection(stage, 0, [
      bareStep(stage, 'fasten-off', cut),
      bareStep(stage, 'tape-ends', { ...cut, loopsBefore: 0 }),
      bareStep(stage, 'check-twist', { ...cut, loopsBefore: 0, asks: 'twist' }),
      bareStep(stage, 'close-tops', closing),
      bareStep(stage, 'close-base', after),
      bareStep(stage, 'weave-ends', after),
    ]),
  ];
}

/** Sewing the strip to the cloth; a round panel has quarters in place of corners. */
export function clothSection(plan: Plan): Section {
  const kinds: StepKind[] = [
    'lay-strip',
    'cloth-centres',
    'cloth-corners',
    'cloth-pins',
    'sew-out',
    'sew-back',
    'sew-fast',
    'pins-out',
    'turn-strip',
  ];
  const ofRound = plan.foundation.total;
  return actsSection(
    'cloth',
    0,
    kinds.map((kind) => bareStep('cloth', kind, { yarn: 'thread', loopsBefore: 0, loopsAfter: 0, ofRound })),
  );
}
