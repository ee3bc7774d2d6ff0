/**
 * Keeping the one work there is while it changes, in this tab and in others, where the browser lends no database.
 *
 * Rule: every change is put on the device before the next one can come. Before that the device is looked at: if
 * another tab has put other work there meanwhile, this tab keeps nothing more until the person has chosen one.
 */
import { lasting } from '../input/write-kept.ts';
import type { Start, Store } from '../state/store.ts';
import { changedElsewhere, keptByNewer, type Notice, notKept } from '../words/notices.ts';
import { type Around, thisPage } from './around.ts';
import type { HandOut, Opened } from './keep-types.ts';
import type { Device } from './storage.ts';

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

/** `notify` is told once if the device does not take it, and whenever another tab has changed the same work. */
export type KeepingNeeds = {
  notify: (notice: Notice) => void;
  opened?: Opened;
  around?: Around;
  handOut?: HandOut;
};

/** Keeps the store's work on the device from now on, and what changed since it was opened. Gives back how to stop. */
export function startKeeping(
  store: Pick<Store, 'snapshot' | 'subscribe' | 'send'>,
  device: Device,
  { notify, opened = openedNow(store, device), around = thisPage(), handOut = () => {} }: KeepingNeeds,
): () => void {
  const { panel } = (opened.held !== null && device.read(opened.held)) || {};
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
    if (answer === 'odd' && held !== null) {
      if (device.isNewer(held)) return true;
      // What cannot be read is not thrown away by writing over it.
      device.setAside(held);
    }
    if (answer !== 'theirs') known = held;
    return answer === 'theirs';
  };
  const saveIt = (): void => handOut(store.snapshot());
  const part = (): void => {
    isApart = true;
    const isNewer = device.isNewer(device.held() ?? '');
    notify(isNewer ? keptByNewer(saveIt) : changedElsewhere(takeThat, keepThis));
  };
  const mark = (unkept: boolean): void => {
    isUnkept = unkept;
    around.guard(isUnkept);
  };
  const put = (): void => {
    const now = store.snapshot();
    count += 1;
    const text = device.textOf(now, { stamp: { tab: around.tab, count }, ...(panel && { panel }) });
    mark(!device.hold(text));
    if (!isUnkept) {
      known = text;
      kept = lasting(now);
    } else if (!isTold) {
      isTold = true;
      notify(notKept(saveIt));
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

const openedNow = (store: Pick<Store, 'snapshot'>, device: Device): Opened => ({
  snapshot: store.snapshot(),
  held: device.held(),
});
