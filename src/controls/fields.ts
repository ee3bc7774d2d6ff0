/** Fields by name: their place in the page, what they show, and what is wrong with them. */
import { limits } from '../../core/index.ts';
import { readWhole } from '../input/whole-number.ts';
import { rowOf } from '../state/fields.ts';
import type { Field, Snapshot } from '../state/snapshot.ts';
import { sayInApp } from '../words/problems-view.ts';

/** The id of a field's input; links of the problem list point at it. */
export const fieldId = (field: Field): string => `field-${field.replaceAll('.', '-')}`;

/** The message for a field, once the person has asked for a check. */
export function problemAt(snapshot: Snapshot, field: Field): string | undefined {
  const problem = snapshot.isChecked && snapshot.problems.find(({ at }) => at === field);
  return problem ? sayInApp(problem, snapshot) : undefined;
}

/** The text as typed, or the plan's own number where nothing was typed. */
export function textOf({ project }: Snapshot, field: Field, planned: number | string = ''): string {
  return project.texts[field] ?? `${planned}`;
}

/** How low and how high a field's number may go. */
export const boundsOf = (
  { project }: Pick<Snapshot, 'project'>,
  field: Field,
): { least: number; most: number } => {
  const { least, most } = rowOf(field)?.bounds(project) ?? { least: 0, most: limits.stitches };
  return { least, most };
};

/** One more or one fewer, kept within bounds; null from a text that cannot be read: it stays as it is. */
export function nudge(text: string, by: 1 | -1, least: number, most: number): string | null {
  const read = readWhole(text);
  if (!read.ok) return read.code === 'empty' ? `${least}` : null;
  return `${Math.min(most, Math.max(least, read.value + by))}`;
}

/** What the maker's own number for a front side is, worked back from the edge in use. */
export function countedNumbers({ making, project }: Snapshot): number[] {
  const { sides, corners } = making.edge;
  const k = sides.length;
  const sizeAt = (corner: number): number => corners[(corner + k) % k]?.size ?? 0;
  return sides.map((stitches, side) => {
    if (project.counted === 'stitches-only') return stitches;
    const after = stitches + sizeAt(side);
    return project.counted === 'one-corner' ? after : after + sizeAt(side - 1);
  });
}
