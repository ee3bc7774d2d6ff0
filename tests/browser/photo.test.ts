/** Counting a side on a photo: by touch, by keys, with files that are none, and what is kept of it. */
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import {
  axeCleanInBothThemes,
  expectNoSidewaysScroll,
  openApp,
  readSnapshot,
  sendEvent,
  viewports,
} from './harness.ts';
import {
  alongOfVee,
  byMouse,
  byTouch,
  choosePhoto,
  edgePicture,
  layLine,
  markThree,
  onPhoto,
  onStrip,
  openCounting,
} from './photographing.ts';

const button = (page: Page, name: string | RegExp) =>
  page.locator('.sheet-photo').getByRole('button', { name, exact: true });
const count = edgePicture.vees.length;
/** Awaits how many are marked: "12 marked, 45 proposed". */
const expectCounts = (page: Page, says: string) =>
  expect.poll(() => page.locator('.photo-counts').textContent()).toBe(says);
const said = (page: Page, where: string) => expect.poll(() => page.locator(where).textContent());
const databases = (page: Page) =>
  page.evaluate(async () => (await indexedDB.databases()).map(({ name }) => name));
const textOf = async (page: Page, field: string) => (await readSnapshot(page)).project.texts[field];

/** Looks over all that is proposed. */
async function lookAllOver(page: Page): Promise<void> {
  const right = button(page, /^(These \d+ are|This one is) right$/);
  for (let left = count; left > 0 && (await right.count()) > 0; left -= 10) {
    const before = await page.locator('.photo-counts').textContent();
    await right.click();
    await expect.poll(() => page.locator('.photo-counts').textContent()).not.toBe(before);
  }
}

test('by thumb on a phone: marks, proposals, the number, its gap, and the photo forgotten', async () => {
  const { page, expectClean } = await openApp({ viewport: viewports.phone, touch: true, fresh: true });
  const tap = byTouch(page);
  await openCounting(page);
  await choosePhoto(page);
  await layLine(page, tap);
  await markThree(page, tap);

  // One tap adds, moves or takes away one mark; one press takes it back.
  const pitch = alongOfVee(2) / 2;
  await tap(await onStrip(page, 3, { pitch }));
  await expectCounts(page, '4 marked');
  const near = await onStrip(page, 3, { pitch });
  await tap({ ...near, x: near.x + 9 });
  await tap(await onStrip(page, 3, { pitch, isBelow: true }));
  await expectCounts(page, '3 marked');
  await button(page, 'Undo').click();
  await expectCounts(page, '4 marked');
  // The tap between moved its mark, and added none.
  await button(page, 'Undo').click();
  await button(page, 'Undo').click();
  await expectCounts(page, '3 marked');
  await button(page, 'Redo').click();
  await expectCounts(page, '4 marked');
  await button(page, 'Undo').click();

  await axeCleanInBothThemes(page, '.sheet-photo');

  // What is proposed is no mark before it is looked over, and no number can be put in till then.
  await button(page, 'Propose the rest').click();
  await expectCounts(page, `3 marked, ${count - 3} proposed`);
  expect(await button(page, /^Put in/).count()).toBe(0);
  await page.setViewportSize({ width: 320, height: 700 });
  await expectNoSidewaysScroll(page);
  const sheet = page.locator('.sheet-photo');
  expect(await sheet.evaluate((node) => node.scrollWidth - node.clientWidth)).toBeLessThanOrEqual(0);
  await page.setViewportSize(viewports.phone);
  await button(page, 'These 10 are right').click();
  await expectCounts(page, `13 marked, ${count - 13} proposed`);
  await lookAllOver(page);
  await expectCounts(page, `${count} marked`);
  // Nothing is left to propose.
  expect(await button(page, 'Propose the rest').count()).toBe(0);

  // The example counts one corner of two chains with every side, and the page says so.
  const before = await textOf(page, 'side.0');
  expect(await sheet.textContent()).toContain(`${count} stitches marked and 2 of the corners`);
  await button(page, `Put in ${count + 2} for side 1`).click();
  await expect.poll(() => page.evaluate(() => document.activeElement?.id)).toBe('field-side-0');
  expect(await textOf(page, 'side.0')).toBe(`${count + 2}`);

  // The photo stays with its marks, and shows a gap of its side.
  expect(await databases(page)).toContain('ringtrue.photos');
  await sendEvent(page, { type: 'TYPE', field: 'worked.edging.0.0', text: `${count - 1}` });
  await openCounting(page);
  await expectCounts(page, `${count} marked`);
  await said(page, '.photo-gap').toBe(
    'The back is 1 stitch short along this side: somewhere along here. The counts do not tell where.',
  );
  await button(page, 'Close').click();
  await sendEvent(page, { type: 'TYPE', field: 'worked.edging.0.0', text: '' });
  await sendEvent(page, { type: 'UNDO' });
  await sendEvent(page, { type: 'UNDO' });
  await sendEvent(page, { type: 'UNDO' });
  expect(await textOf(page, 'side.0')).toBe(before);

  // Kept here and nowhere else, until it is forgotten.
  expect(JSON.stringify((await readSnapshot(page)).project)).not.toMatch(/photo/i);
  expect(await page.evaluate(() => JSON.stringify({ ...localStorage }))).not.toMatch(/photo/i);
  await openCounting(page);
  await said(page, '.sheet-photo').toContain(
    `${count + 2} came from this photo. Now the field says ${before}.`,
  );
  await button(page, 'Forget this photo').click();
  await page.locator('.photo-taking').waitFor();
  await button(page, 'Close').click();
  await openCounting(page);
  await page.locator('.photo-taking').waitFor();
  await expect.poll(() => databases(page)).not.toContain('ringtrue.photos');
  expectClean();
});

