/**
 * Keeps the pages on the device, so that they open without a connection. A newer version is fetched in
 * the background and waits: code is never changed under a half-finished count.
 */

/** Loads the waiting version. The page starts anew, so save first. */
export type TakeOver = () => void;

/** The one address ever given to the browser as a script. */
const workerAddress = './sw.js';

type ScriptPolicy = { createScriptURL(address: string): string };
type PolicyMaker = {
  createPolicy(name: string, rules: { createScriptURL(address: string): string }): ScriptPolicy;
};

/** The worker's address in the form that the content policy asks for, where the browser knows that form. */
function trustedAddress(): string {
  const maker = (globalThis as { trustedTypes?: PolicyMaker }).trustedTypes;
  if (!maker) return workerAddress;
  return maker.createPolicy('sw', { createScriptURL: () => workerAddress }).createScriptURL('');
}

/** Calls back once, when a worker has been fetched whole. */
function whenInstalled(worker: ServiceWorker, then: () => void): void {
  const look = () => {
    if (worker.state !== 'installed') return;
    worker.removeEventListener('statechange', look);
    then();
  };
  worker.addEventListener('statechange', look);
  look();
}

/**
 * Starts keeping the pages. Does nothing where the browser cannot, or on the developer's server.
 * @param onUpdate called when a newer version waits; call what it is given once the person agrees.
 */
export function registerOffline(onUpdate: (takeOver: TakeOver) => void): void {
  const workers = navigator.serviceWorker;
  if (!workers || import.meta.env.DEV) return;
  let controlled = workers.controller !== null;
  let agreed = false;

  const offer = (waiting: ServiceWorker) =>
    onUpdate(() => {
      agreed = true;
      waiting.postMessage('take-over');
    });

  // Another tab may have agreed: this page then still runs the old code, and is offered the new one.
  workers.addEventListener('controllerchange', () => {
    if (agreed) location.reload();
    else if (controlled) onUpdate(() => location.reload());
    controlled = true;
  });

  const start = async () => {
    const registration = await workers.register(trustedAddress(), { updateViaCache: 'none' });
    registration.active?.postMessage('opened');
    if (registration.waiting && controlled) offer(registration.waiting);
    registration.addEventListener('updatefound', () => {
      const coming = registration.installing;
      // Without a controller this is the first visit: there is nothing older to replace.
      if (coming && controlled) whenInstalled(coming, () => offer(coming));
    });
  };
  // Without the worker everything still works while online: nothing to tell the person.
  start().catch(() => {});
}
