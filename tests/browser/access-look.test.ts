/** What the eye needs: a focus to be seen, room for large text, rest, and the left hand's mirror. */
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import type { Tab } from '../../src/state/snapshot.ts';
import {
  axeFaultsInBothThemes,
  expectNoSidewaysScroll,
  openApp,
  readSnapshot,
  sendEvent,
  settle,
  viewports,
} from './harness.ts';
import { answerAll, drawn, setSmallPanel } from './walking.ts';

const TABS: Tab[] = ['edge', 'cloth', 'walk', 'wrong', 'take-along'];

/** What a place that is fetched when it is opened holds, once it is there. */
const content: Partial<Record<Tab, string>> = { cloth: '.cloth input', 'take-along': '.take-along button' };

async function openTab(page: Page, tab: Tab): Promise<void> {
  await sendEvent(page, { type: 'SHOW', tab });
  const awaited = content[tab];
  if (awaited) await page.locator(awaited).first().waitFor({ state: 'attached' });
  await settle(page);
}

describe('the focus', () => {
  test.each([
    ['edge', viewports.phone],
    ['cloth', viewports.phone],
    ['walk', viewports.phone],
    ['wrong', viewports.phone],
    ['take-along', viewports.phone],
    ['walk', viewports.desktop],
  ] as const)('on %s at %o is never hidden and always marked', async (tab, viewport) => {
    const app = await openApp({ viewport, touch: viewport === viewports.phone });
    const { page } = app;
    await openTab(page, tab);
    const faults: string[] = [];
    const seen = new Set<string>();
    for (let presses = 0; presses < 120; presses++) {
      await page.keyboard.press('Tab');
      const held = await page.evaluate(async () => {
        await new Promise((done) => requestAnimationFrame(done));
        const element = document.activeElement as HTMLElement;
        if (element === document.body) return null;
        const name = element.getAttribute('aria-label') ?? element.id ?? element.textContent?.trim() ?? '';
        const key = `${element.tagName} ${name || element.textContent?.trim()} ${element.closest('[class]')?.className}`;
        // A radio of no size is seen by its label, and a cell of the list by the list.
        const drawn =
          (element.matches('input[type="radio"], input[type="checkbox"]') && element.closest('label')) ||
          element;
        const rect = drawn.getBoundingClientRect();
        const [x, y] = [rect.x + rect.width / 2, rect.y + rect.height / 2];
        const inWindow = x >= 0 && y >= 0 && x <= innerWidth && y <= innerHeight;
        const top = inWindow ? document.elementFromPoint(x, y) : null;
        const isSeen =
          top !== null &&
          (drawn.contains(top) || top.contains(drawn) || top.closest('label')?.control === element);
        const marks = [
          drawn,
          element,
          ...[...document.querySelectorAll('label, fieldset, div, span')].filter(
            (one) => one.contains(element) && one.matches(':has(:focus-visible)'),
          ),
        ];
        const isMarked = marks.some((one) => {
          const { outlineStyle, outlineWidth } = getComputedStyle(one);
          return outlineStyle !== 'none' && Number.parseFloat(outlineWidth) >= 2;
        });
        return { key, isSeen, isMarked };
      });
      if (held === null) break;
      if (seen.has(held.key) && seen.size > 5) continue;
      seen.add(held.key);
      if (!held.isSeen) faults.push(`hidden: ${held.key}`);
      if (!held.isMarked) faults.push(`unmarked: ${held.key}`);
    }
    expect(seen.size).toBeGreaterThan(10);
    expect(faults).toEqual([]);
    app.expectClean();
  });

  test.each([
    ['the usual colours', false],
    ["the person's own colours", true],
  ])('looks different from no focus, on what is pressed most, in %s', async (_, forcedColours) => {
    const app = await openApp({ forcedColours });
    const { page } = app;
    await openTab(page, 'walk');
    for (const selector of [
      '#next',
      '#scrubber',
      '#tab-walk',
      '.view-whole .view-button >> nth=0',
      '.switch >> nth=0',
    ]) {
      const target = page.locator(selector);
      const rect = (await target.boundingBox())!;
      const clip = { x: rect.x - 8, y: rect.y - 8, width: rect.width + 16, height: rect.height + 16 };
      await page.keyboard.press('Tab');
      await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
      const plain = await page.screenshot({ clip });
      await target.focus();
      const focused = await page.screenshot({ clip });
      expect(focused.equals(plain), selector).toBe(false);
    }
    app.expectClean();
  });
});

