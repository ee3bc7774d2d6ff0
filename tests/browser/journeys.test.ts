/**
 * Carried out on the page: what was counted is typed, a cure is chosen by tap, and the walk goes on. The literal reader
 * takes up the piece as its maker has it, follows the words on the page, and ends in rounds that meet.
 */
import { describe, expect, test } from 'vitest';
import { type Laid, type Made, readWalk, Stuck, type Page as Told } from '../reader/reader.ts';
import { answered, chooseCure, count, setPanel, standAt, walkToTheEnd } from './curing.ts';
import { openApp, readSnapshot, viewports } from './harness.ts';
import { JOURNEYS, type Journey } from './journeys.ts';

const corners = (sides: readonly number[], size = 2): number[] => sides.map(() => size);

/** Stitches before the first corner, and where the work goes on. */
type From = Pick<Laid, 'lead' | 'where' | 'firstToGo'>;

/** The piece that is made in the end, or why the reader stopped. */
function follow(pages: readonly Told[], { panel, piece }: Journey, from: From): Made {
  const { sides } = panel;
  return readWalk(pages, {
    terms: 'uk',
    hand: 'right',
    front: { sides, corners: sides.map(() => ({ made: 'chain', size: 2 })) },
    laid: {
      rounds: piece.rounds.map((round) => ({ sides: round, corners: corners(round) })),
      ...from,
      sewn: piece.sewn ?? false,
      ...(piece.passedOver === undefined ? {} : { passedOver: piece.passedOver }),
    },
  });
}

const meets = (made: Made, { panel: { sides } }: Journey): boolean =>
  made.leftOver.front === 0 &&
  made.leftOver.back === 0 &&
  made.edgings.at(-1)?.corners.join() === corners(sides).join();

function isStopped(pages: readonly Told[], journey: Journey, from: From, whole: Made): boolean {
  try {
    return JSON.stringify(follow(pages, journey, from)) !== JSON.stringify(whole);
  } catch (problem) {
    if (problem instanceof Stuck) return true;
    throw problem;
  }
}

describe('a cure chosen on the page', () => {
  test.each(JOURNEYS)('$name', async (journey) => {
    const { page, expectClean } = await openApp({
      viewport: viewports.phone,
      touch: true,
    });
    await setPanel(page, journey.panel);
    for (const [field, text] of Object.entries(journey.counts)) await count(page, field, text);
    await standAt(page, journey.stands);
    if (journey.first) await expect.poll(async () => (await answered(page)).first).toBe(journey.first);
    const lead = (await readSnapshot(page)).making.plan.foundation.lead;
    const typed = (await readSnapshot(page)).project;
    const cure = await chooseCure(page, journey.cure, journey.cause);
    for (const said of journey.costs ?? []) expect(cure).toMatch(said);
    const { where, pages } = await walkToTheEnd(page);
    const firstToGo = Number(cure.match(/place (\d+), is the first to go/)?.[1] ?? Number.NaN);
    const from: From = { lead, where, ...(firstToGo > 0 && { firstToGo }) };

    const told = pages.map(({ act, check, caution }) => [act, check, caution].join(' '));
    expect(told.filter((one) => /mishap|does not ask/i.test(one))).toEqual([]);
    for (const said of journey.says)
      expect(told.filter((one) => said.test(one)).length, `${said}`).toBeGreaterThan(0);
    const made = follow(pages, journey, from);
    expect(meets(made, journey), JSON.stringify(made)).toBe(true);
    const spared = pages.filter((_, i) => !isStopped(pages.toSpliced(i, 1), journey, from, made));
    expect(spared.map(({ act }) => act)).toEqual([]);

    await page.getByRole('tab', { name: 'What went wrong' }).tap();
    await page.locator('.wrong-done').getByRole('button', { name: 'Undo' }).tap();
    await expect.poll(async () => (await readSnapshot(page)).project).toEqual(typed);
    expectClean();
  });
});
