/** Finding out what went wrong, as a beginner does it: by stories, fields and buttons. */
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import {
  axeClean,
  axeCleanInBothThemes,
  expectNoSidewaysScroll,
  openApp,
  readSnapshot,
  sendEvent,
  type TestOptions,
  viewports,
} from './harness.ts';

async function openTab(options: TestOptions = {}) {
  const app = await openApp(options);
  await app.page.getByRole('tab', { name: 'What went wrong' }).click();
  await app.page.locator('.story').first().waitFor({ state: 'attached' });
  return app;
}

const story = (page: Page, says: string) => page.locator('.story', { hasText: says });
const causes = (page: Page) => page.locator('.cause-title');
const openCause = (page: Page) => page.locator('.cause-body');
const field = (page: Page, name: string) => page.locator(`#field-${name.replaceAll('.', '-')}`);
const button = (page: Page, name: string | RegExp) => page.getByRole('button', { name });

/** The search is over: nothing more is being looked for. */
async function tell(page: Page, says: string): Promise<void> {
  await story(page, says).click();
  await causes(page).first().waitFor();
}

/** How many causes are listed once none is added any more: the search goes on to sets of two and three. */
async function steadyCount(page: Page): Promise<number> {
  let last = -1;
  const isSteady = async (): Promise<boolean> => {
    const now = await causes(page).count();
    const same = now === last;
    last = now;
    return same;
  };
  await expect.poll(isSteady, { interval: 1000 }).toBe(true);
  return last;
}

const lastEdging = async (page: Page) => {
  const { making } = await readSnapshot(page);
  return making.plan.edgings.at(-1)?.sides ?? [];
};

describe('every side of the edging is 2 more', () => {
  test('is told with one press, fills the counts in, and names the causes, best first', async () => {
    const { page, expectClean } = await openTab();
    const planned = await lastEdging(page);
    await tell(page, 'Every side is 2 more than it should be.');
    for (const [side, count] of planned.entries())
      expect(await field(page, `worked.edging.0.${side}`).inputValue()).toBe(`${count + 2}`);
    expect(await causes(page).nth(0).textContent()).toBe('Corner chains taken for side stitches');
    // What the same look tells apart stands in one entry, the likelier first.
    await expect
      .poll(() => page.locator('.cause-others').first().textContent())
      .toContain("The edging's own stitches forgotten");
    await expect.poll(() => causes(page).allTextContents()).toContain('The front miscounted, on every side');
    expect(await openCause(page).count()).toBe(1);
    expect(await openCause(page).textContent()).toMatch(/The 2 corner chains of the front/);
    expect(await openCause(page).textContent()).toMatch(/Every side of the edging has 2 more\./);
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('wrong-result');
    expectClean();
  });

  test('is found from typed numbers as well, with a field that is empty not counted', async () => {
    const { page, expectClean } = await openTab();
    const planned = await lastEdging(page);
    await field(page, 'worked.edging.0.0').fill(`${(planned[0] ?? 0) + 2}`);
    await causes(page).first().waitFor();
    const ways = page.locator('.wrong-says');
    const few = async () => Number.parseInt((await ways.textContent()) ?? '', 10);
    await expect.poll(few).toBeGreaterThan(1);
    expect((await readSnapshot(page)).making.seen.edgings?.[0]?.sides).toEqual([
      (planned[0] ?? 0) + 2,
      null,
      null,
      null,
    ]);
    for (const side of [1, 2, 3])
      await field(page, `worked.edging.0.${side}`).fill(`${(planned[side] ?? 0) + 2}`);
    await expect.poll(() => causes(page).first().textContent()).toBe('Corner chains taken for side stitches');
    expectClean();
  });

  test('is shown on the drawing, at the place where it happens, and the counts come back as typed', async () => {
    const { page, expectClean } = await openTab();
    await sendEvent(page, { type: 'JUMP', to: 20 });
    await tell(page, 'Each side is 1 short.');
    const typed = (await readSnapshot(page)).project.texts;
    expect(await causes(page).first().textContent()).toBe('The hidden stitch missed, at every corner');
    await button(page, 'Show it on the drawing').click();
    await expect
      .poll(async () => (await readSnapshot(page)).making.acts.map(({ kind }) => kind))
      .toEqual(new Array(4).fill('hidden-missed'));
    const shown = await readSnapshot(page);
    expect(shown.making.pairing.sides.map(({ surplus }) => surplus)).toEqual([-1, -1, -1, -1]);
    await button(page, /^Go to where it happens/).click();
    const there = await readSnapshot(page);
    expect(there.step).toMatchObject({ stage: 'edging', mishap: 0 });
    await expect.poll(() => openCause(page).textContent()).toMatch(/The walk stands here/);
    await button(page, 'Back to your counts').click();
    const back = await readSnapshot(page);
    expect(back.project.texts).toEqual(typed);
    expect(back.project.mishaps).toEqual([]);
    expect(back.place).toBe(20);
    expectClean();
  });
});

