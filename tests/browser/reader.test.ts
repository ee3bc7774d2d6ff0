/** The text that stands on the page, followed to the letter from the first count to the last end. */
import { describe, expect, test } from 'vitest';
import type { Settings } from '../../src/state/snapshot.ts';
import { readWalk, type Page as Told } from '../reader/reader.ts';
import { openApp, sendEvent, viewports } from './harness.ts';
import { drawn } from './walking.ts';

type Walker = Pick<Settings, 'dialect' | 'hand'>;

describe.each([
  { dialect: 'uk', hand: 'right', sides: [6, 7, 5] },
  { dialect: 'us', hand: 'left', sides: [6, 6, 7, 6] },
] as const)('in $dialect terms, $hand hand, $sides', ({ dialect, hand, sides }) => {
  test('makes the piece that the page shows', async () => {
    const app = await openApp({ viewport: viewports.phone, reducedMotion: true });
    const { page } = app;
    await sendEvent(page, { type: 'SETTLE', settings: { dialect, hand } satisfies Walker });
    await sendEvent(page, {
      type: 'CHANGE',
      project: { sideCount: sides.length, counted: 'stitches-only' },
    });
    for (const [side, count] of sides.entries())
      await sendEvent(page, { type: 'TYPE', field: `side.${side}`, text: `${count}` });
    await sendEvent(page, { type: 'SHOW', tab: 'walk' });
    await drawn(page);
    const pages = await page.evaluate(async () => {
      const frame = () => new Promise((done) => requestAnimationFrame(done));
      const bar = document.querySelector('.bar') as Element;
      const text = (selector: string): string =>
        (bar.querySelector(selector)?.textContent ?? '').replace(/\s+/g, ' ').trim();
      const read: Told[] = [];
      for (let tries = 0; tries < 1000; tries++) {
        read.push({
          act: text('.saying-act'),
          where: text('.saying-where'),
          count: text('.saying-count'),
          check: text('.boxed.check').replace(/^Look/, '').trim() || text('.question-words p:last-child'),
          ask: text('.question-asks'),
          caution: text('.boxed.caution')
            .replace(/^Take care/, '')
            .trim(),
        });
        const answer = bar.querySelector<HTMLElement>('.question .button.strong');
        const next = answer ?? (bar.querySelector('.next') as HTMLElement);
        if (next.getAttribute('aria-disabled') === 'true') return read;
        next.click();
        await frame();
        await frame();
      }
      return read;
    });
    const made = readWalk(pages, {
      terms: dialect,
      hand,
      front: { sides, corners: sides.map(() => ({ made: 'chain', size: 2 })) },
    });
    const shown = await page.evaluate(() => {
      const { plan, pairing } = window.ringtrue!.snapshot().making;
      return {
        foundation: plan.foundation.sides,
        edgings: plan.edgings.map((edging) => edging.sides),
        pairs: pairing.pairs,
      };
    });
    expect({
      foundation: made.foundation.sides,
      edgings: made.edgings.map((edging) => edging.sides),
      pairs: made.pairs,
    }).toEqual(shown);
    expect(made.leftOver).toEqual({ front: 0, back: 0 });
    app.expectClean();
  });
});
