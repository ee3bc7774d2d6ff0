/** What the page shows to tests: `window.ringtrue`, there only when the address holds `?probe`. */
import type { AppEvent, Making, Snapshot } from '../../src/state/snapshot.ts';
import type { Scene } from '../../src/table/draw-list.ts';

export type Probe = {
  send(event: AppEvent): void;
  snapshot(): Snapshot;
  scene(): Scene;
  /** Null until the drawing is there. `frames`: how many were drawn so far. */
  table(): { frames(): number } | null;
  /** Fulfilled once the drawing is on the screen. */
  ready?: Promise<unknown>;
};

declare global {
  interface Window {
    ringtrue?: Probe;
  }
}

/** A snapshot as it comes out of the page: plain data, so the steps are their length and stretches only. */
export type ReadSnapshot = Omit<Snapshot, 'making'> & {
  making: Omit<Making, 'steps'> & { steps: Pick<Making['steps'], 'length' | 'stretches'> };
};
