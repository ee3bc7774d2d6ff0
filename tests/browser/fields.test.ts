/** Fields answer for what is typed: no mark for text that is not read, and every message leads to its field. */
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { openApp, readSnapshot, sendEvent } from './harness.ts';

const field = (page: Page, name: string) => page.locator(`#field-${name.replaceAll('.', '-')}`);
const note = (page: Page, name: string) => page.locator(`#${name.replaceAll('.', '-')}-note`);
const focused = (page: Page) => page.evaluate(() => document.activeElement?.id);
const links = (page: Page) => page.locator('.summary a');
const type = (page: Page, name: string, text: string) => sendEvent(page, { type: 'TYPE', field: name, text });

async function openCounts(page: Page): Promise<void> {
  await page.getByRole('tab', { name: 'What went wrong' }).click();
  await field(page, 'worked.edging.0.1').waitFor({ state: 'attached' });
}

describe('a count on the work', () => {
  test('has the mark of a number as in the recipe only where it is read as that number', async () => {
    const { page, expectClean } = await openApp();
    await openCounts(page);
    const planned = (await readSnapshot(page)).making.plan.edgings[0]?.sides[1];
    await type(page, 'worked.edging.0.1', `${planned}`);
    await expect.poll(() => note(page, 'worked.edging.0.1').textContent()).toBe('✓ as recipe');
    for (const text of [`${planned}-63`, `-${planned}`, `${planned}.7`, 'many']) {
      await type(page, 'worked.edging.0.1', text);
      await expect.poll(() => note(page, 'worked.edging.0.1').textContent()).toBe(`recipe ${planned}`);
    }
    expectClean();
  });

  const stepsOf = (page: Page, name: string) =>
    field(page, name).locator('xpath=ancestor::*[contains(@class,"count-box")]').locator('button.step');

  test('that cannot be read is left as typed by plus and minus', async () => {
    const { page } = await openApp();
    await openCounts(page);
    const count = field(page, 'worked.edging.0.1');
    await count.fill('62-63');
    for (const step of await stepsOf(page, 'worked.edging.0.1').all()) await step.click();
    expect(await count.inputValue()).toBe('62-63');
  });

  test('counts every press of plus, however quick', async () => {
    const { page } = await openApp();
    await openCounts(page);
    const count = field(page, 'worked.edging.0.1');
    await count.fill('20');
    await stepsOf(page, 'worked.edging.0.1')
      .last()
      .evaluate((more) => {
        for (let n = 0; n < 3; n++) (more as HTMLButtonElement).click();
      });
    expect(await count.inputValue()).toBe('23');
    expect((await readSnapshot(page)).project.texts['worked.edging.0.1']).toBe('23');
  });
});

describe('a message leads to its field', () => {
  test.each(['lead', 'marker-every', 'arm.0', 'worked.edging-corner.0.2', 'seen.drift.0', 'seen.front.1'])(
    '%s, in whatever place and however deep in folds',
    async (name) => {
      const { page, expectClean } = await openApp();
      await type(page, name, 'two');
      await page.getByRole('button', { name: /check my numbers/i }).click();
      await links(page).first().click();
      await expect.poll(() => focused(page)).toBe(`field-${name.replaceAll('.', '-')}`);
      expect(await field(page, name).isVisible()).toBe(true);
      expect(await field(page, name).inputValue()).toBe('two');
      expectClean();
    },
  );

  test('a recipe that cannot be read is told before the walk, where it can be mended', async () => {
    const { page } = await openApp();
    await openCounts(page);
    await type(page, 'side.1', 'many');
    await page.getByRole('tab', { name: 'Walk it' }).click();
    await expect.poll(() => links(page).allTextContents()).toEqual(['Side 2 must be a number, like 58']);
    await links(page).first().click();
    await expect.poll(() => focused(page)).toBe('field-side-1');
  });

  test('a count of the work that cannot be read does not bar the walk', async () => {
    const { page } = await openApp();
    await openCounts(page);
    await type(page, 'worked.edging.0.1', '62-63');
    await page.getByRole('tab', { name: 'Walk it' }).click();
    expect((await readSnapshot(page)).tab).toBe('walk');
  });
});

