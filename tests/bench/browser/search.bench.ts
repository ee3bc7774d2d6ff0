/** What the page feels of a search for causes: its longest task, and how long the first and the last answer take. */
import { launchBrowser, openAt, sendEvent } from '../../browser/app.ts';
import { serveBuilt } from '../../browser/serve.ts';
import { summarise, tell } from '../harness.ts';

type Longest = { first: number; last: number; task: number };

const server = await serveBuilt();
const browser = await launchBrowser();
const { page } = await openAt(browser, server.address);
const sides = [61, 40, 57, 44, 52, 66, 48, 71, 39, 58, 63, 50];
await sendEvent(page, { type: 'CHANGE', project: { sideCount: sides.length } });
for (const [i, count] of sides.entries())
  await sendEvent(page, { type: 'TYPE', field: `side.${i}`, text: `${count}` });
await page.getByRole('tab', { name: 'What went wrong' }).click();
await page.locator('.story').first().waitFor({ state: 'attached' });

/** Three sides off, each by its own number: sets of three. */
async function ask(by: [number, number, number]): Promise<Longest> {
  return page.evaluate(async (off) => {
    const { making } = window.ringtrue!.snapshot();
    const planned = making.plan.edgings.at(-1)?.sides ?? [];
    const seen = {
      edgings: [{ sides: planned.map((count, i) => count + (i % 4 === 1 ? (off[i >> 2] ?? 0) : 0)) }],
    };
    let task = 0;
    const observer = new PerformanceObserver((list) => {
      for (const { duration } of list.getEntries()) task = Math.max(task, duration);
    });
    window.ringtrue!.send({ type: 'TAKE_SEEN', seen });
    // The press itself plans and draws anew: what follows is the search.
    await new Promise((done) => setTimeout(done, 100));
    observer.observe({ type: 'longtask' });
    const since = performance.now();
    const until = (is: () => boolean): Promise<number> =>
      new Promise((done) => {
        const look = (): void => {
          if (is()) done(performance.now() - since);
          else requestAnimationFrame(look);
        };
        look();
      });
    const progress = (): boolean => document.querySelector('.wrong-progress') !== null;
    const first = await until(progress);
    const last = await until(() => !progress());
    observer.disconnect();
    return { first, last, task };
  }, by);
}

const measured: Longest[] = [];
for (let i = 0; i < 12; i++) measured.push(await ask([1 + (i % 5), -2 - (i % 3), 3 + (i % 4)]));
const of = (key: keyof Longest) => summarise(measured.slice(2).map((one) => one[key]));
tell('12 sides, 3 causes: until it says that it looks', of('first'));
tell('12 sides, 3 causes: until all is looked for', of('last'));
tell('longest task of the page meanwhile (0: under 50)', of('task'), 50);
await browser.close();
await server.close();
