/**
 * Opens the built app in an installed browser and watches it. Used by the browser tests (through
 * `harness.ts`), the pictures and the browser benches.
 */
import { type Browser, chromium, type Page } from 'playwright-core';
import type { AppEvent } from '../../src/state/snapshot.ts';
import type { Scene } from '../../src/table/draw-list.ts';
import { findChrome, whatToInstall } from '../setup/chrome.mjs';
import type { ReadSnapshot } from './probe.ts';

export type Viewport = { width: number; height: number };

export const viewports = {
  phone: { width: 390, height: 844 },
  tablet: { width: 820, height: 1180 },
  desktop: { width: 1366, height: 860 },
} as const satisfies Record<string, Viewport>;
export type Device = keyof typeof viewports;

export type OpenOptions = {
  /** Default: desktop. */
  viewport?: Viewport;
  /** CSS pixels are this many device pixels. Default 1. */
  density?: number;
  dark?: boolean;
  reducedMotion?: boolean;
  forcedColours?: boolean;
  touch?: boolean;
  /** Put into localStorage before the app's first line runs, on the first load only. */
  storage?: Record<string, string>;
  /** Query without `?`. `probe` is added unless `probe` is false. */
  query?: string;
  probe?: boolean;
  /** Fragment without `#`. */
  hash?: string;
  /** Browser language. Default `en-GB`. */
  locale?: string;
  /** Wait until the app stands. Default true. */
  wait?: boolean;
};

/** All that went wrong in a page, or left it. Grows while the page lives. */
export type Findings = {
  /** Console errors and warnings. */
  console: string[];
  pageErrors: string[];
  failedRequests: string[];
  /** Requests to anything but the app's own server. */
  foreignRequests: string[];
  violations: string[];
  /** Every address asked for, in order. */
  requests: string[];
};

export type App = { page: Page; base: string; record: Findings; close(): Promise<void> };

/** The browser's own remarks on drawing without a graphics card: they say nothing about the app. */
const driverRemark = /GL Driver Message|GPU stall due to ReadPixels|Automatic fallback to software WebGL/;

