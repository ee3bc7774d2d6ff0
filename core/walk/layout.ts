/**
 * Rounds seen node by node without being built: where a node lies, what it is, what it is worked into.
 *
 * Two sources give the same view: a plan (by algebra, nothing is made) and a worked round (read off its graph).
 * A property test holds them equal, so that `steps` can open a million stitches at once.
 */

import { attachPlace, cornersBelow, placesBetween } from '../hand/attach.ts';
import { cornerSize } from '../hand/graph.ts';
import { ease } from '../join/ease.ts';
import { type Arm, type NodeCode, NodeKind, type Plan, type Round, type Step } from '../types.ts';
import { lastNotAbove } from '../whole.ts';

export type NodeLocation = {
  /** Side the node belongs to; -1 in a corner. */
  side: number;
  /** Corner the node belongs to; -1 on a side. */
  corner: number;
  /** Place within the leg (the run since the last corner or the start) or the corner. */
  place: number;
  /** Positions worked on this leg (the closing's own not among them), or in this corner. */
  of: number;
};

export type RoundView = {
  length: number;
  turns: readonly number[];
  sizes: readonly number[];
  /** Nodes that the hook makes; a closing's own stitch comes after them. */
  worked: number;
  kindAt(node: number): NodeCode;
  intoAt(node: number): number;
};

/** Every round of the back, seen, and where a hand does otherwise: `round edging node` → what it carries out. */
export type RoundsSeen = { foundation: RoundView; edgings: RoundView[]; marks: Map<string, CarriedOut> };

/** What a step carries out, by whether it happened or is asked for. */
export type CarriedOut = Pick<Step, 'mishap' | 'adjustments'>;

export const carriedOut = (act: number, asked: true | undefined, before: CarriedOut = {}): CarriedOut =>
  asked ? { ...before, adjustments: [...(before.adjustments ?? []), act] } : { ...before, mishap: act };

export function locate(view: RoundView, node: number): NodeLocation {
  const { turns, sizes } = view;
  const corner = lastNotAbove(turns, node);
  const after = corner >= 0 ? (turns[corner] as number) + (sizes[corner] as number) : 0;
  if (node < after)
    return { side: -1, corner, place: node - (turns[corner] as number), of: sizes[corner] as number };
  const next = turns[corner + 1] ?? view.worked;
  const side = turns.length > 0 ? (corner + 1) % turns.length : 0;
  return { side, corner: -1, place: node - after, of: next - after };
}

export function viewOfRound(round: Round): RoundView {
  const closes = round.length > 0 && round.kinds[round.length - 1] === NodeKind.closing ? 1 : 0;
  return {
    length: round.length,
    turns: round.turns,
    sizes: round.turns.map((_, corner) => cornerSize(round, corner)),
    worked: round.length - closes,
    kindAt: (node) => (round.kinds[node] ?? NodeKind.stitch) as NodeCode,
    intoAt: (node) => round.into[node] ?? -1,
  };
}

/** Turn nodes of a round from its first leg, its other sides and its corner sizes. */
function turnsOf(firstLeg: number, sides: readonly number[], sizes: readonly number[]): number[] {
  const turns: number[] = [];
  let at = firstLeg;
  sizes.forEach((size, corner) => {
    turns.push(at);
    at += size + (sides[corner + 1] ?? 0);
  });
  return turns;
}

const cornerCode = (made: string | undefined): NodeCode =>
  made === 'stitch' ? NodeKind.cornerStitch : NodeKind.cornerChain;

export function viewOfFoundation(plan: Plan): RoundView {
  const { foundation, choices } = plan;
  const counts = choices.foundationStart.counts;
  const sizes = foundation.corners.map((corner) => corner.size);
  const turns = turnsOf(counts + foundation.lead, foundation.sides, sizes);
  const length = foundation.total;
  const worked = length - choices.foundationClosing.adds;
  const trebleBefore = (node: number): number => {
    const corner = lastNotAbove(turns, node - 1);
    const before =
      corner >= 0 && node <= (turns[corner] as number) + (sizes[corner] as number)
        ? (turns[corner] as number) - 1
        : node - 1;
    return before < counts ? -1 : before;
  };
  const kindAt = (node: number): NodeCode => {
    if (node >= worked) return NodeKind.closing;
    if (node < counts) return NodeKind.start;
    const corner = lastNotAbove(turns, node);
    const inside = corner >= 0 && node < (turns[corner] as number) + (sizes[corner] as number);
    return inside ? cornerCode(foundation.corners[corner]?.made) : NodeKind.stitch;
  };
  const intoAt = (node: number): number => {
    const kind = kindAt(node);
    if (kind === NodeKind.closing) return 0;
    if (kind === NodeKind.start || kind === NodeKind.cornerChain) return -1;
    if (kind === NodeKind.stitch) return trebleBefore(node);
    const turn = turns[lastNotAbove(turns, node)] as number;
    return turn - 1 < counts ? -1 : turn - 1;
  };
  return { length, turns, sizes, worked, kindAt, intoAt };
}

