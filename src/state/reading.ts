/** Reading a typed number, and saying what is in the way of it. */
import { limits } from '../../core/index.ts';
import type { AppProblem } from './problem.ts';
import type { Field, Project } from './snapshot.ts';
import { readWhole } from './whole-number.ts';

export type Reader = { project: Project; problems: AppProblem[] };

export type Bounds = { low?: number; high?: number };

/** A typed number, or undefined where the field was never touched. `like` is the number shown as an example. */
export function typed(
  { project, problems }: Reader,
  field: Field,
  like: number,
  { low = 0, high = limits.stitches }: Bounds = {},
): number | undefined {
  const text = project.texts[field];
  if (text === undefined) return undefined;
  const problem = problemIn(text, field, like, { low, high });
  if (problem) problems.push(problem);
  return problem ? undefined : wholeOf(text);
}

const wholeOf = (text: string): number | undefined => {
  const read = readWhole(text);
  return read.ok ? read.value : undefined;
};

function problemIn(
  text: string,
  at: Field,
  like: number,
  { low, high }: Required<Bounds>,
): AppProblem | null {
  const read = readWhole(text);
  if (!read.ok)
    return read.code === 'empty'
      ? { at, code: 'empty', params: {} }
      : { at, code: read.code, params: { like } };
  // A number whose way is chosen beside the field is typed without a sign.
  if (low === -high)
    return Math.abs(read.value) > high ? { at, code: 'too-high', params: { max: high } } : null;
  if (read.value < low) return { at, code: 'too-low', params: { min: low } };
  return read.value > high ? { at, code: 'too-high', params: { max: high } } : null;
}

/** Like `typed`, but emptied fields count as untouched: these have a number of the plan's to fall back on. */
export function typedOver(reader: Reader, field: Field, like: number, bounds?: Bounds): number | undefined {
  const text = reader.project.texts[field];
  return text === undefined || text.trim() === '' ? undefined : typed(reader, field, like, bounds);
}
