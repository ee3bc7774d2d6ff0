/** Take along: the pattern on the page, copied, saved and kept; several sizes. */
import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { readPattern } from '../unit/pattern/reader.ts';
import { viewports } from './app.ts';
import { axeCleanInBothThemes, expectNoSidewaysScroll, openApp, readSnapshot } from './harness.ts';

const show = async (page: Page): Promise<void> => {
  await page.getByRole('tab', { name: 'Take along' }).click();
  await page.getByRole('heading', { name: 'Take along' }).waitFor();
};

const saved = async (page: Page, button: string): Promise<{ name: string; text: string }> => {
  const coming = page.waitForEvent('download');
  await page.getByRole('button', { name: button }).click();
  const download = await coming;
  return { name: download.suggestedFilename(), text: await readFile(await download.path(), 'utf8') };
};

describe('take along', () => {
  test('the pattern holds the plan, and is saved in three formats under its title', async () => {
    const { page, expectClean } = await openApp();
    await show(page);
    await page.getByLabel('title').fill('Hazel Row, No. 2');
    await page.getByLabel('designed by').fill('Wren Tallow');
    await page.getByLabel('notes').fill('Wash it cold.');
    const { plan } = (await readSnapshot(page)).making;
    const text = await saved(page, 'Save as text');
    expect(text.name).toBe('hazel-row-no-2.txt');
    expect(text.text).toMatch(/^Hazel Row, No\. 2\nDesigned by Wren Tallow\n/);
    const read = readPattern(text.text);
    expect(read.foundation.sides).toEqual(plan.foundation.sides);
    expect(read.edgings.map(({ counts }) => counts.sides)).toEqual(plan.edgings.map(({ sides }) => sides));
    expect(read.faces).toEqual(plan.faces);
    expect((await saved(page, 'Save as Markdown')).text).toMatch(/^# Hazel Row, No\. 2\n/);
    const paper = await saved(page, 'Save as a page');
    expect(paper.name).toBe('hazel-row-no-2.html');
    expect(paper.text).toContain('<h1>Hazel Row, No. 2</h1>');
    await expect
      .poll(() => page.getByRole('status').filter({ hasText: 'hazel-row-no-2.html' }).count())
      .toBe(1);
    expectClean();
  });

  test('what was typed comes back, and undo takes it back', async () => {
    const { page } = await openApp();
    await show(page);
    await page.getByLabel('title').fill('Hazel');
    await page.reload();
    await page.getByRole('heading', { name: 'Take along' }).waitFor();
    expect(await page.getByLabel('title').inputValue()).toBe('Hazel');
    await page.getByLabel('title').fill('Hazel Row');
    await page.getByRole('button', { name: 'Undo' }).first().click();
    await expect.poll(() => page.getByLabel('title').inputValue()).toBe('Hazel');
  });

  test('several sizes stand in brackets, and one that cannot be worked is named with the reason', async () => {
    const { page, expectClean } = await openApp();
    await show(page);
    await page.getByText('Several sizes').click();
    await page
      .getByLabel(/One size a line/)
      .fill('small: 64, 40\nsmall: 64, 40, 64, 40\nlarge: 72, 48, 72, 48\ntiny: 3');
    const pattern = page.getByRole('article', { name: 'The pattern' });
    await expect.poll(() => pattern.textContent()).toContain('small (large)');
    expect(await pattern.textContent()).toContain('62 (70)');
    const sizes = await page.locator('.take-sizes li').allTextContents();
    expect(sizes).toEqual([
      '"small: 64, 40" is not read. Give a name, a colon, and 1 count or 4 counts.',
      'small: works, 208 in all.',
      'large: works, 240 in all.',
      expect.stringMatching(
        /^tiny: cannot be worked\. Side 1 of tiny has 1 stitch and the edging round adds 2/,
      ),
    ]);
    await page.getByLabel('stitches more a side').fill('8');
    await page.getByLabel('sizes in all').fill('3');
    await page.getByRole('button', { name: 'Fill the sizes in' }).click();
    await expect.poll(() => pattern.textContent()).toContain('62 (70: 78)');
    // A number that cannot be read fills nothing in.
    await page.getByLabel('stitches more a side').fill('some');
    await page.getByRole('button', { name: 'Fill the sizes in' }).click({ force: true });
    await expect
      .poll(() => page.getByText('Give the stitches as a whole number, and 2 to 6 sizes.').count())
      .toBe(1);
    expect(await pattern.textContent()).toContain('62 (70: 78)');
    await page
      .getByLabel(/One size a line/)
      .fill(Array.from({ length: 7 }, (_, i) => `${i}: ${60 + i}`).join('\n'));
    await expect.poll(() => page.getByText('Only the first 6 sizes are written out.').count()).toBe(1);
    expectClean();
  });

  test.each(['phone', 'desktop'] as const)(
    'on a %s nothing is cut off, and axe finds nothing',
    async (device) => {
      const { page } = await openApp({ viewport: viewports[device], touch: device === 'phone' });
      await show(page);
      await page.getByText('Several sizes').click();
      await page.getByLabel(/One size a line/).fill('small: 64, 40, 64, 40\nlarge: 72, 48, 72, 48');
      await axeCleanInBothThemes(page);
      await expectNoSidewaysScroll(page);
    },
  );
});

describe('a written pattern', () => {
  test('is read before eyes, checked after a yes, and kept', async () => {
    const { page, expectClean } = await openApp();
    await show(page);
    await page.getByText('Check a written pattern').click();
    const text = 'Round 1: 8 dc in all\nRound 2: 16 dc in all\nRound 3: about 26\nRound 4: 34 dc in all';
    await page.getByLabel('the rounds, one a line').fill(text);
    const lines = page.locator('.check-read li');
    await expect.poll(() => lines.count()).toBe(4);
    expect(await lines.nth(2).textContent()).toMatch(/Round 3: no count that is sure/);
    expect(await page.getByText('With 32 in round 4, all counts agree.').count()).toBe(0);
    await page.getByRole('button', { name: 'That is right: check it' }).click();
    await expect
      .poll(() => page.getByText('Round 4: the recipe gives 32 where 34 is printed.').count())
      .toBe(1);
    expect(await page.getByText('With 32 in round 4, all counts agree.').count()).toBe(1);
    // Another text is another reading: it must be looked at anew.
    await page.getByLabel('the rounds, one a line').fill(text.replace('34', '32'));
    await expect.poll(() => page.getByText('With 32 in round 4').count()).toBe(0);
    await page.getByRole('button', { name: 'That is right: check it' }).click();
    await expect
      .poll(() => page.getByText(/3 counts compared: the pattern agrees with itself\./).count())
      .toBe(1);
    await page.reload();
    await page.getByRole('heading', { name: 'Take along' }).waitFor();
    expect(await page.getByLabel('the rounds, one a line').inputValue()).toBe(text.replace('34', '32'));
    expectClean();
  });
});
