/** What the page tells by itself: other tabs, a device that keeps nothing, a newer version. */
import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import type { AppEvent } from '../../src/state/snapshot.ts';
import { settle, viewports } from './app.ts';
import { axeCleanInBothThemes, openApp, readSnapshot, sendEvent, serveOwn } from './harness.ts';
import { onDisk, reopen } from './shelved.ts';

const type = (text: string): AppEvent => ({ type: 'TYPE', field: 'side.0', text });
const strip = (page: Page) => page.locator('.notices');
const side = async (page: Page) => (await readSnapshot(page)).project.texts['side.0'];
const keptSide = (page: Page): Promise<string | undefined> =>
  page.evaluate(() => JSON.parse(localStorage.getItem('ringtrue.work') ?? '{}').project?.texts['side.0']);

const fillSimpleStore = (page: Page): Promise<void> =>
  page.evaluate(() => {
    let piece = 'x'.repeat(1 << 20);
    for (let part = 0; piece.length > 0; part++) {
      try {
        localStorage.setItem(`filling-${part}`, piece);
      } catch {
        piece = piece.slice(1 + piece.length / 2);
      }
    }
  });

/** A browser that does not lend the page some of its stores. */
async function openWithout(...stores: ('localStorage' | 'indexedDB')[]): Promise<Page> {
  const { page } = await openApp({ fresh: true, wait: false });
  await page.addInitScript((closed) => {
    for (const store of closed)
      Object.defineProperty(window, store, {
        get() {
          throw new DOMException('closed', 'SecurityError');
        },
      });
  }, stores);
  await reopen(page);
  return page;
}

/** Another tab of the same browser. */
async function openBeside(page: Page): Promise<Page> {
  const beside = await page.context().newPage();
  await beside.goto(page.url());
  await beside.waitForFunction(() => window.ringtrue !== undefined);
  await settle(beside);
  return beside;
}

describe('two tabs with the same panel', () => {
  test('both changed: the later one is told, is a panel of its own, and nothing is lost', async () => {
    const { page: one, expectClean } = await openApp();
    await sendEvent(one, type('60'));
    await onDisk(one, ['60']);
    const two = await openBeside(one);
    await sendEvent(one, type('70'));
    await expect
      .poll(() => strip(two).textContent())
      .toMatch(/This panel was changed in another tab\. What you do here is kept as a panel of its own\./);
    await sendEvent(two, type('99'));
    await onDisk(one, ['70', '99']);
    expect(await strip(one).getByRole('button').count()).toBe(0);

    await two.getByRole('button', { name: 'Put this one in its place' }).click();
    await onDisk(one, ['70', '99']);
    await sendEvent(one, type('71'));
    await onDisk(one, ['70', '71', '99']);
    await expect.poll(() => strip(one).textContent()).toMatch(/changed in another tab/);
    await one.getByRole('button', { name: 'Take that one' }).click();
    await expect.poll(() => side(one)).toBe('99');
    await onDisk(one, ['70', '71', '99']);
    expectClean();
  });

  test('of which the later one is closed without a question, for it is kept', async () => {
    const { page: one } = await openApp();
    await sendEvent(one, type('60'));
    await onDisk(one, ['60']);
    const two = await openBeside(one);
    await two.getByRole('tab', { name: 'Walk it' }).click();
    await sendEvent(one, type('70'));
    await sendEvent(two, type('99'));
    await onDisk(one, ['70', '99']);
    const closed = two.waitForEvent('close');
    await two.close({ runBeforeUnload: true });
    await closed;
  });

  test('of which one only looks and walks are left alone', async () => {
    const { page: one } = await openApp();
    await sendEvent(one, type('70'));
    const two = await openBeside(one);
    expect(await side(two)).toBe('70');
    await two.getByRole('tab', { name: 'Walk it' }).click();
    await sendEvent(two, { type: 'JUMP', to: 9 });
    await sendEvent(one, type('71'));
    await onDisk(one, ['71']);
    expect(await strip(one).getByRole('button').count()).toBe(0);
  });
});

