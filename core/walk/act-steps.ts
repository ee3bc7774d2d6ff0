/** The step of the making at which an act shows. */
import { type Act, entryOf } from '../hand/acts/acts.ts';
import type { Pairing, Plan, Round, StepKind, Steps, Worked } from '../types.ts';

/** A making with the acts that it was worked with. */
export type Walked = { plan: Plan; worked: Worked; steps: Steps; pairing: Pick<Pairing, 'runs'> };

/** Index into the steps for the act at `index` of the list worked with; -1 where it leaves no trace in the walk. */
export function stepOfAct(walked: Walked, acts: readonly Act[], index: number): number {
  const act = acts[index];
  if (!act) return -1;
  const { at } = entryOf(act.kind).shows;
  switch (at) {
    case 'mark':
      return stepOfMark(walked, index);
    case 'second-side':
      return (
        walked.steps.stretches.find(({ stage, side }) => stage === 'foundation' && side === 1)?.from ?? -1
      );
    case 'pair':
      return stepOfPair(walked, index);
    case 'corner-passed':
      return stepOfPassing(walked, act.corner ?? 0);
    default:
      return stepOfKind(walked, at, act.edging);
  }
}

function stepOfMark(walked: Walked, index: number): number {
  const { foundation, edgings } = walked.worked;
  for (const round of [foundation, ...edgings]) {
    const mark = round.marks.find((one) => one.mishap === index);
    if (mark) return stepOfNode(walked, round, mark.node);
  }
  return -1;
}

/** The step of the pair that takes two of a piece with one of the other. */
function stepOfPair({ steps, pairing, plan }: Walked, index: number): number {
  const { runs } = pairing;
  const run = runs.findIndex(({ together }) => together?.act === index);
  const pair = runs[run - 1];
  return pair ? steps.stepOf('join', (pair.front + pair.count - 1) % plan.edge.total) : -1;
}

/** The step that makes a node; behind the last node it is the closing that was done otherwise. */
function stepOfNode(walked: Walked, { name, edging }: Round, node: number): number {
  if (name === 'front') return -1;
  const at = walked.steps.stepOf(name, node, edging);
  return at >= 0 ? at : stepOfKind(walked, name === 'foundation' ? 'close-tops' : 'close-round', edging);
}

/** Steps looked at from the beginning of each stretch: single acts stand at its beginning or right behind it. */
const lookAhead = 8;

/** The first step of a kind, for kinds that are no stitch; -1 where there is none. */
export function stepOfKind({ steps }: Pick<Walked, 'steps'>, kind: StepKind, edging = 0): number {
  for (const { from } of steps.stretches)
    for (let at = from; at < from + lookAhead && at < steps.length; at++) {
      const step = steps.at(at);
      if (step.kind === kind && step.edging === edging) return at;
    }
  return -1;
}

/** Where the join goes past a place of the back's corner: the last pair joined before it. */
function stepOfPassing({ steps, worked, pairing, plan }: Walked, corner: number): number {
  const back = worked.edgings.at(-1) ?? worked.foundation;
  const from = back.turns[corner] ?? 0;
  const to = from + (plan.edgings.at(-1)?.corners[corner]?.size ?? 1);
  const { runs } = pairing;
  const passed = runs.findIndex(({ kind, back: node }) => kind === 'back-alone' && node >= from && node < to);
  const before = runs.slice(0, Math.max(0, passed)).findLast(({ kind }) => kind === 'joined');
  if (before) return steps.stepOf('join', (before.front + before.count - 1) % plan.edge.total);
  return steps.stretches.find(({ stage }) => stage === 'join')?.from ?? -1;
}