/** Words under 12 px, and fields under 16 px, into which a phone would zoom. */
const smallText = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const isText = (node: ChildNode) =>
      node.nodeType === Node.TEXT_NODE && (node.textContent ?? '').trim() !== '';
    const shown = [...document.querySelectorAll<HTMLElement>('body *')].filter(
      (one) =>
        one.getClientRects().length > 0 && !one.closest('svg, .unseen, .sheet-frame, dialog:not([open])'),
    );
    return shown.flatMap((one) => {
      const least = one.matches('input, select, textarea') ? 16 : [...one.childNodes].some(isText) ? 12 : 0;
      const size = Number.parseFloat(getComputedStyle(one).fontSize);
      return size < least ? [`${one.className || one.id || one.tagName}: ${size} px`] : [];
    });
  });

describe('little room, large text', () => {
  test.each([
    ['320 by 640', { width: 320, height: 640 }],
    ['1280 by 1024 at 400 %', { width: 320, height: 256 }],
    ['844 by 390, held across', { width: 844, height: 390 }],
  ])('at %s nothing scrolls sideways', async (_, viewport) => {
    const app = await openApp({ viewport });
    const { page } = app;
    for (const tab of TABS) {
      await openTab(page, tab);
      await expectNoSidewaysScroll(page);
      expect(await smallText(page), tab).toEqual([]);
    }
    await sendEvent(page, { type: 'SHOW', tab: 'walk' });
    await sendEvent(page, { type: 'JUMP', to: 1_000_000 });
    await settle(page);
    await expectNoSidewaysScroll(page);
    await page.getByRole('button', { name: 'Open the lessons' }).click();
    await page.locator('.lesson-card').first().waitFor();
    await page.locator('.lesson-level').nth(2).click();
    await settle(page);
    const sheet = await page.evaluate(() => {
      const { scrollWidth, clientWidth } = document.querySelector('dialog.sheet-lessons') as Element;
      return scrollWidth - clientWidth;
    });
    expect(sheet).toBeLessThanOrEqual(1);
    app.expectClean();
  });

  test('at 400 % the picture of the stitch, its sentence and Next are in view together', async () => {
    const { page } = await openApp({ viewport: { width: 320, height: 256 } });
    await openTab(page, 'walk');
    const room = await page.evaluate(() => {
      const box = (selector: string) => (document.querySelector(selector) as Element).getBoundingClientRect();
      return box('.bar .next').bottom - box('.hero svg').top;
    });
    expect(room).toBeLessThanOrEqual(256);
    // The head goes up with the page and covers none of it.
    await page.evaluate(() => {
      const picture = document.querySelector('.hero svg') as Element;
      scrollTo(0, scrollY + picture.getBoundingClientRect().top);
    });
    const top = await page.evaluate(() => document.elementFromPoint(160, 4)?.closest('.head') ?? null);
    expect(top).toBeNull();
  });

  test('where words run from right to left, sides stay where they are and nothing lies on the ring', async () => {
    const { page } = await openApp({ viewport: viewports.desktop });
    const boxes = () =>
      page.evaluate(() =>
        ['#field-side-1', '#field-side-3', '.verdict', '.view-buttons'].map((selector) => {
          const { left, right } = (document.querySelector(selector) as Element).getBoundingClientRect();
          const board = (document.querySelector('.board') as Element).getBoundingClientRect();
          const from = selector.startsWith('#') ? 0 : board.left;
          return [Math.round(left - from), Math.round(right - from)] as const;
        }),
      );
    const [, , verdict, buttons] = await boxes();
    await page.evaluate(() => {
      document.documentElement.dir = 'rtl';
    });
    await settle(page);
    const [second, fourth, card, controls] = await boxes();
    expect(second?.[1]).toBeLessThan(fourth?.[0] as number);
    expect(card).toEqual(verdict);
    expect(controls).toEqual(buttons);
  });

  /** WCAG 1.4.12, as wide as it asks for. */
  const spaced = `* { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important; }
    p { margin-block-end: 2em !important; }`;

  test.each([
    ['phone', viewports.phone],
    ['desktop', viewports.desktop],
  ])('with wide text spacing on a %s no text is cut off', async (_, viewport) => {
    const app = await openApp({ viewport });
    const { page } = app;
    await setSmallPanel(page);
    await page.evaluate((css) => {
      const sheet = new CSSStyleSheet();
      sheet.replaceSync(css);
      document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet];
    }, spaced);
    const cut = () =>
      page.evaluate(() => {
        const isText = (node: ChildNode) =>
          node.nodeType === Node.TEXT_NODE && (node.textContent ?? '').trim() !== '';
        return [...document.querySelectorAll<HTMLElement>('body *')].flatMap((element) => {
          if (
            ![...element.childNodes].some(isText) ||
            // A sheet is seen as it comes out of the printer, in its own measures.
            element.closest('.unseen, .brand-name, .twin, .skip, .sheet-frame, dialog:not([open])')
          )
            return [];
          for (let box: HTMLElement | null = element; box; box = box.parentElement) {
            const { overflowX, overflowY } = getComputedStyle(box);
            const [wide, high] = [
              box.scrollWidth > box.clientWidth + 1,
              box.scrollHeight > box.clientHeight + 1,
            ];
            const isCut =
              (wide && ['hidden', 'clip'].includes(overflowX)) ||
              (high && ['hidden', 'clip'].includes(overflowY));
            if (isCut && box.clientWidth > 0 && box !== document.body && box !== document.documentElement)
              return [`${element.textContent?.trim().slice(0, 40)} in ${box.className || box.tagName}`];
          }
          return [];
        });
      });
    for (const tab of TABS) {
      await openTab(page, tab);
      expect(await cut(), tab).toEqual([]);
      await expectNoSidewaysScroll(page);
    }
    await openTab(page, 'walk');
    await page.getByRole('button', { name: 'Open the lessons' }).click();
    await page.locator('.lesson-card').first().waitFor();
    await page.locator('.lesson-level').nth(2).click();
    await settle(page);
    expect(await cut(), 'lesson').toEqual([]);
    app.expectClean();
  });
});

