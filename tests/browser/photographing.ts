/** Counting on a photo as a person does it, with a rendered edge for a photo. */
import type { Page } from 'playwright-core';
import { pngOf } from '../photo/png.ts';
import { type Picture, renderEdge } from '../photo/render.ts';

export const edgePicture: Picture = renderEdge('easy', 1);
const file = { name: 'edge.png', mimeType: 'image/png', buffer: pngOf(edgePicture) };

type Chosen = { name: string; mimeType: string; buffer: Buffer };

/** Opens counting on a photo for a side of the front. */
export async function openCounting(page: Page, side = 'side 1'): Promise<void> {
  const fold = page.locator('.photo-offer').first();
  if (!(await fold.evaluate((node) => (node as HTMLDetailsElement).open)))
    await fold.locator('summary').click();
  await fold.getByRole('button', { name: side, exact: true }).click();
  await page.locator('.sheet-photo .photo-taking, .sheet-photo .photo-canvas').first().waitFor();
}

export async function choosePhoto(page: Page, chosen: Chosen = file): Promise<void> {
  await page.locator('.sheet-photo input[type=file]:not([capture])').setInputFiles(chosen);
}

/** Where a place of the photo is on the screen. */
export async function onPhoto(
  page: Page,
  { x, y }: { x: number; y: number },
): Promise<{ x: number; y: number }> {
  const canvas = page.locator('.photo-canvas');
  await canvas.scrollIntoViewIfNeeded();
  const box = await canvas.boundingBox();
  if (!box) throw new Error('The photo is not shown');
  const scale = Math.min(box.width / edgePicture.width, box.height / edgePicture.height);
  return {
    x: box.x + (box.width - edgePicture.width * scale) / 2 + x * scale,
    y: box.y + (box.height - edgePicture.height * scale) / 2 + y * scale,
  };
}

export type Tap = (at: { x: number; y: number }) => Promise<void>;
export const byTouch =
  (page: Page): Tap =>
  ({ x, y }) =>
    page.touchscreen.tap(x, y);
export const byMouse =
  (page: Page): Tap =>
  ({ x, y }) =>
    page.mouse.click(x, y);

/** Lays the line from the first V to the last. */
export async function layLine(page: Page, tap: Tap): Promise<void> {
  await page.locator('.photo-canvas').waitFor();
  const ends = [edgePicture.vees[0], edgePicture.vees.at(-1)];
  await page.getByText('Tap the first V').waitFor();
  await tap(await onPhoto(page, ends[0] as { x: number; y: number }));
  await page.getByText('Now tap the last V').waitFor();
  await tap(await onPhoto(page, ends[1] as { x: number; y: number }));
  await page.locator('.strip-canvas').waitFor();
}

/** Distance from V to V as the page guesses it before two are marked. */
const guessed = () => alongOfVee(edgePicture.vees.length - 1) / 60;

/** Where the V is on the strip as it opens, a guessed distance before the line: `pitch` as the page knows it. */
export async function onStrip(
  page: Page,
  vee: number,
  { pitch, isBelow = false }: { pitch: number; isBelow?: boolean },
): Promise<{ x: number; y: number }> {
  const canvas = page.locator('.strip-canvas');
  await canvas.scrollIntoViewIfNeeded();
  const box = await canvas.boundingBox();
  if (!box) throw new Error('The strip is not shown');
  const x = box.x + (alongOfVee(vee) + guessed()) * (46 / pitch);
  return { x, y: isBelow ? box.y + box.height - 20 : box.y + 50 };
}

const first = edgePicture.vees[0] as { x: number; y: number };
export const alongOfVee = (vee: number): number => {
  const { x, y } = edgePicture.vees[vee] as { x: number; y: number };
  return Math.hypot(x - first.x, y - first.y);
};

/** Marks the first three Vs. The strip is enlarged to the distance of the marks once there are two. */
export async function markThree(page: Page, tap: Tap): Promise<void> {
  await tap(await onStrip(page, 0, { pitch: guessed() }));
  await page.getByText('1 marked').waitFor();
  await tap(await onStrip(page, 1, { pitch: guessed() }));
  await page.getByText('2 marked').waitFor();
  await tap(await onStrip(page, 2, { pitch: alongOfVee(1) }));
  await page.getByText('3 marked').waitFor();
}
