/** Taking what was seen without trust: a number that is none, or a list too long, was not counted. */
import { fieldsOf, listOf, own } from './checks.ts';
import { limits } from './limits.ts';
import type { Seen } from './types.ts';
import { isWhole } from './whole.ts';

const most = 2 * limits.sides * limits.stitches;

type Round = NonNullable<Seen['foundation']>;

/** A copy of a `Seen` that holds plain numbers and nulls only. Anything else gives one in which nothing was seen. */
export function readSeen(value: unknown): Seen {
  const fields = fieldsOf(value) ?? {};
  const foundation = readRound(own(fields, 'foundation'));
  const edgings = listOf(own(fields, 'edgings'), limits.edgings);
  const front = readRound(own(fields, 'front'));
  const join = readJoin(own(fields, 'join'));
  return {
    ...(foundation ? { foundation } : {}),
    ...(edgings ? { edgings: edgings.map((one) => readRound(one) ?? { sides: [] }) } : {}),
    ...(front ? { front: { sides: front.sides } } : {}),
    ...(join ? { join } : {}),
  };
}

function readCounts(value: unknown, least: number): (number | null)[] | null {
  const list = listOf(value, limits.sides);
  return list?.map((one) => (isWhole(one, least, most) ? one + 0 : null)) ?? null;
}

function readRound(value: unknown): Round | null {
  const fields = fieldsOf(value) ?? {};
  const sides = readCounts(own(fields, 'sides'), 0);
  const corners = readCounts(own(fields, 'corners'), 0);
  const total = own(fields, 'total');
  return sides && { sides, ...(corners ? { corners } : {}), ...(isWhole(total, 0, most) ? { total } : {}) };
}

function readJoin(value: unknown): Seen['join'] | null {
  const fields = fieldsOf(value);
  if (!fields) return null;
  const drift = readCounts(own(fields, 'drift'), -most);
  const leftOver = own(fields, 'leftOver');
  return {
    ...(drift ? { drift } : {}),
    ...(isWhole(leftOver, -most, most) ? { leftOver: leftOver + 0 } : {}),
  };
}