describe('kept work that cannot be read', () => {
  const opened = async (text: string) => {
    const app = await openApp();
    await app.page.evaluate((kept) => localStorage.setItem('ringtrue.work', kept), text);
    await reopen(app.page);
    await expect
      .poll(() => strip(app.page).textContent())
      .toMatch(/It is set aside, and this is an example\./);
    await sendEvent(app.page, type('70'));
    return app;
  };
  const savedText = async (page: Page): Promise<string> => {
    const begun = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save it as a file' }).click();
    return readFile(await (await begun).path(), 'utf8');
  };

  test('for it is damaged is told of, handed out as a file just as it was, and stays in the list', async () => {
    const text = '{"version":1,"proj';
    const { page, expectClean } = await opened(text);
    expect(await savedText(page)).toBe(text);
    await onDisk(page, ['70', undefined]);
    await reopen(page);
    expect(await side(page)).toBe('70');
    expect(await strip(page).getByRole('button').count()).toBe(0);
    await page.getByRole('button', { name: /Your panels$/ }).click();
    await page.getByText('This one cannot be read by this version of the page.').waitFor();
    expect(await savedText(page)).toBe(text);
    expectClean();
  });

  test('for a later version kept it is never written over', async () => {
    const text = '{"version":99,"more":"work"}';
    const { page } = await opened(text);
    expect(await savedText(page)).toBe(text);
    await onDisk(page, ['70', undefined]);
    expect(await page.evaluate(() => localStorage.getItem('ringtrue.work'))).toBe(text);
    await reopen(page);
    await expect.poll(() => side(page)).toBe('70');
    await expect.poll(() => strip(page).textContent()).toMatch(/this is the last panel that can\./);
    expect(await page.evaluate(() => localStorage.getItem('ringtrue.work'))).toBe(text);
  });
});

test('a database of a later version is given way to and left alone, the work goes on, and that is told', async () => {
  const { page, expectClean } = await openApp();
  await sendEvent(page, type('70'));
  await onDisk(page, ['70']);
  // The open page closes its own connection: else this would wait for ever.
  await page.evaluate(
    () =>
      new Promise<void>((done, fail) => {
        const asked = indexedDB.open('ringtrue', 2);
        asked.onerror = () => fail(asked.error);
        asked.onsuccess = () => {
          asked.result.close();
          done();
        };
      }),
  );
  await sendEvent(page, type('71'));
  await settle(page);
  await reopen(page);
  expect(await side(page)).toBe('71');
  await expect
    .poll(() => strip(page).textContent())
    .toMatch(/Your panels are kept by a newer version of this page\./);
  expectClean();
});

