/**
 * Keeping the panel in hand in the database while it changes, among any number of others.
 *
 * Rule: the database is what counts; the simple store holds a copy of the panel in hand, so that the page can open
 * without waiting. A change is in the copy at once, and on the disk within a second.
 */
import { lasting } from '../input/write-kept.ts';
import { placeToldLater } from '../making/moving.ts';
import type { Start, Store } from '../state/store.ts';
import { type Notice, notKept, panelElsewhere, panelOfNewer } from '../words/notices.ts';
import { type Around, newName } from './around.ts';
import type { HandOut, Opened, Shelving, Work } from './keep-types.ts';
import { sameProject } from './same-project.ts';
import type { Shelf, Shelved } from './shelf.ts';
import { newPanel, openingOf, shelveAsides } from './shelf-opening.ts';
import type { Device } from './storage.ts';

export type ShelvingNeeds = {
  device: Device;
  shelf: Shelf;
  notify: (notice: Notice) => void;
  opened: Opened;
  around: Around;
  handOut: HandOut;
};

/** Changes within this time go to the disk together. */
const togetherMs = 150;

const PARTS: readonly (keyof Start)[] = ['project', 'settings', 'tab', 'place', 'answered'];
const WORK: readonly (keyof Start)[] = ['project', 'place', 'answered'];

