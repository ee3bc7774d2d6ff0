/** The lessons as a learner meets them: by taps and by keys, right and wrong, today and on a later day. */
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { type Item, LESSON_IDS, type LessonId, type Level, lessonOf } from '../../src/lessons/lesson.ts';
import { isRight, type Question } from '../../src/lessons/questions.ts';
import { sayLesson, sayLevel, sayOption } from '../../src/lessons/say.ts';
import type { Speech } from '../../src/words/words.ts';
import { openApp, readSnapshot, sendEvent, type TestedApp, viewports } from './harness.ts';
import { drawn, middle } from './walking.ts';

const uk: Speech = { dialect: 'uk', hand: 'right', units: 'cm' };

const sheet = (page: Page) => page.locator('dialog.sheet-lessons');
const press = (page: Page, name: string | RegExp) => sheet(page).getByRole('button', { name });
const card = (page: Page, id: LessonId) =>
  sheet(page).getByRole('group', { name: sayLesson(id, uk).title, exact: true });

async function openLessons(app: TestedApp): Promise<void> {
  const { page } = app;
  await sendEvent(page, { type: 'SHOW', tab: 'walk' });
  await page.getByRole('button', { name: 'Open the lessons' }).click();
  await expect.poll(() => sheet(page).locator('.lesson-card').count()).toBe(LESSON_IDS.length);
}

type Seen = { stage: string; said: string; place: string; score: string };

/** What the sheet shows just now: it is rendered with the press itself. */
const read = (page: Page): Promise<Seen> =>
  page.evaluate(() => {
    const sheet = document.querySelector('dialog.sheet-lessons') as Element;
    const text = (selector: string) =>
      sheet.querySelector(selector)?.textContent?.replace(/\s+/g, ' ').trim() ?? '';
    const stage = sheet.querySelector('.lesson')?.getAttribute('data-stage');
    return {
      stage: stage ?? (sheet.querySelector('.lesson-end') ? 'finished' : 'choosing'),
      said: text('.lesson-words, .lesson-options legend'),
      place: text('.lesson-place'),
      score: text('.lesson-score'),
    };
  });

/** The items of a lesson in the order they come, as the sheet does not name them. */
const itemAt = (id: LessonId, place: string): Item => {
  const at = Number.parseInt(place, 10) - 1;
  return lessonOf(id).items[at] as Item;
};

const optionOf = (question: Question, right: boolean): string => {
  const options: readonly string[] = question.options;
  return options.find((option) => isRight(question, option) === right) ?? '';
};

const isThere = (
  rect: { width: number } | null,
): rect is { x: number; y: number; width: number; height: number } => rect !== null;

async function tap(page: Page, name: string | RegExp): Promise<void> {
  const rect = await press(page, name).first().boundingBox();
  if (!isThere(rect)) throw new Error(`Nothing to tap: ${name}`);
  await page.touchscreen.tap(...middle(rect));
}

/** Goes through a lesson, and answers how each asked step was met. */
async function goThrough(page: Page, id: LessonId, step: (seen: Seen, item: Item) => Promise<unknown>) {
  for (let presses = 0; presses < 80; presses++) {
    const seen = await read(page);
    if (seen.stage === 'finished') return seen;
    await step(seen, itemAt(id, seen.place));
  }
  throw new Error(`${id} never ends`);
}

/**
 * Goes through a lesson by the page's own presses, all in one turn of it. At a question it presses the first of these
 * buttons, at the next question the other, and so on; answers what stood there after each press.
 */
