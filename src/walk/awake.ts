/**
 * Keeping the screen on while the maker works: only when asked for, only while the page is seen.
 *
 * A browser lets go of the lock whenever the page is hidden and its sentinel is then used up, so a new one
 * is asked for when the page is seen again. What is told is what is really held, never what was wished.
 */
export type AwakeState = {
  /** The person wants the screen kept on. */
  wanted: boolean;
  /** It really is. */
  held: boolean;
  /** Why it is not, though wanted. */
  trouble: 'none' | 'missing' | 'refused';
};

type Sentinel = {
  readonly released: boolean;
  release(): Promise<unknown>;
  addEventListener(type: 'release', listener: () => void): void;
};

/** What the browser has to offer; `request` is null where it has no wake lock. */
export type AwakeDevice = {
  request: (() => Promise<Sentinel>) | null;
  visible(): boolean;
  /** Calls when the page comes into or out of sight; gives back how to stop. */
  onSight(listener: () => void): () => void;
};

export type Awake = { state(): AwakeState; want(on: boolean): void; stop(): void };

/** `onChange` is called whenever the state is another. */
export function createAwake(onChange: () => void, device: AwakeDevice = browserAwake()): Awake {
  let state: AwakeState = { wanted: false, held: false, trouble: 'none' };
  let sentinel: Sentinel | null = null;
  let asking = false;

  const become = (next: Partial<AwakeState>): void => {
    const changed = { ...state, ...next };
    if (changed.wanted === state.wanted && changed.held === state.held && changed.trouble === state.trouble)
      return;
    state = changed;
    onChange();
  };
  const letGo = (): void => {
    const held = sentinel;
    sentinel = null;
    held?.release().catch(() => {});
    become({ held: false });
  };
  const take = (taken: Sentinel): void => {
    // Asked for and no longer wanted, or hidden in the meantime.
    if (!state.wanted || !device.visible()) {
      taken.release().catch(() => {});
      return;
    }
    sentinel = taken;
    taken.addEventListener('release', () => {
      if (sentinel === taken) sentinel = null;
      if (sentinel === null) become({ held: false });
    });
    become({ held: !taken.released, trouble: 'none' });
  };
  const ask = async (): Promise<void> => {
    if (!state.wanted || sentinel !== null || asking || !device.visible()) return;
    if (device.request === null) {
      become({ trouble: 'missing' });
      return;
    }
    asking = true;
    try {
      take(await device.request());
    } catch {
      become({ held: false, trouble: 'refused' });
    } finally {
      asking = false;
    }
    // Put off and on again, or hidden and seen again, while the first request was under way.
    if (state.trouble === 'none') void ask();
  };
  const stopWatching = device.onSight(() => {
    if (!device.visible()) return;
    become({ trouble: 'none' });
    void ask();
  });
  return {
    state: () => state,
    want: (on) => {
      become({ wanted: on, trouble: 'none' });
      if (on) void ask();
      else letGo();
    },
    stop: () => {
      stopWatching();
      state = { ...state, wanted: false };
      letGo();
    },
  };
}

/** What the switch says beside it: the real state. */
export function sayAwake({ wanted, held, trouble }: AwakeState): string {
  if (held) return 'The screen stays on.';
  if (!wanted) return 'The screen goes dark as it usually does.';
  if (trouble === 'missing') return 'This browser cannot keep the screen on.';
  if (trouble === 'refused') return 'Your device keeps the screen as it is: its battery may be low.';
  return 'The screen stays on as soon as this page is in sight.';
}

const browserAwake = (): AwakeDevice => ({
  request: 'wakeLock' in navigator ? () => navigator.wakeLock.request('screen') : null,
  visible: () => document.visibilityState === 'visible',
  onSight: (listener) => {
    document.addEventListener('visibilitychange', listener);
    return () => document.removeEventListener('visibilitychange', listener);
  },
});
