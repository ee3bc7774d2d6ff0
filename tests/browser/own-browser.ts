/** A browser of the test's own with a profile that outlives it, to be killed as a power cut would. */
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { type Browser, chromium, type Page } from 'playwright-core';
import { findChrome } from '../setup/chrome.mjs';
import { settle } from './app.ts';
import { afterThisTest } from './pages.ts';

export type OwnBrowser = {
  /** Opens the app. */
  open(address: string): Promise<Page>;
  /** Ends every process of it at once. */
  kill(): Promise<void>;
  /** Ends it as a person does. */
  quit(): Promise<void>;
};

/** A folder for a profile, thrown away after the test. */
export function newProfile(): string {
  const folder = mkdtempSync(join(tmpdir(), 'ringtrue-profile-'));
  afterThisTest(async () => rmSync(folder, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 }));
  return folder;
}

export async function startOwn(profile: string): Promise<OwnBrowser> {
  const words = [
    '--headless=new',
    '--no-sandbox',
    '--no-first-run',
    '--disable-gpu',
    '--disable-background-networking',
    '--remote-debugging-port=0',
    `--user-data-dir=${profile}`,
    'about:blank',
  ];
  // A group of its own, so that all of it ends together.
  const child = spawn(findChrome() ?? '', words, { detached: true, stdio: ['ignore', 'ignore', 'pipe'] });
  const ended = once(child, 'exit');
  const kill = async (): Promise<void> => {
    if (child.exitCode === null && child.signalCode === null && child.pid)
      process.kill(-child.pid, 'SIGKILL');
    await ended;
  };
  afterThisTest(kill);
  const browser = await chromium.connectOverCDP(await endpointOf(child));
  return {
    open: async (address) => {
      const page = await pageIn(browser);
      await page.goto(`${address}?probe&flat`);
      await page.waitForFunction(() => window.ringtrue !== undefined);
      await settle(page);
      return page;
    },
    kill,
    quit: async () => {
      const devtools = await browser.newBrowserCDPSession();
      await devtools.send('Browser.close').catch(() => {});
      await ended;
    },
  };
}

const pageIn = async (browser: Browser): Promise<Page> => {
  const [context] = browser.contexts();
  if (!context) throw new Error('The browser has no window');
  return context.pages()[0] ?? context.newPage();
};

async function endpointOf(child: ChildProcess): Promise<string> {
  if (!child.stderr) throw new Error('The browser tells nothing');
  for await (const line of createInterface(child.stderr)) {
    const [, address] = /^DevTools listening on (ws:\S+)/.exec(line) ?? [];
    if (address) return address;
  }
  throw new Error('The browser does not start');
}
