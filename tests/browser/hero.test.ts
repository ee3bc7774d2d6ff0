/** On a phone the picture of the stitch is the largest thing in the walk, and nothing moves from step to step. */
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { openApp, sendEvent, viewports } from './harness.ts';
import { answerAll, drawn, middle, outside, setSmallPanel } from './walking.ts';

type Rect = { x: number; y: number; width: number; height: number };
type Seen = { kind: string; picture: Rect; saying: Rect; next: Rect; board: Rect; scrolled: number };

const seen = (page: Page): Promise<Seen> =>
  page.evaluate(() => {
    const rectOf = (selector: string) => {
      const { x, y, width, height } =
        document.querySelector(selector)?.getBoundingClientRect() ?? new DOMRect();
      return { x, y, width, height };
    };
    return {
      kind: window.ringtrue!.snapshot().step.kind,
      picture: rectOf('.inside-picture'),
      saying: rectOf('.bar .saying'),
      scrolled: scrollY,
      next: rectOf('#next'),
      board: rectOf('.board'),
    };
  });

/** The first step of every kind, by its place. */
const firstOfEachKind = (page: Page): Promise<number[]> =>
  page.evaluate(() => {
    const { steps } = window.ringtrue!.snapshot().making;
    const places = new Map<string, number>();
    for (let i = 0; i < steps.length; i++) if (!places.has(steps.at(i).kind)) places.set(steps.at(i).kind, i);
    return [...places.values()];
  });

describe('the picture of the stitch', () => {
  test.each([
    ['a phone', viewports.phone, 0.3, false],
    ['a phone, UK and US words at once', viewports.phone, 0.3, true],
    ['a small phone', { width: 360, height: 640 }, 0.25, false],
  ] as const)(
    'on %s is large, in view, and keeps its place; so does Next; the words stand beside it',
    async (...given) => {
      const [, viewport, share, bothTerms] = given;
      const app = await openApp({ viewport });
      const { page } = app;
      await sendEvent(page, { type: 'SETTLE', settings: { bothTerms } });
      await setSmallPanel(page);
      await answerAll(page);
      const pictures = new Set<string>();
      const nexts = new Set<string>();
      for (const to of await firstOfEachKind(page)) {
        await sendEvent(page, { type: 'JUMP', to });
        await drawn(page);
        const { kind, picture, saying, next, scrolled } = await seen(page);
        expect(outside(picture, viewport), kind).toBe('');
        expect(picture.height / viewport.height, kind).toBeGreaterThan(share);
        expect(picture.width / viewport.width, kind).toBeGreaterThan(0.9);
        // From the picture's middle, where the hook is, to the sentence: never scrolled to, never across the screen.
        expect(outside(saying, viewport), kind).toBe('');
        expect(saying.y - (picture.y + picture.height), kind).toBeLessThan(viewport.height / 3);
        expect(scrolled, kind).toBe(0);
        pictures.add(JSON.stringify(picture));
        nexts.add(JSON.stringify(next));
      }
      // Where there is little height, a caution stands above Next and takes its room.
      const most = viewport.height > 760 ? 1 : 2;
      expect(pictures.size).toBeLessThanOrEqual(most);
      expect(nexts.size).toBeLessThanOrEqual(most);
      app.expectClean();
    },
  );

  test('on a desktop no step but a question changes the size of the drawing beside it', async () => {
    const app = await openApp();
    const { page } = app;
    await setSmallPanel(page);
    await answerAll(page);
    const sizes = new Map<string, string[]>();
    for (const to of await firstOfEachKind(page)) {
      await sendEvent(page, { type: 'JUMP', to });
      await drawn(page);
      const { kind, board } = await seen(page);
      sizes.set(JSON.stringify(board), [...(sizes.get(JSON.stringify(board)) ?? []), kind]);
    }
    expect([...sizes.values()].slice(1)).toEqual([]);
    app.expectClean();
  });

  test('makes room for close-up and whole at one tap each, and comes back', async () => {
    const app = await openApp({ viewport: viewports.phone, touch: true });
    const { page } = app;
    await setSmallPanel(page);
    // The picture comes after the first look; until then the drawing stands in its place.
    await page.locator('.inside-picture').waitFor();
    const before = await seen(page);
    expect(before.board.width).toBe(0);
    for (const [name, region] of [
      ['Whole', 'whole'],
      ['Close-up', 'close'],
    ] as const) {
      const rect = await page.locator('.view-choice', { hasText: name }).boundingBox();
      await page.touchscreen.tap(...middle(rect!));
      await drawn(page);
      const now = await seen(page);
      expect(now.picture.width, name).toBe(0);
      expect(now.board.width, name).toBeGreaterThan(350);
      expect(now.board.height, name).toBeGreaterThan(250);
      expect(now.next, name).toEqual(before.next);
      const shown = await page.evaluate(() =>
        [...document.querySelectorAll('[data-region]')]
          .filter((one) => one.getClientRects().length > 0)
          .map((one) => one.getAttribute('data-region')),
      );
      expect(shown).toEqual([region]);
    }
    await page.locator('#view-close').press('ArrowLeft');
    await drawn(page);
    expect((await seen(page)).picture).toEqual(before.picture);
    app.expectClean();
  });

  test("is drawn in the maker's own yarns", async () => {
    const app = await openApp({ viewport: viewports.phone });
    const { page } = app;
    await setSmallPanel(page);
    await answerAll(page);
    const yarns = { front: '#2244aa', edging: '#88aa22', foundation: '#aa2266' };
    await sendEvent(page, { type: 'SETTLE', settings: { yarns } });
    const kinds = {
      front: 'count-stitch',
      foundation: 'foundation-treble',
      edging: 'double-crochet',
    } as const;
    for (const [yarn, kind] of Object.entries(kinds)) {
      await page.evaluate((wanted) => {
        const { steps } = window.ringtrue!.snapshot().making;
        for (let i = 0; i < steps.length; i++)
          if (steps.at(i).kind === wanted) return window.ringtrue!.send({ type: 'JUMP', to: i });
      }, kind);
      await drawn(page);
      const drawnIn = await page.evaluate(
        (name) =>
          getComputedStyle(document.querySelector(`.inside-picture .yarn-${name}`) as Element)
            .getPropertyValue('--strand')
            .trim(),
        yarn,
      );
      expect(drawnIn).toBe(yarns[yarn as keyof typeof yarns]);
    }
    app.expectClean();
  });

  test('at last is the finished thing with its counts', async () => {
    const app = await openApp({ viewport: viewports.phone });
    const { page } = app;
    await setSmallPanel(page);
    await answerAll(page);
    await sendEvent(page, { type: 'JUMP', to: 100_000 });
    await drawn(page);
    const words = await page.locator('.inside-picture text').allTextContents();
    // Six stitches on each of four sides and two chains in each corner: 32 pairs.
    expect(words.map((word) => word.trim())).toEqual(['6', '6', '6', '6', '32']);
    expect(await page.locator('.boxed.check').textContent()).toContain('32 pairs');
    app.expectClean();
  });
});

test('undo is at hand on a tablet, and the terms stand there once', async () => {
  const app = await openApp({ viewport: viewports.tablet });
  const { page } = app;
  await setSmallPanel(page);
  await expect.poll(() => page.getByRole('button', { name: 'Undo' }).isVisible()).toBe(true);
  const terms = await page.getByRole('button', { name: /UK terms/ }).all();
  const visible = await Promise.all(terms.map((one) => one.isVisible()));
  expect(visible.filter(Boolean)).toHaveLength(1);
  app.expectClean();
});
