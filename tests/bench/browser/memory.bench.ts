/**
 * Memory over minutes of random use (10 by default: `npm run bench:browser -- memory 10`): heap after a forced
 * collection each minute, graphics contexts alive, and the slope after a minute's warming up.
 */
import { monkey } from '../../browser/monkey.ts';
import { withApp } from './harness.ts';

const minutes = Number(process.argv[3] ?? 10);

await withApp({ touch: true }, async ({ page, record }) => {
  const devtools = await page.context().newCDPSession(page);
  const heap = async (): Promise<number> => {
    await devtools.send('HeapProfiler.collectGarbage');
    const { usedSize } = (await devtools.send('Runtime.getHeapUsage')) as { usedSize: number };
    return usedSize / 1e6;
  };
  const readings: number[] = [await heap()];
  console.log(`  at the start ${readings[0]?.toFixed(1)} MB`);
  for (let minute = 1; minute <= minutes; minute++) {
    const until = Date.now() + 60_000;
    for (let round = 0; Date.now() < until; round++) {
      const hands = (['mouse', 'touch', 'keyboard'] as const)[round % 3] ?? 'mouse';
      await monkey(page, hands, minute * 1000 + round, 20);
    }
    // Back to the same work each minute, so that what is compared is the same.
    await page.evaluate(() => {
      window.ringtrue?.send({ type: 'SHOW', tab: 'edge' });
    });
    readings.push(await heap());
    console.log(`  minute ${minute}: ${readings.at(-1)?.toFixed(1)} MB`);
  }
  const warm = readings.slice(2);
  const slope = warm.length > 1 ? ((warm.at(-1) ?? 0) - (warm[0] ?? 0)) / (warm.length - 1) : 0;
  const canvases = await page.evaluate(() => document.querySelectorAll('canvas').length);
  console.log(
    `  slope after the second minute ${slope.toFixed(2)} MB a minute (goal: below 1); canvases ${canvases}`,
  );
  if (record.pageErrors.length + record.console.length > 0) console.log(record.pageErrors, record.console);
});
