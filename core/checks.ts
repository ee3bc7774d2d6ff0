/**
 * Reading what a person (or a file, or a link) gives, without trusting it.
 * All problems are gathered; nothing throws; only own properties are read.
 */
import { limits } from './limits.ts';
import type { Problem } from './problems.ts';
import type { Corner } from './types.ts';
import { isWhole } from './whole.ts';

type Fields = Readonly<Record<string, unknown>>;

/** The value as a record whose own properties may be read, or null. */
export function fieldsOf(value: unknown): Fields | null {
  return typeof value === 'object' && value !== null && !isList(value) ? (value as Fields) : null;
}

/** An array, or something that will not tell: a revoked proxy. */
function isList(value: object): boolean {
  try {
    return Array.isArray(value);
  } catch {
    return true;
  }
}

/** An own property, or undefined; never an inherited one, and nothing that would have to be run to be read. */
export function own(fields: Fields, key: string): unknown {
  try {
    return Object.getOwnPropertyDescriptor(fields, key)?.value;
  } catch {
    return undefined;
  }
}

/** A copy of an array of at most `most` entries, holes as undefined; null for anything else. */
export function listOf(value: unknown, most: number): unknown[] | null {
  try {
    if (!Array.isArray(value) || value.length > most) return null;
    const fields = value as unknown as Fields;
    return Array.from({ length: value.length }, (_, i) => own(fields, `${i}`));
  } catch {
    return null;
  }
}

/** What is wrong with a whole number; null where nothing is. */
export function numberProblem(
  value: unknown,
  at: string,
  { min, max, like }: { min: number; max: number; like: number },
): Problem | null {
  if (value === undefined || value === null) return { at, code: 'empty', params: {} };
  if (typeof value !== 'number' || Number.isNaN(value)) return { at, code: 'not-a-number', params: { like } };
  if (!Number.isInteger(value) && Number.isFinite(value)) return { at, code: 'not-whole', params: { like } };
  if (value < min) return { at, code: 'too-low', params: { min } };
  return value > max ? { at, code: 'too-high', params: { max } } : null;
}

/** Reads one corner; adds what is wrong with it. */
export function readCorner(value: unknown, at: string, problems: Problem[]): Corner | null {
  const fields = fieldsOf(value) ?? {};
  const made = own(fields, 'made');
  const size = own(fields, 'size');
  const isKnown = made === 'chain' || made === 'stitch';
  if (!isKnown) problems.push({ at: `${at}.made`, code: 'corner-made', params: {} });
  const problem = numberProblem(size, `${at}.size`, { min: 0, max: limits.cornerSize, like: 2 });
  if (problem) problems.push(problem);
  return isKnown && !problem ? { made, size: plainZero(size as number) } : null;
}

/** Minus zero is a zero, and nothing else is changed. */
export const plainZero = (value: number): number => value + 0;

/** Reads a list of corners, or one corner for all of them; null where something is wrong. */
export function readCorners(value: unknown, count: number, at: string, problems: Problem[]): Corner[] | null {
  const list = listOf(value, limits.sides);
  if (list === null && fieldsOf(value)) {
    const corner = readCorner(value, at, problems);
    return corner && Array.from({ length: count }, () => ({ ...corner }));
  }
  if (list?.length !== count) {
    problems.push({ at, code: 'corner-count', params: { corners: count } });
    return null;
  }
  const corners = list.map((one, i) => readCorner(one, `${at}[${i}]`, problems));
  return corners.every((one) => one !== null) ? (corners as Corner[]) : null;
}

/** Reads `{ [key]: 0 | 1 }`, with a default where nothing is given. */
export function readZeroOrOne(
  value: unknown,
  key: string,
  standard: 0 | 1,
  at: string,
  problems: Problem[],
): 0 | 1 {
  if (value === undefined) return standard;
  const fields = fieldsOf(value);
  const given = fields ? own(fields, key) : null;
  if (isWhole(given, 0, 1)) return plainZero(given) as 0 | 1;
  problems.push({ at: `${at}.${key}`, code: 'zero-or-one', params: {} });
  return standard;
}