export async function startShelving(
  store: Pick<Store, 'snapshot' | 'subscribe' | 'send'>,
  { device, shelf, notify, opened, around, handOut }: ShelvingNeeds,
): Promise<Shelving> {
  let id: string | null = null;
  /** The text of the panel in hand that is in the database, as far as this tab knows. */
  let known: string | null = null;
  let kept = lasting(opened.snapshot);
  /** When the work was last changed, in ms. */
  let at = 0;
  let count = 0;
  let isDirty = false;
  let isCopied = true;
  let lastCopy: string | null = null;
  let isTaking = false;
  /** The panel in hand, where another tab has changed it: what is done here is no part of it. */
  let apart: string | null = null;
  const told = { unkept: false, persist: false };
  let timer: ReturnType<typeof setTimeout> | undefined;
  let looking: ReturnType<typeof setTimeout> | undefined;
  let running = Promise.resolve(true);

  const saveIt = (): void => handOut(store.snapshot());
  const textNow = (): string => {
    count += 1;
    const stamp = { tab: around.tab, count, at };
    return device.textOf(store.snapshot(), { stamp, ...(id !== null && { panel: id }) });
  };
  /** The copy for the first look; a later version's is left alone. */
  const copy = (): void => {
    const there = device.held();
    const isNewer = there !== null && there !== lastCopy && device.isNewer(there);
    const text = textNow();
    isCopied = !isNewer && device.hold(text);
    if (isCopied) lastCopy = text;
  };
  const settle = (isSafe: boolean): void => {
    around.guard(!isSafe);
    if (!isSafe && !told.unkept) notify(notKept(saveIt));
    told.unkept ||= !isSafe;
  };
  const dirty = (): void => {
    if (id === null || id === apart) {
      id = newName();
      known = null;
    }
    at = Math.max(Date.now(), at + 1);
    isDirty = true;
  };

  const put = async (): Promise<boolean> => {
    if (!isDirty || id === null) return true;
    isDirty = false;
    const text = textNow();
    const answer = await shelf.put({ id, text, changed: at }, known);
    if (answer === 'theirs') return part(id);
    if (answer === 'put') known = text;
    else isDirty = true;
    settle(answer === 'put' || isCopied);
    return answer === 'put';
  };
  /** Another tab has changed the panel in hand: this work is a panel of its own, unless they differ in the walk only. */
  const part = async (panel: string): Promise<boolean> => {
    const there = await shelf.get(panel).catch(() => null);
    const theirs = there && device.read(there.text);
    const base = known === null ? null : device.read(known);
    // Here it was only walked: nothing told is lost, and no panel of its own is asked for.
    if (theirs && base && sameProject(kept, base) && !sameProject(theirs, base)) {
      apart = panel;
      notify(elsewhere(panel));
      return true;
    }
    isDirty = true;
    if (there && theirs && [kept, base].some((one) => one && sameProject(theirs, one))) known = there.text;
    else {
      id = newName();
      known = null;
      copy();
      notify(theirs ? elsewhere(panel) : panelOfNewer());
    }
    return put();
  };
  const flush = (): Promise<boolean> => {
    clearTimeout(timer);
    timer = undefined;
    running = running.then(put, put);
    return running;
  };
  const save = (): void => {
    const now = lasting(store.snapshot());
    if (isTaking || PARTS.every((one) => now[one] === kept[one])) return;
    const isWork = WORK.some((one) => now[one] !== kept[one]);
    if (now.project !== opened.snapshot.project && !told.persist) {
      told.persist = true;
      around.persist();
    }
    kept = now;
    if (isWork) {
      dirty();
      timer ??= setTimeout(flush, togetherMs);
    }
    copy();
  };

  const open = (work: Work, from: { id: string; text: string | null; changed: number }): void => {
    isTaking = true;
    apart = null;
    id = from.id;
    known = from.text;
    at = from.changed;
    const { project, place, answered, fewerSteps } = work;
    store.send({ type: 'OPEN', project, place, answered, anew: true });
    if (fewerSteps) store.send({ type: 'JUMP', to: placeToldLater(store.snapshot().making.steps, place) });
    isTaking = false;
    kept = lasting(store.snapshot());
    copy();
  };
  const take = async (work: Work, from: Shelved | null): Promise<boolean> => {
    if (!(await flush()) || isDirty) {
      notify(notKept(saveIt));
      return false;
    }
    open(work, from ?? { id: newName(), text: null, changed: Date.now() });
    isDirty = from === null;
    await flush();
    return true;
  };
  const elsewhere = (panel: string): Notice => {
    const takeThat = async (): Promise<void> => {
      const there = await shelf.get(panel);
      const theirs = there && device.read(there.text);
      if (there && theirs) await take(theirs, there);
    };
    /** Theirs stays, as a panel of its own. */
    const putInPlace = async (): Promise<void> => {
      await flush();
      const there = await shelf.get(panel);
      if (there && (await shelf.put({ ...there, id: newName() }, null)) !== 'put') return settle(false);
      const own = id;
      id = panel;
      apart = null;
      known = there?.text ?? null;
      dirty();
      copy();
      if ((await flush()) && own !== null && own !== panel) await shelf.remove(own);
    };
    const orTell = (act: () => Promise<void>) => () => void act().catch(() => settle(false));
    return panelElsewhere(orTell(takeThat), orTell(putInPlace));
  };
  /** The copy is another tab's: whether the panel in hand is so too, the database will tell when it has it. */
  const look = (): void => {
    clearTimeout(looking);
    looking = setTimeout(() => void compare().catch(() => {}), 2 * togetherMs);
  };
  const compare = async (): Promise<void> => {
    const panel = id;
    const there = panel === null ? null : await shelf.get(panel);
    const theirs = there && device.read(there.text);
    if (panel === null || panel !== id || panel === apart || isDirty) return;
    if (!there || there.text === known) return;
    if (theirs && sameProject(theirs, kept)) return;
    apart = panel;
    notify(theirs ? elsewhere(panel) : panelOfNewer());
  };

  await shelveAsides(device, shelf, opened.held);
  const isUntouched = (): boolean => WORK.every((one) => lasting(store.snapshot())[one] === kept[one]);
  const begun = opened.isNew ? newPanel() : await openingOf(device, shelf, opened.held);
  if (begun.open && isUntouched()) open(begun.open.work, begun.open.from);
  else if (begun.open && device.read(opened.held ?? '')) ({ id, changed: at } = begun.open.from);
  else ({ id, known, at } = begun);
  if (begun.isOfNewer) notify(panelOfNewer());
  if (begun.isAhead) {
    id ??= newName();
    isDirty = true;
    void flush();
  }
  save();
  const stops = [
    store.subscribe(save),
    around.whenHidden(() => void flush()),
    device.whenElsewhere(look),
    () => around.guard(false),
    () => clearTimeout(timer),
    () => clearTimeout(looking),
  ];
  return {
    inHand: () => id,
    flush,
    take,
    stop: () => {
      for (const stop of stops) stop();
    },
  };
}