test('another count takes a cause off the drawing first, and the front can be counted again from the list', async () => {
  const { page, expectClean } = await openTab();
  await tell(page, 'Each side is 1 short.');
  await button(page, 'Show it on the drawing').click();
  await expect.poll(async () => (await readSnapshot(page)).making.acts.length).toBe(4);
  await page.locator('.cause').first().click();
  await button(page, 'Back to your counts').waitFor();
  await field(page, 'worked.edging.0.1').fill('36');
  await expect.poll(async () => (await readSnapshot(page)).preview).toBe(null);
  expect((await readSnapshot(page)).making.seen.edgings?.[0]?.sides[1]).toBe(36);
  await button(page, 'Count the front again').click();
  expect(await page.evaluate(() => document.activeElement?.id)).toBe('field-seen-front-0');
  expectClean();
});

describe('what was counted', () => {
  test('is cleared with one press, and the stories come back', async () => {
    const { page } = await openTab();
    await tell(page, '1 side is 1 short.');
    await button(page, 'Clear all counts').click();
    await expect.poll(() => page.locator('.wrong-result').count()).toBe(0);
    expect((await readSnapshot(page)).making.seen).toEqual({});
    expect(await story(page, 'Each side is 1 short.').isVisible()).toBe(true);
  });

  test('as the recipe has it, is said to be so', async () => {
    const { page } = await openTab();
    const planned = await lastEdging(page);
    await field(page, 'worked.edging.0.1').fill(`${planned[1]}`);
    await expect
      .poll(() => page.locator('.wrong-result').textContent())
      .toMatch(/All that you counted is as the recipe has it\./);
  });

  test('the buttons of an empty field begin at the recipe', async () => {
    const { page } = await openTab();
    const planned = await lastEdging(page);
    await button(page, 'Decrease edging side 2 by 1').click();
    expect(await field(page, 'worked.edging.0.1').inputValue()).toBe(`${(planned[1] ?? 0) - 1}`);
  });

  test('with a corner too few has a side fewer, and the forgotten corner is named', async () => {
    const { page, expectClean } = await openTab();
    const planned = await lastEdging(page);
    await story(page, 'There is a corner too few.').click();
    await expect
      .poll(() => page.locator('.asked-for').textContent())
      .toMatch(/Type what you counted on each side\./);
    await expect.poll(() => page.evaluate(() => document.activeElement?.id)).toBe('field-worked-edging-0-0');
    expect(await field(page, 'worked.edging.0.3').count()).toBe(0);
    // No number is there that the person did not type.
    expect((await readSnapshot(page)).making.seen).toEqual({});
    await page.keyboard.type(`${planned[0]}`);
    await causes(page).first().waitFor();
    await expect
      .poll(() => page.getByLabel('This round has a corner too few').first().isChecked())
      .toBe(true);
    await expect.poll(() => causes(page).first().textContent()).toBe('A corner forgotten');
    expectClean();
  });

  test('that cannot be read is told when asked, keeps its text, and finds no causes meanwhile', async () => {
    const { page } = await openTab();
    const one = field(page, 'worked.edging.0.1');
    await one.fill('37');
    await causes(page).first().waitFor();
    await one.fill('thirty');
    await button(page, 'Check my counts').click();
    await expect.poll(() => one.getAttribute('aria-invalid')).toBe('true');
    expect(await one.inputValue()).toBe('thirty');
    expect(await causes(page).count()).toBe(0);
    await one.fill('37');
    await causes(page).first().waitFor();
  });

  test('is here what was really worked there', async () => {
    const { page } = await openTab();
    await field(page, 'worked.edging.0.1').fill('37');
    await page.getByRole('tab', { name: 'Your edge' }).click();
    expect(await field(page, 'worked.edging.0.1').inputValue()).toBe('37');
  });
});

