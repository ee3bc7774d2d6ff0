/** What is left when the browser is killed, and when its database is damaged: a browser of its own, with a profile. */
import { readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, inject, test } from 'vitest';
import { readSnapshot, sendEvent } from './harness.ts';
import { newProfile, startOwn } from './own-browser.ts';
import { onDisk } from './shelved.ts';

const typed = (text: string) => ({ type: 'TYPE', field: 'side.0', text }) as const;

describe('a browser that is killed', () => {
  test('while a person types loses no more than the last second', async () => {
    const profile = newProfile();
    const first = await startOwn(profile);
    const page = await first.open(inject('address'));
    const times: number[] = [];
    const begun = performance.now();
    while (performance.now() - begun < 3000) {
      await sendEvent(page, typed(`${100 + times.length}`));
      times.push(performance.now());
      await page.evaluate(() => new Promise((done) => setTimeout(done, 50)));
    }
    const killed = performance.now();
    await first.kill();
    const again = await startOwn(profile);
    const opened = await again.open(inject('address'));
    const { project } = await readSnapshot(opened);
    const kept = Number(project.texts['side.0']) - 100;
    expect(kept).toBeGreaterThan(0);
    expect(killed - (times[kept + 1] ?? killed)).toBeLessThanOrEqual(1000);
    await again.quit();
  });
});

describe('a damaged database', () => {
  test('is told of, the panel in hand is still there, and panels are kept again', async () => {
    const profile = newProfile();
    const first = await startOwn(profile);
    const page = await first.open(inject('address'));
    await sendEvent(page, typed('70'));
    await onDisk(page, ['70']);
    await first.quit();
    const folder = join(profile, 'Default', 'IndexedDB');
    const [database = ''] = readdirSync(folder).filter((name) => name.endsWith('.leveldb'));
    for (const name of readdirSync(join(folder, database)))
      if (name !== 'LOCK') writeFileSync(join(folder, database, name), 'damaged '.repeat(50));
    const again = await startOwn(profile);
    const opened = await again.open(inject('address'));
    await expect
      .poll(() => opened.locator('.notices').textContent())
      .toMatch(/The browser has lost the panels it kept here\./);
    expect((await readSnapshot(opened)).project.texts['side.0']).toBe('70');
    await sendEvent(opened, typed('71'));
    await onDisk(opened, ['71']);
    await again.quit();
  });
});