type Pressed = { stage: string; said: string; nudge: string; pictures: number };
const passThrough = (page: Page, buttons: string[][]): Promise<Pressed[]> =>
  page.evaluate((atQuestions) => {
    const sheet = document.querySelector('dialog.sheet-lessons') as HTMLDialogElement;
    const text = (selector: string) =>
      sheet.querySelector(selector)?.textContent?.replace(/\s+/g, ' ').trim() ?? '';
    const stageNow = () => sheet.querySelector('.lesson')?.getAttribute('data-stage') ?? 'finished';
    const press = (name: string): void =>
      [...sheet.querySelectorAll<HTMLElement>('button')]
        .find((button) => button.textContent?.replace(/\s+/g, ' ').trim().startsWith(name))
        ?.click();
    const found: Pressed[] = [];
    let questions = 0;
    for (let presses = 0; presses < 80 && stageNow() !== 'finished'; presses++) {
      if (stageNow() !== 'asking') {
        press('Next');
        found.push({ stage: stageNow(), said: '', nudge: '', pictures: 0 });
        continue;
      }
      for (const name of atQuestions[questions++ % atQuestions.length] ?? []) {
        press(name);
        const pictures = sheet.querySelectorAll('.lesson-pictures svg').length;
        found.push({
          stage: stageNow(),
          said: text('.lesson-words'),
          nudge: text('.lesson-nudge'),
          pictures,
        });
      }
    }
    return found;
  }, buttons);

const asked = (id: LessonId): Item[] => lessonOf(id).items.filter(({ question }) => question !== null);

describe('by taps on a phone', () => {
  // How every other lesson goes is arithmetic (tests/unit/lessons-machine.test.ts) and layout (lessons-look.test.ts).
  test('a lesson is watched to its end, then done whole with every answer right', async () => {
    const id = 'foundation';
    const app = await openApp({ viewport: viewports.phone, touch: true });
    const { page } = app;
    const before = await readSnapshot(page);
    await openLessons(app);
    await card(page, id)
      .getByRole('button', { name: sayLevel('show') })
      .tap();
    const watched = await goThrough(page, id, (seen) => {
      expect(seen.stage).toBe('showing');
      return tap(page, /^Next/);
    });
    expect(watched.score).toBe(`${lessonOf(id).items.length} steps seen.`);
    await tap(page, 'All lessons');
    await card(page, id)
      .getByRole('button', { name: sayLevel('all-hidden') })
      .tap();
    const done = await goThrough(page, id, async ({ stage }, { question }) => {
      if (stage !== 'asking' || question === null) return tap(page, /^Next/);
      const label = sayOption(question, optionOf(question, true), uk);
      return sheet(page)
        .locator('.lesson-option', { hasText: new RegExp(`^\\s*\\d${label}\\s*$`) })
        .tap();
    });
    expect(done.score).toBe(`${asked(id).length} of ${asked(id).length} right.`);
    // The work itself was left alone.
    const after = await readSnapshot(page);
    expect([after.place, after.project]).toEqual([before.place, before.project]);
    app.expectClean();
  });

  test('a place tapped in the picture answers like its button', async () => {
    const app = await openApp({ viewport: viewports.phone, touch: true });
    const { page } = app;
    await openLessons(app);
    await card(page, 'foundation')
      .getByRole('button', { name: sayLevel('all-hidden') })
      .tap();
    while ((await read(page)).stage !== 'asking') await tap(page, /^Next/);
    const question = itemAt('foundation', (await read(page)).place).question as Question;
    const number = (question.options as readonly string[]).indexOf(optionOf(question, true)) + 1;
    const place = sheet(page)
      .locator('.tap', { hasText: `${number}` })
      .locator('circle');
    const rect = await place.boundingBox();
    expect(Math.min(rect?.width ?? 0, rect?.height ?? 0)).toBeGreaterThanOrEqual(44);
    await page.touchscreen.tap(...middle(rect!));
    expect(await read(page)).toMatchObject({ stage: 'told', said: expect.stringMatching(/^Yes\./) });
    app.expectClean();
  });
});

