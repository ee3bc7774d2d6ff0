/** What the browser's database holds, looked at from outside the app. */
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { settle } from './app.ts';

/** Counts of side 1 of all panels in the database, in no order; undefined for what cannot be read. */
export const shelved = (page: Page): Promise<(string | undefined)[]> =>
  page.evaluate(async () => {
    const asked = indexedDB.open('ringtrue');
    const database = await new Promise<IDBDatabase>((done, fail) => {
      asked.onsuccess = () => done(asked.result);
      asked.onerror = () => fail(asked.error);
    });
    const all = database.transaction('panels').objectStore('panels').getAll();
    await new Promise((done) => {
      all.onsuccess = done;
    });
    database.close();
    return all.result.map(({ text }) => {
      try {
        return JSON.parse(text).project?.texts['side.0'];
      } catch {
        return undefined;
      }
    });
  });
export const onDisk = (page: Page, sides: (string | undefined)[]) =>
  expect.poll(async () => (await shelved(page)).sort()).toEqual(sides);

export async function reopen(page: Page): Promise<void> {
  await page.reload();
  await page.waitForFunction(() => window.ringtrue !== undefined);
  await settle(page);
}
