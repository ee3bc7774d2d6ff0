/** Hands: single clicks for all that can be dragged, presses that can be called off, keys that stay out of the way. */
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { settle } from './app.ts';
import { openApp, readSnapshot, sendEvent, viewports } from './harness.ts';
import { answerAll, drawn, middle, setSmallPanel } from './walking.ts';

type Spotted = { part: string; index: number } | null;
type Face = {
  table(): {
    spotAt(x: number, y: number): Spotted;
    boxOf(spot: {
      view: string;
      part: string;
      index: number;
    }): { x: number; y: number; width: number; height: number } | null;
  };
};

/** Where a mark of the whole view lies on the screen. */
const markAt = (page: Page, part: string, index: number) =>
  page.evaluate(
    ([key, which]) => {
      const host = document.getElementById('table')?.getBoundingClientRect();
      const box = (window.ringtrue as unknown as Face)
        .table()
        .boxOf({ view: 'whole', part: key, index: which });
      return box && host ? { ...box, x: box.x + host.x, y: box.y + host.y } : null;
    },
    [part, index] as const,
  );

const room = async (page: Page, view: 'whole' | 'close') =>
  (await page.locator(`[data-region="${view}"]`).boundingBox())!;
const viewButton = (page: Page, name: string) =>
  page.getByRole('group', { name: 'Move the whole panel' }).getByRole('button', { name, exact: true });

async function clickOn(page: Page, rect: { x: number; y: number; width: number; height: number } | null) {
  if (rect === null) throw new Error('Nothing there to click');
  await page.mouse.click(...middle(rect));
  await drawn(page);
}

describe('by single clicks alone', () => {
  test('the view comes closer, moves to a stitch, and the walk goes there', async () => {
    const app = await openApp();
    const { page } = app;
    await sendEvent(page, { type: 'SHOW', tab: 'walk' });
    await answerAll(page);
    // The room of the drawing is what the words beside it leave, in the typeface they have in the end.
    await settle(page);
    const part = 'front.1';
    const index = 20;
    const before = (await markAt(page, part, index))!;
    for (let i = 0; i < 5; i++) await clickOn(page, await viewButton(page, 'Closer').boundingBox());
    const closer = (await markAt(page, part, index))!;
    expect(closer.width).toBeGreaterThan(before.width * 4);
    // Arrows bring the stitch into the middle of its room.
    for (let presses = 0; presses < 60; presses++) {
      const [x, y] = middle((await markAt(page, part, index))!);
      const area = await room(page, 'whole');
      const [dx, dy] = [x - (area.x + area.width / 2), y - (area.y + area.height / 2)];
      if (Math.abs(dx) < 60 && Math.abs(dy) < 60) break;
      const way = Math.abs(dx) > Math.abs(dy) ? (dx > 0 ? 'right' : 'left') : dy > 0 ? 'down' : 'up';
      await clickOn(page, await viewButton(page, `Move ${way}`).boundingBox());
    }
    const mark = (await markAt(page, part, index))!;
    const area = await room(page, 'whole');
    expect(mark.x).toBeGreaterThan(area.x);
    expect(mark.x + mark.width).toBeLessThan(area.x + area.width);
    await clickOn(page, mark);
    const { step } = await readSnapshot(page);
    expect([step.stage, step.side, step.place]).toEqual(['front', 1, 20]);
    // And on from there, by the buttons beside the sentence.
    await clickOn(page, await page.locator('#next').boundingBox());
    expect((await readSnapshot(page)).step.place).toBe(21);
    await clickOn(page, await viewButton(page, 'Show the whole').boundingBox());
    expect((await markAt(page, part, index))!.width).toBeCloseTo(before.width, 1);
    app.expectClean();
  });

  test('any stitch of a large panel is reached on a narrow phone: the slider near it, then Next and back', async () => {
    const app = await openApp({ viewport: { width: 320, height: 568 } });
    const { page } = app;
    for (let side = 0; side < 4; side++)
      await sendEvent(page, { type: 'TYPE', field: `side.${side}`, text: '600' });
    await answerAll(page);
    await sendEvent(page, { type: 'SHOW', tab: 'walk' });
    await drawn(page);
    for (const wanted of [2500, 7000]) {
      const slider = page.locator('#scrubber');
      await slider.scrollIntoViewIfNeeded();
      const { width, height } = (await slider.boundingBox())!;
      const { length } = (await readSnapshot(page)).making.steps;
      await slider.click({ position: { x: (width * wanted) / length, y: height / 2 } });
      await drawn(page);
      const near = (await readSnapshot(page)).place;
      expect(Math.abs(near - wanted)).toBeLessThan(length / 15);
      // Small moves are exact in both directions.
      await page.locator('#next').click();
      expect((await readSnapshot(page)).place).toBe(near + 1);
      await page.getByRole('button', { name: 'Back by one stitch' }).click();
      expect((await readSnapshot(page)).place).toBe(near);
    }
    app.expectClean();
  });
});

