/** What looks after the work once the page stands: fetched after the first look, so that it costs that nothing. */

import { registerOffline } from '../offline/register.ts';
import type { Store } from '../state/store.ts';
import { type Notice, newerVersion } from '../words/notices.ts';
import type { Store as Simple } from './device.ts';
import { type Opened, startKeeping } from './keeping.ts';
import { deviceOn } from './storage.ts';

/** Keeps the work and the pages on the device. @param notify takes what the person is to be told */
export function watchOver(
  store: Store,
  device: Simple | null,
  notify: (notice: Notice) => void,
  opened: Opened,
): void {
  startKeeping(store, deviceOn(device), notify, opened);
  registerOffline((useIt) => notify(newerVersion(useIt)));
}
