/** All but a list that there was not yet when the work was kept: nothing is in it. */
function without<T extends object>(value: T, list: keyof T & string): Partial<T> {
  const { [list]: since, ...rest } = value;
  expect(since).toEqual([]);
  return rest as Partial<T>;
}

import { isDeepStrictEqual } from 'node:util';
/** What this program makes of a text that is found on the device, in counts and codes. */
import { expect } from 'vitest';
import { countRound, type Round, type Shape } from '../../core/index.ts';
import { readKept } from '../../src/keep/storage.ts';
import { openStore } from '../../src/state/store.ts';

export type Gives = Record<string, unknown>;

const shapeOf = ({ sides, corners }: Shape) => ({ sides, corners: corners.map(({ size }) => size) });

function countsOf(round: Round) {
  const { sides, corners } = countRound(round);
  return { sides, corners };
}

const asKept = (read: unknown, kept: unknown): unknown => (isDeepStrictEqual(read, kept) ? 'as kept' : read);

export function madeOf(kept: unknown): Gives {
  const text = typeof kept === 'string' ? kept : JSON.stringify(kept);
  const texts = new Map([['ringtrue.work', text]]);
  const start = readKept({
    getItem: (key) => texts.get(key) ?? null,
    setItem: (key, value) => void texts.set(key, value),
  });
  if (start === null) return { setAside: texts.get('ringtrue.set-aside') === text };
  const given = kept as { project?: unknown; settings?: unknown };
  const store = openStore(start);
  const { making, place, stage, answered, problems } = store.snapshot();
  store.stop();
  const { plan, worked } = making;
  return {
    project: asKept(without(start.project, 'adjustments'), given.project),
    settings: asKept(start.settings, given.settings),
    tab: start.tab,
    place,
    stage,
    answered,
    problems: problems.map(({ at, code }) => ({ at, code })),
    front: shapeOf(plan.edge),
    foundation: { ...shapeOf(plan.foundation), lead: plan.foundation.lead, tail: plan.foundation.tail },
    edgings: plan.edgings.map(shapeOf),
    choices: plan.choices,
    worked: {
      foundation: countsOf(worked.foundation),
      edgings: worked.edgings.map(countsOf),
      join: without(worked.join, 'together'),
    },
    mishaps: making.acts,
    seen: making.seen,
    verdict: making.pairing.verdict,
    gaps: making.pairing.gaps.length,
    steps: making.steps.length,
  };
}
