/** How long the app takes to stand, and what it has loaded by then. */
import { summarise, tell } from '../harness.ts';
import { withApp } from './harness.ts';

const samples: Record<'firstPaint' | 'largestPaint' | 'ready', number[]> = {
  firstPaint: [],
  largestPaint: [],
  ready: [],
};
let kilobytes = 0;

for (let i = 0; i < 5; i += 1) {
  await withApp({ viewport: { width: 390, height: 844 } }, async ({ page }) => {
    const seen = await page.evaluate(async () => {
      const largest = await new Promise<number>((done) => {
        new PerformanceObserver((list) => done(list.getEntries().at(-1)?.startTime ?? 0)).observe({
          type: 'largest-contentful-paint',
          buffered: true,
        });
      });
      const loaded = performance.getEntriesByType('resource') as PerformanceResourceTiming[];
      return {
        first: performance.getEntriesByName('first-contentful-paint')[0]?.startTime ?? 0,
        largest,
        now: performance.now(),
        bytes: loaded.reduce((sum, { encodedBodySize }) => sum + encodedBodySize, 0),
      };
    });
    samples.firstPaint.push(seen.first);
    samples.largestPaint.push(seen.largest);
    samples.ready.push(seen.now);
    kilobytes = seen.bytes / 1000;
  });
}

// Limits: the web's own measure of a good page for the largest paint; 5 s until it can be used.
tell('first words on the screen', summarise(samples.firstPaint), 1800);
tell('largest paint', summarise(samples.largestPaint), 2500);
tell('ready to use, drawing included', summarise(samples.ready), 5000);
console.log(`loaded by then: ${kilobytes.toFixed(0)} kB`);
