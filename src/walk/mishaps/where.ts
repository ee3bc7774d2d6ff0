/** The step of the making at which a mishap happens. */
import type { Mishap, MishapKind, Round, Step, StepKind } from '../../../core/index.ts';
import type { Making, Snapshot } from '../../state/snapshot.ts';

type Asks = NonNullable<Step['asks']>;

/** The questions of the making, in their order, and the step at which each is asked. */
const QUESTIONS: readonly { asks: Asks; kind: StepKind }[] = [
  { asks: 'twist', kind: 'check-twist' },
  { asks: 'pad', kind: 'pad-in' },
];

/** Questions not answered yet that stand between the place of the work and step `to`. */
export function questionsBefore(
  { making, place, answered }: Pick<Snapshot, 'making' | 'place' | 'answered'>,
  to: number,
): { asks: Asks; at: number }[] {
  return QUESTIONS.filter(({ asks }) => !answered.includes(asks))
    .map(({ asks, kind }) => ({ asks, at: stepOfKind(making, kind) }))
    .filter(({ at }) => at >= place && at < to);
}

type Walked = Pick<Making, 'steps' | 'worked' | 'mishaps' | 'pairing' | 'plan'>;

/** Acts that are no stitch of their own: they happen at a step of this kind. */
const AT_STEP: Partial<Record<MishapKind, StepKind>> = {
  'chains-as-stitches': 'count-corner',
  'chains-left-out': 'count-corner',
  'arms-forgotten': 'slip-knot',
  'join-offset': 'join-attach',
  'join-wrong-side': 'join-attach',
  'last-hole': 'look-for-holes',
  twisted: 'check-twist',
};

/** Index into the steps for the mishap at `index` of the making's list; -1 where it leaves no trace in the walk. */
export function stepWhere(making: Walked, index: number): number {
  const { steps, worked } = making;
  const mishap = making.mishaps[index];
  if (!mishap) return -1;
  const kind = AT_STEP[mishap.kind];
  if (kind) return stepOfKind(making, kind);
  if (mishap.kind === 'order-not-mirrored')
    return steps.stretches.find(({ stage, side }) => stage === 'foundation' && side === 1)?.from ?? -1;
  if (mishap.kind === 'join-chain-skipped') return stepOfSkip(making, mishap);
  for (const round of [worked.foundation, ...worked.edgings]) {
    const mark = round.marks.find((one) => one.mishap === index);
    if (mark) return stepAtNode(making, round, mark.node);
  }
  return -1;
}

/** The step that makes a node; behind the last node it is the closing that was done otherwise. */
function stepAtNode(making: Walked, round: Round, node: number): number {
  if (round.name === 'front') return -1;
  const at = making.steps.stepOf(round.name, node, round.edging);
  if (at >= 0) return at;
  return stepOfKind(making, round.name === 'foundation' ? 'close-tops' : 'close-round', round.edging);
}

/** Steps looked at from the beginning of each stretch: acts stand at its beginning or right behind it. */
const LOOK_AHEAD = 8;

function stepOfKind({ steps }: Walked, kind: StepKind, edging = 0): number {
  for (const { from } of steps.stretches)
    for (let at = from; at < from + LOOK_AHEAD && at < steps.length; at++) {
      const step: Step = steps.at(at);
      if (step.kind === kind && step.edging === edging) return at;
    }
  return -1;
}

/** Where the join goes past a place of the back's corner: the last pair joined before it. */
function stepOfSkip({ steps, worked, pairing, plan }: Walked, { corner = 0 }: Mishap): number {
  const back = worked.edgings.at(-1) ?? worked.foundation;
  const from = back.turns[corner] ?? 0;
  const to = from + (plan.edgings.at(-1)?.corners[corner]?.size ?? 1);
  const { runs } = pairing;
  const passed = runs.findIndex(({ kind, back: node }) => kind === 'back-alone' && node >= from && node < to);
  const before = runs.slice(0, Math.max(0, passed)).findLast(({ kind }) => kind === 'joined');
  if (before) return steps.stepOf('join', (before.front + before.count - 1) % plan.edge.total);
  return steps.stretches.find(({ stage }) => stage === 'join')?.from ?? -1;
}