describe('a choice that takes the ground from another', () => {
  test('settles it before the eyes, and one press brings both back', async () => {
    const { page, expectClean } = await openApp();
    await type(page, 'start-side', '4');
    await type(page, 'join-side', '4');
    await sendEvent(page, { type: 'CHANGE', project: { sideCount: 3 } });
    const told = page.locator('.notices');
    await expect
      .poll(() => told.getByRole('status').textContent())
      .toBe(
        'There is no side 4 any more. Side 1 is again the front side to start against. Side 1 is again the front side where the join begins.',
      );
    await told.getByRole('button', { name: 'Undo' }).click();
    const { texts, sideCount } = (await readSnapshot(page)).project;
    expect([sideCount, texts['start-side'], texts['join-side']]).toEqual([4, '4', '4']);
    await expect.poll(() => told.getByRole('status').textContent()).toBe('');
    expectClean();
  });
});

test('what stands by the maker is on again after a reload', async () => {
  const { page } = await openApp();
  await page.getByRole('tab', { name: 'Walk it' }).click();
  for (const name of ['Keep the screen on', 'Read aloud']) {
    await page.getByRole('switch', { name }).click();
    await expect.poll(() => page.getByRole('switch', { name }).getAttribute('aria-checked')).toBe('true');
  }
  await page.reload();
  await page.waitForFunction(() => window.ringtrue !== undefined);
  for (const name of ['Keep the screen on', 'Read aloud'])
    await expect.poll(() => page.getByRole('switch', { name }).getAttribute('aria-checked')).toBe('true');
});

describe('what is pressed and goes away leaves the keyboard on the panel', () => {
  test.each<[string, 'edge' | 'wrong', RegExp]>([
    ['the way on to the walk', 'edge', /^Walk it/],
    ['the way to clear all counts', 'wrong', /^Clear all counts/],
  ])('%s', async (_name, place, button) => {
    const { page, expectClean } = await openApp();
    await openCounts(page);
    await type(page, 'worked.edging.0.1', '37');
    if (place === 'edge') {
      await type(page, 'worked.edging.0.1', '');
      await page.getByRole('tab', { name: 'Your edge' }).click();
    }
    await page.getByRole('button', { name: button }).press('Enter');
    await expect.poll(() => focused(page)).toBe('panel');
    expectClean();
  });
});

describe('what would mend it', () => {
  test('is offered where no back can be worked, taken with one press, and undone with one', async () => {
    const { page, expectClean } = await openApp();
    await type(page, 'side.1', '8');
    await sendEvent(page, { type: 'CHANGE', project: { edgingCount: 3 } });
    const before = (await readSnapshot(page)).project;
    const told = page.locator('.findings');
    await expect
      .poll(() => told.textContent())
      .toMatch(/Side 2 has 6 stitches and the 3 edging rounds add 6/);
    await page.getByRole('button', { name: '2 edging rounds only' }).click();
    const mended = await readSnapshot(page);
    expect([mended.isStale, mended.project.edgingCount]).toEqual([false, 2]);
    await expect.poll(() => focused(page)).toBe('panel');
    await page.getByRole('button', { name: 'Undo' }).first().click();
    expect((await readSnapshot(page)).project).toEqual(before);
    expectClean();
  });
});

describe('an uneven front', () => {
  test('is asked about, evened out with one press, undone with one, and kept with one', async () => {
    const { page, expectClean } = await openApp();
    for (const [side, count] of ['60', '59', '60', '60'].entries()) await type(page, `side.${side}`, count);
    const asked = page.getByRole('group', { name: 'An uneven front' });
    await expect
      .poll(() => asked.textContent())
      .toMatch(/Side 2 has 1 stitch fewer than it seems meant to have\./);
    expect(await asked.textContent()).toMatch(/on side 2 work 2 dc into the 29th stitch\./);
    expect(await asked.textContent()).toMatch(/The sides then have 60, 60, 60, 60\./);
    await asked.getByRole('button', { name: 'It is evened out' }).click();
    await expect.poll(async () => (await readSnapshot(page)).making.edge.sides).toEqual([60, 60, 60, 60]);
    await page.getByRole('button', { name: 'Undo' }).first().click();
    expect((await readSnapshot(page)).making.edge.sides).toEqual([58, 57, 58, 58]);
    await asked.getByRole('button', { name: 'Keep it' }).click();
    await expect.poll(() => asked.count()).toBe(0);
    expect((await readSnapshot(page)).making.plan.edgings[0]?.sides.toSorted()).toEqual([57, 58, 58, 58]);
    expectClean();
  });
});
