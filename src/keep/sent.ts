/**
 * A panel from an address, looked at beside the own work.
 *
 * Rule: nothing is kept of it until the person says so, and then the own work is set aside, not lost.
 */
import { readLink } from '../input/link.ts';
import type { Start, Store } from '../state/store.ts';
import { linkBroken, type Notice, sentKept, sentPanel } from '../words/notices.ts';
import { attempt, heldText, holdText, keep, type Store as Simple } from './device.ts';
import type { Keeping } from './keep-types.ts';
import { beforeKey } from './storage.ts';

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
  watch: () => Promise<Keeping>,
): void {
  const own = heldText(device);
  const keepIt = async (): Promise<void> => {
    if (own !== null) attempt(() => device?.setItem(beforeKey, own));
    keep(device, store.snapshot());
    forgetAddress();
    const keeping = await watch();
    if (own !== null) notify(sentKept(() => void bringBack(device, own, keeping)));
  };
  notify(
    sentPanel(
      () => {
        forgetAddress();
        location.reload();
      },
      () => void keepIt(),
    ),
  );
}

async function bringBack(device: Simple | null, own: string, { shelving }: Keeping): Promise<void> {
  await shelving?.flush();
  shelving?.stop();
  holdText(device, own);
  location.reload();
}

const forgetAddress = (): void => history.replaceState(null, '', location.pathname + location.search);
