import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { registerOffline, type TakeOver } from '../../src/offline/register.ts';

/** A browser's service workers as far as the page sees them, moved by hand. */
function standIn(hasController: boolean) {
  const worker = Object.assign(new EventTarget(), { state: 'installing', postMessage: vi.fn() });
  const registration = Object.assign(new EventTarget(), {
    waiting: null as typeof worker | null,
    installing: null as typeof worker | null,
  });
  const workers = Object.assign(new EventTarget(), {
    controller: hasController ? worker : null,
    register: vi.fn(async () => registration),
  });
  return { worker, registration, workers };
}

/** Lets the registration's promise come through. */
const soon = () => new Promise((done) => setTimeout(done));

describe('keeping the pages for offline', () => {
  const reload = vi.fn();
  const offered: TakeOver[] = [];
  const onUpdate = (takeOver: TakeOver) => offered.push(takeOver);

  beforeEach(() => {
    offered.length = 0;
    reload.mockClear();
    vi.stubEnv('DEV', false);
    vi.stubGlobal('location', { reload });
  });
  afterEach(() => {
    vi.unstubAllEnvs();
    vi.unstubAllGlobals();
  });

  async function start(hasController: boolean, before?: (stand: ReturnType<typeof standIn>) => void) {
    const stand = standIn(hasController);
    before?.(stand);
    vi.stubGlobal('navigator', { serviceWorker: stand.workers });
    registerOffline(onUpdate);
    await soon();
    return stand;
  }

  it('registers the one worker, asking the server each time', async () => {
    const { workers } = await start(false);
    expect(workers.register).toHaveBeenCalledWith('./sw.js', { updateViaCache: 'none' });
  });

  it('tells the worker that answers that a page has opened', async () => {
    const active = { postMessage: vi.fn() };
    await start(true, ({ registration }) => Object.assign(registration, { active }));
    expect(active.postMessage).toHaveBeenCalledWith('opened');
  });

  it('names its policy where scripts need one', async () => {
    const createPolicy = vi.fn((_name: string, rules: { createScriptURL(address: string): string }) => ({
      createScriptURL: (address: string) => `trusted ${rules.createScriptURL(address)}`,
    }));
    vi.stubGlobal('trustedTypes', { createPolicy });
    const { workers } = await start(false);
    expect(createPolicy.mock.calls.map(([name]) => name)).toEqual(['sw']);
    expect(workers.register).toHaveBeenCalledWith('trusted ./sw.js', { updateViaCache: 'none' });
  });

  it('offers nothing on the first visit', async () => {
    const { workers, registration, worker } = await start(false);
    registration.installing = worker;
    registration.dispatchEvent(new Event('updatefound'));
    worker.state = 'installed';
    worker.dispatchEvent(new Event('statechange'));
    workers.dispatchEvent(new Event('controllerchange'));
    expect(offered).toEqual([]);
    expect(reload).not.toHaveBeenCalled();
  });

  it('offers a version that waits already', async () => {
    await start(true, ({ registration, worker }) => {
      registration.waiting = worker;
    });
    expect(offered).toHaveLength(1);
  });

  it('offers a newer version once it is fetched whole, and starts anew only when told', async () => {
    const { workers, registration, worker } = await start(true);
    registration.installing = worker;
    registration.dispatchEvent(new Event('updatefound'));
    expect(offered).toHaveLength(0);
    worker.state = 'installed';
    worker.dispatchEvent(new Event('statechange'));
    expect(offered).toHaveLength(1);
    expect(worker.postMessage).not.toHaveBeenCalled();
    offered[0]?.();
    expect(worker.postMessage).toHaveBeenCalledWith('take-over');
    expect(reload).not.toHaveBeenCalled();
    workers.dispatchEvent(new Event('controllerchange'));
    expect(reload).toHaveBeenCalledOnce();
  });

  it('does not start anew when another tab agreed, but offers to', async () => {
    const { workers } = await start(true);
    workers.dispatchEvent(new Event('controllerchange'));
    expect(reload).not.toHaveBeenCalled();
    expect(offered).toHaveLength(1);
    offered[0]?.();
    expect(reload).toHaveBeenCalledOnce();
  });

  it('does nothing where there are no service workers', () => {
    vi.stubGlobal('navigator', {});
    expect(() => registerOffline(onUpdate)).not.toThrow();
  });

  it('stays quiet when the browser refuses', async () => {
    await start(false, ({ workers }) => workers.register.mockRejectedValue(new Error('refused')));
    expect(offered).toEqual([]);
  });
});
