/**
 * A panel from an address, looked at beside the own work.
 *
 * Rule: nothing is kept of it until the person says so, and then the own work is set aside, not lost.
 */
import { readLink } from '../input/link.ts';
import type { Start, Store } from '../state/store.ts';
import { linkBroken, type Notice, sentKept, sentPanel } from '../words/notices.ts';
import { attempt, heldText, holdText, keep, type Store as Simple } from './device.ts';

/** The own work from before a sent panel was kept in its place. */
const beforeKey = 'ringtrue.before-link';

/** What the address holds, opened over the own work; or why it cannot be. Null where it holds nothing. */
export async function openSent(
  fragment: string,
  own: Start,
): Promise<{ start: Start } | { notice: Notice } | null> {
  const read = await readLink(fragment);
  if (read === null) return null;
  if (!read.ok) return { notice: linkBroken(read.why) };
  const { project, dialect, hand, units, tab, place, answered } = read.shared;
  const settings = { ...own.settings, dialect, hand, units };
  return { start: { project, settings, tab, place, answered } };
}

/** Tells whose panel this is, until one of the two ways on is taken. `watch` begins to keep what is shown. */
export function offerWaysOn(
  store: Store,
  device: Simple | null,
  notify: (notice: Notice) => void,
  watch: () => void,
): void {
  const own = heldText(device);
  const keepIt = (): void => {
    if (own !== null) attempt(() => device?.setItem(beforeKey, own));
    keep(device, store.snapshot());
    forgetAddress();
    watch();
    if (own !== null) notify(sentKept(() => bringBack(device, own)));
  };
  notify(
    sentPanel(() => {
      forgetAddress();
      location.reload();
    }, keepIt),
  );
}

function bringBack(device: Simple | null, own: string): void {
  holdText(device, own);
  location.reload();
}

const forgetAddress = (): void => history.replaceState(null, '', location.pathname + location.search);
