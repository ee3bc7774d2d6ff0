/**
 * Asking the search in its thread.
 *
 * Rule: a thread that is still at a question when another comes is ended, for it hears nothing while it searches; one
 * that has answered is kept for the next. Where threads fail none is tried again: the page then searches in slices.
 */
import { lastTurn, type Search, type Turn } from './question.ts';
import { inSlices } from './slices.ts';

export type Thread = EventTarget & Pick<Worker, 'postMessage' | 'terminate'>;

/** @param start starts a thread, or throws where there can be none */
export function inThread(start: () => Thread, instead: Search = inSlices): Search {
  let idle: Thread | null = null;
  let isMissing = false;

  return (question, tell) => {
    const off = new AbortController();
    const { signal } = off;
    const fall = (): void => {
      isMissing = true;
      const stop = instead(question, tell);
      signal.addEventListener('abort', stop);
    };
    const ask = (thread: Thread): void => {
      idle = null;
      const hear = (event: Event): void => {
        const { data } = event as MessageEvent<Turn>;
        if (data.causes === lastTurn) idle = thread;
        tell(data);
      };
      const fail = (event: Event): void => {
        event.preventDefault();
        fall();
      };
      const end = (): void => {
        if (idle !== thread) thread.terminate();
      };
      thread.addEventListener('message', hear, { signal });
      thread.addEventListener('error', fail, { signal });
      signal.addEventListener('abort', end);
      thread.postMessage(question);
    };
    try {
      if (isMissing) fall();
      else ask(idle ?? start());
    } catch {
      fall();
    }
    return () => off.abort();
  };
}
