import { describe, expect, test } from 'vitest';
import type { Explained, Plan, Seen } from '../../core/index.ts';
import { type Clock, createAsking } from '../../src/wrong/asking.ts';
import { explanationOf, planOf } from './wrong-panels.ts';

/** A clock that a test moves on. */
function handClock() {
  let now = 0;
  let waiting: { at: number; act: () => void }[] = [];
  const clock: Clock = {
    after: (milliseconds, act) => {
      const one = { at: now + milliseconds, act };
      waiting.push(one);
      return () => {
        waiting = waiting.filter((other) => other !== one);
      };
    },
  };
  const pass = (milliseconds: number): void => {
    const end = now + milliseconds;
    for (;;) {
      const [next] = waiting.filter(({ at }) => at <= end).sort((a, b) => a.at - b.at);
      if (!next) break;
      now = next.at;
      waiting = waiting.filter((one) => one !== next);
      next.act();
    }
    now = end;
  };
  return { clock, pass, open: () => waiting.length };
}

const plan = planOf([62, 38, 62, 38]);
const counted = (count: number): Seen => ({ edgings: [{ sides: [count, null, null, null] }] });

/** A search that finds nothing with fewer causes than `needs`, and writes down what it was asked. */
function search(needs: number) {
  const asked: [first: unknown, causes: unknown][] = [];
  const find = (_plan: unknown, seen: unknown, options: unknown) => {
    const { causes = 3 } = options as { causes?: number };
    asked.push([(seen as Seen).edgings?.[0]?.sides[0], causes]);
    const explanations = causes >= needs ? [explanationOf(plan, [])] : [];
    const effort = { tried: 0, plain: 0, candidates: 0, sets: 0, complete: true };
    return { ok: true, value: { explanations, effort } satisfies Explained } as const;
  };
  return { asked, find };
}

describe('asking for causes', () => {
  test('waits until typing rests, and asks once for what stands then', () => {
    const { clock, pass } = handClock();
    const { asked, find } = search(1);
    let changes = 0;
    const ask = createAsking(() => changes++, clock, find);
    for (const count of [6, 61, 613, 61]) {
      ask(plan, counted(count), []);
      pass(60);
    }
    expect(asked).toEqual([]);
    pass(1000);
    expect(asked[0]).toEqual([61, 1]);
    expect(asked.every(([count]) => count === 61)).toBe(true);
    expect(changes).toBeGreaterThan(0);
    expect(ask(plan, counted(61), []).explained?.explanations).toHaveLength(1);
    const before = asked.length;
    pass(5000);
    expect(asked).toHaveLength(before);
  });

  test('keeps its answer for the same counts on a plan made anew', () => {
    const { clock, pass } = handClock();
    const { asked, find } = search(1);
    const ask = createAsking(() => {}, clock, find);
    ask(plan, counted(61), []);
    pass(1000);
    const before = asked.length;
    const again: Plan = structuredClone(plan);
    expect(ask(again, structuredClone(counted(61)), []).settled).toBe(true);
    pass(1000);
    expect(asked).toHaveLength(before);
    expect(ask(plan, counted(61), [{ key: 'closing', found: 'over' }]).settled).toBe(false);
    pass(1000);
    expect(asked.length).toBeGreaterThan(before);
  });

  test('goes on to more causes in turns of their own, as long as nothing is found', () => {
    const { clock, pass } = handClock();
    const { asked, find } = search(3);
    const ask = createAsking(() => {}, clock, find);
    ask(plan, counted(61), []);
    pass(151);
    expect(asked.map(([, causes]) => causes)).toEqual([1]);
    expect(ask(plan, counted(61), []).fresh).toBe(false);
    pass(1000);
    expect(asked.map(([, causes]) => causes)).toEqual([1, 2, 3]);
    expect(ask(plan, counted(61), [])).toMatchObject({ fresh: true, settled: true });
  });

  test('goes on to several causes, though one explains it, only where that was asked for', () => {
    const { clock, pass } = handClock();
    const { asked, find } = search(1);
    const ask = createAsking(() => {}, clock, find);
    ask(plan, counted(61), []);
    pass(2000);
    expect(asked.map(([, causes]) => causes)).toEqual([1]);
    ask(plan, counted(61), [], true);
    pass(151);
    expect(ask(plan, counted(61), [], true)).toMatchObject({ fresh: true, settled: false });
    pass(2000);
    expect(asked.map(([, causes]) => causes)).toEqual([1, 1, 2, 3]);
    expect(ask(plan, counted(61), [], true).settled).toBe(true);
  });

  test('says that it is looking only after 200 ms, and shows the old answer meanwhile as not fresh', () => {
    const { clock, pass } = handClock();
    const ask = createAsking(() => {}, clock, search(3).find);
    ask(plan, counted(61), []);
    pass(150);
    expect(ask(plan, counted(61), []).slow).toBe(false);
    pass(52);
    expect(ask(plan, counted(61), []).slow).toBe(true);
    pass(1000);
    expect(ask(plan, counted(60), [])).toMatchObject({ fresh: false, settled: false, slow: false });
    expect(ask(plan, counted(60), []).explained).not.toBeNull();
  });

  test('what is typed between two turns ends the search for what stood before', () => {
    const { clock, pass, open } = handClock();
    const { asked, find } = search(3);
    const ask = createAsking(() => {}, clock, find);
    ask(plan, counted(61), []);
    pass(151);
    ask(plan, counted(60), []);
    pass(2000);
    expect(asked).toEqual([
      [61, 1],
      [60, 1],
      [60, 2],
      [60, 3],
    ]);
    expect(open()).toBe(0);
  });
});
