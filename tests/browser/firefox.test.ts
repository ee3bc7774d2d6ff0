/**
 * The same page in a second browser: main job, walk, causes, keeping, offline, print and files. Firefox is driven over
 * WebDriver BiDi, as it is installed; where there is none, nothing here runs.
 */
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, type ElementHandle, launch, type Page } from 'puppeteer-core';
import { afterAll, afterEach, beforeAll, describe, expect, inject, test, vi } from 'vitest';
import { findFirefox } from '../setup/firefox.mjs';
import { readPattern } from '../unit/pattern/reader.ts';
import { serveOwn } from './harness.ts';
import { readPdf } from './pdf.ts';

const program = findFirefox();
const downloads = mkdtempSync(join(tmpdir(), 'ringtrue-firefox-'));

let browser: Browser;
let page: Page;
let wrongs: string[];

async function open(address: string): Promise<void> {
  page = await (await browser.createBrowserContext()).newPage();
  wrongs = [];
  page.on('pageerror', (error) => wrongs.push(`${error}`));
  page.on('console', (message) => {
    if (message.type() === 'error') wrongs.push(message.text());
  });
  await page.goto(address);
  await find('.recipe');
}

/**
 * The first element of these that is shown, with the text or name given if one is. Looked for by a plain function:
 * the library's own ways to wait and to find build code from text, which the page's policy forbids.
 */
async function find(selector: string, name?: string): Promise<ElementHandle<HTMLElement>> {
  const look = () =>
    page.evaluateHandle(
      (selector, name) =>
        [...document.querySelectorAll<HTMLElement>(selector)].find((element) => {
          const names = [element.textContent?.trim(), element.getAttribute('aria-label')];
          return element.checkVisibility() && (name === undefined || names.includes(name));
        }) ?? null,
      selector,
      name,
    );
  await expect.poll(async () => (await look()).asElement() !== null).toBe(true);
  return (await look()).asElement() as ElementHandle<HTMLElement>;
}

const textOf = async (selector: string): Promise<string> =>
  (await find(selector)).evaluate((element) => element.textContent?.replace(/\s+/g, ' ').trim() ?? '');

/** Presses once it can be hit: the page may be drawn anew between finding and pressing. */
const press = (name: string): Promise<void> =>
  vi.waitFor(async () => (await find('button, [role=tab]', name)).click(), {
    timeout: 20_000,
    interval: 200,
  });

/** Types over what stands in a field. */
async function write(field: string, text: string): Promise<void> {
  const input = await find(`#field-${field.replaceAll('.', '-')}`);
  await input.evaluate((element) => {
    (element as HTMLInputElement).select();
  });
  await page.keyboard.type(text);
}

/** How many pixels of the drawing are not its background. */
const inkOf = async (): Promise<number> =>
  (await find('canvas')).evaluate((element) => {
    const canvas = element as HTMLCanvasElement;
    const copy = document.createElement('canvas');
    copy.width = canvas.width;
    copy.height = canvas.height;
    const context = copy.getContext('2d') as CanvasRenderingContext2D;
    context.drawImage(canvas, 0, 0);
    const points = new Uint32Array(context.getImageData(0, 0, copy.width, copy.height).data.buffer);
    return points.filter((point) => point !== points[0]).length;
  });

describe.skipIf(!program)('in Firefox', () => {
  beforeAll(async () => {
    browser = await launch({
      browser: 'firefox',
      executablePath: program as string,
      defaultViewport: null,
      args: ['--width=1366', '--height=945'],
      extraPrefsFirefox: {
        'browser.download.dir': downloads,
        'browser.download.folderList': 2,
        'browser.download.useDownloadDir': true,
      },
    });
  });
  afterEach(async () => {
    await page.browserContext().close();
    expect(wrongs).toEqual([]);
  });
  afterAll(async () => {
    await browser.close();
    rmSync(downloads, { recursive: true, force: true });
  });

  test('a panel is typed, one side short is said and drawn, and a reload gives the same', async () => {
    await open(inject('address'));
    expect(await textOf('.notices')).toBe('');
    for (const [side, count] of ['50', '33', '47', '36'].entries()) await write(`side.${side}`, count);
    await expect.poll(() => textOf('.recipe')).toMatch(/46th/);
    await expect.poll(inkOf).toBeGreaterThan(1000);
    await press('What went wrong');
    // The third back side faces the third of the front: 47 counted, less one corner of 2 chains; and one missed.
    await write('worked.edging.0.2', '44');
    await expect.poll(() => textOf('.verdict')).toMatch(/Back side 3 is 1 stitch short/);
    await find('.cause-title');
    await page.reload();
    await expect.poll(() => textOf('.verdict')).toMatch(/Back side 3 is 1 stitch short/);
  });

  test('the making is walked by keys, and stands where it stood after a reload', async () => {
    await open(inject('address'));
    await press('Walk it');
    await find('.bar');
    const next = await find('.bar .next');
    await next.focus();
    for (let i = 0; i < 12; i++) await page.keyboard.press('Enter');
    await expect.poll(() => textOf('.bar')).toMatch(/13 of 857/);
    const before = await textOf('.bar');
    await page.reload();
    await expect.poll(() => textOf('.bar')).toBe(before);
  });

  test('opens when the server is gone', async () => {
    const server = await serveOwn();
    await open(server.address);
    await expect.poll(() => page.evaluate(() => navigator.serviceWorker.controller !== null)).toBe(true);
    await server.close();
    await page.goto('about:blank');
    await page.goto(server.address);
    await find('.recipe');
    await expect.poll(inkOf).toBeGreaterThan(1000);
  });

  test('the pattern is saved as a file and printed as pages with text', async () => {
    await open(inject('address'));
    await press('Take along');
    await find('article');
    await press('Save as text');
    await expect.poll(() => readdirSync(downloads)).toEqual([expect.stringMatching(/\.txt$/)]);
    const [file = ''] = readdirSync(downloads);
    const read = readPattern(readFileSync(join(downloads, file), 'utf8'));
    expect(read.foundation.sides).toEqual([62, 38, 62, 38].map((count) => count - 2));
    const sheets = await readPdf(await page.pdf());
    expect(sheets.flatMap(({ words }) => words).join(' ')).toMatch(/foundation trebles/);
  });
});