describe('rest', () => {
  test.each(['edge', 'walk', 'wrong'] as const)(
    'on %s nothing moves for three seconds without a press',
    async (tab) => {
      const app = await openApp({ graphics: true });
      const { page } = app;
      await setSmallPanel(page, 'walk');
      if (tab === 'walk') {
        await answerAll(page);
        await sendEvent(page, { type: 'JUMP', to: 36 });
        await settle(page);
        await page.getByRole('button', { name: 'Move by move' }).click();
      }
      await openTab(page, tab);
      // The caret of a field blinks by the browser's own will.
      await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
      await page.mouse.move(2, 2);
      await page.waitForTimeout(500);
      // The browser paints edges anew, a shade off, after the first time it is photographed.
      await page.screenshot();
      await page.waitForTimeout(500);
      const first = await page.screenshot();
      for (let second = 0; second < 3; second++) {
        await page.waitForTimeout(1000);
        expect((await page.screenshot()).equals(first), `after ${second + 1} s`).toBe(true);
      }
      app.expectClean();
    },
  );

  /** A number for the picture on the drawing's canvases; the flat painter's can be read at any time. */
  const pictureNow = (page: Page): Promise<number> =>
    page.evaluate(() => {
      const small = document.createElement('canvas');
      [small.width, small.height] = [480, 360];
      const pen = small.getContext('2d', { willReadFrequently: true })!;
      for (const canvas of document.querySelectorAll<HTMLCanvasElement>('#table canvas'))
        pen.drawImage(canvas, 0, 0, 480, 360);
      let sum = 0;
      for (const value of pen.getImageData(0, 0, 480, 360).data) sum = (Math.imul(sum, 31) + value) | 0;
      return sum;
    });

  test('a step is one change where no movement is wanted, and a movement of several where it is', async () => {
    const pictures: Record<string, number> = {};
    for (const motion of [false, true]) {
      const app = await openApp({ motion, fresh: true });
      const { page } = app;
      await setSmallPanel(page);
      await page.clock.install();
      await page.reload();
      await page.waitForFunction(() => window.ringtrue !== undefined);
      await settle(page);
      // From here on time goes on by this hand only, a frame at a time: a busy machine leaves none out.
      await page.clock.pauseAt(new Date(Date.now() + 60_000));
      await page.clock.runFor(1000);
      const seen = new Set([await pictureNow(page)]);
      await sendEvent(page, { type: 'NEXT' });
      for (let frame = 0; frame < 40; frame++) {
        await page.clock.runFor(16);
        seen.add(await pictureNow(page));
      }
      pictures[`${motion}`] = seen.size;
      app.expectClean();
    }
    expect(pictures.false).toBe(2);
    expect(pictures.true).toBeGreaterThan(4);
  });
});

