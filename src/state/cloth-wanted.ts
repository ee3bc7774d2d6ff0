/** From a wanted size to counts, with what the pattern needs. */
import { type ClothResult, countsFor, type SideCandidates } from '../../core/index.ts';
import { pitchOf } from './cloth.ts';
import { clothFields as f } from './cloth-fields.ts';
import type { Measures } from './cloth-types.ts';
import type { Making } from './snapshot.ts';

/** Null until size and pitch are there. A round is as long as its circle, other sides are all alike. */
export function wantedCounts(
  measures: Measures,
  { plan }: Pick<Making, 'plan'>,
): ClothResult<SideCandidates[]> | null {
  const width = measures.value(f.wantedWidth);
  const height = measures.value(f.wantedHeight) ?? width;
  const pitch = pitchOf(measures, 'front');
  if (width === undefined || height === undefined || pitch === undefined) return null;
  const k = plan.edge.sides.length;
  const isRound = plan.edge.corners.length === 0;
  const sides = isRound ? [Math.PI * width] : k === 4 ? [width, height, width, height] : Array(k).fill(width);
  const parity = measures.chosen<'any' | 'odd' | 'even'>(f.parity, 'any');
  const of = measures.value(f.multiple);
  const arms = plan.edgings.reduce(
    (sum, { arm, increase }) => sum + (isRound ? increase : arm[0] + arm[1]),
    0,
  );
  return countsFor({
    sides,
    pitch,
    arms,
    equalOpposite: k % 2 === 0,
    ...(of === undefined ? {} : { multiple: { of, plus: measures.value(f.plus) ?? 0 } }),
    ...(parity === 'any' ? {} : { parity }),
  });
}
