/**
 * Stitches worked into a corner. A step does not say that it is one where the corner below is a stitch, so
 * it is read off its neighbours: an arm shares its target with what lies beyond the new corner.
 */
import type { Step } from '../../../core/index.ts';
import { neighbour, type Telling } from './telling.ts';

export type ArmEnd = 'before' | 'after';

type Around = Pick<Telling, 'step' | 'making'>;

export const isCornerStep = (step: Step | null): boolean =>
  step?.kind === 'corner-chain' || step?.kind === 'corner-stitch';

/** Which side of the new corner the step (or the one `by` away) is an arm of; null for other stitches. */
export function armOf(telling: Around, by = 0): ArmEnd | null {
  const step = by === 0 ? telling.step : neighbour(telling, by);
  if (step?.kind !== 'double-crochet') return null;
  const around = { step, making: telling.making };
  if (isArm(around, 1)) return 'before';
  return isArm(around, -1) ? 'after' : null;
}

/** The corner of the arm that `end` names, counted from 0, or null. */
export function cornerBelow(around: Around, end: ArmEnd): number | null {
  return cornerFrom(around, end === 'before' ? 1 : -1)?.[0]?.corner ?? null;
}

function isArm(around: Around, way: 1 | -1): boolean {
  const corner = cornerFrom(around, way);
  const { target } = around.step;
  if (corner === null) return false;
  if (target.loop === 'corner-chain') return true;
  const beyond = neighbour({ ...around, step: corner.at(-1) ?? around.step }, way);
  return [...corner, beyond].some(
    (step) => step !== null && step.target.node === target.node && step.target.on === target.on,
  );
}

/** Steps of the corner next to a run of stitches in one place; null where another stitch comes first. */
function cornerFrom(around: Around, way: 1 | -1): Step[] | null {
  const { node } = around.step.target;
  let by: number = way;
  while (neighbour(around, by)?.kind === 'double-crochet' && neighbour(around, by)?.target.node === node)
    by += way;
  const corner: Step[] = [];
  for (let next = neighbour(around, by); isCornerStep(next); next = neighbour(around, by)) {
    corner.push(next as Step);
    by += way;
  }
  return corner.length > 0 ? corner : null;
}
