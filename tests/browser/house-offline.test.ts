import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { pageOf } from '../setup/serve.mjs';
import { openApp, serveOwn } from './harness.ts';

/** The browser tells the page before the new worker has tidied up; on a busy machine well before. */
const patience = { timeout: 20_000 };

/** Waits until the worker answers for the page. */
const controlled = (page: Page) => page.waitForFunction(() => navigator.serviceWorker.controller !== null);

const cacheNames = (page: Page) => page.evaluate(() => caches.keys());
const hasWaiting = (page: Page) =>
  page.evaluate(async () => !!(await navigator.serviceWorker.getRegistration())?.waiting);

describe('without a connection', () => {
  it('opens, with a query and a long fragment too, when the server is gone', async () => {
    const server = await serveOwn();
    const app = await openApp({ probe: false }, server.address);
    await controlled(app.page);
    await server.close();
    for (const tail of ['', '?probe', `?a=1#${'x'.repeat(8000)}`]) {
      await app.page.goto('about:blank');
      await app.page.goto(server.address + tail);
      await app.page.waitForSelector('h1');
    }
    app.expectClean();
  });

  it('cannot open what was never visited', async () => {
    const server = await serveOwn();
    await server.close();
    await expect(openApp({ probe: false }, server.address)).rejects.toThrow(/ERR_CONNECTION_REFUSED/);
  });
});

describe('a newer version', () => {
  it('waits until it is told to take over, then leaves nothing old behind', async () => {
    const server = await serveOwn();
    const { page, expectClean } = await openApp({ probe: false }, server.address);
    await controlled(page);
    const [oldCache = ''] = await cacheNames(page);
    expect(oldCache).toMatch(/^ringtrue-[0-9a-f]{12}$/);

    const newCache = 'ringtrue-000000000000';
    const worker = server.pages.get('/sw.js')?.body.toString('utf8') ?? '';
    server.pages.set('/sw.js', pageOf('sw.js', worker.replace(oldCache, newCache)));
    await page.evaluate(async () => {
      await (await navigator.serviceWorker.getRegistration())?.update();
    });
    await expect.poll(() => hasWaiting(page), patience).toBe(true);
    await page.reload();
    expect((await cacheNames(page)).sort()).toEqual([newCache, oldCache].sort());

    await page.evaluate(async () => {
      const taken = new Promise((done) => navigator.serviceWorker.addEventListener('controllerchange', done));
      (await navigator.serviceWorker.getRegistration())?.waiting?.postMessage('take-over');
      await taken;
    });
    await expect.poll(() => cacheNames(page), patience).toEqual([newCache]);
    expectClean();
  });
});
