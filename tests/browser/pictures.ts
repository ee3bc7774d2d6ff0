/**
 * `npm run pictures [part of a scene's name] [device] [theme]`: photographs the scenes into `pictures/`.
 * A scene that logs an error is photographed all the same, and named at the end.
 */
import { mkdirSync } from 'node:fs';
import type { Browser } from 'playwright-core';
import { type Device, launchBrowser, openAt, sendEvent, settle, viewports } from './app.ts';
import { type PictureScene, scenes } from './scenes.ts';
import { serveBuilt } from './serve.ts';

type Theme = 'light' | 'dark';

/** Takes one picture and answers what went wrong meanwhile. */
async function photograph(
  browser: Browser,
  address: string,
  scene: PictureScene,
  device: Device,
  theme: Theme,
): Promise<string[]> {
  const options = { ...scene.open, viewport: viewports[device], dark: theme === 'dark' };
  const app = await openAt(browser, address, options);
  const name = `${scene.name}-${device}-${theme}`;
  try {
    for (const event of scene.events ?? []) await sendEvent(app.page, event);
    await scene.steps?.(app.page);
    if (scene.print) await app.page.emulateMedia({ media: 'print' });
    // Movements last 250 ms at most.
    await app.page.waitForTimeout(300);
    await settle(app.page);
    await app.page.screenshot({ path: `pictures/${name}.png`, fullPage: scene.whole ?? false });
    const { requests: _asked, ...wrongs } = app.record;
    return Object.values(wrongs)
      .flat()
      .map((wrong) => `${name}: ${wrong}`);
  } catch (error) {
    return [`${name}: ${error}`];
  } finally {
    await app.close();
  }
}

async function takePictures(words: string[]): Promise<void> {
  const devices = Object.keys(viewports) as Device[];
  const themes: Theme[] = ['light', 'dark'];
  const isDevice = (word: string) => devices.some((device) => device === word);
  const isTheme = (word: string) => themes.some((theme) => theme === word);
  const part = words.find((word) => !isDevice(word) && !isTheme(word)) ?? '';
  const picks = <T extends string>(all: T[], isOne: (word: string) => boolean): T[] => {
    const named = words.filter(isOne);
    return named.length > 0 ? all.filter((one) => named.includes(one)) : all;
  };
  const server = await serveBuilt();
  const browser = await launchBrowser();
  mkdirSync('pictures', { recursive: true });
  const wrongs: string[] = [];
  let count = 0;
  for (const scene of scenes.filter(({ name }) => name.includes(part))) {
    for (const device of picks(devices, isDevice).filter((one) => scene.devices?.includes(one) ?? true)) {
      for (const theme of picks(themes, isTheme).filter((one) => scene.themes?.includes(one) ?? true)) {
        wrongs.push(...(await photograph(browser, server.address, scene, device, theme)));
        count += 1;
      }
    }
  }
  await browser.close();
  await server.close();
  console.log(`${count} pictures in pictures/`);
  if (wrongs.length > 0) console.log(`What went wrong on the way:\n${wrongs.join('\n')}`);
  process.exitCode = wrongs.length > 0 || count === 0 ? 1 : 0;
}

await takePictures(process.argv.slice(2));