const quietFlags = [
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** Starts the installed browser, headless. */
export async function launchBrowser(flags: string[] = []): Promise<Browser> {
  const executablePath = findChrome();
  if (!executablePath) throw new Error(whatToInstall);
  return chromium.launch({ executablePath, args: [...quietFlags, ...flags] });
}

/** Records what goes wrong in a page. Call before it goes anywhere. */
export async function watch(page: Page, base: string): Promise<Findings> {
  const record: Findings = {
    console: [],
    pageErrors: [],
    failedRequests: [],
    foreignRequests: [],
    violations: [],
    requests: [],
  };
  page.on('console', (message) => {
    const isBad = message.type() === 'error' || message.type() === 'warning';
    if (isBad && !driverRemark.test(message.text()))
      record.console.push(`${message.type()}: ${message.text()}`);
  });
  page.on('pageerror', (error) => record.pageErrors.push(String(error.stack ?? error)));
  page.on('request', (request) => {
    const address = request.url();
    record.requests.push(address);
    if (!address.startsWith(base) && !/^(data|blob):/.test(address)) record.foreignRequests.push(address);
  });
  page.on('requestfailed', (request) => {
    record.failedRequests.push(`${request.url()} (${request.failure()?.errorText})`);
  });
  page.on('response', (response) => {
    if (response.status() >= 400) record.failedRequests.push(`${response.url()} (${response.status()})`);
  });
  await page.exposeBinding('recordViolation', (_source, words: string) => record.violations.push(words));
  // Runs as the page's own code, before the app's: what the driver evaluates is exempt from the policy.
  await page.addInitScript(() => {
    document.addEventListener('securitypolicyviolation', (event) => {
      const words = `${event.violatedDirective}: ${event.blockedURI} ${event.sample} (${event.sourceFile}:${event.lineNumber})`;
      (globalThis as unknown as { recordViolation(words: string): void }).recordViolation(words);
    });
  });
  return record;
}

/** Waits until fonts and drawing are there and two frames have passed. */
export async function settle(page: Page): Promise<void> {
  await page.evaluate(async () => {
    await document.fonts.ready;
    await window.ringtrue?.ready;
    const frame = () => new Promise((done) => requestAnimationFrame(done));
    await frame();
    await frame();
  });
}

/** A page of a fresh context, watched, that has not gone anywhere yet. */
export async function newWatchedPage(
  browser: Browser,
  base: string,
  options: OpenOptions = {},
): Promise<App> {
  const context = await browser.newContext({
    viewport: options.viewport ?? viewports.desktop,
    deviceScaleFactor: options.density ?? 1,
    colorScheme: options.dark ? 'dark' : 'light',
    reducedMotion: options.reducedMotion ? 'reduce' : 'no-preference',
    forcedColors: options.forcedColours ? 'active' : 'none',
    hasTouch: options.touch ?? false,
    locale: options.locale ?? 'en-GB',
  });
  const page = await context.newPage();
  const record = await watch(page, base);
  return { page, base, record, close: () => context.close() };
}

/** Leads a page to the app. */
export async function goToApp({ page, base }: App, options: OpenOptions = {}): Promise<void> {
  if (options.storage) {
    await page.addInitScript((storage) => {
      if (sessionStorage.getItem('storage-was-set')) return;
      sessionStorage.setItem('storage-was-set', 'yes');
      for (const [key, value] of Object.entries(storage)) localStorage.setItem(key, value);
    }, options.storage);
  }
  const hasProbe = options.probe ?? true;
  const query = [hasProbe ? 'probe' : '', options.query ?? ''].filter(Boolean).join('&');
  await page.goto(`${base}${query ? `?${query}` : ''}${options.hash ? `#${options.hash}` : ''}`);
  if (options.wait ?? true) {
    if (hasProbe) await page.waitForFunction(() => window.ringtrue !== undefined);
    await settle(page);
  }
}

/** Opens the app in a fresh context. `base` is the server's address, ending in `/`. */
export async function openAt(browser: Browser, base: string, options: OpenOptions = {}): Promise<App> {
  const app = await newWatchedPage(browser, base, options);
  await goToApp(app, options);
  return app;
}

/** Sends an event to the app's one state. */
export async function sendEvent(page: Page, event: AppEvent): Promise<void> {
  await page.evaluate((sent) => window.ringtrue!.send(sent), event);
}

/** The app's snapshot, without what cannot leave the page. */
export async function readSnapshot(page: Page): Promise<ReadSnapshot> {
  return page.evaluate(() => {
    const { making, ...rest } = window.ringtrue!.snapshot();
    const { steps, ...made } = making;
    return { ...rest, making: { ...made, steps: { length: steps.length, stretches: steps.stretches } } };
  });
}

/** The draw list that is on the table. */
export async function readScene(page: Page): Promise<Scene> {
  return page.evaluate(() => window.ringtrue!.scene());
}

/** How each canvas is drawn: `webgl2 (name of the renderer)`, `webgl (…)`, `2d`, or `none`. In page order. */
export async function readRenderers(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    // A canvas in use answers only for the kind of context it has: other kinds give null.
    const nameOf = (canvas: HTMLCanvasElement): string => {
      for (const kind of ['webgl2', 'webgl'] as const) {
        const context = canvas.getContext(kind) as WebGLRenderingContext | null;
        if (!context) continue;
        const names = context.getExtension('WEBGL_debug_renderer_info');
        return `${kind} (${context.getParameter(names?.UNMASKED_RENDERER_WEBGL ?? context.RENDERER)})`;
      }
      return canvas.getContext('2d') ? '2d' : 'none';
    };
    return [...document.querySelectorAll('canvas')].map(nameOf);
  });
}
