/** Your panels: kept, named, copied, deleted, saved as a file and opened from one. */
import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { viewports } from './app.ts';
import { axeCleanInBothThemes, expectNoSidewaysScroll, openApp, readSnapshot, sendEvent } from './harness.ts';
import { fillShelf, openPanels } from './scenes-panels.ts';
import { onDisk, reopen } from './shelved.ts';

const sheet = (page: Page) => page.getByRole('dialog', { name: 'Your panels' });
const names = (page: Page): Promise<string[]> =>
  sheet(page)
    .getByRole('textbox', { name: 'name of the panel' })
    .evaluateAll((fields) => fields.map((field) => (field as HTMLTextAreaElement).value));
const press = (page: Page, name: string | RegExp) => sheet(page).getByRole('button', { name }).click();
const said = (page: Page) => expect.poll(() => sheet(page).getByRole('status').textContent());
const nameInHand = async (page: Page) => (await readSnapshot(page)).project.name;
const all = [
  'Kite',
  'Round pouffe for the reading corner by the tall window',
  'Six-sided stool',
  'Bay window',
  'Window-seat cushion',
];

async function saved(page: Page, button: string | RegExp): Promise<{ name: string; text: string }> {
  const coming = page.waitForEvent('download');
  await press(page, button);
  const download = await coming;
  return { name: download.suggestedFilename(), text: await readFile(await download.path(), 'utf8') };
}

async function choose(page: Page, text: string): Promise<void> {
  const chooser = page.waitForEvent('filechooser');
  await press(page, 'Open a file');
  await (await chooser).setFiles({
    name: 'mine.json',
    mimeType: 'application/json',
    buffer: Buffer.from(text),
  });
}

describe('your panels', () => {
  test('are found from the first place, opened, and each comes back as it was left', async () => {
    const { page, expectClean } = await openApp();
    await fillShelf(page);
    await openPanels(page);
    await expect.poll(() => names(page)).toEqual(all);
    await press(page, 'Open: Bay window');
    await sheet(page).waitFor({ state: 'hidden' });
    const { project, canUndo } = await readSnapshot(page);
    expect([project.name, project.texts['side.3'], canUndo]).toEqual(['Bay window', '43', false]);
    await sendEvent(page, { type: 'SHOW', tab: 'walk' });
    await sendEvent(page, { type: 'JUMP', to: 17 });
    await sendEvent(page, { type: 'SHOW', tab: 'edge' });
    await openPanels(page);
    await press(page, 'Open: Kite');
    await openPanels(page);
    await press(page, 'Open: Bay window');
    expect((await readSnapshot(page)).place).toBe(17);
    await reopen(page);
    expect(await nameInHand(page)).toBe('Bay window');
    expectClean();
  });

  test('are renamed, copied and deleted, and a deleted one comes back with one press', async () => {
    const { page, expectClean } = await openApp();
    await fillShelf(page);
    await openPanels(page);
    const field = sheet(page).getByRole('textbox', { name: 'name of the panel' });
    await field.nth(3).fill('Bay window, left');
    await field.nth(3).press('Enter');
    await field.nth(0).fill('Long kite');
    await field.nth(0).press('Enter');
    await expect.poll(() => nameInHand(page)).toBe('Long kite');
    await press(page, 'Copy: Six-sided stool');
    await expect.poll(() => names(page)).toContain('Six-sided stool 2');
    await press(page, 'Delete: Bay window, left');
    await expect.poll(() => names(page)).not.toContain('Bay window, left');
    const undo = sheet(page).getByRole('button', { name: 'Undo: Deleted: Bay window, left.' });
    await expect.poll(() => undo.evaluate((button) => button === document.activeElement)).toBe(true);
    await undo.press('Enter');
    await expect.poll(() => names(page)).toContain('Bay window, left');
    // The one in hand: another takes its place.
    await press(page, 'Delete: Long kite');
    await expect.poll(() => nameInHand(page)).not.toBe('Long kite');
    await sheet(page).getByRole('button', { name: 'Undo: Deleted: Long kite.' }).waitFor();
    await reopen(page);
    await openPanels(page);
    expect((await names(page)).sort()).toEqual(
      [
        'Bay window, left',
        'Six-sided stool',
        'Six-sided stool 2',
        ...all.slice(1, 2),
        ...all.slice(4),
      ].sort(),
    );
    expectClean();
  });

  test.each([
    ['phone', viewports.phone],
    ['narrowest', { width: 320, height: 640 }],
  ])(
    'on the %s page nothing is cut, every button can be hit, and axe finds nothing in both themes',
    async (_name, viewport) => {
      const { page } = await openApp({ viewport });
      await fillShelf(page);
      await openPanels(page);
      await press(page, 'Delete: Bay window');
      await sheet(page).getByRole('button', { name: /^Undo/ }).waitFor();
      await expectNoSidewaysScroll(page);
      const boxes = await sheet(page).evaluate((dialog) => ({
        wide: dialog.scrollWidth - dialog.clientWidth,
        small: [...dialog.querySelectorAll('button, textarea')].filter(
          (one) => one.getBoundingClientRect().height < 44,
        ).length,
        cut: [...dialog.querySelectorAll('textarea')].filter((one) => one.scrollHeight > one.clientHeight + 1)
          .length,
      }));
      expect(boxes).toEqual({ wide: 0, small: 0, cut: 0 });
      await axeCleanInBothThemes(page);
    },
  );
});

