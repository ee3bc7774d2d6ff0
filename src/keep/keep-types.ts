/** What the parts of keeping hand to each other. */
import type { Snapshot } from '../state/snapshot.ts';
import type { Start } from '../state/store.ts';
import type { Shelf, Shelved } from './shelf.ts';
import type { Device } from './storage.ts';

/**
 * How things stood when the page opened: what was shown, and what the device held. `isNew`: what is shown was sent, and is
 * kept from now on as a panel that was not there before.
 */
export type Opened = { snapshot: Snapshot; held: string | null; isNew?: true };

/** Work is handed out where it cannot be kept: as a file. */
export type HandOut = (snapshot: Snapshot) => void;

/** What a panel is opened with. */
export type Work = Pick<Start, 'project' | 'place' | 'answered' | 'fewerSteps'>;

/** What keeps the panel in hand, among the others. */
export type Shelving = {
  /** The panel in hand; null until there is something of it to keep. */
  inHand(): string | null;
  /** Puts what was done on the disk. Answers whether it is there. */
  flush(): Promise<boolean>;
  /**
   * Takes another panel in hand once the present one is on the disk; answers false where it cannot be, and nothing
   * happens. @param from null for a new panel
   */
  take(work: Work, from: Shelved | null): Promise<boolean>;
  stop(): void;
};

/** Where the work is kept. */
export type Keeping = {
  device: Device;
  /** All panels; null where the browser lends no database. */
  shelf: Shelf | null;
  /** Null without a shelf, and while a sent panel is only looked at. */
  shelving: Shelving | null;
};
