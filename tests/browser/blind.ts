/**
 * `npm run blind [seed]`: thirty pictures of random mishaps on random panels, into `pictures/blind/`, and what was done
 * apart from them in `pictures/blind-key.txt`. For looking before one knows: is place and cause seen at once?
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { type Act, actKinds, actOf, roundsOf } from '../../core/index.ts';
import { launchBrowser, openAt, sendEvent, settle, viewports } from './app.ts';
import { randomFrom } from './monkey.ts';
import { serveBuilt } from './serve.ts';

const PICTURES = 30;
/** What no drawing of the finished rounds can show, or what changes nothing there. */
const unseen = ['twisted', 'start-counted', 'closing-over-first', 'closing-beside-first'];

async function takeThem(seed: number): Promise<void> {
  const server = await serveBuilt();
  const browser = await launchBrowser();
  const random = randomFrom(seed);
  const below = (most: number): number => Math.floor(random() * most);
  const kinds = actKinds.filter((kind) => !unseen.includes(kind));
  mkdirSync('pictures/blind', { recursive: true });
  const key: string[] = [];
  for (let taken = 0; taken < PICTURES; ) {
    const sideCount = 3 + below(5);
    const sides = Array.from({ length: sideCount }, () => 24 + below(40));
    const kind = kinds[below(kinds.length)]!;
    const [round] = roundsOf(kind);
    const act: Act = actOf(kind, {
      round,
      ...(round === 'edging' ? { edging: 0 } : {}),
      side: below(sideCount),
      place: 6 + below(8),
      corner: below(sideCount),
      count: kind === 'marker-miscounted' ? -10 : 1 + below(3),
      end: below(2) === 0 ? 'before' : 'after',
      then: below(2) === 0 ? 'from-corner' : 'from-total',
      of: below(2) === 0 ? 'front' : 'back',
    });
    const app = await openAt(browser, server.address, { viewport: viewports.desktop, query: 'flat' });
    await sendEvent(app.page, { type: 'CHANGE', project: { sideCount, counted: 'stitches-only' } });
    for (const [side, count] of sides.entries())
      await sendEvent(app.page, { type: 'TYPE', field: `side.${side}`, text: `${count}` });
    await sendEvent(app.page, { type: 'CHANGE', project: { mishaps: [act] } });
    await settle(app.page);
    const isAmiss = await app.page.evaluate(() => {
      const { making, unfit } = window.ringtrue!.snapshot();
      return unfit.length === 0 && making.pairing.findings.length > 0;
    });
    if (isAmiss) {
      taken += 1;
      const name = `${taken}`.padStart(2, '0');
      await app.page.waitForTimeout(300);
      await app.page.locator('.stage').screenshot({ path: `pictures/blind/${name}.png` });
      key.push(`${name} ${sides.join(' ')} ${JSON.stringify(act)}`);
    }
    await app.close();
  }
  await browser.close();
  await server.close();
  writeFileSync('pictures/blind-key.txt', `${key.join('\n')}\n`);
  console.log(`${PICTURES} pictures in pictures/blind/, the key beside them`);
}

await takeThem(Number(process.argv[2] ?? 1));
