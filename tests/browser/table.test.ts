/** The drawing on machines that lose their graphics, or have none; and under a wheel. */
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { openApp, readRenderers, sendEvent, settle, viewports } from './harness.ts';

/** Share of pixels in the drawing that differ from its background. Read off a picture, as an eye would. */
async function inked(page: Page): Promise<number> {
  const board = page.locator('#table');
  const picture = (await board.screenshot()).toString('base64');
  return page.evaluate(async (data) => {
    const bytes = Uint8Array.from(atob(data), (letter) => letter.charCodeAt(0));
    const image = await createImageBitmap(new Blob([bytes], { type: 'image/png' }));
    const canvas = new OffscreenCanvas(image.width, image.height);
    const context = canvas.getContext('2d') as OffscreenCanvasRenderingContext2D;
    context.drawImage(image, 0, 0);
    const pixels = context.getImageData(0, 0, image.width, image.height).data;
    const ground = pixels.slice(4 * 60, 4 * 60 + 3);
    let other = 0;
    for (let i = 0; i < pixels.length; i += 4)
      if (Math.abs(pixels[i]! - ground[0]!) + Math.abs(pixels[i + 1]! - ground[1]!) > 40) other++;
    return other / (pixels.length / 4);
  }, picture);
}

describe('the drawing', () => {
  test('uses one graphics context, and comes back each time it is lost, twenty times over', async () => {
    const { page, expectClean } = await openApp({ graphics: true });
    const [renderer, ...others] = await readRenderers(page);
    expect(renderer).toMatch(/^webgl/);
    expect(others).toEqual([]);
    const before = await inked(page);
    expect(before).toBeGreaterThan(0.02);
    await page.evaluate(async () => {
      const canvas = document.querySelector('canvas') as HTMLCanvasElement;
      const context = (canvas.getContext('webgl2') ?? canvas.getContext('webgl')) as WebGLRenderingContext;
      const loss = context.getExtension('WEBGL_lose_context');
      const heard = (event: string) =>
        new Promise((done) => canvas.addEventListener(event, done, { once: true }));
      for (let time = 0; time < 20; time++) {
        const lost = heard('webglcontextlost');
        loss?.loseContext();
        await lost;
        const restored = heard('webglcontextrestored');
        await new Promise((done) => setTimeout(done, 50));
        loss?.restoreContext();
        await restored;
      }
    });
    await settle(page);
    expect(Math.abs((await inked(page)) - before)).toBeLessThan(before * 0.05);
    await sendEvent(page, { type: 'TYPE', field: 'side.0', text: '30' });
    await settle(page);
    expect(await inked(page)).toBeGreaterThan(0.02);
    expectClean();
  });

  test('is the same without any graphics context, and nothing is said', async () => {
    const withGraphics = await openApp({ graphics: true });
    const before = await inked(withGraphics.page);
    const { page, expectClean, record } = await openApp();
    expect(await readRenderers(page)).toEqual(['2d']);
    expect(Math.abs((await inked(page)) - before)).toBeLessThan(before * 0.15);
    expect(record.requests.filter((address) => /pixi/.test(address))).toEqual([]);
    await sendEvent(page, { type: 'NEXT' });
    expectClean();
  });
});

describe('a wheel over the drawing', () => {
  const scrolled = (page: Page) => page.evaluate(() => document.scrollingElement?.scrollTop ?? 0);
  const zoomed = (page: Page) => page.locator('[data-view="whole"]').evaluate((pad) => pad.style.touchAction);

  test('scrolls a page that scrolls, and zooms the drawing once it has the focus', async () => {
    const { page, expectClean } = await openApp({ viewport: viewports.phone, motion: true });
    const pad = page.locator('[data-view="whole"]');
    await pad.hover();
    await page.mouse.wheel(0, -300);
    expect(await zoomed(page)).toBe('pan-y');
    const before = await scrolled(page);
    await page.mouse.wheel(0, 120);
    await expect.poll(() => scrolled(page)).toBeGreaterThan(before);
    await pad.focus();
    await pad.hover();
    await page.mouse.wheel(0, -300);
    await expect.poll(() => zoomed(page)).toBe('none');
    expectClean();
  });

  test('zooms at once where no page scrolls', async () => {
    const { page, expectClean } = await openApp({ motion: true });
    await page.locator('[data-view="whole"]').hover();
    await page.mouse.wheel(0, -300);
    await expect.poll(() => zoomed(page)).toBe('none');
    expect(await scrolled(page)).toBe(0);
    expectClean();
  });
});

describe('the back turned over onto the front', () => {
  const boundsOf = (page: Page) =>
    page.evaluate(() => window.ringtrue!.scene()?.views.find(({ id }) => id === 'whole')?.bounds);
  const frames = (page: Page) => page.evaluate(() => window.ringtrue!.table()?.frames() ?? 0);
  const rest = async (page: Page): Promise<void> => {
    let before = -1;
    await expect
      .poll(async () => {
        const now = await frames(page);
        const isResting = now === before;
        before = now;
        return isResting;
      })
      .toBe(true);
  };

  test('is seen on its way, and rests where it lies', async () => {
    const { page, expectClean } = await openApp({ motion: true });
    await page.getByRole('button', { name: 'Lay the pieces apart' }).click();
    await rest(page);
    const apart = await boundsOf(page);
    const before = await frames(page);
    await page.getByRole('button', { name: 'Lay the back on the front' }).click();
    await rest(page);
    expect((await frames(page)) - before).toBeGreaterThan(5);
    const laid = await boundsOf(page);
    expect(laid!.x1 - laid!.x0).toBeLessThan((apart!.x1 - apart!.x0) / 1.5);
    await page.waitForTimeout(300);
    const still = await frames(page);
    await page.waitForTimeout(500);
    expect(await frames(page)).toBe(still);
    expectClean();
  });

  test('is a cut where less motion is wanted', async () => {
    const { page } = await openApp();
    await page.getByRole('button', { name: 'Lay the pieces apart' }).click();
    await rest(page);
    const before = await frames(page);
    await page.getByRole('button', { name: 'Lay the back on the front' }).click();
    await rest(page);
    expect((await frames(page)) - before).toBeLessThanOrEqual(4);
  });
});
