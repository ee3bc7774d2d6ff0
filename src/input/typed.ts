/** Reading the number in a field, by the table of fields, and saying what is in the way of it. */
import { rowOf } from '../state/fields.ts';
import type { AppProblem } from '../state/problem.ts';
import type { Field, Project } from '../state/snapshot.ts';
import { type ReadNumber, readWhole } from './whole-number.ts';

/** A number, a problem, or nothing: never touched, or emptied where there is a number to fall back on. */
export type ReadField = { value?: number; problem?: AppProblem };

/** `most`: in place of the table's, where the bound is for others to say. */
export function readField(project: Project, field: Field, most?: number): ReadField {
  const row = rowOf(field);
  const text = project.texts[field];
  if (!row || text === undefined) return {};
  const read = readWhole(text);
  const bounds = row.bounds(project);
  if (!read.ok)
    return read.code === 'empty' && !row.isNeeded ? {} : { problem: unreadable(read, field, bounds.like) };
  const problem = outOfBounds(read.value, field, { ...bounds, most: most ?? bounds.most });
  return problem ? { problem } : { value: read.value };
}

/** The number in a field, or null where there is none to be read. */
export const numberIn = (project: Project, field: Field): number | null =>
  readField(project, field).value ?? null;

function outOfBounds(
  value: number,
  at: Field,
  { least, most }: { least: number; most: number },
): AppProblem | null {
  // A number whose way is chosen beside the field is typed without a sign.
  if (least === -most) return Math.abs(value) > most ? { at, code: 'too-high', params: { max: most } } : null;
  if (value < least) return { at, code: 'too-low', params: { min: least } };
  return value > most ? { at, code: 'too-high', params: { max: most } } : null;
}

/** What is wrong with a text that is no whole number. */
export function unreadable(read: Extract<ReadNumber, { ok: false }>, at: Field, like: number): AppProblem {
  if (read.code === 'empty') return { at, code: 'empty', params: {} };
  if (read.code === 'grouped') return { at, code: 'grouped', params: { like: Number(read.digits) } };
  return { at, code: read.code, params: { like } };
}

/** Reads one field after the other, and gathers what is wrong. */
export type Reader = { project: Project; problems: AppProblem[] };

export function numberFrom({ project, problems }: Reader, field: Field, most?: number): number | undefined {
  const { value, problem } = readField(project, field, most);
  if (problem) problems.push(problem);
  return value;
}
