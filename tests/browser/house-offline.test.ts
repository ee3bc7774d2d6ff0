import { rmSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { builtInto, withOther } from './built.ts';
import { openApp, serveOwn } from './harness.ts';
import type { Server } from './serve.ts';

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
      await app.page.waitForLoadState('networkidle');
    }
    app.expectClean();
  });

  it('cannot open what was never visited', async () => {
    const server = await serveOwn();
    await server.close();
    await expect(openApp({ probe: false }, server.address)).rejects.toThrow(/ERR_CONNECTION_REFUSED/);
  });
});

const newCache = 'ringtrue-000000000000';

/** Puts a newer build on the server: as this one, without the files that `isGone` names. Answers the older cache. */
async function renew(
  server: Server,
  page: Page,
  isGone: (name: string) => boolean = () => false,
): Promise<string> {
  const worker = server.read('sw.js');
  const { cache, files } = builtInto(worker);
  for (const name of files.filter(isGone)) rmSync(join(server.folder, name));
  server.write('sw.js', withOther(worker, { cache: newCache, files: files.filter((name) => !isGone(name)) }));
  await page.evaluate(async () => {
    await (await navigator.serviceWorker.getRegistration())?.update();
  });
  await expect.poll(() => hasWaiting(page), patience).toBe(true);
  return cache;
}

const useNewer = (page: Page) => page.getByRole('button', { name: 'Use it' }).click();

describe('a newer version', () => {
  it('waits until it is told to take over, then leaves nothing old behind', async () => {
    const server = await serveOwn();
    const { page, expectClean } = await openApp({ probe: false }, server.address);
    await controlled(page);
    expect(await cacheNames(page)).toEqual([expect.stringMatching(/^ringtrue-[0-9a-f]{12}$/)]);
    const oldCache = await renew(server, page);
    await page.reload();
    expect((await cacheNames(page)).sort()).toEqual([newCache, oldCache].sort());
    const loaded = page.waitForEvent('load', patience);
    await useNewer(page);
    await loaded;
    await expect.poll(() => cacheNames(page), patience).toEqual([newCache]);
    expectClean();
  });

  it('taken in one tab leaves the other what it still needs, until that one is closed', async () => {
    const server = await serveOwn();
    const { page: one, expectClean } = await openApp({}, server.address);
    await controlled(one);
    const two = await one.context().newPage();
    await two.goto(one.url());
    await controlled(two);
    const oldCache = await renew(server, two, (name) => /\/assets\/.*lessons/.test(name));
    const loaded = two.waitForEvent('load', patience);
    await useNewer(two);
    await loaded;
    await expect.poll(() => one.locator('.notices').textContent(), patience).toMatch(/newer version/);
    expect((await cacheNames(one)).sort()).toEqual([newCache, oldCache].sort());
    await one.getByRole('tab', { name: 'Walk it' }).click();
    await one.getByRole('button', { name: 'Open the lessons' }).click();
    await one.locator('.lesson-card').first().waitFor();
    expectClean();
    await one.close();
    await two.reload();
    await expect.poll(() => cacheNames(two), patience).toEqual([newCache]);
  });
});

describe('an address below the root', () => {
  it('has nothing while the server is there, and leads to the app when it is gone', async () => {
    const server = await serveOwn();
    const { page } = await openApp({}, server.address);
    await controlled(page);
    expect((await fetch(`${server.address}some/where`)).status).toBe(404);
    await page.goto(`${server.address}some/where`).catch(() => {});
    expect(await page.locator('.recipe').count()).toBe(0);
    await server.close();
    // A page of its own: the first one may still be on its way to the browser's page of errors.
    const later = await page.context().newPage();
    await later.goto(`${server.address}some/where`);
    expect(later.url()).toBe(server.address);
    await later.locator('.recipe').waitFor();
  });
});