describe('a join under way', () => {
  test('corners that come 2 early are typed without a sign, and the beginning is named', async () => {
    const { page, expectClean } = await openTab();
    await page.locator('.seen-join > summary').click();
    for (const corner of [0, 1, 2, 3]) await field(page, `seen.drift.${corner}`).fill('2');
    await field(page, 'seen.left-over').fill('0');
    expect((await readSnapshot(page)).making.seen.join).toEqual({ drift: [-2, -2, -2, -2], leftOver: 0 });
    await expect.poll(() => causes(page).first().textContent()).toBe('Begun some stitches off');
    expect(await openCause(page).textContent()).toMatch(/Every corner comes 2 early\./);
    const late = page
      .getByRole('group', { name: 'front corner 1 in the join' })
      .getByRole('button', { name: 'late' });
    await late.click();
    expect((await readSnapshot(page)).making.seen.join?.drift?.[0]).toBe(2);
    expect(await field(page, 'seen.drift.0').inputValue()).toBe('2');
    expectClean();
  });
});

describe('the words', () => {
  test('are US words where they are chosen', async () => {
    const { page } = await openTab();
    await sendEvent(page, { type: 'SETTLE', settings: { dialect: 'us' } });
    await tell(page, 'Each side is 1 short.');
    await expect
      .poll(() => causes(page).first().textContent())
      .toBe('The hidden stitch skipped, at every corner');
    expect(await page.locator('.wrong-panel').textContent()).not.toMatch(/double crochet|missed/);
  });
});

describe('fetching', () => {
  test('nothing of it is fetched before the tab is shown', async () => {
    const { page, record } = await openApp();
    await page.locator('.recipe').waitFor();
    const before = record.requests.length;
    await page.getByRole('tab', { name: 'What went wrong' }).click();
    await page.locator('.story').first().waitFor();
    expect(record.requests.slice(before).some((address) => address.endsWith('.js'))).toBe(true);
  });

  test('the search runs in a thread: the page never loads it, and finds three causes without a press', async () => {
    const { page, expectClean } = await openTab();
    await page.coverage.startJSCoverage();
    const planned = await lastEdging(page);
    const others = [3, -2, 5, -1];
    for (const [side, count] of planned.entries())
      await field(page, `worked.edging.0.${side}`).fill(`${count + (others[side] ?? 0)}`);
    await expect.poll(() => page.locator('.wrong-progress').count()).toBe(0);
    await expect.poll(() => page.locator('.wrong-says').count(), { timeout: 15_000 }).toBe(1);
    await expect.poll(() => page.locator('.wrong-progress').count(), { timeout: 15_000 }).toBe(0);
    expect(page.workers().map((worker) => new URL(worker.url()).pathname.slice(0, 15))).toEqual([
      '/assets/search-',
    ]);
    const run = (await page.coverage.stopJSCoverage()).map(({ url }) => url);
    expect(run.filter((url) => /\/panel-/.test(url)).length).toBeGreaterThan(0);
    expect(run.filter((url) => /\/turns-/.test(url))).toEqual([]);
    expectClean();
  });

  test('another key ends a search under way, and the last count is answered', async () => {
    const { page, expectClean } = await openTab();
    for (const count of ['31', '44', '52', '37']) {
      await field(page, 'worked.edging.0.1').fill(count);
      await page.waitForTimeout(180);
    }
    await expect.poll(() => openCause(page).textContent()).toMatch(/has 37, not 38/);
    expect(page.workers().length).toBe(1);
    expectClean();
  });

  test('where there are no threads, the causes are found all the same', async () => {
    const { page, expectClean } = await openTab();
    await page.addInitScript(() => Reflect.deleteProperty(globalThis, 'Worker'));
    await page.reload();
    await page.coverage.startJSCoverage();
    await page.getByRole('tab', { name: 'What went wrong' }).click();
    await tell(page, 'Each side is 1 short.');
    expect(await causes(page).first().textContent()).toBe('The hidden stitch missed, at every corner');
    expect(page.workers()).toEqual([]);
    const run = (await page.coverage.stopJSCoverage()).map(({ url }) => url);
    expect(run.filter((url) => /\/turns-/.test(url))).toHaveLength(1);
    expectClean();
  });

  test('typing is heard at once, however long the search takes', async () => {
    const { page } = await openTab();
    const input = field(page, 'worked.edging.0.1');
    await input.focus();
    await page.keyboard.type('37', { delay: 40 });
    expect(await input.inputValue()).toBe('37');
    expect((await readSnapshot(page)).project.texts['worked.edging.0.1']).toBe('37');
  });
});