describe('a file', () => {
  test('of all panels opens in another browser, and twice is no more than once', async () => {
    const { page } = await openApp();
    await fillShelf(page);
    await openPanels(page);
    const file = await saved(page, 'Save all as a file');
    expect(file.name).toBe('ringtrue-panels.json');
    expect(JSON.parse(file.text).panels.map(({ name }: { name: string }) => name)).toEqual(all);
    await said(page).toBe('5 panels saved as ringtrue-panels.json.');

    const { page: other, expectClean } = await openApp({ fresh: true });
    await sendEvent(other, { type: 'TYPE', field: 'side.0', text: '55' });
    await openPanels(other);
    await choose(other, file.text);
    await said(other).toBe('5 panels of the file are below.');
    expect((await names(other)).sort()).toEqual([...all, 'Window-seat cushion'].sort());
    expect((await readSnapshot(other)).project.texts['side.0']).toBe('55');
    await choose(other, file.text);
    await said(other).toMatch(/5 panels of it were kept here already\./);
    expect(await names(other)).toHaveLength(6);
    expectClean();
  });

  test('of one panel is taken in hand, and what was in hand stays a panel', async () => {
    const { page } = await openApp();
    await sendEvent(page, { type: 'TYPE', field: 'side.0', text: '70' });
    await openPanels(page);
    const file = await saved(page, 'Save: Window-seat cushion');
    expect(file.name).toBe('window-seat-cushion.json');
    await sendEvent(page, { type: 'TYPE', field: 'side.0', text: '71' });
    await choose(page, file.text);
    await said(page).toBe('Window-seat cushion is in hand. What you had is kept below.');
    expect((await readSnapshot(page)).project.texts['side.0']).toBe('70');
    await onDisk(page, ['70', '71']);
    await choose(page, file.text.replace('"side.0": "70"', '"side.0": "90"'));
    await said(page).toMatch(/It was changed after it was saved: look over its numbers\./);
    await onDisk(page, ['70', '71', '90']);
  });

  test('is opened where it is dropped', async () => {
    const { page, expectClean } = await openApp();
    await openPanels(page);
    const { text } = await saved(page, 'Save all as a file');
    await press(page, 'Close panels');
    await page.evaluate(
      (dropped) => {
        const dataTransfer = new DataTransfer();
        dataTransfer.items.add(new File([dropped], 'mine.json', { type: 'application/json' }));
        for (const type of ['dragover', 'drop'])
          document.body.dispatchEvent(new DragEvent(type, { dataTransfer, bubbles: true, cancelable: true }));
      },
      text.replace('"side.0": "64"', '"side.0": "66"'),
    );
    await said(page).toMatch(/^Window-seat cushion is in hand\./);
    await onDisk(page, ['66']);
    expectClean();
  });

  test.each([
    ['no panel', 'hello', /holds no panels/],
    ['another program wrote', '{"layers":[]}', /not saved by this page/],
    ['a later version wrote', '{"format":"Ringtrue panels","version":9}', /comes from a newer version/],
    ['is damaged', '{"format":"Ringtrue panels","version":1}', /is damaged/],
    ['is huge', 'x'.repeat(8_000_001), /larger than any/],
  ])('that %s is answered in a sentence, and changes nothing', async (_name, text, sentence) => {
    const { page, expectClean } = await openApp();
    await sendEvent(page, { type: 'TYPE', field: 'side.0', text: '70' });
    await openPanels(page);
    await choose(page, text);
    await said(page).toMatch(sentence);
    await said(page).toMatch(/Nothing was changed\.$/);
    await onDisk(page, ['70']);
    expectClean();
  });
});