/** Where the yarn of the next round is attached on this one; in its last corner if side 0 has no stitch. */
export function attachedOn(view: RoundView): number {
  const place = attachPlace(view, cornersBelow(view));
  return place < 0 ? view.length - 1 : place;
}

export function viewOfEdging(plan: Plan, edging: number, below: RoundView): RoundView {
  const asked = plan.edgings[edging] as Plan['edgings'][number];
  const adds = plan.choices.edgingClosing.adds;
  const corners = cornersBelow(below);
  const attach = attachPlace(below, corners);
  const attached = adds === 0 ? 1 : 0;
  const { from } = placesBetween(below, corners);
  const length = asked.total;
  const worked = length - adds;
  const sizes = asked.corners.map((corner) => corner.size);
  if (sizes.length === 0)
    return viewOfPlainEdging(below, asked.increase, { length, worked, attached, attach });
  const firstLeg = attached + (below.turns[0] as number) - from + asked.arm[0];
  const turns = turnsOf(firstLeg, asked.sides, sizes);
  const leg = legReader({ turns, sizes, worked, below, arm: asked.arm, from, attached, attach });
  return {
    length,
    turns,
    sizes,
    worked,
    kindAt: (node) => {
      if (node >= worked) return NodeKind.closing;
      const corner = lastNotAbove(turns, node);
      const inside = corner >= 0 && node < (turns[corner] as number) + (sizes[corner] as number);
      return inside ? cornerCode(asked.corners[corner]?.made) : leg(node).kind;
    },
    intoAt: (node) => {
      if (node >= worked) return attach;
      const corner = lastNotAbove(turns, node);
      const inside = corner >= 0 && node < (turns[corner] as number) + (sizes[corner] as number);
      if (!inside) return leg(node).into;
      return asked.corners[corner]?.made === 'stitch' ? cornerTargets(below, corner)[0] : -1;
    },
  };
}

/** First and last place of a corner of the round below; of a corner without positions, the stitch before it. */
function cornerTargets(below: RoundView, corner: number): [number, number] {
  const turn = below.turns[corner] as number;
  const size = below.sizes[corner] as number;
  const space = turn > 0 ? turn - 1 : below.length - 1;
  return size > 0 ? [turn, turn + size - 1] : [space, space];
}

type EdgingShape = {
  turns: number[];
  sizes: number[];
  worked: number;
  below: RoundView;
  arm: Arm;
  from: number;
  attached: number;
  attach: number;
};

/** A leg of a cornered edging: arm after the last corner, ordinary stitches, arm before the next. */
function legReader(shape: EdgingShape): (node: number) => { kind: NodeCode; into: number } {
  const { turns, sizes, below, arm, from, attached, attach } = shape;
  return (node) => {
    const corner = lastNotAbove(turns, node);
    const start = corner >= 0 ? (turns[corner] as number) + (sizes[corner] as number) : 0;
    const place = node - start;
    if (corner < 0 && place < attached) return { kind: NodeKind.stitch, into: attach };
    if (corner >= 0 && place < arm[1]) return { kind: NodeKind.arm, into: cornerTargets(below, corner)[1] };
    const next = turns[corner + 1];
    if (next !== undefined && node >= next - arm[0])
      return { kind: NodeKind.arm, into: cornerTargets(below, corner + 1)[0] };
    const target =
      corner >= 0
        ? (below.turns[corner] as number) + (below.sizes[corner] as number) + place - arm[1]
        : from + place - attached;
    return { kind: NodeKind.stitch, into: target };
  };
}

/** A round panel's edging: every stitch into the next, the increases spread. */
function viewOfPlainEdging(
  below: RoundView,
  increase: number,
  of: { length: number; worked: number; attached: number; attach: number },
): RoundView {
  const doubled = ease(below.length - 1, increase).map((place) => place + 1);
  const seconds = doubled.map((target, q) => target + q);
  return {
    length: of.length,
    turns: [],
    sizes: [],
    worked: of.worked,
    kindAt: (node) => (node >= of.worked ? NodeKind.closing : NodeKind.stitch),
    intoAt: (node) => {
      if (node >= of.worked) return of.attach;
      const along = node - of.attached;
      return along < 0 ? of.attach : along + 1 - (lastNotAbove(seconds, along) + 1);
    },
  };
}
