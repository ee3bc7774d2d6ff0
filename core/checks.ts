/** Checking numbers against the limits of the trade; what is wrong is gathered, nothing throws. */
import { limits } from './limits.ts';
import type { Problem } from './problems.ts';
import type { Corner } from './types.ts';

export type Bounds = { min: number; max: number; like: number };

/** What is wrong with a whole number; null where nothing is. `like`: the number told as an example. */
function numberProblem(value: number, at: string, { min, max, like }: Bounds): Problem | null {
  if (Number.isNaN(value)) return { at, code: 'not-a-number', params: { like } };
  if (!Number.isInteger(value) && Number.isFinite(value)) return { at, code: 'not-whole', params: { like } };
  if (value < min) return { at, code: 'too-low', params: { min } };
  return value > max ? { at, code: 'too-high', params: { max } } : null;
}

/** The same, added to the problems; whether the number can be used. */
export function checkNumber(value: number, at: string, bounds: Bounds, problems: Problem[]): boolean {
  const problem = numberProblem(value, at, bounds);
  if (problem) problems.push(problem);
  return !problem;
}

/** A corner for every side, from a list or from one corner for all of them; null where something is wrong. */
export function checkCorners(
  given: Corner | readonly Corner[],
  count: number,
  at: string,
  problems: Problem[],
): Corner[] | null {
  if (isOne(given)) {
    const corner = given;
    return checkCorner(corner, at, problems) ? Array.from({ length: count }, () => corner) : null;
  }
  if (given.length !== count) {
    problems.push({ at, code: 'corner-count', params: { corners: count } });
    return null;
  }
  const checked = given.map((one, i) => checkCorner(one, `${at}[${i}]`, problems));
  return checked.every((isGood) => isGood) ? [...given] : null;
}

export const checkCorner = ({ size }: Corner, at: string, problems: Problem[]): boolean =>
  checkNumber(size, `${at}.size`, { min: 0, max: limits.cornerSize, like: 2 }, problems);

const isOne = (given: Corner | readonly Corner[]): given is Corner => 'size' in given;
