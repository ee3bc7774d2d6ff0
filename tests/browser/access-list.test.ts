/** What someone who does not see the drawing has of it: the list of stitches, the summary, the messages. */
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { openApp, readSnapshot, sendEvent, viewports } from './harness.ts';
import { answerAll, drawn, setSmallPanel } from './walking.ts';

const grid = (page: Page) => page.getByRole('grid', { name: 'Every stitch' });

type Held = { row: number; column: number; name: string; stops: number };

/** The cell that has the focus, and how many cells can be tabbed to. */
async function held(page: Page): Promise<Held> {
  await drawn(page);
  await drawn(page);
  return page.evaluate(() => {
    const cell = document.activeElement as Element;
    const number = (element: Element | null, name: string) => Number(element?.getAttribute(name) ?? -1);
    return {
      row: number(cell.closest('[role="row"]'), 'aria-rowindex'),
      column: number(cell, 'aria-colindex'),
      name: cell.getAttribute('aria-label') ?? '',
      stops: document.querySelectorAll('#twin [tabindex="0"]').length,
    };
  });
}

describe('the list of every stitch', () => {
  test('is there before any key is pressed, and stays through keys and mouse', async () => {
    const app = await openApp();
    const { page } = app;
    const list = () => grid(page).ariaSnapshot();
    await expect.poll(() => grid(page).getByRole('gridcell').count()).toBeGreaterThan(5);
    const first = await list();
    expect(first).toMatch(/gridcell "Front, side 1, stitch 1\. .+"/);
    await page.keyboard.press('Tab');
    expect(await list()).toBe(first);
    await page.mouse.move(700, 300);
    await page.mouse.move(720, 330);
    await page.mouse.wheel(0, 10);
    await sendEvent(page, { type: 'POINT', at: null });
    await drawn(page);
    expect(await list()).toBe(first);
    // All of it is told of, though only what is near is in the page.
    const { making } = await readSnapshot(page);
    const rows = Number(await grid(page).getAttribute('aria-rowcount'));
    expect(rows).toBeGreaterThanOrEqual(3 * (making.edge.sides.length + making.edge.corners.length) - 2);
    app.expectClean();
  });

  test('is walked by arrows, Home, End and their Ctrl; one stop for Tab, however far', async () => {
    const app = await openApp();
    const { page } = app;
    await setSmallPanel(page);
    await grid(page).locator('[tabindex="0"]').focus();
    const start = await held(page);
    expect([start.row, start.column, start.stops]).toEqual([1, 2, 1]);
    const presses: [key: string, row: number, column: number][] = [
      ['ArrowRight', 1, 3],
      ['ArrowRight', 1, 4],
      ['ArrowLeft', 1, 3],
      ['End', 1, 7],
      ['ArrowRight', 1, 7],
      ['Home', 1, 2],
      ['ArrowLeft', 1, 2],
      ['ArrowDown', 2, 2],
      ['End', 2, 3],
      ['ArrowUp', 1, 3],
    ];
    for (const [key, row, column] of presses) {
      await page.keyboard.press(key);
      const now = await held(page);
      expect([key, now.row, now.column, now.stops]).toEqual([key, row, column, 1]);
    }
    const rows = Number(await grid(page).getAttribute('aria-rowcount'));
    await page.keyboard.press('Control+End');
    expect((await held(page)).row).toBe(rows);
    await page.keyboard.press('Control+Home');
    expect(await held(page)).toEqual(start);
    // Tab leaves it at once, and comes back to the same cell.
    await page.keyboard.press('ArrowRight');
    const left = await held(page);
    await page.keyboard.press('Tab');
    expect(await page.evaluate(() => document.activeElement?.closest('#twin') === null)).toBe(true);
    await page.keyboard.press('Shift+Tab');
    expect(await held(page)).toEqual(left);
    app.expectClean();
  });

  test('leads the walk to a stitch by Enter, and the drawing to it by the focus', async () => {
    const app = await openApp();
    const { page } = app;
    await answerAll(page);
    await sendEvent(page, { type: 'SHOW', tab: 'walk' });
    const closer = page
      .getByRole('group', { name: 'Move the whole panel' })
      .getByRole('button', { name: 'Closer' });
    for (let i = 0; i < 4; i++) await closer.click();
    await grid(page).locator('[tabindex="0"]').focus();
    await page.keyboard.press('Control+End');
    // The very last is the closing's; a few before it are plain stitches.
    for (let i = 0; i < 3; i++) {
      await held(page);
      await page.keyboard.press('ArrowLeft');
    }
    const { name } = await held(page);
    const { pointed, making } = await readSnapshot(page);
    expect(pointed).not.toBeNull();
    // The frame round what is pointed at lies within the view that was moved close to something else.
    const inView = await page.evaluate(() => {
      const { table, scene } = window.ringtrue as unknown as {
        table(): { spotAt(x: number, y: number): { part: string } | null };
        scene(): { views: { id: string; signs: { kind: string; key: string }[] }[] };
      };
      const whole = scene().views.find(({ id }) => id === 'whole');
      const hasFrame = whole?.signs.some(({ key }) => key === 'pointed') ?? false;
      const room = document.querySelector('[data-region="whole"]')?.getBoundingClientRect();
      const host = document.getElementById('table')?.getBoundingClientRect();
      if (!room || !host) return { hasFrame, part: null };
      const middle = table().spotAt(room.x + room.width / 2 - host.x, room.y + room.height / 2 - host.y);
      return { hasFrame, part: middle?.part ?? null };
    });
    expect(inView.hasFrame).toBe(true);
    expect(inView.part, 'the view is centred on the last round').toMatch(/^(front|edging|bars)/);
    await page.keyboard.press('Enter');
    await drawn(page);
    const { step, place } = await readSnapshot(page);
    expect(place).toBeGreaterThan(0);
    expect(place).toBeLessThan(making.steps.length);
    expect(name).toContain(`stitch ${step.place + 1}`);
    app.expectClean();
  });
});

