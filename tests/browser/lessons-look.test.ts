/** How the lessons lie on the screen: picture, sentence and buttons together, at every step and size. */
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { LESSON_IDS } from '../../src/lessons/lesson.ts';
import { axeFaultsInBothThemes, openApp, sendEvent, settle, type TestedApp, viewports } from './harness.ts';

async function openLessons({ page }: TestedApp): Promise<void> {
  await sendEvent(page, { type: 'SHOW', tab: 'walk' });
  await page.getByRole('button', { name: 'Open the lessons' }).click();
  await page.locator('.lesson-card').first().waitFor();
}

type Tour = { lessons: number; faults: string[]; stages: string[] };

/**
 * Goes through every lesson at a level, and measures the sheet at every step. All in one turn of the page: the sheet is
 * rendered at once, and measuring lays it out.
 */
const tour = (page: Page, level: string): Promise<Tour> =>
  page.evaluate((begin) => {
    const sheet = document.querySelector('dialog.sheet-lessons') as HTMLDialogElement;
    const text = (selector: string) =>
      sheet.querySelector(selector)?.textContent?.replace(/\s+/g, ' ').trim() ?? '';
    const press = (name: string, within: ParentNode = sheet): void => {
      const buttons = [...within.querySelectorAll<HTMLElement>('button')];
      const found = buttons.find((button) =>
        button.textContent?.replace(/\s+/g, ' ').trim().startsWith(name),
      );
      // As a key presses it: the focus is there.
      found?.focus();
      found?.click();
    };
    const look = (): string[] => {
      const stage = stageNow();
      const faults: string[] = [];
      const box = sheet.getBoundingClientRect();
      for (const selector of ['.lesson-pictures', '.lesson-talk', '.lesson-moves']) {
        const part = sheet.querySelector(selector)?.getBoundingClientRect();
        if (!part) continue;
        const inside = part.top >= box.top && part.bottom <= Math.min(box.bottom, innerHeight) + 0.5;
        if (!inside || part.left < box.left || part.right > box.right + 0.5)
          faults.push(`${selector} is out of view`);
      }
      if (stage !== 'other' && sheet.scrollHeight > sheet.clientHeight + 1)
        faults.push(`the sheet scrolls: ${sheet.scrollHeight} in ${sheet.clientHeight}`);
      if (sheet.scrollWidth > sheet.clientWidth + 1) faults.push('the sheet scrolls sideways');
      for (const frame of sheet.querySelectorAll('.lesson-frame, .right-wrong svg')) {
        const { width, height } = frame.getBoundingClientRect();
        if (width < 130 || height < 95)
          faults.push(`a picture is ${Math.round(width)} by ${Math.round(height)}`);
      }
      const figures = [...sheet.querySelectorAll('.lesson-figure, .right-wrong')].map((one) =>
        one.getBoundingClientRect(),
      );
      const largest = Math.max(0, ...figures.map(({ width }) => width));
      if (stage !== 'other' && largest < Math.min(innerWidth * 0.55, 230))
        faults.push(`the largest picture is ${Math.round(largest)} wide`);
      for (const button of sheet.querySelectorAll('button')) {
        const { width, height } = button.getBoundingClientRect();
        if (Math.min(width, height) < 43.99)
          faults.push(`${button.textContent?.trim()} is ${width} by ${height}`);
      }
      // What a finger or a key needs next is there: nothing lies over it, and the focus stands at it.
      for (const button of sheet.querySelectorAll('.lesson-moves button, .lesson-option')) {
        const { x, y, width, height } = button.getBoundingClientRect();
        const hit = document.elementFromPoint(x + width / 2, y + height / 2);
        if (!hit || !button.contains(hit)) faults.push(`${button.textContent?.trim()} cannot be tapped`);
      }
      if (stage !== 'other' && !document.activeElement?.closest('[data-first], .lesson-options'))
        faults.push(`the focus is at ${document.activeElement?.textContent?.trim().slice(0, 40)}`);
      for (const element of sheet.querySelectorAll<HTMLElement>('button, p, figcaption, h3, legend, li'))
        if (element.scrollWidth > element.clientWidth + 1 && !element.classList.contains('unseen'))
          faults.push(`cut off: ${element.textContent?.trim()}`);
      return faults.map(
        (fault) => `${text('.lesson-head h3')} ${text('.lesson-place')} (${stage}): ${fault}`,
      );
    };
    const stageNow = () => sheet.querySelector('.lesson')?.getAttribute('data-stage') ?? 'other';
    const found = look();
    const stages = new Set([stageNow()]);
    const lessons = sheet.querySelectorAll('.lesson-card').length;
    for (let lesson = 0; lesson < lessons; lesson++) {
      press(begin, sheet.querySelectorAll('.lesson-card')[lesson]);
      for (let steps = 0; steps < 100; steps++) {
        stages.add(stageNow());
        found.push(...look());
        if (stageNow() === 'other') break;
        press(stageNow() === 'asking' ? '1' : 'Next');
      }
      if (stageNow() !== 'other') found.push(`${text('.lesson-head h3')} does not end`);
      press('All lessons');
    }
    return { lessons, faults: found, stages: [...stages] };
  }, level);

