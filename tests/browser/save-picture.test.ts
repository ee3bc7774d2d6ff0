/** Saving the drawing: what arrives is a picture of the promised kind and size. */
import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { fileName, PICTURE_WIDTH } from '../../src/page/drawing/save-picture.ts';
import { pngSize } from './built.ts';
import { openApp, readSnapshot, sendEvent } from './harness.ts';

async function save(page: Page, kind: 'PNG' | 'SVG'): Promise<{ name: string; content: Buffer }> {
  const coming = page.waitForEvent('download');
  await page.getByRole('button', { name: `Save picture (${kind})` }).click();
  const download = await coming;
  return { name: download.suggestedFilename(), content: readFileSync(await download.path()) };
}

describe('the drawing is saved', () => {
  test('as a PNG of the promised width', async () => {
    const { page, expectClean } = await openApp({ graphics: true });
    await page.getByRole('button', { name: 'More settings' }).click();
    const { name, content } = await save(page, 'PNG');
    expect(name).toBe('window-seat-cushion.png');
    expect(pngSize(content)).toMatch(new RegExp(`^${PICTURE_WIDTH}x\\d{3,4}$`));
    // A picture that shows something does not pack into next to nothing.
    expect(content.length).toBeGreaterThan(20_000);
    expectClean();
  });

  test('as an SVG that can be read, is the panel as it stands, and holds no script', async () => {
    const { page, expectClean } = await openApp();
    const { project } = await readSnapshot(page);
    await sendEvent(page, {
      type: 'CHANGE',
      project: { ...project, name: 'Tom & "<script>alert(1)</script>"' },
    });
    await page.getByRole('button', { name: 'More settings' }).click();
    const { name, content } = await save(page, 'SVG');
    expect(name).toBe('tom-script-alert-1-script.svg');
    // The app's own policy would not let a page read markup from text.
    const reader = await page.context().newPage();
    const read = await reader.evaluate((text) => {
      const parsed = new DOMParser().parseFromString(text, 'image/svg+xml');
      const all = [...parsed.querySelectorAll('*')];
      return {
        root: parsed.documentElement.localName,
        errors: parsed.querySelectorAll('parsererror').length,
        title: parsed.querySelector('title')?.textContent,
        scripts: all.filter(({ localName }) => /script|foreignObject|iframe/i.test(localName)).length,
        handlers: all
          .flatMap(({ attributes }) => [...attributes].map(({ name }) => name))
          .filter((one) => /^on/i.test(one)),
        addresses: all
          .map((element) => element.getAttribute('href') ?? '#')
          .filter((address) => !address.startsWith('#')),
        stitches: parsed.querySelectorAll('use, polyline, polygon').length,
      };
    }, content.toString('utf8'));
    expect(read).toMatchObject({ root: 'svg', errors: 0, scripts: 0, handlers: [], addresses: [] });
    expect(read.title).toBe('Tom & "<script>alert(1)</script>" · All 208 meet.');
    expect(read.stitches).toBeGreaterThan(20);
    expectClean();
  });
});

describe('the name of the file', () => {
  test.each([
    ['Window-seat cushion', 'window-seat-cushion.png'],
    ['  ', 'ringtrue.png'],
    ['', 'ringtrue.png'],
    ['../../etc/passwd', 'etc-passwd.png'],
    ['a\\b:c*d?"<>|', 'a-b-c-d.png'],
    ['Kissen für Opa', 'kissen-für-opa.png'],
    ['座布団 1', '座布団-1.png'],
    ['CON', 'con-panel.png'],
    ['.hidden', 'hidden.png'],
    ['x'.repeat(200), `${'x'.repeat(60)}.png`],
    [`${'y'.repeat(59)} z`, `${'y'.repeat(59)}.png`],
  ])('%j becomes %j', (name, expected) => {
    expect(fileName({ name }, 'png')).toBe(expected);
  });
});
