/** The sheets of "Take along", read in the PDF that the browser prints: pages, words, boxes, and the code on them. */
import { readFile } from 'node:fs/promises';
import jsqr from 'jsqr';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import type { AppEvent } from '../../src/state/snapshot.ts';
import { viewports } from './app.ts';
import {
  axeClean,
  axeCleanInBothThemes,
  expectNoSidewaysScroll,
  openApp,
  readSnapshot,
  sendEvent,
  settle,
} from './harness.ts';
import { rasterOf, readPdf, type Sheet } from './pdf.ts';

const measures = {
  'cloth.width.0': '41',
  'cloth.height.0': '30.5',
  'cloth.depth': '1.5',
  'cloth.spacing': '4',
};
const typed = (texts: Record<string, string>): AppEvent[] =>
  Object.entries(texts).map(([field, text]) => ({ type: 'TYPE', field, text }));

async function show(page: Page, events: AppEvent[] = []): Promise<void> {
  for (const event of events) await sendEvent(page, event);
  await sendEvent(page, { type: 'SHOW', tab: 'take-along' });
  await page.getByRole('heading', { name: 'Print a sheet' }).waitFor();
}

async function choose(page: Page, kind: string): Promise<void> {
  await page.getByRole('button', { name: kind, exact: true }).click();
  await settled(page);
}

/** The press is drawn, then what is measured stands. */
async function settled(page: Page): Promise<void> {
  await settle(page);
  await page.locator('.sheet-pages[aria-busy=false]').waitFor();
  await settle(page);
}

/** As a printer takes it; nothing of the app is called for it. */
async function printed(page: Page): Promise<{ data: Uint8Array; sheets: Sheet[] }> {
  await page.emulateMedia({ media: null });
  const data = new Uint8Array(await page.pdf({ preferCSSPageSize: true, printBackground: false }));
  return { data, sheets: await readPdf(data.slice()) };
}

const said = ({ words }: Sheet): string => words.join(' ').replace(/\s+/g, ' ');

const kinds = [
  ['The whole pattern', 'Abbreviations'],
  ['Recipe on one page', 'All 208 meet.'],
  ['Ring diagram', '200 in all, corners too'],
  ['To tick off', 'A box for each marker'],
  ['Cloth and pins', '42.5 × 32 cm'],
  ['One stitch', 'This is where you begin.'],
] as const;

