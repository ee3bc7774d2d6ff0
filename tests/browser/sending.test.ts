/** Sending a panel and an answer: by the device's own way, by address, and as text that the page reads back. */
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { viewports } from './app.ts';
import { axeCleanInBothThemes, expectNoSidewaysScroll, openApp, readSnapshot, sendEvent } from './harness.ts';

const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true });
const ready = (page: Page) => page.waitForFunction(() => window.ringtrue !== undefined);

/** What the browser would share and copy, put by; `refuses`: what sharing answers. */
async function putBy(
  page: Page,
  ways: { share?: 'taken' | 'AbortError' | 'NotAllowedError'; copies: boolean },
) {
  await page.evaluate(({ share, copies }) => {
    const handed: string[] = [];
    Object.assign(window, { handed });
    const give = (name: string, value: unknown) =>
      Object.defineProperty(navigator, name, { value, configurable: true });
    if (share)
      give('share', async (parcel: { url?: string; text?: string }) => {
        if (share !== 'taken') throw new DOMException('', share);
        handed.push(`shared ${parcel.url ?? parcel.text}`);
      });
    give('clipboard', {
      writeText: async (text: string) => {
        if (!copies) throw new DOMException('', 'NotAllowedError');
        handed.push(`copied ${text}`);
      },
    });
  }, ways);
}
const handed = (page: Page): Promise<string[]> =>
  page.evaluate(() => (window as unknown as { handed: string[] }).handed);

const noticed = (page: Page) => page.locator('.take-part [role=status]', { hasText: /\S/ }).first();

async function paste(page: Page, text: string): Promise<void> {
  await sendEvent(page, { type: 'SHOW', tab: 'take-along' });
  await page.locator('#field-sent').fill(text);
  await button(page, 'Open it').click();
}

test('a panel is shared where the device can, else copied, else selected', async () => {
  const { page } = await openApp();
  await putBy(page, { share: 'taken', copies: true });
  await sendEvent(page, { type: 'SHOW', tab: 'take-along' });
  const address = page.locator('#send-wrong');
  await expect.poll(() => address.inputValue()).toMatch(/#panel=/);
  const link = await address.inputValue();
  await button(page, 'Share: Help me find out').click();
  await expect.poll(() => handed(page)).toEqual([`shared ${link}`]);

  await putBy(page, { share: 'AbortError', copies: true });
  await button(page, 'Share: Help me find out').click();
  await page.waitForTimeout(50);
  expect(await handed(page)).toEqual([]);
  expect(await noticed(page).count()).toBe(0);

  await putBy(page, { share: 'NotAllowedError', copies: true });
  await button(page, 'Share: Help me find out').click();
  await expect.poll(() => handed(page)).toEqual([`copied ${link}`]);
  await expect.poll(() => noticed(page).textContent()).toBe('The address is copied.');

  await putBy(page, { copies: false });
  await button(page, 'Copy the address: Help me find out').click();
  await expect.poll(() => noticed(page).textContent()).toMatch(/It is selected/);
  expect(
    await address.evaluate((field: HTMLInputElement) => [
      field.selectionStart,
      field.selectionEnd === field.value.length,
    ]),
  ).toEqual([0, true]);
});

describe('what is pasted', () => {
  test('as text opens beside the own work; cut, or no panel at all, it is said and stays', async () => {
    const { page } = await openApp();
    await putBy(page, { copies: true });
    await sendEvent(page, { type: 'TYPE', field: 'side.0', text: '80' });
    await sendEvent(page, { type: 'SHOW', tab: 'take-along' });
    await button(page, 'Copy as text: Show my panel').click();
    const [copied = ''] = await handed(page);
    const text = copied.replace('copied ', '');
    expect(text).toContain('front sides: 80, 40, 64, 40');
    await sendEvent(page, { type: 'TYPE', field: 'side.0', text: '55' });

    const trouble = page.locator('#sent-trouble');
    await paste(page, text.replace('80', '81'));
    await expect.poll(() => trouble.textContent()).toMatch(/It is not whole/);
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('field-sent');
    expect(await page.locator('#field-sent').inputValue()).toBe(text.replace('80', '81'));
    await paste(page, 'Hello');
    await expect.poll(() => trouble.textContent()).toMatch(/There is no address in it/);

    await paste(page, `> Hello\n${text.replace(/^/gm, '> ')}\nThank you`);
    await expect.poll(() => page.locator('.notices').textContent()).toMatch(/This panel was sent to you\./);
    expect((await readSnapshot(page)).project.texts['side.0']).toBe('80');
    await button(page, 'Back to mine').click();
    await ready(page);
    await expect.poll(async () => (await readSnapshot(page)).project.texts['side.0']).toBe('55');
  });
});

test('help is asked, answered and sent back with the cause and the cure', async () => {
  const { page } = await openApp({ viewport: viewports.phone, touch: true });
  await sendEvent(page, { type: 'TYPE', field: 'worked.edging.0.1', text: '37' });
  await sendEvent(page, { type: 'SHOW', tab: 'take-along' });
  const asking = page.locator('#send-wrong');
  await expect.poll(() => asking.inputValue()).toMatch(/#panel=/);
  const question = await asking.inputValue();

  // Whoever is asked.
  await paste(page, `Can you help? ${question}.`);
  const causes = page.locator('.causes .cause[aria-expanded=true]');
  await expect.poll(() => causes.count()).toBe(1);
  const cause = (await causes.locator('.cause-title').textContent()) ?? '';
  const cures = page.locator('.cause-body .cure');
  const cure = cures.last();
  const title = (await cure.locator('summary b').textContent()) ?? '';
  await cure.evaluate((fold: HTMLDetailsElement) => {
    fold.open = true;
  });
  await cure.getByRole('button', { name: /^Do it this way/ }).click();
  await page.getByText('Send this answer back').click();
  const answer = page.locator('#send-answer');
  await expect.poll(() => answer.inputValue()).toMatch(/#panel=/);
  const [link, lines] = [await answer.inputValue(), await page.locator('#send-answer-lines').inputValue()];
  expect(lines.split('\n')[0]).toContain(cause);
  expect(lines.split('\n')[1]).toBe(`To put it right: ${title}.`);
  await expectNoSidewaysScroll(page);
  await axeCleanInBothThemes(page, '.wrong-panel');
  await button(page, 'Back to mine').click();
  await ready(page);

  // Back with whoever asked, by both ways.
  for (const sent of [link, lines]) {
    await paste(page, sent);
    const told = page.locator('.sent-answer');
    await expect.poll(() => told.locator('.cause-title').textContent()).toBe(cause);
    await expect.poll(() => told.locator('.cure[open] .tag', { hasText: 'in the answer' }).count()).toBe(1);
    expect(
      await told
        .locator('.cure', { has: page.locator('.tag', { hasText: 'in the answer' }) })
        .locator('b')
        .textContent(),
    ).toBe(title);
    const { tab, project } = await readSnapshot(page);
    expect([tab, project.texts['worked.edging.0.1']]).toEqual(['wrong', '37']);
    await button(page, 'Back to mine').click();
    await ready(page);
  }
  await paste(page, link);
  await button(page, 'Take the answer away').click();
  await expect.poll(() => page.locator('.sent-answer').count()).toBe(0);
  // Of other counts than these, it names nothing.
  await sendEvent(page, { type: 'UNDO' });
  await sendEvent(page, { type: 'UNDO' });
  await sendEvent(page, { type: 'TYPE', field: 'worked.edging.0.1', text: '41' });
  await expect.poll(() => page.locator('.sent-answer').textContent()).toMatch(/not among those found here/);
});
