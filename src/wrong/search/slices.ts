/** The search on the page itself, a turn at a time, where no thread can be had. It is fetched only then. */
import type { Search } from './question.ts';

/** Milliseconds between two turns, for the page to draw and to hear a key. */
const breath = 30;

export const inSlices: Search = (question, tell) => {
  let isOff = false;
  import('./turns.ts').then(({ turnsOf }) => {
    const turns = turnsOf(question);
    const next = (): void => {
      const turn = isOff ? undefined : turns.next().value;
      if (!turn) return;
      tell(turn);
      setTimeout(next, breath);
    };
    next();
  });
  return () => {
    isOff = true;
  };
};