describe('a device that keeps nothing', () => {
  test('more in its simple store keeps it in its database, and opens with that', async () => {
    const { page, expectClean } = await openApp();
    await sendEvent(page, type('69'));
    await onDisk(page, ['69']);
    await fillSimpleStore(page);
    await sendEvent(page, { type: 'TYPE', field: 'pattern.notes', text: 'x'.repeat(4000) });
    await sendEvent(page, type('70'));
    await onDisk(page, ['70']);
    expect(await keptSide(page)).toBe('69');
    expect(await strip(page).getByRole('button').count()).toBe(0);
    await reopen(page);
    await expect.poll(() => side(page)).toBe('70');
    expectClean();
  });

  test('because it is full says so once, asks before it is left, hands the work out, and goes on', async () => {
    const { page, expectClean } = await openApp();
    await fillSimpleStore(page);
    const devtools = await page.context().newCDPSession(page);
    const origin = new URL(page.url()).origin;
    await devtools.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: 1 });
    await page.getByRole('tab', { name: 'Walk it' }).click();
    await sendEvent(page, type('70'));
    await expect.poll(() => strip(page).textContent()).toMatch(/This device keeps nothing more\./);
    const begun = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save it as a file' }).click();
    expect(await readFile(await (await begun).path(), 'utf8')).toContain('"side.0": "70"');
    await sendEvent(page, type('71'));
    await settle(page);
    expect(await strip(page).getByRole('button').count()).toBe(0);
    const asked = page.waitForEvent('dialog');
    await page.close({ runBeforeUnload: true });
    const dialog = await asked;
    expect(dialog.type()).toBe('beforeunload');
    await dialog.dismiss();
    expect(await side(page)).toBe('71');
    await devtools.send('Storage.overrideQuotaForOrigin', { origin });
    await sendEvent(page, type('72'));
    await onDisk(page, ['72']);
    expectClean();
  });

  test('because its simple store is closed keeps it in its database', async () => {
    const page = await openWithout('localStorage');
    await sendEvent(page, type('70'));
    await onDisk(page, ['70']);
    await reopen(page);
    await expect.poll(() => side(page)).toBe('70');
    expect(await strip(page).getByRole('button').count()).toBe(0);
  });

  test('because it lends no database keeps one panel, and says so once', async () => {
    const page = await openWithout('indexedDB');
    await sendEvent(page, type('70'));
    await expect.poll(() => strip(page).textContent()).toMatch(/This browser keeps one panel only/);
    await page.getByRole('button', { name: 'All right' }).click();
    await sendEvent(page, type('71'));
    await reopen(page);
    expect(await side(page)).toBe('71');
    await page.getByRole('button', { name: /Your panels$/ }).click();
    await page.getByText('This browser lends the page no database').waitFor();
    expect(await page.getByRole('button', { name: 'New panel' }).count()).toBe(0);
  });

  test('but one panel opens a file all the same, and undo brings back what was there', async () => {
    const page = await openWithout('indexedDB');
    await sendEvent(page, type('70'));
    await page.getByRole('button', { name: /Your panels$/ }).click();
    const begun = page.waitForEvent('download');
    const sheet = page.getByRole('dialog', { name: 'Your panels' });
    await sheet.getByRole('button', { name: 'Save it as a file' }).click();
    const text = await readFile(await (await begun).path(), 'utf8');
    const chooser = page.waitForEvent('filechooser');
    await sheet.getByRole('button', { name: 'Open a file' }).click();
    const buffer = Buffer.from(text.replace('"side.0": "70"', '"side.0": "90"'));
    await (await chooser).setFiles({ name: 'mine.json', mimeType: 'application/json', buffer });
    await expect.poll(() => sheet.getByRole('status').textContent()).toMatch(/Undo brings yours back\./);
    expect(await side(page)).toBe('90');
    await sendEvent(page, { type: 'UNDO' });
    expect(await side(page)).toBe('70');
  });

  test('because both are closed opens all the same, and says so', async () => {
    const page = await openWithout('indexedDB', 'localStorage');
    await sendEvent(page, type('70'));
    await expect.poll(() => strip(page).textContent()).toMatch(/keeps nothing more/);
    expect(await side(page)).toBe('70');
  });
});

test('the browser is asked once to keep what is kept, after the first change', async () => {
  const { page } = await openApp({ fresh: true, wait: false });
  await page.addInitScript(() => {
    const asked = { times: 0 };
    Object.assign(window, { asked });
    StorageManager.prototype.persist = async () => {
      asked.times += 1;
      return true;
    };
  });
  await page.reload();
  await page.waitForFunction(() => window.ringtrue !== undefined);
  await settle(page);
  const times = () => page.evaluate(() => (window as unknown as { asked: { times: number } }).asked.times);
  await sendEvent(page, { type: 'SHOW', tab: 'walk' });
  expect(await times()).toBe(0);
  await sendEvent(page, type('70'));
  await sendEvent(page, type('71'));
  expect(await times()).toBe(1);
});

