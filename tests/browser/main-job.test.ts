/** The main job, end to end, as a person does it: by the fields and buttons of the page. */
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { Look } from '../../src/table/draw-list.ts';
import { axeClean, openApp, readScene, readSnapshot, viewports } from './harness.ts';

const field = (page: Page, name: string) => page.locator(`#field-${name.replaceAll('.', '-')}`);

async function write(page: Page, name: string, text: string): Promise<void> {
  const input = field(page, name);
  // A field may lie in a part of the page that is folded away.
  await input.evaluate((element) => {
    for (let fold = element.closest('details'); fold; fold = fold.parentElement?.closest('details') ?? null)
      fold.open = true;
  });
  await input.fill(text);
}

async function chooseSides(page: Page, count: number): Promise<void> {
  await page.getByRole('radio', { name: new RegExp(`^${count}\\b`) }).check({ force: true });
}

/** Marks of the whole view that show a gap, by the part they lie in. */
async function gapsDrawn(page: Page): Promise<Map<string, number>> {
  const scene = await page.evaluate((gap) => {
    const whole = window.ringtrue!.scene().views.find(({ id }) => id === 'whole');
    return (whole?.parts ?? []).map(({ key, marks }) => [
      key,
      Array.from(marks.look).filter((look) => look === gap).length,
    ]) as [string, number][];
  }, Look.gap);
  return new Map(scene.filter(([, count]) => count > 0));
}

const verdict = (page: Page) => page.locator('.verdict').first();

describe('an unequal four-sided panel', () => {
  test('is typed, planned, walked, and a back side one short shows at that side and nowhere else', async () => {
    const { page, expectClean } = await openApp({ graphics: true });
    for (const [i, count] of ['50', '33', '47', '36'].entries()) await write(page, `side.${i}`, count);
    const planned = (await readSnapshot(page)).making.plan;
    // One corner of 2 chains taken in by each count; the edging adds one stitch at each end of a side.
    expect(planned.edge.sides).toEqual([48, 31, 45, 34]);
    expect(planned.foundation.sides).toEqual([46, 32, 43, 29]);
    const recipe = page.locator('.recipe').first();
    await expect.poll(() => recipe.textContent()).toContain('32');
    expect(await recipe.textContent()).toMatch(/46th/);

    await page.getByRole('tab', { name: 'Walk it' }).click();
    const next = page.getByRole('button', { name: /^Next stitch/ });
    await next.click();
    expect((await readSnapshot(page)).place).toBe(1);
    const side = page.locator('.bar').getByRole('button', { name: 'On to the next side' });
    for (let i = 0; i < 3; i++) await side.click();
    expect((await readSnapshot(page)).step.side).toBeGreaterThanOrEqual(1);

    await page.getByRole('tab', { name: 'Your edge' }).click();
    await write(page, 'worked.edging.0.2', `${(planned.edgings[0]?.sides[2] ?? 0) - 1}`);
    await expect.poll(() => verdict(page).textContent()).toMatch(/Back side 3 is 1 stitch short/);
    const { making } = await readSnapshot(page);
    expect(making.pairing.gaps.map(({ short, backSide, count }) => [short, backSide, count])).toEqual([
      ['back', 2, 1],
    ]);
    const gaps = await gapsDrawn(page);
    expect([...gaps.values()]).toEqual([1]);
    expect((await readScene(page)).views.flatMap(({ labels }) => labels.map(({ text }) => text))).toContain(
      'no partner',
    );
    expectClean();
  });

  test('a corner worked 2 too late shows on the two sides that meet in it', async () => {
    const { page, expectClean } = await openApp();
    const { plan } = (await readSnapshot(page)).making;
    const [, one, two] = plan.edgings[0]?.sides ?? [];
    await write(page, 'worked.edging.0.1', `${(one ?? 0) + 2}`);
    await write(page, 'worked.edging.0.2', `${(two ?? 0) - 2}`);
    await expect.poll(async () => (await readSnapshot(page)).making.pairing.gaps.length).toBe(2);
    const { gaps, sides } = (await readSnapshot(page)).making.pairing;
    expect(gaps.map(({ short, backSide, count }) => [short, backSide, count]).sort()).toEqual([
      ['back', 2, 2],
      ['front', 1, 2],
    ]);
    expect(sides.filter(({ surplus }) => surplus !== 0)).toHaveLength(2);
    expect([...(await gapsDrawn(page)).values()]).toEqual([2, 2]);
    expectClean();
  });

  test('a join begun one position off on one piece shows at the side where it begins', async () => {
    const { page, expectClean } = await openApp();
    await page.evaluate(() =>
      window.ringtrue!.send({ type: 'CHANGE', project: { mishaps: [{ kind: 'join-offset', count: 1 }] } }),
    );
    await expect.poll(() => verdict(page).textContent()).toMatch(/begins 1 stitch/);
    const { gaps } = (await readSnapshot(page)).making.pairing;
    expect(new Set(gaps.map(({ frontSide, backSide }) => `${frontSide} ${backSide}`))).toEqual(
      new Set(['0 0']),
    );
    expect(gaps.map(({ short }) => short).sort()).toEqual(['back', 'front']);
    expectClean();
  });
});