describe('with a thumb or a mouse', () => {
  test.each(['phone', 'desktop'] as const)(
    'on a %s: axe finds nothing in any state, in both themes, and nothing is cut off',
    async (device) => {
      const { page, expectClean } = await openTab({
        viewport: viewports[device],
        touch: device === 'phone',
      });
      await axeCleanInBothThemes(page);
      await tell(page, 'Each side is 1 short.');
      await axeCleanInBothThemes(page);
      await page.locator('.seen-join > summary').click();
      await page.locator('.seen-piece .fold.inner > summary').first().click();
      await button(page, 'Show it on the drawing').click();
      await button(page, 'Back to your counts').first().waitFor();
      await axeCleanInBothThemes(page);
      await expectNoSidewaysScroll(page);
      await page.setViewportSize({ width: 320, height: 700 });
      await expectNoSidewaysScroll(page);
      const cutOff = await page.evaluate(() =>
        [...document.querySelectorAll('.wrong-panel :is(button, select, input, p, span)')]
          .filter((element) => element.getBoundingClientRect().right > innerWidth)
          .map((element) => element.textContent?.trim()),
      );
      expect(cutOff).toEqual([]);
      expectClean();
    },
  );

  test('all of it works with the keyboard alone', async () => {
    const { page, expectClean } = await openTab();
    await story(page, 'Each side is 1 short.').press('Enter');
    await causes(page).first().waitFor();
    const second = page.locator('.cause').nth(1);
    await second.press('Enter');
    await expect.poll(() => second.getAttribute('aria-expanded')).toBe('true');
    await second.press('Enter');
    await expect.poll(() => second.getAttribute('aria-expanded')).toBe('false');
    expectClean();
  });
});

describe('from the wrong numbers to the cure', () => {
  test('every side 2 more: one more count names the cause, a cure is chosen, and the walk goes on', async () => {
    const { page, expectClean } = await openTab();
    await tell(page, 'Every side is 2 more than it should be.');
    const card = page.locator('.next-count');
    await card.waitFor();
    const before = await steadyCount(page);
    const answers = card.locator('li');
    expect(await answers.count()).toBeGreaterThan(1);
    await axeClean(page, '.wrong-panel');
    await answers.first().getByRole('button').click();
    await expect.poll(() => causes(page).count()).toBeLessThanOrEqual(before);
    await causes(page).first().waitFor();

    const best = page.locator('.cure').first();
    await best.waitFor();
    expect(await best.textContent()).toMatch(/best/);
    await best.getByRole('button', { name: /^Do it this way/ }).click();
    const done = page.locator('.wrong-done');
    await done.waitFor();
    expect(await done.evaluate((element) => element === document.activeElement)).toBe(true);
    await axeClean(page);
    const after = await readSnapshot(page);
    const promised = after.making.pairing.verdict.kind;
    expect(['meets', 'meets-with-easing']).toContain(promised);
    await done.getByRole('button', { name: /^Walk on/ }).click();
    const walking = await readSnapshot(page);
    expect(walking.tab).toBe('walk');
    expect(walking.step.index).toBe(walking.place);
    expectClean();
  });

  test('every cure on the list makes just the counts it says, and is undone with one press', async () => {
    const { page, expectClean } = await openTab();
    await tell(page, 'Each side is 1 short.');
    const count = await page.locator('.cure').count();
    expect(count).toBeGreaterThan(0);
    const typed = (await readSnapshot(page)).project.texts;
    for (let i = 0; i < count; i++) {
      const cure = page.locator('.cure').nth(i);
      if ((await cure.getAttribute('open')) === null) await cure.locator('summary').click();
      const says = (await cure.textContent()) ?? '';
      await cure.getByRole('button', { name: /^Do it this way/ }).click();
      await page.locator('.wrong-done').waitFor();
      const { kind } = (await readSnapshot(page)).making.pairing.verdict;
      if (says.includes('stitch for stitch')) expect(kind, says).toBe('meets');
      // Joined as it is asked for, two with one, every place has its partner.
      else if (says.includes('meets with easing')) expect(kind, says).toBe('meets');
      else expect(kind, says).toBe('does-not-meet');
      await page.locator('.wrong-done').getByRole('button', { name: 'Undo' }).click();
      await page.locator('.cure').first().waitFor();
      expect((await readSnapshot(page)).project.texts).toEqual(typed);
    }
    expectClean();
  });

  test('a join begun off is taken out, and the walk goes back to its beginning', async () => {
    const { page, expectClean } = await openTab();
    await tell(page, 'Every corner comes 2 early in the join.');
    await expect.poll(() => causes(page).first().textContent()).toBe('Begun some stitches off');
    await page
      .locator('.cure')
      .first()
      .getByRole('button', { name: /^Do it this way/ })
      .click();
    await page.locator('.wrong-done').waitFor();
    await page
      .locator('.wrong-done')
      .getByRole('button', { name: /^Walk on/ })
      .click();
    const { making, step, tab } = await readSnapshot(page);
    expect(making.pairing.verdict.kind).toBe('meets');
    expect([tab, step.stage]).toEqual(['walk', 'join']);
    expectClean();
  });
});