test('a newer version is offered, waits for a Yes, and the work is there after it', async () => {
  const server = await serveOwn();
  const { page } = await openApp({}, server.address);
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
  await sendEvent(page, type('70'));
  server.write('sw.js', server.read('sw.js').replace(/ringtrue-[0-9a-f]{12}/, 'ringtrue-000000000000'));
  await page.evaluate(async () => {
    await (await navigator.serviceWorker.getRegistration())?.update();
  });
  await expect
    .poll(() => strip(page).textContent(), { timeout: 20_000 })
    .toMatch(/A newer version is ready\./);
  const loaded = page.waitForEvent('load', { timeout: 20_000 });
  await page.getByRole('button', { name: 'Use it' }).click();
  await loaded;
  await page.waitForFunction(() => window.ringtrue !== undefined);
  expect(await side(page)).toBe('70');
});

describe('the strip', () => {
  test.each(['phone', 'tablet', 'desktop'] as const)(
    'on a %s covers nothing, keeps Next in reach, and axe finds nothing in both themes',
    async (device) => {
      const { page: one } = await openApp({ viewport: viewports[device] });
      await sendEvent(one, { type: 'SHOW', tab: 'walk' });
      await sendEvent(one, { type: 'JUMP', to: 40 });
      await onDisk(one, ['64']);
      const two = await openBeside(one);
      await two.setViewportSize(viewports[device]);
      await sendEvent(one, type('70'));
      await strip(two).getByRole('button').first().waitFor();
      await two.bringToFront();
      await settle(two);
      const boxes = await two.evaluate(() => {
        const box = (selector: string) => document.querySelector(selector)!.getBoundingClientRect();
        return { strip: box('.notices'), page: box('.page'), next: box('.next'), height: innerHeight };
      });
      expect(boxes.page.top).toBeGreaterThanOrEqual(boxes.strip.bottom - 1);
      expect(boxes.next.bottom).toBeLessThanOrEqual(boxes.height);
      for (const button of await strip(two).getByRole('button').all())
        expect((await button.boundingBox())?.height).toBeGreaterThanOrEqual(44);
      await axeCleanInBothThemes(two);
    },
  );
});

describe('a part that does not come', () => {
  const without = async (part: RegExp) => {
    const app = await openApp({ fresh: true, wait: false });
    await app.page.context().route(part, (route) => route.abort());
    await app.page.evaluate(async () => {
      for (const worker of await navigator.serviceWorker.getRegistrations()) await worker.unregister();
      for (const name of await caches.keys()) await caches.delete(name);
    });
    await app.page.reload();
    return app.page;
  };
  const again = (page: Page) => page.getByRole('button', { name: 'Open the page again' });

  test('of what comes after the first look is told, and comes when the page is opened again', async () => {
    const page = await without(/\/later-[^/]*\.js/);
    await expect.poll(() => strip(page).textContent()).toMatch(/A part of the page could not be fetched\./);
    await page.context().unrouteAll();
    await again(page).click();
    await expect.poll(() => page.getByText('More choices for the back').count()).toBe(1);
  });

  test('of a place is told in the place, and what was typed is there again', async () => {
    const page = await without(/\/panel-[^/]*\.js/);
    await page.waitForFunction(() => window.ringtrue !== undefined);
    await sendEvent(page, type('70'));
    await page.getByRole('tab', { name: 'Take along' }).click();
    await expect
      .poll(() => page.getByRole('tabpanel').textContent())
      .toMatch(/This part could not be fetched\./);
    await page.context().unrouteAll();
    await page.getByRole('tabpanel').getByRole('button', { name: 'Open the page again' }).click();
    await page.waitForFunction(() => window.ringtrue !== undefined);
    await expect.poll(() => page.getByRole('tabpanel').textContent()).not.toMatch(/could not be fetched/);
    expect(await side(page)).toBe('70');
  });
});
