/** Playing with mishaps, as a person does it: by fold, buttons, selects and keys. */
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { actKinds } from '../../core/index.ts';
import { example } from '../../src/state/project.ts';
import { Look } from '../../src/table/draw-list.ts';
import {
  axeCleanInBothThemes,
  expectNoSidewaysScroll,
  openApp,
  readSnapshot,
  sendEvent,
  viewports,
} from './harness.ts';

async function openFold(page: Page): Promise<void> {
  await page.getByRole('tab', { name: 'Walk it' }).click();
  await page.locator('.mishaps-fold > summary').click();
  await page.locator('.mishap-kinds').waitFor();
}

const time = (page: Page, says: string) =>
  page.getByRole('group', { name: 'When does it happen?' }).getByRole('button', { name: says });
const kind = (page: Page, title: string) =>
  page.locator('.mishap-kind', { has: page.getByText(title, { exact: true }) });
const putIn = (page: Page) => page.getByRole('button', { name: 'Put it in' });
const result = (page: Page) => page.locator('.mishaps-result');
const putInNow = async (page: Page) => (await readSnapshot(page)).project.mishaps;

/** Marks of the whole view that show a gap. */
const gapsDrawn = (page: Page): Promise<number> =>
  page.evaluate((gap) => {
    const whole = window.ringtrue!.scene().views.find(({ id }) => id === 'whole');
    return (whole?.parts ?? []).flatMap(({ marks }) => Array.from(marks.look).filter((look) => look === gap))
      .length;
  }, Look.gap);

describe('a stitch missed on purpose', () => {
  test('is placed, put in, shown where it happens, and taken out again', async () => {
    const { page, expectClean } = await openApp();
    await sendEvent(page, { type: 'JUMP', to: 30 });
    await openFold(page);
    expect(await gapsDrawn(page)).toBe(0);

    await kind(page, 'A stitch missed').click();
    await page.getByLabel('back side', { exact: true }).selectOption({ label: '3, faces front 3' });
    await page.getByLabel('stitch of the side', { exact: true }).fill('12');
    await page.getByRole('button', { name: 'Increase how many stitches by 1' }).click();
    await putIn(page).click();
    expect(await putInNow(page)).toEqual([
      { kind: 'stitch-missed', round: 'edging', edging: 0, side: 2, place: 11, count: 2 },
    ]);
    await expect.poll(() => result(page).textContent()).toMatch(/Back side 3 is 2 stitches short/);
    expect(await result(page).evaluate((element) => element === document.activeElement)).toBe(true);
    expect(await gapsDrawn(page)).toBe(2);

    await page.getByRole('button', { name: /^Go to where it happens/ }).click();
    const there = await readSnapshot(page);
    expect(there.step).toMatchObject({ stage: 'edging', side: 2, mishap: 0 });

    await page.getByRole('button', { name: 'Back to your step 31' }).click();
    expect((await readSnapshot(page)).place).toBe(30);
    await page.getByRole('button', { name: 'Take it out: A stitch missed' }).click();
    await expect.poll(() => gapsDrawn(page)).toBe(0);
    expect((await readSnapshot(page)).making.pairing.verdict.kind).toBe('meets');
    expect(await result(page).count()).toBe(0);
    expectClean();
  });

  test('keeps every answer, however soon one follows another', async () => {
    const { page } = await openApp();
    await openFold(page);
    await kind(page, 'A stitch missed').click();
    await page.locator('.mishap-place').waitFor();
    // All between two renderings: nothing is drawn while a script runs.
    await page.evaluate(() => {
      const side = document.getElementById('mishap-side') as HTMLSelectElement;
      side.selectedIndex = 2;
      side.dispatchEvent(new Event('change', { bubbles: true }));
      const place = document.getElementById('field-mishap-place') as HTMLInputElement;
      place.value = '12';
      place.dispatchEvent(new Event('input', { bubbles: true }));
      document.querySelector<HTMLButtonElement>('.mishap-place .action')!.click();
    });
    expect(await putInNow(page)).toMatchObject([{ side: 2, place: 11 }]);
  });

  test('is told where it cannot be, and nothing is put in', async () => {
    const { page } = await openApp();
    await openFold(page);
    await kind(page, 'A stitch missed').click();
    const field = page.getByLabel('stitch of the side', { exact: true });
    await field.fill('999');
    expect(await field.getAttribute('aria-invalid')).toBeNull();
    await putIn(page).click();
    await expect.poll(() => field.getAttribute('aria-invalid')).toBe('true');
    expect(await page.locator('#field-mishap-place-problem').textContent()).toMatch(
      /must be between 2 and 37/,
    );
    expect(await field.inputValue()).toBe('999');
    expect(await putInNow(page)).toEqual([]);
    await field.fill('5');
    await putIn(page).click();
    expect(await putInNow(page)).toHaveLength(1);
  });
});

