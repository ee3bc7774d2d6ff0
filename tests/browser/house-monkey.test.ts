import { describe, expect, it } from 'vitest';
import { openApp, settle, viewports } from './harness.ts';
import { type Hands, monkey, randomFrom } from './monkey.ts';

/** Another seed: `RINGTRUE_SEED=7 npx vitest run house-monkey`. */
const seed = Number(process.env.RINGTRUE_SEED ?? 1);

const runs: [Hands, keyof typeof viewports, acts: number, graphics: boolean][] = [
  ['mouse', 'desktop', 150, false],
  ['mouse', 'desktop', 50, true],
  ['touch', 'phone', 150, false],
  ['keyboard', 'desktop', 250, false],
  ['keyboard', 'phone', 250, false],
];

describe(`random hands, seed ${seed}`, () => {
  it.each(runs)(
    'on the %s of a %s do no harm in %i acts, drawn by the graphics card: %s',
    async (hands, device, count, graphics) => {
      const app = await openApp({
        viewport: viewports[device],
        touch: hands === 'touch',
        probe: false,
        graphics,
        motion: hands !== 'keyboard',
      });
      await monkey(app.page, hands, seed, count);
      await settle(app.page);
      expect(new URL(app.page.url()).origin).toBe(new URL(app.base).origin);
      expect(await app.page.locator('h1').count()).toBe(1);
      app.expectClean();
    },
  );

  it('are the same for the same seed only', () => {
    const row = (of: number) => Array.from({ length: 5 }, randomFrom(of));
    expect(row(seed)).toEqual(row(seed));
    expect(row(seed)).not.toEqual(row(seed + 1));
  });
});
