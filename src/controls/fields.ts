/** Fields by name: their place in the page, what they show, and what is wrong with them. */
import type { Field, Snapshot } from '../state/snapshot.ts';
import { sayInApp } from '../words/problems-view.ts';

/** The id of a field's input; links of the problem list point at it. */
export const fieldId = (field: Field): string => `field-${field.replaceAll('.', '-')}`;

/** The message for a field, once the person has asked for a check. */
export function problemAt(snapshot: Snapshot, field: Field): string | undefined {
  const problem = snapshot.told && snapshot.problems.find(({ at }) => at === field);
  return problem ? sayInApp(problem, snapshot) : undefined;
}

/** The text as typed, or the plan's own number where nothing was typed. */
export function textOf({ project }: Snapshot, field: Field, planned: number | string = ''): string {
  return project.texts[field] ?? `${planned}`;
}

/** The number a stepper starts from: the first run of digits, or null where there is none that can be counted. */
export function readDigits(text: string): number | null {
  const digits = /\d+/.exec(text.normalize('NFKC'))?.[0];
  const value = Number(digits);
  return digits !== undefined && Number.isSafeInteger(value) ? value : null;
}

/** One more or one fewer, kept within bounds; from an unreadable text it starts at the least. */
export function nudge(text: string, by: 1 | -1, least: number, most: number): string {
  const from = readDigits(text);
  const to = from === null ? least : from + by;
  return `${Math.min(most, Math.max(least, to))}`;
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
