/** What the page tells by itself: other tabs, a device that keeps nothing, a newer version. */
import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import type { AppEvent } from '../../src/state/snapshot.ts';
import { settle, viewports } from './app.ts';
import { axeCleanInBothThemes, openApp, readSnapshot, sendEvent, serveOwn } from './harness.ts';

const type = (text: string): AppEvent => ({ type: 'TYPE', field: 'side.0', text });
const strip = (page: Page) => page.locator('.notices');
const side = async (page: Page) => (await readSnapshot(page)).project.texts['side.0'];
const keptSide = (page: Page): Promise<string | undefined> =>
  page.evaluate(() => JSON.parse(localStorage.getItem('ringtrue.work') ?? '{}').project?.texts['side.0']);

/** Another tab of the same browser. */
async function openBeside(page: Page): Promise<Page> {
  const beside = await page.context().newPage();
  await beside.goto(page.url());
  await beside.waitForFunction(() => window.ringtrue !== undefined);
  await settle(beside);
  return beside;
}

describe('two tabs with the same work', () => {
  test('both changed: the later one keeps nothing until it is answered, and nothing is lost', async () => {
    const { page: one, expectClean } = await openApp();
    const two = await openBeside(one);
    await sendEvent(one, type('70'));
    expect(await keptSide(one)).toBe('70');
    await expect
      .poll(() => strip(two).textContent())
      .toMatch(/This work was changed in another tab\. Nothing more is kept of this one until you choose\./);
    await sendEvent(two, type('99'));
    await sendEvent(two, type('98'));
    expect(await keptSide(two)).toBe('70');
    expect(await side(two)).toBe('98');
    expect(await side(one)).toBe('70');

    await two.getByRole('button', { name: 'Take that one' }).click();
    expect(await side(two)).toBe('70');
    await expect.poll(() => strip(two).getByRole('button').count()).toBe(0);
    expect(await strip(one).getByRole('button').count()).toBe(0);

    await sendEvent(two, { type: 'UNDO' });
    expect(await side(two)).toBe('98');
    expect(await keptSide(two)).toBe('98');
    await expect.poll(() => strip(one).textContent()).toMatch(/changed in another tab/);
    await one.getByRole('button', { name: 'Keep this one' }).click();
    expect(await keptSide(one)).toBe('70');
    await expect.poll(() => strip(two).textContent()).toMatch(/changed in another tab/);
    expectClean();
  });

  test('of which one would lose its changes asks before it is closed', async () => {
    const { page: one } = await openApp();
    const two = await openBeside(one);
    await sendEvent(one, type('70'));
    await expect.poll(() => strip(two).getByRole('button').count()).toBe(2);
    // Browsers ask only where the person has done something in the page.
    await two.getByRole('tab', { name: 'Walk it' }).click();
    await sendEvent(two, type('99'));
    const asked = two.waitForEvent('dialog');
    await two.close({ runBeforeUnload: true });
    const dialog = await asked;
    expect(dialog.type()).toBe('beforeunload');
    await dialog.dismiss();
    expect(await side(two)).toBe('99');
    await two.getByRole('button', { name: 'Keep this one' }).click();
    const closed = two.waitForEvent('close');
    await two.close({ runBeforeUnload: true });
    await closed;
    expect(await keptSide(one)).toBe('99');
  });

  test('of which one only looks are left alone', async () => {
    const { page: one } = await openApp();
    await sendEvent(one, type('70'));
    const two = await openBeside(one);
    expect(await side(two)).toBe('70');
    await two.getByRole('tab', { name: 'Walk it' }).click();
    await sendEvent(one, type('71'));
    expect(await keptSide(one)).toBe('71');
    expect(await strip(one).getByRole('button').count()).toBe(0);
  });
});

test.each(['{"version":99,"more":"work"}', '{"version":1,"proj'])(
  'kept work that cannot be read, %j, is told of, and is handed out as a file just as it was',
  async (text) => {
    const { page, expectClean } = await openApp();
    await page.evaluate((kept) => localStorage.setItem('ringtrue.work', kept), text);
    await page.reload();
    await page.waitForFunction(() => window.ringtrue !== undefined);
    await settle(page);
    await expect.poll(() => strip(page).textContent()).toMatch(/It is set aside, and this is an example\./);
    await sendEvent(page, type('70'));
    const begun = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save it as a file' }).click();
    expect(await readFile(await (await begun).path(), 'utf8')).toBe(text);
    await page.reload();
    await page.waitForFunction(() => window.ringtrue !== undefined);
    expect(await side(page)).toBe('70');
    expect(await strip(page).getByRole('button').count()).toBe(0);
    expect(await page.evaluate(() => localStorage.getItem('ringtrue.set-aside'))).toBe(text);
    expectClean();
  },
);

describe('a device that keeps nothing', () => {
  test('because it is full says so once, and the work goes on', async () => {
    const { page, expectClean } = await openApp();
    await page.evaluate(() => {
      let piece = 'x'.repeat(1 << 20);
      for (let part = 0; piece.length > 0; part++) {
        try {
          localStorage.setItem(`filling-${part}`, piece);
        } catch {
          piece = piece.slice(1 + piece.length / 2);
        }
      }
    });
    await sendEvent(page, type('70'));
    await expect.poll(() => strip(page).textContent()).toMatch(/This device keeps nothing more\./);
    await page.getByRole('button', { name: 'All right' }).click();
    await sendEvent(page, type('71'));
    await settle(page);
    expect(await strip(page).getByRole('button').count()).toBe(0);
    expect(await side(page)).toBe('71');
    await page.evaluate(() => {
      for (const key of Object.keys(localStorage))
        if (key.startsWith('filling-')) localStorage.removeItem(key);
    });
    await sendEvent(page, { type: 'SHOW', tab: 'walk' });
    expect(await keptSide(page)).toBe('71');
    expectClean();
  });

  test('because it is closed opens all the same, and says so once', async () => {
    const { page } = await openApp({ fresh: true, wait: false });
    await page.addInitScript(() => {
      Object.defineProperty(window, 'localStorage', {
        get() {
          throw new DOMException('closed', 'SecurityError');
        },
      });
    });
    await page.reload();
    await page.waitForFunction(() => window.ringtrue !== undefined);
    await settle(page);
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
      const two = await openBeside(one);
      await two.setViewportSize(viewports[device]);
      await sendEvent(one, { type: 'JUMP', to: 41 });
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
    const page = await without(/\/cloth-[^/]*\.js|\/panel-[^/]*\.js|\/take-along-[^/]*\.js/);
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
