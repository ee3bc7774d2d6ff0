/**
 * How fast the table draws, against the plain ways to draw the same stitches, all in one run. Ratios count,
 * not milliseconds: a machine without a GPU draws everything slowly.
 *
 * Usage: `npm run bench:browser -- drawing`; the environment variable SIZES takes other numbers, like
 * `SIZES=2000,20000`.
 */
import { createServer } from 'vite';
import { launchBrowser } from '../../browser/app.ts';
import { root } from '../../setup/shell.mjs';
import type { DrawingBench, Look, Times } from './drawing-page.ts';

const SIZES = (process.env.SIZES ?? '2000,20000,100000').split(',').map(Number);
const WAYS = process.env.WAYS?.split(',') ?? ['ours', 'flat', 'images', 'batched', 'objects', 'svg'];
/** Goals at the largest size: how many times cheaper ours is to be. */
const GOALS = { images: 3, objects: 5, svg: 20, rebuild: 20 };

declare const bench: DrawingBench;

const server = await createServer({
  root,
  configFile: false,
  logLevel: 'error',
  cacheDir: '.cache/bench-browser',
  server: { port: 0, hmr: false, watch: null },
  optimizeDeps: {
    entries: ['tests/bench/browser/drawing.html'],
    include: ['pixi.js', 'pixi.js/unsafe-eval', 'pixi.js/graphics', 'pixi.js/particle-container'],
  },
});
await server.listen();
const address = server.resolvedUrls?.local[0];
// Without the screen's rhythm a frame takes as long as it takes; with it, all fast ways would look alike.
const browser = await launchBrowser(['--disable-frame-rate-limit', '--disable-gpu-vsync']);

async function inPage<T>(run: (page: Awaited<ReturnType<typeof browser.newPage>>) => Promise<T>): Promise<T> {
  // A page for each way: none pays for what another left behind.
  const page = await browser.newPage({ viewport: { width: 900, height: 600 }, reducedMotion: 'reduce' });
  try {
    await page.goto(`${address}tests/bench/browser/drawing.html`);
    await page.waitForFunction(() => 'bench' in window);
    return await run(page);
  } finally {
    await page.close();
  }
}

const show = (ms: number): string => ms.toFixed(ms < 10 ? 2 : 0).padStart(10);
const ratio = (value: number): string => `${value.toFixed(value < 10 ? 1 : 0)}×`;

async function timeAll(positions: number, look: Look): Promise<Map<string, Times>> {
  const where = look === 'whole' ? 'all of it shown' : '12 px a stitch, some 75 stitches shown';
  console.log(`\n${positions.toLocaleString('en')} positions, ${where} — milliseconds`);
  console.log(
    `${''.padEnd(28)}${['build', 'pan', 'step', 'rebuild'].map((word) => word.padStart(9)).join('')}`,
  );
  const times = new Map<string, Times>();
  for (const way of WAYS) {
    const seen = await inPage((page) =>
      page.evaluate(([key, count, at]) => bench.time(key, count, at), [way, positions, look] as const),
    );
    times.set(way, seen);
    const { pan, step, rebuild } = seen;
    const frames = [seen.build, pan.frame, step.frame, rebuild.frame].map(show).join('');
    const scripts = [pan.script, step.script, rebuild.script].map(show).join('');
    console.log(`${seen.name.padEnd(28)}${frames}${''.padStart(10)}${scripts}`);
  }
  return times;
}

function tellGoals(times: Map<string, Times>): void {
  const own = times.get('ours')!;
  const line = (what: string, value: number, goal?: number) => {
    const verdict =
      goal === undefined ? '' : value >= goal ? `  goal ${goal}×: met` : `  goal ${goal}×: MISSED`;
    if (goal !== undefined && value < goal) process.exitCode = 1;
    console.log(`  ${what.padEnd(44)} ${ratio(value).padStart(7)}${verdict}`);
  };
  const pan = (way: string) => times.get(way)!.pan.frame / own.pan.frame;
  line('pan, against canvas, a picture a stitch', pan('images'), GOALS.images);
  line('pan, against canvas, one path a part', pan('batched'));
  line('pan, against one object a stitch', pan('objects'), GOALS.objects);
  line('pan, against SVG', pan('svg'), GOALS.svg);
  // A frame has a floor of its own, the browser's: what a step saves is the script's work.
  line('one step, against making and drawing all anew', own.rebuild.script / own.step.script, GOALS.rebuild);
  line('the same, frames included', own.rebuild.frame / own.step.frame);
}

try {
  console.log(`drawn with: ${await inPage((page) => page.evaluate(() => bench.drawsWith()))}`);
  const largest = Math.max(...SIZES);
  for (const positions of SIZES) {
    for (const look of ['whole', 'near'] as const) {
      const times = await timeAll(positions, look);
      if (positions === largest && WAYS.length === times.size && !process.env.WAYS) tellGoals(times);
    }
  }
  const { asked, drawn } = await inPage((page) => page.evaluate(() => bench.idle(5000)));
  console.log(
    `\nidle for 5 s: ${asked} frames asked for, ${drawn} drawn  goal 0: ${asked + drawn === 0 ? 'met' : 'MISSED'}`,
  );
  if (asked + drawn > 0) process.exitCode = 1;
} finally {
  await browser.close();
  await server.close();
}