describe('where the work stands', () => {
  test('is asked in one row, kept with the project, and changes what a cure costs', async () => {
    const { page, expectClean } = await openTab();
    const stands = page.getByLabel('How far is your piece?');
    await tell(page, 'Each side is 1 short.');
    await expect.poll(() => page.locator('.cure-cost').first().textContent()).toBe('Nothing comes off.');
    await stands.selectOption({ label: 'Finished' });
    expect((await readSnapshot(page)).project.stands).toEqual({ at: 'finished' });
    await expect
      .poll(() => page.locator('.cure-cost').first().textContent(), { timeout: 15_000 })
      .toMatch(/^Undo \d+ slip stitches\..* The sewing stays\. \d+ to make again\.$/);
    await page.reload();
    await page.getByRole('tab', { name: 'What went wrong' }).click();
    await expect.poll(() => stands.locator('option:checked').textContent()).toBe('Finished');
    expectClean();
  });

  test('one total is enough to begin', async () => {
    const { page, expectClean } = await openTab();
    const { making } = await readSnapshot(page);
    const total = making.plan.edgings[0]?.total ?? 0;
    await field(page, 'worked.total.edging.0').fill(`${total - 1}`);
    expect((await readSnapshot(page)).making.seen.edgings?.[0]?.total).toBe(total - 1);
    await causes(page).first().waitFor();
    expect(await page.locator('.wrong-says').textContent()).toMatch(/The counts alone do not tell which\./);
    expectClean();
  });
});

test('a cure is looked at on the drawing, before and after, and leaves no trace', async () => {
  const { page, expectClean } = await openTab();
  await tell(page, 'Each side is 1 short.');
  const before = await readSnapshot(page);
  const cure = page.locator('.cure').first();
  await cure.getByRole('button', { name: 'after this' }).click();
  await expect.poll(async () => (await readSnapshot(page)).preview !== null).toBe(true);
  const after = await readSnapshot(page);
  expect(after.project).toEqual(before.project);
  expect(after.canUndo).toBe(before.canUndo);
  expect(await causes(page).first().textContent()).toBe('The hidden stitch missed, at every corner');
  await cure.getByRole('button', { name: 'as it is' }).click();
  const back = await readSnapshot(page);
  expect(back.preview).toBe(null);
  expect(back.making.pairing).toEqual(before.making.pairing);
  await cure.getByRole('button', { name: /^Do it this way/ }).click();
  const done = page.locator('.wrong-done');
  await done.waitFor();
  expect(await done.textContent()).toMatch(/^\s*You chose: /);
  await done.getByRole('button', { name: 'Undo' }).click();
  await expect.poll(async () => (await readSnapshot(page)).project.texts).toEqual(before.project.texts);
  expectClean();
});