describe('a press that is called off', () => {
  test.each([
    ['Next', '#next'],
    ['the terms', '.quick.in-head .segment >> nth=1'],
    ['a jump', '.jump .icon-button >> nth=1'],
    ['the way closer', '.view-whole .view-button >> nth=0'],
  ])('on %s does nothing when let go elsewhere', async (_, selector) => {
    const app = await openApp();
    const { page } = app;
    await setSmallPanel(page);
    await drawn(page);
    const before = await readSnapshot(page);
    const size = (await markAt(page, 'front.0', 0))!.width;
    await page.mouse.move(...middle((await page.locator(selector).boundingBox())!));
    await page.mouse.down();
    await page.mouse.move(640, 520, { steps: 5 });
    await page.mouse.up();
    await drawn(page);
    const { pointed: _over, ...after } = await readSnapshot(page);
    const { pointed: _before, ...same } = before;
    expect(after).toEqual(same);
    expect((await markAt(page, 'front.0', 0))!.width).toBe(size);
    app.expectClean();
  });

  test('a drag over the drawing moves it and chooses no stitch', async () => {
    const app = await openApp();
    const { page } = app;
    await setSmallPanel(page);
    for (let i = 0; i < 3; i++) await viewButton(page, 'Closer').click();
    await drawn(page);
    const mark = (await markAt(page, 'front.0', 2))!;
    const [x, y] = middle(await room(page, 'whole'));
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x + 90, y + 70, { steps: 6 });
    await page.mouse.up();
    await drawn(page);
    const moved = (await markAt(page, 'front.0', 2))!;
    expect(moved.x - mark.x).toBeGreaterThan(40);
    expect((await readSnapshot(page)).place).toBe(0);
    app.expectClean();
  });
});

