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

type Look = { at: string; faults: string[]; stage: string };

/** Measures the sheet as it stands. Only reads. */
const look = (page: Page): Promise<Look> =>
  page.evaluate(async () => {
    await new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));
    const sheet = document.querySelector('dialog.sheet-lessons') as HTMLDialogElement;
    const stage = sheet.querySelector('.lesson')?.getAttribute('data-stage') ?? 'other';
    const text = (selector: string) =>
      sheet.querySelector(selector)?.textContent?.replace(/\s+/g, ' ').trim() ?? '';
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
    for (const element of sheet.querySelectorAll<HTMLElement>('button, p, figcaption, h3, legend, li'))
      if (element.scrollWidth > element.clientWidth + 1 && !element.classList.contains('unseen'))
        faults.push(`cut off: ${element.textContent?.trim()}`);
    return { at: `${text('.lesson-head h3')} ${text('.lesson-place')}`, faults, stage };
  });

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
    const app = await openApp({ viewport, reducedMotion: true });
    const { page } = app;
    await openLessons(app);
    const faults: string[] = [];
    const stages = new Set<string>();
    const note = async (): Promise<string> => {
      const { at, faults: found, stage } = await look(page);
      stages.add(stage);
      faults.push(...found.map((fault) => `${at} (${stage}): ${fault}`));
      return stage;
    };
    await note();
    for (const level of ['Watch', 'Do it all']) {
      for (let lesson = 0; lesson < LESSON_IDS.length; lesson++) {
        await page.locator('.lesson-card').nth(lesson).getByRole('button', { name: level }).click();
        for (let stage = await note(); stage !== 'other'; stage = await note()) {
          if (stage !== 'asking') {
            await pressFirst(page, ['Next']);
            continue;
          }
          await pressFirst(page, ['1']);
        }
        await pressFirst(page, ['All lessons']);
      }
    }
    expect([...stages].sort()).toEqual(['asking', 'other', 'showing', 'told']);
    expect(faults).toEqual([]);
    app.expectClean();
  });
});

describe('axe finds nothing', () => {
  test.each(['desktop', 'phone'] as const)('in any stage on a %s, in both themes', async (device) => {
    const app = await openApp({ viewport: viewports[device], reducedMotion: true });
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
      for (let i = 0; i < 3 && (await look(page)).stage === 'showing'; i++) await pressFirst(page, ['Next']);
      await check(`asked ${lesson}`);
      await pressFirst(page, ['1']);
      await check(`told ${lesson}`);
      if (lesson < 8) await pressFirst(page, ['All lessons']);
    }
    while ((await look(page)).stage !== 'other') await pressFirst(page, ['Next', 'Leave it out']);
    await check('finished');
    expect(faults).toEqual({});
    app.expectClean();
  });
});