describe.each([
  ['a4', 'en-GB', 210, 297],
  ['letter', 'en-US', 215.9, 279.4],
] as const)('on %s, the paper of %s', (paper, locale, width, height) => {
  test('every sheet is of that size, drawn in lines, and says on each page what it is', async () => {
    const { page, expectClean } = await openApp({ locale });
    await show(page, typed(measures));
    for (const [kind, holds] of kinds) {
      await choose(page, kind);
      const shown = await page.locator('.sheet-frame').count();
      const { sheets } = await printed(page);
      expect(sheets.length, kind).toBe(shown);
      expect(sheets.map(said).join(' '), kind).toContain(holds);
      sheets.forEach((sheet, i) => {
        expect(Math.abs(sheet.width - width), kind).toBeLessThan(0.5);
        expect(Math.abs(sheet.height - height), kind).toBeLessThan(0.5);
        expect(sheet.images, kind).toBe(0);
        const words = said(sheet);
        expect(words, kind).not.toMatch(/\[object|undefined|NaN/);
        expect(words, kind).toContain(`page ${i + 1} of ${sheets.length}`);
        for (const told of ['UK terms', 'right hand', 'cm', 'This panel: http'])
          expect(words, kind).toContain(told);
      });
      if (['Recipe on one page', 'Ring diagram', 'One stitch'].includes(kind))
        expect(sheets, paper).toHaveLength(1);
    }
    expectClean();
  });
});

test('the code on the sheet is the address of the panel; one too long for a small code is not printed', async () => {
  const { page } = await openApp();
  await show(page);
  await choose(page, 'Recipe on one page');
  const address = await page.locator('#send-edge').inputValue();
  expect(address.length).toBeLessThanOrEqual(300);
  const code = async (data: Uint8Array): Promise<string | undefined> => {
    const raster = await rasterOf(data, 1, 150);
    return jsqr(raster.data, raster.width, raster.height)?.data;
  };
  expect(await code((await printed(page)).data)).toBe(address);
  // Numbers that follow no rule a packer knows: the digits of a square root each.
  const notes = Array.from({ length: 40 }, (_, i) => `${Math.sqrt(i + 2)}`).join(' ');
  await show(page, typed({ 'pattern.notes': notes }));
  await expect.poll(async () => (await page.locator('#send-edge').inputValue()).length).toBeGreaterThan(300);
  await settled(page);
  const { data, sheets } = await printed(page);
  expect(said(sheets[0] as Sheet)).toContain('too long to print');
  expect(await code(data)).toBeUndefined();
});

/** Boxes by the plan's own numbers: a side has one for each marker begun, a corner one, and what closes a round one. */
function boxesOf({ plan }: Awaited<ReturnType<typeof readSnapshot>>['making']): number {
  const { markerEvery, joinStart } = plan.choices;
  const side = (count: number): number => Math.ceil(count / markerEvery);
  const sides = (counts: readonly number[]): number => counts.reduce((sum, count) => sum + side(count), 0);
  const corners = plan.edge.corners.length;
  const { lead, tail } = plan.foundation;
  const foundation = sides([lead, ...plan.foundation.sides.slice(1), tail]) + corners + 1;
  // An edging begins where the foundation does: its first side is parted by the arms beyond the first stretch.
  const edgings = plan.edgings.map((edging) => {
    const [before] = edging.arm;
    const first = plan.choices.edgingClosing.adds === 1 ? lead - 1 + before : lead + before;
    const last = (edging.sides[0] ?? 0) - first - plan.choices.edgingClosing.adds;
    return sides([first, ...edging.sides.slice(1), last]) + corners + 1;
  });
  const start = plan.edge.sides[joinStart.side] ?? 0;
  const others = plan.edge.sides.filter((_, i) => i !== joinStart.side);
  // The join begins within its first side, and ends before it: the pad goes in, and the first pair comes last.
  const offset = joinStart.fromCorner - (plan.edge.corners.at(joinStart.side - 1)?.size ? 1 : 0);
  const begun = Math.ceil(start / markerEvery) - Math.floor(offset / markerEvery);
  const join = begun + sides(others) + corners + side(offset - 1) + 2;
  return foundation + edgings.reduce((sum, boxes) => sum + boxes, 0) + join;
}

test('a box for every marker, side and corner, on as many pages as they need', async () => {
  const { page } = await openApp();
  await show(page);
  await choose(page, 'To tick off');
  const panels: [string, AppEvent[]][] = [
    ['the example', []],
    [
      'four unlike sides, and markers after every 8',
      typed({ 'side.0': '54', 'side.1': '46', 'side.2': '38', 'side.3': '34', 'marker-every': '8' }),
    ],
    ['a panel of several pages', [{ type: 'CHANGE', project: { sideCount: 8, edgingCount: 1 } }]],
  ];
  for (const [panel, events] of panels) {
    for (const event of events) await sendEvent(page, event);
    await settled(page);
    const { making } = await readSnapshot(page);
    const { sheets } = await printed(page);
    expect(
      sheets.reduce((sum, { closed }) => sum + closed, 0),
      panel,
    ).toBe(boxesOf(making));
    const words = sheets.map(said).join(' ');
    const { foundation, edgings } = making.plan;
    expect(words, panel).toContain(`sides ${foundation.sides.join(', ')}`);
    for (const edging of edgings) expect(words, panel).toContain(`sides ${edging.sides.join(', ')}`);
    for (const corner of making.plan.edge.corners.keys())
      expect(words, panel).toContain(`corner ${corner + 1}`);
  }
});

test('a long pattern is parted between its acts: nothing is cut off, no heading stands last', async () => {
  const { page } = await openApp();
  const notes = Array.from({ length: 120 }, (_, i) => `Note ${i + 1} of the maker.`).join('\n');
  await show(page, typed({ 'pattern.notes': notes }));
  await settled(page);
  const { sheets } = await printed(page);
  expect(sheets.length).toBeGreaterThan(3);
  const words = sheets.map(said).join(' ');
  for (let i = 1; i <= 120; i++) expect(words).toContain(`Note ${i} of the maker.`);
  const overflows = await page.evaluate(
    () =>
      [...document.querySelectorAll('.sheet-body')].filter(
        (body) => body.scrollHeight > body.clientHeight + 1,
      ).length,
  );
  expect(overflows).toBe(0);
  const lastHeadings = await page.evaluate(
    () =>
      [...document.querySelectorAll('.sheet-body')].filter((body) =>
        body.lastElementChild?.querySelector(':scope > h3'),
      ).length,
  );
  expect(lastHeadings).toBe(0);
});

test('the ring diagram is saved as SVG and as PNG', async () => {
  const { page, expectClean } = await openApp();
  await show(page);
  await choose(page, 'Ring diagram');
  const save = async (name: string): Promise<Buffer> => {
    const coming = page.waitForEvent('download');
    await page.getByRole('button', { name, exact: true }).click();
    return readFile(await (await coming).path());
  };
  const svg = (await save('Save as SVG')).toString('utf8');
  expect(svg).toMatch(/^<svg xmlns="http:\/\/www\.w3\.org\/2000\/svg"/);
  expect(svg).toContain('200 in all, corners too');
  expect(svg).not.toContain('<image');
  const png = await save('Save as PNG');
  expect(png.subarray(1, 4).toString()).toBe('PNG');
  expect(png.readUInt32BE(16)).toBe(2400);
  expectClean();
});

test('the paper that was chosen stays, here and at the cloth; without measures the cloth sheet leads there', async () => {
  const { page } = await openApp();
  await show(page);
  await page.getByRole('button', { name: 'Letter', exact: true }).click();
  await settled(page);
  const [sheet] = (await printed(page)).sheets;
  expect(sheet?.width).toBeCloseTo(215.9, 0);
  await page.getByRole('button', { name: 'Cloth and pins', exact: true }).click();
  await page.getByRole('button', { name: 'Measure them' }).click();
  await expect.poll(async () => (await readSnapshot(page)).tab).toBe('cloth');
  for (const event of typed(measures)) await sendEvent(page, event);
  await page.locator('.print-sheets.letter').waitFor({ state: 'attached' });
});

test('on a phone and a desktop the sheets are seen whole, and axe finds nothing', async () => {
  const { page } = await openApp({ viewport: viewports.phone, touch: true });
  await show(page);
  for (const kind of ['To tick off', 'One stitch']) {
    await choose(page, kind);
    await expectNoSidewaysScroll(page);
    await axeCleanInBothThemes(page, '.sheets');
  }
  await page.setViewportSize(viewports.desktop);
  await settled(page);
  await expectNoSidewaysScroll(page);
  await axeClean(page, '.sheets');
});
