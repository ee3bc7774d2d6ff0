/**
 * `npm run photos -- FOLDER`: measures what is proposed on a maker's own photographs, whose counts stand beside them
 * in `counts.json`. The installed browser reads the pictures.
 */
import { existsSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import type { Page } from 'playwright-core';
import { type Line, lineThrough, nearestOn } from '../../src/photo/line.ts';
import type { Pixels } from '../../src/photo/strip.ts';
import { launchBrowser } from '../browser/app.ts';
import { type CountedPhoto, countsName, readCounts } from './counts-file.ts';
import { byLikeness, evenly } from './ways.ts';

/** Longest side as the page holds a photo, in pixels. */
const mostHeld = 4096;

/** Upright, no larger than the page holds it; with how much smaller it became. Null where it cannot be read. */
async function read(page: Page, file: string): Promise<{ pixels: Pixels; scale: number } | null> {
  const found = await page.evaluate(
    async ([bytes, most]) => {
      try {
        const blob = await (await fetch(`data:application/octet-stream;base64,${bytes}`)).blob();
        const whole = await createImageBitmap(blob, { imageOrientation: 'from-image' });
        const scale = Math.min(1, most / Math.max(whole.width, whole.height));
        const [width, height] = [Math.round(whole.width * scale), Math.round(whole.height * scale)];
        const context = new OffscreenCanvas(width, height).getContext('2d');
        if (!context) return null;
        context.imageSmoothingQuality = 'high';
        context.drawImage(whole, 0, 0, width, height);
        const { data } = context.getImageData(0, 0, width, height);
        let text = '';
        for (let i = 0; i < data.length; i += 32768)
          text += String.fromCharCode(...data.subarray(i, i + 32768));
        return { width, height, scale, text: btoa(text) };
      } catch {
        return null;
      }
    },
    [readFileSync(file).toString('base64'), mostHeld] as const,
  );
  if (!found) return null;
  const { width, height, scale, text } = found;
  return { pixels: { width, height, data: new Uint8ClampedArray(Buffer.from(text, 'base64')) }, scale };
}

export type Measured = {
  photo: string;
  count: number;
  here: number;
  isAlike: boolean;
  even: number;
  took: number;
};

function measure(
  pixels: Pixels,
  scale: number,
  { photo, count, line: through, marks }: CountedPhoto,
): Measured {
  const at = ([x, y]: readonly [number, number]) => ({ x: x * scale, y: y * scale });
  const line: Line = lineThrough(through.map(at));
  const along = marks.map((mark) => nearestOn(line, at(mark)).along).sort((a, b) => a - b);
  const asked = { pixels, line, marks: along, lookedTo: along.at(-1) ?? 0 };
  const begun = performance.now();
  const { places, isAlike } = byLikeness(asked);
  const took = performance.now() - begun;
  const even = along.length + evenly(asked).places.length;
  return { photo, count, here: along.length + places.length, isAlike, even, took };
}

/** What is proposed on every photograph of the folder, or a sentence on what is in the way. */
export async function measureFolder(folder: string): Promise<Measured[] | string> {
  if (!existsSync(folder)) return `There is no folder ${folder}.`;
  const list = join(folder, countsName);
  if (!existsSync(list)) return `There is no ${countsName} in ${folder}. README says how it is written.`;
  const entries = readCounts(readFileSync(list, 'utf8'));
  if (typeof entries === 'string') return entries;
  const missing = entries.find(({ photo }) => !existsSync(join(folder, photo)));
  if (missing) return `There is no picture ${missing.photo} in ${folder}.`;
  const browser = await launchBrowser();
  try {
    const page = await browser.newPage();
    const measured: Measured[] = [];
    for (const one of entries) {
      const opened = await read(page, join(folder, one.photo));
      if (!opened)
        return `${one.photo} cannot be read: it is damaged, or of a kind the browser does not know.`;
      measured.push(measure(opened.pixels, opened.scale, one));
    }
    return measured;
  } finally {
    await browser.close();
  }
}

/** Prints a line for each photograph, and how many are exactly right. Ends with 1 where something is in the way. */
export async function report(folder: string | undefined): Promise<void> {
  const found =
    folder === undefined
      ? 'Say which folder holds the photographs: npm run photos -- FOLDER'
      : await measureFolder(resolve(folder)).catch((error: Error) => error.message);
  if (typeof found === 'string') {
    console.error(found);
    process.exitCode = 1;
    return;
  }
  for (const { photo, count, here, isAlike, even, took } of found)
    console.log(
      `${photo}: ${count} counted, ${here} proposed${isAlike ? '' : ', only evenly'}, ${even} evenly, ${Math.round(took)} ms`,
    );
  const right = found.filter(({ count, here }) => count === here).length;
  const evens = found.filter(({ count, even }) => count === even).length;
  console.log(`As many as counted on ${right} of ${found.length}; evenly on ${evens}.`);
}
