/** The app without a page: the real store, kept on a device that can fail on purpose, and opened again from it. */
import type { Around } from '../../src/keep/around.ts';
import { startKeeping } from '../../src/keep/keeping.ts';
import { deviceOn, readKept } from '../../src/keep/storage.ts';
import { example, standardSettings } from '../../src/state/project.ts';
import type { AppEvent, Snapshot } from '../../src/state/snapshot.ts';
import { openStore, type Start, type Store } from '../../src/state/store.ts';

/** Six stitches a side, so that the whole making is some 150 steps. */
export const smallPanel: AppEvent[] = [
  { type: 'CHANGE', project: { sideCount: 4, counted: 'stitches-only' } },
  ...[0, 1, 2, 3].map((side): AppEvent => ({ type: 'TYPE', field: `side.${side}`, text: '6' })),
  { type: 'SHOW', tab: 'walk' },
];

/** Answers both questions and comes back to the first step. */
export const answerAll: AppEvent[] = [
  ...(['twist', 'pad'] as const).flatMap((asks): AppEvent[] => [
    { type: 'JUMP', to: 1_000_000 },
    { type: 'ANSWER', asks },
  ]),
  { type: 'JUMP', to: 0 },
];

/** What a browser keeps for the app, and whether it takes any more. */
export function failingDevice() {
  const texts = new Map<string, string>();
  return {
    isFull: false,
    getItem: (key: string) => texts.get(key) ?? null,
    setItem(key: string, text: string): void {
      if (this.isFull) throw new DOMException('full', 'QuotaExceededError');
      texts.set(key, text);
    },
  };
}

export type FailingDevice = ReturnType<typeof failingDevice>;

const firstVisit: Start = {
  project: example,
  settings: standardSettings,
  tab: 'edge',
  place: 0,
  answered: [],
};

const still = () => () => {};
const nobodyAround: Around = { tab: 'a', whenHidden: still, guard: () => {}, persist: () => {} };

/** One tab. A reload and a crash are the same to it: nothing is done on the way out. */
export class Tab {
  private readonly device: FailingDevice;
  private store: Store;
  private stops: (() => void)[] = [];

  constructor(device: FailingDevice) {
    this.device = device;
    this.store = this.open();
  }

  private open(): Store {
    const store = openStore(readKept(this.device) ?? firstVisit);
    const keeps = { ...deviceOn(this.device), whenElsewhere: still };
    this.stops = [startKeeping(store, keeps, { notify: () => {}, around: nobodyAround }), store.stop];
    return store;
  }

  send(...events: AppEvent[]): void {
    for (const event of events) this.store.send(event);
  }

  snapshot(): Snapshot {
    return this.store.snapshot();
  }

  crash(): void {
    this.close();
    this.store = this.open();
  }

  close(): void {
    for (const stop of this.stops) stop();
  }
}
