/** A clip for a lesson: played in the browser's own player, stopped on the way, and as pictures where there is no video. */
import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { viewports } from './app.ts';
import { axeCleanInBothThemes, expectNoSidewaysScroll, openApp, readSnapshot, sendEvent } from './harness.ts';

const make = (page: Page) => page.getByRole('button', { name: 'Make the clip', exact: true });
const status = (page: Page) => page.locator('.clip [role=status]');

async function open(page: Page): Promise<void> {
  await sendEvent(page, { type: 'SHOW', tab: 'take-along' });
  await page.getByText('A clip for a lesson', { exact: true }).click();
  await make(page).waitFor();
}

async function show(page: Page): Promise<void> {
  const { making } = await readSnapshot(page);
  const foundation = making.steps.stretches.find(({ stage, side }) => stage === 'foundation' && side === 0);
  await sendEvent(page, { type: 'JUMP', to: foundation?.from ?? 0 });
  await open(page);
}

async function saved(page: Page): Promise<{ name: string; data: Buffer }> {
  const coming = page.waitForEvent('download');
  await make(page).click();
  const download = await coming;
  return { name: download.suggestedFilename(), data: await readFile(await download.path()) };
}

type Played = { seconds: number; size: number[]; bands: string[] };

/** In a page of its own: the app's page may play nothing. `bands`: the words at some times, as sums of their points. */
async function played(page: Page, data: Buffer, times: number[]): Promise<Played> {
  const player = await page.context().newPage();
  return player.evaluate(
    async ({ bytes, times }) => {
      const video = document.createElement('video');
      video.muted = true;
      video.src = URL.createObjectURL(
        new Blob([Uint8Array.from(atob(bytes), (sign) => sign.charCodeAt(0))], { type: 'video/mp4' }),
      );
      await new Promise((done, fail) => {
        video.onloadeddata = done;
        video.onerror = () => fail(new Error(video.error?.message));
      });
      const canvas = document.createElement('canvas');
      canvas.width = video.videoWidth;
      canvas.height = video.videoHeight;
      const context = canvas.getContext('2d') as CanvasRenderingContext2D;
      const bands: string[] = [];
      for (const time of times) {
        const sought = new Promise((done) => {
          video.onseeked = done;
        });
        video.currentTime = time;
        await sought;
        context.drawImage(video, 0, 0);
        // Light or dark in cells of 8 × 8 points: what a video's packing changes is far less.
        const { data } = context.getImageData(0, 520, 1280, 200);
        let cells = '';
        for (let y = 4; y < 200; y += 8)
          for (let x = 4; x < 1280; x += 8) cells += (data[(y * 1280 + x) * 4] ?? 0) < 128 ? '#' : '.';
        bands.push(cells);
      }
      return { seconds: video.duration, size: [video.videoWidth, video.videoHeight], bands };
    },
    { bytes: data.toString('base64'), times },
  );
}

test('a stretch of the walk becomes a video of 720p at the pace chosen, with each step written into it', async () => {
  const { page, expectClean } = await openApp({ viewport: viewports.phone });
  await show(page);
  await expectNoSidewaysScroll(page);
  await axeCleanInBothThemes(page, '.clip');
  await page.getByLabel('each step is shown for').selectOption('half a second');
  await page.getByText('30 steps, 15 seconds.').waitFor();
  const { name, data } = await saved(page);
  expect(name).toMatch(/^window-seat-cushion\.(mp4|webm)$/);
  await expect.poll(() => status(page).textContent()).toBe(`Saved as ${name}, 15 seconds.`);
  expectClean();
  const { seconds, size, bands } = await played(page, data, [0.2, 0.3, 5.2, 14.8]);
  expect(size).toEqual([1280, 720]);
  expect(seconds).toBeCloseTo(15, 1);
  const [first, same, later, last] = bands;
  expect(first).toContain('#');
  expect(same).toBe(first);
  expect(new Set([first, later, last]).size).toBe(3);
});

test('it can be stopped, and nothing is saved; where no video can be made, there are pictures', async () => {
  const { page, expectClean } = await openApp({ fresh: true });
  await show(page);
  await page.getByLabel('to the end of').selectOption({ label: 'Foundation · side 3' });
  await page.getByLabel('each step is shown for').selectOption('4 seconds');
  let downloads = 0;
  page.on('download', () => {
    downloads++;
  });
  await make(page).click();
  const bar = page.getByRole('progressbar', { name: 'How far the clip is' });
  await expect.poll(() => bar.getAttribute('value')).toMatch(/[1-9]/);
  await page.getByRole('button', { name: 'Stop', exact: true }).click();
  await expect.poll(() => status(page).textContent()).toBe('Stopped. Nothing was saved.');
  expect(downloads).toBe(0);

  await page.evaluate(() => Reflect.deleteProperty(window, 'VideoEncoder'));
  await page.getByLabel('to the end of').selectOption({ label: 'Foundation · corner 1' });
  await page.getByText('32 steps').waitFor();
  await page.locator('.clip select').first().selectOption({ label: 'Foundation · corner 1' });
  await page.getByText('2 steps, 8 seconds.').waitFor();
  const { name, data } = await saved(page);
  expect(name).toBe('window-seat-cushion.zip');
  await expect
    .poll(() => status(page).textContent())
    .toBe('This browser makes no video. Saved as window-seat-cushion.zip: 2 pictures, one a step.');
  // Stored as they are: each picture's own head stands in the archive.
  const text = data.toString('latin1');
  const heads = [...text.matchAll(/PNG.{8}IHDR(.{4})(.{4})/gs)];
  const number = (bytes = ''): number => Buffer.from(bytes, 'latin1').readUInt32BE(0);
  expect(heads.map(([, width, height]) => [number(width), number(height)])).toEqual([
    [1280, 720],
    [1280, 720],
  ]);
  expect([...new Set(text.match(/\d+\.png/g))]).toEqual(['1.png', '2.png']);
  expectClean();
});

test('more than a clip holds is said, with what to do', async () => {
  const { page } = await openApp();
  await sendEvent(page, { type: 'CHANGE', project: { edgingCount: 4 } });
  await open(page);
  await page.getByLabel('to the end of').selectOption({ label: 'Finished' });
  await expect
    .poll(() => page.locator('.clip').textContent())
    .toMatch(/A clip holds at most 900: choose less\./);
  expect(await make(page).isVisible()).toBe(false);
});