/** Collects every message that a voice would read, with when it came. */
async function listen(page: Page): Promise<() => Promise<string[]>> {
  await page.evaluate(() => {
    const log: string[] = [];
    Object.assign(window, { heard: log });
    const note = (records: MutationRecord[]): void => {
      const told = new Set(
        records.map(({ target }) =>
          (target instanceof Element ? target : target.parentElement)?.closest(
            '[role="status"], [role="alert"], [aria-live]',
          ),
        ),
      );
      for (const element of told) {
        const text = element?.textContent?.replace(/\s+/g, ' ').trim();
        if (text) log.push(text);
      }
    };
    new MutationObserver(note).observe(document.body, {
      childList: true,
      characterData: true,
      subtree: true,
    });
  });
  return () => page.evaluate(() => (window as unknown as { heard: string[] }).heard);
}

/** Longer than a message waits: 200 ms to rest, 200 ms of silence. */
const spokenMs = 700;

describe('messages', () => {
  test('one step is one message: the act first, then the place, in whole words', async () => {
    const app = await openApp();
    const { page } = app;
    await setSmallPanel(page);
    await answerAll(page);
    await page.waitForTimeout(spokenMs);
    const heard = await listen(page);
    for (let i = 1; i <= 3; i++) {
      await page.locator('#next').click();
      await page.waitForTimeout(spokenMs);
      expect(await heard()).toHaveLength(i);
    }
    expect(await heard()).toEqual([
      'Count 2: 1 V, going left. Front · side 1 · stitch 2 of 6 · 4 to the corner.',
      'Count 3: 1 V, going left. Front · side 1 · stitch 3 of 6 · 3 to the corner.',
      'Count 4: 1 V, going left. Front · side 1 · stitch 4 of 6 · 2 to the corner.',
    ]);
    app.expectClean();
  });

  test('five quick steps are one message, of where they end', async () => {
    const app = await openApp();
    const { page } = app;
    await setSmallPanel(page);
    await page.waitForTimeout(spokenMs);
    const heard = await listen(page);
    for (let i = 0; i < 5; i++) await sendEvent(page, { type: 'NEXT' });
    await page.waitForTimeout(spokenMs);
    expect(await heard()).toEqual(['Count 6: 1 V, going left. Front · side 1 · stitch 6 of 6.']);
    app.expectClean();
  });

  test('playing says nothing until it rests, and then once', async () => {
    const app = await openApp({ motion: true });
    const { page } = app;
    await setSmallPanel(page);
    await sendEvent(page, { type: 'SETTLE', settings: { pace: 350 } });
    await page.waitForTimeout(spokenMs);
    const heard = await listen(page);
    await page.getByRole('button', { name: 'Play through' }).click();
    await expect
      .poll(() => page.evaluate(() => window.ringtrue!.snapshot().place), { timeout: 20_000 })
      .toBeGreaterThan(3);
    expect(await heard()).toEqual([]);
    await page.getByRole('button', { name: 'Stop' }).click();
    await page.waitForTimeout(spokenMs);
    expect(await heard()).toHaveLength(1);
    app.expectClean();
  });

  test('inside a stitch one move is one message; the next step is told once, not twice', async () => {
    const app = await openApp();
    const { page } = app;
    await setSmallPanel(page);
    await answerAll(page);
    await sendEvent(page, { type: 'JUMP', to: 35 });
    await page.getByRole('button', { name: 'Move by move' }).click();
    await page.waitForTimeout(spokenMs);
    const heard = await listen(page);
    await page.getByRole('button', { name: 'Next move', exact: true }).click();
    await page.waitForTimeout(spokenMs);
    expect(await heard()).toEqual(['Yarn round hook. 2 loops on the hook']);
    await page.locator('#next').click();
    await page.waitForTimeout(spokenMs);
    const after = await heard();
    expect(after).toHaveLength(2);
    expect(after[1]).toMatch(/^Chain 1/);
    app.expectClean();
  });
});

