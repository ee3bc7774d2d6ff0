/** Asks for the causes once typing rests, and keeps the answer until something else was counted. */
import type { Explained } from '../../core/index.ts';
import { lastTurn, type Question, type Search } from './search/question.ts';

export type Answer = {
  /** The last answer there is; of other counts until it is `fresh`. */
  explained: Explained | null;
  /** It answers these counts, though more may be found. */
  fresh: boolean;
  /** These are the counts it answers, and nothing more is being looked for. */
  settled: boolean;
  /** Sets of so many causes were looked for. */
  causes: number;
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
const rest = 150;
/** Longer than this, and the page says that it is looking. */
const long = 200;

type Ask = (question: Question) => Answer;

export function createAsking(onChange: () => void, search: Search, clock: Clock = pageClock): Ask {
  let asked = '';
  let answer: Answer = { explained: null, fresh: false, settled: false, causes: 0, slow: false };
  let stops: (() => void)[] = [];

  const look = (question: Question): void => {
    const stop = search(question, ({ causes, explained }) => {
      const isLast = causes === lastTurn;
      // Nothing found with few causes is no answer yet.
      if (isLast || explained.explanations.length > 0) answer = { ...answer, explained, fresh: true };
      answer = { ...answer, causes, settled: isLast };
      onChange();
    });
    stops.push(stop);
  };

  return (question) => {
    const { plan, seen, looked, stands } = question;
    // A plan is its edge and its choices; it is made anew with every change of the project.
    const now = JSON.stringify([plan.edge, plan.choices, plan.edgings, seen, looked, stands]);
    if (now === asked) return answer;
    for (const stop of stops) stop();
    asked = now;
    answer = { ...answer, fresh: false, settled: false, causes: 0, slow: false };
    const tell = (): void => {
      answer = { ...answer, slow: true };
      onChange();
    };
    stops = [clock.after(rest, () => look(question)), clock.after(long, tell)];
    return answer;
  };
}
