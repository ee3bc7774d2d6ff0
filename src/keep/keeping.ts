/**
 * Keeping the work while it changes, in this tab and in others.
 *
 * Rule: every change is put on the device before the next one can come. Before that the device is looked at: if
 * another tab has put other work there meanwhile, this tab keeps nothing more until the person has chosen one.
 */
import { lasting } from '../input/write-kept.ts';
import type { Snapshot } from '../state/snapshot.ts';
import type { Start, Store } from '../state/store.ts';
import { keptElsewhere, type Notice, notKept } from '../words/notices.ts';
import type { Device } from './storage.ts';

/** What keeping needs of the page and the browser; each `when…` gives back how to stop. */
export type Around = {
  /** Names this tab among others; another one at every opening. */
  tab: string;
  whenHidden(then: () => void): () => void;
  /** From now on the browser asks before it lets the page go, or no longer does. */
  guard(isOn: boolean): void;
  /** Asks the browser not to clear away what is kept. */
  persist(): void;
};

/** The work that must not be lost: what was told, and how far the making is. How it is shown is no part of it. */
export const workOf = ({ project, place }: Pick<Start, 'project' | 'place'>): string =>
  JSON.stringify([project, place]);

/**
 * Whose the text on the device is. `ours`: what this tab knows, or nothing. `alike`: another tab's, with work that
 * is one of `works`, so that nothing is lost by writing over it. `theirs`: other work. `odd`: no work at all.
 */
export function whose(
  held: string | null,
  known: string | null,
  works: readonly string[],
  read: Device['read'],
): 'ours' | 'alike' | 'theirs' | 'odd' {
  if (held === null || held === known) return 'ours';
  const theirs = read(held);
  if (theirs === null) return 'odd';
  return works.includes(workOf(theirs)) ? 'alike' : 'theirs';
}

const PARTS: readonly (keyof Start)[] = ['project', 'settings', 'tab', 'place', 'answered'];

/** How things stood when the page opened: what was shown, and what the device held. */
export type Opened = { snapshot: Snapshot; held: string | null };

/**
 * Keeps the store's work on the device from now on, and what changed since it was opened. Gives back how to stop.
 * @param notify told once if the device does not take it, and whenever another tab has changed the same work
 */
export function startKeeping(
  store: Pick<Store, 'snapshot' | 'subscribe' | 'send'>,
  device: Device,
  notify: (notice: Notice) => void,
  opened: Opened = { snapshot: store.snapshot(), held: device.held() },
  around: Around = thisPage(),
): () => void {
  let kept = lasting(opened.snapshot);
  let known = opened.held;
  let count = 0;
  let isApart = false;
  let isUnkept = false;
  let isTold = false;
  let isAsked = false;

  const isTheirs = (): boolean => {
    const held = device.held();
    const answer = whose(held, known, [workOf(kept), workOf(lasting(store.snapshot()))], device.read);
    // What cannot be read is not thrown away by writing over it.
    if (answer === 'odd' && held !== null) device.setAside(held);
    if (answer !== 'theirs') known = held;
    return answer === 'theirs';
  };
  const part = (): void => {
    isApart = true;
    notify(keptElsewhere(takeThat, keepThis));
  };
  const mark = (unkept: boolean): void => {
    isUnkept = unkept;
    around.guard(isApart && isUnkept);
  };
  const put = (): void => {
    const now = store.snapshot();
    count += 1;
    const text = device.textOf(now, { tab: around.tab, count });
    mark(!device.hold(text));
    if (!isUnkept) {
      known = text;
      kept = lasting(now);
    } else if (!isTold) {
      isTold = true;
      notify(notKept());
    }
  };
  const save = (): void => {
    const now = lasting(store.snapshot());
    if (!isUnkept && PARTS.every((one) => now[one] === kept[one])) return;
    if (now.project !== opened.snapshot.project && !isAsked) {
      isAsked = true;
      around.persist();
    }
    if (!isApart && isTheirs()) part();
    if (isApart) mark(true);
    else put();
  };
  const look = (): void => {
    if (!isApart && isTheirs()) part();
  };
  const keepThis = (): void => {
    isApart = false;
    known = device.held();
    put();
  };
  /** The other work comes as a change like any other: undo brings this tab's own back. */
  const takeThat = (): void => {
    const held = device.held();
    const theirs = held === null ? null : device.read(held);
    if (theirs === null) {
      keepThis();
      return;
    }
    isApart = false;
    mark(false);
    known = held;
    const { project, place, answered, settings } = theirs;
    store.send({ type: 'OPEN', project, place, answered });
    store.send({ type: 'SETTLE', settings });
  };

  save();
  const stops = [
    store.subscribe(save),
    around.whenHidden(save),
    device.whenElsewhere(look),
    () => around.guard(false),
  ];
  return () => {
    for (const stop of stops) stop();
  };
}

function thisPage(): Around {
  return {
    tab: crypto.getRandomValues(new Uint32Array(2)).join('-'),
    whenHidden: (then) => {
      const look = (): void => {
        if (document.visibilityState === 'hidden') then();
      };
      document.addEventListener('visibilitychange', look);
      return () => document.removeEventListener('visibilitychange', look);
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
