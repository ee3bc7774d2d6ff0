/** Reading a typed number, and saying what is in the way of it. */
import { limits, type Problem } from '../../core/index.ts';
import type { Field, Project } from './snapshot.ts';
import { readWhole } from './whole-number.ts';

export type Reader = { project: Project; problems: Problem[] };

/** A typed number with its label, or undefined where the field was never touched. */
export function typed(
  reader: Reader,
  field: Field,
  label: string,
  like: number,
  low = 0,
  high: number = limits.stitches,
): number | undefined {
  const text = reader.project.texts[field];
  if (text === undefined) return undefined;
  const read = readWhole(text);
  const say = (code: string, says: string): undefined => {
    reader.problems.push({ at: field, code, says });
    return undefined;
  };
  const lower = label.charAt(0).toLowerCase() + label.slice(1);
  if (!read.ok) {
    if (read.code === 'empty') return say('empty', `Enter ${lower}`);
    if (read.code === 'not-whole') return say('not-whole', `${label} must be a whole number, like ${like}`);
    if (read.code === 'several') return say('several', `${label} must be one number, like ${like}`);
    return say('not-a-number', `${label} must be a number, like ${like}`);
  }
  if (read.value < low) return say('too-low', `${label} must be ${low} or more`);
  if (read.value > high) return say('too-high', `${label} must be ${high.toLocaleString('en-GB')} or fewer`);
  return read.value;
}

/** Like `typed`, but emptied fields count as untouched: these have a number of the plan's to fall back on. */
export function typedOver(
  reader: Reader,
  field: Field,
  label: string,
  like: number,
  high?: number,
  low: number = 0,
): number | undefined {
  const text = reader.project.texts[field];
  return text === undefined || text.trim() === '' ? undefined : typed(reader, field, label, like, low, high);
}
