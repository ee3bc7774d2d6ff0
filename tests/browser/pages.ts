/**
 * Pages that are used again. A fresh context costs seconds (a cold cache, a worker that fetches everything); an
 * emptied one a few hundred milliseconds. A page whose test failed is not used again.
 */
import type { Browser } from 'playwright-core';
import {
  type App,
  type Findings,
  goToApp,
  launchBrowser,
  newWatchedPage,
  type OpenOptions,
  viewports,
} from './app.ts';

type Closing = (hasFailed: boolean) => Promise<unknown>;

let launched: Promise<Browser> | undefined;
const closings: Closing[] = [];
const idle = new Map<string, App>();

/** This worker's browser. It ends with the worker. */
export function theBrowser(): Promise<Browser> {
  launched ??= launchBrowser();
  return launched;
}

export const afterThisTest = (close: Closing): unknown => closings.push(close);

export async function closeAfterTest(hasFailed: boolean): Promise<void> {
  for (const close of closings.splice(0).reverse()) await close(hasFailed);
}

/** What only a new context can change. */
const kindOf = ({ density, touch, locale }: OpenOptions): string => JSON.stringify([density, touch, locale]);

function forget(record: Findings): void {
  for (const list of Object.values(record)) list.length = 0;
}

/** Empties what the app keeps, and wears the page as asked for. */
async function makeReady({ page, base, record }: App, options: OpenOptions): Promise<void> {
  const devtools = await page.context().newCDPSession(page);
  await devtools.send('Storage.clearDataForOrigin', {
    origin: new URL(base).origin,
    storageTypes: 'local_storage,indexeddb',
  });
  await devtools.detach();
  await page.setViewportSize(options.viewport ?? viewports.desktop);
  await page.emulateMedia({
    colorScheme: options.dark ? 'dark' : 'light',
    reducedMotion: options.reducedMotion ? 'reduce' : 'no-preference',
    forcedColors: options.forcedColours ? 'active' : 'none',
    media: 'screen',
  });
  forget(record);
}

/** Leaves the app, so that it keeps nothing more, with the hand out of the way. */
async function leave({ page }: App): Promise<void> {
  for (const other of page.context().pages()) if (other !== page) await other.close();
  await page.evaluate(() => {
    // What lies open may still be moving, and keeps where it stands for as long as it is open.
    for (const sheet of document.querySelectorAll('dialog')) sheet.close();
    sessionStorage.clear();
  });
  await page.goto('about:blank');
  await page.mouse.move(0, 0);
}

/** Prints what the page of a failed test says, and what was asked of the server: enough to see what never came. */
async function tellOf({ page, record }: App): Promise<void> {
  const seen = await page
    .evaluate(async () => {
      const registration = await navigator.serviceWorker.getRegistration();
      const { installing, waiting, active } = registration ?? {};
      const fetched = performance.getEntriesByType('resource') as PerformanceResourceTiming[];
      return {
        notices: document.querySelector('.notices')?.textContent,
        workers: [installing, waiting, active, navigator.serviceWorker.controller].map((one) => one?.state),
        fetched: fetched.map(({ name, startTime, duration, workerStart, transferSize }) =>
          [name.split('/').pop(), startTime, duration, workerStart, transferSize].join(' '),
        ),
      };
    })
    .catch(String);
  const { requests, ...wrongs } = record;
  console.error(JSON.stringify({ seen, wrongs, requests: requests.slice(-20) }, null, 1));
}

/** The app in a page that may have been used before. */
export async function takePage(base: string, options: OpenOptions): Promise<App> {
  const kind = kindOf(options);
  const app = idle.get(kind) ?? (await newWatchedPage(await theBrowser(), base, options));
  idle.delete(kind);
  afterThisTest(async (hasFailed) => {
    if (hasFailed) await tellOf(app);
    if (hasFailed || idle.has(kind) || app.page.isClosed()) return app.close();
    await leave(app);
    idle.set(kind, app);
  });
  await makeReady(app, options);
  await goToApp(app, options);
  return app;
}
