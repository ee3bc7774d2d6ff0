/** From a measured panel to the shopping list, by touch on a phone: a cushion, then the same panel as a bag and as a cover. */
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { openApp, viewports } from './harness.ts';

const amountsOf = (page: Page) =>
  page
    .locator('.shopping .buy')
    .evaluateAll((lines) =>
      Object.fromEntries(
        lines.map((line) => [
          line.querySelector('.buy-name')?.textContent ?? '',
          line.querySelector('.buy-amount')?.textContent?.trim() ?? '',
        ]),
      ),
    );

async function type(page: Page, field: string, text: string): Promise<void> {
  const input = page.locator(`#field-cloth-${field}`);
  await input.tap();
  await input.fill(text);
}

/** Whether a heading begins on the screen, where the press led. */
const isInView = (page: Page, id: string) =>
  page.locator(`#${id}`).evaluate((heading) => {
    const { top, bottom } = heading.getBoundingClientRect();
    return top >= 0 && bottom <= innerHeight;
  });

test('a measured panel comes to a cut and a list, whatever it becomes', async () => {
  const { page, expectClean } = await openApp({
    viewport: viewports.phone,
    touch: true,
    reducedMotion: true,
  });
  await page.getByRole('tab', { name: 'Cloth', exact: true }).tap();
  await page.locator('.cloth').waitFor();
  expect((await amountsOf(page)).Cloth).toBe('measure the panel');

  await type(page, 'width-0', '41');
  await type(page, 'height-0', '41');
  await type(page, 'depth', '1,5');
  await page.getByRole('button', { name: 'Show me the cut' }).tap();
  await expect.poll(() => isInView(page, 'cloth-result')).toBe(true);
  // The check value of the trade: common practice, no source.
  expect(await page.locator('section[aria-labelledby="cloth-result"]').textContent()).toMatch(
    /42\.5 × 42\.5\scm/,
  );

  await page
    .getByRole('navigation', { name: 'In this place' })
    .getByRole('button', { name: 'Shopping list' })
    .tap();
  await expect.poll(() => isInView(page, 'shopping-heading')).toBe(true);
  const cushion = await amountsOf(page);
  expect(cushion.Cloth).toMatch(/42\.5 × 42\.5\scm/);
  expect(cushion.Thread).toMatch(/\d\sm$/);
  expect(Object.keys(cushion).some((name) => /pad/.test(name))).toBe(true);

  await page.getByRole('radio', { name: 'a bag or pocket' }).tap();
  await page.locator('.cloth select').waitFor();
  const bag = await amountsOf(page);
  expect(Object.keys(bag)).toEqual(Object.keys(cushion).slice(0, 4));

  await page.getByRole('radio', { name: 'a cover over a form' }).tap();
  await expect.poll(async () => Object.keys(await amountsOf(page)).length).toBe(5);
  const form = Object.values(await amountsOf(page))[4];
  // As large as the back, and a cushion's pad larger: 41 cm less half of 1.5 cm on both edges.
  expect(form).toMatch(/39\.5/);
  expect(Object.values(cushion)[4]).not.toBe(form);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
  expectClean();
});