describe('the fold', () => {
  test('fetches what is in it only when it is opened', async () => {
    const { page, record } = await openApp();
    await page.getByRole('tab', { name: 'Walk it' }).click();
    await page.locator('.mishaps-fold > summary').waitFor();
    const before = record.requests.length;
    await page.locator('.mishaps-fold > summary').click();
    await page.locator('.mishap-kinds').waitFor();
    expect(record.requests.slice(before).filter((address) => address.endsWith('.js')).length).toBeGreaterThan(
      0,
    );
  });

  test('every kind there is can be put in with the keyboard alone, or says why it cannot happen', async () => {
    const { page, expectClean } = await openApp();
    await openFold(page);
    const done: string[] = [];
    const notHere: string[] = [];
    for (const says of ['planning', 'foundation', 'edging', 'join']) {
      await time(page, says).press('Enter');
      await expect.poll(() => time(page, says).getAttribute('aria-pressed')).toBe('true');
      for (let row = 0; row < (await page.locator('.mishap-kind').count()); row++) {
        const button = page.locator('.mishap-kind').nth(row);
        const title = (await button.locator('.mishap-title').textContent()) ?? '';
        await button.press('Enter');
        if ((await button.getAttribute('aria-disabled')) === 'true') {
          expect(await button.getAttribute('aria-expanded'), title).toBe('false');
          expect(await button.locator('.mishap-story').textContent(), title).toMatch(/^Your/);
          notHere.push(title);
          continue;
        }
        await putIn(page).press('Enter');
        const [mishap, ...more] = await putInNow(page);
        expect(more, title).toEqual([]);
        done.push(mishap?.kind ?? title);
        expect((await readSnapshot(page)).problems, title).toEqual([]);
        await page.getByRole('button', { name: /^Take it out/ }).press('Enter');
        await expect.poll(() => result(page).count()).toBe(0);
      }
    }
    const all = new Set<string>(actKinds);
    for (const one of done) all.delete(one);
    // The example closes beside the first stitch as planned, on both rounds.
    expect([...all]).toEqual(['closing-beside-first']);
    expect(notHere).toEqual(['Closed beside the first stitch', 'Closed beside the first stitch']);
    expectClean();
  });

  test('several can be in at once, and all are taken out with one press', async () => {
    const { page } = await openApp();
    await openFold(page);
    await kind(page, 'A stitch missed').click();
    await putIn(page).click();
    await time(page, 'join').click();
    await kind(page, 'The last hole left open').click();
    await putIn(page).click();
    await expect.poll(() => result(page).textContent()).toMatch(/2 mishaps are in/);
    expect(await result(page).textContent()).toMatch(/The last hole is open/);
    expect(await page.locator('.mishaps-fold > summary').textContent()).toMatch(/2 in/);
    await page.getByRole('button', { name: 'Take all out' }).click();
    expect(await putInNow(page)).toEqual([]);
  });

  test('on a round panel offers no corner mishap, and says why', async () => {
    const { page } = await openApp();
    await sendEvent(page, { type: 'CHANGE', project: { sideCount: 0 } });
    await openFold(page);
    const corner = kind(page, 'A corner forgotten');
    expect(await corner.getAttribute('aria-disabled')).toBe('true');
    expect(await corner.textContent()).toMatch(/Your panel has no corners\./);
    await corner.click({ force: true });
    expect(await corner.getAttribute('aria-expanded')).toBe('false');
    await kind(page, 'A stitch missed').click();
    expect(await page.getByLabel('back side', { exact: true }).count()).toBe(0);
    await putIn(page).click();
    expect(await putInNow(page)).toHaveLength(1);
  });

  test('speaks US terms where they are chosen', async () => {
    const { page } = await openApp();
    await sendEvent(page, { type: 'SETTLE', settings: { dialect: 'us' } });
    await openFold(page);
    expect(await kind(page, 'A stitch skipped').count()).toBe(1);
    expect(await page.locator('.mishap-kinds').textContent()).toMatch(/single crochet/);
    expect(await page.locator('.mishap-kinds').textContent()).not.toMatch(/double crochet|missed/);
  });
});