describe('by keys on a desktop', () => {
  const held = (page: Page) =>
    page.evaluate(() => {
      const element = document.activeElement as HTMLElement;
      return { name: element.textContent?.replace(/\s+/g, ' ').trim() ?? '', tag: element.tagName };
    });

  test('a wrong answer is told place, expected and got; then put right', async () => {
    const id = 'miscounts';
    const app = await openApp();
    const { page } = app;
    await openLessons(app);
    await card(page, id)
      .getByRole('button', { name: sayLevel('all-hidden') })
      .focus();
    await page.keyboard.press('Enter');
    let wrong = 0;
    const choose = async (question: Question, option: string): Promise<void> => {
      expect((await held(page)).tag).toBe('FIELDSET');
      const presses = (question.options as readonly string[]).indexOf(option) + 1;
      for (let i = 0; i < presses; i++) await page.keyboard.press('Tab');
      await page.keyboard.press('Enter');
    };
    const done = await goThrough(page, id, async ({ stage, place }, { question }) => {
      if (stage !== 'asking' || question === null) {
        expect((await held(page)).name).toBe('Next ›');
        return page.keyboard.press('Enter');
      }
      const [got, expected] = [optionOf(question, false), optionOf(question, true)];
      await choose(question, got);
      const told = await read(page);
      expect(told.stage).toBe('told');
      const lower = (option: string): string =>
        sayOption(question, option, uk).replace(/^./, (c) => c.toLowerCase());
      expect(told.said, 'what was got').toContain(lower(got));
      expect(told.said, 'what was expected').toContain(lower(expected));
      expect(told.place, 'the place').toBe(place);
      expect(told.said.length, 'and why').toBeGreaterThan(`${lower(got)} ${lower(expected)}`.length + 20);
      wrong += 1;
      // "Try again" stands just before Next.
      expect((await held(page)).name).toBe('Next ›');
      await page.keyboard.press('Shift+Tab');
      expect((await held(page)).name).toBe('Try again');
      await page.keyboard.press('Space');
      await drawn(page);
      await choose(question, expected);
      await drawn(page);
      return page.keyboard.press('Enter');
    });
    expect(wrong).toBe(asked(id).length);
    expect(done.score).toBe(`${wrong} of ${wrong} right.`);
    app.expectClean();
  });

  test('Escape leads back to the work, and the focus to what opened the lessons', async () => {
    const app = await openApp();
    const { page } = app;
    await openLessons(app);
    await page.keyboard.press('Escape');
    await expect.poll(() => sheet(page).evaluate((dialog) => (dialog as HTMLDialogElement).open)).toBe(false);
    expect((await held(page)).name).toBe('Open the lessons');
    app.expectClean();
  });
});

