/**
 * The content policy, tried from the page's own code: what the driver evaluates is exempt from it.
 * The same attempts on a page without policy succeed, so a policy that is gone does not go unseen.
 */
import { describe, expect, inject, it } from 'vitest';
import { safetyHeaders } from '../../src/policy.ts';
import { serveOwn, theBrowser } from './harness.ts';

const attempts = `
const results = {};
const attempt = (name, act) => {
  try { results[name] = act() === false ? 'blocked' : 'went through'; } catch (error) { results[name] = 'blocked'; }
};
attempt('eval', () => eval('1'));
attempt('new Function', () => new Function('return 1')());
attempt('markup', () => { document.createElement('p').innerHTML = '<b>x</b>'; });
attempt('other policy', () => globalThis.trustedTypes.createPolicy('other', {}));
attempt('inline handler', () => {
  const box = document.createElement('p');
  box.setAttribute('onclick', 'globalThis.handled = true');
  document.body.append(box);
  box.click();
  return globalThis.handled === true;
});
attempt('style attribute', () => {
  const box = document.createElement('p');
  box.setAttribute('style', 'position: fixed');
  document.body.append(box);
  return getComputedStyle(box).position === 'fixed';
});
attempt('blob worker', () => {
  new Worker(URL.createObjectURL(new Blob([''], { type: 'text/javascript' })));
});
const image = new Image();
const done = (answer) => () => { results['foreign picture'] = answer; globalThis.results = results; };
image.onload = done('went through');
image.onerror = done('blocked');
image.src = OTHER + 'icon-192.png';
`;

const names = [
  'eval',
  'new Function',
  'markup',
  'other policy',
  'inline handler',
  'style attribute',
  'blob worker',
  'foreign picture',
];

type Kept = 'page' | 'header' | 'neither';

/** Serves the app's page with the attempts in it, and answers what became of each. */
async function tryAll(kept: Kept): Promise<Record<string, string>> {
  const server = await serveOwn(kept === 'header' ? undefined : { 'Content-Security-Policy': '' });
  const home = server.read('index.html');
  const withScript = home.replace('</body>', '<script src="./attempts.js"></script></body>');
  const page = kept === 'page' ? withScript : withScript.replace(/<meta http-equiv[^>]*>/, '');
  server.write('attempts.html', page);
  server.write('attempts.js', attempts.replace('OTHER', JSON.stringify(inject('address'))));
  const context = await (await theBrowser()).newContext();
  try {
    const tab = await context.newPage();
    await tab.goto(`${server.address}attempts.html`);
    type WithResults = { results?: Record<string, string> };
    await tab.waitForFunction(() => (globalThis as WithResults).results !== undefined);
    return await tab.evaluate(() => (globalThis as WithResults).results ?? {});
  } finally {
    await context.close();
  }
}

const all = (answer: string) => Object.fromEntries(names.map((name) => [name, answer]));

describe('the content policy', () => {
  it('holds as the page states it', async () => expect(await tryAll('page')).toEqual(all('blocked')));
  it('holds as the server sends it', async () => expect(await tryAll('header')).toEqual(all('blocked')));
  it('is what blocks: without it everything goes through', async () => {
    expect(await tryAll('neither')).toEqual(all('went through'));
  });
});

describe('the server', () => {
  const ask = (path: string, method = 'GET') => fetch(new URL(path, inject('address')), { method });

  it('sends the safety headers with every file', async () => {
    for (const path of ['/', '/sw.js', '/favicon.svg']) {
      const { headers } = await ask(path);
      for (const [name, value] of Object.entries(safetyHeaders)) expect(headers.get(name), path).toBe(value);
    }
    expect(safetyHeaders['Content-Security-Policy']).toContain("frame-ancestors 'none'");
  });

  it('lets no file be used without asking again', async () => {
    for (const path of ['/', '/sw.js', '/manifest.webmanifest', '/favicon.svg']) {
      const { headers } = await ask(path);
      expect(headers.get('cache-control'), path).toBe('no-cache');
      expect(headers.get('etag'), path).not.toBeNull();
    }
  });

  it('answers nothing but readings of built files', async () => {
    expect((await ask('/package.json')).status).toBe(404);
    expect((await ask('/some/where')).status).toBe(404);
    expect((await ask('/', 'POST')).ok).toBe(false);
  });
});
