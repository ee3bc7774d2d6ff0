/**
 * How long the page takes from an act to the picture of it: a count typed and a step walked, on a cushion, a blanket and
 * the largest panel one is likely to type, beside a frame in which nothing is done.
 */
import type { Page } from 'playwright-core';
import type { Project } from '../../../src/state/snapshot.ts';
import { launchBrowser, openAt, sendEvent, settle } from '../../browser/app.ts';
import { serveBuilt } from '../../browser/serve.ts';
import { summarise, tell } from '../harness.ts';

type Act = 'nothing' | 'a count typed' | 'a step walked';

const server = await serveBuilt();
const browser = await launchBrowser();

/** Milliseconds of each of some acts: until the frame after them has been painted. */
const timed = (page: Page, act: Act, count: string): Promise<number[]> =>
  page.evaluate(
    async ({ act, count }) => {
      const painted = (): Promise<void> =>
        new Promise((done) => {
          requestAnimationFrame(() => {
            const { port1, port2 } = new MessageChannel();
            port1.onmessage = () => done();
            port2.postMessage(null);
          });
        });
      const times: number[] = [];
      for (let i = 0; i < 45; i++) {
        await new Promise((done) => setTimeout(done, 60));
        await painted();
        const since = performance.now();
        if (act === 'a count typed')
          window.ringtrue!.send({ type: 'TYPE', field: 'side.0', text: `${Number(count) + (i % 3)}` });
        if (act === 'a step walked') window.ringtrue!.send({ type: 'NEXT' });
        await painted();
        if (i >= 5) times.push(performance.now() - since);
      }
      return times;
    },
    { act, count },
  );

const panels: [name: string, goal: number, project: Partial<Project>, count: string][] = [
  ['4 sides of 40', 50, { sideCount: 4 }, '40'],
  ['4 sides of 600, 3 edgings', 50, { sideCount: 4, edgingCount: 3 }, '600'],
  ['24 sides of 1000, 12 edgings', 100, { sideCount: 24, edgingCount: 12 }, '1000'],
];

for (const query of ['', 'flat'])
  for (const [name, goal, project, count] of panels) {
    const { page, close } = await openAt(browser, server.address, { query, reducedMotion: true });
    await sendEvent(page, { type: 'CHANGE', project });
    for (let side = 0; side < (project.sideCount ?? 4); side++)
      await sendEvent(page, { type: 'TYPE', field: `side.${side}`, text: count });
    await settle(page);
    for (const act of ['nothing', 'a count typed', 'a step walked'] as const) {
      if (act === 'a step walked') await sendEvent(page, { type: 'SHOW', tab: 'walk' });
      await settle(page);
      const how = query === 'flat' ? 'flat' : 'WebGL';
      tell(
        `${name}, ${how}: ${act}`,
        summarise(await timed(page, act, count)),
        act === 'nothing' ? undefined : goal,
      );
    }
    await close();
  }
await browser.close();
await server.close();
