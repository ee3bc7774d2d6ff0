/** A whole small panel made from the first count to the last end, by taps alone and by keys alone. */
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { makingStates } from '../../src/making/machine.ts';
import { openApp, readSnapshot, viewports } from './harness.ts';
import { drawn, type Glance, glance, middle, outside, setSmallPanel } from './walking.ts';

const everyState = Object.entries(makingStates).flatMap(([parent, children]) =>
  children.length > 0 ? children.map((child) => `${parent}.${child}`) : [parent],
);

/** What must hold at every single step beside the work. */
function wrongs(seen: Glance): string[] {
  const at = `${seen.place} ${seen.kind}`;
  const hidden = [...seen.words, seen.go].map((rect) => outside(rect, seen.window)).filter(Boolean);
  const small = seen.targets.filter(({ width, height }) => Math.min(width, height) < 43.99);
  return [
    ...hidden.map((rect) => `${at}: out of view ${rect}`),
    ...small.map(({ name, width, height }) => `${at}: ${name} is ${width} by ${height}`),
    ...(seen.scrolled === 0 ? [] : [`${at}: the page has scrolled by ${seen.scrolled}`]),
  ];
}

/** Works through the whole making with `act` and answers what was seen on the way. */
async function workThrough(page: Page, act: (seen: Glance) => Promise<unknown>) {
  const { steps } = (await readSnapshot(page)).making;
  const states = new Set<string>();
  const answered: string[] = [];
  const faults: string[] = [];
  for (let place = 0; place < steps.length; place++) {
    const seen = await glance(page);
    expect(seen.place).toBe(place);
    states.add(seen.stage);
    faults.push(...wrongs(seen));
    if (seen.open) answered.push(seen.kind);
    if (place === steps.length - 1) break;
    await act(seen);
    await drawn(page);
  }
  return { states: [...states], answered, faults };
}

async function expectFinished(
  page: Page,
  { states, answered, faults }: Awaited<ReturnType<typeof workThrough>>,
) {
  expect(faults).toEqual([]);
  expect(states.sort()).toEqual([...everyState].sort());
  expect(answered).toEqual(['check-twist', 'pad-in']);
  expect((await readSnapshot(page)).stage).toBe('finished');
  expect(await page.locator('.saying-act').textContent()).toBe('Front and back are one piece.');
}

describe('a whole small panel at 390 by 844', () => {
  test('is finished by taps alone, each step in view and nothing behind a menu', async () => {
    const app = await openApp({ viewport: viewports.phone, touch: true });
    const { page } = app;
    await setSmallPanel(page, 'edge', 3);
    const tab = await page.getByRole('tab', { name: 'Walk it' }).boundingBox();
    await page.touchscreen.tap(...middle(tab!));
    await drawn(page);
    const walked = await workThrough(page, ({ go }) => page.touchscreen.tap(...middle(go)));
    await expectFinished(page, walked);
    app.expectClean();
  });

  test('is finished by keys alone, the focus always to be seen', async () => {
    const app = await openApp({ viewport: viewports.phone });
    const { page } = app;
    await setSmallPanel(page, 'edge', 3);
    await page.locator('body').click({ position: { x: 2, y: 2 } });
    const focus = () => page.evaluate(() => document.activeElement?.id ?? '');
    for (let presses = 0; (await focus()) !== 'tab-edge'; presses++) {
      expect(presses, 'Tab presses on the way to the tabs').toBeLessThan(4);
      await page.keyboard.press('Tab');
    }
    for (let presses = 0; (await focus()) !== 'tab-walk'; presses++) {
      expect(presses, 'arrow presses on the way to the walk').toBeLessThan(4);
      await page.keyboard.press('ArrowRight');
      await drawn(page);
    }
    // The first thing on the page leads past all that comes before the step.
    await page.keyboard.press('Shift+Tab');
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Skip to the step');
    await page.keyboard.press('Enter');
    expect(await focus()).toBe('next');
    let presses = 0;
    const hiddenFocus: string[] = [];
    const walked = await workThrough(page, async (seen) => {
      if (seen.open) {
        // The question has taken the focus; its answer is the next thing that Tab comes to.
        expect(await focus()).toBe('question');
        await page.keyboard.press('Tab');
        await page.keyboard.press('Enter');
        await expect.poll(focus).toBe('next');
        return;
      }
      const isSeen = await page.evaluate(() => {
        const held = document.activeElement as Element;
        const { x, y, width, height } = held.getBoundingClientRect();
        return held.contains(document.elementFromPoint(x + width / 2, y + height / 2));
      });
      if (!isSeen) hiddenFocus.push(seen.kind);
      await page.keyboard.press(['Enter', 'Space', 'ArrowRight'][presses++ % 3] as string);
    });
    expect(hiddenFocus).toEqual([]);
    await expectFinished(page, walked);
    app.expectClean();
  });
});

describe('at every size', () => {
  test.each([
    ['a small phone', { width: 360, height: 640 }],
    ['a narrow phone', { width: 320, height: 568 }],
    ['a phone on its side', { width: 844, height: 390 }],
    ['a tablet', viewports.tablet],
    ['a desktop', viewports.desktop],
  ] as const)('%s: sentence and Next are in view at one step of every state', async (_, viewport) => {
    const app = await openApp({ viewport });
    const { page } = app;
    await setSmallPanel(page, 'walk', 3);
    const firsts = await page.evaluate(() => {
      const { steps } = window.ringtrue!.snapshot().making;
      const places = new Map<string, number>();
      for (let i = 0; i < steps.length; i++) {
        const { kind } = steps.at(i);
        if (!places.has(kind)) places.set(kind, i);
      }
      return [...places.values()];
    });
    const faults: string[] = [];
    for (const place of firsts) {
      await page.evaluate((to) => {
        const { send, snapshot } = window.ringtrue!;
        for (const asks of ['twist', 'pad'] as const) {
          send({ type: 'JUMP', to });
          if (snapshot().place < to) send({ type: 'ANSWER', asks });
        }
        send({ type: 'JUMP', to });
      }, place);
      await drawn(page);
      // The focus of a question may have scrolled: what is needed must be in view without.
      await page.evaluate(() => {
        scrollTo(0, 0);
        document.querySelector('.bar')?.scrollTo(0, 0);
      });
      const seen = await glance(page);
      const needed = [seen.saying, seen.go].map((rect) => outside(rect, seen.window));
      faults.push(...needed.filter(Boolean).map((fault) => `${seen.kind}: ${fault}`));
    }
    expect(faults).toEqual([]);
    app.expectClean();
  });
});
