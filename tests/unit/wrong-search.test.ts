/** The search in its thread, held against a stand-in for the browser's worker. */
import { describe, expect, test } from 'vitest';
import { explain, type Seen } from '../../core/index.ts';
import type { Question, Search, Turn } from '../../src/wrong/search/question.ts';
import { inSlices } from '../../src/wrong/search/slices.ts';
import { inThread, type Thread } from '../../src/wrong/search/thread.ts';
import { turnsOf } from '../../src/wrong/search/turns.ts';
import { planOf } from './wrong-panels.ts';

const plan = planOf([62, 38, 62, 38]);
const about = (count: number): Question => ({
  plan,
  seen: { edgings: [{ sides: [count, null, null, null] }] },
  looked: [],
});

/** Threads that answer when the test says so. */
function threads() {
  const started: (Thread & { asked: Question[]; isEnded: boolean; answer(turn: Turn): void })[] = [];
  const start = () => {
    const thread = Object.assign(new EventTarget(), {
      asked: [] as Question[],
      isEnded: false,
      postMessage: (question: Question) => void thread.asked.push(structuredClone(question)),
      terminate: () => {
        thread.isEnded = true;
      },
      answer: (turn: Turn) => thread.dispatchEvent(new MessageEvent('message', { data: turn })),
    });
    started.push(thread);
    return thread;
  };
  return { started, start };
}

const allTurns = (question: Question): Turn[] => [...turnsOf(question)];

describe('the turns of a search', () => {
  test('give what one, two and three causes explain', () => {
    const turns = allTurns(about(61));
    expect(turns.map(({ causes }) => causes)).toEqual([1, 2, 3]);
    for (const { causes, explained } of turns) {
      const found = explain(plan, about(61).seen, { causes: causes as 1 | 2 | 3, looked: [] });
      expect(explained).toEqual(found);
    }
  });
});

describe('the search in its thread', () => {
  test('hands on every turn, in plain data both ways', () => {
    const { started, start } = threads();
    const told: Turn[] = [];
    inThread(start)(about(61), (turn) => told.push(turn));
    const [thread] = started;
    for (const turn of turnsOf(thread?.asked[0] as Question)) thread?.answer(structuredClone(turn));
    expect(told).toEqual(allTurns(about(61)));
  });

  test('is kept for the next question once it has answered', () => {
    const { started, start } = threads();
    const search = inThread(start);
    const stop = search(about(61), () => {});
    for (const turn of turnsOf(about(61))) started[0]?.answer(turn);
    stop();
    search(about(60), () => {});
    expect(started).toHaveLength(1);
    expect(started[0]?.asked.map(({ seen }: { seen: Seen }) => seen.edgings?.[0]?.sides[0])).toEqual([
      61, 60,
    ]);
  });

  test('is ended where another question comes while it searches, and is heard no more', () => {
    const { started, start } = threads();
    const search = inThread(start);
    const told: Turn[] = [];
    const stop = search(about(61), (turn) => told.push(turn));
    const [first, second] = allTurns(about(61)) as [Turn, Turn];
    started[0]?.answer(first);
    stop();
    expect(started[0]?.isEnded).toBe(true);
    started[0]?.answer(second);
    expect(told).toEqual([first]);
    search(about(60), () => {});
    expect(started).toHaveLength(2);
  });

  test('is done on the page where no thread can be had, or one fails, and stopped there too', () => {
    const { started, start } = threads();
    const asked: string[] = [];
    const instead: Search = () => {
      asked.push('asked');
      return () => asked.push('stopped');
    };
    const never = (): Thread => {
      throw new Error('no threads here');
    };
    inThread(never, instead)(about(61), () => {})();
    expect(asked.splice(0)).toEqual(['asked', 'stopped']);
    const search = inThread(start, instead);
    const stop = search(about(61), () => {});
    const failed = new Event('error', { cancelable: true });
    started[0]?.dispatchEvent(failed);
    expect(failed.defaultPrevented).toBe(true);
    expect(asked.splice(0)).toEqual(['asked']);
    stop();
    search(about(60), () => {});
    expect(asked).toEqual(['stopped', 'asked']);
    expect(started).toHaveLength(1);
  });
});

describe('the search in slices', () => {
  test('gives the same turns, one after another', async () => {
    const told = await new Promise<Turn[]>((done) => {
      const turns: Turn[] = [];
      inSlices(about(61), (turn) => {
        turns.push(turn);
        if (turn.causes === 3) done(turns);
      });
    });
    expect(told).toEqual(allTurns(about(61)));
  });

  test('tells nothing more once it is called off', async () => {
    const told: Turn[] = [];
    const stop = await new Promise<() => void>((done) => {
      const end = inSlices(about(61), (turn) => {
        told.push(turn);
        done(end);
      });
    });
    stop();
    await new Promise((done) => setTimeout(done, 100));
    expect(told.map(({ causes }) => causes)).toEqual([1]);
  });
});
