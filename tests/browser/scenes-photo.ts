/** Counting on a photo, with a rendered edge for a photo. */
import type { Page } from 'playwright-core';
import { sendEvent } from './app.ts';
import {
  byMouse,
  choosePhoto,
  edgePicture,
  layLine,
  markThree,
  onPhoto,
  openCounting,
} from './photographing.ts';
import type { PictureScene } from './scenes.ts';

const marked = async (page: Page): Promise<void> => {
  await openCounting(page);
  await choosePhoto(page);
  await layLine(page, byMouse(page));
  await markThree(page, byMouse(page));
};

const proposed = async (page: Page): Promise<void> => {
  await marked(page);
  await page.getByRole('button', { name: 'Propose the rest' }).click();
  await page.getByRole('button', { name: 'These 10 are right' }).waitFor();
};

export const photoScenes: PictureScene[] = [
  { name: 'photo-offered', steps: (page) => page.locator('.photo-offer summary').first().click() },
  { name: 'photo-taken', steps: (page) => openCounting(page) },
  {
    name: 'photo-line',
    steps: async (page) => {
      await openCounting(page);
      await choosePhoto(page);
      await layLine(page, byMouse(page));
    },
  },
  {
    name: 'photo-magnifier',
    steps: async (page) => {
      await marked(page);
      const { x, y } = await onPhoto(page, edgePicture.vees[20] as { x: number; y: number });
      await page.mouse.move(x, y);
      await page.mouse.down();
      await page.mouse.move(x + 6, y + 10, { steps: 3 });
    },
  },
  { name: 'photo-marked', steps: marked },
  { name: 'photo-proposed', steps: proposed },
  {
    name: 'photo-counted',
    steps: async (page) => {
      await proposed(page);
      const right = page.getByRole('button', { name: /(are|is) right$/ });
      while ((await right.count()) > 0) {
        await right.click();
        await page.waitForTimeout(100);
      }
      await page.getByRole('button', { name: /^Put in/ }).click();
      await openCounting(page);
      await page.locator('.strip-canvas').waitFor();
    },
  },
  {
    name: 'photo-gap',
    steps: async (page) => {
      await marked(page);
      await page.getByRole('button', { name: /^Put in/ }).click();
      await sendEvent(page, { type: 'TYPE', field: 'worked.edging.0.0', text: '2' });
      await openCounting(page);
      await page.locator('.photo-gap').waitFor();
    },
  },
];