describe('keys', () => {
  test('typed into a field they are text and nothing else', async () => {
    const app = await openApp();
    const { page } = app;
    const before = await readSnapshot(page);
    await page.locator('#field-side-0').focus();
    for (const key of 'abcdefghijklmnopqrstuvwxyz?[]') await page.keyboard.press(key);
    for (const key of ['ArrowRight', 'ArrowLeft', 'PageDown', 'PageUp', 'Home', 'End'])
      await page.keyboard.press(key);
    const after = await readSnapshot(page);
    expect([after.place, after.tab, after.playing, after.settings]).toEqual([
      before.place,
      before.tab,
      before.playing,
      before.settings,
    ]);
    expect(await page.locator('#field-side-0').inputValue()).toContain('xyz');
    app.expectClean();
  });

  test.each([
    ['a choice that was pressed', 'input[type="radio"] >> nth=0'],
    ['another number', '#field-side-2'],
    ['a button', '#tab-edge'],
    ['nothing', null],
  ])(
    'undo takes back the last change and redo brings it again, with the focus on %s',
    async (_, selector) => {
      const app = await openApp();
      const { page } = app;
      const field = page.locator('#field-side-0');
      const typed = async () => (await readSnapshot(page)).project.texts['side.0'];
      const before = await field.inputValue();
      await field.fill('71');
      await page.evaluate(() => (document.activeElement as HTMLElement).blur());
      if (selector !== null) await page.locator(selector).focus();
      await page.keyboard.press('Control+z');
      await drawn(page);
      expect([await typed(), await field.inputValue()]).toEqual([before, before]);
      await page.keyboard.press('Control+z');
      expect(await typed(), 'there is no more to take back').toBe(before);
      await page.keyboard.press('Control+Shift+Z');
      await drawn(page);
      expect([await typed(), await field.inputValue()]).toEqual(['71', '71']);
      app.expectClean();
    },
  );

  test('undo after a choice takes back the choice, and no letter that was typed before', async () => {
    const app = await openApp();
    const { page } = app;
    const field = page.locator('#field-side-0');
    await field.focus();
    await field.press('Control+a');
    await page.keyboard.type('71');
    const counted = (await readSnapshot(page)).project.counted;
    await page.locator('input[name="counted"]:not(:checked)').first().check({ force: true });
    expect((await readSnapshot(page)).project.counted).not.toBe(counted);
    await page.keyboard.press('Control+z');
    const { project } = await readSnapshot(page);
    expect([project.counted, project.texts['side.0']]).toEqual([counted, '71']);
    app.expectClean();
  });

  test('tabs: arrows go round, Home and End to the ends, Tab leaves', async () => {
    const app = await openApp();
    const { page } = app;
    const tabs = await page.getByRole('tab').evaluateAll((all) => all.map(({ id }) => id));
    const [first, second, last] = [tabs[0], tabs[1], tabs.at(-1)];
    expect(tabs.length).toBeGreaterThanOrEqual(3);
    await page.locator(`#${first}`).focus();
    for (const [key, id] of [
      ...tabs.slice(1).map((id) => ['ArrowRight', id] as const),
      ['ArrowRight', first],
      ['ArrowLeft', last],
      ['Home', first],
      ['ArrowRight', second],
      ['End', last],
    ] as const) {
      await page.keyboard.press(key);
      await drawn(page);
      expect(await page.getByRole('tab', { selected: true }).getAttribute('id')).toBe(id);
      expect(await page.evaluate(() => document.activeElement?.id)).toBe(id);
    }
    await page.keyboard.press('Tab');
    expect(await page.evaluate(() => document.activeElement?.getAttribute('role'))).not.toBe('tab');
    app.expectClean();
  });

  test('the slider of the making is a slider, says its place in words, and takes the usual keys', async () => {
    const app = await openApp();
    const { page } = app;
    await setSmallPanel(page);
    await answerAll(page);
    const slider = page.getByRole('slider', { name: 'Place in the making' });
    await slider.focus();
    const place = async () => {
      await drawn(page);
      return (await readSnapshot(page)).place;
    };
    const last = (await readSnapshot(page)).making.steps.length - 1;
    await page.keyboard.press('ArrowRight');
    expect(await place()).toBe(1);
    await page.keyboard.press('ArrowLeft');
    expect(await place()).toBe(0);
    await page.keyboard.press('PageUp');
    expect(await place()).toBeGreaterThan(2);
    await page.keyboard.press('End');
    expect(await place()).toBe(last);
    await page.keyboard.press('Home');
    expect(await place()).toBe(0);
    expect(await slider.getAttribute('aria-valuetext')).toBe(
      'Front · side 1 · stitch 1 of 6 · 5 to the corner',
    );
    app.expectClean();
  });

  test('what cannot be pressed just now can still be found', async () => {
    const app = await openApp();
    const { page } = app;
    await setSmallPanel(page);
    await drawn(page);
    const back = page.getByRole('button', { name: 'Back by one stitch' });
    expect(await back.getAttribute('aria-disabled')).toBe('true');
    await back.focus();
    expect(await back.evaluate((button) => button === document.activeElement)).toBe(true);
    await page.keyboard.press('Enter');
    expect((await readSnapshot(page)).place).toBe(0);
    app.expectClean();
  });
});

describe('targets', () => {
  test.each([
    ['edge', viewports.phone],
    ['cloth', viewports.phone],
    ['walk', viewports.phone],
    ['wrong', viewports.phone],
    ['take-along', viewports.phone],
    ['walk', { width: 320, height: 568 }],
    ['walk', viewports.desktop],
  ] as const)('on %s at %o: none is under 24 px', async (tab, viewport) => {
    const app = await openApp({ viewport });
    const { page } = app;
    await sendEvent(page, { type: 'SHOW', tab });
    if (tab === 'cloth') await page.locator('.cloth input').first().waitFor();
    if (tab === 'take-along') await page.locator('.take-along button').first().waitFor({ state: 'attached' });
    await drawn(page);
    await drawn(page);
    const faults = await page.evaluate(() => {
      const shown = [
        ...document.querySelectorAll<HTMLElement>('button, a[href], input, select, summary'),
      ].filter(
        (one) =>
          one.getClientRects().length > 0 &&
          !one.closest('.twin, dialog:not([open])') &&
          !one.matches('.skip'),
      );
      // A hidden radio is pressed by its label.
      const rectOf = (one: HTMLElement) => {
        const label = one.matches('[type="radio"], [type="checkbox"]') ? one.closest('label') : null;
        return (label ?? one).getBoundingClientRect();
      };
      return shown.flatMap((one) => {
        const { width, height } = rectOf(one);
        const name = one.getAttribute('aria-label') ?? one.textContent?.trim() ?? one.id;
        return Math.min(width, height) < 23.99 ? [`${name}: ${width} by ${height}`] : [];
      });
    });
    expect(faults).toEqual([]);
    app.expectClean();
  });
});