describe('help on the way', () => {
  test('a step may be shown or left out; neither counts as right', async () => {
    const app = await openApp();
    const { page } = app;
    await openLessons(app);
    await card(page, 'edging')
      .getByRole('button', { name: sayLevel('all-hidden') })
      .click();
    const pressed = await passThrough(page, [['Hint', 'Show me'], ['Leave it out']]);
    const done = await read(page);
    const hinted = pressed.filter(({ stage, nudge }) => stage === 'asking' && nudge !== '');
    for (const { nudge } of hinted) expect(nudge).toMatch(/^[A-Z].*[.?]$/);
    const worked = pressed.filter(({ said }) => /^(?:1 double crochet|Needle under)/.test(said));
    for (const { stage, pictures } of worked) expect([stage, pictures]).toEqual(['told', 1]);
    const shown = worked.length;
    expect(hinted.length).toBe(shown);
    const skipped = asked('edging').length - shown;
    expect(shown).toBeGreaterThan(1);
    expect(skipped).toBeGreaterThan(1);
    expect(done.score).toBe(`0 of ${shown + skipped} right.`);
    expect(await sheet(page).locator('.lesson-mark.shown').count()).toBe(shown);
    expect(await sheet(page).locator('.lesson-mark.skipped').count()).toBe(skipped);
    app.expectClean();
  });

  test('"Finish it" shows the first half and asks the rest', async () => {
    const app = await openApp();
    const { page } = app;
    await openLessons(app);
    await card(page, 'foundation')
      .getByRole('button', { name: sayLevel('last-hidden') })
      .click();
    const begun = (await read(page)).stage;
    const stages = [begun, ...(await passThrough(page, [['Leave it out']])).map(({ stage }) => stage)];
    const first = stages.indexOf('asking');
    expect(first).toBeGreaterThan(1);
    expect(stages.slice(0, first).every((stage) => stage === 'showing')).toBe(true);
    expect(stages.filter((stage) => stage === 'asking').length).toBe(
      Math.ceil(asked('foundation').length / 2),
    );
    app.expectClean();
  });

  test('while a stitch moves, 12 words at most stand beside it; the reasons come when it rests', async () => {
    const app = await openApp({ motion: true });
    const { page } = app;
    await openLessons(app);
    await card(page, 'joining')
      .getByRole('button', { name: sayLevel('show') })
      .click();
    for (let i = 0; i < 3; i++) await press(page, /^Next/).click();
    const words = () =>
      page.evaluate(() => {
        const shown = document.querySelector<HTMLElement>('.lesson-words');
        const { height } = shown?.getBoundingClientRect() ?? { height: 0 };
        // biome-ignore lint/performance/useDomNodeTextContent: hidden words are not to be counted
        return { count: shown?.innerText.trim().split(/\s+/).length ?? 0, height };
      });
    await drawn(page);
    const moving = await words();
    expect(moving.count).toBeGreaterThan(3);
    expect(moving.count).toBeLessThanOrEqual(12);
    // Two moves, 0.7 s each.
    await expect.poll(async () => (await words()).count, { timeout: 10_000 }).toBeGreaterThan(20);
    expect((await words()).height).toBe(moving.height);
    app.expectClean();
  });

  test('the first lesson ends on the drawing, where the back turns', async () => {
    const app = await openApp({ viewport: viewports.phone });
    const { page } = app;
    await openLessons(app);
    await card(page, 'whole')
      .getByRole('button', { name: sayLevel('show') })
      .click();
    await passThrough(page, []);
    const views = () => page.evaluate(() => window.ringtrue!.snapshot().settings.arrangement);
    expect(await views()).toBe('together');
    await press(page, 'See it turn').click();
    expect(await views()).toBe('apart');
    expect(await sheet(page).isVisible()).toBe(false);
    await expect.poll(() => page.locator('[data-region="whole"]').isVisible()).toBe(true);
    app.expectClean();
  });

  test('one press gives one message, and a movement none', async () => {
    const app = await openApp({ motion: true });
    const { page } = app;
    await openLessons(app);
    await page.evaluate(() => {
      const status = document.querySelector('.lessons [role="status"]') as Element;
      const log: string[] = [];
      Object.assign(window, { heard: log });
      new MutationObserver(() => {
        const text = status.textContent?.trim() ?? '';
        if (text && log.at(-1) !== text) log.push(text);
      }).observe(status, { childList: true, characterData: true, subtree: true });
    });
    const heard = () => page.evaluate(() => (window as unknown as { heard: string[] }).heard);
    await card(page, 'foundation')
      .getByRole('button', { name: sayLevel('show') })
      .click();
    await drawn(page);
    for (let i = 1; i <= 3; i++) {
      expect((await heard()).length).toBe(i);
      await press(page, /^Next/).click();
      // The movement of the stitch changes the picture only.
      for (let frames = 0; frames < 4; frames++) await drawn(page);
    }
    expect(await heard()).toHaveLength(4);
    expect((await heard())[2]).toMatch(
      /^1 foundation treble in the 4th chain from the hook\..*Foundation · side 1/,
    );
    app.expectClean();
  });
});

const ODD = '{"foundation":{"levels":["show",7],"lastDay":"soon"},"__proto__":1';

