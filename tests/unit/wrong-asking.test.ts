import { describe, expect, test } from 'vitest';
import type { Explained, Plan, Seen } from '../../core/index.ts';
import { type Clock, createAsking } from '../../src/wrong/asking.ts';
import { type Search, turnSizes } from '../../src/wrong/search/question.ts';
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
const about = (count: number) => ({ plan, seen: counted(count), looked: [] });

/** A search that finds nothing with fewer causes than `needs`, takes 100 ms a turn, and writes down what it was asked. */
function search(clock: Clock, needs: number) {
  const asked: [first: unknown, causes: number][] = [];
  const find: Search = ({ seen }, tell) => {
    let stop = (): void => {};
    const turn = (n: number): void => {
      const causes = turnSizes[n];
      if (causes === undefined) return;
      stop = clock.after(100, () => {
        asked.push([seen.edgings?.[0]?.sides[0], causes]);
        const explanations = causes >= needs ? [explanationOf(plan, [])] : [];
        const effort = { tried: 0, plain: 0, candidates: 0, sets: 0, complete: true };
        tell({
          causes,
          explained: { explanations, effort, stands: { at: 'foundation' } } satisfies Explained,
        });
        turn(n + 1);
      });
    };
    turn(0);
    return () => stop();
  };
  return { asked, find };
}

function asking(needs: number) {
  const { clock, pass, open } = handClock();
  const { asked, find } = search(clock, needs);
  let changes = 0;
  const ask = createAsking(() => changes++, find, clock);
  return { ask, asked, pass, open, changes: () => changes };
}

describe('asking for causes', () => {
  test('waits until typing rests, and asks once for what stands then', () => {
    const { ask, asked, pass, changes } = asking(1);
    for (const count of [6, 61, 613, 61]) {
      ask(about(count));
      pass(60);
    }
    expect(asked).toEqual([]);
    pass(1000);
    expect(asked).toEqual([
      [61, 1],
      [61, 2],
      [61, 3],
    ]);
    expect(changes()).toBeGreaterThan(2);
    expect(ask(about(61)).explained?.explanations).toHaveLength(1);
    pass(5000);
    expect(asked).toHaveLength(3);
  });

  test('keeps its answer for the same counts on a plan made anew', () => {
    const { ask, asked, pass } = asking(1);
    ask(about(61));
    pass(1000);
    const before = asked.length;
    const again: Plan = structuredClone(plan);
    expect(ask({ plan: again, seen: structuredClone(counted(61)), looked: [] }).settled).toBe(true);
    pass(1000);
    expect(asked).toHaveLength(before);
    const looked = [{ key: 'closing', found: 'over' }];
    expect(ask({ plan, seen: counted(61), looked }).settled).toBe(false);
    pass(1000);
    expect(asked.length).toBeGreaterThan(before);
  });

  test('finding nothing with few causes is no answer yet', () => {
    const { ask, asked, pass } = asking(3);
    ask(about(61));
    pass(251);
    expect(asked.map(([, causes]) => causes)).toEqual([1]);
    expect(ask(about(61))).toMatchObject({ fresh: false, causes: 1 });
    pass(1000);
    expect(asked.map(([, causes]) => causes)).toEqual([1, 2, 3]);
    expect(ask(about(61))).toMatchObject({ fresh: true, settled: true, causes: 3 });
  });

  test('shows what one cause explains, and goes on to two and three without being asked', () => {
    const { ask, asked, pass } = asking(1);
    ask(about(61));
    pass(251);
    expect(ask(about(61))).toMatchObject({ fresh: true, settled: false, causes: 1 });
    pass(2000);
    expect(asked.map(([, causes]) => causes)).toEqual([1, 2, 3]);
    expect(ask(about(61)).settled).toBe(true);
  });

  test('says that it is looking only after 200 ms, and shows the old answer meanwhile as not fresh', () => {
    const { ask, pass } = asking(3);
    ask(about(61));
    pass(150);
    expect(ask(about(61)).slow).toBe(false);
    pass(52);
    expect(ask(about(61)).slow).toBe(true);
    pass(1000);
    expect(ask(about(60))).toMatchObject({ fresh: false, settled: false, causes: 0, slow: false });
    expect(ask(about(60)).explained).not.toBeNull();
  });

  test('what is typed between two turns ends the search for what stood before', () => {
    const { ask, asked, pass, open } = asking(3);
    ask(about(61));
    pass(251);
    ask(about(60));
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