const broken = { name: 'a.jpg', mimeType: 'image/jpeg', buffer: Buffer.from('no photo at all') };
const wrongFiles: [typeof broken, RegExp][] = [
  [broken, /damaged/],
  [{ name: 'a.txt', mimeType: 'text/plain', buffer: Buffer.from('words') }, /no picture/],
  [{ name: 'a.png', mimeType: 'image/png', buffer: Buffer.alloc(0) }, /empty/],
];

/** A JPEG of one colour, made by the browser. */
const jpegOf = (page: Page, size: [number, number]): Promise<Buffer> =>
  page
    .evaluate(async ([width, height]) => {
      const canvas = new OffscreenCanvas(width, height);
      canvas.getContext('2d')?.fillRect(0, 0, width, height);
      return [...new Uint8Array(await (await canvas.convertToBlob({ type: 'image/jpeg' })).arrayBuffer())];
    }, size)
    .then((bytes) => Buffer.from(bytes));

const ratioOf = (page: Page) =>
  page.locator('.photo-canvas').evaluate((node) => getComputedStyle(node).aspectRatio);

/** Pastes or drops a picture. */
const bring = (page: Page, by: 'paste' | 'drop', size: [number, number]) =>
  page.evaluate(
    async ([way, width, height]) => {
      const canvas = new OffscreenCanvas(width, height);
      canvas.getContext('2d')?.fillRect(0, 0, width, height);
      const data = new DataTransfer();
      const blob = await canvas.convertToBlob({ type: 'image/jpeg' });
      data.items.add(new File([blob], 'a.jpg', { type: 'image/jpeg' }));
      const how = { bubbles: true, cancelable: true };
      document
        .querySelector('.sheet-photo')
        ?.dispatchEvent(
          way === 'drop'
            ? new DragEvent('drop', { ...how, dataTransfer: data })
            : new ClipboardEvent('paste', { ...how, clipboardData: data }),
        );
    },
    [by, ...size] as const,
  );

/** Drops a file of so many megabytes that calls itself a picture. */
const dropLarge = (page: Page, megabytes: number) =>
  page.evaluate((size) => {
    const data = new DataTransfer();
    data.items.add(new File([new Uint8Array(size * 1e6)], 'a.jpg', { type: 'image/jpeg' }));
    const event = new DragEvent('drop', { bubbles: true, cancelable: true, dataTransfer: data });
    document.querySelector('.sheet-photo')?.dispatchEvent(event);
  }, megabytes);

