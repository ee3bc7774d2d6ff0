/** A panel sent as an address: looked at beside the own work, which it never writes over. */
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { openApp, readSnapshot, sendEvent } from './harness.ts';
import { onDisk } from './shelved.ts';

const strip = (page: Page) => page.locator('.notices');
const side = async (page: Page) => (await readSnapshot(page)).project.texts['side.0'];
const kept = (page: Page): Promise<string | undefined> =>
  page.evaluate(() => JSON.parse(localStorage.getItem('ringtrue.work') ?? '{}').project?.texts['side.0']);
const ready = (page: Page) => page.waitForFunction(() => window.ringtrue !== undefined);
const type = (page: Page, text: string) => sendEvent(page, { type: 'TYPE', field: 'side.0', text });

/** The address with which a panel asks for help, as it stands in "Take along". */
async function addressOf(page: Page, which: 'edge' | 'wrong'): Promise<string> {
  await page.getByRole('tab', { name: 'Take along' }).click();
  const field = page.locator(`#send-${which}`);
  await expect.poll(() => field.inputValue()).toMatch(/#panel=/);
  return field.inputValue();
}

/** Somebody sends their panel, and this page has work of its own. */
async function sent(which: 'edge' | 'wrong' = 'wrong'): Promise<{ page: Page }> {
  const { page } = await openApp();
  await type(page, '80');
  await sendEvent(page, { type: 'TYPE', field: 'worked.edging.0.1', text: '37' });
  await sendEvent(page, { type: 'SETTLE', settings: { dialect: 'us' } });
  const hash = new URL(await addressOf(page, which)).hash;
  await sendEvent(page, { type: 'SETTLE', settings: { dialect: 'uk' } });
  await type(page, '55');
  await sendEvent(page, { type: 'TYPE', field: 'worked.edging.0.1', text: '' });
  expect(await kept(page)).toBe('55');
  await page.evaluate((fragment) => {
    location.hash = fragment;
  }, hash);
  await page.waitForLoadState();
  await expect.poll(() => strip(page).textContent()).toMatch(/This panel was sent to you\./);
  return { page };
}

describe('a sent panel', () => {
  test('opens where help is asked, in its own terms, and changes nothing that is kept', async () => {
    const { page } = await sent();
    const { tab, settings, project } = await readSnapshot(page);
    expect([tab, settings.dialect, project.texts['side.0']]).toEqual(['wrong', 'us', '80']);
    expect(project.texts['worked.edging.0.1']).toBe('37');
    await type(page, '81');
    expect(await kept(page)).toBe('55');
    await page.getByRole('button', { name: 'Back to mine' }).click();
    await ready(page);
    await expect.poll(() => side(page)).toBe('55');
    expect(new URL(page.url()).hash).toBe('');
  });

  test('is kept when that is wanted, and the own one comes back with one press', async () => {
    const { page } = await sent('edge');
    await page.getByRole('button', { name: 'Keep this one' }).click();
    await expect.poll(() => kept(page)).toBe('80');
    await type(page, '82');
    await expect.poll(() => kept(page)).toBe('82');
    await page.getByRole('button', { name: 'Bring mine back' }).click();
    await ready(page);
    await expect.poll(() => side(page)).toBe('55');
    expect(await kept(page)).toBe('55');
  });

  test('is not among the panels until it is kept, and then stands beside the own one', async () => {
    const { page } = await sent('edge');
    const sheet = page.getByRole('dialog', { name: 'Your panels' });
    await page.getByRole('button', { name: /Your panels$/ }).click();
    await sheet.getByText('This panel was sent to you.').waitFor();
    expect(await sheet.getByRole('button', { name: /^(Open|Delete|New panel)/ }).count()).toBe(0);
    await sheet.getByRole('button', { name: 'Close panels' }).click();
    await onDisk(page, ['55']);
    await page.getByRole('button', { name: 'Keep this one' }).click();
    await onDisk(page, ['55', '80']);
    expect(await page.evaluate(() => localStorage.getItem('ringtrue.before-link'))).toBeNull();
  });

  test('that was cut is told as cut, and the own work is there', async () => {
    const { page } = await openApp();
    await type(page, '55');
    const { hash } = new URL(await addressOf(page, 'edge'));
    await page.evaluate(
      (fragment) => {
        location.hash = fragment;
      },
      hash.slice(0, -5),
    );
    await page.waitForLoadState();
    await expect.poll(() => strip(page).textContent()).toMatch(/The address is not whole/);
    expect(await side(page)).toBe('55');
    await type(page, '56');
    await expect.poll(() => kept(page)).toBe('56');
  });
});