describe('a panel changed afterwards', () => {
  test('so that a mishap has no place any more says so, and lets it be taken out', async () => {
    const { page } = await openApp();
    const mishap = { kind: 'corner-forgotten', round: 'edging', corner: 3 } as const;
    await sendEvent(page, { type: 'CHANGE', project: { mishaps: [mishap] } });
    await sendEvent(page, { type: 'CHANGE', project: { sideCount: 3 } });
    const strip = page.locator('.notices');
    await expect.poll(() => strip.textContent()).toMatch(/its corner must be between 1 and 3\./);
    await strip.getByRole('button', { name: 'Take it out' }).click();
    await expect.poll(() => strip.textContent()).not.toMatch(/corner/);
    expect((await readSnapshot(page)).problems).toEqual([]);
    expect((await readSnapshot(page)).making.edge.sides).toHaveLength(3);
  });
});

describe('with a thumb', () => {
  test('on a phone nothing is smaller than 44 px, axe finds nothing in both themes, nothing is cut off', async () => {
    const { page } = await openApp({ viewport: viewports.phone, touch: true });
    await openFold(page);
    for (const title of ['A corner early or late', 'A stitch missed']) {
      await kind(page, title).tap();
      await page.locator('.mishap-place').waitFor();
      await axeCleanInBothThemes(page, '.mishaps');
      expect(await smallTargets(page)).toEqual([]);
    }
    await putIn(page).tap();
    await result(page).waitFor();
    await axeCleanInBothThemes(page);
    expect(await smallTargets(page)).toEqual([]);
    await expectNoSidewaysScroll(page);
    await page.setViewportSize({ width: 320, height: 700 });
    await expectNoSidewaysScroll(page);
  });

  test('with letters twice as large nothing is cut off', async () => {
    const { page } = await openApp({ viewport: viewports.phone });
    await page.evaluate(() => document.documentElement.style.setProperty('font-size', '200%'));
    await openFold(page);
    await kind(page, 'A corner early or late').click();
    await page.locator('.mishap-place').waitFor();
    const cutOff = await page.evaluate(() =>
      [...document.querySelectorAll('.mishaps :is(button, select, input, p, span)')]
        .filter((element) => element.getBoundingClientRect().right > innerWidth)
        .map((element) => element.textContent?.trim()),
    );
    expect(cutOff).toEqual([]);
  });

  test('going to where it happens brings the drawing into view', async () => {
    const { page } = await openApp({
      viewport: viewports.phone,
      touch: true,
      storage: {
        'ringtrue.work': JSON.stringify({
          version: 1,
          tab: 'walk',
          project: {
            ...example,
            mishaps: [{ kind: 'hidden-missed', round: 'edging', edging: 0, corner: 1 }],
          },
        }),
      },
    });
    await page.locator('.mishaps-fold > summary').tap();
    const go = page.getByRole('button', { name: /^Go to where it happens/ });
    await go.scrollIntoViewIfNeeded();
    await go.tap();
    await expect.poll(() => page.evaluate(() => scrollY)).toBe(0);
    expect((await readSnapshot(page)).step).toMatchObject({ stage: 'edging', mishap: 0 });
  });
});

/** Everything to be pressed in the fold that is lower or narrower than 44 px. */
const smallTargets = (page: Page): Promise<string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll('.mishaps :is(button, select, input), .mishaps-fold > summary')]
      .map((element) => ({ element, box: element.getBoundingClientRect() }))
      .filter(({ box }) => box.width < 44 || box.height < 44)
      .map(
        ({ element, box }) =>
          `${element.textContent?.trim() || element.className}: ${box.width} x ${box.height}`,
      ),
  );
