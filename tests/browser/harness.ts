/**
 * What every browser test needs. One browser a worker, started when first asked for; pages are used again, emptied
 * in between (`pages.ts`).
 */
import axe from 'axe-core';
import type { Page } from 'playwright-core';
import { expect, inject } from 'vitest';
import { type App, type OpenOptions, openAt, settle } from './app.ts';
import { afterThisTest, takePage, theBrowser } from './pages.ts';
import { type Server, serveCopy } from './serve.ts';

export {
  type App,
  readRenderers,
  readScene,
  readSnapshot,
  sendEvent,
  settle,
  viewports,
} from './app.ts';
export { theBrowser } from './pages.ts';

declare module 'vitest' {
  interface ProvidedContext {
    /** Address of the built app, ending in `/`. */
    address: string;
    /** The folder it was built into. */
    dist: string;
  }
}

export type TestOptions = Omit<OpenOptions, 'reducedMotion'> & {
  /** Draw as the app does for people. Costs seconds without a graphics card; by default the flat painter draws. */
  graphics?: boolean;
  /** Move as the app does for people: some forty frames a press. By default as `graphics`; without it a cut. */
  motion?: boolean;
  /** A first visit: nothing cached, no worker yet, and scripts may be put before the page's own. */
  fresh?: boolean;
};

export type TestedApp = App & {
  /** Nothing went wrong so far: no console error or warning, no failed or foreign request, no policy violation. */
  expectClean(): void;
};

/** Opens the built app. @param address another server's, for tests that change or end theirs */
export async function openApp(options: TestOptions = {}, address = inject('address')): Promise<TestedApp> {
  const { graphics = false, motion = graphics, fresh, ...rest } = options;
  const wanted: OpenOptions = { ...rest, reducedMotion: !motion };
  if (!graphics) wanted.query = ['flat', wanted.query].filter(Boolean).join('&');
  const mustBeOwn = fresh || wanted.storage !== undefined || address !== inject('address');
  const app = mustBeOwn ? await openAt(await theBrowser(), address, wanted) : await takePage(address, wanted);
  if (mustBeOwn) afterThisTest(app.close);
  const expectClean = () => {
    const { requests: _asked, ...wrongs } = app.record;
    expect(wrongs).toEqual({
      console: [],
      pageErrors: [],
      failedRequests: [],
      foreignRequests: [],
      violations: [],
    });
  };
  return { ...app, expectClean };
}

/** A server of the test's own, ended after it. The files in its folder may be changed while it runs. */
export async function serveOwn(headers?: Record<string, string>): Promise<Server> {
  const server = await serveCopy(inject('dist'), headers);
  let closed: Promise<void> | undefined;
  const close = () => {
    closed ??= server.close();
    return closed;
  };
  afterThisTest(close);
  return { ...server, close };
}

/** `wcag22aa` also turns on the check of target sizes, which is off otherwise. */
const axeTags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

export type AxeFault = { rule: string; at: string[] };

/**
 * Accessibility faults that axe finds. It sees nothing inside a canvas.
 * @param within a CSS selector @param rules only these; default: all of the standard
 */
export async function axeFaults(page: Page, within?: string, rules?: string[]): Promise<AxeFault[]> {
  if (!(await page.evaluate(() => 'axe' in globalThis))) await page.evaluate(axe.source);
  return page.evaluate(
    async ({ runOnly, selector }) => {
      const checker = (globalThis as unknown as { axe: typeof axe }).axe;
      const found = await checker.run(selector ?? document, { runOnly, resultTypes: ['violations'] });
      return found.violations.map(({ id, help, nodes }) => ({
        rule: `${id}: ${help}`,
        at: nodes.map(
          (node) => `${node.target.join(' ')}  ${node.html.slice(0, 200)}  ${node.failureSummary}`,
        ),
      }));
    },
    { runOnly: rules ? { type: 'rule' as const, values: rules } : axeTags, selector: within },
  );
}

/** The rules whose answer depends on colours. */
const colourRules = ['color-contrast', 'link-in-text-block'];

/** Faults in the light theme, and those that the dark theme adds. The page follows the device's theme. */
export async function axeFaultsInBothThemes(page: Page, within?: string): Promise<AxeFault[]> {
  const light = await axeFaults(page, within);
  await page.emulateMedia({ colorScheme: 'dark' });
  await settle(page);
  const dark = await axeFaults(page, within, colourRules);
  await page.emulateMedia({ colorScheme: 'light' });
  await settle(page);
  return [...light, ...dark.map(({ rule, at }) => ({ rule: `${rule} (dark)`, at }))];
}

/** There is no such fault. */
export async function axeClean(page: Page, within?: string): Promise<void> {
  expect(await axeFaults(page, within)).toEqual([]);
}

/** There is no such fault in the light theme nor in the dark. */
export async function axeCleanInBothThemes(page: Page, within?: string): Promise<void> {
  expect(await axeFaultsInBothThemes(page, within)).toEqual([]);
}

/** The page does not scroll sideways. */
export async function expectNoSidewaysScroll(page: Page): Promise<void> {
  const widths = await page.evaluate(() => [document.documentElement.scrollWidth, innerWidth] as const);
  expect(widths[0], 'width of the page against the window').toBeLessThanOrEqual(widths[1]);
}
