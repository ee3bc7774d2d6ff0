/** From what was counted to the last joined pair, on the page: typing, choosing a cure by tap, and walking on. */
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import type { Page as Told } from '../reader/reader.ts';
import { readSnapshot, sendEvent } from './app.ts';
import { drawn } from './walking.ts';

export type Panel = { sides: readonly number[]; edgings?: number };

/** A panel whose counts leave its corners of two chains out. */
export async function setPanel(page: Page, { sides, edgings = 1 }: Panel): Promise<void> {
  const project = { sideCount: sides.length, counted: 'stitches-only', edgingCount: edgings } as const;
  await sendEvent(page, { type: 'CHANGE', project });
  for (const [side, count] of sides.entries())
    await sendEvent(page, { type: 'TYPE', field: `side.${side}`, text: `${count}` });
  await page.getByRole('tab', { name: 'What went wrong' }).tap();
  await page.locator('.seen').waitFor();
}

/** Types into a field of the page, opening what it is folded away in. */
export async function count(page: Page, name: string, text: string): Promise<void> {
  const input = page.locator(`#field-${name.replaceAll('.', '-')}`);
  await input.evaluate((element) => {
    for (let fold = element.closest('details'); fold; fold = fold.parentElement?.closest('details') ?? null)
      fold.open = true;
  });
  await input.fill(text);
}

export const standAt = (page: Page, label: string): Promise<unknown> =>
  page.getByLabel('How far is your piece?').selectOption({ label });

/** What the page answers now: what it says of the ways, and the title of the first cause. */
export async function answered(page: Page): Promise<{ says: string; first: string; place: string }> {
  await page.locator('.cause-title').first().waitFor();
  const text = async (selector: string): Promise<string> =>
    (await page.locator(selector).first().textContent())?.trim() ?? '';
  return {
    says: await text('.wrong-says'),
    first: await text('.cause-title'),
    place: await text('.cause-place'),
  };
}

/** Opens the cause of that title, or else what is open; chooses the cure there, and answers its text. */
export async function chooseCure(page: Page, title: string, cause?: string): Promise<string> {
  await page.locator('.cause-title').first().waitFor();
  if (cause !== undefined) {
    const entry = page
      .locator('.cause')
      .filter({ has: page.getByText(cause, { exact: true }) })
      .first();
    if ((await entry.getAttribute('aria-expanded')) === 'false') await entry.tap();
    await expect.poll(() => entry.getAttribute('aria-expanded')).toBe('true');
  }
  const within = page.locator(cause === undefined ? '.wrong-result' : '.cause-body');
  const cure = within
    .locator('.cure')
    .filter({ has: page.getByText(title, { exact: true }) })
    .first();
  await cure.waitFor();
  if ((await cure.getAttribute('open')) === null) await cure.locator('summary').tap();
  const says = (await cure.textContent())?.replace(/\s+/g, ' ').trim() ?? '';
  await cure.getByRole('button', { name: /^Do it this way/ }).tap();
  await page.locator('.wrong-done').waitFor();
  return says;
}

/**
 * Taps on to the walk, and Next until nothing is left, reading every step as it stands on the page. `where`: where the
 * work goes on, as it is told before.
 */
export async function walkToTheEnd(page: Page): Promise<{ where: string; pages: Told[] }> {
  const done = page.locator('.wrong-done');
  const where = (await done.locator('p b').textContent()) ?? '';
  await done.getByRole('button', { name: /^Walk on/ }).tap();
  await drawn(page);
  expect((await readSnapshot(page)).tab).toBe('walk');
  return { where, pages: await readOn(page) };
}

export function readOn(page: Page): Promise<Told[]> {
  return page.evaluate(async () => {
    const frame = () => new Promise((done) => requestAnimationFrame(done));
    const bar = document.querySelector('.bar') as Element;
    const text = (selector: string): string =>
      (bar.querySelector(selector)?.textContent ?? '').replace(/\s+/g, ' ').trim();
    const read: Told[] = [];
    for (let tries = 0; tries < 1000; tries++) {
      read.push({
        act: text('.saying-act'),
        where: text('.saying-where'),
        count: text('.saying-count'),
        check: text('.boxed.check').replace(/^Look/, '').trim() || text('.question-words p:last-child'),
        ask: text('.question-asks'),
        caution: text('.boxed.caution')
          .replace(/^Take care/, '')
          .trim(),
      });
      const answer = bar.querySelector<HTMLElement>('.question .button.strong');
      const next = answer ?? (bar.querySelector('.next') as HTMLElement);
      if (next.getAttribute('aria-disabled') === 'true') return read;
      next.click();
      await frame();
    }
    return read;
  });
}
