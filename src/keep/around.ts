/** What keeping needs of the page and the browser. */

/** Each `when…` gives back how to stop. */
export type Around = {
  /** Names this tab among others; another one at every opening. */
  tab: string;
  whenHidden(then: () => void): () => void;
  /** From now on the browser asks before it lets the page go, or no longer does. */
  guard(isOn: boolean): void;
  /** Asks the browser not to clear away what is kept. */
  persist(): void;
};

/** A name that no other has. */
export const newName = (): string => crypto.getRandomValues(new Uint32Array(2)).join('-');

export function thisPage(): Around {
  return {
    tab: newName(),
    whenHidden: (then) => {
      const look = (): void => {
        if (document.visibilityState === 'hidden') then();
      };
      document.addEventListener('visibilitychange', look);
      addEventListener('pagehide', then);
      return () => {
        document.removeEventListener('visibilitychange', look);
        removeEventListener('pagehide', then);
      };
    },
    // Listening at all times would keep some browsers from holding the page ready for a way back.
    guard: (isOn) => {
      if (isOn) addEventListener('beforeunload', askBeforeLeaving);
      else removeEventListener('beforeunload', askBeforeLeaving);
    },
    persist: () => {
      // Where the browser will not promise it, the work is kept all the same.
      navigator.storage?.persist?.().catch(() => {});
    },
  };
}

const askBeforeLeaving = (event: Event): void => event.preventDefault();
