/** The text that stands on the page, followed to the letter from the first count to the last end. */
import { describe, expect, test } from 'vitest';
import type { Settings } from '../../src/state/snapshot.ts';
import { readWalk } from '../reader/reader.ts';
import { readOn } from './curing.ts';
import { openApp, sendEvent, viewports } from './harness.ts';
import { drawn } from './walking.ts';

type Walker = Pick<Settings, 'dialect' | 'hand'>;

describe.each([
  { dialect: 'uk', hand: 'right', sides: [6, 7, 5] },
  { dialect: 'us', hand: 'left', sides: [6, 6, 7, 6] },
] as const)('in $dialect terms, $hand hand, $sides', ({ dialect, hand, sides }) => {
  test('makes the piece that the page shows', async () => {
    const app = await openApp({ viewport: viewports.phone });
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
    const pages = await readOn(page);
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
