/** A choice that takes the ground from another settles it: it falls back to the usual, and that is told. */
import { readWhole } from '../input/whole-number.ts';
import { fieldNames, rowOf } from './fields.ts';
import type { Field, Project } from './snapshot.ts';

/** The choice, and the side it was on. */
export type Settled = { field: Field; side: number };

const sideFields = [fieldNames.startSide, fieldNames.joinSide];

/** The project without choices of a side that the panel no longer has. */
export function settleSides(project: Project): { project: Project; settled: Settled[] } {
  const settled = sideFields.flatMap((field): Settled[] => {
    const read = readWhole(project.texts[field] ?? '');
    const isGone = read.ok && rowOf(field)?.isShown(project) && read.value > project.sideCount;
    return isGone ? [{ field, side: read.value }] : [];
  });
  if (settled.length === 0) return { project, settled };
  const texts = { ...project.texts };
  for (const { field } of settled) delete texts[field];
  return { project: { ...project, texts }, settled };
}
