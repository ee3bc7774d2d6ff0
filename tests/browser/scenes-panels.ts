/** The list of all panels: several kept, one deleted just now, and one that this version cannot read. */
import type { Page } from 'playwright-core';
import type { AppEvent } from '../../src/state/snapshot.ts';
import { sendEvent } from './app.ts';
import type { PictureScene } from './scenes.ts';

const panels: { name: string; sides: string[]; more?: AppEvent[] }[] = [
  { name: 'Bay window', sides: ['71', '38', '66', '43'] },
  { name: 'Six-sided stool', sides: ['28', '28', '28', '28', '28', '28'] },
  { name: 'Round pouffe for the reading corner by the tall window', sides: ['132'] },
  { name: 'Kite', sides: ['34', '34', '34'] },
];

const sheet = (page: Page) => page.getByRole('dialog', { name: 'Your panels' });

export async function openPanels(page: Page): Promise<void> {
  await page.getByRole('button', { name: /Your panels$/ }).click();
  await sheet(page).waitFor();
}

/** Four panels beside the example that the page opened with. */
export async function fillShelf(page: Page): Promise<void> {
  await sendEvent(page, { type: 'TYPE', field: 'side.0', text: '62' });
  for (const { name, sides } of panels) {
    await openPanels(page);
    await page.getByRole('button', { name: 'New panel' }).click();
    await sheet(page).waitFor({ state: 'hidden' });
    await sendEvent(page, {
      type: 'CHANGE',
      project: { name, sideCount: sides.length === 1 ? 0 : sides.length },
    });
    for (const [i, text] of sides.entries())
      await sendEvent(page, { type: 'TYPE', field: `side.${i}`, text });
  }
}

export const panelScenes: PictureScene[] = [
  {
    name: 'panels',
    steps: async (page) => {
      await fillShelf(page);
      await openPanels(page);
    },
  },
  {
    name: 'panels-deleted',
    steps: async (page) => {
      await fillShelf(page);
      await openPanels(page);
      await page.getByRole('button', { name: 'Delete: Bay window' }).click();
      await page.getByRole('button', { name: /^Undo: Deleted/ }).waitFor();
    },
    devices: ['phone'],
  },
  {
    name: 'panels-one-only',
    steps: async (page) => {
      await page.addInitScript(() =>
        Object.defineProperty(window, 'indexedDB', {
          get() {
            throw new DOMException('closed', 'SecurityError');
          },
        }),
      );
      await page.reload();
      await openPanels(page);
    },
    devices: ['phone'],
  },
  { name: 'panels-way-take-along', events: [{ type: 'SHOW', tab: 'take-along' }] },
];
