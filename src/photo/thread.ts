/**
 * The photo's thread from the page. Calling off ends the thread at once, for it hears nothing while it compares; the
 * next question starts another, which reads the photo again first.
 */
import address from 'virtual:photo-address';
import type { Answer, Ask, Told } from './messages.ts';

type ScriptPolicy = { createScriptURL(address: string): string };
type PolicyMaker = {
  createPolicy(name: string, rules: { createScriptURL(address: string): string }): ScriptPolicy;
};

let trusted: string | null = null;

/** The address in the form that the content policy asks for, where the browser knows that form. */
function trustedAddress(): string {
  const maker = (globalThis as { trustedTypes?: PolicyMaker }).trustedTypes;
  trusted ??= maker
    ? maker.createPolicy('photo', { createScriptURL: () => address }).createScriptURL('')
    : address;
  return trusted;
}

export type Thread = Pick<Worker, 'postMessage' | 'terminate'> & EventTarget;
export const startThread = (): Thread => new Worker(trustedAddress(), { type: 'module', name: 'photo' });

export type PhotoThread = {
  /** Takes a photo and answers with a picture of it, or that it cannot be read. */
  open(photo: Blob): Promise<Answer>;
  /** Answers null where it was called off, or the thread failed. */
  ask(ask: Exclude<Ask, { kind: 'open' }>, progress?: (done: number) => void): Promise<Answer | null>;
  /** Ends whatever is being done, at once. */
  callOff(): void;
};

type Waiting = { done(answer: Answer | null): void; progress?: ((done: number) => void) | undefined };

/** @param start starts a thread, or throws where there can be none */
export function photoThread(start: () => Thread): PhotoThread {
  let thread: Thread | null = null;
  let photo: Blob | null = null;
  let count = 0;
  const waiting = new Map<number, Waiting>();

  const hear = (event: Event): void => {
    const { id, ...answer } = (event as MessageEvent<Told>).data;
    const one = waiting.get(id);
    if (answer.kind === 'progress') one?.progress?.(answer.done);
    else if (one) {
      waiting.delete(id);
      one.done(answer);
    } else if ('picture' in answer) answer.picture.close();
  };
  const callOff = (): void => {
    thread?.terminate();
    thread = null;
    for (const one of waiting.values()) one.done(null);
    waiting.clear();
  };
  const begin = (): Thread => {
    const begun = start();
    begun.addEventListener('message', hear);
    begun.addEventListener('error', (event) => {
      event.preventDefault();
      if (thread === begun) callOff();
    });
    thread = begun;
    return begun;
  };
  const post = (to: Thread, ask: Ask, progress?: (done: number) => void): Promise<Answer | null> =>
    new Promise((done) => {
      const id = ++count;
      waiting.set(id, { done, progress });
      to.postMessage({ ...ask, id });
    });

  return {
    open: async (next) => {
      callOff();
      photo = next;
      try {
        return (await post(begin(), { kind: 'open', photo: next })) ?? { kind: 'broken' };
      } catch {
        return { kind: 'broken' };
      }
    },
    ask: (ask, progress) => {
      if (!photo) return Promise.resolve(null);
      try {
        if (!thread) post(begin(), { kind: 'open', photo }).then(closed);
        return thread ? post(thread, ask, progress) : Promise.resolve(null);
      } catch {
        return Promise.resolve(null);
      }
    },
    callOff,
  };
}

const closed = (answer: Answer | null): void => {
  if (answer && 'picture' in answer) answer.picture.close();
};