describe('what was learnt', () => {
  const at = (day: string): Date => new Date(`${day}T18:30:00`);
  const levels = (page: Page, id: LessonId) => card(page, id).getByRole('button').allTextContents();
  const plainly = (texts: string[]): string[] => texts.map((text) => text.replace(/\s+/g, ' ').trim());

  async function finish(page: Page, id: LessonId, level: Level): Promise<void> {
    await card(page, id)
      .getByRole('button', { name: sayLevel(level) })
      .click();
    await passThrough(page, [['Leave it out']]);
    await press(page, 'All lessons').click();
  }

  test('is kept over a reload, and from memory it is offered on a later day', async () => {
    const app = await openApp({ fresh: true });
    const { page } = app;
    await page.clock.setFixedTime(at('2031-05-04'));
    await openLessons(app);
    await finish(page, 'mirrored', 'show');
    expect(plainly(await levels(page, 'mirrored'))).toEqual(['✓Watch, done', 'Finish it', 'Do it all']);
    expect(plainly(await levels(page, 'closing'))).toEqual(['Watch', 'Finish it', 'Do it all']);

    await page.clock.setFixedTime(at('2031-05-05'));
    await page.reload();
    await page.waitForFunction(() => window.ringtrue !== undefined);
    await openLessons(app);
    expect(plainly(await levels(page, 'mirrored'))).toEqual([
      '✓Watch, done',
      'Finish it',
      'Do it all',
      'From memory',
    ]);
    await finish(page, 'mirrored', 'memory');
    // Done today: memory rests until tomorrow.
    expect(plainly(await levels(page, 'mirrored'))).toEqual(['✓Watch, done', 'Finish it', 'Do it all']);
    await page.clock.setFixedTime(at('2031-05-06'));
    await page.reload();
    await page.waitForFunction(() => window.ringtrue !== undefined);
    await openLessons(app);
    expect(plainly(await levels(page, 'mirrored')).at(-1)).toBe('✓From memory, done');
    app.expectClean();
  });

  test('a reload leads back into the lesson, at the step where it was left, and not once it was left', async () => {
    const app = await openApp({ motion: true });
    const { page } = app;
    const reload = async () => {
      await page.reload();
      await page.waitForFunction(() => window.ringtrue !== undefined);
      await page.evaluate(() => window.ringtrue?.ready);
    };
    await openLessons(app);
    await card(page, 'foundation').getByRole('button', { name: 'Watch' }).click();
    for (let i = 0; i < 3; i++) await press(page, 'Next').click();
    const before = await read(page);
    await reload();
    await sheet(page).locator('.lesson-place').waitFor();
    expect(await read(page)).toEqual(before);
    // Left while the stitch still moves.
    await press(page, 'Next').click();
    await press(page, 'Back to your work').click();
    await page.waitForTimeout(1500);
    await reload();
    expect(await page.locator('dialog[open]').count()).toBe(0);
    app.expectClean();
  });

  test('odd things in its place on the device do no harm', async () => {
    const app = await openApp();
    // It is read when the lessons are first opened.
    await app.page.evaluate((odd) => localStorage.setItem('ringtrue.lessons', odd), ODD);
    await openLessons(app);
    expect(plainly(await levels(app.page, 'foundation'))).toEqual(['Watch', 'Finish it', 'Do it all']);
    app.expectClean();
  });
});

test('two quick presses open one sheet', async () => {
  const { page, expectClean } = await openApp();
  await sendEvent(page, { type: 'SHOW', tab: 'walk' });
  await page.getByRole('button', { name: 'Open the lessons' }).evaluate((button: HTMLElement) => {
    button.click();
    button.click();
  });
  await sheet(page).locator('.lesson-card').first().waitFor();
  await drawn(page);
  expect(await page.locator('dialog[open]').count()).toBe(1);
  expect(await page.locator('dialog.sheet-lessons').count()).toBe(1);
  await press(page, 'Back to your work').click();
  expect(await page.locator('dialog[open]').count()).toBe(0);
  expectClean();
});
