import { describe, expect, it } from 'vitest';
import {
  axeClean,
  axeFaults,
  expectNoSidewaysScroll,
  openApp,
  serveOwn,
  settle,
  viewports,
} from './harness.ts';

describe('opening the app', () => {
  it.each(Object.entries(viewports))(
    'on a %s is clean and accessible in both themes, at the first visit and the next',
    async (_, viewport) => {
      const app = await openApp({ viewport, probe: false, graphics: true, fresh: true });
      for (const colorScheme of ['light', 'dark'] as const) {
        await app.page.emulateMedia({ colorScheme });
        if (colorScheme === 'dark') await app.page.reload();
        await settle(app.page);
        expect(await app.page.title()).toContain('Ringtrue');
        expect(await app.page.locator('h1').count()).toBe(1);
        await expectNoSidewaysScroll(app.page);
        await axeClean(app.page);
        app.expectClean();
      }
    },
  );

  it('asks nobody but its own server', async () => {
    const app = await openApp({ probe: false, graphics: true, fresh: true });
    await app.page.waitForTimeout(1000);
    expect(app.record.requests.length).toBeGreaterThan(2);
    expect(
      app.record.requests.filter(
        (address) => !/^(data|blob):/.test(address) && !address.startsWith(app.base),
      ),
    ).toEqual([]);
  });

  it.each([
    [320, 640],
    [320, 256],
  ])('fits %i by %i pixels without scrolling sideways', async (width, height) => {
    const app = await openApp({ viewport: { width, height }, probe: false });
    await expectNoSidewaysScroll(app.page);
    app.expectClean();
  });

  it('draws no frame while nothing happens', async () => {
    const app = await openApp({ probe: false, graphics: true });
    await app.page.waitForTimeout(2000);
    const frames = await app.page.evaluate(async () => {
      const asked = window.requestAnimationFrame;
      let count = 0;
      window.requestAnimationFrame = (then) => {
        count += 1;
        return asked.call(window, then);
      };
      await new Promise((done) => setTimeout(done, 2000));
      return count;
    });
    expect(frames).toBe(0);
  });
});

describe('the watch over a page', () => {
  const plant = async (script: string) => {
    const server = await serveOwn();
    server.write(
      'index.html',
      server.read('index.html').replace('</body>', '<script src="./planted.js"></script></body>'),
    );
    server.write('planted.js', script);
    const app = await openApp({ probe: false }, server.address);
    await app.page.waitForTimeout(300);
    return app;
  };

  it.each([
    ['an error on the console', "console.error('planted')", 'console'],
    ['a warning on the console', "console.warn('planted')", 'console'],
    ['an error nobody caught', "setTimeout(() => { throw new Error('planted'); })", 'pageErrors'],
    ['a promise nobody caught', "Promise.reject(new Error('planted'))", 'pageErrors'],
    ['a file that is not there', "fetch('./nothing-here')", 'failedRequests'],
    ['a breach of the policy', "new Image().src = 'http://127.0.0.1:9/x.png'", 'violations'],
  ] as const)('sees %s', async (_name, script, list) => {
    const app = await plant(script);
    expect(app.record[list]).not.toEqual([]);
    expect(() => app.expectClean()).toThrow();
  });

  it.each([
    [
      'a picture without words',
      "box.append(Object.assign(new Image(), { src: './icon-192.png' }))",
      /image-alt/,
    ],
    [
      'text too faint',
      "box.textContent = 'faint'; box.style.color = '#ccc'; box.style.background = '#fff'",
      /contrast/,
    ],
    [
      'controls too small and too close',
      "for (const name of 'abc') { const key = document.createElement('button'); key.ariaLabel = name; " +
        "key.style.cssText = 'all: unset; display: inline-block; width: 10px; height: 10px'; box.append(key); }",
      /target-size/,
    ],
  ])('sees %s', async (_name, act, rule) => {
    const app = await plant(`const box = document.createElement('div'); document.body.append(box); ${act};`);
    const faults = await axeFaults(app.page, 'body > div:last-of-type');
    expect(faults.map((fault) => fault.rule)).toEqual([expect.stringMatching(rule)]);
    await expect(axeClean(app.page)).rejects.toThrow();
  });
});
