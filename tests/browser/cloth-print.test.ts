/** The strip with marks is as long on paper as on the cloth: measured in the PDF that the browser prints. */
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { openApp, readSnapshot, sendEvent } from './harness.ts';
import { type Line, readPdf, type Sheet } from './pdf.ts';

const measures = {
  'cloth.width.0': '41',
  'cloth.height.0': '30.5',
  'cloth.depth': '1.5',
  'cloth.spacing': '4',
};

async function measured(page: Page, texts: Record<string, string>): Promise<void> {
  for (const [field, text] of Object.entries(texts)) await sendEvent(page, { type: 'TYPE', field, text });
  await sendEvent(page, { type: 'SHOW', tab: 'cloth' });
  await page.locator('.print-sheets').waitFor({ state: 'attached' });
}

/** As a printer takes it; nothing of the app is called for it. */
async function printed(page: Page): Promise<Sheet[]> {
  await page.emulateMedia({ media: null });
  return readPdf(new Uint8Array(await page.pdf({ preferCSSPageSize: true, printBackground: false })));
}

const isLevel = ({ from, to }: Line): boolean => Math.abs(from[1] - to[1]) < 0.01;
const lengthOf = ({ from, to }: Line): number => Math.hypot(from[0] - to[0], from[1] - to[1]);

/** Distances of the marks from the left end of each row, in mm, row by row from the top. */
function marksOf(sheet: Sheet): { length: number; marks: number[] }[] {
  const edges = sheet.lines.filter((line) => isLevel(line) && Math.abs(lengthOf(line) - 100) > 0.5);
  return edges
    .sort((a, b) => b.from[1] - a.from[1])
    .map((edge) => {
      const [left, y] = edge.from;
      const marks = sheet.lines
        .filter(({ from, to }) => Math.abs(from[0] - to[0]) < 0.01 && Math.abs(from[1] - y) < 0.05)
        .filter((line) => lengthOf(line) < 10)
        .map(({ from }) => from[0] - left);
      return { length: lengthOf(edge), marks: marks.sort((a, b) => a - b) };
    });
}

describe.each([
  ['a4', 210, 297],
  ['letter', 215.9, 279.4],
] as const)('on %s', (paper, width, height) => {
  test('the sheets are of that size, drawn in lines, and the check line measures 100 mm', async () => {
    const { page } = await openApp();
    await measured(page, { ...measures, 'cloth.paper': paper });
    const [list, ...strips] = await printed(page);
    expect(strips.length).toBeGreaterThanOrEqual(1);
    for (const sheet of [list as Sheet, ...strips]) {
      expect(sheet.width).toBeCloseTo(width, 0);
      expect(sheet.height).toBeCloseTo(height, 0);
      expect(sheet.images).toBe(0);
    }
    for (const sheet of strips) {
      const check = sheet.lines
        .filter(isLevel)
        .map(lengthOf)
        .sort((a, b) => Math.abs(a - 100) - Math.abs(b - 100))[0];
      expect(Math.abs((check ?? 0) - 100)).toBeLessThanOrEqual(0.5);
      expect(sheet.words.join(' ')).toContain('This line measures 100 mm.');
    }
    const said = (list as Sheet).words.join(' ');
    expect(said).toContain('42.5 × 32 cm');
    expect(said).toMatch(/sheet 1 of \d/);
    expect(said).toMatch(/UK terms/);
    expect(said).toMatch(/right hand/);
  });

  test('every pin lies where it goes on the cloth, to half a millimetre', async () => {
    const { page } = await openApp();
    await measured(page, { ...measures, 'cloth.paper': paper });
    const { cloth } = await readSnapshot(page);
    const [, ...strips] = await printed(page);
    const rows = strips.flatMap(marksOf);
    // 425 mm is three rows of at most 170 mm, 320 mm two.
    const sides = [rows.slice(0, 3), rows.slice(3, 5)];
    const lengths = [425, 320];
    sides.forEach((own, side) => {
      expect(own.reduce((sum, { length }) => sum + length, 0)).toBeCloseTo(lengths[side] as number, 0);
      const marks: number[] = [];
      let before = 0;
      for (const { length, marks: here } of own) {
        marks.push(...here.map((mark) => mark + before));
        before += length;
      }
      const wanted = (cloth?.pins ?? []).filter((pin) => pin.side === side).map(({ distance }) => distance);
      expect(wanted.length).toBeGreaterThan(5);
      expect(marks).toHaveLength(wanted.length);
      wanted
        .sort((a, b) => a - b)
        .forEach((distance, i) => {
          expect(Math.abs((marks[i] as number) - distance)).toBeLessThanOrEqual(0.5);
        });
    });
  });
});

test('a round piece is one strip, all the way round', async () => {
  const { page } = await openApp();
  await sendEvent(page, { type: 'CHANGE', project: { sideCount: 0 } });
  await measured(page, { 'side.0': '180', 'cloth.diameter.0': '36', 'cloth.depth': '1.6' });
  const rows = (await printed(page)).slice(1).flatMap(marksOf);
  const total = rows.reduce((sum, { length }) => sum + length, 0);
  expect(Math.abs(total - Math.PI * 376)).toBeLessThanOrEqual(0.5);
});