describe('the summary at the top of the page', () => {
  test('says what is there, how it stands and what to do, and stays true', async () => {
    const app = await openApp();
    const { page } = app;
    const summary = () =>
      page.evaluate(() => document.querySelector('main')?.firstElementChild?.textContent ?? '');
    expect(await summary()).toMatch(/panel of 4 sides with 208 places.*step 1 of \d+.*Change a count/);
    await setSmallPanel(page);
    await drawn(page);
    expect(await summary()).toMatch(
      /panel of 4 sides with 32 places.*All 32 meet.*step 1 of 153.*Press Next/,
    );
    await page.locator('#next').click();
    await drawn(page);
    expect(await summary()).toMatch(/step 2 of 153: Front · side 1 · stitch 2 of 6/);
    await sendEvent(page, { type: 'TYPE', field: 'worked.edging.0.2', text: '5' });
    await drawn(page);
    expect(await summary()).toMatch(/Back side 3 is 1 stitch short/);
    await sendEvent(page, { type: 'SHOW', tab: 'wrong' });
    await drawn(page);
    expect(await summary()).toMatch(/Tell what you counted/);
    app.expectClean();
  });

  test('and the way past the panel is the first thing that Tab comes to', async () => {
    const app = await openApp({ viewport: viewports.phone, touch: true });
    const { page } = app;
    await sendEvent(page, { type: 'SHOW', tab: 'walk' });
    await drawn(page);
    await page.keyboard.press('Tab');
    const skip = page.getByRole('link', { name: 'Skip to the step' });
    expect(await skip.evaluate((link) => link === document.activeElement)).toBe(true);
    expect((await skip.boundingBox())?.y).toBeGreaterThanOrEqual(0);
    app.expectClean();
  });
});