describe('the left hand', () => {
  test('mirrors the drawing and the words of direction, and nothing else', async () => {
    const app = await openApp();
    const { page } = app;
    await setSmallPanel(page);
    await answerAll(page);
    const read = async () => {
      await drawn(page);
      const shown = await page.evaluate(() => {
        const { making } = window.ringtrue!.snapshot();
        const [whole] = window.ringtrue!.scene().views;
        const xs = whole!.parts.flatMap(({ marks }) => Array.from(marks.x, (x) => Math.round(x * 100) / 100));
        const paths = [...document.querySelectorAll('.inside-picture path')].length;
        return {
          xs,
          labels: whole!.labels.map(({ text }) => text).sort(),
          counts: [making.plan.foundation.sides, making.plan.edgings[0]?.sides, making.pairing.pairs],
          paths,
        };
      });
      const words = await page.locator('.bar').textContent();
      return { ...shown, words };
    };
    const right = await read();
    await sendEvent(page, { type: 'SETTLE', settings: { hand: 'left' } });
    const left = await read();
    expect(left.counts).toEqual(right.counts);
    expect(left.labels).toEqual(right.labels);
    expect(left.paths).toBe(right.paths);
    expect(left.words).toBe(right.words?.replace('going left', 'going right'));
    expect(right.words).toContain('going left');
    const sorted = (xs: number[]) => [...xs].sort((a, b) => a - b).map((x) => x + 0);
    expect(sorted(left.xs)).toEqual(sorted(right.xs.map((x) => -x)));
    expect(left.xs).not.toEqual(right.xs);
    // "Next" means on, for either hand.
    await page.locator('#next').focus();
    await page.keyboard.press('ArrowRight');
    expect((await readSnapshot(page)).place).toBe(1);
    expect(
      await page
        .locator('svg text')
        .evaluateAll((texts) => texts.filter((text) => (text as SVGGraphicsElement).getCTM()!.a < 0).length),
    ).toBe(0);
    app.expectClean();
  });
});

describe('axe finds nothing in the walk', () => {
  test.each([
    ['desktop', 'right'],
    ['phone', 'left'],
  ] as const)('on a %s, %s hand, in both themes, at each kind of moment', async (device, hand) => {
    const app = await openApp({ viewport: viewports[device] });
    const { page } = app;
    await setSmallPanel(page);
    await sendEvent(page, { type: 'SETTLE', settings: { hand } });
    const faults: Record<string, unknown> = {};
    const check = async (moment: string): Promise<void> => {
      await settle(page);
      const found = await axeFaultsInBothThemes(page);
      if (found.length > 0) faults[moment] = found;
    };
    await check('counting');
    await sendEvent(page, { type: 'JUMP', to: 1_000_000 });
    await check('the question');
    await answerAll(page);
    await sendEvent(page, { type: 'JUMP', to: 36 });
    await settle(page);
    await page.getByRole('button', { name: 'Move by move' }).click();
    await page.getByRole('button', { name: 'Next move', exact: true }).click();
    await check('inside a stitch');
    await sendEvent(page, { type: 'JUMP', to: 60 });
    await check('a caution');
    await page.locator('#twin [tabindex="0"]').focus();
    await check('the list of stitches');
    await sendEvent(page, { type: 'JUMP', to: 1_000_000 });
    await check('finished');
    expect(faults).toEqual({});
    app.expectClean();
  });
});
