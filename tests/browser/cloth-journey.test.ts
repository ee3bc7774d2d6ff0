/** From counts and measures to the cut and the shopping list, by touch on a phone: a cushion, a bag, a cover. */
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
  const input = page.locator(`#field-${field}`);
  await input.tap();
  await input.fill(text);
}

/** Where an element begins and ends on the screen, and how high that is. */
const placeOf = (page: Page, selector: string) =>
  page
    .locator(selector)
    .last()
    .evaluate((element) => {
      const { top, bottom } = element.getBoundingClientRect();
      return { top, bottom, screen: innerHeight };
    });

test('counts and measures come to a cut and a list on one screen, whatever it becomes', async () => {
  const { page, expectClean } = await openApp({
    viewport: viewports.phone,
    touch: true,
  });
  const show = (tab: string) => page.getByRole('tab', { name: tab, exact: true }).tap();
  for (const [side, count] of ['54', '50', '54', '50'].entries()) await type(page, `side-${side}`, count);
  await show('Cloth');
  await page.locator('.cloth').waitFor();
  expect((await amountsOf(page)).Cloth).toBe('measure the panel');

  await type(page, 'cloth-width-0', '41');
  await type(page, 'cloth-height-0', '41');
  await type(page, 'cloth-depth', '1,5');
  // While one types, the answer stands below the fields.
  await expect
    .poll(
      async () => (await placeOf(page, '.cut-size')).top > (await placeOf(page, '#field-cloth-depth')).top,
    )
    .toBe(true);
  await page.getByRole('button', { name: 'Show me the cut' }).tap();
  // Then it comes first: the cut, and the list down to its last line, on one screen.
  await expect
    .poll(async () => {
      const [cut, last] = [await placeOf(page, '#cloth-result'), await placeOf(page, '.shopping .buy')];
      return cut.top >= 0 && last.bottom > cut.bottom && last.bottom <= last.screen;
    })
    .toBe(true);
  // The check value of the trade: common practice, no source.
  expect(await page.locator('.cut-size').textContent()).toMatch(/42\.5 × 42\.5\scm/);
  const cushion = await amountsOf(page);
  expect(cushion.Cloth).toMatch(/42\.5 × 42\.5\scm/);
  expect(cushion.Thread).toMatch(/\d\sm$/);
  expect(Object.keys(cushion).some((name) => /pad/.test(name))).toBe(true);

  await page.getByRole('radio', { name: 'a bag or pocket' }).tap();
  await page.locator('.cloth select').selectOption('2');
  await expect.poll(async () => Object.keys(await amountsOf(page))).toEqual(Object.keys(cushion).slice(0, 4));
  await show('Your edge');
  // What the open side says of the join: 208 counted, each side with 1 corner of 2 chains, less the 48 of side 2.
  await expect
    .poll(() => page.locator('.recipe-part').last().textContent())
    .toMatch(
      /Attach .* front side 2, .*to the other corner of side 2, and fasten off\. It stays open\.\s*160 pairs\./,
    );
  await show('Cloth');
  // Who comes back finds the answer first.
  await expect
    .poll(async () => {
      const { bottom, screen } = await placeOf(page, '.shopping .buy');
      return bottom <= screen;
    })
    .toBe(true);

  await page.getByRole('radio', { name: 'a cover over a form' }).tap();
  await expect.poll(async () => Object.keys(await amountsOf(page)).length).toBe(5);
  const form = Object.values(await amountsOf(page))[4];
  // As large as the back, and a cushion's pad larger: 41 cm less half of 1.5 cm on both edges.
  expect(form).toMatch(/39\.5/);
  expect(Object.values(cushion)[4]).not.toBe(form);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
  expectClean();
});