describe('a hexagon', () => {
  test('is typed and read, and its back meets', async () => {
    const { page, expectClean } = await openApp();
    await chooseSides(page, 6);
    for (let i = 0; i < 6; i++) await write(page, `side.${i}`, `${20 + i}`);
    const { making } = await readSnapshot(page);
    expect(making.edge.sides).toEqual([18, 19, 20, 21, 22, 23]);
    expect(making.plan.foundation.sides).toEqual([16, 21, 20, 19, 18, 17]);
    await expect.poll(() => verdict(page).textContent()).toMatch(/All 135 meet/);
    await page.getByRole('tab', { name: 'Walk it' }).click();
    await page.evaluate(() => {
      const { send, snapshot } = window.ringtrue!;
      const last = snapshot().making.steps.length;
      send({ type: 'JUMP', to: last });
      send({ type: 'ANSWER', asks: 'twist' });
      send({ type: 'JUMP', to: last });
    });
    const { stage, step } = await readSnapshot(page);
    expect([stage, step.asks]).toEqual(['join.pad', 'pad']);
    expectClean();
  });
});

describe('numbers that cannot be read', () => {
  test.each([
    ['', 'Enter side 2'],
    ['abc', 'Side 2 must be a number, like 58'],
    ['12.5', 'Side 2 must be a whole number, like 58'],
    ['0', 'Side 2 must be 1 or more'],
    ['1000000', 'Side 2 must be 100002 or fewer'],
    ['58 36', 'Side 2 must be one number, like 58'],
  ])('%j is kept, said when asked, and the last good drawing stays', async (text, says) => {
    const { page, expectClean } = await openApp();
    const before = (await readSnapshot(page)).making.edge;
    await write(page, 'side.1', text);
    await field(page, 'side.1').blur();
    expect(await page.getByText(says).count()).toBe(0);
    await page.getByRole('button', { name: /check my numbers/i }).click();
    await expect.poll(() => page.getByText(says).count()).toBeGreaterThan(0);
    expect(await field(page, 'side.1').inputValue()).toBe(text);
    expect(await field(page, 'side.1').getAttribute('aria-invalid')).toBe('true');
    expect((await readSnapshot(page)).making.edge).toEqual(before);
    expect(await page.title()).toMatch(/^Error: /);
    expectClean();
  });

  test('all are told at once, and each leads to its field', async () => {
    const { page, expectClean } = await openApp();
    for (const [i, text] of ['', 'x', '0', '1.5'].entries()) await write(page, `side.${i}`, text);
    await page.getByRole('button', { name: /check my numbers/i }).click();
    const list = page.getByRole('alert').or(page.locator('.problems')).first();
    await expect.poll(() => list.locator('a').count()).toBe(4);
    await axeClean(page);
    await list.locator('a').nth(2).click();
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('field-side-2');
    expectClean();
  });

  test.each([' 58 ', '５８', '58\u200b', '58 sts'])('%j is taken for 58', async (text) => {
    const { page } = await openApp();
    await write(page, 'side.1', text);
    expect((await readSnapshot(page)).making.edge.sides[1]).toBe(56);
    expect(await field(page, 'side.1').inputValue()).toBe(text);
  });
});

describe('coming back', () => {
  test('a reload comes back to the same panel at the same stitch', async () => {
    const { page, expectClean } = await openApp({ viewport: viewports.phone, touch: true, motion: true });
    await write(page, 'side.0', '71');
    await page.evaluate(() => window.ringtrue!.send({ type: 'JUMP', to: 123 }));
    const before = await readSnapshot(page);
    await page.reload();
    await page.waitForFunction(() => window.ringtrue !== undefined);
    const after = await readSnapshot(page);
    expect(after.place).toBe(123);
    expect(after.project).toEqual(before.project);
    expect(after.step).toEqual(before.step);
    expectClean();
  });

  // At 50 random moments, without a page: `tests/property/walk-model.test.ts`.
  test('killed at any moment, never more than the last tap is lost', async () => {
    const { page } = await openApp({ viewport: viewports.phone, touch: true });
    let random = 12345;
    const nextRandom = (): number => {
      random = (random * 1103515245 + 12345) % 2147483648;
      return random / 2147483648;
    };
    let place = 0;
    for (let round = 0; round < 4; round++) {
      const taps = 1 + Math.floor(nextRandom() * 6);
      for (let i = 0; i < taps; i++) await page.evaluate(() => window.ringtrue!.send({ type: 'NEXT' }));
      place += taps;
      // A crash gives the page no time to tidy up: it is torn down, not closed.
      await page.evaluate(() => localStorage.getItem('ringtrue.work'));
      await page.goto('about:blank');
      await page.goBack();
      await page.waitForFunction(() => window.ringtrue !== undefined);
      expect((await readSnapshot(page)).place).toBe(place);
    }
  });
});