/** What the lesson is at. */
const stageOf = (page: Page): Promise<string> =>
  page.evaluate(
    () => document.querySelector('dialog.sheet-lessons .lesson')?.getAttribute('data-stage') ?? 'other',
  );

/** Presses the first of these buttons that is there; answers its name. */
const pressFirst = (page: Page, names: string[]): Promise<string> =>
  page.evaluate((wanted) => {
    const buttons = [...document.querySelectorAll<HTMLElement>('dialog.sheet-lessons button')];
    for (const name of wanted) {
      const found = buttons.find((button) =>
        button.textContent?.replace(/\s+/g, ' ').trim().startsWith(name),
      );
      if (!found) continue;
      found.click();
      return name;
    }
    return '';
  }, names);

const sizes: [string, { width: number; height: number }][] = [
  ['a desktop', viewports.desktop],
  ['a small laptop', { width: 1280, height: 640 }],
  ['a tablet', viewports.tablet],
  ['a phone', viewports.phone],
];

describe.each(sizes)('on %s', (_, viewport) => {
  test('every step of every lesson lies whole in view, shown, asked and told', async () => {
    const app = await openApp({ viewport });
    const { page } = app;
    await openLessons(app);
    const tours = [await tour(page, 'Watch'), await tour(page, 'Do it all')];
    expect(tours.map(({ lessons }) => lessons)).toEqual([LESSON_IDS.length, LESSON_IDS.length]);
    const stages = new Set(tours.flatMap((one) => one.stages));
    expect([...stages].sort()).toEqual(['asking', 'other', 'showing', 'told']);
    expect(tours.flatMap(({ faults }) => faults)).toEqual([]);
    app.expectClean();
  });
});

describe('axe finds nothing', () => {
  test.each(['desktop', 'phone'] as const)('in any stage on a %s, in both themes', async (device) => {
    const app = await openApp({ viewport: viewports[device], motion: true });
    const { page } = app;
    await openLessons(app);
    const faults: Record<string, unknown> = {};
    const check = async (stage: string): Promise<void> => {
      await settle(page);
      const found = await axeFaultsInBothThemes(page, 'dialog.sheet-lessons');
      if (found.length > 0) faults[stage] = found;
    };
    await check('choosing');
    await pressFirst(page, ['Watch']);
    for (const stage of ['shown', 'next', 'shown with its movement']) {
      await check(stage);
      await pressFirst(page, ['Next']);
    }
    await pressFirst(page, ['All lessons']);
    for (const lesson of [2, 5, 8]) {
      await page.locator('.lesson-card').nth(lesson).getByRole('button', { name: 'Do it all' }).click();
      for (let i = 0; i < 3 && (await stageOf(page)) === 'showing'; i++) await pressFirst(page, ['Next']);
      await check(`asked ${lesson}`);
      await pressFirst(page, ['1']);
      await check(`told ${lesson}`);
      if (lesson < 8) await pressFirst(page, ['All lessons']);
    }
    while ((await stageOf(page)) !== 'other') await pressFirst(page, ['Next', 'Leave it out']);
    await check('finished');
    expect(faults).toEqual({});
    app.expectClean();
  });
});
