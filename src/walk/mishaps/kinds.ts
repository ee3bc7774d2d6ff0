/** Which mishaps there are at which time, and which of them can happen on the panel as planned. */
import { type MishapKind, type MishapRound, mishapKinds, type Plan } from '../../../core/index.ts';
import type { WhyNot } from '../../words/wrong/mishaps.ts';

/** When a hand does otherwise: the round, and which edging from 0. */
export type When = { round: MishapRound; edging: number };

export const ROUNDS: readonly MishapRound[] = ['plan', 'foundation', 'edging', 'join'];

/** All kinds that can happen in a round, in core's order. A kind may stand in two rounds. */
export const kindsIn = (round: MishapRound): MishapKind[] =>
  (Object.keys(mishapKinds) as MishapKind[]).filter((kind) => mishapKinds[kind].rounds.includes(round));

/** Null where the mishap can happen; otherwise the reason why it cannot. */
export function whyNot(kind: MishapKind, { round, edging }: When, plan: Plan): WhyNot | null {
  const { choices, edge } = plan;
  const needsCorner = mishapKinds[kind].needs.includes('corner');
  if (needsCorner && edge.corners.length === 0) return 'no-corners';
  const closing = round === 'foundation' ? choices.foundationClosing : choices.edgingClosing;
  const arm = plan.edgings[edging]?.arm ?? [0, 0];
  switch (kind) {
    case 'start-counted':
      return round === 'foundation' && choices.foundationStart.counts === 1 ? 'start-counts' : null;
    case 'closing-forgotten':
    case 'closing-over-first':
      return closing.adds === 0 ? 'closing-adds-none' : null;
    case 'closing-beside-first':
      return closing.adds === 1 ? 'closing-adds-one' : null;
    case 'arm-missed':
      return arm[0] + arm[1] === 0 ? 'nothing-in-corners' : null;
    case 'chains-as-stitches':
    case 'chains-left-out':
      if (edge.corners.length === 0) return 'no-corners';
      return edge.corners.every(({ size }) => size === 0) ? 'corners-empty' : null;
    case 'arms-forgotten':
      return growth(plan) === 0 ? 'edging-adds-none' : null;
    case 'order-not-mirrored':
      if (edge.sides.length === 1) return 'one-side';
      return edge.sides.length === 2 ? 'one-order' : null;
    case 'join-wrong-side':
      return edge.sides.length === 1 ? 'one-side' : null;
    case 'join-chain-skipped':
      return edge.corners.every(({ size }) => size === 0) ? 'corners-empty' : null;
    default:
      return null;
  }
}

/** Stitches that the edging rounds add to a side in all. */
function growth(plan: Plan): number {
  const hasCorners = plan.edge.corners.length > 0;
  return plan.edgings.reduce((all, { arm, increase }) => all + (hasCorners ? arm[0] + arm[1] : increase), 0);
}
