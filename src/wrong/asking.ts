/**
 * Asks for the causes once typing rests, and keeps the answer until something else was counted.
 *
 * One slip explains most counts and is found at once. Two, and then three, take far longer: they are looked for where
 * one explains nothing, or where the person asks for it, in turns of their own.
 */
import { type Explained, explain, type Options, type Plan, type Seen } from '../../core/index.ts';

type Looked = readonly NonNullable<Options['looked']>[number][];

export type Answer = {
  /** The last answer there is; of other counts while `settled` is false. */
  explained: Explained | null;
  /** It answers these counts, though more may be found. */
  fresh: boolean;
  /** These are the counts it answers, and nothing more is being looked for. */
  settled: boolean;
  /** It has been looked for long enough to say so. */
  slow: boolean;
};

export type Clock = { after(milliseconds: number, act: () => void): () => void };

const pageClock: Clock = {
  after: (milliseconds, act) => {
    const timer = setTimeout(act, milliseconds);
    return () => clearTimeout(timer);
  },
};

/** Typing rests when nothing has come for so long. */
const REST = 150;
/** Longer than this, and the page says that it is looking. */
const SLOW = 200;
/** Between two turns, for the page to draw and to hear a key. */
const BREATH = 30;

const MOST_CAUSES = 3;

/** `further`: look for two and three slips also where one explains it. */
type Ask = (plan: Plan, seen: Seen, looked: Looked, further?: boolean) => Answer;

export function createAsking(onChange: () => void, clock: Clock = pageClock, find = explain): Ask {
  let asked = '';
  let answer: Answer = { explained: null, fresh: false, settled: false, slow: false };
  let stops: (() => void)[] = [];
  const stop = (): void => {
    for (const one of stops) one();
    stops = [];
  };

  const turn = (plan: Plan, seen: Seen, looked: Looked, further: boolean, causes: 1 | 2 | 3): void => {
    const found = find(plan, seen, { looked, causes });
    const explained = found.ok ? found.value : null;
    const isFound = (explained?.explanations.length ?? 0) > 0;
    const isLast = causes === MOST_CAUSES || (isFound && !further);
    // Nothing found with few causes is no answer yet.
    if (isLast || isFound) answer = { ...answer, explained, fresh: true, settled: isLast };
    if (isLast) stop();
    else stops.push(clock.after(BREATH, () => turn(plan, seen, looked, further, (causes + 1) as 2 | 3)));
    onChange();
  };

  return (plan, seen, looked, further = false) => {
    // A plan is its edge and its choices; it is made anew with every change of the project.
    const now = JSON.stringify([plan.edge, plan.choices, plan.edgings, seen, looked, further]);
    if (now === asked) return answer;
    stop();
    asked = now;
    answer = { ...answer, fresh: false, settled: false, slow: false };
    const tell = (): void => {
      answer = { ...answer, slow: true };
      onChange();
    };
    stops = [clock.after(REST, () => turn(plan, seen, looked, further, 1)), clock.after(SLOW, tell)];
    return answer;
  };
}