test('files: what is no photo is answered in a sentence; a turned one, and 50 megapixels, are taken', async () => {
  const { page, expectClean } = await openApp({ fresh: true });
  await openCounting(page);
  for (const [file, says] of wrongFiles) {
    await choosePhoto(page, file);
    await said(page, '.photo-problem').toMatch(says);
    await page.locator('.photo-taking').waitFor();
  }
  await dropLarge(page, 61);
  await said(page, '.photo-problem').toMatch(/larger than 60 megabytes/);
  // One button opens the camera of the side away from the maker, the other what is there already.
  const opens = (says: string) => page.getByLabel(says, { exact: true }).getAttribute('capture');
  expect([await opens('Take a photo'), await opens('Choose a photo')]).toEqual(['environment', null]);

  // After the start of image: an Exif part whose orientation is 6, a quarter turn (Exif 2.3, tag 0x0112).
  const exif = [
    0xff, 0xe1, 0, 34, 0x45, 0x78, 0x69, 0x66, 0, 0, 0x4d, 0x4d, 0, 0x2a, 0, 0, 0, 8, 0, 1, 1, 0x12, 0, 3, 0,
    0, 0, 1, 0, 6, 0, 0, 0, 0, 0, 0,
  ];
  const jpeg = await jpegOf(page, [300, 100]);
  const turned = Buffer.concat([jpeg.subarray(0, 2), Buffer.from(exif), jpeg.subarray(2)]);
  await choosePhoto(page, { name: 'a.jpg', mimeType: 'image/jpeg', buffer: turned });
  await page.locator('.photo-canvas').waitFor();
  await expect.poll(() => ratioOf(page)).toBe('100 / 300');
  expect(await page.locator('.photo-problem').count()).toBe(0);

  await bring(page, 'paste', [200, 160]);
  await expect.poll(() => ratioOf(page)).toBe('200 / 160');
  // 50 megapixels: no more of it than the thread holds.
  await bring(page, 'drop', [8660, 5774]);
  await expect.poll(() => ratioOf(page), { timeout: 20_000 }).toBe('4096 / 2731');

  // One that is damaged leaves the photo that is there.
  await choosePhoto(page, broken);
  await said(page, '.photo-problem').toMatch(/damaged/);
  expect(await ratioOf(page)).toBe('4096 / 2731');
  expectClean();
});

test('by keys: ends, marks, taking away, undo; the page behind hears none of them', async () => {
  const { page, expectClean } = await openApp({ fresh: true });
  await openCounting(page);
  await choosePhoto(page);
  await page.locator('.photo-canvas').focus();
  for (let i = 0; i < 20; i++) await page.keyboard.press('Shift+ArrowLeft');
  await page.keyboard.press('Enter');
  for (let i = 0; i < 40; i++) await page.keyboard.press('Shift+ArrowRight');
  await page.keyboard.press('Enter');
  await page.locator('.strip-canvas').focus();
  await page.keyboard.press('Enter');
  for (let i = 0; i < 8; i++) await page.keyboard.press('ArrowRight');
  await page.keyboard.press('Enter');
  await expectCounts(page, '2 marked');
  await page.keyboard.press('Delete');
  await expectCounts(page, '1 marked');
  await page.keyboard.press('Control+z');
  await expectCounts(page, '2 marked');
  await page.keyboard.press('Control+Shift+Z');
  await expectCounts(page, '1 marked');
  expect((await readSnapshot(page)).canUndo).toBe(false);
  await page.keyboard.press('Escape');
  await expect.poll(() => page.locator('.sheet-photo').count()).toBe(0);
  expectClean();
});

test('what went wrong: a bent line, the comparing called off at once, and what was seen filled', async () => {
  const { page, expectClean } = await openApp({ fresh: true });
  await page.getByRole('tab', { name: 'What went wrong' }).click();
  await openCounting(page, 'edging side 2');
  await choosePhoto(page);
  await layLine(page, byMouse(page));
  await markThree(page, byMouse(page));

  // Bent by drawing; the bend is taken in hand, and away.
  const from = await onPhoto(page, edgePicture.vees[20] as { x: number; y: number });
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move(from.x, from.y + 12, { steps: 4 });
  await page.mouse.up();
  await page.mouse.click(from.x, from.y + 12);
  await button(page, 'Take this point away').click();
  await expect.poll(() => button(page, 'Take this point away').count()).toBe(0);

  // The question reaches the thread late, so that there is time for a press.
  await page.evaluate(() => {
    const post = Worker.prototype.postMessage;
    Worker.prototype.postMessage = function late(this: Worker, message: { kind?: string }) {
      if (message.kind === 'propose') setTimeout(() => post.call(this, message), 1000);
      else post.call(this, message);
    };
  });
  const workers = page.workers().length;
  await button(page, 'Propose the rest').click();
  await button(page, 'Stop').click();
  await said(page, '.photo-said').toBe('Stopped. Your own marks stay.');
  await expect.poll(() => page.workers().length).toBe(workers - 1);
  await expectCounts(page, '3 marked');
  await button(page, 'Propose the rest').click();
  await expectCounts(page, `3 marked, ${count - 3} proposed`);
  await button(page, 'Take the proposals away').click();
  // A round of the back is counted in stitches only.
  await button(page, 'Put in 3 for edging side 2').click();
  await expect.poll(() => textOf(page, 'worked.edging.0.1')).toBe('3');
  expectClean();
});
