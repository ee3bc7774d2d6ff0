/**
 * What was kept must go on meaning what it meant. `gives` was written down by the first program that kept work
 * (commit bd316f7) and is never made anew; where a defect was mended since, `since` says which and what it gives now.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { countRound, type Round, type Shape } from '../../core/index.ts';
import { readKept } from '../../src/keep/storage.ts';
import { openStore } from '../../src/state/store.ts';

const folder = new URL('../fixtures/kept/', import.meta.url);

type Gives = Record<string, unknown>;
type Fixture = { says: string; kept: unknown; gives: Gives; since?: { because: string; gives: Gives } };

const fixtures = readdirSync(folder).map((file): [name: string, fixture: Fixture] => [
  file.replace('.json', ''),
  JSON.parse(readFileSync(new URL(file, folder), 'utf8')),
]);

const shapeOf = ({ sides, corners }: Shape) => ({ sides, corners: corners.map(({ size }) => size) });

function countsOf(round: Round) {
  const { sides, corners } = countRound(round);
  return { sides, corners };
}

const asKept = (read: unknown, kept: unknown): unknown =>
  JSON.stringify(read) === JSON.stringify(kept) ? 'as kept' : read;

/** What this program makes of a text that is found on the device. */
function madeOf(kept: unknown): Gives {
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
    project: asKept(start.project, given.project),
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
      join: worked.join,
    },
    mishaps: making.mishaps,
    seen: making.seen,
    verdict: making.pairing.verdict,
    gaps: making.pairing.gaps.length,
    steps: making.steps.length,
  };
}

describe('kept work', () => {
  test('of every kind is there', () => {
    expect(fixtures.length).toBe(102);
  });

  test.each(fixtures)('%s', (_name, { kept, gives, since }) => {
    expect(madeOf(kept)).toEqual({ ...gives, ...since?.gives });
  });

  test('that was mended says so, and differs from what it was', () => {
    for (const [, { gives, since }] of fixtures)
      if (since) {
        expect(since.because.length).toBeGreaterThan(10);
        expect({ ...gives, ...since.gives }).not.toEqual(gives);
      }
  });
});
