/** Draws the PNG icons from `assets/page/favicon.svg`: `node tests/setup/run.mjs tests/setup/icons.ts`. */
import { readFileSync } from 'node:fs';
import { chromium } from 'playwright-core';
import { findChrome, whatToInstall } from './chrome.mjs';

/** Name, edge in pixels, share of the edge that the drawing takes; the rest is paper, up to the edge. */
const icons: [name: string, edge: number, share: number][] = [
  ['icon-180', 180, 1],
  ['icon-192', 192, 1],
  ['icon-512', 512, 1],
  // Launchers may cut a maskable icon down to a circle of 80 % of its edge.
  ['icon-maskable-512', 512, 0.78],
];

const chrome = findChrome();
if (!chrome) throw new Error(whatToInstall);
const browser = await chromium.launch({ executablePath: chrome });
const drawing = readFileSync('assets/page/favicon.svg').toString('base64');
for (const [name, edge, share] of icons) {
  const page = await browser.newPage({ viewport: { width: edge, height: edge } });
  await page.setContent(
    `<style>body{margin:0;height:100vh;display:grid;place-items:center;background:#fbf8f2}img{width:${share * 100}vw}</style>
    <img src="data:image/svg+xml;base64,${drawing}">`,
    { waitUntil: 'load' },
  );
  await page.screenshot({ path: `assets/page/${name}.png` });
  await page.close();
}
await browser.close();
